/** Reading lists that people type: counts, numbers, days. */
import { MOST_COUNTS, MOST_NUMBERS } from './limits.ts';
import { Problem } from './problem.ts';
import { clip } from './quantity.ts';

/** What stands between two entries of a list. */
const BETWEEN = /[\s,;]+/;
const entries = (text: string): string[] => text.split(BETWEEN).filter((entry) => entry !== '');

/**
 * A run of counts, whole and not negative.
 *
 * Throws Problem: no-counts, too-many-counts, not-a-count.
 *
 * @example
 * readCounts('3 5, 7 8') // → [3, 5, 7, 8]
 */
export function readCounts(text: string): number[] {
  const hint = 'Write the counts row by row with spaces between, like 3 5 7 8.';
  const parts = entries(text);
  if (parts.length === 0) throw new Problem('no-counts', 'No counts are given.', { hint });
  if (parts.length > MOST_COUNTS)
    throw new Problem('too-many-counts', `More than ${MOST_COUNTS} counts are too many at once.`, {
      hint: 'Give the last rows only, with from_row.',
      facts: { most: MOST_COUNTS, given: parts.length },
    });
  return parts.map((part) => {
    if (!/^\d{1,6}$/.test(part))
      throw new Problem('not-a-count', `“${clip(part)}” is not a count.`, { hint });
    return Number(part);
  });
}

/**
 * A day as YYYY-MM-DD.
 *
 * Throws Problem: not-a-day, for one that no calendar has as well.
 *
 * @example
 * readDay('2031-5-31') // → '2031-05-31'
 */
export function readDay(text: string): string {
  const hint = 'Write the day as year-month-day, like 2031-05-31.';
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim()) ?? [];
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  // 31 February rolls over into March: no such day.
  if (day === undefined || date.getUTCDate() !== Number(day) || date.getUTCMonth() !== Number(month) - 1) {
    throw new Problem('not-a-day', `“${clip(text)}” is not a day.`, { hint });
  }
  return date.toISOString().slice(0, 10);
}

/**
 * Numbers, each once, in order.
 *
 * Throws Problem: no-numbers, too-many-numbers, not-a-number.
 *
 * @example
 * readNumbers('9 3 5-7') // → [3, 5, 6, 7, 9]
 */
export function readNumbers(text: string): number[] {
  const hint = 'Write numbers with spaces between, or from-to, like 3 5 7-9.';
  const numbers = new Set<number>();
  for (const part of entries(text)) {
    const [, first, last = first] = /^#?(\d{1,5})(?:[-–](\d{1,5}))?$/.exec(part) ?? [];
    if (first === undefined || Number(last) < Number(first)) {
      throw new Problem('not-a-number', `“${clip(part)}” is not a number.`, { hint });
    }
    if (Number(last) - Number(first) + numbers.size >= MOST_NUMBERS) {
      throw new Problem('too-many-numbers', `More than ${MOST_NUMBERS} numbers are too many at once.`, {
        hint,
        facts: { most: MOST_NUMBERS },
      });
    }
    for (let number = Number(first); number <= Number(last); number++) numbers.add(number);
  }
  if (numbers.size === 0) throw new Problem('no-numbers', 'No number is given.', { hint });
  return [...numbers].sort((a, b) => a - b);
}
