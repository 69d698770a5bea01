import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reckonRow } from '../../../src/core/rows/row-facts.ts';
import { MOST_ROWS } from '../../../src/core/base/limits.ts';
import { rowPlan, SHAPES, total, widest, type Shape } from '../../../src/core/rows/index.ts';
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
          const plan = rowPlan(shape, { size, stitch });
          const row = 1 + Math.floor(where * (plan.rows.length - 1));
          const facts = reckonRow({ shape, size, stitch, row });
          expect(facts.count).toBe(plan.rows[row - 1]!.count);
          expect(facts.soFar).toBe(total(plan, row));
          expect(facts.total).toBe(total(plan));
        },
      ),
      { numRuns: 150 },
    );
  });

  it('counts from row to row by its increases and decreases', () => {
    fc.assert(
      fc.property(shape, size, stitch, (shape, size, stitch) => {
        const { rows } = rowPlan(shape, { size, stitch });
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

describe('totals', () => {
  it('of the diagonal square: 2R rows, widest 2R + 1, 2R² + 2R stitches, odd in every row', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: MOST_ROWS }), (size) => {
        const plan = rowPlan('diagonal', { size });
        expect(plan.rows).toHaveLength(2 * size);
        expect(widest(plan)).toMatchObject({ row: size, count: 2 * size + 1 });
        expect(total(plan)).toBe(2 * size ** 2 + 2 * size);
        expect(plan.rows.every(({ count }) => count % 2 === 1)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  it('of a rectangle in blocks: M + N − 1 rows, M·N blocks', () => {
    fc.assert(
      fc.property(size, size, (size, otherSize) => {
        const plan = rowPlan('blocks', { size, otherSize });
        expect(plan.rows).toHaveLength(size + otherSize - 1);
        expect(total(plan)).toBe(size * otherSize);
        expect(widest(plan).count).toBe(Math.min(size, otherSize));
      }),
      { numRuns: 60 },
    );
  });

  it('of the square in clusters: 12i a round, 6n(n + 1) in all', () => {
    const plan = rowPlan('clusters', { size: 5 });
    expect(plan.rows.map(({ count }) => count)).toEqual([12, 24, 36, 48, 60]);
    expect(total(plan)).toBe(180);
  });

  it('of a flat piece: stitches times rows', () => {
    expect(total(rowPlan('flat', { size: 30, otherSize: 7 }))).toBe(210);
  });
});

describe('refused', () => {
  it.each(SHAPES.filter((one) => one !== 'blocks' && one !== 'flat'))(
    'a second measure for %s',
    (one: Shape) => {
      expect(() => rowPlan(one, { size: 4, otherSize: 5 })).toThrow(
        refused('one-measure-only', { facts: { shape: one } }),
      );
    },
  );
  it('a row that is not there', () => {
    expect(() => reckonRow({ shape: 'circle', size: 4, row: 5 })).toThrow(
      refused('no-such-row', { option: 'row', facts: { row: 5, rows: 4 } }),
    );
  });
});
