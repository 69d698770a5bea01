/**
 * Corner-to-corner work in blocks (a short chain and three tall stitches each): one more block a row, then, in a
 * rectangle, rows that add one and drop one, then one fewer a row.
 */
import { formula } from '../base/working.ts';
import { buildRows, type PlanOptions, type RowPlan } from './plan.ts';

const SOURCE = 'derived: rows of 1, 2, 3 … blocks and back (common practice for corner-to-corner blocks)';

export const BLOCKS_IN_ROW = formula({
  label: 'Blocks in the row',
  formula: 'min(row, size, other_size, size + other_size - row)',
  given: { row: '', size: '', other_size: '' },
  unit: '',
  source: SOURCE,
});
export const BLOCKS_RISING = formula({
  label: 'Blocks up to and with this row',
  formula: 'row * (row + 1) / 2',
  given: { row: '' },
  unit: '',
  source: 'derived: the sum of 1, 2, 3 …',
});
export const BLOCKS_LEVEL = formula({
  label: 'Blocks up to and with this row',
  formula: 'short * (short + 1) / 2 + (row - short) * short',
  given: { short: '', row: '' },
  unit: '',
  source: 'derived: the growing corner, then rows of equal length',
});
export const BLOCKS_FALLING = formula({
  label: 'Blocks up to and with this row',
  formula: 'size * other_size - (rows - row) * (rows - row + 1) / 2',
  given: { size: '', other_size: '', rows: '', row: '' },
  unit: '',
  source: 'derived: all blocks less those still to come',
});

/** `size` by `otherSize` blocks (a square if only one is given): size + otherSize − 1 rows, size·otherSize blocks. */
export function planBlocks({ size, otherSize = size, stitch = 'dc' }: PlanOptions): RowPlan {
  const short = Math.min(size, otherSize);
  const long = Math.max(size, otherSize);
  const rows = size + otherSize - 1;
  const counts = Array.from({ length: rows }, (_, index) => Math.min(index + 1, short, rows - index));
  return {
    shape: 'blocks',
    size,
    stitch,
    counted: 'blocks',
    worked: 'rows',
    called: 'row',
    rows: buildRows(counts),
    countFormula: (row) => ({ formula: BLOCKS_IN_ROW, values: { row, size, other_size: otherSize } }),
    soFarFormula: (row) => {
      if (row <= short) return { formula: BLOCKS_RISING, values: { row } };
      if (row <= long) return { formula: BLOCKS_LEVEL, values: { short, row } };
      return { formula: BLOCKS_FALLING, values: { size, other_size: otherSize, rows, row } };
    },
  };
}
