/** The command about a blanket that a group makes. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { assemble } from './assemble.ts';
import { board } from './board.ts';
import { accept, handin, sentBack } from './handing-in.ts';
import { mine, parcels, yarn } from './holding.ts';
import { bar, handover } from './keeping-order.ts';
import { open } from './open.ts';
import { pledge, release } from './pledging.ts';
import { close, history, list, reopen, undo } from './running.ts';
import { pace } from './pace.ts';
import { remind, shares } from './sharing.ts';
import { invite, join, keep, leave } from './taking-part.ts';

export const together = command({
  name: 'together',
  says: 'A blanket made by a group: quotas, pledges, hand-ins, a board that is never wrong',
  questions: [
    open,
    board,
    list,
    join,
    leave,
    invite,
    pledge,
    release,
    mine,
    keep,
    handin,
    accept,
    sentBack,
    shares,
    pace,
    remind,
    parcels,
    yarn,
    assemble,
    close,
    reopen,
    handover,
    bar,
    undo,
    history,
  ],
  advice: ADVICE,
});
