/**
 * Every lesson's arithmetic against a figure that was published, a definition, or a general theorem; the source stands beside it. Of carrying
 * colours and of quotas nothing is published to check against: they say so, and rest on common practice and on bookkeeping.
 */
import { expect, it } from 'vitest';
import { LESSONS, lessonNamed } from '../../src/lessons/index.ts';
import { judge } from '../../src/lessons/lesson.ts';
import { CM_PER_INCH } from '../../src/standards/units.ts';

const INCHES = CM_PER_INCH;

type Check = readonly [
  lesson: string,
  given: Readonly<Record<string, number>>,
  value: number,
  source: string,
];

const CHECKS: readonly Check[] = [
  // Dummies (Wiley), "How to crochet a turning chain": 1 chain, not a stitch, for sc; 3 that count as the first dc.
  ['reading', { stitch: 0, tops: 20 }, 20, 'dummies.com'],
  ['reading', { stitch: 2, tops: 19 }, 20, 'dummies.com'],
  // sugarplumcrochet.wordpress.com, "decoding crochet patterns": UK dc is US sc, UK tr is US dc.
  ['names', { stitch: 0, into: 0 }, 0, 'sugarplumcrochet.wordpress.com'],
  ['names', { stitch: 2, into: 0 }, 2, 'sugarplumcrochet.wordpress.com'],
  // innerchildcrochet.com, "Mitered square": rows of 3, 5, 7, 9 … 2n + 1.
  ['growing', { size: 12, row: 3 }, 7, 'innerchildcrochet.com'],
  ['growing', { size: 12, row: 11 }, 23, 'innerchildcrochet.com'],
  // The rows after the turn are the odd numbers 2n − 1 … 1, whose sum is n² (en.wikipedia.org/wiki/Square_number): see below.
  ['shrinking', { size: 12, row: 24 }, 1, 'en.wikipedia.org/wiki/Square_number'],
  ['shrinking', { size: 12, row: 13 }, 23, 'en.wikipedia.org/wiki/Square_number'],
  ['which-row', { size: 12, stitches: 3 }, 23, 'the same, read the other way'],
  ['which-row', { size: 12, stitches: 23 }, 13, 'the same, read the other way'],
  [
    'where-wrong',
    { size: 12, wrong: 4, off: -1, last: 8 },
    4,
    'innerchildcrochet.com: 3, 5, 7, then 8 for 9',
  ],
  // pvmili.blogg.se, October 2023: 50 stitches at 5 an inch are 10 inches.
  ['swatch', { counted: 50, measured: 10 * INCHES, over: 4 * INCHES }, 20, 'pvmili.blogg.se'],
  // The inch is 2.54 cm (International Yard and Pound Agreement): n over 10 cm are 1.016 n over 4 inches.
  ['swatch', { counted: 20, measured: 10, over: 4 * INCHES }, 20.32, 'the inch'],
  ['gauge', { have: 10, want: 10.16 }, 1.6, 'the inch'],
  // Euclid I.47 with the triangle 3, 4, 5: half the widest row 15 cm, half the way 20 cm (25 stitches at 8⅓, 24 rows at 6).
  ['diamond', { size: 12, stitches: 25 / 3, rows: 6 }, 25, 'Euclid I.47'],
  // Two ends to a length; two colours carried are two lengths (common practice).
  ['colours', { stripes: 12, high: 2 }, 4, 'common practice'],
  // creativecrochetcorner.com, "How to end off": 4 to 6 in at each end.
  [
    'ends',
    { motifs: 1, lengths: 1, tail: (6 * INCHES) / 100 },
    (12 * INCHES) / 100,
    'creativecrochetcorner.com',
  ],
  // A long tail published: 3 × 12 in and 10 %: 36 + 3.6, about 40 (a copy of a craft site's article, thesprucecraftt.pages.dev).
  ['weighing', { motif: 12, motifs: 3, ball_length: 1, ball_weight: 1 }, 39.6, 'thesprucecraftt.pages.dev'],
  ['balls', { motif: 12, motifs: 3, ball_weight: 1 }, 40, 'thesprucecraftt.pages.dev'],
  // Half of all stitches but the widest row's rest stand in the rows after the turn: n² of 2n² + 2n (Square_number). With half the yarn at
  // the turn row of 12, 156 stitches are in reach, less the tail: rows 13 to 24 take 144.
  ['running-out', { size: 12, each: 24, left: 12, done: 12 }, 24, 'en.wikipedia.org/wiki/Square_number'],
  // Dummies (Wiley), "How to increase at several points in the same row": 40 stitches, 4 increases, 5 sections of 8.
  ['spacing', { from: 44, more: 4 }, 8, 'dummies.com; the 4 that are increased in come to its 40'],
  // crochetgeek.com, "Explaining multiple": 8 × 12 + 10 = 106; crochetcabana.com, "Multiples": one chain more for sc.
  ['repeats', { multiple: 8, plus: 10, repeats: 12, stitch: 0 }, 107, 'crochetgeek.com, crochetcabana.com'],
  // A queen-size mattress, 60 × 80 in (Wikipedia, "Bed size"), is 6 × 8 tiles of 10 in.
  [
    'how-many',
    { width: 60 * INCHES, height: 80 * INCHES, border: 0, side: 10 * INCHES },
    48,
    'en.wikipedia.org/wiki/Bed_size',
  ],
  // A grid of m × n has 2mn − m − n edges between neighbours (graph theory, from memory; 142 counted by hand: 7 × 10 + 9 × 8).
  ['joining', { columns: 8, rows: 10, side: 100 }, 2 * 80 - 18, 'counted: 7 × 10 + 9 × 8'],
  [
    'border',
    { width: 10 * INCHES, height: 10 * INCHES, stitches: 20, over: 4 * INCHES, corner: 3 },
    212,
    'pvmili.blogg.se',
  ],
  // crochetspot.com, "How to crochet a square": rounds of 12, 20, 28, 36 with three in each corner.
  ['rounds', { across: 0, down: 0, corner: 3, round: 4 }, 36, 'crochetspot.com'],
  // Kept books: what came in less what went out (derived).
  ['quotas', { cells: 24, spares: 2, pledged: 7, waiting: 3, accepted: 9 }, 7, 'derived'],
];

it.each(CHECKS)('%s %o is %f (%s)', (name, given, value) => {
  const lesson = lessonNamed(name)!;
  expect(lesson.practice.solve(given).value).toBeCloseTo(value, 6);
  expect(judge(lesson, given, value).right).toBe(true);
});

it('leaves no lesson out', () => {
  expect(LESSONS.map(({ name }) => name).filter((name) => !CHECKS.some(([one]) => one === name))).toEqual([]);
});

it('shrinks through the odd numbers, whose sum is a square', () => {
  const shrinking = lessonNamed('shrinking')!;
  for (const size of [5, 12, 20]) {
    const counts = Array.from(
      { length: size },
      (_, at) => shrinking.practice.solve({ size, row: size + 1 + at }).value,
    );
    expect(counts.reduce((sum, one) => sum + one, 0)).toBe(size ** 2);
  }
});
