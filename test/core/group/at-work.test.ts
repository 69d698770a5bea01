/** Whose clock has started when, and what is counted since, day by day. */
import { describe, expect, it } from 'vitest';
import { countWork, START_DAYS } from '../../../src/core/group/at-work.ts';

const parcels = (...ago: readonly number[]) => ago.map((days) => ({ ago: days, motifs: 2 }));

describe('the makers at work', () => {
  it('each start with their first parcel, which is not counted', () => {
    const work = countWork([
      { said: 2, joined: 12, parcels: parcels(10, 4, 1) },
      { said: 1, joined: 12, parcels: parcels(3) },
    ]);
    expect(work).toMatchObject({ counted: 2, saidDays: 2 * 10 + 3 });
  });

  it('or when they had two weeks for it, from when on the first parcel is one like any other', () => {
    expect(START_DAYS).toBe(14);
    expect(countWork([{ said: 3, joined: 14, parcels: [] }])).toEqual({ counted: 0, saidDays: 0, weeks: [] });
    expect(countWork([{ said: 3, joined: 20, parcels: [] }]).saidDays).toBe(18);
    expect(countWork([{ said: 3, joined: 20, parcels: parcels(2) }])).toMatchObject({
      counted: 1,
      saidDays: 18,
    });
    // On that very day it starts the clock.
    expect(countWork([{ said: 3, joined: 20, parcels: parcels(6) }])).toMatchObject({
      counted: 0,
      saidDays: 18,
    });
  });

  it('are counted week by week from the first start, the week that is not over left out', () => {
    const { weeks } = countWork([
      { said: 2, joined: 16, parcels: parcels(16, 15, 9.5, 9, 1) },
      { said: 1, joined: 13, parcels: parcels(12, 3) },
    ]);
    expect(weeks).toEqual([
      // Days 16 to 9 ago: two parcels of the first maker; of the second the clock starts at 12.
      { motifs: 4, saidDays: 2 * 7 + 3 },
      // Days 9 to 2 ago: what came at 9 belongs to it.
      { motifs: 4, saidDays: 2 * 7 + 7 },
    ]);
  });

  it('are nobody where nobody takes part', () => {
    expect(countWork([])).toEqual({ counted: 0, saidDays: 0, weeks: [] });
  });
});
