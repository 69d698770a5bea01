/** Reading a row off the work: the tops that one sees along its edge, and the chain at its beginning. */
import { formula } from '../base/working.ts';

export const STITCHES_SEEN = formula({
  label: 'Stitches in the row',
  formula: 'tops + chain_counted',
  given: { tops: '', chain_counted: '' },
  unit: '',
  source:
    'published: the turning chain counts as the first stitch in hdc, dc and taller, not in sc (Dummies (Wiley), "How to crochet a ' +
    'turning chain"); for hdc teachers differ, here it counts',
});
