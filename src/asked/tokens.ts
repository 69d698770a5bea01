/** A phrase in pieces that can be looked at: words, numbers and marks, each with its place in what was typed. */

import { defined } from '../core/base/defined.ts';
import { numberAt, type Raw } from './numbers.ts';

export interface Token {
  readonly kind: 'word' | 'number' | 'mark';
  /** Lower case; numbers as the readers of quantities take them. */
  readonly text: string;
  readonly value?: number;
  /** True where the number is written as a place in a row of them: `9th`, `ninth`. */
  readonly ordinal?: true;
  /** True for a number that stands for no amount where nobody asks for one: `a`, `one`, `another`. */
  readonly loose?: true;
  /** Characters of the phrase, the last one left out. */
  readonly from: number;
  readonly to: number;
}

const SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
};

const PIECE =
  /\s+|(\d{1,3}(?:,\d{3})+(?![\d,])(?:\.\d+)?|\d+[.]\d+|(?<!\d,)\d+,\d{1,2}(?![\d,])|\.\d+|\d+)|([½¼¾⅓⅔⅛])|([\p{L}][\p{L}\p{M}]*(?:['’](?!\s)[\p{L}]+)?)|(.)/gsu;

/** A number as the readers take it: six decimals at most, no trailing zeros. */
export const numberText = (value: number) => String(Number(value.toFixed(6)));

function split(phrase: string): Raw[] {
  const raw: Raw[] = [];
  for (const match of phrase.matchAll(PIECE)) {
    const [whole, number, sign, word, mark] = match;
    const from = match.index;
    const to = from + whole.length;
    if (number !== undefined) raw.push({ kind: 'number', text: number, from, to });
    else if (sign !== undefined) raw.push({ kind: 'number', text: SIGNS[sign] ?? sign, from, to });
    else if (word !== undefined)
      raw.push({ kind: 'word', text: word.toLowerCase().replaceAll('’', "'"), from, to });
    else if (mark !== undefined)
      raw.push({
        kind: 'mark',
        text: mark === '″' || mark === '”' || mark === '“' ? '"' : /[’‘′`]/.test(mark) ? "'" : mark,
        from,
        to,
      });
  }
  return raw;
}

/** The phrase as tokens: numbers of every spelling are read, words are in lower case. */
export function tokensOf(phrase: string): Token[] {
  const raw = split(phrase);
  const tokens: Token[] = [];
  let at = 0;
  while (at < raw.length) {
    const one = raw[at];
    if (!one) break;
    const spelt = numberAt(raw, at);
    if (spelt) {
      const { value, next, unit, text = numberText(value), ordinal, loose } = spelt;
      // A unit that stands inside “an inch and a half” stays a token of its own.
      const last = unit ? raw.lastIndexOf(unit) - 1 : next - 1;
      tokens.push({
        kind: 'number',
        text,
        value,
        from: one.from,
        to: raw[last]?.to ?? one.to,
        ...defined({ ordinal, loose }),
      });
      if (unit) tokens.push(unit);
      at = next;
    } else {
      tokens.push(one);
      at++;
    }
  }
  return tokens;
}
