import { opt } from '../../src/chat/options.ts';

/** What a button carries, so that pressing it twice counts once. */
export const fromRow = () =>
  opt.whole('Only if this is the last row done: so that nothing is counted twice', {
    min: 0,
    max: 800,
    example: '4',
  });
