/** A lesson begun: its idea, one worked example, and the first task. */
import { gather, type Action, type Answer } from '../../src/chat/answer.ts';
import { readLine } from '../../src/chat/line.ts';
import type { Context } from '../../src/chat/context.ts';
import { exampleFor, type Example, type Lesson } from '../../src/lessons/lesson.ts';
import { sayAnswer } from '../../src/lessons/typed-answer.ts';
import { drawLesson } from '../../src/pictures/lesson.ts';
import { begin, lacking, openTask } from '../../src/projects/lessons.ts';
import { backToRow, taskActions, taskData, taskLines, waysOf } from './words.ts';

/** Begins it in her document and tells it. `again`: she knows its idea, and only wants another task. */
export async function beginLesson(
  { maker, projects, reader, once }: Context,
  lesson: Lesson,
  again = false,
): Promise<Answer> {
  const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
    const first = lacking(doc, lesson).map(({ title }) => title);
    const before = openTask(doc)?.lesson;
    return {
      ...begin(doc, lesson, waysOf(reader)),
      lesson: lesson.name,
      first,
      setDown: before !== undefined && before.name !== lesson.name ? before.title : null,
    };
  });
  const task = { ...tell, lesson };
  const example = exampleFor(lesson, reader);
  const { given } = example;
  const { practice } = lesson;
  const solved = practice.solve(given);
  const drawing = lesson.draws && !again ? drawLesson(lesson.draws, reader) : undefined;
  return {
    headline: again ? `Once more: ${asSentence(lesson.title)}` : `${asSentence(lesson.title)} ${lesson.idea}`,
    lines: gather(
      !again &&
        `For example: ${practice.says(given)} ${capital(sayAnswer(practice.asks(given), solved.value))}.`,
      taskLines(task),
      tell.setDown !== null && `“${tell.setDown}” is set down for it.`,
      tell.first.length > 0 && !again && `Good to know first: ${tell.first.join('; ')}.`,
    ),
    data: { task: taskData(task) },
    working: again ? [] : solved.working,
    files: drawing ? [{ name: `lesson-${lesson.name}.svg`, says: drawing.alt, content: drawing.svg }] : [],
    actions: gather(taskActions(), example.figure !== undefined && exampleAction(example), backToRow(doc)),
    private: true,
  };
}

/** Asks the question that the example is the answer of. */
function exampleAction({ line }: Example): Action {
  const { words, options } = readLine(`/${line}`);
  return { label: 'The example, asked', question: words.join(' '), options };
}

/** A title may be a question. */
const asSentence = (title: string) => (/[.?!]$/.test(title) ? title : `${title}.`);

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
