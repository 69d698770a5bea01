/** The command about a blanket of one’s own. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { change } from './change.ts';
import { colours } from './colours.ts';
import { fit } from './fit.ts';
import { handout } from './handout.ts';
import { kinds } from './kinds.ts';
import { layout } from './layout.ts';
import { materials } from './materials.ts';
import { picture } from './picture.ts';
import { choose, list, remove, undo } from './saved.ts';
import { scale } from './scale.ts';
import { show } from './show.ts';
import { start } from './start.ts';
import { swap } from './swap.ts';

export const blanket = command({
  name: 'blanket',
  says: 'A blanket of your own: its layout, what it takes, how far your yarn goes, another size',
  about: 'own',
  questions: [
    start,
    show,
    kinds,
    layout,
    swap,
    colours,
    change,
    materials,
    fit,
    scale,
    picture,
    handout,
    list,
    choose,
    remove,
    undo,
  ],
  advice: ADVICE,
});
