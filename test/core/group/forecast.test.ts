import { describe, expect, it } from 'vitest';
import { forecast } from '../../../src/core/group/forecast.ts';
import { seeded } from '../../../src/core/base/chance.ts';
import { Working } from '../../../src/core/base/working.ts';

describe('forecast', () => {
  it('knows the chi-square table behind its limits', () => {
    // Chi-square, 10 % and 90 % points: 20 degrees 12.443, 22 degrees 30.813 (NIST/SEMATECH e-Handbook of Statistical
    // Methods, 1.3.6.7.4; values from memory, confirmed by the simulated coverage below). Half of them bound a count of 10.
    const { low, high } = forecast({ done: 10, days: 7, toCome: 5, daysLeft: undefined }, new Working());
    expect(low).toBeCloseTo(12.443 / 2, 1);
    expect(high).toBeCloseTo(30.813 / 2, 1);
  });

  it('holds at least four times in five, for few and for many', () => {
    const roll = seeded(7);
    for (const truth of [2, 5, 20, 80]) {
      let inside = 0;
      const runs = 800;
      for (let run = 0; run < runs; run++) {
        let done = 0;
        for (let clock = -Math.log(1 - roll()) / truth; clock < 1; clock += -Math.log(1 - roll()) / truth)
          done++;
        const { low, high } = forecast({ done, days: 7, toCome: 1, daysLeft: undefined }, new Working());
        if (low <= truth && truth <= high) inside++;
      }
      expect(inside / runs, `rate ${truth}`).toBeGreaterThan(0.77);
    }
  });

  it('holds as well where motifs come in parcels, and is less sure of them', () => {
    const roll = seeded(13);
    for (const parcelsAWeek of [4, 15]) {
      let inside = 0;
      const runs = 800;
      for (let run = 0; run < runs; run++) {
        let [done, squares] = [0, 0];
        const gap = () => -Math.log(1 - roll()) / parcelsAWeek;
        for (let clock = gap(); clock < 1; clock += gap()) {
          const motifs = 1 + Math.floor(roll() * 6);
          done += motifs;
          squares += motifs ** 2;
        }
        const { low, high } = forecast(
          { done, squares, days: 7, toCome: 1, daysLeft: undefined },
          new Working(),
        );
        const truth = parcelsAWeek * 3.5;
        if (low <= truth && truth <= high) inside++;
      }
      expect(inside / runs, `${parcelsAWeek} parcels`).toBeGreaterThan(0.75);
    }
    const spread = (squares: number) => {
      const { low, high } = forecast(
        { done: 20, squares, days: 7, toCome: 1, daysLeft: undefined },
        new Working(),
      );
      return high - low;
    };
    expect(spread(100)).toBeGreaterThan(spread(20) * 1.5);
  });

  it('grows surer with more data, and promises no end when nothing is in', () => {
    const few = forecast({ done: 2, days: 14, toCome: 20, daysLeft: 70 }, new Working());
    const many = forecast({ done: 40, days: 280, toCome: 20, daysLeft: 70 }, new Working());
    expect(few.rate).toBe(many.rate);
    expect(many.high - many.low).toBeLessThan(few.high - few.low);
    expect(few.needed).toBe(2);
    const none = forecast({ done: 0, days: 14, toCome: 20, daysLeft: undefined }, new Working());
    expect(none).toMatchObject({ rate: 0, weeks: undefined, latest: undefined, needed: undefined });
  });
});
