/**
 * How much yarn crochet takes. No standard and no textile-engineering paper gives it; what exists are small measured
 * experiments, so everything that rests on them is shown with a band.
 */

/**
 * Loops drawn over the hook for one single crochet, in circumferences of hook and yarn together. Derived: about 3.2 fits two
 * published hand measurements (windchilde.com/bluedepth, 53 in of yarn in 5 in of row on a 5 mm hook in medium yarn;
 * interweave.com, "Yarn usage: knitting vs. crochet", 400 stitches in 19 g).
 */
export const SC_LOOPS = 3.2;

/** Per cent by which a rough estimate may be out either way (common practice for figures from few measurements). */
export const ROUGH_BAND = 25;

/**
 * Yarn in a stitch by its size: so many times its width across, and so many times the height of its row up. One pair serves
 * all stitches. Fitted by least squares of the logarithms to six published figures: yarn in 5 in of row and in 25 square
 * inches in sc, hdc and dc (windchilde.com/bluedepth, stitch width as for its hook and yarn); hdc to sc by weight over 400
 * stitches of measured size (interweave.com, “Yarn usage: knitting vs. crochet”); heights of strips of equal yarn in sc, dc
 * and tr (thesnugglery.net). The fit and its residuals stand in the tests.
 */
export const STITCH_ACROSS = 2.32;
export const STITCH_UP = 7.52;

/**
 * Per cent by which an estimate from a gauge may be out either way: the 95 % limits of one more measurement about that fit
 * (residuals of 4.7 % with 4 degrees of freedom).
 */
export const GAUGED_BAND = 15;

/** The scale in a kitchen shows whole grams (common practice). */
export const SCALE_STEP = 1;

/**
 * Per cent by which finished motifs of one kind, one maker and one yarn differ from each other, as a standard deviation (common
 * practice: a few per cent; no measurement is published, the number is our own choice), and how many weighings of hers it
 * counts for beside what she weighs.
 */
export const USUAL_SPREAD = 4;
export const SPREAD_COUNTS = 4;

/**
 * Per cent by which makers differ in the yarn that the same motif takes them, as a standard deviation (common practice: hands
 * differ; no measurement is published, the number is our own choice), and how many makers it counts for beside those who weighed.
 */
export const MAKERS_DIFFER = 12;
export const DIFFER_COUNTS = 4;

/** The share of shopping lists that are to be enough, where yarn is bought by what is left open. */
export const SURE_SHARE = 0.95;

/** About 95 % of a normal distribution lie within two standard deviations either way. */
export const LIMITS_95 = 2;

/**
 * Per cent by which the yarn of a stitch of another height may be off that of a weighed one: the 95 % limits of the residuals
 * of 4.7 % of the fit above.
 */
export const OTHER_STITCH_BAND = 9;

/** Yarn in a length of chain, over that length: 25.5 in of yarn in 5 in of chain (windchilde.com/bluedepth; it prints 4.8 too). */
export const CHAIN_PER_LENGTH = 5.1;

/** Per cent of yarn bought beyond what the sum says (common practice). */
export const USUAL_RESERVE = 10;

/** The least tail left at an end, in metres: 6 in, of a published 4–6 in (creativecrochetcorner.com, "How to end off"). */
export const TAIL = 0.15;

/** A strand to sew with, in metres: longer ones fray and tangle (common practice, an arm’s length and a half). */
export const SEWING_STRAND = 1.5;

/** Separate tails of a motif worked from one unbroken length: its start and its finish (common practice). */
export const ENDS_A_MOTIF = 2;

/** Tall stitches that one corner-to-corner block is reckoned as: three, and the chain that stands as one (common practice). */
export const STITCHES_A_BLOCK = 4;

/**
 * Inches of yarn in an inch of row, as one maker measured them on a 5 mm hook in medium yarn (windchilde.com/bluedepth).
 * For the chain she prints 25.5 in for 5 in, which is 5.1, and beside it 4.8: the page contradicts itself.
 */
export const YARN_PER_LENGTH = {
  sc: 10.6,
  chain: CHAIN_PER_LENGTH,
  chainOtherwise: 4.8,
} as const satisfies Record<string, number>;

/**
 * A stitch's width over hook and yarn thickness together. Derived: medium yarn, 11–14 single crochet over 4 in on 5.5–6.5 mm
 * with 9–12 wraps per inch (US yarn trade association's standard yarn weight system), the middles taken.
 */
export const WIDTH_OF_LOOP = 101.6 / 12.5 / (6 + 25.4 / 10.5);

/** How a seam is sewn where nobody measured hers: in strands of the yarn (common practice, no published hand figure). */
export const SEAM_STRANDS = {
  /** How far in from each edge the needle goes. */
  bite: 1,
  /** How thick the fabric is at its edge. */
  fabric: 1.5,
} as const satisfies Record<string, number>;

/** The yarn that is assumed where none is named: medium, the middle of its published 9–12 wraps per inch. */
export const USUAL_YARN = {
  thickness: { wpi: 10.5, category: 4 },
  assumed: 'Medium yarn (category 4, about 10.5 wraps per inch), as none was given.',
} as const satisfies { readonly thickness: Record<string, number>; readonly assumed: string };
