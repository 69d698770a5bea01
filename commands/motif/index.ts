/** The command about motifs of one’s own. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { chart } from './chart.ts';
import { choose } from './choose.ts';
import { colours } from './colours.ts';
import { define } from './define.ts';
import { words } from './instructions.ts';
import { handout } from './handout.ts';
import { list } from './list.ts';
import { remove } from './remove.ts';
import { show } from './show.ts';
import { undo } from './undo.ts';
import { weigh } from './weigh.ts';

export const motif = command({
  name: 'motif',
  says: 'Motifs of your own: saved, in words, drawn, weighed',
  about: 'own',
  questions: [define, show, list, choose, words, chart, handout, colours, weigh, remove, undo],
  advice: ADVICE,
});
