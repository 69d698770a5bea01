/** How far off crochet may be before it shows, in per cent. All common practice ("a few per cent"); the numbers are our own choice. */

/** A side this much off is seen by nobody once it is joined. */
export const UNSEEN = 2;
/** Sides that differ by no more than this make a square, and a seam between them lies flat. */
export const SEAMS_FORGIVE = 3;
/** Blocking moves a side by about this much and no more. */
export const BLOCKING_MENDS = 5;
/** An edge with more than this too many or too few stitches ruffles or cups. */
export const EDGES_FORGIVE = 5;
/** A measured side this much off the one that the gauge gives is a slip, or the gauge or the rows are others. */
export const SLIP_OF_TAPE = 50;
