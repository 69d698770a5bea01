import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findLargestBlanket } from '../../../src/core/blanket/largest-blanket.ts';
import { needOf, stockOf } from '../../../src/core/blanket/yarn-at-hand.ts';
import { ARRANGEMENTS } from '../../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../../src/core/blanket/materials.ts';
import { piecesOf } from '../../../src/core/blanket/pieces.ts';
import { reckonSide } from '../../../src/core/yarn/motif-size.ts';
import { reckonMotifYarn } from '../../../src/core/yarn/motif-yarn.ts';
import { countStitchesByColour, type MotifSpec } from '../../../src/core/yarn/motif.ts';
import { wpiOf } from '../../../src/core/yarn/thickness.ts';
import { planRows } from '../../../src/core/rows/index.ts';
import { Working } from '../../../src/core/base/working.ts';
import { expectOwnUnits } from '../../own-units.ts';
import { extent, layingFor, pieces, specs } from './pieces.ts';
import { refused } from '../../refused.ts';

const halves: MotifSpec = {
  name: 'halves',
  shape: 'diagonal',
  size: 12,
  stitch: 'hdc',
  hook: 5,
  gauge: { stitches: 13, rows: 10, over: 10 },
  runs: [
    { colour: 'moss', rows: 12 },
    { colour: 'sand', rows: 12 },
  ],
};
const BALL = { m: 170, g: 100 };
const yarns = ['moss', 'sand'].map((colour) => ({ colour, ball: BALL }));

describe('the yarn of a motif', () => {
  it('follows its rows: the rising half of a diagonal square has more stitches than the falling half', () => {
    // R² + 2R rising of 2R² + 2R in all: 168 and 144 of 312 for twelve.
    expect([...countStitchesByColour(planRows('diagonal', { size: 12 }), halves.runs)]).toEqual([
      ['moss', 168],
      ['sand', 144],
    ]);
  });

  it('comes from the scale where one was weighed: its weight, no more and no less', () => {
    const { colours, how } = reckonMotifYarn({ ...halves, weight: 14 }, yarns, new Working());
    expect(how).toBe('weighed');
    const metres = colours.reduce((sum, { worked, tails, carried }) => sum + worked + tails + carried, 0);
    expect(metres).toBeCloseTo((14 * 170) / 100, 9);
  });

  it('keeps the weight where the colours are of different yarns', () => {
    const different = [
      { colour: 'moss', ball: { m: 170, g: 100 } },
      { colour: 'sand', ball: { m: 90, g: 50 } },
    ];
    const { colours } = reckonMotifYarn({ ...halves, weight: 14 }, different, new Working());
    const grams = (colours[0]!.worked * 100) / 170 + (colours[1]!.worked * 50) / 90;
    expect(grams).toBeCloseTo(14, 9);
  });

  it('is estimated otherwise, with two tails a length and what is carried', () => {
    const striped: MotifSpec = {
      ...halves,
      runs: Array.from({ length: 12 }, (_, index) => ({
        colour: index % 2 === 0 ? 'moss' : 'sand',
        rows: 2,
      })),
    };
    const { colours, how, ends } = reckonMotifYarn(striped, yarns, new Working());
    expect(how).toBe('by-gauge');
    expect(ends).toBe(4);
    for (const { tails, carried } of colours) {
      expect(tails).toBeCloseTo(0.3, 12);
      // Each climbs past five stripes of two rows, each row 1 cm high.
      expect(carried).toBeCloseTo(0.1, 12);
    }
  });

  it('reads a yarn’s thickness off its band', () => {
    // 170 m in 100 g is 843 yards a pound: medium, 10 to 11 wraps.
    expect(wpiOf(BALL)).toBe(10.5);
    expect(wpiOf({ m: 400, g: 100 })).toBe(17);
    expect(wpiOf({ m: 40, g: 100 })).toBe(7);
    expect(wpiOf(undefined)).toBe(10.5);
  });
});

describe('the side of a motif', () => {
  const side = (motif: Partial<MotifSpec>) => reckonSide({ ...halves, ...motif }, new Working());
  it('is as measured, else as the gauge says', () => {
    expect(side({ side: 14.8 })).toEqual({ side: 14.8, how: 'measured' });
    expect(side({}).side).toBeCloseTo(15.377, 3);
    expect(side({ shape: 'solid-square', stitch: 'sc', size: 8 }).side).toBeCloseTo(16, 9);
    expect(side({ shape: 'flat', stitch: 'sc', size: 26, otherSize: 20 }).side).toBeCloseTo(20, 9);
  });
  it.each<[string, string, Partial<MotifSpec>]>([
    ['circle', 'not-for-a-grid', { shape: 'circle' }],
    ['hexagon', 'not-for-a-grid', { shape: 'hexagon' }],
    ['blocks without a measured side', 'motif-size-unknown', { shape: 'blocks' }],
    ['a flat piece that is no square', 'motif-not-square', { shape: 'flat', size: 26, otherSize: 10 }],
    ['a gauge without rows', 'motif-size-unknown', { gauge: { stitches: 13, over: 10 } }],
  ])('is refused for %s: %s', (_, code, motif) => {
    expect(() => side(motif)).toThrow(refused(code, { option: 'kinds' }));
  });
});

describe('what a blanket takes', () => {
  const spec = {
    kinds: [{ ...halves, weight: 14 }],
    joining: { method: 'whip' as const, colour: 'moss' },
    border: { rounds: [{ stitch: 'sc' as const, colour: 'moss' }], corner: 3 },
    yarns: yarns.map((yarn) => ({ ...yarn, price: 4.5, balls: 1 })),
    reserve: 10,
  };

  it('adds up: every part of a colour, the reserve, whole balls, price', () => {
    const found = reckonMaterials(pieces(spec), { columns: 4, rows: 5, counts: [20] }, new Working());
    for (const need of found.colours) {
      const parts = need.motifs + need.tails + need.carried + need.seams + need.border;
      expect(need.total).toBeCloseTo(parts * 1.1, 9);
      expect(need.balls).toBe(Math.ceil(need.total / 170));
      expect(need.toBuy).toBe(need.balls! - 1);
      expect(need.cost).toBeCloseTo(need.toBuy! * 4.5, 9);
    }
    expect(found.colours[0]!.motifs + found.colours[1]!.motifs).toBeCloseTo(20 * 23.8, 9);
    // 20 motifs of two lengths; a strand to each of 15 short seams and two to each of 4 long ones, of 61.5 cm; one border in one colour.
    expect(found.strands).toBe(5 * 3 + 4 * 2);
    expect(found.ends).toBe(20 * 4 + 2 * 23 + 2);
    // Crocheted together, each seam is worked from the ball: 19 lengths.
    const crocheted = reckonMaterials(
      pieces({ ...spec, joining: { method: 'slip-stitch', colour: 'moss' } }),
      { columns: 4, rows: 5, counts: [20] },
      new Working(),
    );
    expect(crocheted.ends).toBe(20 * 4 + 2 * 19 + 2);
    expect(crocheted).not.toHaveProperty('strands');
    expect(found.colours[0]!.tails - crocheted.colours[0]!.tails).toBeCloseTo(4 * 2 * 0.15, 9);
    expect(found.width).toBeCloseTo(4 * 15.3771 + 2 * (2 / 3), 3);
  });

  it('takes a single motif without seams', () => {
    const found = reckonMaterials(pieces(spec), { columns: 1, rows: 1, counts: [1] }, new Working());
    expect(found).toMatchObject({ seams: 0, seamLength: 0 });
  });

  it('says who puckers: kinds whose sides differ', () => {
    const uneven = { ...spec, kinds: [halves, { ...halves, name: 'small', side: 12 }] };
    expect(pieces(uneven).uneven).toMatchObject({ name: 'small', side: 12, beside: { name: 'halves' } });
    expect(pieces(spec).uneven).toBeUndefined();
    // Measured 4 % small, it is pinned out to the side that its gauge gives; 6 % is more than blocking mends.
    const small = (side: number) => ({ ...spec, kinds: [halves, { ...halves, name: 'small', side }] });
    expect(pieces(small(15.3771 * 0.96)).uneven).toBeUndefined();
    expect(pieces(small(15.3771 * 0.94)).uneven).toMatchObject({ name: 'small' });
  });

  it('is in the maker’s own units what it is in ours', () => {
    const working = new Working();
    const made = piecesOf({ ...spec, kinds: [halves] }, working);
    reckonMaterials(made, { columns: 3, rows: 4, counts: [12] }, working, [7]);
    expectOwnUnits(working);
  });

  it('is by plain arithmetic what it is by the formulas', () => {
    fc.assert(
      fc.property(
        specs,
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
        fc.constantFrom(...ARRANGEMENTS),
        (blanket, columns, rows, arrangement) => {
          const made = pieces(blanket);
          const size = extent(layingFor(blanket, columns, rows, arrangement));
          const shown = reckonMaterials(made, size, new Working()).colours.map(({ total }) => total);
          const plain = needOf(made)(size);
          expect(plain).toHaveLength(shown.length);
          plain.forEach((metres, colour) =>
            expect(Math.abs(metres - shown[colour]!)).toBeLessThanOrEqual(1e-9 * Math.max(1, metres)),
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('the yarn at hand', () => {
  it('is never overdrawn, and the next size up would overdraw it', () => {
    fc.assert(
      fc.property(specs, fc.constantFrom(...ARRANGEMENTS), (blanket, arrangement) => {
        const made = pieces(blanket);
        const laying = layingFor(blanket, 6, 8, arrangement);
        const { best, anyShape } = findLargestBlanket(made, laying, 25);
        const stock = stockOf(made);
        const short = (size: { columns: number; rows: number; counts: readonly number[] }) =>
          needOf(made)(size).some((metres, colour) => metres > stock[colour]! + 1e-6);
        for (const size of [best, anyShape]) if (size) expect(short(size)).toBe(false);
        if (best) {
          for (const [more, other] of [
            [1, 0],
            [0, 1],
          ] as const) {
            const columns = best.columns + more;
            const rows = best.rows + other;
            const off = Math.abs(Math.log(columns / rows / (6 / 8)));
            if (off <= Math.log(1.25) && columns * rows <= 2500)
              expect(short(extent({ ...laying, columns, rows }))).toBe(true);
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  it('is asked for where nothing is known of it', () => {
    const blanket = {
      kinds: [halves],
      joining: { method: 'whip' as const },
      border: { rounds: [], corner: 3 },
      yarns: [],
      reserve: 0,
    };
    expect(() => findLargestBlanket(pieces(blanket), layingFor(blanket, 3, 3, 'plain'))).toThrow(
      refused('yarn-at-hand-unknown', { option: 'colour' }),
    );
  });
});
