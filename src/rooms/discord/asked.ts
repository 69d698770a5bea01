/**
 * A question with its options as one short text: what a button means. It is values, each in its place, and no line of
 * words: whatever somebody called her blanket, reading gives back exactly what was written, and nothing else.
 */
import type { RawOptions } from '../../chat/line.ts';

export interface Asked {
  /** The question's words: `together pledge`. */
  readonly question: string;
  readonly options: RawOptions;
}

/** `together pledge;kind Corner patch;name Shore throw` */
const APART = ';';
/** Begins a character that is written by its number, four hexadecimal digits; alone it stands for an empty value. */
const MARK = '~';

/**
 * What would part two values, what the platform might trim, and what it shows as nothing or takes away: controls, marks
 * without a width, halves of characters.
 */
const WRITTEN_OUT = /[;~\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Zl}\p{Zp}]|^\s|\s$/gu;
const byNumber = (text: string) =>
  text.replace(/[^]/g, (unit) => `${MARK}${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
/** Most values have nothing of it. */
const PLAIN = /^(?! )[\x20-\x3a\x3c-\x7d]+(?<! )$/;
const written = (value: string) =>
  PLAIN.test(value) ? value : value === '' ? MARK : value.replace(WRITTEN_OUT, byNumber);
const read = (text: string) =>
  text === MARK
    ? ''
    : text.replace(/~([0-9a-f]{4})/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)));

/** Writes a question; `readAsked` gives it back. */
export const writeAsked = ({ question, options }: Asked): string =>
  [question, ...Object.entries(options).map(([name, value]) => `${name} ${written(value)}`)].join(APART);

const QUESTION = /^[a-z0-9_-]+(?: [a-z0-9_-]+)*$/;
const OPTION = /^([a-z][a-z0-9_]*) ([^]*)$/;

/** Reads what `writeAsked` wrote; undefined for every other text. */
export function readAsked(text: string): Asked | undefined {
  const [question = '', ...parts] = text.split(APART);
  if (!QUESTION.test(question)) return undefined;
  const options = new Map<string, string>();
  for (const part of parts) {
    const [, name, value] = OPTION.exec(part) ?? [];
    if (name === undefined || value === undefined) return undefined;
    options.set(name, read(value));
  }
  const asked = { question, options: Object.fromEntries(options) };
  // There is one way to write a question: any other text was not written here.
  return writeAsked(asked) === text ? asked : undefined;
}
