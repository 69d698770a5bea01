/** What a command is: a group of questions, each with its words, its options and its answer. */
import type { Problem } from '../core/base/problem.ts';
import type { Answer } from './answer.ts';
import type { Asked } from './asked.ts';
import type { Context } from './context.ts';
import type { Options, Parsed } from './options.ts';
import type { About } from '../projects/servers.ts';

/** What is asked together, where several values are typed at once: a room that has forms shows one. */
export interface Form<Name extends string = string> {
  /** What stands over it, at most 45 characters. */
  readonly title: string;
  /** The options that it asks, the first ones first; a form has room for five, those not given yet before the others. */
  readonly asks: readonly Name[];
  /** Of each list one must be given, though the question declares none of them as needed; without any, something must be. */
  readonly needs?: readonly (readonly Name[])[];
  /** The options that it begins with, where it has too many to choose among: the form asks on from there. */
  readonly begins?: readonly Name[];
}

/** How a question is asked about something that is pointed at: a message, by what is found in its words; a person. */
export type Pointed<Name extends string = string> =
  | {
      readonly at: 'message';
      /** What stands in the menu, at most 32 characters. */
      readonly name: string;
      /** Finds options in the words; undefined where there is nothing to ask about. */
      readonly finds: (words: string) => Partial<Record<Name, string>> | undefined;
      /** What is said of a message in which nothing is found. */
      readonly none: string;
    }
  | {
      readonly at: 'person';
      readonly name: string;
      /** The option that takes the person. */
      readonly option: Name;
    };

export interface Question<O extends Options = Options, Name extends string | undefined = string | undefined> {
  /** One word, lower case; undefined where the command is the question itself. */
  readonly name?: Name;
  /** One line, at most 100 characters, that says what it answers. */
  readonly says: string;
  readonly options: O;
  /** Typed options that work, `shape:diagonal size:12`: shown to people and asked by the tests. */
  readonly example: string;
  /** Typed options that are refused, and the option that is at fault: asked by the tests. */
  readonly refused: { readonly line: string; readonly option?: string };
  /** True where the answer changes what is saved: such an answer is never given twice for one asking. */
  readonly changes?: boolean;
  /** Options that do something once: they are left out where the question is asked again for its answer. */
  readonly onceOnly?: readonly string[];
  /** True where only the asker may see the answer. */
  readonly private?: boolean;
  /** Lines asked before the example and the refusal, by the tests: what must have been saved. */
  readonly before?: readonly string[];
  /** The option that words without a name belong to: `/lookup term treble`. */
  readonly bare?: string;
  /** Where several of its options are typed at once. */
  readonly form?: Form;
  /** Where it is asked about a message or a person that is pointed at. */
  readonly pointed?: Pointed;
  /** How it is asked in plain words. */
  readonly asked?: Asked;
  answer(options: Parsed<O>, context: Context): Answer | Promise<Answer>;
}

/** What a question's `answer` is handed. */
export type OptionsOf<Q extends Pick<Question, 'options'>> = Parsed<Q['options']>;

/** What to ask next, by the code of the problem that was met: the core's hints name no command. */
export type Advice = ReadonlyMap<string, (facts: Problem['facts']) => string>;

export interface Command<
  Name extends string = string,
  Questions extends readonly Question[] = readonly Question[],
> {
  /** One word, lower case. */
  readonly name: Name;
  /** One line, at most 100 characters. */
  readonly says: string;
  readonly questions: Questions;
  /**
   * What its answers are about, where that says who sees them in a server: of the craft, which others learn from, or what is
   * the asker's own, hers to see unless she shows it.
   */
  readonly about?: About;
  /** Hints in place of those that the problems bring along. */
  readonly advice?: Advice;
}

/**
 * Declares a question; its options type what `answer` is handed, and what another question's button may give. Say what
 * `answer` returns, `Answer` or `Promise<Answer>`: questions point at each other, and their types would go in a circle.
 */
export function question<const O extends Options, const Name extends string | undefined = undefined>(
  declared: Question<O, Name> & {
    readonly form?: Form<keyof O & string>;
    readonly pointed?: Pointed<keyof O & string>;
  },
): Question<O, Name> {
  return declared;
}

/** Declares a command of several questions. */
export function command<const Name extends string, const Questions extends readonly Question[]>(
  declared: Command<Name, Questions>,
): Command<Name, Questions> {
  return declared;
}

/** A question's words with its options, for each question of the commands. */
type Worded<C extends Command> =
  C extends Command<infer Name, infer Questions>
    ? Questions[number] extends infer One
      ? One extends Question<infer O, infer Own>
        ? { readonly path: Own extends string ? `${Name} ${Own}` : Name; readonly options: O }
        : never
      : never
    : never;

/** The options of every question of these commands, by the question's words: `'stitches row'`. */
export type OptionsByPath<C extends Command> = {
  readonly [One in Worded<C> as One['path']]: One['options'];
};
