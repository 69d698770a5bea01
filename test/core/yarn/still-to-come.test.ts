import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRuns } from '../../../src/core/stripes/read-runs.ts';
import { rowPlan, total } from '../../../src/core/rows/index.ts';
import { countByColour } from '../../../src/core/yarn/motif.ts';
import {
  reckonPercentDone,
  findRowsWith,
  reckonSpareWeight,
  listStripes,
  reckonToCome,
} from '../../../src/core/yarn/still-to-come.ts';
import { Working } from '../../../src/core/base/working.ts';

const plan = rowPlan('diagonal', { size: 12 });
const runs = readRuns('4 rows moss, 2 rows sand, three times, then 6 rows moss', 24);

describe('what is still to come', () => {
  it('stripes have all the stitches of the piece: 312 of them', () => {
    // Derived: 2R² + 2R = 312 for twelve rising rows.
    expect(listStripes(plan, runs).reduce((sum, { stitches }) => sum + stitches, 0)).toBe(312);
    // Rows 5, 6 (11 + 13), 11, 12 (23 + 25), 17, 18 (15 + 13) are sand.
    expect(Object.fromEntries(countByColour(plan, runs))).toEqual({ moss: 212, sand: 100 });
  });

  it('walks the rows: after row 12 of 24 less than half is left, as the widest row is the twelfth', () => {
    const come = reckonToCome({ plan, runs, motifs: 1, row: 12, weight: 312 }, new Working());
    expect(come.stitches).toBe(312 - 168);
    expect(come.weight).toBe(144);
    expect(reckonPercentDone(plan, 12, new Working())).toBeCloseTo((100 * 168) / 312, 12);
  });

  it('colours and whole agree for any number of motifs and any row', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 24 }), (motifs, row) => {
        const come = reckonToCome({ plan, runs, motifs, row, weight: 12 }, new Working());
        expect(come.colours.reduce((sum, one) => sum + one.stitches, 0)).toBe(come.stitches);
        expect(come.stitches).toBe(motifs === 0 ? 0 : motifs * 312 - total(plan, row));
        expect(come.colours.reduce((sum, one) => sum + one.weight!, 0)).toBeCloseTo(come.weight!, 9);
      }),
    );
  });

  it('says what is missing as a negative', () => {
    expect(reckonSpareWeight(5, 7.5, new Working())).toBe(-2.5);
  });

  it('finds the other rows of a count, the nearest first', () => {
    expect(findRowsWith(plan, 11, 4)).toEqual([5, 19]);
    expect(findRowsWith(plan, 10, 4)).toEqual([]);
  });
});
