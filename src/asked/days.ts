/** Days in words: “by the end of May”, “in three weeks”, “30 June 2026”. */

export interface DayFound {
  /** YYYY-MM-DD */
  readonly day: string;
  /** Characters of the phrase, the last one left out. */
  readonly from: number;
  readonly to: number;
}

/** What a day in words has in it: without one of these the reader of days, slow to load, is not asked. */
const LOOKS_LIKE_A_DAY =
  /\b(jan(uary)?|feb(ruary)?|mar(ch)?|apr(il)?|may|june?|july?|aug(ust)?|sept?(ember)?|oct(ober)?|nov(ember)?|dec(ember)?|monday|tuesday|wednesday|thursday|friday|saturday|sunday|tomorrow|next (week|month)|christmas|(in|within) (\w+ )?(days?|weeks?|months?)|\d{4}-\d{1,2}-\d{1,2}|\d{1,2}[./]\d{1,2}[./]\d{2,4})\b/i;
/** 5/6/2026 is May to some and June to others. */
const EITHER_WAY = /^(0?[1-9]|1[0-2])[./](0?[1-9]|1[0-2])[./]\d{2,4}$/;
/** Only words of a closing day make a day of “may”. */
const OF_A_DEADLINE = /\b(clos\w*|until|till|by|deadline|due|end|extend\w*|reopen\w*|open\w*|day|date)\b/i;

/** Loads the reader of days, which takes a tenth of a second: a room that stays does so before it listens. */
export const loadDays = () => import('chrono-node');

/** The days that a phrase names, counted from today. Loads the reader of days only where a day may stand. */
export async function daysIn(phrase: string, today: Date): Promise<readonly DayFound[]> {
  if (!LOOKS_LIKE_A_DAY.test(phrase) || !OF_A_DEADLINE.test(phrase)) return [];
  const { en } = await loadDays();
  return en.parse(phrase, today, { forwardDate: true }).flatMap((found) => {
    if (EITHER_WAY.test(found.text.trim())) return [];
    // “may” alone, or a time of day, is no day.
    if (
      !found.start.isCertain('month') &&
      !found.start.isCertain('weekday') &&
      !found.start.isCertain('day') &&
      !/week|day|month/i.test(found.text)
    )
      return [];
    const { start } = found;
    const pad = (n: number | null) => String(n ?? 1).padStart(2, '0');
    const day = `${start.get('year') ?? today.getUTCFullYear()}-${pad(start.get('month'))}-${pad(start.get('day'))}`;
    return [{ day, from: found.index, to: found.index + found.text.length }];
  });
}
