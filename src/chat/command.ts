/** What a command is: a group of questions, each with its words, its options and its answer. */
import * as z from 'zod';
import type { Problem } from '../core/base/problem.ts';
import type { Reader } from '../core/base/reader.ts';
import type { Projects } from '../projects/projects.ts';
import type { Answer } from './answer.ts';
import type { Options } from './options.ts';

export interface Maker {
  /** Safe in a file name; made by the room. */
  readonly id: string;
  /** What she is called; text of a person. */
  readonly name: string;
}

/** Where a question is asked. Unset ids: a direct message, or the terminal. */
export interface Place {
  readonly server?: string;
  readonly channel?: string;
  /** Who keeps a message of ours from standing in the channel: the asker, or this bot, who may not write there. */
  readonly mute?: 'asker' | 'bot';
  /** True where the asker may manage the server. */
  readonly manager: boolean;
}

export interface Context {
  readonly maker: Maker;
  readonly reader: Reader;
  readonly place: Place;
  /** The moment of asking: nothing below a room looks at a clock. */
  readonly now: Date;
  /** Once per press or question: what is asked twice with the same key is done once. */
  readonly once: string;
  /** Whom a typed name or mention means; undefined where the room knows nobody by it. */
  readonly whois: (typed: string) => Maker | undefined;
  readonly projects: Projects;
}

export interface Question<O extends Options = Options> {
  /** One word, lower case; undefined where the command is the question itself. */
  readonly name?: string;
  /** One line, at most 100 characters, that says what it answers. */
  readonly says: string;
  readonly options: O;
  /** Typed options that work, `shape:diagonal size:12`: shown to people and asked by the tests. */
  readonly example: string;
  /** Typed options that are refused, and the option that is at fault: asked by the tests. */
  readonly refused: { readonly line: string; readonly option?: string };
  /** True where the answer changes what is saved: such an answer is never given twice for one asking. */
  readonly changes?: boolean;
  /** True where only the asker may see the answer. */
  readonly private?: boolean;
  /** Lines asked before the example and the refusal, by the tests: what must have been saved. */
  readonly before?: readonly string[];
  answer(options: { readonly [K in keyof O]: z.output<O[K]> }, context: Context): Answer | Promise<Answer>;
}

/** What to ask next, by the code of the problem that was met: the core's hints name no command. */
export type Advice = ReadonlyMap<string, (facts: Problem['facts']) => string>;

export interface Command {
  /** One word, lower case. */
  readonly name: string;
  /** One line, at most 100 characters. */
  readonly says: string;
  readonly questions: readonly Question[];
  /** Hints in place of those that the problems bring along. */
  readonly advice?: Advice;
}

/** Declares a question; its options type what `answer` is handed. */
export function question<const O extends Options>(declared: Question<O>): Question {
  return declared;
}

/** Declares a command of several questions. */
export const command = (declared: Command): Command => declared;
