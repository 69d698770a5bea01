import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rowPlan, SHAPES } from '../../../src/core/rows/index.ts';
import { whichRow } from '../../../src/core/rows/which-row.ts';
import { asking } from '../../asking.ts';

const GROWING = SHAPES.filter((shape) => shape !== 'flat');

describe('which row a count belongs to', () => {
  it('is found again for every row of every plan', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...GROWING),
        fc.integer({ min: 2, max: 40 }),
        fc.nat(),
        (shape, size, which) => {
          const plan = rowPlan(shape, { size });
          const { row, count } = plan.rows[which % plan.rows.length]!;
          const found = whichRow({ shape, size, stitches: count });
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
          const counts = rowPlan(shape, { size }).rows.map(({ count }) => count);
          fc.pre(!counts.includes(stitches));
          const { below, above, row } = whichRow({ shape, size, stitches });
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
