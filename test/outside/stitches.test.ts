/** Counts, spacing and repeats against published figures; the source stands beside each check. */
import { euclid } from '@tonaljs/rhythm-pattern';
import { describe, expect, it } from 'vitest';
import { asking } from '../asking.ts';

const room = asking();
const stitchesIn = async (options: string, row: number) =>
  (await room.ask(`/stitches row ${options} row:${row}`)).figures['stitches']?.value;
const counts = (options: string, rows: number) =>
  Promise.all(Array.from({ length: rows }, (_, index) => stitchesIn(options, index + 1)));

describe('rows', () => {
  // innerchildcrochet.com, "Mitered square" (2007-08): corner-out rows of 3, 5, 7, 9 … 2n + 1.
  it('grow from a corner by two', async () => {
    expect(await counts('shape:diagonal size:12', 4)).toEqual([3, 5, 7, 9]);
    expect(await stitchesIn('shape:diagonal size:12', 12)).toBe(25);
  });

  // crochetspot.com, "How to crochet a square": rounds of sc with three in each corner.
  it('of a solid square gain eight a round', async () => {
    expect(await counts('shape:solid-square size:7 stitch:sc', 7)).toEqual([4, 12, 20, 28, 36, 44, 52]);
  });

  // pressreader.com, a UK magazine of 2020-10-22: sc rounds of a circle.
  it('of a circle in the shortest stitch gain six a round', async () => {
    expect(await counts('shape:circle size:6 stitch:sc', 6)).toEqual([6, 12, 18, 24, 30, 36]);
  });

  // crochicanbf.com, 2025-04: 8, 16, 24, 32, 40 … 80 at round 10; craftymaria.blogspot.com, 2009: dc 12 a round.
  it('of a circle in taller stitches gain eight and twelve', async () => {
    expect(await counts('shape:circle size:10 stitch:"US hdc"', 5)).toEqual([8, 16, 24, 32, 40]);
    expect(await stitchesIn('shape:circle size:10 stitch:"US hdc"', 10)).toBe(80);
    expect(await counts('shape:circle size:2 stitch:"US dc"', 2)).toEqual([12, 24]);
  });
});

const spread = async (from: number, to: number, worked: 'flat' | 'round') =>
  (await room.ask(`/stitches spread from:${from} to:${to} worked:${worked}`)).data.runs as number[];
const times = (runs: readonly number[], run: number) => runs.filter((one) => one === run).length;

describe('even spacing', () => {
  // Dummies (Wiley), "How to increase at several points in the same row": 40 stitches, 4 increases, five sections of 8.
  it('40 stitches, 4 increases: sections of 8', async () => {
    // The increase is the last stitch of its section; the last section has none.
    expect(await spread(40, 44, 'flat')).toEqual([7, 7, 7, 7, 8]);
  });

  // Teach Yourself VISUALLY Knitting (Wiley), ch. 4: 30 stitches, increase 5, six sections of 5.
  it('30 stitches, 5 increases: sections of 5', async () => {
    expect(await spread(30, 35, 'flat')).toEqual([4, 4, 4, 4, 4, 5]);
  });

  // The same book: 30 stitches, decrease 10: one plain, two together, ten times.
  it('30 stitches, 10 decreases: one plain before each', async () => {
    expect(await spread(30, 20, 'round')).toEqual(Array<number>(10).fill(1));
  });

  // studyres.com/doc/1062783 (instructional article, 2010): 124 stitches, 14 increases: every 8th twice, every 9th twelve times.
  it('124 stitches, 14 increases: every 8th and every 9th', async () => {
    const runs = await spread(124, 138, 'round');
    expect([times(runs, 7), times(runs, 8)]).toEqual([2, 12]);
  });

  // knittingwithkarma.blogspot.com, 2011-06: 40 to 48 in every 5th; neasesneedlework.com: 60 stitches, 6 more, every 10th.
  it('every 5th and every 10th', async () => {
    expect(await spread(40, 48, 'round')).toEqual(Array<number>(8).fill(4));
    expect(await spread(60, 66, 'round')).toEqual(Array<number>(6).fill(9));
  });
});

/** All rotations of a run of gaps, smallest first, so that two runs are the same up to where they begin. */
const turned = (gaps: readonly number[]) =>
  gaps
    .map((_, index) => [...gaps.slice(index), ...gaps.slice(0, index)].join(' '))
    .sort()
    .at(0);
const gapsOf = (pattern: readonly number[]) => {
  const at = pattern.flatMap((beat, index) => (beat === 1 ? [index] : []));
  return at.map((here, index) => (at[index + 1] ?? (at[0] ?? 0) + pattern.length) - here);
};

describe('even distribution', () => {
  // Toussaint, "The Euclidean Algorithm Generates Traditional Musical Rhythms" (2005); gaps as listed in course
  // material on it, docs.rs/euclidean-rhythm and mutwo-org.github.io. Up to where the round begins.
  it.each([
    [2, 5, [2, 3]],
    [3, 4, [2, 1, 1]],
    [3, 8, [3, 3, 2]],
    [5, 7, [2, 1, 1, 2, 1]],
    [5, 8, [2, 1, 2, 1, 2]],
    [7, 12, [2, 1, 2, 2, 1, 2, 2]],
  ])('%i changes over %i stitches', async (k, n, gaps) => {
    const runs = await spread(n, n + k, 'round');
    expect(turned(runs.map((run) => run + 1))).toBe(turned(gaps));
  });

  // The library @tonaljs/rhythm-pattern computes the same by another way (Bjorklund's).
  it('agrees with another implementation', async () => {
    for (const n of [9, 16, 23, 30])
      for (let k = 2; k <= n; k += 3) {
        const runs = await spread(n, n + k, 'round');
        expect(turned(runs.map((run) => run + 1))).toBe(turned(gapsOf(euclid(n, k))));
      }
  });
});

const repeat = async (options: string) => (await room.ask(`/stitches repeat ${options}`)).figures;

describe('repeats', () => {
  // crochetgeek.com, 2007-07, "Explaining multiple in crochet patterns": multiple of 8 plus 10, 12 repeats: 106.
  it('multiple of 8 plus 10', async () => {
    expect(await repeat('multiple:8 plus:10 near:106')).toMatchObject({
      below: { value: 106 },
      above: { value: 106 },
      nearest: { value: 106 },
      repeats: { value: 12 },
    });
  });

  // crochetcabana.com, "Multiples": multiple of 3 plus 1, 30 repeats 91, 100 repeats 301.
  it('multiple of 3 plus 1', async () => {
    expect(await repeat('multiple:3 plus:1 near:91')).toMatchObject({
      nearest: { value: 91 },
      repeats: { value: 30 },
    });
    expect(await repeat('multiple:3 plus:1 near:301')).toMatchObject({
      nearest: { value: 301 },
      repeats: { value: 100 },
    });
  });

  // adstoob.com, "Multiples": multiple of 3 plus 2 is 5, 8, 11 …
  it('multiple of 3 plus 2', async () => {
    expect(await repeat('multiple:3 plus:2 near:7')).toMatchObject({
      below: { value: 5 },
      above: { value: 8 },
    });
    expect(await repeat('multiple:3 plus:2 near:10')).toMatchObject({
      below: { value: 8 },
      above: { value: 11 },
    });
  });

  // a2oz.net: chain 10 gives 9 sc; forum.knittinghelp.com/t/72046: chain 12 gives 11 hdc, or 13 where the skipped chains do
  // not count; crochetcabana.com: dc two less than the chain.
  it('begins with a chain that fits the stitch', async () => {
    expect(await repeat('multiple:9 near:9 stitch:"US sc"')).toMatchObject({
      foundation_chain: { value: 10 },
    });
    const hdc = await room.ask('/stitches repeat multiple:11 near:11 stitch:"US hdc"');
    expect(hdc.figures).toMatchObject({ foundation_chain: { value: 12 } });
    expect(hdc.lines?.join(' ')).toContain('chain 13');
    expect(await repeat('multiple:10 near:10 stitch:"US dc"')).toMatchObject({
      foundation_chain: { value: 12 },
    });
  });
});
