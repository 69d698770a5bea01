/** What is asked for: the noun behind “how many”, “which”. */
import type { Said } from './lexicon.ts';
import type { Piece } from './pieces/piece.ts';
import type { Token } from './tokens.ts';
import type { SenseName } from './words.ts';

/** A noun that is asked for: `how many stitches`. */
export interface Goal {
  /** Empty where the noun is no word of the trade, or none follows. */
  readonly senses: readonly SenseName[];
  readonly by: 'how-many' | 'how-much' | 'which';
  /** True where a noun follows that is no word of the trade: “how many members”. */
  readonly unknown: boolean;
  readonly at: number;
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
  'part',
  'along',
]);

/** Words that are no noun: “how many do I need”. */
const NOT_NOUN =
  /^(do|does|did|should|would|will|can|could|i|i'll|i'd|we|you|is|are|was|were|to|for|in|of|on|at|if|when|that|this|it|they|have|has|need|more|much|many|it's|its|and|or|with|from|am|per|each|my|the|a|an|exactly|total|altogether|then|now|left|other|extra|little|new|different|big|small|about|roughly|more|further|go|goes|fit|fits|make|makes|come|comes|there|what|how|which|does|will|would|us|uk|as|by|across|down|along|required|needed)$/;

/** What stands before a noun and is none: “how many of the other granny squares”. */
const BEFORE_NOUN =
  /^(of|the|a|an|more|these|those|my|your|more|granny|finished|little|square|single|different|standard|extra|full|whole|other|border|edging|total|exactly|us|uk|american|british)$/;
/** So many words of the trade and before them are looked at. */
const MOST_WORDS = 6;

/** A phrase with its pieces and what is said in it, negated or not. */
export interface Asking {
  readonly words: readonly string[];
  readonly tokens: readonly Token[];
  readonly pieces: readonly Piece[];
  readonly said: readonly Said[];
}

interface Start {
  readonly at: number;
  readonly by: Goal['by'];
}

/** Where the nouns that are asked for may begin. */
function startsOf({ words, tokens, said }: Asking): readonly Start[] {
  const starts: Start[] = [];
  for (const { sense, to } of said)
    if (sense === 'how-many' || sense === 'how-much') starts.push({ at: to, by: sense });
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
  const thrownDown = /^(in|for|on|of)$/.test(words[opening + 1] ?? '') && tokens[opening]?.kind === 'word';
  if (starts.length === 0 && thrownDown) starts.push({ at: opening, by: 'how-many' });
  return starts;
}

/** The noun of a piece that names what is asked for: a stitch, a yarn by its name. */
const nounOfPiece = ({ kind, text }: Piece): SenseName | undefined =>
  kind === 'stitch' ? 'stitch' : kind === 'yarn' && !/\d/.test(text) ? 'yarn' : undefined;

/** Amounts that may stand before a noun, “how many 6 inch squares”; behind others it ends. */
const ENDS = /^(gauge|counts|row)$/;
const NO_AMOUNT = /^(stitch|shape|count|yarn)$/;

/** The nouns that are said at a token, for what can be asked for. */
function nounsAt({ said }: Asking, at: number) {
  // “stitches round the edge” asks for no rounds.
  const here = said.filter(
    ({ from, to, sense, inner }) => from <= at && at < to && !(inner === true && sense === 'round'),
  );
  return { here, nouns: here.filter(({ sense }) => GOALS.has(sense)).map(({ sense }) => sense) };
}

/** The last noun of the string that begins at a token: “how many [granny] [squares]”. */
function nounFrom(
  asking: Asking,
  start: number,
): { readonly senses: readonly SenseName[]; readonly unknown: boolean } {
  const { words, tokens, pieces } = asking;
  let senses: readonly SenseName[] = [];
  let at = start;
  let looked = 0;
  while (at < words.length && looked < MOST_WORDS) {
    const word = words[at] ?? '';
    const piece = pieces.find(({ from }) => from === at);
    const named = piece && nounOfPiece(piece);
    if (piece && (named !== undefined || !NO_AMOUNT.test(piece.kind))) {
      if (ENDS.test(piece.kind)) break;
      if (named !== undefined) senses = [named];
      at = piece.to;
      continue;
    }
    if (tokens[at]?.kind === 'mark') {
      if (word !== '-') break;
      at++;
      continue;
    }
    const { here, nouns } = nounsAt(asking, at);
    if (nouns.length > 0) {
      const adds = nouns.some((noun) => noun !== 'across' && noun !== 'down' && noun !== 'count');
      if (senses.length > 0 && !adds) break;
      senses = nouns;
      looked++;
    } else if (tokens[at]?.kind !== 'number' && piece?.kind !== 'shape') {
      if (senses.length > 0) break;
      if (!BEFORE_NOUN.test(word)) return { senses, unknown: here.length === 0 && !NOT_NOUN.test(word) };
      looked++;
    }
    at++;
  }
  return { senses, unknown: false };
}

/** “a round with 72 stitches, which one is it”: one of what was spoken of first. */
function spokenOf({ words, said }: Asking, { at, by }: Start): readonly SenseName[] {
  if (by !== 'which' || !/^(one|1)$/.test(words[at] ?? '')) return [];
  const first = said.find(({ sense, to }) => to <= at && /^(row|round|hook)$/.test(sense));
  return first ? [first.sense] : [];
}

/** Everything that is asked for by its noun; “which” asks for nothing without one. */
export function goalsOf(asking: Asking): Goal[] {
  return startsOf(asking).flatMap((start) => {
    const { at, by } = start;
    const { senses: own, unknown } = nounFrom(asking, at);
    const senses = own.length > 0 ? own : spokenOf(asking, start);
    return by === 'which' && senses.length === 0 ? [] : [{ senses, by, unknown, at }];
  });
}
