/** Stitches and the width that they make. */
import { formula } from '../base/working.ts';

export const STITCHES_WANTED = formula({
  label: 'Stitches that would make the width',
  formula: 'width * stitches / over',
  given: { width: 'cm', stitches: '', over: 'cm' },
  unit: '',
  source: 'derived: width times stitches over the length they were counted on',
});
export const WIDTH_MADE = formula({
  label: 'Width',
  formula: 'count * over / stitches',
  given: { count: '', over: 'cm', stitches: '' },
  unit: 'cm',
  source: 'derived: stitches times the width of one',
});
