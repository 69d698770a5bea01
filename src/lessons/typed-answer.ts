/** An answer as it is typed, read as what is asked for; and the result as it is said. */
import { cm, m, num } from '../core/base/reader.ts';
import { Problem } from '../core/base/problem.ts';
import { clip, readLength, readNumber } from '../core/base/quantity.ts';
import type { Reader } from '../core/base/reader.ts';
import { readStitch } from '../core/base/trade-words.ts';
import { STITCHES } from '../standards/stitches.ts';
import { TERMS } from '../standards/terms.ts';
import type { Asks } from './lesson.ts';

const OWN_UNITS = {
  cm: { metric: 'cm', imperial: 'in' },
  m: { metric: 'm', imperial: 'yd' },
} as const satisfies Record<'cm' | 'm', Record<Reader['units'], string>>;

const CM_PER_M = 100;

/** A number, and what is written behind it. */
const AMOUNT = /(\d[\d.,]*(?:\s?[½¼¾]|\s+\d+\/\d+|\/\d+)?|[½¼¾])\s*([a-z"”]*)/gi;

/** The one number among the words, with the word behind it: `19 stitches`, `row 15`, `about 1,795 m`. */
function amountIn(text: string): { readonly number: number; readonly behind: string } | undefined {
  const whole = readNumber(text.trim());
  if (whole !== undefined) return { number: whole, behind: '' };
  const [only, another] = [...text.matchAll(AMOUNT)];
  if (only === undefined || another !== undefined) return undefined;
  const [, digits = '', behind = ''] = only;
  // Results run into thousands, and none is so exact that it has three decimals.
  const number = readNumber(digits.replace(/[.,]$/, '').replace(/^(\d{1,3}),(\d{3})$/, '$1$2'));
  return number === undefined ? undefined : { number, behind };
}

const refuse = (asks: Asks, typed: string, example: string) =>
  new Problem('answer-unread', `${clip(typed)} is not what is asked for: ${describeAsked(asks)}.`, {
    option: 'answer',
    hint: `Give it like answer:${example}.`,
    facts: { asked: asks.kind },
  });

/** What is asked for, in a few words: `a number of stitches`. */
export function describeAsked({ kind, of }: Asks): string {
  if (kind === 'row') return 'the number of a row';
  if (kind === 'stitch') return `a ${of}`;
  if (kind === 'percent') return 'how many per cent';
  if (kind === 'cm' || kind === 'm') return `how long ${of} is`;
  return `how many ${of}`;
}

/**
 * Reads what was typed, in the core's unit; a bare length is in the reader's own.
 *
 * Throws Problem: answer-unread.
 */
export function readAnswer(asks: Asks, typed: string, { units }: Pick<Reader, 'units'>): number {
  const { kind } = asks;
  if (kind === 'stitch') {
    try {
      return STITCHES.indexOf(readStitch(/^\s*(?:US|UK)\b/i.test(typed) ? typed : `${asks.terms} ${typed}`));
    } catch (error) {
      if (error instanceof Problem) throw refuse(asks, typed, TERMS.dc[asks.terms]);
      throw error;
    }
  }
  const amount = amountIn(typed);
  const example = { count: '19', row: '15', number: '15', percent: '12.5', cm: '18', m: '250' }[kind];
  if (amount === undefined) throw refuse(asks, typed, example);
  if (kind !== 'cm' && kind !== 'm') return amount.number;
  const factor = lengthOfOne(amount.behind === '' ? OWN_UNITS[kind][units] : amount.behind);
  if (factor === undefined) throw refuse(asks, typed, example);
  return (amount.number * factor) / (kind === 'm' ? CM_PER_M : 1);
}

/** One of a unit in cm; undefined where it is no unit of length. */
function lengthOfOne(unit: string): number | undefined {
  try {
    return readLength(`1 ${unit}`);
  } catch (error) {
    if (error instanceof Problem) return undefined;
    throw error;
  }
}

/** The result in words, its units those of whoever reads it: `19 stitches`, `row 15`, `18.3 cm`. */
export function sayAnswer(asks: Asks, value: number): string {
  switch (asks.kind) {
    case 'row':
      return `row ${num(value)}`;
    case 'cm':
      return cm(value);
    case 'm':
      return m(value);
    case 'percent':
      return `${num(value, 1)} %`;
    case 'stitch': {
      const stitch = STITCHES[value];
      return stitch === undefined ? '' : `${asks.terms} ${TERMS[stitch][asks.terms]}`;
    }
    case 'number':
      return `${num(value, 1)} ${asks.of}`;
    case 'count':
      return `${num(value)} ${asks.of}`;
  }
}
