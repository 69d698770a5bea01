/** The command of whoever hosts a blanket that a group makes: a server can hide it from everybody else. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { assemble } from '../together/assemble.ts';
import { accept, sentBack } from '../together/handing-in.ts';
import { parcels } from '../together/holding.ts';
import { bar } from '../together/keeping-order.ts';
import { close, reopen } from '../together/running.ts';
import { remind, shares } from '../together/sharing.ts';
import { invite } from '../together/taking-part.ts';

export const host = command({
  name: 'host',
  says: 'For whoever runs a group blanket: accept motifs, share out, remind, put together',
  questions: [accept, sentBack, invite, shares, remind, parcels, assemble, close, reopen, bar],
  advice: ADVICE,
});
