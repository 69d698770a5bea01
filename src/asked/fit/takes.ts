/** What an option takes of a piece, by its kind. */
import type { Heard } from '../heard.ts';
import type { Piece } from '../pieces/piece.ts';
import { UNIT_OF_LENGTH } from '../tables.ts';
import type { Slot } from './slots.ts';

export interface Taken {
  /** As the reader of the option takes it. */
  readonly text: string;
  /** How gladly: 2 what it is made for, under 0.5 only where words beside it speak for the option. */
  readonly glad: number;
}

type Takes = (piece: Piece, heard: Heard, slot: Slot) => Taken | undefined;

const glad =
  (howMuch: number, when: (piece: Piece) => boolean): Takes =>
  (piece) =>
    when(piece) ? { text: piece.text, glad: howMuch } : undefined;

const isWhole = ({ kind, value }: Piece) =>
  kind === 'count' && (value === undefined || Number.isInteger(value));
const countsNothing = ({ kind, nouns }: Piece) => kind === 'count' && nouns.length === 0;

/** The thickest hook that is written in millimetres. */
const THICKEST_HOOK = 30;

/** A hook by its letter or number, or a length that may be one. */
export const isHook = ({ kind, unit, value = 99 }: Piece): boolean =>
  kind === 'hook' || (kind === 'length' && unit === 'mm' && value <= THICKEST_HOOK);

/** Metres and yards that no blanket is wide: lengths of yarn. */
export const isYarnLength = ({ kind, unit, value = 0 }: Piece): boolean =>
  kind === 'length' && (unit === 'm' || unit === 'yd') && value >= SHORTEST_YARN;
/** In metres or yards. */
const SHORTEST_YARN = 10;

const anyOf =
  (...ways: readonly Takes[]): Takes =>
  (...of) => {
    for (const way of ways) {
      const taken = way(...of);
      if (taken) return taken;
    }
    return undefined;
  };

/** For each kind of option, what it takes besides pieces of its own kind, the gladdest first. */
const TAKES: ReadonlyMap<string, Takes> = new Map<string, Takes>([
  ['length', glad(0.2, countsNothing)],
  ['hook', glad(2, isHook)],
  [
    'gauge',
    anyOf(
      ({ kind, text, more = '' }) => (kind === 'pair' ? { text: `${text}x${more}`, glad: 0.8 } : undefined),
      ({ kind, text, parts }) =>
        kind === 'counts' && parts?.length === 2 && !text.includes('-')
          ? { text: text.replace(' ', 'x'), glad: 0.4 }
          : undefined,
      glad(
        0.2,
        (piece) => countsNothing(piece) || (piece.kind === 'count' && piece.nouns.includes('stitch')),
      ),
    ),
  ],
  ['count', glad(1, isWhole)],
  [
    'row',
    (piece, _heard, { nouns }) => {
      // “rows 1 to 5” says which rows some counts are of, and no single row.
      if (piece.more !== undefined) return undefined;
      if (piece.kind === 'row') return { text: piece.text, glad: 2 };
      const counts = piece.nouns.some((noun) => noun === 'row' || noun === 'round');
      return piece.kind === 'count' && counts && nouns.length > 0 ? { text: piece.text, glad: 1 } : undefined;
    },
  ],
  [
    'counts',
    anyOf(
      glad(
        0.6,
        (piece) => isWhole(piece) && piece.nouns.some((noun) => noun === 'stitch' || noun === 'cluster'),
      ),
      glad(0.2, (piece) => countsNothing(piece) && isWhole(piece)),
    ),
  ],
  [
    'numbers',
    anyOf(
      glad(2, ({ kind }) => kind === 'counts'),
      glad(1, isWhole),
    ),
  ],
  [
    'money',
    anyOf(
      glad(0.5, countsNothing),
      // “moss costs 4.25 a ball”
      ({ kind, text, nouns }, { present }) =>
        kind === 'count' && nouns.includes('ball') && present.has('cost') ? { text, glad: 1 } : undefined,
    ),
  ],
  [
    'weight-or-balls',
    anyOf(
      glad(2, ({ kind }) => kind === 'weight'),
      // “I have 2 balls left”
      ({ kind, text, nouns }) =>
        kind === 'count' && nouns.includes('ball') ? { text: `${text} balls`, glad: 1 } : undefined,
    ),
  ],
  ['yarn-or-ball', glad(2, ({ kind }) => kind === 'yarn' || kind === 'ball')],
]);

/** What of a piece a slot takes, as text, and how gladly; undefined where it is not of its kind. */
export function takes(slot: Slot, piece: Piece, heard: Heard): Taken | undefined {
  // A count or a row is taken by what it counts, not by its kind alone.
  const same = slot.takes === piece.kind && slot.takes !== 'count' && slot.takes !== 'row';
  if (slot.takes === 'length' && isYarnLength(piece)) return undefined;
  return same ? { text: piece.text, glad: 2 } : TAKES.get(slot.takes)?.(piece, heard, slot);
}

/** Lengths of a phrase that say in which unit the others are, millimetres aside. */
function unitsSaid(heard: Heard, but: Piece): ReadonlySet<string> {
  const units = heard.pieces
    .filter((piece) => piece !== but)
    .flatMap((piece) => [piece, ...(piece.parts ?? [])])
    .filter(({ kind }) => kind === 'length' || kind === 'dims')
    .flatMap(({ unit }) => (unit === undefined || unit === 'mm' ? [] : [unit]));
  const words = heard.said.length === 0 ? [] : heard.words;
  return new Set([
    ...units,
    ...words
      .filter((word) => /^(inches|inch|cm|centimetres|centimeters|feet)$/.test(word))
      .map((word) => UNIT_OF_LENGTH.get(word) ?? ''),
  ]);
}

/** A bare number in the units of the lengths beside it, where they are all metric or all imperial. */
export function inUnitOf(text: string, heard: Heard, but: Piece): { text: string; unit?: string } {
  if (!/^[\d.]+$/.test(text)) return { text };
  const said = unitsSaid(heard, but);
  const systems = new Set([...said].map((unit) => (/^(in|ft|yd)$/.test(unit) ? 'imperial' : 'metric')));
  if (systems.size !== 1) return { text };
  const value = Number(text);
  const inFeet = value <= 12 && said.size === 1 && said.has('ft');
  const inMetres = value < 5 && said.has('m');
  const unit = systems.has('imperial') ? (inFeet ? 'ft' : 'in') : inMetres ? 'm' : 'cm';
  return { text: `${text}${unit}`, unit };
}
