/** Numbers as people write them: in digits, with fractions, in words. */
import { Problem } from './problem.ts';

/** What a person typed, short enough to be said back to her. */
export const clip = (text: string, longest = 40) =>
  text.length <= longest ? text : `${[...text].slice(0, longest - 1).join('')}…`;

const SIGNS: ReadonlyMap<string, number> = new Map([
  ['½', 1 / 2],
  ['¼', 1 / 4],
  ['¾', 3 / 4],
  ['⅓', 1 / 3],
  ['⅔', 2 / 3],
  ['⅛', 1 / 8],
  ['⅜', 3 / 8],
  ['⅝', 5 / 8],
  ['⅞', 7 / 8],
]);
const SIGN = `[${[...SIGNS.keys()].join('')}]`;
/** Digits with one decimal mark, as a part of a pattern. */
export const NUMBER = String.raw`(?:\d{1,7}(?:[.,]\d{1,6})?|\.\d{1,6})`;
/** The same with fractions: `7 1/2`, `7-1/2`, `7½`. */
export const MIXED = String.raw`(?:(?:\d{1,5}(?:\s+|-))?\d{1,3}\s?[\/⁄]\s?[1-9]\d?|${NUMBER}\s?${SIGN}?|${SIGN})`;

const ONLY_MIXED = new RegExp(`^${MIXED}$`);
const ENDS_IN_SIGN = new RegExp(`${SIGN}$`);

/** Names of the numbers below twenty, and of the tens. */
const SMALL: ReadonlyMap<string, number> = new Map(
  (
    'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen ' +
    'eighteen nineteen'
  )
    .split(' ')
    .map((name, value) => [name, value]),
);
const TENS: ReadonlyMap<string, number> = new Map(
  'twenty thirty forty fifty sixty seventy eighty ninety'
    .split(' ')
    .map((name, index) => [name, 10 * (index + 2)]),
);
const PARTS: ReadonlyMap<string, number> = new Map([
  ['half', 1 / 2],
  ['halves', 1 / 2],
  ['third', 1 / 3],
  ['thirds', 1 / 3],
  ['quarter', 1 / 4],
  ['quarters', 1 / 4],
  ['eighth', 1 / 8],
  ['eighths', 1 / 8],
]);
const DOZEN = 12;
const GROUPS: ReadonlyMap<string, number> = new Map([
  ['dozen', DOZEN],
  ['dozens', DOZEN],
  ['hundred', 100],
  ['thousand', 1000],
]);

/** A word with a digit in it is a number as a whole or not at all: `120cm` is none. */
const isOneWithDigits = (text: string) => /\d/.test(text) && !/\s/.test(text);

/** Longer than any number in words that is meant. */
const LONGEST_WORDS = 60;

/** What was read of some words: a value, and how many words it took. */
interface Taken {
  readonly value: number;
  readonly words: number;
}

/** `twenty four`, `nineteen`, or digits. */
function below100(words: readonly string[]): Taken | undefined {
  const [first = '', second = ''] = words;
  const ten = TENS.get(first);
  const unit = SMALL.get(second);
  if (ten !== undefined)
    return unit !== undefined && unit > 0 && unit < 10
      ? { value: ten + unit, words: 2 }
      : { value: ten, words: 1 };
  const value =
    SMALL.get(first) ?? (/^\d/.test(first) && ONLY_MIXED.test(first) ? readNumber(first) : undefined);
  return value === undefined ? undefined : { value, words: 1 };
}

/** `a hundred and twenty`, `two dozen`, `one thousand two hundred`. */
function wholeOf(words: readonly string[]): Taken | undefined {
  const first: Taken | undefined =
    below100(words) ??
    (/^an?$/.test(words[0] ?? '') && GROUPS.has(words[1] ?? '')
      ? { value: 1, words: 1 }
      : GROUPS.has(words[0] ?? '')
        ? { value: 1, words: 0 }
        : undefined);
  const group = first && GROUPS.get(words[first.words] ?? '');
  if (first === undefined || group === undefined) return first;
  const value = first.value * group;
  const taken = first.words + 1;
  const and = words[taken] === 'and' ? 1 : 0;
  const rest = group === DOZEN ? undefined : wholeOf(words.slice(taken + and));
  // “a hundred and a half” leaves its half; after hundreds come smaller numbers only.
  return rest === undefined || rest.value >= group
    ? { value, words: taken }
    : { value: value + rest.value, words: taken + and + rest.words };
}

/** `a half`, `three quarters`. */
function fractionOf(words: readonly string[]): Taken | undefined {
  const many: Taken = /^an?$/.test(words[0] ?? '')
    ? { value: 1, words: 1 }
    : (below100(words) ?? { value: 1, words: 0 });
  const part = PARTS.get(words[many.words] ?? '');
  return part === undefined ? undefined : { value: many.value * part, words: many.words + 1 };
}

/** `twenty-four`, `a hundred and twenty`, `half a dozen`, `6 and a half`; undefined where a word is no number. */
function readWords(text: string): number | undefined {
  if (text.length > LONGEST_WORDS || isOneWithDigits(text)) return undefined;
  const words = text
    .toLowerCase()
    .replace(/(?<=[a-z])-(?=[a-z])/g, ' ')
    .split(/\s+/);
  if (/^half an? dozen$/.test(words.join(' '))) return DOZEN / 2;
  const fraction = fractionOf(words);
  if (fraction?.words === words.length) return fraction.value;
  const whole = wholeOf(words);
  if (whole === undefined) return undefined;
  const rest = words.slice(whole.words);
  if (rest.length === 0) return whole.value;
  const and = rest[0] === 'and' ? 1 : 0;
  const more = fractionOf(rest.slice(and)) ?? (and === 1 ? below1(rest.slice(1)) : undefined);
  return and === 1 && more?.words === rest.length - 1 ? whole.value + more.value : undefined;
}

/** `1/2` behind an “and”. */
function below1(words: readonly string[]): Taken | undefined {
  const [first = ''] = words;
  const value = ONLY_MIXED.test(first) ? readNumber(first) : undefined;
  return value !== undefined && value < 1 ? { value, words: 1 } : undefined;
}

/**
 * A number as people write it; undefined where it is none.
 *
 * @example
 * readNumber('7 1/2') // → 7.5
 * readNumber('twenty-four') // → 24
 */
export function readNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (!ONLY_MIXED.test(trimmed)) return readWords(trimmed);
  // 1,360 is one thousand three hundred and sixty to some and one point three six to others: neither is guessed.
  if (/^\d{1,3},\d{3}$/.test(trimmed)) return undefined;
  const slash = /^(?:(\d+)(?:\s+|-))?(\d+)\s?[/⁄]\s?(\d+)$/.exec(trimmed);
  if (slash) return Number(slash[1] ?? 0) + Number(slash[2]) / Number(slash[3]);
  const sign = ENDS_IN_SIGN.exec(trimmed)?.[0];
  const whole = sign === undefined ? trimmed : trimmed.slice(0, -1).trim();
  return (
    (whole === '' ? 0 : Number(whole.replace(',', '.'))) + (sign === undefined ? 0 : (SIGNS.get(sign) ?? 0))
  );
}

/** Whether the text is a bare number, which takes the maker's own unit. */
export const isBareNumber = (text: string) => readNumber(text) !== undefined;

/**
 * Refuses a number with a comma that some read as a thousand and some as a decimal.
 *
 * Throws Problem: unclear-number.
 */
export function refuseUnclear(text: string): void {
  const number = /^[+-]?(\d{1,3},\d{3})(?!\d)/.exec(text.trim())?.[1];
  if (number === undefined) return;
  throw new Problem('unclear-number', `“${clip(text)}” is unclear: a thousand, or a decimal?`, {
    hint: `Write ${number.replace(',', '')} or ${number.replace(',', '.')}.`,
  });
}
