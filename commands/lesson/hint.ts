/** A hint: the first step, then the formula; never the result. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { formulaText } from '../../src/core/base/working.ts';
import { TRIES } from '../../src/lessons/boxes.ts';
import { noteHint, openTask } from '../../src/projects/lessons.ts';
import { noTask, taskActions, taskData, taskLines } from './words.ts';

export const hint = question({
  name: 'hint',
  says: 'A hint for the task that is open: the first step, then the formula',
  options: {},
  example: '',
  refused: { line: 'more:yes', option: 'more' },
  before: ['/lesson start lesson:growing'],
  changes: true,
  asked: {
    ways: ['hint', 'need hint'],
    also: 'need mine lesson',
    not: 'motif border ball row',
    reports: true,
    phrases: ['give me a hint'],
  },
  async answer(_options, { maker, projects, reader, once }): Promise<Answer> {
    const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (changed) => {
      const task = openTask(changed);
      if (!task) throw noTask();
      noteHint(changed, task);
      return { hints: task.hints, tried: task.triesLeft < TRIES };
    });
    const task = openTask(doc);
    if (!task) throw noTask();
    const { practice } = task.lesson;
    const steps = practice.solve(task.given).working;
    const formulas = steps.map((step) => `${step.label}: ${formulaText(step, reader)}`);
    const NO_MORE = 'There is no further hint than this';
    const first = practice.first(task.given);
    const asked = tell.hints > 0 || tell.tried;
    return {
      headline:
        formulas.length > 0 && asked
          ? `${tell.hints > 1 ? NO_MORE : 'It is reckoned so'}: ${formulas.join('; ')}.`
          : `${tell.hints > 0 ? NO_MORE : 'Begin here'}: ${first}`,
      lines: taskLines(task),
      data: { task: taskData(task) },
      actions: taskActions(),
      private: true,
    };
  },
});
