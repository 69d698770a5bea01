/** The lesson that is best done now. */
import { type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { when } from '../../src/core/base/reader.ts';
import { keptOf, nextDue, pickNext } from '../../src/projects/lessons.ts';
import { lineOf } from '../shared/actions.ts';
import { beginLesson } from './begun.ts';

export const next = question({
  name: 'next',
  says: 'The lesson that is best done now: what is to be practised again, else what comes next',
  options: {},
  example: '',
  refused: { line: 'lesson:first', option: 'lesson' },
  changes: true,
  asked: {
    ways: ['next lesson', 'lesson next which'],
    also: 'mine which next',
    not: 'row round motif border ball gauge list set-down',
    reports: true,
    phrases: ['next lesson please', 'what is the next lesson'],
  },
  async answer(_options, context): Promise<Answer> {
    const { maker, projects, now } = context;
    const doc = await projects.maker(maker.id, maker.name);
    const lesson = pickNext(doc, now);
    if (lesson) return beginLesson(context, lesson, (keptOf(doc, lesson.name)?.box ?? 0) > 0);
    const due = nextDue(doc);
    throw new Problem(
      'nothing-due',
      due === undefined
        ? 'You know all lessons.'
        : `Nothing is to be practised now; the first comes back on ${when(due.slice(0, 'YYYY-MM-DD'.length))}.`,
      { hint: `Any lesson can be practised before: ${lineOf('lesson start', { lesson: 'growing' })}.` },
    );
  },
});
