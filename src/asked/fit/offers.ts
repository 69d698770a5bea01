/** What each piece could fill, and how well it would: the best are taken first. */
import { defined } from '../../core/base/defined.ts';
import type { Piece } from '../pieces/piece.ts';
import type { Fitting } from './fitting.ts';
import { isAsked, leads, nearness } from './near.ts';
import { senseNames, type Slot } from './slots.ts';
import { inUnitOf, takes } from './takes.ts';

interface Offer {
  readonly piece: Piece;
  readonly slots: readonly string[];
  readonly texts: readonly string[];
  readonly score: number;
  /** What is said of how it was read. */
  readonly said?: string;
}

/** The least that an offer must come to. */
const LEAST = 0.6;

const UNIT_WORD: ReadonlyMap<string, string> = new Map([
  ['in', 'inches'],
  ['ft', 'feet'],
  ['cm', 'centimetres'],
  ['m', 'metres'],
]);
const readIn = (text: string, unit: string) =>
  `${text} is read in ${UNIT_WORD.get(unit) ?? unit}, like the lengths beside it.`;

/** Whether a single slot may take a piece at all, whatever stands near. */
function mayTake({ asked, pieces }: Fitting, piece: Piece, slot: Slot): boolean {
  if (slot.takes === 'stitches') return false;
  // Where a whole size is said, no single length is one half of it.
  const sized = asked.pairs?.other === undefined && pieces.some(({ kind }) => kind === 'dims');
  if (sized && piece.kind !== 'dims' && asked.pairs?.dims?.includes(slot.name)) return false;
  if (!piece.must && piece.kind === 'count' && slot.mark.loose !== true) return false;
  return !slot.mark.not_words?.split(' ').includes(piece.text);
}

function offerOne(fitting: Fitting, piece: Piece, slot: Slot): Offer | undefined {
  const { heard } = fitting;
  if (fitting.isFilled(slot.name) || !mayTake(fitting, piece, slot)) return undefined;
  const taken = takes(slot, piece, heard);
  if (!taken) return undefined;
  const { mark } = slot;
  const counted = piece.nouns.some((noun) => slot.nouns.includes(noun));
  const led = leads(heard, piece, mark.lead);
  const countsOther = slot.nouns.length > 0 && piece.nouns.length > 0 && !counted;
  if (countsOther && !led && (piece.kind === 'count' || (piece.kind === 'row' && slot.takes !== 'row')))
    return undefined;
  if (mark.led === true && !led) return undefined;
  if (mark.unasked === true && piece.kind === 'count' && isAsked(heard, slot.nouns)) return undefined;
  const close = nearness(heard, piece, slot.near) + (led ? 3 : 0);
  if (mark.only === true && !counted && close < 0.45) return undefined;
  if (taken.glad < 0.5 && !counted && close < LEAST) return undefined;
  const isBare = slot.takes === 'length' && piece.kind === 'count';
  const { text, unit } = isBare ? inUnitOf(taken.text, heard, piece) : { text: taken.text };
  const against = nearness(heard, piece, slot.not);
  return {
    piece,
    slots: [slot.name],
    texts: [text],
    score: taken.glad + (counted ? 2 : 0) + close - against * 0.8,
    ...defined({ said: unit === undefined ? undefined : readIn(taken.text, unit) }),
  };
}

/** Both halves of a piece, bare numbers in the unit of the lengths beside them. */
function halves({ heard }: Fitting, piece: Piece) {
  const { text, more = '' } = piece;
  const read = (half: string): { text: string; unit?: string } =>
    piece.kind === 'pair' ? inUnitOf(half, heard, piece) : { text: half };
  return [read(text), read(more)] as const;
}

/** Both options of a size. */
function offerSize(fitting: Fitting, piece: Piece): Offer | undefined {
  const { heard, asked } = fitting;
  const { dims, grid, other } = asked.pairs ?? {};
  if (!dims || (piece.kind !== 'dims' && piece.kind !== 'pair')) return undefined;
  const [width, height] = halves(fitting, piece);
  const bare = piece.kind === 'pair';
  if (piece.nouns.some((noun) => /^(motif|block|across|ball)$/.test(noun))) return undefined;
  const small = bare && Number(piece.text) <= 20 && width.text === piece.text;
  if (small && grid) return undefined;
  // “14.2 cm a square, 8 x 11”: nothing is made of pieces that are longer than itself.
  const isLonger = ({ kind, unit, value = 0 }: Piece) =>
    kind === 'length' && unit === width.unit && value >= Number(piece.text);
  if (bare && width.unit !== undefined && heard.pieces.some(isLonger)) return undefined;
  const near = nearness(heard, piece, ['blanket', 'across', 'down', 'size', 'how-big', 'piece']);
  const score =
    (bare ? 1 + near * 0.6 : 2.5) + (other ? near : 0) + (piece.nouns.includes('blanket') ? 1.5 : 0);
  const said =
    bare && width.unit !== undefined ? readIn(`${piece.text} by ${piece.more ?? ''}`, width.unit) : undefined;
  return { piece, slots: dims, texts: [width.text, height.text], score, ...defined({ said }) };
}

/** Both options of another size: a swatch’s beside the blanket’s. */
function offerOtherSize(fitting: Fitting, piece: Piece): Offer | undefined {
  const other = fitting.asked.pairs?.other;
  if (!other || (piece.kind !== 'dims' && piece.kind !== 'pair')) return undefined;
  const [first, second, sense] = other;
  const score = 1 + nearness(fitting.heard, piece, senseNames(sense)) * 2;
  return { piece, slots: [first, second], texts: halves(fitting, piece).map(({ text }) => text), score };
}

/** Two counts side by side: “the sides have 90 and 110 stitches”. */
function offerTwoCounts({ asked }: Fitting, piece: Piece): Offer | undefined {
  const counts = asked.pairs?.counts;
  const [first, second] = piece.parts ?? [];
  if (!counts || piece.kind !== 'counts' || !first || !second) return undefined;
  return { piece, slots: counts, texts: [first.text, second.text], score: 2 };
}

/** Columns and rows of a layout. */
function offerGrid({ asked, heard }: Fitting, piece: Piece): Offer | undefined {
  const grid = asked.pairs?.grid;
  if (!grid || piece.kind !== 'pair') return undefined;
  const isGrid = piece.nouns.some((noun) => /^(motif|block|across)$/.test(noun));
  const near = nearness(heard, piece, ['motif', 'layout', 'across']);
  return {
    piece,
    slots: grid,
    texts: [piece.text, piece.more ?? ''],
    score: (isGrid ? 3 : 1.4) + near * 0.5,
  };
}

/** A multiple, and what comes on top of it. */
function offerMultiple({ slots }: Fitting, piece: Piece): Offer | undefined {
  if (piece.kind !== 'multiple' || !slots.some(({ name }) => name === 'multiple')) return undefined;
  const { text, more } = piece;
  return more === undefined
    ? { piece, slots: ['multiple'], texts: [text], score: 4 }
    : { piece, slots: ['multiple', 'plus'], texts: [text, more], score: 4 };
}

const OF_SEVERAL = [offerSize, offerOtherSize, offerTwoCounts, offerGrid, offerMultiple];

function offersOf(fitting: Fitting): Offer[] {
  const { pieces, slots } = fitting;
  // Two shapes by their names: which one is meant is asked.
  const shapes = new Set(pieces.filter(({ kind }) => kind === 'shape').map(({ text }) => text));
  const open = pieces.filter(
    (piece) =>
      !fitting.isUsed(piece) &&
      piece.kind !== 'aside' &&
      piece.kind !== 'name' &&
      !(piece.kind === 'shape' && shapes.size > 1),
  );
  return open.flatMap((piece) => [
    ...slots.flatMap((slot) => offerOne(fitting, piece, slot) ?? []),
    ...OF_SEVERAL.flatMap((offer) => offer(fitting, piece) ?? []),
  ]);
}

/** Gladly taken first; among equals what stands first belongs to the option that is declared first. */
export function fillFromPieces(fitting: Fitting): void {
  const order = new Map(fitting.slots.map(({ name }, index) => [name, index]));
  const place = ({ slots: [first = ''] }: Offer) => order.get(first) ?? 0;
  const offers = offersOf(fitting).sort(
    (a, b) => b.score - a.score || a.piece.from - b.piece.from || place(a) - place(b),
  );
  for (const { piece, slots, texts, score, said } of offers) {
    if (score < LEAST || fitting.isUsed(piece) || slots.some((name) => fitting.isFilled(name))) continue;
    slots.forEach((name, index) => {
      fitting.put(name, texts[index] ?? '');
    });
    fitting.use(piece);
    if (said !== undefined) fitting.assumed.push(said);
    fitting.score += Math.min(2, 0.6 + score / 4);
  }
}
