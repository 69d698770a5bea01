/** Stands for an option where the question or its line is at fault as a whole: no name of an option in words for people. */
export const QUESTION = 'question';

/** What is wrong with a question, which option it is about, and what would do instead. Never a fault of ours. */
export class Problem extends Error {
  override readonly name = 'Problem';
  /** The option at fault, as people type it; unset where the whole question is meant. */
  readonly option: string | undefined;
  /** What would work instead: a sentence or an example. */
  readonly hint: string;

  constructor(sentence: string, { option, hint }: { option?: string | undefined; hint: string }) {
    super(sentence);
    this.option = option;
    this.hint = hint;
  }

  /** The same problem, said of an option: readers of quantities do not know which option they read. */
  about(option: string): Problem {
    return this.option === undefined ? new Problem(this.message, { option, hint: this.hint }) : this;
  }
}
