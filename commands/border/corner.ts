/** The option of the border questions for the stitches in a corner. */
import { opt } from '../../src/chat/options.ts';

export const corner = () =>
  opt
    .whole(
      {
        says: 'Stitches in each corner; 3 if not given',
        assumed: 'Three in each corner, as none were given.',
      },
      { max: 15, example: '3' },
    )
    .default(3);
