/** Options that the questions about progress share. */
import { opt } from '../../src/chat/options.ts';
import { MOST_ROWS_WORKED } from '../../src/core/base/limits.ts';

/** What a button carries, so that pressing it twice counts once. */
export const fromRow = () =>
  opt.whole('Only if this is the last row done: so that nothing is counted twice', {
    min: 0,
    max: MOST_ROWS_WORKED,
    example: '4',
  });
