/** The flat piece: the same count in every row. */
import { formula } from '../base/working.ts';
import { buildRows, type PlanOptions, type RowPlan } from './plan.ts';

export const FLAT_COUNT = formula({
  label: 'Stitches in the row',
  formula: 'stitches',
  given: { stitches: '' },
  unit: '',
  source: 'derived: every row keeps the count',
});
export const FLAT_SO_FAR = formula({
  label: 'Stitches up to and with this row',
  formula: 'stitches * rows_done',
  given: { stitches: '', rows_done: '' },
  unit: '',
  source: 'derived: stitches times rows',
});

/** `size` stitches wide, `otherSize` rows high (1 if not given). */
export function planFlat({ size, otherSize = 1, stitch = 'sc' }: PlanOptions): RowPlan {
  return {
    shape: 'flat',
    size,
    stitch,
    counted: 'stitches',
    worked: 'rows',
    called: 'row',
    rows: buildRows(Array.from({ length: otherSize }, () => size)),
    countFormula: () => ({ formula: FLAT_COUNT, values: { stitches: size } }),
    soFarFormula: (row) => ({ formula: FLAT_SO_FAR, values: { stitches: size, rows_done: row } }),
  };
}
