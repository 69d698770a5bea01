/** A lesson begun by its name. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { beginLesson } from './begun.ts';
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
    ways: ['new lesson'],
    also: 'which mine',
    not: 'next set-down list',
    reports: true,
    marks: { lesson: { asks: 'Which lesson?', never: true }, practice: { never: true } },
    phrases: ['start a lesson'],
  },
  answer: ({ lesson, practice }, context): Promise<Answer> =>
    beginLesson(context, lessonCalled(lesson), practice),
});
