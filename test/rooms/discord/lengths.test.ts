/** First answers are short: people read them on a phone, among what others say. */
import { describe, expect, it } from 'vitest';
import { measureAnswers } from './lengths.ts';

describe('a first answer', () => {
  it('has at most 12 lines on a desktop, 6 in the middle of all; on a phone twice as many', async () => {
    const lengths = await measureAnswers();
    expect(lengths.length).toBeGreaterThan(80);
    const long = lengths.filter(({ desktop, phone }) => desktop > 12 || phone > 26);
    expect(long.map(({ path, desktop, phone, content }) => ({ path, desktop, phone, content }))).toEqual([]);
    const middle = (numbers: readonly number[]) =>
      numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];
    expect(middle(lengths.map(({ desktop }) => desktop))).toBeLessThanOrEqual(6);
    expect(middle(lengths.map(({ phone }) => phone))).toBeLessThanOrEqual(12);
  });
});
