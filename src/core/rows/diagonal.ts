/**
 * The square worked from corner to corner in turned rows: it starts with 3 stitches, gains one at each end of every
 * row for `size` rows, loses one at each end of every row after that, and closes on a single stitch.
 */
import { formula } from '../base/working.ts';
import { buildRows, type PlanOptions, type RowPlan } from './plan.ts';

const SOURCE =
  'derived: 3 in the first row, one more at each end of a row; rows 3, 5, 7 … 2n + 1 as published ' +
  'for the corner-out square (innerchildcrochet.com, "Mitered square")';

export const RISING_COUNT = formula({
  label: 'Stitches in the row, while it grows',
  formula: '2 * row + 1',
  given: { row: '' },
  unit: '',
  source: SOURCE,
});
export const FALLING_COUNT = formula({
  label: 'Stitches in the row, after the turn',
  formula: '2 * (2 * size - row) + 1',
  given: { size: '', row: '' },
  unit: '',
  source: SOURCE,
});
export const RISING_SO_FAR = formula({
  label: 'Stitches up to and with this row',
  formula: 'row^2 + 2 * row',
  given: { row: '' },
  unit: '',
  source: 'derived: the sum of 3, 5, 7 …',
});
export const FALLING_SO_FAR = formula({
  label: 'Stitches up to and with this row',
  formula: '2 * size^2 + 2 * size - (2 * size - row)^2',
  given: { size: '', row: '' },
  unit: '',
  source: 'derived: all stitches less the sum of 1, 3, 5 … still to come',
});

/** The diagonal square of `size` rising rows: 2·size rows, widest 2·size + 1, 2·size² + 2·size stitches. */
export function planDiagonal({ size, stitch = 'hdc' }: PlanOptions): RowPlan {
  const counts = Array.from({ length: 2 * size }, (_, index) =>
    index < size ? 2 * (index + 1) + 1 : 2 * (2 * size - (index + 1)) + 1,
  );
  return {
    shape: 'diagonal',
    size,
    stitch,
    counted: 'stitches',
    worked: 'rows',
    called: 'row',
    rows: buildRows(counts),
    countFormula: (row) =>
      row <= size
        ? { formula: RISING_COUNT, values: { row } }
        : { formula: FALLING_COUNT, values: { size, row } },
    soFarFormula: (row) =>
      row <= size
        ? { formula: RISING_SO_FAR, values: { row } }
        : { formula: FALLING_SO_FAR, values: { size, row } },
  };
}
