/** Putting pieces together that belong together. */
import { CM } from '../tables.ts';
import type { Piece } from './piece.ts';
import type { Phrase } from './phrase.ts';

/** Puts together what it knows of; pieces stand in the order of the phrase, before and after. */
export interface Joiner {
  /** A phrase in which it joins something, and what comes of it. */
  readonly example: readonly [phrase: string, piece: string];
  readonly join: (pieces: readonly Piece[], phrase: Phrase) => readonly Piece[];
}

/** What a piece stands for is no longer told by its parts. */
export type Joined = Omit<Piece, 'must' | 'nouns'>;

/** The pieces with one put together: what lay in it is gone. */
export const merge = (pieces: readonly Piece[], made: Joined): readonly Piece[] =>
  [
    ...pieces.filter(({ from, to }) => to <= made.from || from >= made.to),
    { ...made, must: true, nouns: [] },
  ].sort((a, b) => a.from - b.from);

export const wordsBetween = (phrase: Phrase, a: Piece, b: Piece) => phrase.between(a.to, b.from);

/** The longest that a gauge is counted over, in centimetres: a foot is 30.48. */
const LONGEST_SWATCH = 31;

/** Whether a length is one that stitches are counted over. */
export const isShort = ({ kind, value, unit = 'cm' }: Piece): boolean =>
  kind === 'length' && value !== undefined && value * (CM[unit] ?? 1) <= LONGEST_SWATCH;
