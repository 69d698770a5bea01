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

const HINT = 'Write it like /stitches row shape:diagonal size:12 row:9.';

/** A line as far as it is read: the words of the question, the options, and the one that is waiting for its value or for more of it. */
class LineSoFar {
  readonly words: string[] = [];
  readonly options = new Map<string, string>();
  private open: string | undefined;

  /** True where an option stands there without a value. */
  get waits(): boolean {
    return this.open !== undefined && this.options.get(this.open) === '';
  }

  /** Throws Problem: option-without-value, where one is still waiting. */
  mustNotWait(): void {
    if (this.waits) throw missing(this.open ?? '');
  }

  begin(name: string): void {
    this.mustNotWait();
    if (this.options.has(name))
      throw new Problem('option-given-twice', `The option ${name} is given twice.`, {
        option: name,
        hint: 'Give each option once.',
      });
    this.open = name;
    this.options.set(name, '');
  }

  /** A quoted value is whole: nothing is added to it. */
  putQuoted(value: string, closed: boolean): void {
    if (!closed)
      throw new Problem('quote-not-closed', 'A quote is opened and not closed.', {
        option: this.open ?? QUESTION,
        hint: 'Close it with ".',
      });
    this.put(value);
    if (!this.waits) this.open = undefined;
  }

  putRun(run: string): void {
    if (this.open === undefined && this.options.size > 0)
      throw new Problem('belongs-to-no-option', `“${clip(run)}” belongs to no option.`, {
        option: QUESTION,
        hint: HINT,
      });
    this.put(run);
  }

  private put(value: string): void {
    const { open, options } = this;
    if (open === undefined) this.words.push(value.toLowerCase());
    else {
      const before = options.get(open) ?? '';
      options.set(open, before === '' ? value : `${before} ${value}`);
    }
  }
}

/**
 * Splits a line. Values may be quoted (with \" and \\ inside); unquoted words up to the next option belong to
 * the option before.
 *
 * Throws Problem: line-too-long, quote-not-closed, option-given-twice, option-without-value, belongs-to-no-option.
 */
export function readLine(text: string): Line {
  if (text.length > LONGEST_LINE) {
    throw new Problem('line-too-long', `A line of ${text.length} characters is too long.`, {
      facts: { most: LONGEST_LINE, given: text.length },
      option: QUESTION,
      hint: `At most ${LONGEST_LINE} are read. ${HINT}`,
    });
  }
  const line = text.trimEnd();
  const read = new LineSoFar();
  for (let position = 0; position < line.length;) {
    SINGLE.lastIndex = position;
    const single = read.waits ? SINGLE.exec(line) : null;
    if (single) {
      position = SINGLE.lastIndex;
      read.putQuoted(single[1] ?? '', true);
      read.mustNotWait();
      continue;
    }
    PIECE.lastIndex = position;
    const match = PIECE.exec(line);
    if (!match) break;
    position = PIECE.lastIndex;
    const [, name, quoted, close, run] = match;
    if (name !== undefined) read.begin(name.toLowerCase());
    else if (quoted !== undefined) read.putQuoted(quoted.replace(/\\(.)/g, '$1'), close !== undefined);
    else if (run !== undefined) read.putRun(run);
  }
  read.mustNotWait();
  return {
    words: read.words.map((word, index) => (index === 0 ? word.replace(/^\//, '') : word)),
    options: Object.fromEntries(read.options),
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
