/** Reading lists that people type: counts, numbers, days. */
import { MOST_COUNTS, MOST_LENGTHS, MOST_NUMBERS } from './limits.ts';
import { Problem } from './problem.ts';
import { clip, readLength } from './quantity.ts';

/** What stands between two entries of a list. */
const BETWEEN = /(?:[\s,;&]|\band\b)+/i;
const BETWEEN_ALL = new RegExp(BETWEEN, 'gi');
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
  const parts = entries(text.replace(/\//g, ' ')).filter((part) => !/^(?:sts?|stitches)$/i.test(part));
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

/** What is a length: a number, with its unit or without. */
const LENGTH = /(?<!\d)(\d+(?:\.\d+)?)\s*(cm|mm|in|inch|inches|"|″)?(?=$|[\s,;&])/gi;

/**
 * Lengths one after the other, in cm: a bare number is of the unit that is named behind it further on, or of `own`.
 *
 * Throws Problem: no-lengths, too-many-lengths, and those of a length.
 *
 * @example
 * readLengths('14.2 15, 6in', 'cm', 'sides').map((length) => length.toFixed(2)) // → ['36.07', '38.10', '15.24']
 */
export function readLengths(text: string, own: 'cm' | 'in', option: string): number[] {
  const hint = 'Write the lengths with spaces between, like 14.2 15 15.6cm.';
  const found = [...text.matchAll(LENGTH)].map(([, number = '', unit]) => ({ number, unit }));
  const rest = text.replace(LENGTH, ' ').replace(BETWEEN_ALL, '');
  if (found.length === 0 || rest !== '')
    throw new Problem('no-lengths', `“${clip(text)}” is no list of lengths.`, { option, hint });
  if (found.length > MOST_LENGTHS)
    throw new Problem('too-many-lengths', `More than ${MOST_LENGTHS} lengths are too many at once.`, {
      option,
      hint,
      facts: { most: MOST_LENGTHS, given: found.length },
    });
  let unit: string = own;
  return found
    .toReversed()
    .map(({ number, unit: named }) => {
      unit = named ?? unit;
      return readLength(`${number}${unit}`);
    })
    .toReversed();
}

const MONTHS = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');
const monthOf = (name: string) => MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;

/** Year, month and day of a day as it is typed, in order; undefined where it is none. */
function partsOfDay(text: string): readonly [number, number, number] | undefined {
  const [, year, month, day] = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text) ?? [];
  if (day !== undefined) return [Number(year), Number(month), Number(day)];
  // Only the day is more than twelve: which is which is clear.
  const [, one, other, last] = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(text) ?? [];
  if (last !== undefined)
    return Number(one) > MONTHS.length
      ? [Number(last), Number(other), Number(one)]
      : [Number(last), Number(one), Number(other)];
  const name = String.raw`([a-z]{3,9})\.?`;
  const dayFirst = new RegExp(`^(\\d{1,2})(?:st|nd|rd|th)?\\s+(?:of\\s+)?${name},?\\s+(\\d{4})$`, 'i').exec(
    text,
  );
  if (dayFirst) return [Number(dayFirst[3]), monthOf(dayFirst[2] ?? ''), Number(dayFirst[1])];
  const monthFirst = new RegExp(`^${name}\\s+(\\d{1,2})(?:st|nd|rd|th)?,?\\s+(\\d{4})$`, 'i').exec(text);
  if (monthFirst) return [Number(monthFirst[3]), monthOf(monthFirst[1] ?? ''), Number(monthFirst[2])];
  return undefined;
}

/**
 * A day, `2031-05-31`, `31 May 2031` or `31/5/2031`, as YYYY-MM-DD.
 *
 * Throws Problem: not-a-day, also for one that no calendar has; unclear-day where day and month could change places.
 *
 * @example
 * readDay('31 May 2031') // → '2031-05-31'
 */
export function readDay(text: string): string {
  const hint = 'Write the day as year-month-day, like 2031-05-31.';
  const typed = text.trim();
  const [, one = '', other = '', year] = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(typed) ?? [];
  const mayBeMonth = (number: string) => Number(number) <= MONTHS.length;
  if (year !== undefined && mayBeMonth(one) && mayBeMonth(other) && Number(one) !== Number(other)) {
    const written = (month: string, day: string) =>
      `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
    throw new Problem('unclear-day', `“${clip(text)}” is unclear: which is the day, which the month?`, {
      hint: `Write ${written(other, one)} or ${written(one, other)}, year-month-day, or the month in words.`,
    });
  }
  const [years, months, days] = partsOfDay(typed) ?? [NaN, NaN, NaN];
  const date = new Date(Date.UTC(years, months - 1, days));
  // 31 February rolls over into March, the year 31 into 1931: no such day. What is no number is no month either.
  if (date.getUTCMonth() !== months - 1 || date.getUTCFullYear() !== years)
    throw new Problem('not-a-day', `“${clip(text)}” is not a day.`, { hint });
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
  const joined = text.replace(/(\d)\s*(?:-|–|\bto\b)\s*(?=#?\d)/gi, '$1-');
  for (const part of entries(joined)) {
    const [, first, last = first] = /^#?(\d{1,5})(?:[-–]#?(\d{1,5}))?$/.exec(part) ?? [];
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

/** A thing in a list that people number: by its place, 1 for the first, or by an id that stays its own wherever it moves. */
export type InList = { readonly number: number } | { readonly id: number };

/**
 * A thing in a list by its id, as buttons carry it: `id12`. Undefined for every other text.
 *
 * @example
 * readIdInList('id12') // → { id: 12 }
 */
export function readIdInList(text: string): InList | undefined {
  const [, id] = /^id(\d{1,9})$/i.exec(text.trim()) ?? [];
  return id === undefined ? undefined : { id: Number(id) };
}
