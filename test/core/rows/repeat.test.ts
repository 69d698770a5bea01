import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRepeat } from '../../../src/core/rows/repeat.ts';
import { asking } from '../../asking.ts';

describe('repeat', () => {
  it('has neighbours that suit and lie around the wish', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 900 }),
        (multiple, plus, near) => {
          fc.pre(near >= plus);
          const { below, above, nearest } = findRepeat({ multiple, plus, near, stitch: 'sc' });
          expect(below.stitches).toBeLessThanOrEqual(near);
          expect(above.stitches).toBeGreaterThanOrEqual(near);
          expect(above.stitches - below.stitches).toBeLessThanOrEqual(multiple);
          for (const one of [below, above, nearest]) expect(one.stitches).toBe(one.repeats * multiple + plus);
          expect(nearest.repeats).toBeGreaterThanOrEqual(1);
          if (below.repeats >= 1)
            expect(Math.abs(nearest.stitches - near)).toBe(
              Math.min(near - below.stitches, above.stitches - near),
            );
        },
      ),
      { numRuns: 200 },
    );
  });

  it('finds the count for a width, and the width each makes', async () => {
    const { figures, data } = await asking().ask(
      '/stitches repeat multiple:6 plus:1 width:120cm gauge:13x10',
    );
    // 120 cm at 13 over 10 cm is 156 stitches; 151 and 157 suit.
    expect(figures).toMatchObject({ below: { value: 151 }, above: { value: 157 }, nearest: { value: 157 } });
    expect(figures['width']!.value).toBeCloseTo(120.769, 3);
    expect(data.neighbours.below.width).toBeCloseTo(116.154, 3);
  });

  it.each([
    ['multiple:8', 'near'],
    ['multiple:8 near:90 width:120cm gauge:13x10', 'width'],
    ['multiple:8 width:120cm', 'gauge'],
    ['multiple:8 plus:10 near:6', 'near'],
    ['multiple:8 plus:100 width:10cm gauge:13x10', 'width'],
  ])('refuses %s', async (options, option) => {
    expect(await asking().ask(`/stitches repeat ${options}`)).toMatchObject({ ok: false, option });
  });
});
