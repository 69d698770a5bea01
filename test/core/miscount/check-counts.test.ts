import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCounts } from '../../../src/core/miscount/check-counts.ts';
import { Problem } from '../../../src/core/base/problem.ts';
import { planRows, SHAPES, type Shape } from '../../../src/core/rows/index.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { asking } from '../../asking.ts';

const wrong = (shape: Shape, size: number, counts: number[], fromRow?: number) => {
  const found = checkCounts(
    planRows(shape, { size, ...(shape === 'flat' ? { otherSize: 20 } : {}) }),
    counts,
    fromRow,
  );
  expect(found.wrong).toBeDefined();
  return found.wrong!;
};
const likeliest = (...asked: Parameters<typeof wrong>) => wrong(...asked).causes[0]!.cause;

describe('every count right', () => {
  it('is said of any stretch of any plan', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES),
        fc.integer({ min: 2, max: 30 }),
        fc.nat(),
        fc.integer({ min: 1, max: 20 }),
        (shape, size, start, many) => {
          const plan = planRows(shape, { size });
          const fromRow = 1 + (start % plan.rows.length);
          const counts = plan.rows.slice(fromRow - 1, fromRow - 1 + many).map(({ count }) => count);
          const found = checkCounts(plan, counts, fromRow);
          expect(found.wrong).toBeUndefined();
          expect(found.difference).toBe(0);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('one count changed', () => {
  it('is found at its row, with its difference and at least one cause that can be followed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES),
        fc.constantFrom(...STITCHES),
        fc.integer({ min: 2, max: 30 }),
        fc.nat(),
        fc.integer({ min: -6, max: 6 }).filter((by) => by !== 0),
        (shape, stitch, size, where, by) => {
          const plan = planRows(shape, { size, stitch });
          const counts = plan.rows.map(({ count }) => count);
          const at = where % counts.length;
          fc.pre(counts[at]! + by >= 0);
          counts[at]! += by;
          const found = checkCounts(plan, counts);
          expect(found).toMatchObject({ difference: by, wrong: { row: at + 1, counted: counts[at]! } });
          expect(found.wrong!.causes.length).toBeGreaterThan(0);
          for (const cause of found.wrong!.causes)
            for (const text of [cause.cause, cause.why, cause.mend, cause.cost])
              expect(text).toMatch(/^[A-Z0-9].*\.$/su);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('to an even count in the diagonal square is never a miscounted row', () => {
    const plan = planRows('diagonal', { size: 12 });
    for (let counted = 0; counted < 30; counted++) {
      const { wrong } = checkCounts(plan, [counted], 5);
      if (counted % 2 === 0) {
        expect(wrong!.noRowHasIt).toContain('odd');
        expect(wrong!.causes.some(({ cause }) => /ahead|behind/.test(cause))).toBe(false);
      } else expect(wrong?.noRowHasIt).toBeUndefined();
    }
  });
});

describe('the likeliest cause', () => {
  it.each<[string, Shape, number, number[], number | undefined, RegExp]>([
    ['one too few while it grows', 'diagonal', 12, [3, 5, 7, 8, 10], undefined, /increase at one end/],
    ['one too many after the turn', 'diagonal', 3, [3, 5, 7, 6], undefined, /decrease at one end/],
    ['the next row’s counts', 'diagonal', 12, [3, 5, 7, 11, 13], undefined, /1 row ahead/],
    ['the same count twice, and on from it', 'diagonal', 12, [3, 5, 7, 7, 9], undefined, /1 row behind/],
    ['started from the wrong row', 'diagonal', 12, [21], 9, /ahead/],
    ['a turn forgotten', 'diagonal', 3, [3, 5, 7, 9], undefined, /turn was missed/],
    ['a turn too early', 'diagonal', 6, [3, 5, 7, 5], undefined, /too early/],
    ['both ends missed, once', 'diagonal', 12, [3, 5, 5], undefined, /both ends/],
    ['blocks that keep growing', 'blocks', 6, [1, 2, 3, 4, 5, 6, 7], undefined, /turn was missed/],
    [
      'corners without their second cluster',
      'clusters',
      4,
      [12, 12],
      undefined,
      /one cluster instead of two/,
    ],
    ['one corner missed', 'solid-square', 6, [4, 12, 18], undefined, /1 corner missed/],
    ['a round without increases', 'circle', 6, [6, 12, 12], undefined, /without its increases/],
    ['one increase missed', 'circle', 6, [6, 12, 17], undefined, /1 increase of 6/],
    ['an edge that drifts', 'flat', 20, [20, 19, 18, 17], undefined, /last stitch of the row/],
  ])('%s', (_, shape, size, counts, fromRow, cause) => {
    expect(likeliest(shape, size, counts, fromRow)).toMatch(cause);
  });

  it('counts what is to be worked again after ripping back: the rows as planned', () => {
    expect(wrong('diagonal', 12, [3, 5, 7, 8]).again).toBe(9);
    expect(wrong('diagonal', 12, [3, 5, 7, 8, 10]).again).toBe(9 + 11);
  });

  it('leaves alone what has come right again', () => {
    expect(wrong('diagonal', 12, [3, 5, 7, 8, 11]).causes[0]!.mend).toContain('Nothing to mend');
  });
});

describe('a count that no row goes wrong by', () => {
  it.each([
    ['circle', 10, [6, 12, 199]],
    ['diagonal', 12, [184]],
    ['diagonal', 12, [3, 5, 70]],
    ['solid-square', 8, [400]],
  ] as const)('%s %i, %j: is a slip in the list or another piece', (shape, size, counts) => {
    const found = wrong(shape, size, [...counts]);
    expect(found.causes.length).toBe(1);
    expect(found.causes[0]!.cause).toMatch(/was written down wrongly, or the work is of another size/);
    expect(found.noRowHasIt ?? '').not.toMatch(/missed or added/);
  });

  it('is not said of a list that began at another row, nor of missed increases', () => {
    expect(likeliest('circle', 30, [60, 66], 1)).not.toMatch(/increases too many/);
    expect(likeliest('circle', 10, [6, 6])).toMatch(/without its increases/);
    expect(likeliest('solid-square', 8, [12, 12])).not.toMatch(/written down/);
  });
});

describe('refused', () => {
  const plan = planRows('diagonal', { size: 2 });
  const option = (ask: () => unknown) => {
    try {
      ask();
    } catch (problem) {
      return problem instanceof Problem ? problem.option : problem;
    }
    return 'answered';
  };
  it('more counts than rows, and a start past the end', () => {
    expect(option(() => checkCounts(plan, [3, 5, 3, 1, 1]))).toBe('counts');
    expect(option(() => checkCounts(plan, [3], 5))).toBe('from_row');
  });
});

describe('/stitches check', () => {
  const room = asking();
  it('has no first wrong row where there is none', async () => {
    const { figures, data } = await room.ask('/stitches check shape:diagonal size:12 counts:"3 5 7"');
    expect(figures).toEqual({ difference: { value: 0, unit: '' } });
    expect(data.causes).toEqual([]);
  });
  it('gives the row, both counts and the causes', async () => {
    const { figures, data } = await room.ask(
      '/stitches check shape:diagonal size:12 counts:"19 20" from_row:9',
    );
    expect(Object.fromEntries(Object.entries(figures).map(([key, { value }]) => [key, value]))).toEqual({
      first_wrong_row: 10,
      expected: 21,
      counted: 20,
      difference: -1,
    });
    expect(data.causes[0]).toMatchObject({ cause: expect.any(String), mend: expect.any(String) });
  });
});
