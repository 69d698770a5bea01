/** What several answers of lessons say: the task that is open, how a lesson stands, when it comes back. */
import type { Action, Answer } from '../../src/chat/answer.ts';
import { count, when, type Reader } from '../../src/core/base/reader.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { sameName, suggest } from '../../src/core/base/nearest-name.ts';
import { clip } from '../../src/core/base/quantity.ts';
import { LESSONS, lessonNamed } from '../../src/lessons/index.ts';
import type { Lesson } from '../../src/lessons/lesson.ts';
import { describeAsked } from '../../src/lessons/typed-answer.ts';
import { timesToKnow, type LessonState, type OpenTask } from '../../src/projects/lessons.ts';
import type { LessonKept, MakerDoc } from '../../src/projects/schema.ts';
import { opt } from '../../src/chat/options.ts';
import { action, form, lineOf } from '../shared/actions.ts';

/** A lesson's name; offered with its title. */
export const lessonOption = (example: string) =>
  opt.text(
    {
      says: 'Which lesson, by its name',
      suggest: (typed) =>
        LESSONS.filter(({ name, title }) =>
          `${name} ${title}`.toLowerCase().includes(typed.toLowerCase()),
        ).map(({ name, title }) => ({ value: name, label: title })),
    },
    { max: 60, example },
  );

/** The lesson that is called so, by its name or its title. Throws a Problem that names the nearest. */
export function lessonCalled(typed: string): Lesson {
  const asked = typed.trim().toLowerCase();
  const found =
    lessonNamed(asked.replaceAll(' ', '-')) ?? LESSONS.find(({ title }) => title.toLowerCase() === asked);
  if (found) return found;
  throw new Problem('lesson-unknown', `There is no lesson called ${clip(typed)}.`, {
    option: 'lesson',
    hint: suggest(
      asked,
      LESSONS.map(({ name }) => name),
      () => `See them all with ${lineOf('lesson list', {})}.`,
    ),
  });
}

/** Refuses what needs an open task. */
export const noTask = (): Problem =>
  new Problem('no-task-open', 'No task is open.', {
    hint: `Begin with ${lineOf('lesson next', {})}, or choose from ${lineOf('lesson list', {})}.`,
  });

export const STATE_WORDS: Readonly<Record<LessonState, string>> = {
  new: 'not begun',
  begun: 'begun',
  due: 'to be practised again',
  resting: 'resting',
  known: 'known',
};

/** The task, for programs. */
export const taskData = ({ lesson, given }: OpenTask) => ({
  lesson: lesson.name,
  says: lesson.practice.says(given),
  asks: describeAsked(lesson.practice.asks(given)),
});

/** The task in a line. */
export const taskLines = ({ lesson, given }: OpenTask): string[] => [
  `Your turn: ${lesson.practice.says(given)}`,
];

/** What can be done with a task that is open. */
export const taskActions = (): NonNullable<Answer['actions']> => [
  form('Answer', 'lesson answer', {}, ['answer']),
  action('A hint', 'lesson hint', {}),
  action('Set it down', 'lesson stop', {}),
];

/** Where she came from: the motif that is on her hook. */
export const backToRow = ({ current, progress }: Pick<MakerDoc, 'current' | 'progress'>): Action[] =>
  current.motif !== undefined &&
  progress.some(({ motif, row }) => row > 0 && sameName(motif, current.motif ?? ''))
    ? [action('Back to my row', 'progress show', { motif: current.motif })]
    : [];

/** When it comes back. */
export const returnWords = (kept: LessonKept): string =>
  kept.due === undefined
    ? 'You have had it right often enough: it does not come back by itself.'
    : `It comes back on ${when(kept.due.slice(0, 'YYYY-MM-DD'.length))}; ${count(timesToKnow(kept), 'time')} more and you know it.`;

/** Her ways, in which numbers are drawn. */
export const waysOf = ({ units, terms }: Reader): Pick<Reader, 'units' | 'terms'> => ({ units, terms });
