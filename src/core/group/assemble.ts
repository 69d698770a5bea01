/**
 * Which finished motif goes to which cell, so that neighbours differ as little in size as can be: a seam between two
 * sides of different length puckers. What is made least is the sum, over all pairs of touching cells, of the squared
 * difference of their sides.
 */
import type { Chance } from '../base/chance.ts';

export interface MotifToPlace {
  readonly piece: number;
  readonly kind: number;
  /** cm along a side. */
  readonly side: number;
}

/** The cells that touch a cell of a grid, by index, row by row. */
export function listTouching(columns: number, rows: number): readonly (readonly number[])[] {
  return Array.from({ length: columns * rows }, (_, cell) => {
    const column = cell % columns;
    return [
      ...(column > 0 ? [cell - 1] : []),
      ...(column < columns - 1 ? [cell + 1] : []),
      ...(cell >= columns ? [cell - columns] : []),
      ...(cell < columns * (rows - 1) ? [cell + columns] : []),
    ];
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

/**
 * Places motifs into the cells of their kind (`layout`: kind by cell). Returns the motif for each cell, undefined where
 * none is left for it; motifs beyond the cells stay over, those farthest from `wanted` (cm) first. Good, not proven
 * best: sorted by size along several sweeps, then every exchange of two that helps is made, from `starts` beginnings.
 */
export function assemble(
  motifs: readonly MotifToPlace[],
  layout: readonly number[],
  columns: number,
  wanted: number,
  chance: Chance,
  starts = 4,
): readonly (MotifToPlace | undefined)[] {
  const rows = layout.length / columns;
  const touches = listTouching(columns, rows);
  const cellsOf = new Map<number, number[]>();
  layout.forEach((kind, cell) => cellsOf.set(kind, [...(cellsOf.get(kind) ?? []), cell]));
  const usable = new Map(
    [...cellsOf].map(([kind, cells]) => [
      kind,
      motifs
        .filter((motif) => motif.kind === kind)
        .sort((a, b) => Math.abs(a.side - wanted) - Math.abs(b.side - wanted) || a.piece - b.piece)
        .slice(0, cells.length)
        .sort((a, b) => a.side - b.side || a.piece - b.piece),
    ]),
  );

  let best: (MotifToPlace | undefined)[] = [];
  let least = Infinity;
  const tryFrom = (rank: (cell: number) => number) => {
    const placed: (MotifToPlace | undefined)[] = layout.map(() => undefined);
    for (const [kind, cells] of cellsOf) {
      const ordered = [...cells].sort((a, b) => rank(a) - rank(b) || a - b);
      (usable.get(kind) ?? []).forEach((motif, index) => {
        const cell = ordered[index];
        if (cell !== undefined) placed[cell] = motif;
      });
    }
    settle(placed, cellsOf, touches);
    const found = measureStrain(
      placed.map((motif) => motif?.side),
      touches,
    );
    if (found < least - 1e-12) {
      least = found;
      best = placed;
    }
  };
  // Sizes rising along the rows, along the columns, along the diagonal, and outward from the middle.
  tryFrom((cell) => Math.floor(cell / columns) * columns + (cell % columns));
  tryFrom((cell) => (cell % columns) * rows + Math.floor(cell / columns));
  tryFrom((cell) => (cell % columns) + Math.floor(cell / columns));
  tryFrom((cell) =>
    Math.hypot((cell % columns) - (columns - 1) / 2, Math.floor(cell / columns) - (rows - 1) / 2),
  );
  for (let start = 0; start < starts; start++) {
    const ranks = layout.map(() => chance());
    tryFrom((cell) => ranks[cell] ?? 0);
  }
  return best;
}

/** Exchanges two cells of the same kind as long as that lessens the strain. */
function settle(
  placed: (MotifToPlace | undefined)[],
  cellsOf: ReadonlyMap<number, readonly number[]>,
  touches: readonly (readonly number[])[],
): void {
  const pull = (cell: number, side: number | undefined, without: number) => {
    if (side === undefined) return 0;
    let sum = 0;
    for (const other of touches[cell] ?? []) {
      const theirs = other === without ? undefined : placed[other]?.side;
      if (theirs !== undefined) sum += (side - theirs) ** 2;
    }
    return sum;
  };
  for (let better = true; better;) {
    better = false;
    for (const cells of cellsOf.values()) {
      for (let i = 0; i < cells.length; i++) {
        for (let j = i + 1; j < cells.length; j++) {
          const [a, b] = [cells[i] ?? 0, cells[j] ?? 0];
          const [sideA, sideB] = [placed[a]?.side, placed[b]?.side];
          if (sideA === sideB) continue;
          // The seam between the two themselves stays as it is.
          const now = pull(a, sideA, b) + pull(b, sideB, a);
          const then = pull(a, sideB, b) + pull(b, sideA, a);
          if (then < now - 1e-12) {
            [placed[a], placed[b]] = [placed[b], placed[a]];
            better = true;
          }
        }
      }
    }
  }
}
