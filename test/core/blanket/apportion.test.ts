import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { apportion, showApportioned } from '../../../src/core/blanket/apportion.ts';
import { Working } from '../../../src/core/base/working.ts';
import { refused } from '../../refused.ts';

const shares = fc
  .array(fc.integer({ min: 0, max: 5000 }), { minLength: 1, maxLength: 26 })
  .filter((list) => list.some((share) => share > 0));

describe('largest remainders', () => {
  it('gives out every place, and to each the whole part of its quota or one more', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2500 }), shares, (places, list) => {
        const { quotas, left, given } = apportion(places, list);
        const sum = list.reduce((all, share) => all + share, 0);
        expect(quotas.reduce((all, quota) => all + quota, 0)).toBe(places);
        expect(given).toHaveLength(left);
        list.forEach((share, index) => {
          const floor = Math.floor((share * places) / sum);
          expect([floor, floor + 1]).toContain(quotas[index]);
          if (share === 0) expect(quotas[index]).toBe(0);
        });
      }),
      { numRuns: 300 },
    );
  });

  it('gives a larger share no fewer places', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), shares, (places, list) => {
        const { quotas } = apportion(places, list);
        list.forEach((a, i) => {
          list.forEach((b, j) => {
            if (a > b) expect(quotas[i]).toBeGreaterThanOrEqual(quotas[j]!);
          });
        });
      }),
      { numRuns: 100 },
    );
  });

  it('is the same for shares a thousand million times as large, where plain numbers would round', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2500 }),
        fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 1, maxLength: 20 }),
        (places, list) => {
          const large = apportion(
            places,
            list.map((share) => share * 1_000_000_000),
          );
          expect(large.quotas).toEqual(apportion(places, list).quotas);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('settles ties by rule: the larger share, then the first', () => {
    expect(apportion(1, [1, 1, 1])).toMatchObject({ quotas: [1, 0, 0], tied: true });
    expect(apportion(2, [1, 1, 1])).toMatchObject({ quotas: [1, 1, 0], tied: true });
    // Quotas 0.5 and 1.5: both fractions are a half.
    expect(apportion(2, [1, 3])).toMatchObject({ quotas: [0, 2], tied: true });
    expect(apportion(10, [1, 1]).tied).toBe(false);
    // And says how it would have been otherwise.
    expect(apportion(1, [1, 1, 1]).otherwise).toEqual([
      [0, 1, 0],
      [0, 0, 1],
    ]);
    expect(apportion(2, [1, 1, 1]).otherwise).toEqual([
      [0, 1, 1],
      [1, 0, 1],
    ]);
    expect(apportion(2, [1, 3]).otherwise).toEqual([[1, 1]]);
    expect(apportion(10, [1, 1]).otherwise).toEqual([]);
    // 2.8, 1.6 and 5.6: the first takes a place without a tie, the third before the second as the larger share.
    expect(apportion(10, [7, 4, 14])).toMatchObject({ quotas: [3, 1, 6], otherwise: [[3, 2, 5]] });
    // 11.1, 6.7 and 2.2: the one place that is left goes to a fraction that no other has.
    expect(apportion(20, [5, 3, 1])).toMatchObject({ quotas: [11, 7, 2], left: 1, given: [1], tied: false });
  });

  it('reads halves and tenths exactly', () => {
    expect(apportion(10, [2.5, 2.5, 5]).quotas).toEqual([3, 2, 5]);
    expect(apportion(3, [0.1, 0.2]).quotas).toEqual([1, 2]);
  });

  it('shows each exact share as it was computed', () => {
    const working = new Working();
    const { quotas } = showApportioned(working, 7, [
      { name: 'A', share: 50 },
      { name: 'B', share: 30 },
      { name: 'C', share: 20 },
    ]);
    expect(working.steps.map(({ result }) => result)).toEqual([3.5, 2.1, 1.4]);
    expect(quotas).toEqual([4, 2, 1]);
  });

  it('refuses shares that are all nothing', () => {
    expect(() => apportion(5, [0, 0])).toThrow(refused('no-shares'));
    expect(() => apportion(5, [-1, 2])).toThrow(Error);
    expect(() => apportion(5.5, [1])).toThrow(Error);
    expect(() => apportion(-1, [1])).toThrow('cannot share -1');
    expect(() => apportion(5, [1e12, 1])).toThrow('cannot share');
    expect(apportion(5, [1e12 - 1]).quotas).toEqual([5]);
    expect(apportion(0, [1, 2]).quotas).toEqual([0, 0]);
  });
});
