import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countBorderRounds } from '../../../src/core/edges/border.ts';
import { SEAM_METHODS } from '../../../src/core/edges/seams.ts';
import { cornerStitch, writeBorder } from '../../../src/core/edges/written-border.ts';
import { canBeTold, writeSeam, writeStrips } from '../../../src/core/edges/written-joining.ts';
import { forReader, type Reader } from '../../../src/core/base/reader.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { asking } from '../../asking.ts';

const READERS: readonly Reader[] = [
  { units: 'metric', terms: 'US' },
  { units: 'imperial', terms: 'UK', hand: 'left' },
];
/** Names as pattern writers give them, US beside UK (sugarplumcrochet.wordpress.com, "decoding crochet patterns"). */
const CALLED = {
  US: { sc: 'sc', hdc: 'hdc', dc: 'dc', tr: 'tr', slip: 'sl st' },
  UK: { sc: 'dc', hdc: 'htr', dc: 'tr', tr: 'dtr', slip: 'ss' },
} as const;

/**
 * Follows a round as it is read: what it works into, and what it makes. A round begins in a corner, goes along four sides with the other
 * three corners between, and what a round works into is all that the one before made.
 */
function follow(text: string, stitch: string, slip: string) {
  const said = Number(new RegExp(`\\((\\d+) ${stitch}\\)$`).exec(text)?.[1]);
  const body = text.slice(0, text.lastIndexOf('('));
  let made = 0;
  let into = 0;
  let corners = 0;
  const sides: number[] = [];
  for (const part of body.replace(/^Round \d+(?:, in [^:]+)?: /, '').split(/, /)) {
    const side = new RegExp(`^(\\d+) ${stitch} along the (?:width|height)$`).exec(part);
    const each = new RegExp(`^1 ${stitch} in each of the next (\\d+) stitches$`).exec(part);
    const corner = new RegExp(`^(\\d+) ${stitch} in (?:the|the same) (?:.*corner.*|stitch)$`).exec(part);
    const first = new RegExp(
      `^ch \\d+ \\(counts as the first ${stitch}\\)(?: and (\\d+) more ${stitch})? in `,
    ).exec(part);
    if (side ?? each) {
      const stitches = Number((side ?? each)?.[1]);
      sides.push(stitches);
      made += stitches;
      into += stitches;
    } else if (corner ?? first) {
      made += first ? 1 + Number(first[1] ?? 0) : Number(corner?.[1]);
      into += 1;
      corners += 1;
    } else
      expect(part, text).toMatch(
        new RegExp(`^(?:join |ch \\d+ \\(does not count\\)$|${slip} (?:in the next|to the first))`),
      );
  }
  return { said, made, into, corners, sides };
}

describe('a border in words', () => {
  const cases = fc.record({
    across: fc.integer({ min: 4, max: 400 }),
    down: fc.integer({ min: 4, max: 400 }),
    corner: fc.integer({ min: 1, max: 9 }),
    stitches: fc.array(fc.constantFrom(...STITCHES), { minLength: 1, maxLength: 6 }),
  });

  it('makes what it says, out of all that the round before made, in either terms', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...READERS), ({ across, down, corner, stitches }, reader) => {
        const { rounds } = countBorderRounds({ across, down, corner, stitches });
        const written = writeBorder({ rounds, corner });
        expect(written.rounds).toHaveLength(stitches.length);
        let before: number | undefined;
        for (const [index, text] of written.rounds.entries()) {
          const called = CALLED[reader.terms];
          const read = follow(forReader(text, reader), called[stitches[index]!], called.slip);
          expect(read.corners).toBe(4);
          expect(read.made).toBe(read.said);
          expect(read.said).toBe(rounds[index]!.total);
          expect(read.sides).toEqual(
            [0, 1, 0, 1].map((at) => (at === 0 ? rounds[index]!.across : rounds[index]!.down)),
          );
          // Published: three in each corner stitch adds 8 a round (crochetspot.com, "How to crochet a square"); k adds 4(k − 1).
          if (before !== undefined) {
            expect(read.into).toBe(before);
            expect(read.made).toBe(before + 4 * (corner - 1));
          }
          before = read.made;
        }
      }),
      { numRuns: 60 },
    );
  });

  it.each([undefined, ...STITCHES])('is written by /border spacing for %s', async (stitch) => {
    const line = '/border spacing width:40cm height:60cm gauge:14';
    const { lines, figures, assumptions } = await asking().ask(
      stitch === undefined ? line : `${line} border_stitch:${stitch}`,
    );
    const text = lines!.find((one) => one.startsWith('Round 1:'))!;
    const read = follow(text, stitch ?? 'sc', 'sl st');
    expect([read.said, read.made, read.corners]).toEqual([
      figures['round_total']!.value,
      figures['round_total']!.value,
      4,
    ]);
    expect(read.sides).toEqual(['across', 'down', 'across', 'down'].map((side) => figures[side]!.value));
    expect(assumptions.some((one) => one.includes('border_stitch'))).toBe(stitch === undefined);
  });

  it('is worked the other way round by who holds the hook in the left hand, and changes colour where it is told to', () => {
    const rounds = countBorderRounds({ across: 20, down: 30, corner: 3, stitches: ['sc', 'dc'] }).rounds.map(
      (round, index) => ({ ...round, colour: ['moss', 'sand'][index] }),
    );
    const say = (hand: 'right' | 'left') => {
      const { before, rounds: texts } = writeBorder({ rounds, corner: 3, motif: 'hdc' });
      return [...before, ...texts].map((text) => forReader(text, { units: 'metric', terms: 'US', hand }));
    };
    expect(say('right').join('\n')).toMatch(/from right to left along the upper edge[^]*upper right corner/);
    expect(say('left').join('\n')).toMatch(/from left to right along the upper edge[^]*upper left corner/);
    expect(say('right').join('\n')).toContain(
      'Round 2, in sand: join in the middle stitch of the corner, ch 3',
    );
    // Published for sc along row ends: three to two rows of hdc, from memory (row-ends.ts).
    expect(say('right').join('\n')).toContain('about 3 stitches for every two rows of hdc');
  });
});

describe('the corner of a border', () => {
  const say = (
    corner: number,
    stitch: 'sc' | 'dc',
    more: Partial<Parameters<typeof writeBorder>[0]> = {},
  ) => {
    const { rounds } = countBorderRounds({ across: 20, down: 30, corner, stitches: [stitch, stitch] });
    const { before, rounds: texts, after } = writeBorder({ rounds, corner, ...more });
    const read = (text: string) => forReader(text, READERS[0]!);
    return { before: before.map(read), rounds: texts.map(read), after };
  };
  it.each([
    [1, 1, 'the corner stitch'],
    [2, 1, 'the first of the corner’s 2 stitches'],
    [3, 2, 'the middle stitch of the corner'],
    [4, 2, 'the second of the corner’s 4 stitches'],
    [5, 3, 'the middle stitch of the corner'],
    [8, 4, 'the fourth of the corner’s 8 stitches'],
    [12, 6, 'the 6th of the corner’s 12 stitches'],
  ])('of %i is worked on in its stitch %i', (corner, stitch, place) => {
    expect(cornerStitch(corner)).toBe(stitch);
    expect(say(corner, 'sc').rounds[1]).toContain(`${corner} sc in ${place}, 1 sc in each`);
  });
  it('is come to by slip stitches, and begun with a chain that counts or does not', () => {
    const second = (corner: number, stitch: 'sc' | 'dc') =>
      say(corner, stitch).rounds[1]!.split(/, 1 [sd]c in each/)[0];
    expect(second(1, 'sc')).toBe('Round 2: ch 1 (does not count), 1 sc in the corner stitch');
    expect(second(2, 'sc')).toBe(
      'Round 2: ch 1 (does not count), 2 sc in the first of the corner’s 2 stitches',
    );
    expect(second(3, 'sc')).toBe(
      'Round 2: sl st in the next stitch, ch 1 (does not count), 3 sc in the same stitch',
    );
    expect(second(5, 'sc')).toBe(
      'Round 2: sl st in the next 2 stitches, ch 1 (does not count), 5 sc in the same stitch',
    );
    expect(second(1, 'dc')).toBe('Round 2: ch 3 (counts as the first dc) in the corner stitch');
    expect(second(3, 'dc')).toBe(
      'Round 2: sl st in the next stitch, ch 3 (counts as the first dc) and 2 more dc in the same stitch',
    );
  });
  it('is joined in only where the colour changes', () => {
    const { rounds } = countBorderRounds({ across: 20, down: 30, corner: 3, stitches: ['sc', 'sc', 'sc'] });
    const coloured = ['moss', 'moss', 'sand'].map((colour, index) => ({ ...rounds[index]!, colour }));
    const texts = writeBorder({ rounds: coloured, corner: 3 }).rounds.map((text) =>
      forReader(text, READERS[0]!),
    );
    expect(texts[0]).toMatch(/^Round 1, in moss: join at the upper right corner, ch 1/);
    expect(texts[1]).toMatch(/^Round 2, in moss: sl st in the next stitch, ch 1/);
    expect(texts[2]).toMatch(
      /^Round 3, in sand: join in the middle stitch of the corner, ch 1 .* in the same stitch/,
    );
  });
  it('is told after the motifs of a side, where they are known, and ends with its ends', () => {
    expect(say(3, 'sc').before).toEqual([
      'Work round the blanket with its right side facing you, from right to left along the upper edge; do not turn between rounds.',
    ]);
    const { before, after } = say(3, 'sc', {
      perMotifAcross: [10, 10],
      perMotifDown: [8, 7, 8, 7],
      motif: 'sc',
    });
    expect(before.slice(1)).toEqual([
      expect.stringContaining('for every row of sc') as string,
      'In round 1 along each width, motif by motif: 2 × 10.',
      'In round 1 along each height, motif by motif: 8, 7, 8, 7.',
    ]);
    expect(after).toEqual(['Fasten off and weave in the ends of the border, each in three passes.']);
  });
});

describe('joining in words', () => {
  const size = fc.integer({ min: 1, max: 12 });

  it('joins every side that two motifs share, once, and never another', () => {
    fc.assert(
      fc.property(size, size, (columns, rows) => {
        fc.pre(columns * rows > 1);
        const texts = writeStrips(columns, rows);
        const joined = texts.flatMap((text) =>
          [...text.matchAll(/(\d+) to (\d+)/g)].map(([, a, b]) => [Number(a), Number(b)] as const),
        );
        expect(new Set(joined.map(String)).size).toBe(joined.length);
        for (const [a, b] of joined) {
          const [x, y] = [a - 1, b - 1];
          const beside = Math.floor(x / columns) === Math.floor(y / columns) && y === x + 1;
          expect(beside || y === x + columns, `${a} to ${b}`).toBe(true);
        }
        expect(joined).toHaveLength(rows * (columns - 1) + columns * (rows - 1));
        // As many seams as the figures of /joining say: short ones in the strips, one between each two of them.
        const seams = texts.flatMap((text) =>
          [...text.matchAll(/\((\d+) (?:long )?seams?/g)].map(([, n]) => Number(n)),
        );
        expect(seams.reduce((sum, n) => sum + n, 0)).toBe(rows * (columns - 1) + rows - 1);
        expect(canBeTold(columns, rows)).toBe(columns * rows <= 48);
      }),
      { numRuns: 60 },
    );
  });

  it('says each method in the reader’s own terms and direction', () => {
    const said = (method: (typeof SEAM_METHODS)[number], reader: Reader) =>
      writeSeam(method, 'sand')
        .map((text) => forReader(text, reader))
        .join('\n');
    for (const method of SEAM_METHODS)
      for (const reader of READERS) {
        expect(said(method, reader)).not.toMatch(/[⟦⟧]/);
        expect(said(method, reader)).toContain('sand');
      }
    expect(said('single-crochet', READERS[0]!)).toMatch(/From right to left, 1 sc through/);
    expect(said('single-crochet', READERS[1]!)).toMatch(/From left to right, 1 dc through/);
    expect(said('slip-stitch', READERS[1]!)).toMatch(/From left to right, 1 ss through/);
    expect(said('whip', READERS[1]!)).toContain('leave 6 in');
    // Tails of 15 cm at both ends, with every method.
    for (const method of SEAM_METHODS)
      expect(said(method, READERS[0]!).match(/leav\w+ 15 cm/g)).toHaveLength(2);
    expect(forReader(writeSeam('whip')[1]!, READERS[0]!)).toMatch(/^Thread the yarn on a blunt needle/);
    expect(said('whip', READERS[0]!)).not.toMatch(/sl st|\bsc\b/);
  });

  it('is told strip by strip, by their numbers', () => {
    expect(writeStrips(2, 2)).toEqual([
      'Strip 1: 1 to 2. (1 seam)',
      'Strip 2: 3 to 4. (1 seam)',
      'Strip 1 to strip 2, the corners pinned first: 1 to 3, 2 to 4. (1 long seam over 2 motifs)',
    ]);
    expect(writeStrips(1, 3)).toEqual([
      'Strip 1 to strip 2, the corners pinned first: 1 to 2. (1 long seam over 1 motif)',
      'Strip 2 to strip 3, the corners pinned first: 2 to 3. (1 long seam over 1 motif)',
    ]);
  });
});
