/**
 * What a language is here: the words under which questions are found in it. Each text of a declaration is translated once,
 * whichever questions say it, so that a new question with known options is in every language at once.
 */
export interface Tongue {
  /** The platform's names of it: `de`, or `es-ES` and `es-419`. */
  readonly locales: readonly string[];
  /** Names by the English ones: lower case, no spaces, none twice side by side. */
  readonly commands: Readonly<Record<string, string>>;
  readonly questions: Readonly<Record<string, string>>;
  readonly options: Readonly<Record<string, string>>;
  /** What stands in menus of messages and people. */
  readonly menus: Readonly<Record<string, string>>;
  /** What can be chosen, by what it is called in English. */
  readonly choices: Readonly<Record<string, string>>;
  /** Titles of forms, and what stands before an example in an empty field (`like`). */
  readonly forms: Readonly<Record<string, string>>;
  /** Descriptions of commands, questions and options, by the English ones; 100 characters at most. */
  readonly says: Readonly<Record<string, string>>;
}

/** The parts of a language that hold words. */
export type Part = Exclude<keyof Tongue, 'locales'>;
