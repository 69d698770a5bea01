/** One way through: options checked, the question answered, the answer shown in the asker's own ways. */
import { defined } from '../core/base/defined.ts';
import { Problem } from '../core/base/problem.ts';
import { measuresIn, unitsTyped, type AsTyped } from '../core/base/as-typed.ts';
import { isBareNumber } from '../core/base/number.ts';
import { clip, isBareGauge } from '../core/base/quantity.ts';
import { forReader, num, type Reader } from '../core/base/reader.ts';
import { NotSaved } from '../projects/not-saved.ts';
import { breathe } from './breathe.ts';
import { cutBlanks } from '../core/base/blanks.ts';
import { show, type Answer, type RenderedAnswer } from './answer.ts';
import type { Question } from './command.ts';
import type { Context } from './context.ts';
import type { RawOptions } from './line.ts';
import { sampleOf } from '../core/base/samples.ts';
import { suggest } from '../core/base/nearest-name.ts';
import { inOwnNames } from './option-names.ts';
import { inOwnUnits, metaOf, problemOf } from './options.ts';
import type { Route } from './registry.ts';

export interface ParsedOptions {
  readonly options: Record<string, unknown>;
  /** What was assumed because an option was left out. */
  readonly assumed: readonly string[];
}

/** Reads a question's options. Throws a Problem about the first option at fault. */
export function checkOptions(
  { question, path }: Route,
  given: RawOptions,
  context: Pick<Context, 'reader'>,
): ParsedOptions {
  const names = Object.keys(question.options);
  const typed = inOwnNames(given, question.options);
  for (const name of Object.keys(typed)) {
    if (names.includes(name)) continue;
    throw new Problem('no-such-option', `/${path} has no option ${clip(name)}.`, {
      option: name,
      hint: suggest(name, names, () =>
        names.length === 0 ? 'It takes none.' : `It takes ${names.join(', ')}.`,
      ),
    });
  }
  const options: Record<string, unknown> = {};
  const assumed: string[] = [];
  for (const [name, schema] of Object.entries(question.options)) {
    const meta = metaOf(schema);
    const given = typed[name];
    const text = given === undefined || meta.kind === 'file' ? given : cutBlanks(given);
    const result = schema.safeParse(
      text === undefined ? undefined : inOwnUnits(meta.kind, text, context.reader),
    );
    if (!result.success) {
      if (text === undefined) {
        throw new Problem('option-missing', `The option ${name} is missing.`, {
          option: name,
          hint: `${meta.says}: ${name}:${sampleOf(meta.kind, meta.example)}`,
        });
      }
      throw (
        problemOf(result.error)?.about(name) ??
        new Problem('option-unreadable', result.error.issues[0]?.message ?? 'That does not fit.', {
          option: name,
          hint: `${name}:${sampleOf(meta.kind, meta.example)}`,
        })
      );
    }
    if (result.data !== undefined) options[name] = result.data;
    const took = text === undefined ? undefined : meta.took?.(text);
    if (took !== undefined) assumed.push(took);
    // What was not asked for and is not done goes without saying; so does what the answer itself says.
    if (text === undefined && result.data !== undefined && result.data !== false && meta.assumed !== '')
      assumed.push(meta.assumed ?? `${name}: ${saidValue(result.data)}, as none was given.`);
  }
  // How it was read comes first: answers in short tell the first few.
  return { options, assumed: [...saidUnits(question, typed, context.reader), ...assumed] };
}

/** The measures among typed options, with the units in which they were typed. */
export const measuresTyped = ({ question }: Route, typed: RawOptions): AsTyped =>
  new Map(
    Object.entries(inOwnNames(typed, question.options)).flatMap(([name, text]) => {
      const schema = question.options[name];
      return schema === undefined ? [] : measuresIn(metaOf(schema).kind, text);
    }),
  );

/**
 * Says by which units bare numbers were read, where others beside them have units of another kind; and to who reads in inches that a
 * gauge that names no length is counted over 10 cm.
 */
function saidUnits(question: Question, typed: RawOptions, { units }: Reader): string[] {
  const imperial = units === 'imperial';
  const gauges = Object.entries(question.options).flatMap(([name, schema]) => {
    const text = typed[name];
    return imperial && text !== undefined && metaOf(schema).kind === 'gauge' && isBareGauge(text)
      ? [text.trim()]
      : [];
  });
  const over =
    gauges.length === 0
      ? []
      : [
          `${gauges.map((text) => clip(text)).join(' and ')} ${gauges.length === 1 ? 'is' : 'are'} read over 10 cm, as no length was given.`,
        ];
  const measured = Object.entries(question.options).flatMap(([name, schema]) => {
    const text = typed[name];
    const { kind } = metaOf(schema);
    return text !== undefined && (kind === 'length' || kind === 'weight') ? [{ name, kind, text }] : [];
  });
  const bare = measured.filter(({ text }) => isBareNumber(text));
  const other = measured.some(({ text }) => (unitsTyped(text) ?? units) !== units);
  if (bare.length === 0 || !other) return over;
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
    const { options, assumed } = checkOptions(route, typed, context);
    const answered = await route.question.answer(options, context);
    const answer = { ...answered, typed: answered.typed ?? measuresTyped(route, typed) };
    // Answering, showing and what the room makes of it are three pieces of work: others are heard between them.
    await breathe();
    const greeting = context.greets?.();
    const shown = await showTo(
      answer,
      route,
      context,
      greeting === undefined ? assumed : [greeting, ...assumed],
    );
    await breathe();
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
