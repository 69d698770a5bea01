/** Lengths and weights. */
import { UNIT_OF_LENGTH, UNIT_OF_WEIGHT } from '../tables.ts';
import { numberText, type Token } from '../tokens.ts';
import { pastDash } from './amounts.ts';
import type { Phrase, Recogniser } from './phrase.ts';

interface Measure {
  readonly kind: 'length' | 'weight';
  readonly unit: string;
  /** The token behind the unit. */
  readonly to: number;
}

/** What “in” stands before where it is no inch: “12 in each row”, “7 in total”. */
const AFTER_IN =
  /^(each|a|an|the|my|total|all|one|every|row|rows|round|rnd|this|that|our|it|them|your|his|her|both|between|uk|us|crochet|hdc|sc|dc|tr|dk|worsted|aran|half|double|single|treble|there|these|those|half-double|cotton|acrylic|time)$/;

/** Whether the word “in”, apart from its number, is an inch. */
function isInch(phrase: Phrase, at: number, unitAt: number): boolean {
  const after = phrase.tokens[unitAt + 1];
  if (after === undefined) return true;
  if (after.kind === 'number' && phrase.text(at - 1) !== 'x') return false;
  return !AFTER_IN.test(after.text);
}

function lengthAt(phrase: Phrase, at: number, unitAt: number, token: Token): boolean {
  const close = phrase.tokens[at]?.to === token.from;
  if (token.text === '"' || token.text === "'") return close;
  return token.text !== 'in' || close || isInch(phrase, at, unitAt);
}

/** The unit of the number at a token: “cm”, “-inch”, “oz.”. */
export function measureAt(phrase: Phrase, at: number): Measure | undefined {
  const { tokens } = phrase;
  const dashed = pastDash((one) => phrase.text(one), at + 1);
  const unitAt = tokens[dashed]?.kind === 'word' ? dashed : at + 1;
  const token = tokens[unitAt];
  if (!token || phrase.isTaken(unitAt)) return undefined;
  const dotted =
    tokens[unitAt + 1]?.text === '.' &&
    tokens[unitAt + 1]?.from === token.to &&
    tokens[unitAt + 2] !== undefined &&
    /^(in|ft|oz|yd|lb|g|cm|mm|m)$/.test(token.text);
  const to = unitAt + (dotted ? 2 : 1);
  const length = UNIT_OF_LENGTH.get(token.text);
  if (length !== undefined)
    return lengthAt(phrase, at, unitAt, token) ? { kind: 'length', unit: length, to } : undefined;
  const weight = UNIT_OF_WEIGHT.get(token.text);
  return weight === undefined ? undefined : { kind: 'weight', unit: weight, to };
}

/** `4 ft 2 in`, `5'6"`: one length, in inches. */
export const feetAndInches: Recogniser = {
  example: [`a throw 5'6" wide`, 'length:66in'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number' || token.ordinal) return undefined;
    const feet = measureAt(phrase, at);
    const second = feet?.unit === 'ft' ? phrase.tokens[feet.to] : undefined;
    const inches = feet && second?.kind === 'number' ? measureAt(phrase, feet.to) : undefined;
    if (inches?.unit !== 'in') return undefined;
    const value = (token.value ?? NaN) * 12 + (second?.value ?? 0);
    return phrase.put({
      kind: 'length',
      text: `${numberText(value)}in`,
      value,
      unit: 'in',
      from: at,
      to: inches.to,
      must: true,
    });
  },
};

export const measure: Recogniser = {
  example: ['2 ounces of yarn', 'weight:2oz'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number' || token.ordinal) return undefined;
    const found = measureAt(phrase, at);
    if (!found) return undefined;
    return phrase.put({
      kind: found.kind,
      text: `${token.text}${found.unit}`,
      value: token.value ?? NaN,
      unit: found.unit,
      from: at,
      to: found.to,
      must: true,
    });
  },
};
