/**
 * Largest remainders against published apportionments and an implementation of others.
 * US 1790: electowiki.org, "Hamilton method" (oldid 9372), total 3,615,920, 60 seats.
 * Seven seats: quotas 3.5, 2.1, 1.4 from infinitelexicon.com/largestremainder; the seats follow by arithmetic.
 */
import fc from 'fast-check';
import hareNiemeyer from 'hare-niemeyer';
import { describe, expect, it } from 'vitest';
import { apportion } from '../../src/core/blanket/apportion.ts';

const US_1790: readonly [string, population: number, seats: number][] = [
  ['VA', 630_560, 11],
  ['MA', 475_327, 8],
  ['PA', 432_879, 7],
  ['NC', 353_523, 6],
  ['NY', 331_589, 6],
  ['MD', 278_514, 5],
  ['CT', 236_841, 4],
  ['SC', 206_236, 3],
  ['NJ', 179_570, 3],
  ['NH', 141_822, 2],
  ['VT', 85_533, 1],
  ['GA', 70_835, 1],
  ['KY', 68_705, 1],
  ['RI', 68_446, 1],
  ['DE', 55_540, 1],
];

describe('published apportionments', () => {
  it('gives the states their seats of 1790', () => {
    const found = apportion(
      60,
      US_1790.map(([, population]) => population),
    );
    expect(Object.fromEntries(US_1790.map(([state], index) => [state, found.quotas[index]]))).toEqual(
      Object.fromEntries(US_1790.map(([state, , seats]) => [state, seats])),
    );
    // Published too: the floors sum to 52, so 8 are left.
    expect(found.left).toBe(8);
  });

  it('shares seven seats by 50, 30 and 20', () => {
    expect(apportion(7, [50, 30, 20]).quotas).toEqual([4, 2, 1]);
  });
});

describe('another implementation', () => {
  it('agrees wherever no tie has to be settled', () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 600 }),
        fc.array(fc.integer({ min: 1, max: 9999 }), { minLength: 2, maxLength: 12 }),
        (places, list) => {
          const ours = apportion(places, list);
          if (ours.tied) return;
          const votes = Object.fromEntries(list.map((share, index) => [`k${index}`, share]));
          const theirs = hareNiemeyer(votes, places, false);
          expect(ours.quotas).toEqual(list.map((_, index) => theirs[`k${index}`]));
          compared++;
        },
      ),
      { numRuns: 300 },
    );
    expect(compared).toBeGreaterThan(200);
  });
});
