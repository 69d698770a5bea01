/** The command about a blanket that a group makes. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { board } from './board.ts';
import { calendar } from './calendar.ts';
import { handin } from './handing-in.ts';
import { mine, yarn } from './holding.ts';
import { handover } from './keeping-order.ts';
import { maker } from './maker.ts';
import { handout } from './handout.ts';
import { motif } from './motif.ts';
import { open } from './open.ts';
import { giveback, pledge } from './pledging.ts';
import { history, list, undo } from './running.ts';
import { pace } from './pace.ts';
import { join, keep, leave } from './taking-part.ts';

export const together = command({
  name: 'together',
  says: 'A blanket made by a group: quotas, pledges, hand-ins, a board that is never wrong',
  questions: [
    open,
    board,
    list,
    join,
    leave,
    pledge,
    giveback,
    motif,
    mine,
    maker,
    keep,
    handin,
    pace,
    calendar,
    handout,
    yarn,
    handover,
    undo,
    history,
  ],
  advice: ADVICE,
});
