/** Which lessons are there, and how does each stand? */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { count } from '../../src/core/base/reader.ts';
import { LESSONS } from '../../src/lessons/index.ts';
import { keptOf, stateOf } from '../../src/projects/lessons.ts';
import { action } from '../shared/actions.ts';
import { STATE_WORDS } from './words.ts';

export const list = question({
  name: 'list',
  says: 'All lessons in their order, what each needs first, and how it stands with you',
  options: {},
  example: '',
  refused: { line: 'lesson:all', option: 'lesson' },
  asked: {
    ways: ['which lesson', 'lesson', 'show lesson', 'list lesson'],
    also: 'which show mine list all',
    not: 'motif border ball gauge new next set-down row round yours',
    phrases: ['which lessons are there', 'show me the lessons'],
  },
  async answer(_options, { maker, projects, now }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const lessons = LESSONS.map(({ name, title, needs }) => ({
      name,
      says: title,
      needs,
      state: stateOf(keptOf(doc, name), now),
    }));
    const due = lessons.filter(({ state }) => state === 'due');
    const known = lessons.filter(({ state }) => state === 'known');
    return {
      headline: `There are ${count(lessons.length, 'lesson')}, from the first square to the border${known.length > 0 ? `; you know ${known.length}` : ''}${due.length > 0 ? `, and ${due.length === 1 ? 'one is' : `${due.length} are`} to be practised again` : ''}.`,
      lines: lessons.map(
        ({ name, says, needs, state }) =>
          `${name}: ${says}${state === 'new' ? '' : ` (${STATE_WORDS[state]})`}${needs.length > 0 ? `; after ${needs.join(', ')}` : ''}`,
      ),
      data: { lessons },
      choose: {
        question: 'lesson start',
        option: 'lesson',
        says: 'Choose a lesson …',
        choices: lessons.map(({ name, says }) => ({ value: name, label: says })),
      },
      actions: [action('What is next', 'lesson next', {})],
      private: true,
    };
  },
});
