/** The ends that lengths of yarn leave. */
import { formula } from '../base/working.ts';

export const ENDS_OF_LENGTHS = formula({
  label: 'Ends to weave in',
  formula: '2 * lengths',
  given: { lengths: '' },
  unit: '',
  source: 'common practice: every length of yarn leaves two ends',
});
