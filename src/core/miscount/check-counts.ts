/** Where a run of counted rows departs from its plan. Why it may have, and what mends it, is in `suspects/`. */
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { type RowPlan } from '../rows/index.ts';
import { causesOf, isFarOff, sayNoRowHas, type Cause } from './causes.ts';
import { findElsewhere, type Elsewhere } from './elsewhere.ts';
import { describeDeparture } from './mending.ts';
import { formula, Working } from '../base/working.ts';

export const DIFFERENCE = formula({
  label: 'Too many (+) or too few (−)',
  formula: 'counted - expected',
  given: { counted: '', expected: '' },
  unit: '',
  source: 'derived: the count less what the plan has',
});

export interface Miscount {
  readonly fromRow: number;
  readonly lastRow: number;
  /** The first row that departs; unset where every count is right. */
  readonly wrong?: {
    readonly row: number;
    readonly expected: number;
    readonly counted: number;
    /** In order of likelihood. */
    readonly causes: readonly Cause[];
    /** What is to be worked again after ripping back, in the plan's unit: this row and those after it that were counted, as planned. */
    readonly again: number;
    /** Why the count can be that of no row of the plan; unset where it may be one. */
    readonly noRowHasIt?: string;
    /** The rows that the counts belong to, where they fit others better than the ones they were taken for. */
    readonly elsewhere?: Elsewhere;
    /** With those rows: the one that still went wrong, and why. */
    readonly slip?: {
      readonly row: number;
      readonly expected: number;
      readonly counted: number;
      readonly difference: number;
      readonly causes: readonly Cause[];
    };
  };
  /** counted − expected at the first wrong row; 0 where every count is right. */
  readonly difference: number;
  /** The count of the row after the last one counted; unset at the end of the piece. */
  readonly next?: number;
  readonly working: Working;
}

/**
 * Which rows so many counts are of, the last of them that of the last row done. Before the first row is finished, it is the first
 * that was counted.
 *
 * @example
 * findRowsCounted(5, 3) // → { from: 3, last: 5 }
 */
export function findRowsCounted(
  done: number,
  counts: number,
): { readonly from: number; readonly last: number } {
  const last = Math.max(1, done);
  return { from: last - counts + 1, last };
}

/**
 * The last of so many rows that are counted from one on.
 *
 * @example
 * findLastCounted(3, 4) // → 6
 */
export const findLastCounted = (from: number, counts: number): number => from + counts - 1;

/** Throws Problem: no-such-row, too-many-counts, where the plan has no such rows. */
function mustHaveRows({ rows: { length: rows }, called }: RowPlan, counts: number, fromRow: number): void {
  if (fromRow > rows)
    throw new Problem(
      'no-such-row',
      `This piece ends with ${called} ${rows}; there is no ${called} ${fromRow}.`,
      {
        option: 'from_row',
        hint: `Start from a ${called} from 1 to ${rows}.`,
        facts: { row: fromRow, rows },
      },
    );
  const lastRow = findLastCounted(fromRow, counts);
  if (lastRow > rows)
    throw new Problem(
      'too-many-counts',
      `${counts} counts from ${called} ${fromRow} would reach ${called} ${lastRow}; this piece ends with ${called} ${rows}.`,
      {
        option: 'counts',
        hint: `Give at most ${rows - fromRow + 1} counts, or a smaller from_row.`,
        facts: { most: rows - fromRow + 1, given: counts },
      },
    );
}

/** What is wrong at the first count that departs, the one `at` that place. */
function explain(
  plan: RowPlan,
  counts: readonly number[],
  fromRow: number,
  at: number,
): NonNullable<Miscount['wrong']> {
  const departure = describeDeparture(plan, counts, fromRow, at);
  const { row, expected, counted, again } = departure;
  const elsewhere = at === 0 ? findElsewhere(plan, counts, fromRow) : undefined;
  const slip =
    elsewhere?.slipAt === undefined
      ? undefined
      : describeDeparture(plan, counts, elsewhere.firstRow, elsewhere.slipAt);
  return defined({
    row,
    expected,
    counted,
    causes: causesOf(departure),
    again,
    noRowHasIt: sayNoRowHas(plan, counted, isFarOff(departure)),
    elsewhere,
    slip: slip && {
      row: slip.row,
      expected: slip.expected,
      counted: slip.counted,
      difference: slip.difference,
      causes: causesOf(slip),
    },
  });
}

/**
 * Holds counts, the first of them that of row `fromRow`, against a plan.
 *
 * Throws Problem: no-such-row, too-many-counts.
 */
export function checkCounts(plan: RowPlan, counts: readonly number[], fromRow = 1): Miscount {
  mustHaveRows(plan, counts.length, fromRow);
  const lastRow = findLastCounted(fromRow, counts.length);
  const planned = (row: number) => plan.rows[row - 1]?.count ?? 0;
  const at = counts.findIndex((counted, index) => counted !== planned(fromRow + index));
  const shown = at === -1 ? counts.length - 1 : at;
  const working = new Working();
  const { formula: countFormula, values } = plan.countFormula(fromRow + shown);
  const expected = working.do(countFormula, values);
  const difference = working.do(DIFFERENCE, { counted: counts[shown] ?? 0, expected });
  return defined({
    fromRow,
    lastRow,
    difference,
    working,
    next: plan.rows[lastRow]?.count,
    wrong: at === -1 ? undefined : explain(plan, counts, fromRow, at),
  });
}
