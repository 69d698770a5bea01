/** How often a part is given out, and a list of parts with their days, as a teacher types them. */
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';
import { readDay } from '../base/lists.ts';
import { readNumber } from '../base/number.ts';
import { LONGEST_NAME } from '../base/limits.ts';
import { when } from '../base/reader.ts';
import type { Part, Work } from './events.ts';
import { MOST_PARTS, mustBeNear, mustNotCrowd } from './propose.ts';

/** The most days from one part to the next. */
export const MOST_DAYS_BETWEEN = 92;

const SPANS: ReadonlyMap<string, number> = new Map([
  ['day', 1],
  ['daily', 1],
  ['week', 7],
  ['weekly', 7],
  ['fortnight', 14],
]);

/**
 * Days from one part to the next.
 *
 * Throws Problem: not-so-often.
 *
 * @example
 * readEvery('2 weeks') // → 14
 */
export function readEvery(text: string): number {
  const [, many = '', unit = 'day'] =
    /^(?:every\s+)?(.*?)\s*(day|daily|week|weekly|fortnight|d|w)?s?$/i.exec(text.trim()) ?? [];
  const one = SPANS.get({ d: 'day', w: 'week' }[unit.toLowerCase()] ?? unit.toLowerCase()) ?? 1;
  const times =
    many === '' || /^an?$/i.test(many) ? 1 : /^other$/i.test(many) ? 2 : (readNumber(many) ?? Number.NaN);
  const days = times * one;
  const bare = many === '' && unit === 'day' && !/day/i.test(text);
  if (!bare && Number.isInteger(days) && days >= 1 && days <= MOST_DAYS_BETWEEN) return days;
  throw new Problem('not-so-often', `“${clip(text)}” does not say how often a part is given out.`, {
    option: 'every',
    hint: `Say week, 2 weeks, or a number of days from 1 to ${MOST_DAYS_BETWEEN}, like 10 days.`,
  });
}

/** What words tell of the work, the first that is found. */
const TELLING: readonly (readonly [RegExp, Work])[] = [
  [/\b(?:swatch|gauge|tension)/i, 'swatch'],
  [/\b(?:ends?|weav\w*)\b/i, 'ends'],
  [/\b(?:lay\w*|arrang\w*)\b/i, 'laying-out'],
  [/\b(?:join\w*|seam\w*|sew\w*)\b/i, 'joining'],
  [/\b(?:border|edg\w+)\b/i, 'border'],
  [/\bfirst\b/i, 'first'],
  [/\b(?:motifs?|squares?|blocks?|grann\w+)\b/i, 'motifs'],
];

/** The work that a title tells of; the teacher’s own where it tells of none. */
export const workIn = (title: string): Work => TELLING.find(([words]) => words.test(title))?.[1] ?? 'own';

const DAY =
  /\b\d{4}-\d{1,2}-\d{1,2}\b|\b\d{1,2}[/.-]\d{1,2}[/.-]\d{4}\b|\b\d{1,2} [a-z]+ \d{4}\b|\b[a-z]+ \d{1,2},? \d{4}\b/i;

/**
 * Parts with their days: `2031-01-06 swatch; 2031-01-13 first square; …`, each with a day in it, in the order of the days.
 *
 * Throws Problem: no-parts, too-many-parts, part-without-day, part-without-title, name-too-long, parts-out-of-order, day-passed, day-too-far,
 * too-many-parts-a-day, and those of a day.
 */
export function readParts(text: string, today: string): Part[] {
  const hint =
    'Write a day and what is done, with semicolons between: 2031-01-06 swatch; 2031-01-13 first square.';
  const problem = (code: string, sentence: string, facts = {}) =>
    new Problem(code, sentence, { option: 'list', hint, facts });
  const items = text
    .split(/[;\n]/)
    .map((item) => item.trim())
    .filter((item) => item !== '');
  if (items.length === 0) throw problem('no-parts', 'No part is given.');
  if (items.length > MOST_PARTS)
    throw problem('too-many-parts', `${items.length} parts are given; ${MOST_PARTS} can be kept.`, {
      most: MOST_PARTS,
      given: items.length,
    });
  const parts = items.map((item, index): Part => {
    const found = DAY.exec(item)?.[0];
    if (found === undefined) throw problem('part-without-day', `“${clip(item)}” has no day.`);
    const title = item
      .replace(found, ' ')
      .replace(/^[\s:,–-]+|[\s:,–-]+$/g, '')
      .replace(/\s+/g, ' ');
    if (title === '')
      throw problem('part-without-title', `What is done on ${when(readDay(found))} is not said.`);
    if (title.length > LONGEST_NAME)
      throw problem('name-too-long', `“${clip(title)}” is too long a title.`, { most: LONGEST_NAME });
    return { id: index + 1, title, from: readDay(found), work: workIn(title) };
  });
  for (const [index, { from }] of parts.entries()) {
    const before = parts[index - 1];
    if (before !== undefined && from < before.from)
      throw problem(
        'parts-out-of-order',
        `${when(from)} comes before ${when(before.from)}, the day of the part before it.`,
        {
          from,
          before: before.from,
        },
      );
  }
  const [first] = parts;
  if (first && first.from < today)
    throw problem('day-passed', `${when(first.from)} has passed.`, { from: first.from });
  mustBeNear(parts.at(-1)?.from ?? today, today, 'list');
  mustNotCrowd(
    parts,
    parts.map(({ from }) => from),
    'list',
  );
  return parts;
}
