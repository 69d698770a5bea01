/** The square in clusters of three, worked in rounds: four clusters in the first round, four more in every round. */
import { formula } from '../base/working.ts';
import { buildRows, type PlanOptions, type RowPlan } from './plan.ts';

export const CLUSTER_STITCHES = formula({
  label: 'Stitches in the round',
  formula: '3 * 4 * round_number',
  given: { round_number: '' },
  unit: '',
  source: 'derived: three stitches a cluster, four more clusters a round (common practice)',
});
export const CLUSTER_SO_FAR = formula({
  label: 'Stitches up to and with this round',
  formula: '6 * round_number * (round_number + 1)',
  given: { round_number: '' },
  unit: '',
  source: 'derived: three stitches times 2n(n + 1) clusters',
});

/** `size` rounds: 12·i stitches in round i, 6·size·(size + 1) in all. */
export function planClusters({ size, stitch = 'dc' }: PlanOptions): RowPlan {
  return {
    shape: 'clusters',
    size,
    stitch,
    counted: 'stitches',
    worked: 'rounds',
    called: 'round',
    rows: buildRows(Array.from({ length: size }, (_, index) => 12 * (index + 1))),
    countFormula: (row) => ({ formula: CLUSTER_STITCHES, values: { round_number: row } }),
    soFarFormula: (row) => ({ formula: CLUSTER_SO_FAR, values: { round_number: row } }),
  };
}
