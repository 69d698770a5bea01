/** An answer to the task that is open: right, or which slip gives just that. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { count } from '../../src/core/base/reader.ts';
import { writeStep } from '../../src/core/base/working.ts';
import { judge } from '../../src/lessons/lesson.ts';
import { readAnswer, sayAnswer } from '../../src/lessons/typed-answer.ts';
import { note, openTask } from '../../src/projects/lessons.ts';
import { lessonNamed } from '../../src/lessons/index.ts';
import { action } from '../shared/actions.ts';
import { backToRow, noTask, returnWords, taskActions } from './words.ts';

export const answer = question({
  name: 'answer',
  bare: 'answer',
  says: 'Your answer to the task: whether it is right, and if not, what probably happened',
  options: {
    answer: opt.text('What you found, a number or a stitch: 19, 18.3cm, dc', { max: 60, example: '19' }),
  },
  example: 'answer:19',
  refused: { line: 'answer:soon', option: 'answer' },
  before: ['/lesson start lesson:growing'],
  changes: true,
  asked: {
    ways: ['my-answer'],
    also: 'row stitch motif',
    not: 'private public answers settings',
    reports: true,
    marks: {
      answer: {
        asks: 'What did you find?',
        capture:
          /\b(?:my answer(?: is)?|(?:the|i think the) answer is|i (?:get|got) as (?:the )?answer)\s*[:=]?\s*(.{1,60}?)[.!]?$/iu,
      },
    },
    phrases: ['my answer is 19', 'the answer is 19'],
  },
  form: { title: 'Your answer', asks: ['answer'] },
  async answer({ answer: typed }, { maker, projects, reader, now, once }): Promise<Answer> {
    const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const task = openTask(doc);
      if (!task) throw noTask();
      const value = readAnswer(task.lesson.practice.asks(task.given), typed, reader);
      const { right, slip } = judge(task.lesson, task.given, value);
      return {
        value,
        lesson: task.lesson.name,
        given: task.given,
        right,
        slip: slip?.key ?? null,
        ...note(doc, task, right, now),
      };
    });
    const lesson = lessonNamed(tell.lesson);
    if (!lesson) throw noTask();
    const { practice } = lesson;
    const { given, right, triesLeft } = tell;
    const over = right || triesLeft === 0;
    const solved = practice.solve(given);
    const result = sayAnswer(practice.asks(given), solved.value);
    const slip = practice.slips.find(({ key }) => key === tell.slip);
    const what = slip?.says(given) ?? `Not that. Check first: ${practice.first(given)}`;
    return {
      headline: right
        ? `Right: ${result}.`
        : over
          ? `It is ${result}, not ${sayAnswer(practice.asks(given), tell.value)}. ${slip?.says(given) ?? 'It is reckoned so:'}`
          : what,
      lines: gather(
        over && !right && solved.working.map((step) => `${step.label}: ${writeStep(step, reader)}.`),
        over ? returnWords(tell.kept) : `${count(triesLeft, 'try', 'tries')} left: ${practice.says(given)}`,
      ),
      data: { right, slip: tell.slip, tries_left: triesLeft },
      working: over ? solved.working : [],
      actions: over
        ? [
            action('Another like it', 'lesson start', { lesson: lesson.name, practice: true }),
            action('Next lesson', 'lesson next', {}),
            ...backToRow(doc),
          ]
        : taskActions(),
      private: true,
    };
  },
});
