/** Blanks that follow each other in what was typed. */

/** More than this in a row are nobody's spacing; expressions that look for blanks take long over thousands of them. */
const MOST = 20;
const LONG_RUN = new RegExp(`\\s{${MOST},}`, 'g');

/**
 * The text with long runs of blanks made one: a line break where there is one among them.
 *
 * @example
 * cutBlanks('moss' + ' '.repeat(2000) + 'sand') // → 'moss sand'
 */
export const cutBlanks = (typed: string): string =>
  typed.length < MOST ? typed : typed.replace(LONG_RUN, (run) => (run.includes('\n') ? '\n' : ' '));
