/** The command about what a class makes along with its teacher, everybody her own. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { calendar } from './calendar.ts';
import { done } from './done.ts';
import { due } from './due.ts';
import { join } from './join.ts';
import { mine } from './mine.ts';
import { open } from './open.ts';
import { pace } from './pace.ts';
import { part } from './part.ts';
import { plan } from './plan.ts';
import { close, handover, history, leave, list, undo } from './running.ts';
import { save } from './save.ts';
import { show } from './show.ts';
import { stuck } from './stuck.ts';
import { troubles } from './troubles.ts';

export const along = command({
  name: 'along',
  says: 'A make-along in parts: everybody makes her own, with her own numbers, after a teacher’s',
  questions: [
    open,
    plan,
    part,
    list,
    join,
    leave,
    mine,
    save,
    done,
    stuck,
    show,
    pace,
    calendar,
    troubles,
    due,
    handover,
    close,
    undo,
    history,
  ],
  advice: ADVICE,
});
