/** Where she is in her lessons. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { count, when } from '../../src/core/base/reader.ts';
import { LESSONS } from '../../src/lessons/index.ts';
import { keptOf, nextDue, openTask, stateOf } from '../../src/projects/lessons.ts';
import { action } from '../shared/actions.ts';
import { taskActions, taskData, taskLines } from './words.ts';

export const where = question({
  name: 'where',
  says: 'Which task is open, what you know, and what comes back when',
  options: {},
  example: '',
  refused: { line: 'row:9', option: 'row' },
  before: ['/lesson start lesson:growing'],
  asked: {
    ways: ['where-am-i lesson', 'done lesson'],
    also: 'mine which done',
    not: 'row round motif set-down next',
    phrases: ['where am I in my lessons'],
  },
  async answer(_options, { maker, projects, now }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const task = openTask(doc);
    const of = (state: string) =>
      LESSONS.filter(({ name }) => stateOf(keptOf(doc, name), now) === state).map(({ title }) => title);
    const known = of('known');
    const due = of('due');
    const resting = of('resting');
    const first = nextDue(doc);
    return {
      headline: task
        ? `You are at “${task.lesson.title}”, with ${count(task.triesLeft, 'try', 'tries')} left.`
        : due.length > 0
          ? `No task is open; ${due.length === 1 ? 'one lesson is' : `${due.length} lessons are`} to be practised again.`
          : 'No task is open.',
      lines: gather(
        task && taskLines(task),
        due.length > 0 && `To be practised again: ${due.join('; ')}.`,
        resting.length > 0 &&
          first !== undefined &&
          `Resting: ${resting.join('; ')}. The first comes back on ${when(first.slice(0, 'YYYY-MM-DD'.length))}.`,
        known.length > 0 && `Known: ${known.join('; ')}.`,
      ),
      data: { ...(task ? { task: taskData(task) } : {}), known: known.length, due: due.length },
      actions: task ? taskActions() : [action('What is next', 'lesson next', {})],
      private: true,
    };
  },
});
