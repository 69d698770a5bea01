/** Her own pace: honest about breaks, about rows counted afterwards, and about few data. */
import { describe, expect, it } from 'vitest';
import { FEWEST_ROWS, reckonHours, paceOf, reckonSaidPace } from '../../../src/core/yarn/pace.ts';
import { Working } from '../../../src/core/base/working.ts';

const rows = (...minutes: number[]) =>
  minutes.map((each, index) => ({ stitches: 10 + index, minutes: each }));

describe('pace', () => {
  it('is stitches over minutes of the rows finished one after the other', () => {
    const working = new Working();
    const pace = paceOf(rows(2, 3, 4), working)!;
    expect(pace).toEqual({ perMinute: 33 / 9, rows: 3, minutes: 9 });
    expect(working.steps.map(({ result }) => result)).toEqual([33 / 9]);
  });

  it('leaves out a night between two rows, and a pause of a few of her own rows', () => {
    for (const pause of [600, 60, 25])
      expect(paceOf([...rows(2, 3, 4), { stitches: 20, minutes: pause }])).toEqual({
        perMinute: 33 / 9,
        rows: 3,
        minutes: 9,
      });
  });

  it('keeps long rows of a slow worker: what counts as a break goes by her own pace', () => {
    const long = [70, 75, 80].map((minutes) => ({ stitches: 400, minutes }));
    expect(paceOf(long)).toEqual({ perMinute: 1200 / 225, rows: 3, minutes: 225 });
  });

  it('takes rows counted all at once for the time before the first of them', () => {
    // Nine rows of 20 stitches were worked in 30 minutes and counted in nine presses; then two more, three minutes each.
    const burst = [30, ...Array.from({ length: 8 }, () => 0.05)].map((minutes) => ({
      stitches: 20,
      minutes,
    }));
    const pace = paceOf([...burst, { stitches: 20, minutes: 3 }, { stitches: 20, minutes: 3 }])!;
    expect(pace.rows).toBe(11);
    expect(pace.perMinute).toBeCloseTo(220 / 36.4, 9);
  });

  it('is hardly moved by one pause in a whole square', () => {
    // Invented: 24 rows at 6 stitches a minute, one of them with an hour's pause.
    const square = Array.from({ length: 24 }, (_, index) => {
      const stitches = 2 * Math.min(index + 1, 24 - index) + 1;
      return { stitches, minutes: stitches / 6 + (index === 9 ? 60 : 0) };
    });
    expect(paceOf(square)!.perMinute).toBeCloseTo(6, 9);
  });

  it('says nothing from too few rows', () => {
    expect(paceOf(rows(2, 3).slice(0, FEWEST_ROWS - 1))).toBeUndefined();
    expect(paceOf([])).toBeUndefined();
  });

  it('312 stitches in 52 minutes are 6 a minute, and 3,600 of them take 10 hours', () => {
    const working = new Working();
    const pace = reckonSaidPace(312, 52, working);
    expect(pace).toBe(6);
    expect(reckonHours(3600, pace, working)).toBe(10);
  });
});
