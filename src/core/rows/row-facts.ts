/** What can be said of one row of a shape. */
import type { Stitch } from '../../standards/stitches.ts';
import { Problem } from '../base/problem.ts';
import { planRows, findWidest, type Row, type RowPlan, type Shape } from './index.ts';
import { t } from '../base/reader.ts';
import { Working } from '../base/working.ts';

export interface RowFacts {
  readonly plan: RowPlan;
  readonly row: number;
  readonly count: number;
  readonly soFar: number;
  readonly total: number;
  readonly widest: Row;
  readonly working: Working;
  readonly assumptions: readonly string[];
}

/**
 * The count of a row (the last if none is given), the counts so far and in all. Counts are stitches, or blocks.
 *
 * Throws Problem: no-such-row, one-measure-only.
 *
 * @example
 * reckonRow({ shape: 'diagonal', size: 12, row: 9 }).count // → 19
 */
export function reckonRow(asked: {
  shape: Shape;
  size: number;
  row?: number | undefined;
  otherSize?: number | undefined;
  stitch?: Stitch | undefined;
}): RowFacts {
  const assumptions: string[] = [];
  const otherSize = asked.otherSize ?? (asked.shape === 'flat' ? asked.row : undefined);
  const plan = planRows(asked.shape, { size: asked.size, otherSize, stitch: asked.stitch });
  if (asked.stitch === undefined) assumptions.push(`Worked in ${t(plan.stitch)}, as no stitch was named.`);
  const row = asked.row ?? plan.rows.length;
  if (asked.row === undefined) assumptions.push('The last row, as no row was named.');
  if (row > plan.rows.length) {
    const { called } = plan;
    throw new Problem(
      'no-such-row',
      `This piece ends with ${called} ${plan.rows.length}; there is no ${called} ${row}.`,
      {
        option: 'row',
        hint: `Ask for a ${called} from 1 to ${plan.rows.length}.`,
        facts: { row, rows: plan.rows.length },
      },
    );
  }
  const working = new Working();
  const inRow = plan.countFormula(row);
  const count = working.do(inRow.formula, inRow.values);
  const upTo = plan.soFarFormula(row);
  const soFar = working.do(upTo.formula, upTo.values);
  const inAll = plan.soFarFormula(plan.rows.length);
  const total =
    row === plan.rows.length
      ? soFar
      : working.do(inAll.formula, inAll.values, `All ${plan.counted}, to the last row`);
  return { plan, row, count, soFar, total, widest: findWidest(plan), working, assumptions };
}
