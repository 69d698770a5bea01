/** Motifs of different size side by side. */
import { cm } from '../../src/core/base/reader.ts';
import type { Uneven } from '../../src/core/size/easing.ts';

/** What is said of kinds that differ in size, with how far a seam eases. */
export const unevenWords = (uneven: Uneven | undefined): string[] =>
  uneven === undefined
    ? []
    : [
        `${uneven.name} measures ${cm(uneven.side)} beside ${cm(uneven.beside.side)} of ${uneven.beside.name}: ${cm(uneven.ease)} to ease into every seam between them, and seams of that length ease about ${cm(uneven.eases)}; beyond it they pucker. Change the hook or the rows of one, or even them up with an edging (common practice).`,
      ];
