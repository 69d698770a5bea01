/** Stands for an option where the question or its line is at fault as a whole: no name of an option in words for people. */
export const QUESTION = 'question';

/** What a problem is about, beside its sentence. */
export interface ProblemParts {
  readonly option?: string | undefined;
  readonly hint: string;
  readonly facts?: Readonly<Record<string, string | number>>;
}

/** What is wrong with a question, which option it is about, and what would do instead. Never a fault of ours. */
export class Problem extends Error {
  override readonly name = 'Problem';
  /** What kind of thing is wrong, in lower-case words with hyphens: `too-few-stitches`. Programs and tests go by it. */
  readonly code: string;
  /** The option at fault, as people type it; unset where the whole question is meant. */
  readonly option: string | undefined;
  /** What would work instead: a sentence or an example. */
  readonly hint: string;
  /** What the sentence is made from, in the core's units: `{ needed: 3, given: 1 }`. */
  readonly facts: Readonly<Record<string, string | number>>;

  constructor(code: string, sentence: string, { option, hint, facts = {} }: ProblemParts) {
    super(sentence);
    this.code = code;
    this.option = option;
    this.hint = hint;
    this.facts = facts;
  }

  /** The same problem, said of an option: readers of quantities do not know which option they read. */
  about(option: string): Problem {
    return this.option === undefined ? this.said(this.message, this.hint, option) : this;
  }

  /** The same problem in other words. */
  said(sentence: string, hint: string, option = this.option): Problem {
    return new Problem(this.code, sentence, { option, hint, facts: this.facts });
  }
}
