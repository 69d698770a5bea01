/** Amounts that are neither long nor heavy: money, percentages, time. */
import { numberText } from '../tokens.ts';
import type { Recogniser } from './phrase.ts';

/** What a number is of, a dash between allowed. */
export const pastDash = (text: (at: number) => string, at: number) => (text(at) === '-' ? at + 1 : at);

export const money: Recogniser = {
  example: ['£4.50 a skein', 'money:4.5'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number') return undefined;
    const led = /^[£$€]$/.test(phrase.text(at - 1));
    const named = /^(£|€|dollars?|euros?|quid|pence|bucks)$/.test(phrase.text(at + 1));
    if (!led && !named) return undefined;
    return phrase.put({
      kind: 'money',
      text: token.text,
      value: token.value ?? NaN,
      from: led ? at - 1 : at,
      to: led ? at + 1 : at + 2,
      must: true,
    });
  },
};

export const percentage: Recogniser = {
  example: ['with 10 per cent spare', 'percent:10'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number') return undefined;
    const parted = phrase.text(at + 1) === 'per' && phrase.text(at + 2) === 'cent';
    if (!parted && !/^(%|percent|pct)$/.test(phrase.text(at + 1))) return undefined;
    return phrase.put({
      kind: 'percent',
      text: token.text,
      value: token.value ?? NaN,
      from: at,
      to: at + (parted ? 3 : 2),
      must: true,
    });
  },
};

/** Time at the hook, in minutes. */
export const minutes: Recogniser = {
  example: ['2 hours for each square', 'minutes:120'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number') return undefined;
    const unitAt = pastDash((one) => phrase.text(one), at + 1);
    const each = /^(minutes?|mins?)$/.test(phrase.text(unitAt))
      ? 1
      : /^(hours?|hrs?)$/.test(phrase.text(unitAt))
        ? 60
        : undefined;
    if (each === undefined) return undefined;
    const value = (token.value ?? NaN) * each;
    return phrase.put({
      kind: 'minutes',
      text: each === 1 ? token.text : numberText(value),
      value,
      from: at,
      to: unitAt + 1,
      must: true,
    });
  },
};
