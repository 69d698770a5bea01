/** A phrase as it was heard: its tokens, senses, pieces and sentences, before anybody asks which question it is. */
import type { DayFound } from './days.ts';
import { goalsOf, type Goal } from './goals.ts';
import { mended, type Said } from './lexicon.ts';
import { moodOf, type Mood } from './mood.ts';
import { piecesOf } from './pieces.ts';
import type { KnownName, NameFound, Piece } from './pieces/piece.ts';
import { tokensOf, type Token } from './tokens.ts';
import { FUNCTION_WORDS, SENSES, type SenseName } from './words.ts';

export interface Heard {
  readonly phrase: string;
  readonly tokens: readonly Token[];
  readonly words: readonly string[];
  readonly pieces: readonly Piece[];
  readonly names: readonly NameFound[];
  /** Senses outside amounts and negations. */
  readonly said: readonly Said[];
  readonly present: ReadonlyMap<SenseName, readonly Said[]>;
  readonly goals: readonly Goal[];
  readonly mood: Mood;
  /** Words of the asking sentences that are no words of the trade nor small words. */
  readonly strange: number;
  readonly strangers: readonly string[];
}

const NEGATION = /^(no|not|without|don't|dont|never|isn't|excluding|minus|nothing|except)$/;
/** Senses that a negation in front takes away; others are said with one: “why is it not square”. */
const DENIED = new Set<SenseName>([
  'border',
  'spare',
  'join',
  'whip',
  'hook',
  'blanket',
  'motif',
  'swatch',
  'border',
  'corner',
  'knitting',
  'pattern',
  'imperial',
  'metric',
  'us',
  'uk',
]);

/** A piece's own words say nothing more. */
const SILENT = new Set<Piece['kind']>([
  'length',
  'weight',
  'ball',
  'dims',
  'percent',
  'hook',
  'stitch',
  'yarn',
  'minutes',
  'money',
  'aside',
]);

/** Words that mean a correction of what was said before: the amount before them is taken back. */
const CORRECTED = /^(sorry|no|actually|wait|oops|rather|correction)$/;

type Words = readonly string[];

/** Whether a negation stands before a token, in the same clause. */
function isDenied(words: Words, tokens: readonly Token[], at: number): boolean {
  if (words[at - 1] === 'of' && words[at - 2] === 'instead') return true;
  for (let back = at - 1; back >= Math.max(0, at - 6); back--) {
    if (NEGATION.test(words[back] ?? '')) return true;
    if (tokens[back]?.kind === 'mark' || /^(but|and|so|in|of|with|for|my)$/.test(words[back] ?? ''))
      return false;
  }
  return false;
}

/** “I’d like to make a throw” claims nothing of a group’s, and “how many can I make” asks of yarn. */
function isNoClaim(all: readonly Said[], words: Words, from: number, to: number): boolean {
  const near = (sense: SenseName, within: number) =>
    all.some((one) => one.sense === sense && Math.max(one.from - to, from - one.to) <= within);
  return near('blanket', 2) || (/^(can|could)$/.test(words[from] ?? '') && near('how-many', 3));
}

/** The senses that count: none inside an amount, none that is denied. */
function meant(
  all: readonly Said[],
  words: Words,
  tokens: readonly Token[],
  pieces: readonly Piece[],
): readonly Said[] {
  const silent = pieces.filter(({ kind }) => SILENT.has(kind));
  return all.filter(
    ({ sense, from, to }) =>
      !silent.some((piece) => piece.from <= from && to <= piece.to && sense !== 'iron') &&
      !(DENIED.has(sense) && isDenied(words, tokens, from)) &&
      // “my hexagon-free blanket”
      !(words[to] === '-' && words[to + 1] === 'free') &&
      !(sense === 'claim' && isNoClaim(all, words, from, to)),
  );
}

/** “not 6 but 5 inch squares”, “6 inch, sorry, 5 inch”: what is denied or corrected is no amount that was meant. */
function notTakenBack(pieces: readonly Piece[], words: Words): readonly Piece[] {
  return pieces.filter((piece, index) => {
    if (!piece.must) return true;
    if (/^(not|isn't)$/.test(words[piece.from - 1] ?? '') && piece.kind !== 'name') return false;
    const next = pieces.slice(index + 1).find((other) => other.kind === piece.kind);
    if (!next) return true;
    const between = words.slice(piece.to, next.from);
    return !(
      between.length <= 4 &&
      between.some((word) => CORRECTED.test(word)) &&
      between.every((word) => CORRECTED.test(word) || /^(,|-|–|\.|…|i|mean|it's|that|is|make)$/.test(word))
    );
  });
}

/** What was said, by its sense. */
function bySense(said: readonly Said[]): ReadonlyMap<SenseName, readonly Said[]> {
  const present = new Map<SenseName, Said[]>();
  for (const one of said) {
    const listed = present.get(one.sense);
    if (listed) listed.push(one);
    else present.set(one.sense, [one]);
  }
  return present;
}

const isSmall = (word: string) => FUNCTION_WORDS.has(word) || word.length === 1;

/** Words of the asking sentences that nothing here knows. */
function strangersIn(
  tokens: readonly Token[],
  words: Words,
  mood: Mood,
  known: readonly { readonly from: number; readonly to: number }[],
): readonly string[] {
  const covered = new Set<number>();
  for (const { from, to } of known) for (let at = from; at < to; at++) covered.add(at);
  return tokens.flatMap(({ kind, text }, at) => {
    if (kind !== 'word' || covered.has(at) || isSmall(words[at] ?? '')) return [];
    return mood.asking.size === 0 || mood.asking.has(mood.sentence[at] ?? 0) ? [text] : [];
  });
}

/** Hears a phrase; `known` are names of saved things, which may stand in it. */
export function hear(
  phrase: string,
  known: readonly KnownName[] = [],
  days: readonly DayFound[] = [],
): Heard {
  const tokens = tokensOf(phrase);
  const words = mended(tokens);
  const { pieces: found, names, said: all } = piecesOf(tokens, words, known, days);
  const mood = moodOf(tokens, words, phrase);
  const said = meant(all, words, tokens, found);
  const pieces = notTakenBack(found, words);
  const strangers = strangersIn(tokens, words, mood, [...all, ...found, ...names]);
  return {
    phrase,
    tokens,
    words,
    pieces,
    names,
    said,
    present: bySense(said),
    goals: goalsOf({ words, tokens, pieces, said: all }),
    mood,
    strange: strangers.length,
    strangers,
  };
}

export const weightOf = (sense: SenseName): number => SENSES[sense].weight;
