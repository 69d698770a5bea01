/** Which kind lies where in a blanket, and how it is turned. Places are numbered from 1, row by row from the top left. */
import { defined } from '../base/defined.ts';
import { SETTINGS, SETTING_KEYS, type Setting, type SettingKey } from '../../standards/settings.ts';
import { seedChance } from '../base/chance.ts';
import { MOST_ALONG, MOST_PLACES } from '../base/limits.ts';
import { Problem } from '../base/problem.ts';
import { apportion } from './apportion.ts';
import { scatter } from './scatter.ts';
import { readTurnedBy, turnsOf, writeTurnedBy, type Turnings } from './turnings.ts';

export { letter, withLetter } from './by-kind.ts';

/** One place: a kind by its number in the blanket's list, and quarter turns clockwise. */
export interface Cell {
  readonly kind: number;
  readonly turn: number;
}

/** How kinds are spread over the places. */
export const ARRANGEMENTS = ['plain', 'checked', 'stripes', 'scattered', 'typed'] as const;
export type Arrangement = (typeof ARRANGEMENTS)[number];

/** What a layout was laid by, so that another size can continue it. */
export interface LaidBy {
  readonly arrangement: Arrangement;
  readonly setting: SettingKey;
  /** Turned otherwise than by the setting, which is upright then. */
  readonly turnings?: Turnings;
  /** What chance begins from, where kinds are scattered or motifs turned at random. */
  readonly seed: number;
}

/** The seed that a blanket starts from where its maker names none. */
export const DEFAULT_LAID: LaidBy = { arrangement: 'plain', setting: 'upright', seed: 1 };

/** `scattered pinwheel 7`: short, and read back by `readLaidBy`. */
export const writeLaidBy = ({ arrangement, setting, turnings, seed }: LaidBy) =>
  `${arrangement} ${turnings === undefined ? setting : writeTurnedBy(turnings)} ${seed}`;

/** Reads what `writeLaidBy` wrote; anything else counts as a map of the maker's own. */
export function readLaidBy(text: string): LaidBy {
  const [arrangement, setting = '', seed] = text.split(' ');
  const turnings = readTurnedBy(setting);
  return defined({
    arrangement: ARRANGEMENTS.find((name) => name === arrangement) ?? 'typed',
    setting: SETTING_KEYS.find((name) => name === setting) ?? 'upright',
    turnings,
    seed: /^\d{1,6}$/.test(seed ?? '') ? Number(seed) : 1,
  });
}

/**
 * Refuses a blanket of more columns and rows than are laid out here.
 *
 * Throws Problem: blanket-too-large.
 */
export function checkSize(columns: number, rows: number): void {
  if (columns > MOST_ALONG || rows > MOST_ALONG || columns * rows > MOST_PLACES) {
    throw new Problem('blanket-too-large', `${columns} by ${rows} motifs is more than is laid out here.`, {
      option: columns > MOST_ALONG ? 'columns' : 'rows',
      hint: `At most ${MOST_ALONG} along a side and ${MOST_PLACES} in all.`,
      facts: { columns, rows, most_along: MOST_ALONG, most: MOST_PLACES },
    });
  }
}

/** The quarter turns of the place at a column and row (both from 0) of a setting. */
export function turnAt(
  setting: SettingKey,
  column: number,
  row: number,
  columns: number,
  rows: number,
): number {
  const { tile, mirrored }: Setting = SETTINGS[setting];
  if (mirrored !== true) return at(tile, column, row);
  const middle = { column: Math.ceil(columns / 2), row: Math.ceil(rows / 2) };
  const left = column < middle.column;
  const above = row < middle.row;
  let turn = at(
    tile,
    left ? middle.column - 1 - column : column - middle.column,
    above ? middle.row - 1 - row : row - middle.row,
  );
  // Mirrored left to right, the top left corner becomes the top right: 0 and 1 change places, 2 and 3 do.
  if (left) turn ^= 1;
  // Mirrored top to bottom, 0 becomes 3 and 1 becomes 2.
  if (above) turn = 3 - turn;
  return turn;
}

const at = (tile: readonly (readonly number[])[], column: number, row: number) => {
  const line = tile[row % tile.length] ?? [];
  return line[column % line.length] ?? 0;
};

/** The kind at a column and row (both from 0), where the arrangement alone decides it. */
const ruled = (arrangement: 'plain' | 'checked' | 'stripes', column: number, row: number, kinds: number) =>
  arrangement === 'plain' ? 0 : (arrangement === 'checked' ? column + row : row) % kinds;

export interface Laying {
  readonly columns: number;
  readonly rows: number;
  /** How many kinds there are. */
  readonly kinds: number;
  readonly laid: LaidBy;
  /** Where kinds are free: in what proportion. Equal shares if not given. */
  readonly shares?: readonly number[] | undefined;
}

/** Where kinds are free to lie, only their counts are given. */
export const isFree = (arrangement: Arrangement): boolean =>
  arrangement === 'scattered' || arrangement === 'typed';

const sharesOf = ({ kinds, shares }: Laying) => shares ?? Array.from({ length: kinds }, () => 1);

/** How many of each kind a layout of this size has, without laying it. Plain arithmetic, for searches over sizes. */
export function countKinds(laying: Laying): number[] {
  const { columns, rows, kinds, laid } = laying;
  const places = columns * rows;
  const counts = Array.from({ length: kinds }, () => 0);
  const add = (kind: number, times: number) => (counts[kind] = (counts[kind] ?? 0) + times);
  switch (laid.arrangement) {
    case 'plain':
      add(0, places);
      return counts;
    case 'stripes':
      for (let row = 0; row < rows; row++) add(row % kinds, columns);
      return counts;
    case 'checked':
      // Every slanting line of places holds one kind.
      for (let line = 0; line < columns + rows - 1; line++)
        add(line % kinds, Math.min(line + 1, columns, rows, columns + rows - 1 - line));
      return counts;
    case 'scattered':
    case 'typed':
      return [...apportion(places, sharesOf(laying)).quotas];
  }
}

/** The same where kinds are free and two remainders are equal: the counts if the place had gone to the other kind. */
export const countKindsOtherwise = (laying: Laying): readonly (readonly number[])[] =>
  isFree(laying.laid.arrangement) ? apportion(laying.columns * laying.rows, sharesOf(laying)).otherwise : [];

/**
 * Lays a blanket: every place one kind and one turning. Scattered kinds, and those of a map that is to fill another size,
 * go by largest remainders and touch their like as little as can be; the same seed lays them the same way.
 *
 * Throws Problem: blanket-too-large, no-shares.
 */
export function lay(laying: Laying): Cell[] {
  const { columns, rows, kinds, laid } = laying;
  checkSize(columns, rows);
  const { arrangement } = laid;
  const free =
    arrangement === 'scattered' || arrangement === 'typed'
      ? scatter(columns, rows, countKinds(laying), seedChance(laid.seed))
      : undefined;
  const lies = Array.from({ length: columns * rows }, (_, place) => {
    if (arrangement === 'scattered' || arrangement === 'typed') return free?.[place] ?? 0;
    return ruled(arrangement, place % columns, Math.floor(place / columns), kinds);
  });
  return turnLayout(lies, laid, columns, rows);
}

/** A layout with its kinds where they are, turned as it is laid by. */
export function turnLayout(
  kinds: readonly number[],
  { setting, turnings, seed }: LaidBy,
  columns: number,
  rows: number,
): Cell[] {
  const own = turnings === undefined ? undefined : turnsOf(turnings, kinds, seed);
  return kinds.map((kind, place) => ({
    kind,
    turn: own?.[place] ?? turnAt(setting, place % columns, Math.floor(place / columns), columns, rows),
  }));
}

/** Places, numbered row by row from the top left, row by row. */
export const cutIntoRows = <T>(places: readonly T[], columns: number): T[][] =>
  Array.from({ length: Math.ceil(places.length / columns) }, (_, row) =>
    places.slice(row * columns, (row + 1) * columns),
  );

/** Whether a setting has a middle that lies between motifs, half a motif off: an odd number of columns or rows puts it there. */
export const isOffMiddle = (
  { setting }: Pick<LaidBy, 'setting'>,
  { columns, rows }: Pick<Laying, 'columns' | 'rows'>,
): boolean => setting === 'barn-raising' && (columns % 2 === 1 || rows % 2 === 1);

/** How many of each kind a layout holds. */
export function countLaid(layout: readonly Cell[], kinds: number): number[] {
  const counts = Array.from({ length: kinds }, () => 0);
  for (const { kind } of layout) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

/** Which places are made, when so many of each kind are: the first of each kind, row by row from the top left. */
export function markMade(layout: readonly Cell[], made: readonly number[]): boolean[] {
  const left = [...made];
  return layout.map(({ kind }) => {
    const more = left[kind] ?? 0;
    left[kind] = more - 1;
    return more > 0;
  });
}

/**
 * The layout with two places (numbered from 1) changed about.
 *
 * Throws Problem: no-such-place, same-place.
 */
export function swapPlaces(layout: readonly Cell[], a: number, b: number): Cell[] {
  const taken = (number: number, option: string) => {
    const cell = layout[number - 1];
    if (!cell) {
      throw new Problem('no-such-place', `There is no place ${number}; this blanket has ${layout.length}.`, {
        option,
        hint: `Places are numbered row by row from the top left, 1 to ${layout.length}.`,
        facts: { place: number, places: layout.length },
      });
    }
    return cell;
  };
  const first = taken(a, 'a');
  const second = taken(b, 'b');
  if (a === b) {
    throw new Problem('same-place', 'A place cannot change with itself.', {
      option: 'b',
      hint: 'Name two different places.',
    });
  }
  return layout.map((cell, index) => (index === a - 1 ? second : index === b - 1 ? first : cell));
}
