/** From words to senses: forms of up to six words, plural and misspelt ones as well. */
import { distance } from 'fastest-levenshtein';
import { NOT_MISSPELT, NOT_MISSPELT_SUMS } from './not-misspelt.ts';
import { TABLE_WORDS } from './tables.ts';
import type { Token } from './tokens.ts';
import { FUNCTION_WORDS, SENSES, type SenseName } from './words.ts';

/** A sense that was said, and where. */
export interface Said {
  readonly sense: SenseName;
  /** Tokens, the last one left out. */
  readonly from: number;
  readonly to: number;
  /** How many words the form has: longer ones are surer. */
  readonly words: number;
  /** True for a word inside a longer form: it may speak for a question, never against one. */
  readonly inner?: true;
}

interface Forms {
  readonly byFirst: ReadonlyMap<
    string,
    readonly { readonly rest: readonly string[]; readonly senses: SenseName[] }[]
  >;
  /** Single words of the trade by their length, for misspelt ones. */
  readonly singles: readonly string[];
  /** Every single word that stands in a form or a table. */
  readonly words: ReadonlySet<string>;
}

/** Small words whose slips are mended too. */
const EVERYDAY = ['how', 'many', 'much', 'what', 'which', 'does', 'need', 'should', 'would', 'where'];

const ENDINGS = ['', 's', 'ed', 'd', 'ing', 'es'];

function build(): Forms {
  const forms = new Map<string, SenseName[]>();
  const add = (form: string, sense: SenseName) => {
    const known = forms.get(form);
    if (known) {
      if (!known.includes(sense)) known.push(sense);
    } else forms.set(form, [sense]);
  };
  for (const [name, { forms: listed }] of Object.entries(SENSES)) {
    for (const form of listed.split(',').map((one) => one.trim())) {
      if (form === '') continue;
      const plus = form.includes('+');
      if (!plus) add(form, name as SenseName);
      else
        for (const ending of ENDINGS)
          for (const stem of [
            form.replace('+', ending),
            form.replace(/e?\+/, ending),
            // swapped, ripping
            ...(/^(ed|ing)$/.test(ending) ? [form.replace(/([bgmnprt])\+/, `$1$1${ending}`)] : []),
          ])
            add(stem, name as SenseName);
    }
  }
  const byFirst = new Map<string, { rest: string[]; senses: SenseName[] }[]>();
  for (const [form, senses] of forms) {
    const [first = '', ...rest] = form.split(/[\s-]+/);
    const listed = byFirst.get(first);
    if (listed) listed.push({ rest, senses });
    else byFirst.set(first, [{ rest, senses }]);
  }
  for (const listed of byFirst.values()) listed.sort((a, b) => b.rest.length - a.rest.length);
  const singles = [
    ...new Set(
      [...forms.keys(), ...TABLE_WORDS, ...EVERYDAY]
        .filter((form) => /^[a-z]{4,}$/.test(form) || EVERYDAY.includes(form))
        .flatMap((form) => (form.endsWith('s') ? [form] : [form, `${form}s`])),
    ),
  ];
  const words = new Set([
    ...[...byFirst].flatMap(([first, listed]) => [first, ...listed.flatMap(({ rest }) => rest)]),
    ...TABLE_WORDS,
  ]);
  return { byFirst, singles, words };
}

let built: Forms | undefined;
/** Built when the first plain words come: a typed question need not wait for it. */
const forms = (): Forms => (built ??= build());

const isKnown = (word: string) =>
  FUNCTION_WORDS.has(word) || forms().words.has(word) || NUMBER_WORD.test(word);
/** Numbers in words are no misspelt anything. */
const NUMBER_WORD =
  /^(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|hundred|thousand|dozen|half|quarter|\w+teen|\w+ty)$/;

const sorted = (word: string) => [...word].sort().join('');

const asTyped = new Map<string, string | undefined>();

/** A number that tells a word from others without writing it down. */
export const sumOf = (word: string): number =>
  [...word].reduce((sum, letter) => (Math.imul(sum, 31) + (letter.codePointAt(0) ?? 0)) >>> 0, 7);

/** The word of the trade that is meant by a misspelt one; undefined where none is near, or the word is another one. */
function meantBy(word: string): string | undefined {
  if (NOT_MISSPELT.has(word)) return undefined;
  if (asTyped.has(word)) return asTyped.get(word);
  const best = NOT_MISSPELT_SUMS.has(sumOf(word)) ? undefined : nearestTradeWord(word);
  // What strangers type is remembered for a while only.
  if (asTyped.size > 2000) asTyped.clear();
  asTyped.set(word, best);
  return best;
}

/** The word of the trade that a word is a slip away from: one step in short words, two in long ones. */
export function nearestTradeWord(word: string): string | undefined {
  const bare = singular(word);
  if (word.length < 4 || isKnown(word) || (bare !== undefined && isKnown(bare))) return undefined;
  const most = word.length >= 8 ? 2 : 1;
  let best: string | undefined;
  let least = most + 1;
  const letters = sorted(word);
  for (const known of forms().singles) {
    if (Math.abs(known.length - word.length) > most || known.charAt(0) !== word.charAt(0)) continue;
    let steps = distance(word, known);
    // Two letters that changed places are one slip of the finger.
    if (steps === 2 && word.length >= 5 && sorted(known) === letters) steps = 1;
    if (steps < least) {
      least = steps;
      best = known;
    }
  }
  return best;
}

export const singular = (word: string) =>
  word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : undefined;

function listedUnder(word: string) {
  return forms().byFirst.get(word);
}

/** The words of the tokens as they are meant: misspelt ones mended. */
export function mended(tokens: readonly Token[]): string[] {
  return tokens.map(({ kind, text }) => (kind === 'word' ? (meantBy(text) ?? text) : text));
}

/** What the words of a longer form mean by themselves. */
function innerOf(words: readonly string[], from: number, length: number): Said[] {
  const said: Said[] = [];
  for (let at = from; at < from + length; at++) {
    const word = words[at] ?? '';
    for (const one of [word, singular(word)])
      for (const { rest, senses } of one === undefined ? [] : (listedUnder(one) ?? []))
        if (rest.length === 0)
          for (const sense of senses) said.push({ sense, from: at, to: at + 1, words: 1, inner: true });
  }
  return said;
}

/** The tokens of a form's words from the first on, a hyphen between two of them left out: `make-along` is said as `make along` is. */
function placesOf(
  words: readonly string[],
  tokens: readonly Pick<Token, 'from' | 'to'>[],
  at: number,
  length: number,
): readonly number[] {
  const places = [at];
  for (let next = at + 1; places.length < length; next++) {
    const isHyphen =
      /^[-‐‑]$/.test(words[next] ?? '') &&
      tokens[next - 1]?.to === tokens[next]?.from &&
      tokens[next]?.to === tokens[next + 1]?.from;
    places.push(isHyphen ? ++next : next);
  }
  return places;
}

/** Every sense that is said, the longest forms first taken; single words may carry several senses. */
export function sensesIn(words: readonly string[], tokens: readonly Pick<Token, 'from' | 'to'>[]): Said[] {
  const said: Said[] = [];
  let at = 0;
  while (at < words.length) {
    const word = words[at] ?? '';
    let taken = 0;
    for (const first of [word, singular(word)]) {
      if (first === undefined || taken > 0) continue;
      for (const { rest, senses } of listedUnder(first) ?? []) {
        const places = placesOf(words, tokens, at, 1 + rest.length);
        const fits = rest.every((next, index) => {
          const typed = words[places[index + 1] ?? -1] ?? '';
          return typed === next || singular(typed) === next;
        });
        if (!fits) continue;
        const to = (places.at(-1) ?? at) + 1;
        for (const sense of senses) said.push({ sense, from: at, to, words: 1 + rest.length });
        taken = to - at;
        if (rest.length > 0) said.push(...innerOf(words, at, taken));
        break;
      }
    }
    // A longer form does not hide what its words say by themselves, but what begins inside it is not read again as a form.
    at += Math.max(1, taken);
  }
  return said;
}

/** Whether a word with a colon behind it can only be somebody’s name: no word of the trade, and nothing that begins a note. */
export const isName = (word: string): boolean => {
  const lower = word.toLowerCase();
  return !isKnown(lower) && !isKnown(singular(lower) ?? lower) && !NOTES.test(lower) && !/\d/.test(lower);
};
const NOTES =
  /^(questions?|query|queries|ps|edit|update|updates|note|notes|fyi|todo|example|eg|ie|re|subject|topic|problem|issue|hint|tip|warning|attention|answer|reply|task|idea|goal|plan|project|summary|details|info|help|context|background|dear|https?|mailto|blanket\w*|yarn\w*|motif\w*|total|width|height|finished|wanted|wish)$/;
