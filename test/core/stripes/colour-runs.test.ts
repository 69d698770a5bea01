/** Stripes in words: what is read is what was meant, what is written is read back, and what does not fit is said. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  colourOf,
  coloursIn,
  cutRuns,
  joinRuns,
  countRows,
  listSpans,
  writeRuns,
  type ColourRun,
} from '../../../src/core/stripes/colour-runs.ts';
import { readRuns } from '../../../src/core/stripes/read-runs.ts';
import { Problem } from '../../../src/core/base/problem.ts';
import { refused } from '../../refused.ts';

const run = (rows: number, colour: string): ColourRun => ({ colour, rows });
function refusal(read: () => unknown): Problem {
  try {
    read();
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
  throw new Error('was not refused');
}

describe('stripes as people say them', () => {
  const throwsStripes = [
    run(4, 'moss'),
    run(2, 'sand'),
    run(4, 'moss'),
    run(2, 'sand'),
    run(4, 'moss'),
    run(2, 'sand'),
    run(6, 'moss'),
  ];
  it.each([
    '4 rows moss, 2 rows sand, three times, then 6 rows moss',
    'Four rows of Moss and two rows of sand, 3 times; then moss to the end.',
    '4 moss, 2 sand, 3x, rest moss',
    'moss 4 rows, sand 2 rows, x3, then the rest in moss',
    '4 rounds moss, 2 rounds sand, 3 times, then 6 rounds moss',
  ])('%s', (text) => {
    const read = readRuns(text, 24).map(({ colour, rows }) => run(rows, colour.toLowerCase()));
    expect(read).toEqual(throwsStripes);
  });

  it('repeats only the group that “then” began', () => {
    expect(readRuns('3 rows clay, then 1 row moss, 1 row sand, twice, then 2 rows clay', 9)).toEqual([
      run(3, 'clay'),
      run(1, 'moss'),
      run(1, 'sand'),
      run(1, 'moss'),
      run(1, 'sand'),
      run(2, 'clay'),
    ]);
  });

  it('joins neighbours of one colour, whatever their capitals', () => {
    expect(readRuns('2 rows Moss, 3 rows moss, twice', 10)).toEqual([run(10, 'Moss')]);
    expect(readRuns('twenty-four rows old rose', 24)).toEqual([run(24, 'old rose')]);
    expect(readRuns('all of moss', 24)).toEqual([run(24, 'moss')]);
  });

  it('leaves names of colours as they are, whatever words they hold', () => {
    expect(readRuns('4 rows heathen green, 2 rows salt and pepper', 6)).toEqual([
      run(4, 'heathen green'),
      run(2, 'salt and pepper'),
    ]);
  });

  it.each([
    ['4 rows moss, 2 rows sand, twice', 12],
    ['30 rows moss, 2 rows sand', 32],
  ])('%s does not come to 24, and what does is offered', (text, given) => {
    const problem = refusal(() => readRuns(text, 24));
    expect(problem).toEqual(refused('rows-do-not-fit', { facts: { needed: 24, given } }));
    const offered = /^This fits: (.*)\.$/.exec(problem.hint)![1]!;
    expect(countRows(readRuns(offered, 24))).toBe(24);
  });

  it.each([
    ['', 'no-rows'],
    [',', 'no-rows'],
    ['moss', 'stripe-unreadable'],
    ['4 rows', 'colour-missing'],
    ['three times', 'repeat-of-nothing'],
    ['4 rows moss 2 rows sand', 'stripe-unreadable'],
    ['4 rows moss x3', 'stripe-unreadable'],
    ['0 rows moss, rest sand', 'no-rows'],
    ['rest moss, 2 rows sand', 'rest-not-last'],
    ['24 rows moss, rest sand', 'no-rows'],
    ['1 row moss, twice, 1 row sand, twice', 'repeat-twice'],
    ['1 row moss, 9999 times', 'too-many-rows'],
    ['1 row moss, 0 times', 'repeat-of-nothing'],
    [`4 rows ${'m'.repeat(61)}, rest sand`, 'name-too-long'],
  ])('“%s” is refused with a line that shows how: %s', (text, code) => {
    const problem = refusal(() => readRuns(text, 24));
    expect(problem.code).toBe(code);
    expect(problem.hint.length).toBeGreaterThan(10);
  });

  const colours = fc.constantFrom('moss', 'sand', 'clay', 'old rose', 'salt and pepper', 'No 7', 'a');
  const someRuns = fc
    .array(fc.record({ colour: colours, rows: fc.integer({ min: 1, max: 9 }) }), {
      minLength: 1,
      maxLength: 9,
    })
    .chain((group) =>
      fc.integer({ min: 1, max: 5 }).map((times) => Array(times).fill(group).flat() as ColourRun[]),
    )
    .map(joinRuns);

  it('reads back what it writes', () => {
    fc.assert(
      fc.property(someRuns, fc.constantFrom('row' as const, 'round' as const), (runs, called) => {
        const written = writeRuns(runs, called);
        const read = readRuns(written, countRows(runs), called);
        expect(read).toEqual(runs);
        expect(writeRuns(read, called)).toBe(written);
      }),
    );
  });

  it('never throws anything but a Problem, and never reads another number of rows', () => {
    const words = fc
      .array(
        fc.constantFrom(
          '4',
          'rows',
          'moss',
          ',',
          'then',
          'three times',
          'rest',
          'of',
          'and',
          '2',
          'sand',
          'x',
          '…',
          'twice',
        ),
        { maxLength: 14 },
      )
      .map((parts) => parts.join(' '));
    fc.assert(
      fc.property(fc.oneof(words, fc.string()), fc.integer({ min: 1, max: 40 }), (text, rows) => {
        try {
          const read = readRuns(text, rows);
          expect(countRows(read)).toBe(rows);
          expect(readRuns(writeRuns(read), rows)).toEqual(read);
        } catch (error) {
          expect(error).toBeInstanceOf(Problem);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('covers every row once', () => {
    fc.assert(
      fc.property(someRuns, (runs) => {
        const rows = Array.from({ length: countRows(runs) }, (_, index) => colourOf(runs, index + 1));
        expect(rows).toEqual(runs.flatMap(({ colour, rows }) => Array<string>(rows).fill(colour)));
        expect(listSpans(runs).at(-1)!.to).toBe(countRows(runs));
        expect(new Set(rows)).toEqual(new Set(coloursIn(runs)));
      }),
    );
  });
});

describe('stripes in as few words as they need', () => {
  /** `a2 b1` for two rows of a and one of b. */
  const runs = (short: string): ColourRun[] =>
    short.split(' ').map((one) => run(Number(one.slice(1)), one[0]!));
  const repeated = (short: string, times: number) =>
    runs(Array.from({ length: times }, () => short).join(' '));

  it.each([
    ['a4 b2 a4 b2 a4 b2 a6', '4 rows a, 2 rows b, three times, then 6 rows a'],
    ['a1 b1 a1 b1', '1 row a, 1 row b, twice'],
    ['a1 b1 a1 b1 a1', '1 row a, 1 row b, twice, then 1 row a'],
    ['c3 a1 b1 a1 b1 c2', '3 rows c, then 1 row a, 1 row b, twice, then 2 rows c'],
    ['a1 b1 c1 a1 b1 c1', '1 row a, 1 row b, 1 row c, twice'],
    // What covers more goes first: five twice, not two twice; of two that cover as much the shorter.
    ['a1 b1 a1 b1 c1 a1 b1 a1 b1 c1', '1 row a, 1 row b, 1 row a, 1 row b, 1 row c, twice'],
    ['a1 b1 a1 b1 a1 b1 a1 b1', '1 row a, 1 row b, four times'],
    // Of other heights, or other colours, it is no repeat.
    ['a2 b1 a2 b2', '2 rows a, 1 row b, 2 rows a, 2 rows b'],
    ['a2 b1 c2 b1', '2 rows a, 1 row b, 2 rows c, 1 row b'],
    ['a2 b1 a2', '2 rows a, 1 row b, 2 rows a'],
  ])('%s', (short, words) => {
    expect(writeRuns(runs(short))).toBe(words);
  });

  it('says times in words as far as they are one', () => {
    const times = (n: number) => writeRuns(repeated('a1 b1', n)).split(', ')[2];
    expect([2, 3, 19, 20].map(times)).toEqual(['twice', 'three times', 'nineteen times', '20 times']);
    expect(writeRuns(repeated('a1 b2', 3), 'round')).toBe('1 round a, 2 rounds b, three times');
  });

  it('is cut where it ends, and has no colour beyond', () => {
    expect(cutRuns(runs('a4 b2'), 4)).toEqual(runs('a4'));
    expect(cutRuns(runs('a4 b2'), 5)).toEqual(runs('a4 b1'));
    expect(cutRuns(runs('a4 b2'), 9)).toEqual(runs('a4 b2'));
    expect([0, 1, 4, 5, 6, 7].map((row) => colourOf(runs('a4 b2'), row))).toEqual([
      undefined,
      'a',
      'a',
      'b',
      'b',
      undefined,
    ]);
    expect(joinRuns(runs('a1 a2 b1 a1'))).toEqual(runs('a3 b1 a1'));
  });
});

describe('stripes that are typed', () => {
  it.each([
    // Numbers in words, blanks, stops and every way to part two groups.
    ['a row moss, two rows sand', 'm1 s2'],
    ['1 row of moss, 2 rows in sand', 'm1 s2'],
    ['  1  row   moss ,2 rows sand ., ', 'm1 s2'],
    ['1 row moss; 2 rows sand;', 'm1 s2'],
    ['1 row moss then 2 rows sand', 'm1 s2'],
    ['1 row moss, then 2 rows sand', 'm1 s2'],
    ['1 row moss; THEN: 2 rows sand', 'm1 s2'],
    ['1 row moss,then, 2 rows sand', 'm1 s2'],
    ['1 row moss and 2 rows sand', 'm1 s2'],
    ['1 row moss, and 2 rows sand', 'm1 s2'],
    ['moss for 1 row, sand for 2 rows', 'm1 s2'],
    ['1 row moss, sand to the end', 'm1 s2'],
    ['1 row moss, the rest in sand', 'm1 s2'],
    ['1 rnd moss, 2 rnds sand', 'm1 s2'],
    ['1 row moss, once, then 2 rows sand', 'm1 s2'],
    ['moss throughout', 'm3'],
    ['all moss', 'm3'],
    ['1 row moss, x 3', 'm3'],
    ['1 row moss, 3 x', 'm3'],
    ['1 row moss, 3×', 'm3'],
  ])('%s', (text, short) => {
    const words: Record<string, string> = { m: 'moss', s: 'sand' };
    expect(readRuns(text, 3)).toEqual(
      short.split(' ').map((one) => run(Number(one.slice(1)), words[one[0]!]!)),
    );
  });

  it.each([
    ['twenty rows moss', 20],
    ['twenty-one rows moss', 21],
    ['thirty two rows moss', 32],
    ['ninety nine rows moss', 99],
    ['nineteen rows moss', 19],
    ['an row moss', 1],
  ])('%s are %i', (text, rows) => {
    expect(readRuns(text, rows)).toEqual([run(rows, 'moss')]);
  });

  it.each([
    [
      '4 rows moss, 2 rows sand, twice',
      'That is 12 rows; the piece has 24: 12 are missing.',
      'This fits: 4 rows moss, 2 rows sand, twice, then 12 rows moss.',
      { needed: 24, given: 12 },
    ],
    [
      '30 rows moss, 2 rows sand',
      'That is 32 rows; the piece has 24: 8 too many.',
      'This fits: 24 rows moss.',
      { needed: 24, given: 32 },
    ],
    [
      '23 rows moss',
      'That is 23 rows; the piece has 24: 1 is missing.',
      'This fits: 24 rows moss.',
      { needed: 24, given: 23 },
    ],
  ])('%s: says how far off it is, and what fits', (text, message, hint, facts) => {
    expect(refusal(() => readRuns(text, 24))).toEqual(refused('rows-do-not-fit', { message, hint, facts }));
  });

  it('leaves nothing to the rest where all rows are taken', () => {
    for (const given of [24, 30])
      expect(refusal(() => readRuns(`${given} rows moss, rest sand`, 24))).toEqual(
        refused('no-rows', {
          message: 'No rows are left for sand.',
          hint: `Those before it already come to ${given} of 24.`,
          facts: { rows: 24, given },
        }),
      );
    expect(readRuns('23 rows moss, rest sand', 24)).toEqual([run(23, 'moss'), run(1, 'sand')]);
  });

  it('repeats up to four times the piece, so that what is too long can be said', () => {
    const code = (text: string) => refusal(() => readRuns(text, 24));
    expect(code('1 row moss, 96 times')).toEqual(
      refused('rows-do-not-fit', { facts: { needed: 24, given: 96 } }),
    );
    expect(code('1 row moss, 97 times')).toEqual(
      refused('too-many-rows', { facts: { rows: 24, given: 97 } }),
    );
    expect(code('12 rows clay, then 2 rows moss, 42 times')).toEqual(refused('rows-do-not-fit'));
    expect(code('12 rows clay, then 2 rows moss, 43 times')).toEqual(
      refused('too-many-rows', { facts: { rows: 24, given: 98 } }),
    );
  });

  it('takes a name of sixty characters, and not one more', () => {
    expect(readRuns(`3 rows ${'m'.repeat(60)}`, 3)).toHaveLength(1);
    expect(refusal(() => readRuns(`3 rows ${'m'.repeat(61)}`, 3))).toEqual(
      refused('name-too-long', { facts: { most: 60, given: 61 } }),
    );
  });

  it('knows a colour by any capitals, in the first spelling', () => {
    expect(readRuns('1 row Moss, 1 row sand, 1 row MOSS', 3)).toEqual([
      run(1, 'Moss'),
      run(1, 'sand'),
      run(1, 'Moss'),
    ]);
  });
});
