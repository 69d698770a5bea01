/** The command about where one is. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { at } from './at.ts';
import { back } from './back.ts';
import { counted } from './counted.ts';
import { finished } from './finished.ts';
import { next } from './next.ts';
import { show } from './show.ts';
import { undo } from './undo.ts';

export const progress = command({
  name: 'progress',
  says: 'Where you are: rows, motifs, what comes next, what is still to come',
  about: 'own',
  questions: [next, back, at, counted, finished, show, undo],
  advice: ADVICE,
});
