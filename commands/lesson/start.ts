/** A lesson begun by its name. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { beginLesson } from './begun.ts';
import { SENSES_OF_TOPICS, TOPICS } from './topics.ts';
import { lessonCalled, lessonOption } from './words.ts';

export const start = question({
  name: 'start',
  bare: 'lesson',
  says: 'Begins a lesson: its idea, an example, and a task with numbers of your own',
  options: {
    lesson: lessonOption('growing'),
    practice: opt.yesno('Only another task, without the idea and the example').default(false),
  },
  example: 'lesson:growing',
  refused: { line: 'lesson:weaving', option: 'lesson' },
  changes: true,
  asked: {
    ways: ['new lesson', `lesson ${SENSES_OF_TOPICS}`],
    also: 'which mine how-to count check row round stitch',
    not: 'next set-down list knitting',
    reports: true,
    // Asked how a thing is done, the lesson on it is the answer.
    changesBy: [],
    marks: { lesson: { asks: 'Which lesson?', choices: TOPICS }, practice: { never: true } },
    phrases: ['start a lesson', 'teach me how to read a gauge', 'I want to learn about borders'],
  },
  answer: ({ lesson, practice }, context): Promise<Answer> =>
    beginLesson(context, lessonCalled(lesson), practice),
});
