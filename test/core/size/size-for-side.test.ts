import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeBlockedSide } from '../../../src/core/size/resize.ts';
import { findSizeForSide } from '../../../src/core/size/size-for-side.ts';
import { MOST_ROWS } from '../../../src/core/base/limits.ts';
import { refused } from '../../refused.ts';
import { expectOwnUnits } from '../../own-units.ts';

const gauges = fc.record({
  stitches: fc.integer({ min: 6, max: 30 }),
  rows: fc.integer({ min: 5, max: 30 }),
  over: fc.constantFrom(10, 10.16),
});

describe('the size for a side', () => {
  it('is nearer than any other, of two as near the smaller', () => {
    fc.assert(
      fc.property(gauges, fc.double({ min: 0.5, max: 100, noNaN: true }), (gauge, side) => {
        const found = findSizeForSide({ gauge, side });
        const off = (size: number) => Math.abs(computeBlockedSide(gauge, size) - side);
        for (let size = 1; size <= 400; size++) {
          if (size < found.size) expect(off(found.size)).toBeLessThan(off(size));
          else expect(off(found.size)).toBeLessThanOrEqual(off(size));
        }
        expect(found.side).toBeCloseTo(computeBlockedSide(gauge, found.size), 9);
        expectOwnUnits(found.working);
      }),
      { numRuns: 60 },
    );
  });

  it('is the size again whose side it is', () => {
    fc.assert(
      fc.property(gauges, fc.integer({ min: 1, max: 200 }), (gauge, size) => {
        expect(findSizeForSide({ gauge, side: computeBlockedSide(gauge, size) }).size).toBe(size);
      }),
      { numRuns: 100 },
    );
  });

  // The handbook's worked example: 12 rising rows at 13 × 10 over 10 cm block to 15.377 cm.
  it('meets the worked example', () => {
    const gauge = { stitches: 13, rows: 10, over: 10 };
    expect(findSizeForSide({ gauge, side: 15.377 })).toMatchObject({ size: 12 });
    expect(findSizeForSide({ gauge, side: 15, size: 12 }).pattern!.side).toBeCloseTo(15.377, 3);
  });

  it('has its neighbours beside it, where there are any', () => {
    fc.assert(
      fc.property(gauges, fc.integer({ min: 1, max: MOST_ROWS }), (gauge, size) => {
        const at = (rows: number) =>
          rows < 1 || rows > MOST_ROWS ? undefined : { size: rows, side: computeBlockedSide(gauge, rows) };
        const found = findSizeForSide({ gauge, side: computeBlockedSide(gauge, size) });
        expect([found.smaller, found.larger]).toEqual([at(size - 1), at(size + 1)]);
      }),
      {
        numRuns: 30,
        examples: [
          [{ stitches: 13, rows: 10, over: 10 }, 1],
          [{ stitches: 13, rows: 10, over: 10 }, MOST_ROWS],
        ],
      },
    );
    const smallest = findSizeForSide({ gauge: { stitches: 13, rows: 10, over: 10 }, side: 0.1 });
    expect(smallest.size).toBe(1);
    expect(smallest).not.toHaveProperty('smaller');
  });

  it('reckons the pattern’s own size beside it, and not a second time where it is the best', () => {
    const gauge = { stitches: 13, rows: 10, over: 10 };
    const own = (size?: number) => findSizeForSide({ gauge, side: 15.377, size });
    expect(own()).not.toHaveProperty('pattern');
    expect(own(12).pattern).toEqual({ size: 12, side: own().side });
    expect(own(10).pattern!.side).toBeCloseTo(computeBlockedSide(gauge, 10), 9);
    expect(own(10).working.steps.length).toBeGreaterThan(own().working.steps.length);
    expect(own(12).working.steps).toHaveLength(own().working.steps.length);
  });

  it('of two as near takes the smaller', () => {
    // Stitches of 8 cm, rows of 3: sizes 1 and 2 are 24 × 6 and 40 × 12 corner to corner; halfway between their sides.
    const gauge = { stitches: 1, rows: 8 / 3, over: 8 };
    const [one, two] = [computeBlockedSide(gauge, 1), computeBlockedSide(gauge, 2)];
    const middle = (one + two) / 2;
    expect(middle - one).toBe(two - middle);
    expect(findSizeForSide({ gauge, side: middle }).size).toBe(1);
    expect(findSizeForSide({ gauge, side: middle + 1e-9 }).size).toBe(2);
  });

  it('refuses what no size reaches, and a gauge without rows', () => {
    const gauge = { stitches: 13, rows: 10, over: 10 };
    const most = computeBlockedSide(gauge, MOST_ROWS);
    expect(() => findSizeForSide({ gauge, side: 600 })).toThrow(
      refused('beyond-largest', { option: 'side', facts: { most, given: 600 } }),
    );
    expect(findSizeForSide({ gauge, side: most }).size).toBe(MOST_ROWS);
    expect(() => findSizeForSide({ gauge: { stitches: 13, over: 10 }, side: 15 })).toThrow(
      expect.objectContaining({ option: 'gauge' }),
    );
  });
});
