/** The task that is open, set down. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { stop as setDown } from '../../src/projects/lessons.ts';
import { action } from '../shared/actions.ts';

export const stop = question({
  name: 'stop',
  says: 'Sets the open task down; the lesson stays where it is',
  options: {},
  example: '',
  refused: { line: 'lesson:growing', option: 'lesson' },
  before: ['/lesson start lesson:growing'],
  changes: true,
  asked: {
    ways: ['set-down lesson'],
    also: 'mine',
    not: 'motif blanket group row next list',
    reports: true,
    phrases: ['stop the lesson'],
  },
  async answer(_options, { maker, projects, once }): Promise<Answer> {
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => ({
      title: setDown(doc)?.lesson.title ?? null,
    }));
    return {
      headline:
        tell.title === null
          ? 'No task was open.'
          : `“${tell.title}” is set down. It stays where it is, and comes with other numbers next time.`,
      actions: [action('What is next', 'lesson next', {})],
      private: true,
    };
  },
});
