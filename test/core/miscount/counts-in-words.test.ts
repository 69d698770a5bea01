/** Which numbers of a message are counts, read as a crocheter would. */
import { describe, expect, it } from 'vitest';
import { findCountsIn } from '../../../src/core/miscount/counts-in-words.ts';

describe('counts in a message', () => {
  it.each<[string, number[], number | undefined]>([
    ['3 5 7', [3, 5, 7], undefined],
    ['I have 3, 5, 7 now; then 8. Help!', [3, 5, 7, 8], undefined],
    ['Row 9: 19', [19], 9],
    ['row #4 12', [12], 4],
    ['R9 19, r10 21', [19, 21], 9],
    ['rnd 9 to 12: 40', [40], 9],
    ['Rounds 9–11 have 24 25 26', [24, 25, 26], 9],
    ['rnds 9 - 11 24', [24], 9],
    ['0 to 1234', [0, 1234], undefined],
    ['my brow 9', [9], undefined],
    ['rowing 5', [5], undefined],
    ['(13)', [13], undefined],
    ['19 sts', [19], undefined],
    // The rows come later, and are no counts either.
    ['19, row 9', [19], 9],
  ])('%s', (words, counts, from) => {
    expect(findCountsIn(words)).toEqual({ counts, from });
  });

  it.each([
    '',
    'a lovely blanket',
    'Row 9',
    '15cm 15 cm 20mm 6in 6 inches 3 oz 100g 100 g 170m 170 yd 11 wpi',
    '7.5 1,5 1/2 3/12/2031 5:30 2031-05-31',
    '#5 @5 $5 £5 €5 5% 6" 6” 6″',
    '13x10 H8 v2 12345 a1 1a',
  ])('are not in %j', (words) => {
    expect(findCountsIn(words)).toBeUndefined();
  });

  it('are sixty at most, the first of them', () => {
    const words = Array.from({ length: 70 }, (_, index) => String(index)).join(' ');
    expect(findCountsIn(words)!.counts).toEqual(Array.from({ length: 60 }, (_, index) => index));
  });
});
