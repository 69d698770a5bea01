/** How much is taken in at most: one place for whoever checks it, saves it or says it. Far beyond any blanket, and still answered at once. */

/** Rising rows of a diagonal square, rounds, blocks along a side, stitches or rows of a flat piece. */
export const MOST_ROWS = 400;
/** Rows that any piece of that size has: a diagonal square falls as long as it rises. */
export const MOST_ROWS_WORKED = 2 * MOST_ROWS;
/** Motifs along a side of a blanket, and in all. */
export const MOST_ALONG = 100;
export const MOST_PLACES = 2500;
/** Kinds of motif in a blanket: one a letter. */
export const MOST_KINDS = 26;
/** Rounds of a border, and of what is read at once. */
export const MOST_ROUNDS = 60;
/** Characters of the name of a motif, a blanket or a colour. */
export const LONGEST_NAME = 60;
/** Colours that a maker says she has. */
export const MOST_COLOURS_AT_HAND = 60;
/** Motifs and blankets that a maker keeps. */
export const MOST_MOTIFS = 100;
export const MOST_BLANKETS = 50;
/** Weighings that are remembered of a motif; the oldest go first. */
export const MOST_WEIGHINGS = 20;
/** Motifs on the scale at once. */
export const MOST_ON_SCALE = 1000;
/** Numbers in a list that is typed. */
export const MOST_NUMBERS = 1000;
/** Lengths in a list that is typed. */
export const MOST_LENGTHS = 200;
/** Counts of rows in a list that is typed. */
export const MOST_COUNTS = 400;
/** Minutes that one motif takes: a week without sleep. */
export const MOST_MINUTES = 10_000;
/** The price of one ball, in whatever money: what any other number may be at most. */
export const MOST_PRICE = 1_000_000;
/** The longest length and the heaviest weight that are taken for a piece of crochet: 100 m in cm, 100 kg in g. */
export const LONGEST_CM = 10_000;
export const HEAVIEST_G = 100_000;
/** Characters of a question in plain words: a long message, and not so long that reading it keeps the others waiting. */
export const LONGEST_WORDS = 1000;
/** Numbers that a group gives to motifs handed in, those sent or taken back among them: four times the largest blanket. */
export const MOST_NUMBERED = 10_000;
