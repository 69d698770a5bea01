/** Buttons, and lines named in a hint: each refers to a question by its words, and its options are those of that question. */
import { actionLine, type Action } from '../../src/chat/answer.ts';
import type { OptionsByPath } from '../../src/chat/command.ts';
import { typed, type Given } from '../../src/chat/options.ts';
// For the compiler alone: what every question takes.
import type { Commands } from '../index.ts';

type Questions = OptionsByPath<Commands>;

/** A button that asks another question. `forAnyone`: everybody may press it, each for herself. */
export function action<Path extends keyof Questions>(
  label: string,
  question: Path,
  options: Given<Questions[Path]>,
  also: Pick<Action, 'forAnyone' | 'lasting'> = {},
): Action {
  return { label, question, options: typed(options), ...also };
}

/** A button that opens a question's form, filled in so far; `asks`: what is still to be typed. */
export function form<Path extends keyof Questions>(
  label: string,
  question: Path,
  options: Partial<Given<Questions[Path]>>,
  asks: readonly (keyof Questions[Path] & string)[],
  also: Pick<Action, 'forAnyone' | 'lasting'> = {},
): Action {
  const given = options as Readonly<Record<string, string | number | boolean | undefined>>;
  return { label, question, options: typed(given), asks, ...also };
}

/** The line that asks a question, as it would be typed: `/progress finished motif:"moss square"`. */
export const lineOf = <Path extends keyof Questions>(
  question: Path,
  options: Given<Questions[Path]>,
): string => actionLine({ question, options: typed(options) });
