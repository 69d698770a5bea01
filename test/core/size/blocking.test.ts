import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reckonBlockedSide, reckonDiamond, planIncreases } from '../../../src/core/size/blocking.ts';
import { Working } from '../../../src/core/base/working.ts';
import { refused } from '../../refused.ts';

const gauge = fc.record({
  stitches: fc.integer({ min: 30, max: 400 }).map((tenths) => tenths / 10),
  rows: fc.integer({ min: 30, max: 400 }).map((tenths) => tenths / 10),
  over: fc.constantFrom(10, 10.16, 5),
});

describe('blocking', () => {
  it('keeps the length of the edges', () => {
    fc.assert(
      fc.property(gauge, fc.integer({ min: 1, max: 100 }), (gauge, size) => {
        const { across, along, side, cornerAngle } = reckonDiamond(gauge, size);
        expect(side).toBeCloseTo(Math.hypot(across / 2, along / 2), 9);
        expect(side).toBe(reckonBlockedSide(gauge, size, new Working()));
        // The corner is square exactly where the diagonals are equal, pointed where the piece is tall.
        if (Math.abs(along - across) > 1e-6)
          expect(Math.sign(90 - cornerAngle)).toBe(Math.sign(along - across));
      }),
      { numRuns: 100 },
    );
  });

  it('says how it comes off the hook as far as it can be seen', () => {
    // A row as high as a stitch is wide: of the diagonals one is a stitch longer, 41 to 40, which is 91.4°.
    expect(reckonDiamond({ stitches: 13, rows: 13, over: 10 }, 20)).toMatchObject({
      isEven: true,
      isSquare: false,
      heightToWidth: 1,
      rows: 40,
      widest: 41,
    });
    // 40 rows of 41 stitches with a row higher by as much: square. One part in 201 is not seen any more, one in 199 is.
    expect(reckonDiamond({ stitches: 41, rows: 40, over: 10 }, 20)).toMatchObject({
      isEven: false,
      isSquare: true,
    });
    expect(reckonDiamond({ stitches: 201.9, rows: 201, over: 10 }, 20).isEven).toBe(true);
    expect(reckonDiamond({ stitches: 200, rows: 199, over: 10 }, 20).isEven).toBe(false);
  });

  it('steps out in all by whole stitches of the ratio, whatever the decimals', () => {
    fc.assert(
      fc.property(gauge, fc.integer({ min: 1, max: 200 }), (gauge, rows) => {
        const increases = planIncreases(gauge, rows);
        // In whole tenths the ratio is exact: ⌊i·s ÷ r⌋ by whole-number division.
        const tenths = (n: number) => BigInt(Math.round(n * 10));
        const out = Number((BigInt(rows) * tenths(gauge.stitches)) / tenths(gauge.rows));
        expect(increases.reduce((all, one) => all + one, 0)).toBe(out);
        expect(Math.max(...increases) - Math.min(...increases)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 200 },
    );
  });

  it('needs rows', () => {
    expect(() => reckonDiamond({ stitches: 13, over: 10 }, 12)).toThrow(
      refused('gauge-rows-missing', { option: 'gauge' }),
    );
  });
});
