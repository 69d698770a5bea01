/** The command about one’s settings, and what is kept of one. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { change } from './change.ts';
import { erase } from './erase.ts';
import { exportMine } from './export.ts';
import { importMine } from './import.ts';
import { server } from './server.ts';
import { show } from './show.ts';

export const settings = command({
  name: 'settings',
  says: 'Your units and terms, and everything that is kept about you',
  advice: ADVICE,
  questions: [show, change, server, exportMine, importMine, erase],
});
