/** One way through: options checked, the question answered, the answer shown in the asker's own ways. */
import type * as z from 'zod';
import { defined } from '../core/base/defined.ts';
import { Problem } from '../core/base/problem.ts';
import { isAllMetric, measuresIn, unitsTyped, type AsTyped } from '../core/base/as-typed.ts';
import { isBareNumber } from '../core/base/number.ts';
import { clip, isBareGauge } from '../core/base/quantity.ts';
import { forReader, num, type Reader, type Units } from '../core/base/reader.ts';
import { NotSaved } from '../projects/not-saved.ts';
import { Pauses } from './breathe.ts';
import { cutBlanks } from '../core/base/blanks.ts';
import { show, type Answer, type RenderedAnswer } from './answer.ts';
import type { Question } from './command.ts';
import type { Context } from './context.ts';
import type { RawOptions } from './line.ts';
import { sampleOf } from '../core/base/samples.ts';
import { suggest } from '../core/base/nearest-name.ts';
import { inOwnNames } from './option-names.ts';
import { inOwnUnits, metaOf, problemOf, type Kind, type OptionMeta } from './options.ts';
import type { Route } from './registry.ts';

export interface ParsedOptions {
  readonly options: Record<string, unknown>;
  /** What was assumed because an option was left out. */
  readonly assumed: readonly string[];
}

/** An option as it was typed. */
interface TypedOption {
  readonly name: string;
  readonly kind: Kind;
  readonly text: string;
}

/** Reads a question's options. Throws a Problem about the first option at fault. */
export function checkOptions(
  { question, path }: Route,
  given: RawOptions,
  { reader }: Pick<Context, 'reader'>,
): ParsedOptions {
  const typed = inOwnNames(given, question.options);
  for (const name of Object.keys(typed))
    if (!Object.hasOwn(question.options, name)) throw noSuchOption(name, path, question);
  const options: Record<string, unknown> = {};
  const assumed: string[] = [];
  const all: TypedOption[] = [];
  for (const [name, schema] of Object.entries(question.options)) {
    const meta = metaOf(schema);
    const text = typed[name];
    if (text !== undefined) all.push({ name, kind: meta.kind, text });
    const { value, took } = readOption(name, schema, meta, { text, reader });
    if (value !== undefined) options[name] = value;
    if (took !== undefined) assumed.push(took);
  }
  // How it was read comes first: answers in short tell the first few.
  return { options, assumed: [...saidUnits(all, reader), ...assumed] };
}

function noSuchOption(name: string, path: string, question: Question): Problem {
  const names = Object.keys(question.options);
  return new Problem('no-such-option', `/${path} has no option ${clip(name)}.`, {
    option: name,
    hint: suggest(name, names, () =>
      names.length === 0 ? 'It takes none.' : `It takes ${names.join(', ')}.`,
    ),
  });
}

/** One option's value, and what was assumed of it. Throws a Problem about it. */
function readOption(
  name: string,
  schema: z.ZodType,
  meta: OptionMeta,
  { text: typed, reader }: { readonly text: string | undefined; readonly reader: Reader },
): { readonly value: unknown; readonly took: string | undefined } {
  const text = typed === undefined || meta.kind === 'file' ? typed : cutBlanks(typed);
  const result = schema.safeParse(text === undefined ? undefined : inOwnUnits(meta.kind, text, reader));
  if (!result.success) throw unread(name, meta, { text, error: result.error });
  const value: unknown = result.data;
  if (text !== undefined) return { value, took: meta.took?.(text) };
  // What was not asked for and is not done goes without saying; so does what the answer itself says.
  const goesWithoutSaying = value === undefined || value === false || meta.assumed === '';
  return {
    value,
    took: goesWithoutSaying
      ? undefined
      : (meta.assumed ?? `${name}: ${saidValue(value)}, as none was given.`),
  };
}

function unread(
  name: string,
  meta: OptionMeta,
  { text, error }: { readonly text: string | undefined; readonly error: z.ZodError },
): Problem {
  const hint = `${name}:${sampleOf(meta.kind, meta.example)}`;
  if (text === undefined)
    return new Problem('option-missing', `The option ${name} is missing.`, {
      option: name,
      hint: `${meta.says}: ${hint}`,
    });
  return (
    problemOf(error)?.about(name) ??
    new Problem('option-unreadable', error.issues[0]?.message ?? 'That does not fit.', { option: name, hint })
  );
}

/**
 * The measures among typed options, with the units in which they were typed. `readIn`: the units they are going to be read in, where
 * that is known; what was typed in these need not be told apart.
 */
export const measuresTyped = ({ question }: Route, typed: RawOptions, readIn?: Units): AsTyped =>
  new Map(
    Object.entries(inOwnNames(typed, question.options)).flatMap(([name, text]) => {
      const schema = question.options[name];
      if (schema === undefined || (readIn === 'metric' && isAllMetric(text))) return [];
      return measuresIn(metaOf(schema).kind, text);
    }),
  );

/**
 * Says by which units bare numbers were read, where others beside them have units of another kind; and to who reads in inches that a
 * gauge that names no length is counted over 10 cm.
 */
function saidUnits(typed: readonly TypedOption[], { units }: Reader): string[] {
  const imperial = units === 'imperial';
  const gauges = imperial ? typed.filter(({ kind, text }) => kind === 'gauge' && isBareGauge(text)) : [];
  const over =
    gauges.length === 0
      ? []
      : [
          `${gauges.map(({ text }) => clip(text.trim())).join(' and ')} ${gauges.length === 1 ? 'is' : 'are'} read over 10 cm, as no length was given.`,
        ];
  const measured = typed.filter(({ kind }) => kind === 'length' || kind === 'weight');
  const bare = measured.filter(({ text }) => isBareNumber(text));
  if (bare.length === 0 || !measured.some(({ text }) => (unitsTyped(text) ?? units) !== units)) return over;
  const own = { length: imperial ? 'inches' : 'centimetres', weight: imperial ? 'ounces' : 'grams' };
  const read = bare.map(
    ({ name, kind, text }) => `${name} ${text.trim()} in ${kind === 'weight' ? own.weight : own.length}`,
  );
  return [...over, `Read in your own units, as none stood there: ${read.join(', ')}.`];
}

const saidValue = (value: unknown) => (typeof value === 'number' ? num(value) : String(value));

/** A problem in the asker's own units and terms, like an answer, with what to ask next. Faults of ours, and the disk's, pass as they are. */
export function inOwnWords(error: unknown, route: Pick<Route, 'command'>, reader: Reader): unknown {
  if (!(error instanceof Problem) || error instanceof NotSaved) return error;
  const hint = adviceOn(error, route);
  return error.said(forReader(error.message, reader), forReader(hint, reader));
}

/** What to do about a problem: what the command says of its kind, else what the problem itself says. */
export const adviceOn = (problem: Problem, { command }: Pick<Route, 'command'>): string =>
  command.advice?.get(problem.code)?.(problem.facts) ?? problem.hint;

/** Asks a question whose options are typed text; the answer, or what is wrong, is shown in the asker's own ways. */
export async function ask(route: Route, typed: RawOptions, context: Context): Promise<RenderedAnswer> {
  try {
    const pauses = new Pauses();
    const { options, assumed } = checkOptions(route, typed, context);
    const answered = await route.question.answer(options, context);
    // What she has changed may be the units that she reads in.
    const readIn = route.question.changes === true ? undefined : context.reader.units;
    const answer = { ...answered, typed: answered.typed ?? measuresTyped(route, typed, readIn) };
    // Answering, showing and what the room makes of it are three pieces of work: others are heard between them.
    await pauses.breatheWhereLong();
    const greeting = context.greets?.();
    const shown = await showTo(
      answer,
      route,
      context,
      greeting === undefined ? assumed : [greeting, ...assumed],
    );
    await pauses.breatheWhereLong();
    return shown;
  } catch (error) {
    throw inOwnWords(error, route, context.reader);
  }
}

/** An answer to a question in the asker's own ways. */
export async function showTo(
  answer: Answer,
  { question }: Pick<Route, 'question'>,
  context: Pick<Context, 'reader' | 'projects' | 'maker'>,
  assumed: readonly string[] = [],
): Promise<RenderedAnswer> {
  if (!question.changes) return show(answer, context.reader, assumed);
  // What was changed may be the asker's ways themselves: she reads the answer in the new ones.
  // It is on the disk: the answer never fails because they cannot be looked up just now.
  const settings = await context.projects.settings(context.maker.id).catch(() => context.reader);
  const { clock } = context.reader;
  return show(answer, defined({ ...settings, clock }), assumed);
}
