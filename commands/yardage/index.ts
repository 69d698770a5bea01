/** The command about yarn. */
import { command } from '../../src/chat/command.ts';
import { left } from './left.ts';
import { makes } from './makes.ts';
import { rough } from './rough.ts';
import { swap } from './swap.ts';
import { swatch } from './swatch.ts';
import { weighed } from './weighed.ts';

export const yardage = command({
  name: 'yardage',
  says: 'How much yarn: from a weighed motif or swatch, a rough guess, what is left, another yarn',
  about: 'craft',
  questions: [weighed, swatch, rough, left, makes, swap],
});
