/** How large a stitch comes out, worked from what is known of it. */
import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { reckonRowHeight, reckonStitchWidth, type Worked } from '../../../src/core/size/stitch-size.ts';
import { expectOwnUnits } from '../../own-units.ts';

const width = (worked: Worked, wpi = 10.5) => reckonStitchWidth(worked, wpi, new Working());
const height = (worked: Worked, wide: number) => reckonRowHeight(worked, wide, new Working());

describe('a stitch', () => {
  it('is as wide as the gauge says', () => {
    expect(width({ stitch: 'dc', gauge: { stitches: 16, over: 10.16 }, hook: 9 })).toBeCloseTo(0.635, 9);
  });

  it('without one follows hook and yarn', () => {
    // US yarn trade association's standard yarn weight system, medium: 11–14 sc over 4 in on 5.5–6.5 mm, 9–12 wraps per inch. The
    // middles give 101.6 mm ÷ 12.5.
    expect(width({ stitch: 'sc', hook: 6 })).toBeCloseTo(0.8128, 9);
    // In proportion to hook and strand together: 6 + 25.4 ÷ 10.5 mm there, 3 + 25.4 ÷ 20 here.
    expect(width({ stitch: 'sc', hook: 3 }, 20)).toBeCloseTo(
      (0.8128 / (6 + 25.4 / 10.5)) * (3 + 25.4 / 20),
      9,
    );
  });

  it('without a hook takes the usual one of its yarn', () => {
    expect(width({ stitch: 'sc' })).toBe(width({ stitch: 'sc', hook: 5 }));
    expect(width({ stitch: 'sc' }, 2.5)).toBe(width({ stitch: 'sc', hook: 15 }, 2.5));
  });

  it('is as high as the gauge’s rows, or in proportion to its width', () => {
    expect(height({ stitch: 'tr', gauge: { stitches: 16, rows: 8, over: 10 } }, 99)).toBeCloseTo(1.25, 9);
    // Rows of sc, dc and tr take one, two and three sc along their ends (carol-mycrochetpage.blogspot.com, "Picot edging", 2009).
    const tall = (['sc', 'dc', 'tr'] as const).map((stitch) =>
      height({ stitch, gauge: { stitches: 16, over: 10 } }, 0.6),
    );
    tall.forEach((high, index) => expect(high).toBeCloseTo(0.6 * (index + 1), 9));
    expect(height({ stitch: 'hdc' }, 0.6)).toBeCloseTo(0.9, 9);
  });

  it('works out from a maker’s own numbers in inches', () => {
    const working = new Working();
    reckonRowHeight({ stitch: 'dc' }, reckonStitchWidth({ stitch: 'dc', hook: 4 }, 12, working), working);
    expect(working.steps.map(({ unit }) => unit)).toEqual(['mm', 'mm', 'cm', 'cm']);
    expectOwnUnits(working);
  });
});
