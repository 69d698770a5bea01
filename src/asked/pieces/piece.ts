/** What of a phrase an option could take. */
import type { SenseName } from '../words.ts';

export type PieceKind =
  | 'length'
  | 'weight'
  | 'ball'
  | 'gauge'
  | 'dims'
  | 'pair'
  | 'count'
  | 'counts'
  | 'row'
  | 'multiple'
  | 'percent'
  | 'money'
  | 'minutes'
  | 'hook'
  | 'stitch'
  | 'shape'
  | 'yarn'
  | 'for'
  | 'name'
  | 'day'
  | 'aside';

export interface Piece {
  readonly kind: PieceKind;
  /** As the readers of options take it. */
  readonly text: string;
  /** The second amount of a pair. */
  readonly more?: string;
  /** What it is made of, where it need not be taken as a whole. */
  readonly parts?: readonly Piece[];
  /** Tokens, the last one left out. */
  readonly from: number;
  readonly to: number;
  /** True where a number is in it that must find its place before anything is answered. */
  readonly must: boolean;
  /** What the number counts: `12 rows`, `80 squares`. */
  readonly nouns: readonly SenseName[];
  readonly value?: number;
  readonly unit?: string;
}

/** Known names, each with what it is a name of; the tokens of a name in lower case. */
export interface KnownName {
  readonly words: readonly string[];
  readonly name: string;
  readonly of: 'motif' | 'blanket' | 'kind' | 'group' | 'along' | 'colour' | 'maker';
}

/** A known name where it stands. */
export interface NameFound {
  readonly known: KnownName;
  readonly from: number;
  readonly to: number;
}
