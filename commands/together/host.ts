/** The command of whoever hosts a blanket that a group makes, beside the one that everybody uses: a server can hide it from others. */
import { command } from '../../src/chat/command.ts';
import { ADVICE } from '../shared/advice.ts';
import { announce } from './announce.ts';
import { assemble } from './assemble.ts';
import { accept, sentBack } from './handing-in.ts';
import { parcels } from './holding.ts';
import { bar } from './keeping-order.ts';
import { close, reopen } from './running.ts';
import { remind, shares } from './sharing.ts';
import { invite } from './taking-part.ts';

export const host = command({
  name: 'host',
  says: 'For whoever runs a group blanket: accept motifs, share out, remind, put together',
  questions: [accept, sentBack, invite, shares, remind, parcels, assemble, close, reopen, announce, bar],
  advice: ADVICE,
});
