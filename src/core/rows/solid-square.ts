/** The solid square, worked in rounds with the same number of stitches in each corner stitch. */
import { CORNER_FOR } from '../../standards/growth.ts';
import { formula } from '../base/working.ts';
import { buildRows, type PlanOptions, type RowPlan } from './plan.ts';

const PUBLISHED =
  'published: sc rounds 4, 12, 20, 28 … = 8r − 4 with three in each corner (crochetspot.com, ' +
  '"How to crochet a square"); k in each of four corners adds 4(k − 1) a round';

export const SOLID_COUNT = formula({
  label: 'Stitches in the round',
  formula: '4 * (corner - 1) * round_number - 4',
  given: { corner: '', round_number: '' },
  unit: '',
  source: PUBLISHED,
});
export const SOLID_SO_FAR = formula({
  label: 'Stitches up to and with this round',
  formula: '2 * (corner - 1) * round_number * (round_number + 1) - 4 * round_number',
  given: { corner: '', round_number: '' },
  unit: '',
  source: 'derived: the sum of the rounds',
});

/** `size` rounds: 4(k − 1)·i − 4 stitches in round i, k being the stitches in each corner. */
export function planSolidSquare({ size, stitch = 'sc' }: PlanOptions): RowPlan {
  const corner = CORNER_FOR[stitch];
  return {
    shape: 'solid-square',
    size,
    stitch,
    counted: 'stitches',
    worked: 'rounds',
    called: 'round',
    rows: buildRows(Array.from({ length: size }, (_, index) => 4 * (corner - 1) * (index + 1) - 4)),
    countFormula: (row) => ({ formula: SOLID_COUNT, values: { corner, round_number: row } }),
    soFarFormula: (row) => ({ formula: SOLID_SO_FAR, values: { corner, round_number: row } }),
  };
}
