/**
 * Which finished motif goes to which cell, so that neighbours differ as little in size as can be: a seam between two
 * sides of different length puckers. What is made least is the sum, over all pairs of touching cells, of the squared
 * difference of their sides.
 */
import { keepDefined } from '../base/defined.ts';
import type { Chance } from '../base/chance.ts';

export interface MotifToPlace {
  readonly piece: number;
  readonly kind: number;
  /** cm along a side, as it is laid. */
  readonly side: number;
  /** cm as it was measured, before it is evened up; those nearest to the wanted side are used first. As it is laid, if not given. */
  readonly measured?: number;
}

const measuredOf = ({ measured, side }: MotifToPlace) => measured ?? side;

/** The cells that touch a cell of a grid, by index, row by row. */
export function listTouching(columns: number, rows: number): readonly (readonly number[])[] {
  return Array.from({ length: columns * rows }, (_, cell) => {
    const column = cell % columns;
    return keepDefined([
      column > 0 ? cell - 1 : undefined,
      column < columns - 1 ? cell + 1 : undefined,
      cell >= columns ? cell - columns : undefined,
      cell < columns * (rows - 1) ? cell + columns : undefined,
    ]);
  });
}

/** The sum over touching pairs of the squared difference of sides (cm²); empty cells count nothing. */
export function measureStrain(
  sides: readonly (number | undefined)[],
  touches: readonly (readonly number[])[],
): number {
  let sum = 0;
  touches.forEach((neighbours, cell) => {
    const own = sides[cell];
    if (own === undefined) return;
    for (const other of neighbours) {
      const theirs = sides[other];
      if (other > cell && theirs !== undefined) sum += (own - theirs) ** 2;
    }
  });
  return sum;
}

/** The motif for each cell, undefined where none is left for it; and whether every exchange that helps was found. */
export interface Assembled {
  readonly placed: readonly (MotifToPlace | undefined)[];
  readonly whole: boolean;
}

/** So many exchanges are looked at in all, then what was found serves; a blanket of 500 motifs of one kind needs a tenth. */
const MOST_LOOKED_AT = 40_000_000;
/** A pause is made after so many: a few thousandths of a second. */
const BETWEEN_PAUSES = 400_000;

/**
 * Ways in which sizes may rise over a grid, a number for each cell, row by row: along the rows, along the columns, along the diagonal,
 * and outward from the middle.
 *
 * @example
 * listBeginnings(2, 2) // → [[0, 1, 2, 3], [0, 2, 1, 3], [0, 1, 1, 2], [Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2]]
 */
export function listBeginnings(columns: number, rows: number): readonly (readonly number[])[] {
  const places = Array.from({ length: columns * rows }, (_, cell) => ({
    column: cell % columns,
    row: Math.floor(cell / columns),
  }));
  return [
    places.map((_, cell) => cell),
    places.map(({ column, row }) => column * rows + row),
    places.map(({ column, row }) => column + row),
    places.map(({ column, row }) => Math.hypot(column - (columns - 1) / 2, row - (rows - 1) / 2)),
  ];
}

/**
 * Places motifs into the cells of their kind (`layout`: kind by cell). Motifs beyond the cells stay over, those farthest
 * from `wanted` (cm) first. Good, not proven best: sorted by size along several sweeps, then every exchange of two that
 * helps is made, from `starts` beginnings. It pauses (yields) in between: a large blanket takes a while.
 */
export function* assembling(
  motifs: readonly MotifToPlace[],
  layout: readonly number[],
  columns: number,
  wanted: number,
  chance: Chance,
  starts = 4,
  most = MOST_LOOKED_AT,
): Generator<void, Assembled> {
  const rows = layout.length / columns;
  const touches = listTouching(columns, rows);
  const cellsOf = new Map<number, number[]>();
  layout.forEach((kind, cell) => cellsOf.set(kind, [...(cellsOf.get(kind) ?? []), cell]));
  const usable = pickUsable(motifs, cellsOf, wanted);

  let best: (MotifToPlace | undefined)[] = [];
  let least = Infinity;
  let whole = true;
  const beginnings = listBeginnings(columns, rows);
  const budget = Math.floor(most / (beginnings.length + starts));
  function* tryFrom(ranks: readonly number[]): Generator<void> {
    const placed = placeByRank(usable, cellsOf, ranks);
    whole = (yield* settling(placed, cellsOf, touches, budget)) && whole;
    const found = measureStrain(
      placed.map((motif) => motif?.side),
      touches,
    );
    if (found < least - 1e-12) {
      least = found;
      best = placed;
    }
  }
  for (const ranks of beginnings) yield* tryFrom(ranks);
  for (let start = 0; start < starts; start++) yield* tryFrom(layout.map(() => chance()));
  return { placed: best, whole };
}

type ByKind<T> = ReadonlyMap<number, readonly T[]>;

/** By kind: as many motifs as it has cells, those farthest from `wanted` (cm) left over, the smallest first. */
const pickUsable = (
  motifs: readonly MotifToPlace[],
  cellsOf: ByKind<number>,
  wanted: number,
): ByKind<MotifToPlace> =>
  new Map(
    [...cellsOf].map(([kind, cells]) => [
      kind,
      motifs
        .filter((motif) => motif.kind === kind)
        .sort(
          (a, b) => Math.abs(measuredOf(a) - wanted) - Math.abs(measuredOf(b) - wanted) || a.piece - b.piece,
        )
        .slice(0, cells.length)
        .sort((a, b) => a.side - b.side || a.piece - b.piece),
    ]),
  );

/** The motifs of every kind in its cells, from the cell of the lowest rank (a number for each cell) on; undefined where none is left. */
function placeByRank(
  usable: ByKind<MotifToPlace>,
  cellsOf: ByKind<number>,
  ranks: readonly number[],
): (MotifToPlace | undefined)[] {
  const placed: (MotifToPlace | undefined)[] = ranks.map(() => undefined);
  for (const [kind, cells] of cellsOf) {
    const ordered = [...cells].sort((a, b) => (ranks[a] ?? 0) - (ranks[b] ?? 0));
    (usable.get(kind) ?? []).forEach((motif, index) => {
      const cell = ordered[index];
      if (cell !== undefined) placed[cell] = motif;
    });
  }
  return placed;
}

/** Exchanges two cells of the same kind as long as that lessens the strain; false where the budget ended it. */
function* settling(
  placed: (MotifToPlace | undefined)[],
  cellsOf: ByKind<number>,
  touches: readonly (readonly number[])[],
  budget: number,
): Generator<void, boolean> {
  // By cell: the side of its motif, not a number where it has none.
  const sides = Float64Array.from(placed, (motif) => motif?.side ?? NaN);
  const pull = (cell: number, side: number, without: number) => {
    if (Number.isNaN(side)) return 0;
    let sum = 0;
    for (const other of touches[cell] ?? []) {
      const theirs = sides[other] ?? NaN;
      if (other !== without && !Number.isNaN(theirs)) sum += (side - theirs) ** 2;
    }
    return sum;
  };
  let looked = 0;
  for (let better = true; better;) {
    better = false;
    for (const cells of cellsOf.values()) {
      for (let i = 0; i < cells.length; i++) {
        const a = cells[i] ?? 0;
        const before = Math.floor(looked / BETWEEN_PAUSES);
        looked += cells.length - i - 1;
        if (looked > budget) return false;
        if (Math.floor(looked / BETWEEN_PAUSES) > before) yield;
        for (let j = i + 1; j < cells.length; j++) {
          const b = cells[j] ?? 0;
          const sideA = sides[a] ?? NaN;
          const sideB = sides[b] ?? NaN;
          if (sideA === sideB || (Number.isNaN(sideA) && Number.isNaN(sideB))) continue;
          // The seam between the two themselves stays as it is.
          const now = pull(a, sideA, b) + pull(b, sideB, a);
          const then = pull(a, sideB, b) + pull(b, sideA, a);
          if (then < now - 1e-12) {
            [placed[a], placed[b]] = [placed[b], placed[a]];
            sides[a] = sideB;
            sides[b] = sideA;
            better = true;
          }
        }
      }
    }
  }
  return true;
}
