/** Every command there is, and how a question is found by its words. */
import { Problem, QUESTION } from '../core/base/problem.ts';
import { clip } from '../core/base/quantity.ts';
import type { Command, Question } from './command.ts';
import type { Line, RawOptions } from './line.ts';
import { findNearest } from '../core/base/nearest-name.ts';

export interface Route {
  readonly command: Command;
  readonly question: Question;
  /** `stitches row` */
  readonly path: string;
}

export class Registry {
  readonly routes: readonly Route[];
  /** By the words that it is asked by now. */
  private readonly now: ReadonlyMap<string, Route>;
  private readonly byPath: ReadonlyMap<string, Route>;

  /** `moved`: words that a question was asked by before, and those that it is asked by now. */
  constructor(
    readonly commands: readonly Command[],
    moved: ReadonlyMap<string, string> = new Map(),
  ) {
    this.routes = commands.flatMap((command) =>
      command.questions.map((question) => ({
        command,
        question,
        path: question.name === undefined ? command.name : `${command.name} ${question.name}`,
      })),
    );
    this.now = new Map(this.routes.map((route) => [route.path, route]));
    if (this.now.size !== this.routes.length) throw new Error('two questions have the same words');
    const before = [...moved].flatMap(([words, path]) => {
      const route = this.now.get(path);
      return route && !this.now.has(words) ? [[words, route] as const] : [];
    });
    this.byPath = new Map([...before, ...this.now]);
  }

  get(path: string): Route | undefined {
    return this.byPath.get(path);
  }

  /**
   * Finds a question by a line: by its words, words behind them being given to the option that takes them bare; the help of a command
   * that stands alone. Throws a Problem that names the nearest question.
   */
  locate({ words, options }: Line): { readonly route: Route; readonly options: RawOptions } {
    const exact = this.byPath.get(words.join(' '));
    if (exact) return { route: exact, options };
    const help = this.byPath.get('help');
    const alone = words.length === 1 && Object.keys(options).length === 0 ? words[0] : undefined;
    if (help && alone !== undefined && /^\?+$/.test(alone)) return { route: help, options };
    if (help && alone !== undefined && this.commands.some(({ name }) => name === alone))
      return { route: help, options: { about: alone } };
    for (const long of [2, 1]) {
      const route = this.byPath.get(words.slice(0, long).join(' '));
      const rest = words.slice(long).join(' ');
      const bare = route?.question.bare;
      if (route && bare !== undefined && rest !== '' && !Object.hasOwn(options, bare))
        return { route, options: { ...options, [bare]: rest } };
    }
    return { route: this.find(words), options };
  }

  /** The question that a line begins with, and the words behind its own; undefined where none begins it. */
  begun(words: readonly string[]): { readonly route: Route; readonly rest: string } | undefined {
    for (const long of [2, 1]) {
      const route = this.byPath.get(words.slice(0, long).join(' '));
      if (route && words.length > long) return { route, rest: words.slice(long).join(' ') };
    }
    return undefined;
  }

  /** Finds a question by the words of a line. Throws a Problem that names the nearest one. */
  find(words: readonly string[]): Route {
    const path = words.join(' ');
    const route = this.byPath.get(path);
    if (route) return route;
    const begun = this.begun(words);
    if (begun) {
      const { path: asked, question } = begun.route;
      throw new Problem('words-without-option', `What “${clip(begun.rest)}” is to /${asked} is not clear.`, {
        option: QUESTION,
        hint: `Say what each part is, like /${asked} ${question.example}`.trim(),
      });
    }
    const command = this.commands.find(({ name }) => name === words[0]);
    const near = findNearest(path, [...this.now.keys()]);
    const questions = command?.questions.map(({ name }) => `/${command.name} ${name ?? ''}`.trim());
    throw new Problem(
      'no-such-question',
      path === '' ? 'There is no question in that line.' : `There is no question /${clip(path)}.`,
      {
        option: QUESTION,
        hint: questions
          ? near !== undefined && near.startsWith(`${command?.name ?? ''} `) && words.length === 2
            ? `Did you mean /${near}?`
            : `Ask ${questions.join(', ')}.`
          : near === undefined
            ? `Commands: ${this.commands.map(({ name }) => `/${name}`).join(', ')}.`
            : `Did you mean /${near}?`,
      },
    );
  }
}
