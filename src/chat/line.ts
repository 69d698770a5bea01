/** A typed line: `/stitches row shape:diagonal size:12`, values with spaces in quotes. */
import { Problem, QUESTION } from '../core/base/problem.ts';
import { clip } from '../core/base/quantity.ts';

/** Options by name, as text, whatever room they come from. */
export type RawOptions = Readonly<Record<string, string>>;

export interface Line {
  /** The words before the first option: `['stitches', 'row']`. */
  readonly words: readonly string[];
  /** Options by name, as typed. */
  readonly options: RawOptions;
}

/** The longest line that is read: longer than any question with sense in it. */
export const LONGEST_LINE = 4000;

/**
 * One piece of a line: an option's name with its colon, or = as many type it (phones begin it with a capital; an address
 * and a drive are no options), a quoted value, or a run without spaces.
 */
const PIECE =
  /\s*(?:([a-z][a-z0-9_]{0,31})(?::(?!\/\/|\\)|=(?=\S))|["“”]((?:[^"“”\\]|\\.)*)(["“”])?|(\S+))/iy;
/** A value in single quotes; elsewhere they are apostrophes, feet and minutes. */
const SINGLE = /\s*'([^']*)'(?=\s|$)/y;

/**
 * Splits a line. Values may be quoted (with \" and \\ inside); unquoted words up to the next option belong to
 * the option before. Throws a Problem for an unclosed quote, an option given twice, one without a value.
 */
export function readLine(text: string): Line {
  const hint = 'Write it like /stitches row shape:diagonal size:12 row:9.';
  if (text.length > LONGEST_LINE) {
    throw new Problem('line-too-long', `A line of ${text.length} characters is too long.`, {
      facts: { most: LONGEST_LINE, given: text.length },
      option: QUESTION,
      hint: `At most ${LONGEST_LINE} are read. ${hint}`,
    });
  }
  const words: string[] = [];
  const options: Record<string, string> = Object.create(null) as Record<string, string>;
  let open: string | undefined;
  let position = 0;
  const line = text.trimEnd();
  const put = (value: string) => {
    if (open === undefined) words.push(value.toLowerCase());
    else options[open] = options[open] === '' ? value : `${options[open] ?? ''} ${value}`;
  };
  while (position < line.length) {
    if (open !== undefined && options[open] === '') {
      SINGLE.lastIndex = position;
      const single = SINGLE.exec(line);
      if (single) {
        position = SINGLE.lastIndex;
        if (single[1] === '') throw missing(open);
        put(single[1] ?? '');
        open = undefined;
        continue;
      }
    }
    PIECE.lastIndex = position;
    const match = PIECE.exec(line);
    if (!match) break;
    position = PIECE.lastIndex;
    const [, typed, quoted, close, run] = match;
    const name = typed?.toLowerCase();
    if (name !== undefined) {
      if (open !== undefined && options[open] === '') throw missing(open);
      if (name in options)
        throw new Problem('option-given-twice', `The option ${name} is given twice.`, {
          option: name,
          hint: 'Give each option once.',
        });
      open = name;
      options[name] = '';
    } else if (quoted !== undefined) {
      if (close === undefined)
        throw new Problem('quote-not-closed', 'A quote is opened and not closed.', {
          option: open ?? QUESTION,
          hint: 'Close it with ".',
        });
      put(quoted.replace(/\\(.)/g, '$1'));
      // A quoted value is whole: nothing is added to it.
      if (open !== undefined) open = options[open] === '' ? open : undefined;
    } else if (run !== undefined) {
      if (open === undefined && Object.keys(options).length > 0) {
        throw new Problem('belongs-to-no-option', `“${clip(run)}” belongs to no option.`, {
          option: QUESTION,
          hint,
        });
      }
      put(run);
    }
  }
  if (open !== undefined && options[open] === '') throw missing(open);
  return {
    words: words.map((word, index) => (index === 0 ? word.replace(/^\//, '') : word)),
    options: { ...options },
  };
}

const missing = (option: string) =>
  new Problem('option-without-value', `The option ${option} has no value.`, {
    option,
    hint: `Write ${option}: and then what you mean.`,
  });

const NEEDS_QUOTES = /[\s"“”\\:=]|^$|^\/\/|^'/;

/** Writes a line that `readLine` reads back. */
export function writeLine({ words, options }: Line): string {
  const quoted = (value: string) =>
    NEEDS_QUOTES.test(value) ? `"${value.replace(/["“”\\]/g, '\\$&')}"` : value;
  return [
    `/${words.join(' ')}`,
    ...Object.entries(options).map(([name, value]) => `${name}:${quoted(value)}`),
  ].join(' ');
}
