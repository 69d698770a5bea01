/** Stripes in words: what is read is what was meant, what is written is read back, and what does not fit is said. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  colourOf,
  coloursIn,
  joinRuns,
  rowsIn,
  spans,
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
    expect(rowsIn(readRuns(offered, 24))).toBe(24);
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
        const read = readRuns(written, rowsIn(runs), called);
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
          expect(rowsIn(read)).toBe(rows);
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
        const rows = Array.from({ length: rowsIn(runs) }, (_, index) => colourOf(runs, index + 1));
        expect(rows).toEqual(runs.flatMap(({ colour, rows }) => Array<string>(rows).fill(colour)));
        expect(spans(runs).at(-1)!.to).toBe(rowsIn(runs));
        expect(new Set(rows)).toEqual(new Set(coloursIn(runs)));
      }),
    );
  });
});
