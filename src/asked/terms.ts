/** Words of the trade that are asked after. */
import { ALL_TERM_WORDS, lookUpTerm } from '../core/lookup/term.ts';
import type { Heard } from './heard.ts';
import { tokensOf } from './tokens.ts';

/** Words that are terms too, but are said of everything. */
const SAID_OF_ALL = new Set([
  'st',
  'sts',
  'stitch',
  'round',
  'row',
  'rnd',
  'in',
  'to',
  'and',
  'work',
  'each',
  'square',
  'block',
  'color',
  'colour',
  'pattern',
  'hook',
  'yarn',
  'us',
  'uk',
  'same',
  'next',
  'rep',
  'repeat',
  'beginning',
  'right side',
  'wrong side',
  'inch',
  'inches',
  'm',
  'cm',
  'mm',
  'g',
  'oz',
  'yard',
  'together',
  'increase',
  'decrease',
  'skip',
  'rounds',
  'gauge',
  'border',
  'granny square',
  'granny',
]);

/** A phrase that asks after one word and nothing else: “what is gauge”, “what does tension mean?”. */
const ONE_WORD =
  /^\W*(?:what(?:['’]s|\s+is|\s+are|\s+does|\s+do)|define|explain)\s+(?:an?\s+|the\s+)?(\p{L}+(?:\s\p{L}+){0,2}?)(?:\s+mean)?\W*$/iu;

const askedAlone = ({ phrase }: Heard) => ONE_WORD.exec(phrase)?.[1]?.toLowerCase();

/** Whether nothing but the meaning of one term is asked after. */
export const asksTermAlone = (heard: Heard): boolean => termIn(heard)?.text === askedAlone(heard);

/** The word of the trade that a phrase asks after: the longest that stands in the table of terms. */
export function termIn(heard: Heard): Term | undefined {
  // Every question about words asks for it.
  let found = terms.get(heard);
  if (!found) {
    found = { term: longestTerm(heard) };
    terms.set(heard, found);
  }
  return found.term;
}

/** All of them, where several are to be told apart, in the order in which they are said; a stitch each. */
export function termsIn(heard: Heard): readonly Term[] {
  const { tokens } = heard;
  const found: Term[] = [];
  for (let at = 0; at < tokens.length; at++) {
    const long = [3, 2, 1].find((length) => isStitch(textOf(heard, at, at + length)));
    if (long === undefined) continue;
    found.push({ text: textOf(heard, at, at + long), from: at, to: at + long });
    at += long - 1;
  }
  return found;
}

const isStitch = (text: string) =>
  !SAID_OF_ALL.has(text) && lookUpTerm(text).some(({ symbol }) => symbol !== undefined);

const textOf = ({ phrase, tokens }: Heard, from: number, to: number): string =>
  phrase
    .slice(tokens[from]?.from ?? 0, tokens[to - 1]?.to ?? 0)
    .toLowerCase()
    .replace(/\s+/g, ' ');

interface Term {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const terms = new WeakMap<Heard, { readonly term: Term | undefined }>();

/** What a term may begin with: its first word, whose it is, or what stitches at a post and foundation stitches begin with. */
const BEGINS: ReadonlySet<string> = new Set([
  ...ALL_TERM_WORDS.map((name) => tokensOf(name)[0]?.text ?? ''),
  'us',
  'uk',
]);
const JOINED = /^(fp|bp|f)(sc|hdc|dc|htr|tr|dtr)?$/;

function longestTerm(heard: Heard): Term | undefined {
  const { tokens } = heard;
  const one = askedAlone(heard);
  for (let length = 4; length >= 1; length--)
    for (let at = 0; at + length <= tokens.length; at++) {
      const first = tokens[at]?.text ?? '';
      if (!BEGINS.has(first) && !JOINED.test(first)) continue;
      const parts = tokens.slice(at, at + length);
      if (parts.some(({ kind }, index) => kind === 'mark' && (index === 0 || index === length - 1))) continue;
      const text = heard.phrase
        .slice(parts[0]?.from ?? 0, parts.at(-1)?.to ?? 0)
        .toLowerCase()
        .replace(/\s+/g, ' ');
      if ((SAID_OF_ALL.has(text) && text !== one) || text.length < 2) continue;
      // “ch 31, turn” is a line of a pattern, unless somebody asks what it means.
      if (/^ch\b/.test(text) && /\d/.test(text) && !heard.present.has('mean') && parts.length < tokens.length)
        continue;
      if (lookUpTerm(text).length > 0) return { text, from: at, to: at + length };
    }
  return undefined;
}
