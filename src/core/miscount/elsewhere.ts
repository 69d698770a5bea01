/** Counts that belong to other rows than they were taken for: nothing may be wrong but where the list begins. */
import type { RowPlan } from '../rows/index.ts';

export interface Elsewhere {
  /** By how many rows she is further on (+) or further back (−) than she thinks. */
  readonly by: number;
  /** The rows that the first and the last count belong to. */
  readonly firstRow: number;
  readonly lastRow: number;
  /** Other rows that the first count would fit as well, the nearest first: those after the turn. */
  readonly otherFirstRows: readonly number[];
  /** The last row for each of those. */
  readonly otherLastRows: readonly number[];
  /** Where among the counts (from 0) one row still went wrong; unset where every count fits. */
  readonly slipAt?: number;
}

/** As many counts must fit one after the other before a slip behind them is believed (common practice: one may be chance, two are not). */
const FIT_BEFORE_A_SLIP = 2;

/** What is left of each count when the plan's own is taken off. */
const offs = (plan: RowPlan, counts: readonly number[], firstRow: number): number[] =>
  counts.map((counted, index) => counted - (plan.rows[firstRow + index - 1]?.count ?? 0));

/** Rows in which something went wrong: after a slip the following counts stay off by as much, until another. */
const slips = (off: readonly number[]): number =>
  off.filter((one, index) => one !== (index === 0 ? 0 : off[index - 1])).length;

/**
 * The rows that a list of counts belongs to, where its first count is not that of `fromRow`: those that fit it whole, the nearest
 * first; else those that fit its beginning and leave one slip, where the row taken for granted would need more than one.
 * Undefined where no other rows explain it better, or where all rows are alike.
 */
export function findElsewhere(
  plan: RowPlan,
  counts: readonly number[],
  fromRow: number,
): Elsewhere | undefined {
  if (new Set(plan.rows.map((one) => one.count)).size === 1) return undefined;
  const starts = plan.rows
    .slice(0, Math.max(0, plan.rows.length - counts.length + 1))
    .map(({ row }) => row)
    .filter((row) => row !== fromRow)
    .sort((a, b) => Math.abs(a - fromRow) - Math.abs(b - fromRow) || b - a);
  const at = (firstRow: number, rest: Partial<Elsewhere> = {}): Elsewhere => ({
    by: firstRow - fromRow,
    firstRow,
    lastRow: firstRow + counts.length - 1,
    otherFirstRows: [],
    otherLastRows: [],
    ...rest,
  });
  const [whole, ...others] = starts.filter((row) => offs(plan, counts, row).every((off) => off === 0));
  if (whole !== undefined)
    return at(whole, {
      otherFirstRows: others,
      otherLastRows: others.map((row) => row + counts.length - 1),
    });
  if (slips(offs(plan, counts, fromRow)) < 2) return undefined;
  for (const row of starts) {
    const off = offs(plan, counts, row);
    const slipAt = off.findIndex((one) => one !== 0);
    if (slipAt >= FIT_BEFORE_A_SLIP && slips(off) === 1) return at(row, { slipAt });
  }
  return undefined;
}
