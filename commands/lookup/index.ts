/** The command about published tables. */
import { command } from '../../src/chat/command.ts';
import { care } from './care.ts';
import { hook } from './hook.ts';
import { size } from './size.ts';
import { term } from './term.ts';
import { yarn } from './yarn.ts';

export const lookup = command({
  name: 'lookup',
  says: 'Published tables: terms, hooks, yarn weights, usual sizes, and what to take care of',
  about: 'craft',
  questions: [term, hook, yarn, size, care],
});
