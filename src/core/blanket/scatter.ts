/**
 * Kinds scattered over a grid so that no two alike touch side by side; where that is impossible, with the fewest touches
 * there can be.
 *
 * Why it is exact (derived; the tests hold it to an exact solver):
 * - Places are coloured like a chess board. A kind can keep clear of itself only while it has at most half the places,
 *   rounded up: every two neighbours in a walk through all places hold at most one of it.
 * - While every kind keeps to that, it can be done: the largest kind takes places of one colour, the next largest places
 *   of the other, and the rest fill up. Only one kind can then lie on both colours; it has at most a third of the places,
 *   its places of the one colour are the first and those of the other the last, and they do not reach each other.
 * - A kind with more than half: every side between two places that is not touched by one of the other kinds is a touch.
 *   The others cover most sides when they keep apart on one colour of the board, in the places with most neighbours.
 *   No choice covers more: with s places for the others, at most 4s; at most 3s and half the inner places; on an even board
 *   at most 2s + sides − places; on an odd board the last two steps lose 3 sides each, as the walks row by row and column
 *   by column, and their mirror images, share no side.
 */
import { shuffle, type Chance } from '../base/chance.ts';
import { formula, type Working } from '../base/working.ts';

export const HALF_THE_PLACES = formula({
  label: 'Most places one kind can have without touching itself',
  formula: 'ceil(columns * rows / 2)',
  given: { columns: '', rows: '' },
  unit: '',
  source: 'derived: the places of one colour of a chess board',
});
export const SIDES = formula({
  label: 'Sides between two places',
  formula: '2 * columns * rows - columns - rows',
  given: { columns: '', rows: '' },
  unit: '',
  source: 'derived: columns − 1 in every row, rows − 1 in every column',
});
export const FEWEST_TOUCHES = formula({
  label: 'Fewest touches there can be',
  formula: 'sides - kept_apart',
  given: { sides: '', kept_apart: '' },
  unit: '',
  source: 'derived: sides that no other kind can reach',
});

export interface Touches {
  /** The fewest touches of two alike that any layout with these quotas has. */
  readonly fewest: number;
  /** The kind with more places than can be kept apart; unset where there is none. */
  readonly crowded?: number;
  /** Sides between two places that the other kinds can keep apart at most, where one is crowded. */
  readonly keptApart?: number;
}

/** Places of one colour of the board, those with most neighbours first; `odd` 0 for the colour of the top left corner. */
function colour(columns: number, rows: number, odd: number): number[] {
  const places: number[] = [];
  for (let place = odd === 0 ? 0 : 1; place < columns * rows; place++)
    if (((place % columns) + Math.floor(place / columns)) % 2 === odd) places.push(place);
  return places.sort((a, b) => neighbours(b, columns, rows) - neighbours(a, columns, rows));
}

function neighbours(place: number, columns: number, rows: number): number {
  const column = place % columns;
  const row = Math.floor(place / columns);
  return Number(column > 0) + Number(column < columns - 1) + Number(row > 0) + Number(row < rows - 1);
}

/** The colour of the board on which so many places reach most sides, and how many that is. */
function farthest(columns: number, rows: number, places: number) {
  const found = [0, 1].map((odd) => {
    const chosen = colour(columns, rows, odd);
    const sides = chosen.slice(0, places).reduce((sum, place) => sum + neighbours(place, columns, rows), 0);
    return { odd, sides: chosen.length < places ? -1 : sides };
  });
  return found.reduce((best, next) => (next.sides > best.sides ? next : best));
}

/** The fewest touches that `quotas` (their sum the number of places) allow on a grid. */
export function findFewestTouches(columns: number, rows: number, quotas: readonly number[]): Touches {
  const places = columns * rows;
  const crowded = quotas.findIndex((quota) => quota > Math.ceil(places / 2));
  if (crowded < 0) return { fewest: 0 };
  const others = places - (quotas[crowded] ?? 0);
  const keptApart = farthest(columns, rows, others).sides;
  return { fewest: 2 * places - columns - rows - keptApart, crowded, keptApart };
}

/** The same, step by step. */
export function showTouches(
  working: Working,
  columns: number,
  rows: number,
  quotas: readonly number[],
): Touches {
  const found = findFewestTouches(columns, rows, quotas);
  working.do(HALF_THE_PLACES, { columns, rows });
  if (found.keptApart !== undefined) {
    const sides = working.do(SIDES, { columns, rows });
    working.do(FEWEST_TOUCHES, { sides, kept_apart: found.keptApart });
  }
  return found;
}

/** A board of kinds by place, row by row. */
class Board {
  readonly rows: number;
  constructor(
    readonly kinds: Int16Array,
    readonly columns: number,
  ) {
    this.rows = kinds.length / columns;
  }

  /** How many neighbours of a place are of its kind. */
  alike(place: number): number {
    const { kinds, columns } = this;
    const kind = kinds[place];
    const column = place % columns;
    let same = 0;
    if (column > 0 && kinds[place - 1] === kind) same++;
    if (column < columns - 1 && kinds[place + 1] === kind) same++;
    if (place >= columns && kinds[place - columns] === kind) same++;
    if (place + columns < kinds.length && kinds[place + columns] === kind) same++;
    return same;
  }

  touches(): number {
    let twice = 0;
    for (let place = 0; place < this.kinds.length; place++) twice += this.alike(place);
    return twice / 2;
  }

  private exchange(a: number, b: number): void {
    const { kinds } = this;
    const kept = kinds[a] ?? 0;
    kinds[a] = kinds[b] ?? 0;
    kinds[b] = kept;
  }

  /** Swaps two places unless more would touch by it; returns by how many fewer do, or undefined where nothing was swapped. */
  swap(a: number, b: number, least: number): number | undefined {
    if (this.kinds[a] === this.kinds[b]) return undefined;
    const before = this.alike(a) + this.alike(b);
    this.exchange(a, b);
    const fewer = before - this.alike(a) - this.alike(b);
    if (fewer >= least) return fewer;
    this.exchange(a, b);
    return undefined;
  }
}

/** How many touches of two alike a layout has. */
export const touchesOf = (kinds: readonly number[], columns: number): number =>
  new Board(Int16Array.from(kinds), columns).touches();

/** The same kind so many times. */
const many = (kind: number, times: number): number[] => Array.from({ length: times }, () => kind);

/** A layout with the fewest touches, built as the proof above says. */
function built(columns: number, rows: number, quotas: readonly number[], chance: Chance): Int16Array {
  const { crowded } = findFewestTouches(columns, rows, quotas);
  return crowded === undefined
    ? builtApart(columns, rows, quotas, chance)
    : builtCrowded(columns, rows, quotas, crowded, chance);
}

/** One kind fills the board, but for the others, which lie far apart from each other. */
function builtCrowded(
  columns: number,
  rows: number,
  quotas: readonly number[],
  crowded: number,
  chance: Chance,
): Int16Array {
  const kinds = new Int16Array(columns * rows);
  const others = shuffle(
    quotas.flatMap((quota, kind) => (kind === crowded ? [] : many(kind, quota))),
    chance,
  );
  const best = farthest(columns, rows, others.length).odd;
  const places = shuffle(colour(columns, rows, best), chance)
    .sort((a, b) => neighbours(b, columns, rows) - neighbours(a, columns, rows))
    .slice(0, others.length);
  kinds.fill(crowded);
  places.forEach((place, index) => (kinds[place] = others[index] ?? crowded));
  return kinds;
}

/** Every kind on the dark or on the light places, as on a board of draughts, one of them on both, far apart. */
function builtApart(columns: number, rows: number, quotas: readonly number[], chance: Chance): Int16Array {
  const kinds = new Int16Array(columns * rows);
  // The walk goes along the shorter side, so that places far apart in it are no neighbours.
  const across = Math.min(columns, rows);
  const walk = Array.from({ length: columns * rows }, (_, step) => {
    const along = Math.floor(step / across);
    const beside = step % across;
    return {
      place: columns <= rows ? along * columns + beside : beside * columns + along,
      odd: (along + beside) % 2,
    };
  });
  const dark = walk.filter(({ odd }) => odd === 0).map(({ place }) => place);
  const light = walk.filter(({ odd }) => odd === 1).map(({ place }) => place);
  const { onDark, onLight, both } = shareColours(quotas, dark.length);
  const put = (places: readonly number[], what: readonly number[]) =>
    places.forEach((place, index) => (kinds[place] = what[index] ?? 0));
  put(dark, [...many(both.kind, both.dark), ...shuffle(onDark, chance)]);
  put(light, [...shuffle(onLight, chance), ...many(both.kind, both.light)]);
  return kinds;
}

/** Which kinds go on the dark places, so many of them, which on the light ones, and the one that goes on both. */
function shareColours(quotas: readonly number[], dark: number) {
  const [first = 0, second, ...rest] = quotas
    .map((quota, kind) => ({ quota, kind }))
    .sort((a, b) => b.quota - a.quota || a.kind - b.kind)
    .map(({ kind }) => kind);
  const onDark = many(first, quotas[first] ?? 0);
  const onLight = second === undefined ? [] : many(second, quotas[second] ?? 0);
  let both = { kind: 0, dark: 0, light: 0 };
  let room = dark - onDark.length;
  for (const kind of rest) {
    const quota = quotas[kind] ?? 0;
    const fits = Math.min(room, quota);
    room -= fits;
    if (fits === quota) onDark.push(...many(kind, quota));
    else if (fits === 0) onLight.push(...many(kind, quota));
    else both = { kind, dark: fits, light: quota - fits };
  }
  return { onDark, onLight, both };
}

/** Chance gives up after so many tries a place, and a built layout is stirred by as many. */
const TRIES_A_PLACE = 100;
const STIRS_A_PLACE = 40;

/**
 * Scatters kinds over a grid, `quotas[kind]` places each (their sum the number of places), with the fewest touches of two
 * alike that there can be. The same chance gives the same layout. Row by row from the top left.
 */
export function scatter(columns: number, rows: number, quotas: readonly number[], chance: Chance): number[] {
  const places = columns * rows;
  if (quotas.reduce((sum, quota) => sum + quota, 0) !== places)
    throw new Error('quotas do not fill the board');
  const { fewest } = findFewestTouches(columns, rows, quotas);
  const thrown = shuffle(
    quotas.flatMap((quota, kind) => many(kind, quota)),
    chance,
  );
  const board = new Board(Int16Array.from(thrown), columns);
  if (settle(board, fewest, chance)) return [...board.kinds];
  // Tight quotas leave few layouts, and looking for one by chance takes long: one is built, then stirred.
  const made = new Board(built(columns, rows, quotas, chance), columns);
  for (let stir = 0; stir < STIRS_A_PLACE * places; stir++)
    made.swap(Math.floor(chance() * places), Math.floor(chance() * places), 0);
  return [...made.kinds];
}

/** Swaps places until no more touch than must; false where chance does not find such a layout soon. */
function settle(board: Board, fewest: number, chance: Chance): boolean {
  const places = board.kinds.length;
  let touches = board.touches();
  let tries = TRIES_A_PLACE * places;
  while (touches > fewest && tries > 0) {
    for (let place = 0; place < places && touches > fewest && tries > 0; place++) {
      if (board.alike(place) === 0) continue;
      const start = Math.floor(chance() * places);
      // A swap that makes it better, from a random place on; else one that makes it no worse, to get out of a corner.
      let better: number | undefined;
      for (let step = 0; step < places && better === undefined && tries > 0; step++, tries--)
        better = board.swap(place, (start + step) % places, 1);
      better ??= board.swap(place, start, 0);
      touches -= better ?? 0;
    }
    tries--;
  }
  return touches <= fewest;
}
