/**
 * Where the blocks of a chart lie: corner-to-corner pieces, standing on the corner that they begin with, as they are worked. A row
 * adds a block at one end and, from some row on, drops one at the other, so a rectangle leans to the side that it goes on growing at.
 */
import type { RowPlan } from '../core/rows/index.ts';
import type { ChartPlan, ChartRow } from './chart-rows.ts';
import { outline } from './drawing.ts';
import type { Point } from './symbols.ts';

/** From this height of a row on, in pixels, its blocks are drawn one by one. */
const LEAST_HIGH = 4;

/** Blocks along the two sides that go up from the first corner: to the right and to the left. */
export function sidesOf({ size, rows }: RowPlan): { right: number; left: number } {
  const other = rows.length - size + 1;
  const [short, long] = [Math.min(size, other), Math.max(size, other)];
  // The row after the first side is full begins with a new block: at the right where it is an odd one.
  return short % 2 === 0 ? { right: long, left: short } : { right: short, left: long };
}

/** The blocks of a row: how far right of the first corner the first and the last lie, in halves of a block. */
export function reachOf({ right, left }: { right: number; left: number }, row: number): [number, number] {
  const at = (toRight: number) => 2 * toRight - row + 1;
  return [at(Math.max(0, row - left)), at(Math.min(row, right) - 1)];
}

/** The rows of blocks, each `high` pixels above the one before; a block is as wide as it is high. */
export function chartBlocks(plan: RowPlan, high: number, side: number): ChartPlan {
  const sides = sidesOf(plan);
  const height = (sides.left + sides.right) * high;
  const corner = side + sides.left * high;
  const edges = (up: number): readonly [Point, Point] => {
    const to = (longest: number) => (up <= longest ? up : 2 * longest - up);
    return [
      [corner - to(sides.left) * high, height - up * high],
      [corner + to(sides.right) * high, height - up * high],
    ];
  };
  const rows = plan.rows.map(({ row }): ChartRow => {
    const y = height - row * high;
    const [first, last] = reachOf(sides, row).map((halves) => corner + halves * high);
    const [from, to] = [first ?? corner, last ?? corner];
    const begins = row % 2 === 1;
    return {
      row,
      ground: high < LEAST_HIGH ? band(edges, row, plan.rows.length) : blocks(from, to, y, high),
      label: [begins ? to + high + 8 : from - high - 8, y],
      anchor: begins ? 'start' : 'end',
      middle: [(from + to) / 2, y],
      stitches: [],
    };
  });
  return { rows, foundation: [], width: height + 2 * side, height, room: 2 * high, across: height };
}

/** One outline for every block. */
const blocks = (from: number, to: number, y: number, high: number): string =>
  Array.from({ length: Math.round((to - from) / (2 * high)) + 1 }, (_, index) => {
    const x = from + 2 * index * high;
    return outline([
      [x, y - high],
      [x + high, y],
      [x, y + high],
      [x - high, y],
    ]);
  }).join('');

/** The stretch of the piece that is nearer to this row than to another. */
function band(edges: (up: number) => readonly [Point, Point], row: number, rows: number): string {
  const levels = [row === 1 ? 0 : row - 0.5, row, row === rows ? rows + 1 : row + 0.5].map(edges);
  return outline([...levels.map(([left]) => left), ...levels.map(([, right]) => right).reverse()]);
}
