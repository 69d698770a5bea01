/** Days, as the reader of days found them in what was typed. */
import type { DayFound } from '../days.ts';
import type { Phrase } from './phrase.ts';

/** “until 30 June” becomes `day:2026-06-30`, and its numbers are no amounts any more. */
export function putDays(phrase: Phrase, days: readonly DayFound[]): void {
  for (const { day, from, to } of days) {
    const first = phrase.tokens.findIndex((token) => token.to > from);
    const last = phrase.tokens.findLastIndex((token) => token.from < to);
    if (first >= 0 && last >= first)
      phrase.put({ kind: 'day', text: day, from: first, to: last + 1, must: true });
  }
}
