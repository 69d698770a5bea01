/** The command that teaches. */
import { command } from '../../src/chat/command.ts';
import { answer } from './answer.ts';
import { hint } from './hint.ts';
import { list } from './list.ts';
import { next } from './next.ts';
import { start } from './start.ts';
import { stop } from './stop.ts';
import { where } from './where.ts';

export const lesson = command({
  name: 'lesson',
  says: 'Lessons with tasks of your own: shown, tried, and told which slip it was',
  about: 'own',
  questions: [list, start, answer, hint, next, where, stop],
});
