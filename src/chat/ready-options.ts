/**
 * The options of a question made ready to be read, once: each answer goes through all of them, and what is the same every time (what
 * reads an option, whether it may be left out, what it is then and what is said of that) is found out when the first asks.
 */
import { Problem } from '../core/base/problem.ts';
import { num } from '../core/base/reader.ts';
import { remembered } from '../core/base/remembered.ts';
import { type OptionMeta, type Options } from './options.ts';

export interface ReadyOption {
  readonly name: string;
  readonly meta: OptionMeta;
  /** Its value, of what was typed. Throws a Problem for what it cannot read. */
  readonly read: (text: string) => unknown;
  /** What it is where it is left out; undefined where it must be given. */
  readonly leftOut: LeftOut | undefined;
}

interface LeftOut {
  readonly value: unknown;
  /** What was assumed then, where that is said. */
  readonly took: string | undefined;
}

export interface ReadyOptions {
  /** In the order in which they are declared. */
  readonly all: readonly ReadyOption[];
  readonly byName: ReadonlyMap<string, ReadyOption>;
}

/** Whether an option can be read of a text. */
export function takes({ read }: Pick<ReadyOption, 'read'>, text: string): boolean {
  try {
    read(text);
    return true;
  } catch (problem) {
    if (problem instanceof Problem) return false;
    throw problem;
  }
}

/** The options of a question, ready to be read. */
export const readyOptions = remembered((options: Options): ReadyOptions => {
  const all = Object.entries(options).map(([name, option]): ReadyOption => {
    const { meta, read, needed } = option;
    return { name, meta, read, leftOut: needed ? undefined : leftOut(name, meta, option.leftOut) };
  });
  return { all, byName: new Map(all.map((option) => [option.name, option])) };
});

const saidValue = (value: unknown) => (typeof value === 'number' ? num(value) : String(value));

function leftOut(name: string, { assumed }: OptionMeta, value: unknown): LeftOut {
  // What was not asked for and is not done goes without saying; so does what the answer itself says.
  const goesWithoutSaying = value === undefined || value === false || assumed === '';
  const took = goesWithoutSaying
    ? undefined
    : (assumed ?? `${name}: ${saidValue(value)}, as none was given.`);
  return { value, took };
}
