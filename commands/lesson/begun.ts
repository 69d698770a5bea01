/** A lesson begun: its idea, one worked example, and the first task. */
import { gather, type Action, type Answer } from '../../src/chat/answer.ts';
import { readLine } from '../../src/chat/line.ts';
import type { Context } from '../../src/chat/context.ts';
import type { Lesson } from '../../src/lessons/lesson.ts';
import { sayAnswer } from '../../src/lessons/typed-answer.ts';
import { drawLesson } from '../../src/pictures/lesson.ts';
import { begin, lacking } from '../../src/projects/lessons.ts';
import { taskActions, taskData, taskLines, waysOf } from './words.ts';

/** Begins it in her document and tells it. `again`: she knows its idea, and only wants another task. */
export async function beginLesson(
  { maker, projects, reader, once }: Context,
  lesson: Lesson,
  again = false,
): Promise<Answer> {
  const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
    const first = lacking(doc, lesson).map(({ title }) => title);
    return { ...begin(doc, lesson, waysOf(reader)), lesson: lesson.name, first };
  });
  const task = { ...tell, lesson };
  const { given } = lesson.example;
  const { practice } = lesson;
  const solved = practice.solve(given);
  const drawing = lesson.draws && !again ? drawLesson(lesson.draws, reader) : undefined;
  return {
    headline: again ? `${lesson.title}, once more.` : `${lesson.title}. ${lesson.idea}`,
    lines: gather(
      !again &&
        `For example: ${practice.says(given)} ${capital(sayAnswer(practice.asks(given), solved.value))}.`,
      taskLines(task),
      tell.first.length > 0 && !again && `Good to know first: ${tell.first.join('; ')}.`,
    ),
    data: { task: taskData(task) },
    working: again ? [] : solved.working,
    files: drawing ? [{ name: `lesson-${lesson.name}.svg`, says: drawing.alt, content: drawing.svg }] : [],
    actions: gather(taskActions(), lesson.example.figure !== undefined && exampleAction(lesson)),
    private: true,
  };
}

/** Asks the question that the example is the answer of. */
function exampleAction({ example }: Lesson): Action | undefined {
  const { words, options } = readLine(`/${example.line}`);
  return { label: 'The example, asked', question: words.join(' '), options };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
