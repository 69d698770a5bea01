import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_ROWS } from '../../../src/core/base/limits.ts';
import type { Problem } from '../../../src/core/base/problem.ts';
import { planRows, SHAPES } from '../../../src/core/rows/index.ts';
import { findRowWithCount, findRow } from '../../../src/core/rows/which-row.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

const GROWING = SHAPES.filter((shape) => shape !== 'flat');

describe('which row a count belongs to', () => {
  it('is found again for every row of every plan', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...GROWING),
        fc.integer({ min: 2, max: 40 }),
        fc.nat(),
        (shape, size, which) => {
          const plan = planRows(shape, { size });
          const { row, count } = plan.rows[which % plan.rows.length]!;
          const found = findRow({ shape, size, stitches: count });
          expect(found.rows).toEqual(plan.rows.filter((one) => one.count === count).map((one) => one.row));
          expect([found.row, found.otherRow]).toContain(row);
          expect(found.below ?? found.above).toBeUndefined();
        },
      ),
      { numRuns: 200 },
    );
  });

  it('lies between two counts that are there where no row has it', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...GROWING),
        fc.integer({ min: 2, max: 20 }),
        fc.integer({ min: 1, max: 600 }),
        (shape, size, stitches) => {
          const counts = planRows(shape, { size }).rows.map(({ count }) => count);
          fc.pre(!counts.includes(stitches));
          const { below, above, row } = findRow({ shape, size, stitches });
          expect(row).toBeUndefined();
          const smaller = counts.filter((count) => count < stitches);
          const larger = counts.filter((count) => count > stitches);
          expect(below?.count).toBe(smaller.length === 0 ? undefined : Math.max(...smaller));
          expect(above?.count).toBe(larger.length === 0 ? undefined : Math.min(...larger));
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('what is said of it', () => {
  const found = (stitches: number) => findRow({ shape: 'diagonal', size: 14, stitches, stitch: 'sc' });
  const results = (stitches: number) => found(stitches).working.steps.map(({ result }) => result);

  it('shows the count of every row that it names', () => {
    // Counts 3, 5 … 29, 27 … 1 in rows 1 to 28.
    expect(results(19)).toEqual([19, 19]);
    expect(results(29)).toEqual([29]);
    expect(results(20)).toEqual([19, 21]);
    expect(results(31)).toEqual([29]);
    expect([found(1).row, found(1).otherRow, found(29).row, found(29).otherRow]).toEqual([
      28,
      undefined,
      14,
      undefined,
    ]);
  });

  it('assumes only what was not said', () => {
    expect(found(19).assumptions).toEqual([]);
    expect(findRow({ shape: 'diagonal', size: 14, stitches: 19 }).assumptions).toEqual([
      'Worked in ⟦hdc⟧, as no stitch was named.',
    ]);
    expect(findRow({ shape: 'blocks', size: 4, stitches: 3, stitch: 'dc' }).assumptions).toEqual([
      'What was counted are blocks.',
    ]);
  });

  it('says a count in the plan’s own words', () => {
    const said = (shape: 'diagonal' | 'clusters' | 'blocks', row: number, has: number) =>
      findRowWithCount(planRows(shape, { size: 3 }), { row, count: has, increases: 0, decreases: 0 });
    expect([said('diagonal', 6, 1), said('clusters', 2, 24), said('blocks', 2, 2)]).toEqual([
      'row 6 has 1 stitch',
      'round 2 has 24 stitches',
      'row 2 has 2 blocks',
    ]);
  });

  it('without a size says the row only while the piece is sure to grow', () => {
    const hint = (shape: 'diagonal' | 'blocks', stitches: number) => {
      try {
        findRow({ shape, stitches });
      } catch (problem) {
        expect(problem).toEqual(refused('size-missing', { option: 'size', facts: { stitches } }));
        return (problem as Problem).hint;
      }
      return 'was found';
    };
    const rising = 'Give its rising rows, like size:12.';
    const along = 'Give its blocks along a side, like size:12.';
    expect(hint('diagonal', 19)).toBe(`While it still grows this is row 9. ${rising}`);
    expect(hint('diagonal', 2 * MOST_ROWS + 1)).toBe(
      `While it still grows this is row ${MOST_ROWS}. ${rising}`,
    );
    // One stitch stands in the last row alone; 2 in none.
    expect([hint('diagonal', 1), hint('diagonal', 2)]).toEqual([rising, rising]);
    expect(hint('blocks', 7)).toBe(`While it still grows this is row 7. ${along}`);
    expect(hint('blocks', MOST_ROWS + 1)).toBe(along);
  });
});

describe('/stitches which', () => {
  const room = asking();
  it('names the row while it grows and the one after the turn', async () => {
    const { figures } = await room.ask('/stitches which shape:diagonal size:14 stitches:19');
    expect(figures).toEqual({ row: { value: 9, unit: '' }, other_row: { value: 19, unit: '' } });
  });
  it('gives the counts on both sides where no row has it', async () => {
    const { figures } = await room.ask('/stitches which shape:diagonal size:14 stitches:20');
    expect(figures).toEqual({ below: { value: 19, unit: '' }, above: { value: 21, unit: '' } });
  });
  it('needs no size for what only grows, and says so for what turns', async () => {
    expect(await room.figure('/stitches which shape:clusters stitches:36', 'row')).toBe(3);
    const turning = await room.ask('/stitches which shape:diagonal stitches:19');
    expect(turning).toMatchObject({ ok: false, option: 'size', code: 'size-missing' });
    expect(turning.hint).toContain('row 9');
  });
  it('does not tell alike rows apart', async () => {
    expect(await room.ask('/stitches which shape:flat size:20 stitches:20')).toMatchObject({
      code: 'rows-all-alike',
    });
  });
});
