/** Gauges: stitches, with rows or without, over a length. */
import { UNIT_OF_LENGTH } from '../tables.ts';
import { isShort, merge, wordsBetween, type Joined, type Joiner } from './joining.ts';
import type { Piece } from './piece.ts';
import type { Phrase } from './phrase.ts';

const GLUE = /^(and|,|x|×|by|&|\+|\/|;|-)$/;
const OVER = /^(to|over|in|per|=|for|on|\/|every|is|across|equals|makes?|gives?|at|:|an|a|the|each|within)$/;
/** What stands between a length and the stitches over it: “10 cm is 14 stitches and 10 rows”. */
const LEADS = /^(is|=|i|get|have|got|gives?|to|has|there|are|,|:|equals|square|my|measures|count|counted)$/;
/** The same, where no rows are said with the stitches. */
const LEADS_ALONE = /^(is|=|i|get|gives?|equals|has|:|,)$/;

/** Stitches, and the rows that stand beside them. */
interface Counted {
  /** As a gauge is written: `14`, `14x10`. */
  readonly text: string;
  readonly members: readonly Piece[];
  readonly from: number;
  /** The token behind them and their nouns. */
  readonly to: number;
  /** What was said of the stitches. */
  readonly stitches: Piece;
}

/** Behind a piece, past the nouns that it counts. */
function pastNouns(phrase: Phrase, pieces: readonly Piece[], piece: Piece): number {
  const isStitch = (at: number) =>
    pieces.some(({ kind, from, to }) => kind === 'stitch' && from <= at && at < to);
  let { to } = piece;
  while (
    to < phrase.tokens.length &&
    phrase.tokens[to]?.kind !== 'number' &&
    (phrase.word(to) === '-' || phrase.says('stitch', to) || phrase.says('row', to) || isStitch(to))
  )
    to++;
  return to;
}

/** The rows that stand behind the stitches of a gauge: `14 stitches and [10 rows]`. */
function rowsBehind(
  phrase: Phrase,
  pieces: readonly Piece[],
  stitches: Piece,
  to: number,
): Piece | undefined {
  let next = to;
  while (GLUE.test(phrase.word(next)) && next - to < 2) next++;
  const rows = pieces.find(({ from, kind }) => from === next && kind === 'count');
  return rows && rows !== stitches && rows.nouns.includes('row') && stitches.nouns.includes('stitch')
    ? rows
    : undefined;
}

/** Whether a piece may be the stitches of a gauge: a count of stitches, a pair, two counts. */
const mayBeStitches = ({ kind, must, nouns, parts, text }: Piece): boolean =>
  kind === 'count'
    ? must && (nouns.includes('stitch') || nouns.length === 0)
    : kind === 'pair' || (kind === 'counts' && parts?.length === 2 && !text.includes('-'));

function countedAt(phrase: Phrase, pieces: readonly Piece[], stitches: Piece): Counted | undefined {
  if (!mayBeStitches(stitches)) return undefined;
  const { from } = stitches;
  const to = pastNouns(phrase, pieces, stitches);
  if (stitches.kind === 'pair')
    return { text: `${stitches.text}x${stitches.more ?? ''}`, members: [stitches], from, to, stitches };
  if (stitches.kind === 'counts') {
    const [first, second] = stitches.parts ?? [];
    return { text: `${first?.text ?? ''}x${second?.text ?? ''}`, members: [stitches], from, to, stitches };
  }
  const rows = rowsBehind(phrase, pieces, stitches, to);
  return rows
    ? {
        text: `${stitches.text}x${rows.text}`,
        members: [stitches, rows],
        from,
        to: pastNouns(phrase, pieces, rows),
        stitches,
      }
    : { text: stitches.text, members: [stitches], from, to, stitches };
}

/** Behind stitches, past the words that lead to what they are counted over. */
function pastOver(phrase: Phrase, to: number): number {
  let next = to;
  while (OVER.test(phrase.word(next)) && next - to < 3) next++;
  return next;
}

/** `over 4 in` */
function overLength(phrase: Phrase, pieces: readonly Piece[], counted: Counted): Joined | undefined {
  const { text, members, from, to, stitches } = counted;
  const next = pastOver(phrase, to);
  const over = pieces.find((piece) => piece.from === next && piece.kind === 'length');
  if (!over || !isShort(over) || /^(mm|m|yd)$/.test(over.unit ?? 'mm')) return undefined;
  // Without a word between it is a gauge only of stitches and rows: “12 stitches 4 in”.
  if (stitches.nouns.includes('row') || (next === to && members.length < 2)) return undefined;
  const parts = members.flatMap((one) => (one.kind === 'counts' ? (one.parts ?? [one]) : [one]));
  return {
    kind: 'gauge',
    text: `${text} over ${over.text}`,
    parts: [...parts, over],
    from,
    to: over.to,
    unit: 'over',
  };
}

/** `to the inch` */
function overUnit(phrase: Phrase, counted: Counted): Joined | undefined {
  const { text, members, from, to, stitches } = counted;
  const next = pastOver(phrase, to);
  const word = phrase.word(next);
  const unit = UNIT_OF_LENGTH.get(word);
  if (next === to || (unit !== 'in' && unit !== 'cm') || word === '"' || word === 'in') return undefined;
  if (stitches.kind === 'pair' || !/^(per|an|the|a|each|every|\/|to)$/.test(phrase.word(next - 1)))
    return undefined;
  return { kind: 'gauge', text: `${text} over 1${unit}`, parts: members, from, to: next + 1, unit: 'over' };
}

/** The short length before a piece, where nothing but such words stands between. */
function lengthBefore(
  phrase: Phrase,
  pieces: readonly Piece[],
  piece: Piece,
  leads: RegExp,
): { readonly length: Piece; readonly words: number } | undefined {
  const length = pieces.filter(({ to }) => to <= piece.from).at(-1);
  if (!length || !isShort(length)) return undefined;
  const glue = wordsBetween(phrase, length, piece);
  return glue.every((one) => leads.test(one)) ? { length, words: glue.length } : undefined;
}

/** “10 cm is 14 stitches and 10 rows”; stitches and rows that name no length are a gauge as well. */
function behindLength(phrase: Phrase, pieces: readonly Piece[], counted: Counted): Joined | undefined {
  const { text, members, from, to, stitches } = counted;
  const both = members.length > 1;
  if (!both && !(stitches.kind === 'count' && stitches.nouns.includes('stitch'))) return undefined;
  const led = lengthBefore(phrase, pieces, stitches, both ? LEADS : LEADS_ALONE);
  if (led && (both ? led.words <= 5 : led.words >= 1 && led.words <= 3))
    return {
      kind: 'gauge',
      text: `${text} over ${led.length.text}`,
      parts: [led.length, ...members],
      from: led.length.from,
      to,
      unit: 'over',
    };
  return both ? { kind: 'gauge', text, parts: members, from, to } : undefined;
}

export const gauges: Joiner = {
  example: ['14 stitches and 10 rows to 4 inches', 'gauge:14x10 over 4in'],
  join: (found, phrase) => {
    let pieces = found;
    for (let index = 0; index < pieces.length; index++) {
      const stitches = pieces[index];
      const counted = stitches && countedAt(phrase, pieces, stitches);
      if (!counted) continue;
      const made =
        overLength(phrase, pieces, counted) ??
        overUnit(phrase, counted) ??
        behindLength(phrase, pieces, counted);
      if (made) pieces = merge(pieces, made);
    }
    return pieces;
  },
};
