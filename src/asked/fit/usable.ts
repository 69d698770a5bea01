/** Pieces as a question can use them. */
import type { Asked } from '../../chat/asked.ts';
import type { Heard } from '../heard.ts';
import type { Piece, PieceKind } from '../pieces/piece.ts';
import type { SenseName } from '../words.ts';
import type { Slot } from './slots.ts';

/** Senses that make a gauge of stitches and rows that name no length. */
const GAUGE_SAID: readonly SenseName[] = [
  'gauge',
  'swatch',
  'wanted',
  'getting',
  'pattern',
  'measure',
  'blocked',
];

/** What a question takes, as far as it tells whether a piece stays whole. */
interface Wants {
  readonly heard: Heard;
  /** What its options take. */
  readonly wanted: ReadonlySet<string>;
  readonly pairs: Asked['pairs'];
}

/** Whether a question takes a piece as a whole that is put together of others. */
const TAKES_WHOLE: Readonly<Partial<Record<PieceKind, (piece: Piece, wants: Wants) => boolean>>> = {
  dims: (_, { pairs }) => pairs?.dims !== undefined,
  pair: (_, { pairs, wanted }) => pairs !== undefined || wanted.has('gauge'),
  gauge: ({ unit }, { heard, wanted }) =>
    wanted.has('gauge') &&
    (unit === 'over' || unit === 'at' || GAUGE_SAID.some((sense) => heard.present.has(sense))),
  ball: (_, { wanted }) => wanted.has('ball') || wanted.has('yarn-or-ball'),
  counts: ({ parts, text }, { heard, wanted, pairs }) => {
    const isTwo = pairs?.counts !== undefined && parts?.length === 2 && !text.includes('-');
    const ofGauge = heard.present.has('gauge') || heard.pieces.some(({ kind }) => kind === 'gauge');
    return isTwo || wanted.has('counts') || wanted.has('numbers') || (wanted.has('gauge') && ofGauge);
  },
  multiple: (_, { wanted }) => wanted.has('multiple'),
};

/** The pieces of a phrase; what is put together and has no place as a whole is taken apart. */
export function usable(heard: Heard, slots: readonly Slot[], { pairs }: Asked): readonly Piece[] {
  const wants = { heard, pairs, wanted: new Set(slots.map((slot) => slot.takes)) };
  const open = (piece: Piece): readonly Piece[] =>
    piece.parts === undefined || TAKES_WHOLE[piece.kind]?.(piece, wants) !== false
      ? [piece]
      : piece.parts.flatMap(open);
  return heard.pieces.flatMap(open);
}
