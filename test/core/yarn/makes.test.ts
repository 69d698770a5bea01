/** Whole motifs from the yarn at hand, counted on a scale. */
import { describe, expect, it } from 'vitest';
import { countFromYarn } from '../../../src/core/yarn/makes.ts';
import { refused } from '../../refused.ts';

const BALL = { m: 170, g: 100 };

describe('the yarn at hand', () => {
  it('makes whole motifs, and leaves the rest', () => {
    // 26 of 13 g are 338 g.
    expect(countFromYarn({ left: 350, each: 13 })).toMatchObject({ motifs: 26, left: 350, over: 12 });
    expect(countFromYarn({ left: 12.9, each: 13 })).toMatchObject({ motifs: 0, over: 12.9 });
    // 0.3 ÷ 0.1 is 2.9999999999999996 to a machine.
    expect(countFromYarn({ left: 0.3, each: 0.1 }).motifs).toBe(3);
    const { working } = countFromYarn({ left: 350, each: 13 });
    expect(working.steps.map(({ label, result }) => [label, result])).toEqual([
      ['Whole motifs', 26],
      ['Left over', 12],
    ]);
  });
  it('is weighed by its band where it is told in balls', () => {
    expect(countFromYarn({ left: { balls: 3.5 }, each: 13, ball: BALL })).toMatchObject({
      motifs: 26,
      left: 350,
      over: 12,
    });
    expect(() => countFromYarn({ left: { balls: 2 }, each: 13 })).toThrow(
      refused('ball-missing', { option: 'ball' }),
    );
    // What lies on the scale needs no band.
    expect(countFromYarn({ left: 26, each: 13, ball: BALL }).motifs).toBe(2);
  });
});
