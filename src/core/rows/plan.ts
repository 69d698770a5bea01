/** The list of rows that every shape gives. Yarn, time, instructions, charts, counts and miscounts are read off it. */
import type { Stitch } from '../../standards/stitches.ts';
import type { Formula } from '../base/working.ts';

export const SHAPES = [
  'diagonal',
  'blocks',
  'clusters',
  'solid-square',
  'circle',
  'hexagon',
  'flat',
] as const;
export type Shape = (typeof SHAPES)[number];

export interface Row {
  /** 1 for the first row or round. */
  readonly row: number;
  /** The count at the end of the row, in the plan's unit. */
  readonly count: number;
  /** Increases worked in this row: each makes one more of the row before. */
  readonly increases: number;
  /** Decreases worked in this row: each leaves one fewer. */
  readonly decreases: number;
}

export interface RowPlan {
  readonly shape: Shape;
  /** What the shape is sized by: rising rows, blocks along a side, rounds, or stitches of a flat piece. */
  readonly size: number;
  readonly stitch: Stitch;
  /** What `count` counts. */
  readonly counted: 'stitches' | 'blocks';
  /** Worked in turned rows, or in rounds. */
  readonly worked: 'rows' | 'rounds';
  /** What one of them is called. */
  readonly called: 'row' | 'round';
  readonly rows: readonly Row[];
  /** The count of one row, as a formula of `row` and whatever else it names. */
  readonly countFormula: (row: number) => { formula: Formula; values: Readonly<Record<string, number>> };
  /** The total of the first `row` rows, likewise. */
  readonly soFarFormula: (row: number) => { formula: Formula; values: Readonly<Record<string, number>> };
}

export interface PlanOptions {
  readonly size: number;
  /** The second measure: blocks along the other side, or rows of a flat piece. */
  readonly otherSize?: number | undefined;
  readonly stitch?: Stitch | undefined;
}

/**
 * Whether the right side faces her in this row: in turned rows the first one shows it and every second one after it, in rounds
 * all do. Common practice.
 *
 * @example
 * facesRight({ worked: 'rows' }, 4) // → false
 * facesRight({ worked: 'rounds' }, 4) // → true
 */
export const facesRight = ({ worked }: Pick<RowPlan, 'worked'>, row: number): boolean =>
  worked === 'rounds' || row % 2 === 1;

/** The sum of the counts of rows `from` to `to`, both counted in; 0 where `to` < `from`. */
export function sumCounts(plan: RowPlan, to = plan.rows.length, from = 1): number {
  let sum = 0;
  for (let row = from; row <= to; row++) sum += plan.rows[row - 1]?.count ?? 0;
  return sum;
}

/** The first row with the most stitches. */
export function findWidest(plan: RowPlan): Row {
  let best = plan.rows[0];
  for (const row of plan.rows) if (!best || row.count > best.count) best = row;
  if (!best) throw new Error('a plan has at least one row');
  return best;
}

/** Builds the rows from their counts, reading increases and decreases off the difference to the row before. */
export const buildRows = (counts: readonly number[]): Row[] =>
  counts.map((count, index) => {
    const change = count - (counts[index - 1] ?? count);
    return { row: index + 1, count, increases: Math.max(0, change), decreases: Math.max(0, -change) };
  });
