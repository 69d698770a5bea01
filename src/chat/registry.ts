/** Every command there is, and how a question is found by its words. */
import { Problem, QUESTION } from '../core/base/problem.ts';
import { clip } from '../core/base/quantity.ts';
import type { Command, Question } from './command.ts';
import { findNearest } from '../core/base/nearest-name.ts';

export interface Route {
  readonly command: Command;
  readonly question: Question;
  /** `stitches row` */
  readonly path: string;
}

export class Registry {
  readonly routes: readonly Route[];
  private readonly byPath: ReadonlyMap<string, Route>;

  constructor(readonly commands: readonly Command[]) {
    this.routes = commands.flatMap((command) =>
      command.questions.map((question) => ({
        command,
        question,
        path: question.name === undefined ? command.name : `${command.name} ${question.name}`,
      })),
    );
    this.byPath = new Map(this.routes.map((found) => [found.path, found]));
    if (this.byPath.size !== this.routes.length) throw new Error('two questions have the same words');
  }

  get(path: string): Route | undefined {
    return this.byPath.get(path);
  }

  /** Finds a question by the words of a line. Throws a Problem that names the nearest one. */
  find(words: readonly string[]): Route {
    const path = words.join(' ');
    const found = this.byPath.get(path);
    if (found) return found;
    const command = this.commands.find(({ name }) => name === words[0]);
    const near = findNearest(path, [...this.byPath.keys()]);
    const questions = command?.questions.map(({ name }) => `/${command.name} ${name ?? ''}`.trim());
    throw new Problem(
      'no-such-question',
      path === '' ? 'There is no question in that line.' : `There is no question /${clip(path)}.`,
      {
        option: QUESTION,
        hint: questions
          ? `Ask ${questions.join(', ')}.`
          : near === undefined
            ? `Commands: ${this.commands.map(({ name }) => `/${name}`).join(', ')}.`
            : `Did you mean /${near}?`,
      },
    );
  }
}
