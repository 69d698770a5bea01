import { Problem, QUESTION } from '../core/base/problem.ts';

/** What was understood of plain words so far, kept until the missing option comes. */
export interface Waiting {
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
  /** The option that is asked for. */
  readonly option: string;
  /** What was taken from elsewhere than the words. */
  readonly assumed: readonly string[];
}

/** Plain words that were not answered: something is missing, or they were not understood. */
export class AskedBack extends Problem {
  /** The line they were taken for, as far as they were understood. */
  readonly readAs: string | undefined;
  readonly waiting: Waiting | undefined;

  constructor(
    code: string,
    sentence: string,
    parts: {
      readonly option?: string | undefined;
      readonly hint: string;
      readonly readAs?: string | undefined;
      readonly waiting?: Waiting | undefined;
    },
  ) {
    super(code, sentence, { option: parts.option ?? QUESTION, hint: parts.hint });
    this.readAs = parts.readAs;
    this.waiting = parts.waiting;
  }

  override said(sentence: string, hint: string, option = this.option): Problem {
    return new AskedBack(this.code, sentence, { option, hint, readAs: this.readAs, waiting: this.waiting });
  }
}
