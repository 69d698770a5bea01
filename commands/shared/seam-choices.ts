/** How motifs are joined, as it is asked here and of a saved blanket. */
import { SEAM_METHODS } from '../../src/core/edges/seams.ts';
import { SEAM_WORDS } from '../../src/standards/trade-names.ts';

export const seamChoices = SEAM_METHODS.map((value) => ({ value, also: SEAM_WORDS[value] }));
