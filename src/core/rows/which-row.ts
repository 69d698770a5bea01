/** Which row a count belongs to, read back off a shape's plan. */
import { defined, keepDefined } from '../base/defined.ts';
import type { Stitch } from '../../standards/stitches.ts';
import { Problem } from '../base/problem.ts';
import { count, t } from '../base/reader.ts';
import { Working } from '../base/working.ts';
import { MOST_ROWS } from '../base/limits.ts';
import { planRows, type Row, type RowPlan, type Shape } from './index.ts';

export interface WhichRow {
  readonly plan: RowPlan;
  /** Every row that has the count, the first one first. */
  readonly rows: readonly number[];
  /** The first of them, while the piece grows (or keeps its count). */
  readonly row?: number;
  /** The row after the turn that has the count too. */
  readonly otherRow?: number;
  /** Where no row has it: the nearest smaller and larger count, each in the first row that has it. */
  readonly below?: Row;
  readonly above?: Row;
  readonly working: Working;
  readonly assumptions: readonly string[];
}

/** Shapes that shrink again: without their size nobody knows where. */
const TURNS: ReadonlySet<Shape> = new Set(['diagonal', 'blocks']);

interface RowAsked {
  readonly shape: Shape;
  readonly size?: number | undefined;
  readonly stitches: number;
  readonly otherSize?: number | undefined;
  readonly stitch?: Stitch | undefined;
}

/**
 * The rows that have so many stitches (or blocks). A piece that is worked in rounds only grows and needs no size. Throws
 * Problem: size-missing, where a shape that shrinks again comes without its size; rows-all-alike, for a flat piece.
 */
export function findRow(asked: RowAsked): WhichRow {
  const { shape, stitches } = asked;
  refuseUntold(asked);
  const plan = planRows(shape, {
    size: asked.size ?? MOST_ROWS,
    otherSize: asked.otherSize,
    stitch: asked.stitch,
  });
  const working = new Working();
  const assumptions = keepDefined([
    asked.stitch === undefined ? `Worked in ${t(plan.stitch)}, as no stitch was named.` : undefined,
    plan.counted === 'blocks' ? 'What was counted are blocks.' : undefined,
  ]);
  const rows = rowsOf(plan, stitches);
  const check = (row: number) => {
    const { formula, values } = plan.countFormula(row);
    working.do(formula, values);
  };
  const [first] = rows;
  if (first === undefined) {
    const below = nearest(plan, (one) => one < stitches, Math.max);
    const above = nearest(plan, (one) => one > stitches, Math.min);
    for (const near of [below, above]) if (near) check(near.row);
    return defined({ plan, rows, below, above, working, assumptions });
  }
  const shrinks = (row: number) => (plan.rows[row - 1]?.decreases ?? 0) > 0;
  const otherRow = shrinks(first) ? undefined : rows.find(shrinks);
  check(first);
  if (otherRow !== undefined) check(otherRow);
  return defined({ plan, rows, row: first, otherRow, working, assumptions });
}

const rowsOf = (plan: RowPlan, stitches: number): number[] =>
  plan.rows.filter((one) => one.count === stitches).map(({ row }) => row);

/** Refuses what a count alone does not tell. Throws Problem: rows-all-alike, size-missing. */
function refuseUntold({ shape, size, stitches, stitch }: RowAsked): void {
  if (shape === 'flat')
    throw new Problem(
      'rows-all-alike',
      'Every row of a flat piece has the same count: it tells no row from another.',
      {
        option: 'shape',
        hint: 'Count the rows themselves, from the foundation up.',
      },
    );
  if (size !== undefined || !TURNS.has(shape)) return;
  const rising = rowsOf(planRows(shape, { size: MOST_ROWS, stitch }), stitches)[0];
  throw new Problem('size-missing', 'This shape grows and then shrinks: its size says where it turns.', {
    option: 'size',
    hint: `${rising === undefined || rising > MOST_ROWS ? '' : `While it still grows this is row ${rising}. `}Give ${shape === 'diagonal' ? 'its rising rows' : 'its blocks along a side'}, like size:12.`,
    facts: { stitches },
  });
}

/** The first row with the count that is nearest on one side of what was counted. */
function nearest(
  plan: RowPlan,
  suits: (count: number) => boolean,
  pick: (...counts: number[]) => number,
): Row | undefined {
  const counts = plan.rows.map((one) => one.count).filter(suits);
  if (counts.length === 0) return undefined;
  const wanted = pick(...counts);
  return plan.rows.find((one) => one.count === wanted);
}

/** `row 9 (19)`: a row with what it has. */
export const findRowWithCount = (plan: RowPlan, { row, count: has }: Row): string =>
  `${plan.called} ${row} has ${
    plan.counted === 'blocks' ? count(has, 'block') : count(has, 'stitch', 'stitches')
  }`;
