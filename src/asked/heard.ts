/** A phrase as it was heard: its tokens, senses, pieces and sentences, before anybody asks which question it is. */
import type { DayFound } from './days.ts';
import { mended, type Said } from './lexicon.ts';
import { moodOf, type Mood } from './mood.ts';
import { piecesOf } from './pieces.ts';
import type { KnownName, Piece } from './pieces/piece.ts';
import { tokensOf, type Token } from './tokens.ts';
import { SENSES, type SenseName } from './words.ts';

/** A noun that is asked for: `how many stitches`. */
export interface Goal {
  /** Empty where the noun is no word of the trade, or none follows. */
  readonly senses: readonly SenseName[];
  readonly by: 'how-many' | 'how-much' | 'which';
  /** True where a noun follows that is no word of the trade: “how many members”. */
  readonly unknown: boolean;
  readonly at: number;
}

export interface Heard {
  readonly phrase: string;
  readonly tokens: readonly Token[];
  readonly words: readonly string[];
  readonly pieces: readonly Piece[];
  readonly names: readonly { readonly known: KnownName; readonly from: number; readonly to: number }[];
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

const NOT_NOUN =
  /^(do|does|did|should|would|will|can|could|i|i'll|i'd|we|you|is|are|was|were|to|for|in|of|on|at|if|when|that|this|it|they|have|has|need|more|much|many|it's|its|and|or|with|from|am|per|each|my|the|a|an|exactly|total|altogether|then|now|left|other|extra|little|new|different|big|small|about|roughly|more|further|go|goes|fit|fits|make|makes|come|comes|there|what|how|which|does|will|would|us|uk|as|by|across|down|along|required|needed)$/;

function goalsOf(
  words: readonly string[],
  tokens: readonly Token[],
  pieces: readonly Piece[],
  said: readonly Said[],
): Goal[] {
  const goals: Goal[] = [];
  const starts: { at: number; by: Goal['by'] }[] = [];
  for (const one of said) {
    if (one.sense === 'how-many' || one.sense === 'how-much') starts.push({ at: one.to, by: one.sense });
  }
  words.forEach((word, at) => {
    if (/^(what|which|what's|whats)$/.test(word)) starts.push({ at: at + 1, by: 'which' });
  });
  // “tell me the row” asks which row.
  words.forEach((word, at) => {
    if (/^(tell|show|give)$/.test(word) && words[at + 1] === 'me' && words[at + 2] === 'the')
      starts.push({ at: at + 3, by: 'which' });
  });
  // “clusters in round 7 of a granny”, “total stitches for a square”: a noun thrown down first is what is asked for.
  const opening = /^(total|the)$/.test(words[0] ?? '') ? 1 : 0;
  const behind = words[opening + 1] ?? '';
  if (starts.length === 0 && /^(in|for|on|of)$/.test(behind) && tokens[opening]?.kind === 'word')
    starts.push({ at: opening, by: 'how-many' });
  for (const { at: start, by } of starts) {
    let at = start;
    const senses: SenseName[] = [];
    let unknown = false;
    let moved = 0;
    while (at < words.length && moved < 6) {
      const piece = pieces.find(({ from }) => from === at);
      if (
        piece &&
        piece.kind !== 'stitch' &&
        piece.kind !== 'shape' &&
        piece.kind !== 'count' &&
        piece.kind !== 'yarn'
      ) {
        if (piece.kind === 'gauge' || piece.kind === 'counts' || piece.kind === 'row') break;
        at = piece.to;
        continue;
      }
      if (piece?.kind === 'yarn' && !/\d/.test(piece.text)) {
        senses.length = 0;
        senses.push('yarn');
        at = piece.to;
        continue;
      }
      if (piece?.kind === 'stitch') {
        senses.length = 0;
        senses.push('stitch');
        at = piece.to;
        continue;
      }
      if (tokens[at]?.kind === 'mark') {
        if (/^[-]$/.test(words[at] ?? '')) {
          at++;
          continue;
        }
        break;
      }
      // “stitches round the edge” asks for no rounds.
      const here = said.filter(
        ({ from, to, sense, inner }) => from <= at && at < to && !(inner === true && sense === 'round'),
      );
      const nouns = here.filter(({ sense }) => GOALS.has(sense)).map(({ sense }) => sense);
      if (nouns.length > 0) {
        if (
          senses.length > 0 &&
          nouns.every((noun) => noun === 'across' || noun === 'down' || noun === 'count')
        )
          break;
        senses.length = 0;
        senses.push(...nouns);
        at++;
        moved++;
        continue;
      }
      const word = words[at] ?? '';
      if (tokens[at]?.kind === 'number' || piece?.kind === 'shape') {
        at++;
        continue;
      }
      if (senses.length > 0) break;
      if (
        /^(of|the|a|an|more|these|those|my|your|more|granny|finished|little|square|single|different|standard|extra|full|whole|other|border|edging|total|exactly|us|uk|american|british)$/.test(
          word,
        )
      ) {
        at++;
        moved++;
        continue;
      }
      if (here.length === 0 && !NOT_NOUN.test(word)) unknown = true;
      break;
    }
    // “a round with 72 stitches, which one is it”: one of what was spoken of first.
    if (by === 'which' && senses.length === 0 && /^(one|1)$/.test(words[start] ?? '')) {
      const [spoken] = said
        .filter(({ sense, to }) => to <= start && /^(row|round|hook)$/.test(sense))
        .map(({ sense }) => sense);
      if (spoken !== undefined) senses.push(spoken);
    }
    if (by === 'which' && senses.length === 0) continue;
    goals.push({ senses, by, unknown, at: start });
  }
  return goals;
}

/** What can be asked for by its noun. */
const GOALS = new Set<SenseName>([
  'motif',
  'block',
  'cluster',
  'stitch',
  'row',
  'round',
  'ball',
  'yarn',
  'hook',
  'gauge',
  'chain',
  'border',
  'increase',
  'decrease',
  'colour',
  'blanket',
  'size',
  'weight',
  'kind',
  'layout',
  'across',
  'down',
  'corner',
  'how-big',
  'units',
  'repeat',
  'minute',
  'settings',
  'group',
  'pattern',
  'count',
  'place',
]);

/** Words that mean a correction of what was said before: the amount before them is taken back. */
const CORRECTED = /^(sorry|no|actually|wait|oops|rather|correction)$/;

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
  const silent = found.filter(({ kind }) => SILENT.has(kind));
  const denied = (at: number) => {
    if (words[at - 1] === 'of' && words[at - 2] === 'instead') return true;
    for (let back = at - 1; back >= Math.max(0, at - 6); back--) {
      if (NEGATION.test(words[back] ?? '')) return true;
      if (tokens[back]?.kind === 'mark' || /^(but|and|so|in|of|with|for|my)$/.test(words[back] ?? ''))
        return false;
    }
    return false;
  };
  const said = all.filter(
    ({ sense, from, to }) =>
      !silent.some((piece) => piece.from <= from && to <= piece.to && sense !== 'iron') &&
      !(DENIED.has(sense) && denied(from)) &&
      // “my hexagon-free blanket”
      !(words[to] === '-' && words[to + 1] === 'free') &&
      // “I’d like to make a throw” claims nothing of a group’s.
      !(
        sense === 'claim' &&
        all.some((one) => one.sense === 'blanket' && Math.max(one.from - to, from - one.to) <= 2)
      ),
  );
  // “not 6 but 5 inch squares”: what is denied is no amount that was meant.
  const pieces = found.filter((piece, index) => {
    if (/^(not|isn't)$/.test(words[piece.from - 1] ?? '') && piece.must && piece.kind !== 'name')
      return false;
    const next = found.slice(index + 1).find((other) => other.kind === piece.kind);
    if (next && piece.must) {
      const between = words.slice(piece.to, next.from);
      if (
        between.length <= 4 &&
        between.some((word) => CORRECTED.test(word)) &&
        between.every((word) => CORRECTED.test(word) || /^(,|-|–|\.|…|i|mean|it's|that|is|make)$/.test(word))
      )
        return false;
    }
    return true;
  });
  const present = new Map<SenseName, Said[]>();
  for (const one of said) {
    const listed = present.get(one.sense);
    if (listed) listed.push(one);
    else present.set(one.sense, [one]);
  }
  const covered = new Set<number>();
  for (const { from, to } of all) for (let at = from; at < to; at++) covered.add(at);
  for (const { from, to } of found) for (let at = from; at < to; at++) covered.add(at);
  for (const { from, to } of names) for (let at = from; at < to; at++) covered.add(at);
  const strangers: string[] = [];
  tokens.forEach((token, at) => {
    if (token.kind !== 'word' || covered.has(at) || isSmall(words[at] ?? '')) return;
    if (mood.asking.size === 0 || mood.asking.has(mood.sentence[at] ?? 0)) strangers.push(token.text);
  });
  return {
    phrase,
    tokens,
    words,
    pieces,
    names,
    said,
    present,
    goals: goalsOf(words, tokens, pieces, all),
    mood,
    strange: strangers.length,
    strangers,
  };
}

import { FUNCTION_WORDS } from './words.ts';
const isSmall = (word: string) => FUNCTION_WORDS.has(word) || word.length === 1;

export const weightOf = (sense: SenseName): number => SENSES[sense].weight;
