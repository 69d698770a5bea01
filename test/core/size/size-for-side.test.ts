import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plainBlockedSide } from '../../../src/core/size/resize.ts';
import { sizeForSide } from '../../../src/core/size/size-for-side.ts';
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
        const found = sizeForSide({ gauge, side });
        const off = (size: number) => Math.abs(plainBlockedSide(gauge, size) - side);
        for (let size = 1; size <= 400; size++) {
          if (size < found.size) expect(off(found.size)).toBeLessThan(off(size));
          else expect(off(found.size)).toBeLessThanOrEqual(off(size));
        }
        expect(found.side).toBeCloseTo(plainBlockedSide(gauge, found.size), 9);
        expectOwnUnits(found.working);
      }),
      { numRuns: 60 },
    );
  });

  it('is the size again whose side it is', () => {
    fc.assert(
      fc.property(gauges, fc.integer({ min: 1, max: 200 }), (gauge, size) => {
        expect(sizeForSide({ gauge, side: plainBlockedSide(gauge, size) }).size).toBe(size);
      }),
      { numRuns: 100 },
    );
  });

  // The handbook's worked example: 12 rising rows at 13 × 10 over 10 cm block to 15.377 cm.
  it('meets the worked example', () => {
    const gauge = { stitches: 13, rows: 10, over: 10 };
    expect(sizeForSide({ gauge, side: 15.377 })).toMatchObject({ size: 12 });
    expect(sizeForSide({ gauge, side: 15, size: 12 }).pattern!.side).toBeCloseTo(15.377, 3);
  });

  it('refuses what no size reaches, and a gauge without rows', () => {
    const gauge = { stitches: 13, rows: 10, over: 10 };
    expect(() => sizeForSide({ gauge, side: 600 })).toThrow(
      expect.objectContaining({ code: 'beyond-largest' }),
    );
    expect(() => sizeForSide({ gauge: { stitches: 13, over: 10 }, side: 15 })).toThrow(
      expect.objectContaining({ option: 'gauge' }),
    );
  });
});
