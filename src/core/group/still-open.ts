/** What may still be pledged of a kind, as arithmetic that can be shown. */
import { formula } from '../base/working.ts';

export const STILL_OPEN = formula({
  label: 'Still open',
  formula: 'cells + spares - pledged - waiting - accepted',
  given: { cells: '', spares: '', pledged: '', waiting: '', accepted: '' },
  unit: '',
  source: 'derived: what is wanted less what somebody has spoken for',
});
