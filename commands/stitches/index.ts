/** The command about stitch counts. */
import { command } from '../../src/chat/command.ts';
import { check } from './check.ts';
import { repeat } from './repeat.ts';
import { row } from './row.ts';
import { spread } from './spread.ts';
import { which } from './which.ts';

export const stitches = command({
  name: 'stitches',
  says: 'Stitch counts: a row, which row you are on, a check of your counts, even spacing, repeats',
  about: 'craft',
  questions: [row, which, check, spread, repeat],
});
