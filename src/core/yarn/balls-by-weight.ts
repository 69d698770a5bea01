/** Balls where motif and ball are both weighed: the length on the band does not matter. */
import { formula } from '../base/working.ts';

export const WEIGHT_OF_ALL = formula({
  label: 'Weight of all, with the reserve',
  formula: 'each_weight * motifs * (1 + reserve / 100)',
  given: { each_weight: 'g', motifs: '', reserve: '' },
  unit: 'g',
  source: 'common practice: a reserve on what the motifs take, usually 10 %',
});
/** Rounded before it is rounded up, so that the last digit of a machine's arithmetic never buys a ball. */
export const BALLS_BY_WEIGHT = formula({
  label: 'Whole balls',
  formula: 'ceil(round(weight / ball_weight, 6))',
  given: { weight: 'g', ball_weight: 'g' },
  unit: '',
  source: 'common practice: balls round up, never down',
});
