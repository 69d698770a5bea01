/** Options that the questions about yarn share. */
import { opt } from '../../src/chat/options.ts';
import { MOST_ROWS } from '../../src/core/base/limits.ts';
import { USUAL_RESERVE } from '../../src/standards/consumption.ts';

export const motifs = () =>
  opt
    .whole({ says: 'How many motifs; one if not given', assumed: 'One motif, as no number was given.' })
    .default(1);

export const reserve = () =>
  opt
    .percent({
      says: `Per cent to buy beyond the sum; ${USUAL_RESERVE} if not given`,
      assumed: `${USUAL_RESERVE} % in reserve, as is usual, as none was given.`,
    })
    .default(USUAL_RESERVE);

export const otherSize = () =>
  opt
    .whole('Blocks along the other side, or rows of a flat piece', { max: MOST_ROWS, example: '8' })
    .optional();
