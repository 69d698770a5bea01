/** The command about borders. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { even } from './even.ts';
import { rounds } from './rounds.ts';
import { spacing } from './spacing.ts';

export const border = command({
  name: 'border',
  says: 'A border that lies flat: stitches along each side, and round by round',
  advice: ADVICE,
  about: 'craft',
  questions: [spacing, rounds, even],
});
