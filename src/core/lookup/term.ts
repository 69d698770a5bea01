/** What a word of a pattern means, in both terms: a bare abbreviation may be two different stitches. */
import {
  ABBREVIATIONS,
  ABBREVIATIONS_SOURCE,
  CHAIN_LOOP_SOURCE,
  CRAFT_WORDS,
  GERMAN_NAMES,
  GERMAN_SOURCE,
  STITCH_NAMES,
} from '../../standards/abbreviations.ts';
import { defined } from '../base/defined.ts';
import { count, type Terms } from '../base/reader.ts';

export interface Meaning {
  /** Whose term it is; both where the two agree. */
  readonly terms: Terms | 'both';
  readonly US: string;
  readonly UK: string;
  /** How it is worked, or what it stands for. */
  readonly how: string;
  readonly symbol?: string;
  readonly trap?: string;
  readonly source: string;
}

const clean = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ').replace(/\.$/, '');

/** A word that means the same in both terms. */
const same = (word: string, how: string, source = 'common practice'): Meaning => ({
  terms: 'both',
  US: word,
  UK: word,
  how,
  source,
});

/** The stitches of that name, in the terms that are asked for or in either. */
const findStitches = (word: string, only: Terms | undefined): Meaning[] =>
  STITCH_NAMES.flatMap(({ US, UK, how, source, symbol, trap }): Meaning[] => {
    const isUS = US.includes(word);
    const isUK = UK.includes(word);
    const asked = only === undefined ? isUS || isUK : only === 'US' ? isUS : isUK;
    if (!asked) return [];
    const terms = isUS && isUK ? 'both' : isUS ? 'US' : 'UK';
    const names = (all: readonly string[]) => all.slice(0, 2).join(', ');
    return [defined({ terms, US: names(US), UK: names(UK), how, source, symbol, trap })];
  });

/** `ch-5` is a loop that is there already, `ch 5` is five chains to be made. */
function readChains(word: string): Meaning[] {
  const [, sign, chains] = /^ch([ -])(\d{1,3})$/.exec(word) ?? [];
  if (chains === undefined) return [];
  const many = count(Number(chains), 'chain');
  const how =
    sign === '-'
      ? `a loop of ${many} that is there already; without the dash it is ${many} to make`
      : `make ${many}; with a dash (ch-${chains}) it is a loop that is there already`;
  return [same(word, how, CHAIN_LOOP_SOURCE)];
}

/** FPdc, BP hdc: round the stem. */
function readPost(word: string): Meaning[] {
  const [, post, around] = /^(fp|bp)[ -]?(sc|hdc|dc|htr|tr|dtr)$/.exec(word) ?? [];
  if (post === undefined || around === undefined) return [];
  const where = ABBREVIATIONS.find(({ short }) => short.toLowerCase() === post)?.means ?? '';
  return [same(word, `${around}, in the pattern’s own terms, at the ${where}`)];
}

/** fsc, fdc: the chain and the stitch in one. */
function readFoundation(word: string): Meaning[] {
  const founded = /^f(sc|hdc|dc|htr|tr)$/.exec(word)?.[1];
  if (founded === undefined) return [];
  return [
    same(
      word,
      `foundation ${founded}, in the pattern’s own terms: each stitch makes its own chain below it, instead of a foundation chain worked first`,
    ),
  ];
}

function findGerman(word: string): Meaning[] {
  const german = GERMAN_NAMES.find(({ names }) => names.includes(word));
  if (!german) return [];
  const { US, UK } = german;
  const stitch = STITCH_NAMES.find((one) => one.US[0] === US);
  return [
    { terms: 'both', US, UK, how: `a German name${stitch ? `; ${stitch.how}` : ''}`, source: GERMAN_SOURCE },
  ];
}

const findCraftWord = (word: string): Meaning[] =>
  CRAFT_WORDS.filter(({ names }) => names.includes(word)).map(({ means }) => same(word, means));

const findAbbreviation = (word: string): Meaning[] =>
  ABBREVIATIONS.filter(({ short, means }) => short.toLowerCase() === word || means === word).map(
    ({ short, means }) => same(short, means, ABBREVIATIONS_SOURCE),
  );

/** Where a word is looked for, one after the other, until it is found. */
const LOOKED_IN: readonly ((word: string, only: Terms | undefined) => Meaning[])[] = [
  findStitches,
  readChains,
  readPost,
  readFoundation,
  findGerman,
  findCraftWord,
  findAbbreviation,
];

/** Every meaning of a word, US and UK; `UK dc` asks for one of the two. Empty where it is not known. */
export function lookUpTerm(typed: string): Meaning[] {
  const match = /^(?:(us|uk)\s+)?(.+)$/.exec(clean(typed));
  const only = match?.[1]?.toUpperCase() as Terms | undefined;
  const word = match?.[2] ?? '';
  for (const look of LOOKED_IN) {
    const found = look(word, only);
    if (found.length > 0) return found;
  }
  return [];
}

/** Everything that can be looked up, for offers while typing. */
export const TERM_WORDS: readonly string[] = [
  ...new Set([
    ...STITCH_NAMES.flatMap(({ US, UK }) => [...US, ...UK]),
    ...ABBREVIATIONS.map(({ short }) => short),
  ]),
];

/** The same with the words of the craft and the German names. */
export const ALL_TERM_WORDS: readonly string[] = [
  ...TERM_WORDS,
  ...CRAFT_WORDS.flatMap(({ names }) => names),
  ...GERMAN_NAMES.flatMap(({ names }) => names),
];
