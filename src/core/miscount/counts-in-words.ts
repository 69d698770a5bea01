/** Counts among the words of a message: what somebody wrote of her rows, as she wrote it. */

/** So many counts of one message, as of one question. */
const MOST = 60;

/** `row 9`, `rounds 9–11`, `R9`, `rnd 9 to 12`: which row is meant, and no count of it. */
const ROW = /\b(?:rows?|rounds?|rnds?|r)\s*#?(\d{1,4})(?:\s*(?:-|–|to)\s*\d{1,4})?(?!\d)/giu;

/** A whole number by itself: no part of a length, a weight, a decimal, a day, a hook, a name. */
const ALONE =
  /(?<![\w.,:/#@$£€-])(\d{1,4})(?![\w%"”″]|[.,:/-]\d|\s*(?:cm|mm|in|inch|inches|g|oz|m|yd|yds|wpi)\b)/gu;

export interface CountsFound {
  readonly counts: readonly number[];
  /** The row of the first of them, where the words say it. */
  readonly from: number | undefined;
}

/**
 * The counts in a message, in the order in which they stand; undefined where there is none.
 *
 * @example
 * findCountsIn('I got 3, 5, 7 and then 8?!') // → { counts: [3, 5, 7, 8], from: undefined }
 * findCountsIn('Row 9: 19 sts, row 10: 20 sts, side 15 cm') // → { counts: [19, 20], from: 9 }
 * findCountsIn('what a lovely blanket') // → undefined
 */
export function findCountsIn(words: string): CountsFound | undefined {
  const first = new RegExp(ROW.source, 'iu').exec(words)?.[1];
  const counts = [...words.replace(ROW, ' ').matchAll(ALONE)]
    .slice(0, MOST)
    .map(([, count]) => Number(count));
  return counts.length === 0 ? undefined : { counts, from: first === undefined ? undefined : Number(first) };
}
