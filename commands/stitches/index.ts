import { command } from '../../src/chat/command.ts';
import { row } from './row.ts';

export const stitches = command({
  name: 'stitches',
  says: 'Stitch counts: a row, a check of your counts, even spacing, repeats',
  questions: [row],
});
