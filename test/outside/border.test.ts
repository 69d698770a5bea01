/** Borders against published counts. */
import { describe, expect, it } from 'vitest';
import { countBorderRounds } from '../../src/core/edges/border.ts';
import { STITCH_FACTS } from '../../src/standards/stitches.ts';
import { asking } from '../asking.ts';

describe('square in rounds of sc, three in each corner (crochetspot.com, “How to crochet a square”)', () => {
  it('4, 12, 20, 28, 36, 44, 52 = 8r − 4: each round is a border round the one before', () => {
    const published = [4, 12, 20, 28, 36, 44, 52];
    // From the second round on there are four corners of three; between them nothing at first.
    const { rounds } = countBorderRounds({
      across: 0,
      down: 0,
      corner: 3,
      stitches: published.slice(1).map(() => 'sc'),
    });
    expect(rounds.map(({ total }) => total)).toEqual(published.slice(1));
    // The run between two corners: 0, 2, 4, 6 …, as printed.
    expect(rounds.map(({ across }) => across)).toEqual([0, 2, 4, 6, 8, 10]);
  });
});

describe('corners of three or five, whichever lies flat (crochetcabana.com, “Embellishments: borders”, 2007)', () => {
  it('three lie flat in sc, five in dc', () => {
    const fits = (stitch: 'sc' | 'dc', corner: number) =>
      countBorderRounds({ across: 9, down: 9, corner, stitches: [stitch] }).corners[0]?.fit;
    expect([fits('sc', 3), fits('dc', 5)]).toEqual(['flat', 'flat']);
    expect([fits('sc', 5), fits('dc', 3)]).toEqual(['too many', 'too few']);
  });

  it('a first round of S grows to S + 8(r − 1)', () => {
    const { rounds } = countBorderRounds({
      across: 50,
      down: 70,
      corner: 3,
      stitches: ['sc', 'sc', 'sc', 'sc'],
    });
    const first = rounds[0]!.total;
    expect(rounds.map(({ total }) => total)).toEqual([first, first + 8, first + 16, first + 24]);
  });
});

describe('sc along row ends (carol-mycrochetpage.blogspot.com, “Picot edging”, 2009)', () => {
  it('one per sc row, two per dc row, three per tr row', async () => {
    expect([STITCH_FACTS.sc.height, STITCH_FACTS.dc.height, STITCH_FACTS.tr.height]).toEqual([1, 2, 3]);
    const { lines } = await asking().ask('/border spacing width:40cm height:60cm gauge:14');
    expect(lines?.join()).toMatch(/1 for every row of sc.*2 for every row of dc.*3 for every row of tr/);
  });
});

describe('a pick-up of 100 by quarters, 16 and 30 by halves (gotyarn-ginny.blogspot.com, December 2008)', () => {
  it.each([
    [100, 4, [25, 25, 25, 25]],
    [16, 2, [8, 8]],
    [30, 2, [15, 15]],
  ])('%i over %i', async (stitches, columns, shares) => {
    const answer = await asking().ask(
      `/border spacing width:${stitches}cm height:60cm gauge:10 columns:${columns}`,
    );
    expect(answer.figures['across']?.value).toBe(stitches);
    expect(answer.data['per_motif_across']).toEqual(shares);
  });
});

describe('multiple of 3 plus 2 (adstoob.com, multiples): 5, 8, 11 …', () => {
  it('are the counts that suit', async () => {
    const room = asking();
    for (const [width, count] of [
      [5.2, 5],
      [8.4, 8],
      [10.6, 11],
    ]) {
      const line = `/border spacing width:${width}cm height:60cm gauge:10 multiple:3 plus:2`;
      expect(await room.figure(line, 'across')).toBe(count);
    }
  });
});
