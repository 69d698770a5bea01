import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reckonSwatchYarn } from '../../../src/core/yarn/swatch-yarn.ts';
import { asking } from '../../asking.ts';
import { expectOwnUnits } from '../../own-units.ts';

const length = fc.double({ min: 1, max: 300, noNaN: true });

describe('yarn from a swatch', () => {
  it('is by area: as many swatches as make the blanket weigh what it weighs', () => {
    fc.assert(
      fc.property(
        length,
        length,
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        (wide, high, across, down, weight) => {
          const found = reckonSwatchYarn({
            swatchWidth: wide,
            swatchHeight: high,
            weight,
            width: across * wide,
            height: down * high,
            ball: { m: 170, g: 100 },
            reserve: 0,
          });
          expect(found.weight / (weight * across * down)).toBeCloseTo(1, 9);
          expect(found.yarn! / (1.7 * found.weight)).toBeCloseTo(1, 9);
          expect(found.balls! * 170).toBeGreaterThanOrEqual(found.yarn! - 1e-3);
          expect((found.balls! - 1) * 170).toBeLessThan(found.yarn!);
          expectOwnUnits(found.working);
        },
      ),
      { numRuns: 100 },
    );
  });

  // windchilde.com/bluedepth, one maker’s measurement: a square of 5 × 5 in takes 785.5 in of yarn in single crochet, so
  // 50 × 60 in take 120 times that; her yarn put as a ball of that length and 10 g, so that 10 g are the square.
  it('meets a published square', async () => {
    const metres = 785.5 * 0.0254;
    const { figures } = await asking().ask(
      `/yardage swatch swatch_width:5in swatch_height:5in weight:10g width:50in height:60in ball:${metres.toFixed(4)}m/10g reserve:0`,
    );
    expect(figures['yarn_total']!.value).toBeCloseTo(120 * metres, 1);
    expect(figures['weight_total']!.value).toBeCloseTo(1200, 9);
    expect(figures['balls']!.value).toBe(120);
  });

  it('takes a size word, and says grams alone where no ball is given', async () => {
    const swatch = '/yardage swatch swatch_width:5in swatch_height:5in weight:10g';
    const { figures } = await asking().ask(`${swatch} for:throw reserve:0`);
    expect(figures['weight_total']!.value).toBeCloseTo(1200, 9);
    expect(figures['balls']).toBeUndefined();
    expect(await asking().ask(`${swatch} width:4in height:4in`)).toMatchObject({ code: 'swatch-too-large' });
    expect(await asking().ask(swatch)).toMatchObject({ option: 'width' });
  });
});
