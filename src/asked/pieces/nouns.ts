/** What a number counts: the noun behind it, over what stands between. */
import type { SenseName } from '../words.ts';
import type { PieceKind } from './piece.ts';
import type { Phrase } from './phrase.ts';

const NOUNS = new Set<SenseName>([
  'motif',
  'block',
  'cluster',
  'ball',
  'stitch',
  'row',
  'round',
  'increase',
  'decrease',
  'colour',
  'place',
  'across',
  'down',
  'corner',
  'minute',
  'spare',
  'kind',
  'blanket',
  'per-week',
  'chain',
  'repeat',
]);

/** Behind one of these begins something else. */
const STOP = new Set(
  'of in for with at on to from over by per into and or but so is are was were has have i my we as that which than if using'.split(
    ' ',
  ),
);

/** They may stand between a number and its noun: 80 [6 inch] squares. */
const MEASURES = new Set<PieceKind>(['length', 'weight', 'yarn']);

/** So many words that say nothing may stand before the noun. */
const MOST_BETWEEN = 5;

/** What a saved name is called counts like what it is the name of: 4 furrow, a trellis. */
function nounsOfName(phrase: Phrase, at: number): SenseName[] | undefined {
  const name = phrase.names.find(({ from, to }) => from <= at && at < to);
  if (!name) return undefined;
  return name.known.of === 'kind' || name.known.of === 'motif' ? ['motif'] : undefined;
}

/** `six-round grannies`: what is counted of each stands between the number and its noun. */
function pastAdjective(phrase: Phrase, at: number): number {
  if (phrase.tokens[at]?.kind !== 'number') return at;
  const next = phrase.word(at + 1) === '-' ? at + 2 : at + 1;
  return /^(row|round|rnd|block|st|stitch)$/.test(phrase.word(next)) ? next + 1 : at;
}

/** What the nouns that are said at a token count; undefined where they stand before the noun that is meant. */
function nounsSaid(phrase: Phrase, at: number, here: SenseName[]): SenseName[] | undefined {
  const next = phrase.sensesAt(at + 1);
  // “14 increase rows” counts rows.
  if (
    here.every((sense) => sense === 'increase' || sense === 'decrease') &&
    next.some((sense) => sense === 'row' || sense === 'round')
  )
    return undefined;
  // “7 squares across” counts what lies side by side, not the squares of a blanket.
  const along = next.filter((sense) => sense === 'across' || sense === 'down');
  if (along.length > 0 && here.includes('motif')) return along;
  if (along.length > 0 && here.includes('block')) return [...here, ...along];
  // The last noun of a string is what is counted: 12 row square counts rows, 5 granny squares squares.
  return here;
}

/** Behind another number, or a mark, no noun is looked for. */
function ends(phrase: Phrase, at: number): boolean {
  const { kind } = phrase.tokens[at] ?? {};
  return kind === 'number' || (kind === 'mark' && !/^[-x×@(]$/.test(phrase.word(at)));
}

/** What is counted by a number that ends before a token: 12 [rows], 80 of [these], 5 little granny [squares]. */
export function nounsFrom(phrase: Phrase, start: number): readonly SenseName[] {
  let between = 0;
  let at = pastAdjective(phrase, start);
  while (at < phrase.tokens.length && between < MOST_BETWEEN) {
    const piece = phrase.pieceAt(at);
    if (piece && MEASURES.has(piece.kind)) {
      at = piece.to;
      continue;
    }
    if (piece?.kind === 'stitch') return ['stitch'];
    const called = nounsOfName(phrase, at);
    if (called) return called;
    if (ends(phrase, at)) return [];
    const here = phrase.sensesAt(at).filter((sense) => NOUNS.has(sense));
    if (here.length > 0) {
      const nouns = nounsSaid(phrase, at, here);
      if (nouns) return nouns;
      at++;
      continue;
    }
    if (piece?.kind === 'shape') {
      at = piece.to;
      continue;
    }
    const [word, after] = [phrase.word(at), phrase.word(at + 1)];
    if (word === 'of' && /^(them|these|those|'em|em)$/.test(after)) return ['motif'];
    if (word === 'of' && /^(my|the|your|our)$/.test(after)) {
      at += 2;
      continue;
    }
    if (STOP.has(word)) return [];
    between++;
    at++;
  }
  return [];
}
