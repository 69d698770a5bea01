import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate } from '../../../src/core/base/working.ts';
import { BLOCKS_FALLING, BLOCKS_LEVEL, BLOCKS_RISING } from '../../../src/core/rows/blocks.ts';
import {
  FALLING_COUNT,
  FALLING_SO_FAR,
  RISING_COUNT,
  RISING_SO_FAR,
} from '../../../src/core/rows/diagonal.ts';
import { CIRCLE_COUNT, HEXAGON_COUNT } from '../../../src/core/rows/round.ts';
import { reckonRow } from '../../../src/core/rows/row-facts.ts';
import { MOST_ROWS } from '../../../src/core/base/limits.ts';
import {
  facesRight,
  planRows,
  SHAPES,
  sumCounts,
  findWidest,
  type Shape,
} from '../../../src/core/rows/index.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { refused } from '../../refused.ts';

const shape = fc.constantFrom(...SHAPES);
const stitch = fc.constantFrom(...STITCHES);
const size = fc.integer({ min: 1, max: 60 });

describe('every plan', () => {
  it('has formulas that give the counts and totals of its rows', () => {
    fc.assert(
      fc.property(
        shape,
        size,
        stitch,
        fc.double({ min: 0, max: 1, noNaN: true }),
        (shape, size, stitch, where) => {
          const plan = planRows(shape, { size, stitch });
          const row = 1 + Math.floor(where * (plan.rows.length - 1));
          const facts = reckonRow({ shape, size, stitch, row });
          expect(facts.count).toBe(plan.rows[row - 1]!.count);
          expect(facts.soFar).toBe(sumCounts(plan, row));
          expect(facts.total).toBe(sumCounts(plan));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('counts from row to row by its increases and decreases', () => {
    fc.assert(
      fc.property(shape, size, stitch, (shape, size, stitch) => {
        const { rows } = planRows(shape, { size, stitch });
        for (let index = 1; index < rows.length; index++) {
          const row = rows[index]!;
          expect(row.count).toBe(rows[index - 1]!.count + row.increases - row.decreases);
          expect(row.count).toBeGreaterThan(0);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('the formula of a row', () => {
  /** The label and the result of what a row's count, or all up to it, is reckoned by. */
  const by = (shape: Shape, size: number, otherSize?: number) => {
    const plan = planRows(shape, { size, otherSize });
    return plan.rows.map(({ row }) => ({
      row,
      count: plan.countFormula(row).formula.formula,
      soFar: plan.soFarFormula(row).formula.formula,
      holds: [plan.countFormula(row), plan.soFarFormula(row)].map(({ formula, values }) =>
        evaluate(formula.formula, values),
      ),
    }));
  };
  const second = fc.integer({ min: 1, max: 30 });

  it('holds for both measures of blocks and flat pieces', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('blocks' as const, 'flat' as const),
        second,
        second,
        (shape, size, other) => {
          const plan = planRows(shape, { size, otherSize: other });
          for (const { row, holds } of by(shape, size, other))
            expect(holds).toEqual([plan.rows[row - 1]!.count, sumCounts(plan, row)]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('is the plainest that holds: while it grows, while it keeps its count, while it shrinks', () => {
    const ways = (shape: Shape, size: number, otherSize?: number) =>
      by(shape, size, otherSize).map(({ soFar }) => soFar);
    expect(ways('blocks', 3, 5)).toEqual([
      ...Array.from({ length: 3 }, () => BLOCKS_RISING.formula),
      ...Array.from({ length: 2 }, () => BLOCKS_LEVEL.formula),
      ...Array.from({ length: 2 }, () => BLOCKS_FALLING.formula),
    ]);
    expect(ways('blocks', 5, 3)).toEqual(ways('blocks', 3, 5));
    expect(ways('diagonal', 2)).toEqual(
      [RISING_SO_FAR, RISING_SO_FAR, FALLING_SO_FAR, FALLING_SO_FAR].map(({ formula }) => formula),
    );
    expect(by('diagonal', 2).map(({ count }) => count)).toEqual(
      [RISING_COUNT, RISING_COUNT, FALLING_COUNT, FALLING_COUNT].map(({ formula }) => formula),
    );
    expect(by('circle', 2)[1]!.count).toBe(CIRCLE_COUNT.formula);
    expect(by('hexagon', 2)[1]!.count).toBe(HEXAGON_COUNT.formula);
  });
});

describe('what is said of a row', () => {
  it('takes the last row, and the usual stitch, where none is named, and says so', () => {
    const told = reckonRow({ shape: 'diagonal', size: 4 });
    expect(told).toMatchObject({ row: 8, count: 1, soFar: 40, total: 40 });
    expect(told.assumptions).toEqual([
      'Worked in ⟦hdc⟧, as no stitch was named.',
      'The last row, as no row was named.',
    ]);
    // The total is what it comes to up to the last row, and said once.
    expect(told.working.steps.map(({ result }) => result)).toEqual([1, 40]);
  });

  it('assumes nothing that was said', () => {
    const told = reckonRow({ shape: 'diagonal', size: 4, row: 3, stitch: 'sc' });
    expect(told).toMatchObject({ count: 7, soFar: 15, total: 40, assumptions: [] });
    expect(told.working.steps.map(({ result }) => result)).toEqual([7, 15, 40]);
  });

  it('of a flat piece needs no rows beyond the one asked for', () => {
    expect(reckonRow({ shape: 'flat', size: 20, row: 7 })).toMatchObject({ soFar: 140, total: 140 });
    expect(reckonRow({ shape: 'flat', size: 20, row: 7, otherSize: 9 })).toMatchObject({
      soFar: 140,
      total: 180,
    });
    expect(reckonRow({ shape: 'flat', size: 20 })).toMatchObject({ row: 1, total: 20 });
  });

  it('begins with nothing more or fewer than a row before, and calls the first of the longest the widest', () => {
    fc.assert(
      fc.property(shape, size, (shape, size) => {
        const { rows } = planRows(shape, { size });
        expect(rows[0]).toMatchObject({ row: 1, increases: 0, decreases: 0 });
        expect(rows.map(({ row }) => row)).toEqual(rows.map((_, index) => index + 1));
      }),
      { numRuns: 20 },
    );
    expect(findWidest(planRows('flat', { size: 9, otherSize: 4 })).row).toBe(1);
    expect(findWidest(planRows('blocks', { size: 3, otherSize: 5 })).row).toBe(3);
  });
});

it('the right side faces her in every second row, and in every round', () => {
  expect([1, 2, 3, 4].map((row) => facesRight({ worked: 'rows' }, row))).toEqual([true, false, true, false]);
  expect([1, 2, 3, 4].map((row) => facesRight({ worked: 'rounds' }, row))).toEqual([true, true, true, true]);
});

describe('totals', () => {
  it('of the diagonal square: 2R rows, widest 2R + 1, 2R² + 2R stitches, odd in every row', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: MOST_ROWS }), (size) => {
        const plan = planRows('diagonal', { size });
        expect(plan.rows).toHaveLength(2 * size);
        expect(findWidest(plan)).toMatchObject({ row: size, count: 2 * size + 1 });
        expect(sumCounts(plan)).toBe(2 * size ** 2 + 2 * size);
        expect(plan.rows.every(({ count }) => count % 2 === 1)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('of a rectangle in blocks: M + N − 1 rows, M·N blocks', () => {
    fc.assert(
      fc.property(size, size, (size, otherSize) => {
        const plan = planRows('blocks', { size, otherSize });
        expect(plan.rows).toHaveLength(size + otherSize - 1);
        expect(sumCounts(plan)).toBe(size * otherSize);
        expect(findWidest(plan).count).toBe(Math.min(size, otherSize));
      }),
      { numRuns: 60 },
    );
  });

  it('of the square in clusters: 12i a round, 6n(n + 1) in all', () => {
    const plan = planRows('clusters', { size: 5 });
    expect(plan.rows.map(({ count }) => count)).toEqual([12, 24, 36, 48, 60]);
    expect(sumCounts(plan)).toBe(180);
  });

  it('of a flat piece: stitches times rows', () => {
    expect(sumCounts(planRows('flat', { size: 30, otherSize: 7 }))).toBe(210);
  });
});

describe('refused', () => {
  it.each(SHAPES.filter((one) => one !== 'blocks' && one !== 'flat'))(
    'a second measure for %s',
    (one: Shape) => {
      expect(() => planRows(one, { size: 4, otherSize: 5 })).toThrow(
        refused('one-measure-only', { facts: { shape: one } }),
      );
    },
  );
  it('a row that is not there, in the words of rows or of rounds', () => {
    const said = (shape: Shape, row: number) => () => reckonRow({ shape, size: 4, row });
    expect(said('circle', 5)).toThrow(
      refused('no-such-row', {
        option: 'row',
        facts: { row: 5, rows: 4 },
        hint: 'Ask for a round from 1 to 4.',
      }),
    );
    expect(said('diagonal', 9)).toThrow(refused('no-such-row', { hint: 'Ask for a row from 1 to 8.' }));
    expect(said('diagonal', 8)).not.toThrow();
  });
});
