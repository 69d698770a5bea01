import { describe, expect, it } from 'vitest';
import { countMade, countMadeOfNeeded, countStillToMake } from '../../../src/core/blanket/made.ts';

describe('what is made of a blanket', () => {
  it('counts no more of a kind than the layout has', () => {
    expect(countMadeOfNeeded([10, 10, 4], [12, 4])).toEqual([10, 4, 0]);
    expect(countMade([10, 10, 4], [12, 4])).toBe(14);
    expect(countMade([], [])).toBe(0);
  });

  it('is never less than done', () => {
    expect(countStillToMake(20, 8)).toBe(12);
    expect(countStillToMake(20, 23)).toBe(0);
  });
});
