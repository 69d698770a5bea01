/** Where every stitch of a chart stands: pieces worked in turned rows, from the bottom upwards. */
import { STITCH_FACTS } from '../standards/stitches.ts';
import type { RowPlan } from '../core/rows/index.ts';
import { outline } from './drawing.ts';
import { markShared, type ChartStitch, type Point } from './symbols.ts';

/** A row as it lies in a chart: its ground, where its number stands, its stitches. */
export interface ChartRow {
  readonly row: number;
  /** The outline of the row's ground. */
  readonly ground: string;
  /** Where the row begins; its number goes there. */
  readonly label: Point;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Where its count goes, where there is room for one. */
  readonly middle: Point;
  readonly stitches: readonly ChartStitch[];
}

/** Foundation chain, as chains lying along the lower edge. */
export interface ChartPlan {
  readonly rows: readonly ChartRow[];
  readonly foundation: readonly Point[];
  readonly width: number;
  readonly height: number;
  /** Room for one stitch, in pixels. */
  readonly room: number;
  /** From one side of the piece to the other, in pixels. */
  readonly across: number;
}

/** Odd rows run from right to left: the first row of a right-handed maker. */
const beginsRight = (row: number) => row % 2 === 1;

/** Flat pieces and diagonal squares, `room` by `high` pixels a stitch. */
export function chartRows(
  plan: RowPlan,
  room: number,
  high: number,
  side: number,
  symbols: boolean,
): ChartPlan {
  const widest = Math.max(...plan.rows.map(({ count }) => count));
  const width = widest * room + 2 * side;
  const bottom = plan.rows.length * high;
  const x = (index: number, count: number) => width / 2 + (index - (count - 1) / 2) * room;
  const rows = plan.rows.map(({ row, count }, at): ChartRow => {
    const before = plan.rows[at - 1]?.count ?? (plan.shape === 'flat' ? count : 1);
    const [low, top] = [bottom - at * high, bottom - (at + 1) * high];
    const half = (count * room) / 2;
    // A row stands on all of the row before, so its ground narrows or widens with it.
    const halfLow = (Math.min(before, count + 2) * room) / 2;
    const right = beginsRight(row);
    const out = Math.max(half, symbols ? halfLow : (half + halfLow) / 2);
    const gap = symbols ? room * 0.75 + 8 : 8;
    return {
      row,
      ground: outline([
        [width / 2 - half, top],
        [width / 2 + half, top],
        [width / 2 + halfLow, low],
        [width / 2 - halfLow, low],
      ]),
      label: [width / 2 + (right ? out + gap : -out - gap), (low + top) / 2],
      anchor: right ? 'start' : 'end',
      middle: [width / 2, (low + top) / 2],
      stitches: symbols ? markShared(stitchesOf(plan, row, count, before, x, low, top, room)) : [],
    };
  });
  const { chainCounts } = STITCH_FACTS[plan.stitch];
  const first = plan.rows[0]?.count ?? 1;
  const laid = plan.shape === 'flat' ? first - (chainCounts ? 1 : 0) : 1;
  const foundation = Array.from({ length: symbols ? laid : 0 }, (_, index): Point => [
    plan.shape === 'flat' ? x(index, first) : width / 2,
    bottom + 9,
  ]);
  return { rows, foundation, width, height: bottom + (symbols ? 20 : 0), room, across: widest * room };
}

/** Which stitches of the row before (from 0, from the left) each stitch of this row stands on. */
export function standsOn(count: number, before: number): number[][] {
  return Array.from({ length: count }, (_, index) => {
    if (count === before) return [index];
    if (count > before) return [Math.min(before - 1, Math.max(0, index - 1))];
    if (count === 1) return Array.from({ length: before }, (_, foot) => foot);
    if (index === 0) return [0, 1];
    return index === count - 1 ? [before - 2, before - 1] : [index + 1];
  });
}

function stitchesOf(
  plan: RowPlan,
  row: number,
  count: number,
  before: number,
  x: (index: number, count: number) => number,
  low: number,
  top: number,
  room: number,
): ChartStitch[] {
  const { turningChain, chainCounts } = STITCH_FACTS[plan.stitch];
  const first = beginsRight(row) ? count - 1 : 0;
  const counts = chainCounts && count >= before;
  const stitches = standsOn(count, before).map((feet, index): ChartStitch => {
    const at: Point = [x(index, count), top];
    const standing = feet.map((foot): Point => [x(foot, before), low]);
    if (counts && index === first)
      return { row, kind: 'chain', feet: standing, head: at, chains: turningChain };
    return { row, kind: plan.stitch, feet: standing, head: at };
  });
  if (!counts) {
    // A chain that stands for nothing is drawn outside the row.
    const edge = x(beginsRight(row) ? Math.max(count, before) - 1 : 0, Math.max(count, before));
    const outside = edge + (beginsRight(row) ? room : -room) * (count < before ? 0.55 : 0.85);
    const foot: Point = [outside, low - (low - top) * 0.1];
    stitches.push({
      row,
      kind: 'chain',
      feet: [foot],
      head: [outside, low - (low - top) * 0.8],
      chains: chainsOf(plan, count < before),
    });
  }
  return stitches;
}

/** Rows that lose stitches begin with a chain one shorter where the stitch is tall (common practice). */
function chainsOf(plan: RowPlan, losing: boolean): number {
  const { turningChain } = STITCH_FACTS[plan.stitch];
  return losing && turningChain > 2 ? turningChain - 1 : turningChain;
}
