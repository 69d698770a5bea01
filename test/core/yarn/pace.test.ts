/** Her own pace: honest about breaks, about rows counted afterwards, and about few data. */
import { describe, expect, it } from 'vitest';
import { FEWEST_ROWS, hoursFor, paceOf, saidPace } from '../../../src/core/yarn/pace.ts';
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

  it('leaves out a night between two rows, and rows counted all at once afterwards', () => {
    expect(
      paceOf([...rows(2, 3, 4), { stitches: 20, minutes: 600 }, { stitches: 20, minutes: 0.1 }]),
    ).toEqual({
      perMinute: 33 / 9,
      rows: 3,
      minutes: 9,
    });
  });

  it('says nothing from too few rows', () => {
    expect(paceOf(rows(2, 3).slice(0, FEWEST_ROWS - 1))).toBeUndefined();
    expect(paceOf([])).toBeUndefined();
  });

  it('312 stitches in 52 minutes are 6 a minute, and 3,600 of them take 10 hours', () => {
    const working = new Working();
    const pace = saidPace(312, 52, working);
    expect(pace).toBe(6);
    expect(hoursFor(3600, pace, working)).toBe(10);
  });
});
