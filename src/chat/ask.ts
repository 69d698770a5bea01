/** One way through: options checked, the question answered, the answer shown in the asker's own ways. */
import { defined } from '../core/base/defined.ts';
import { Problem } from '../core/base/problem.ts';
import { isAllMetric, isMeasured, measuresIn, unitsTyped, type AsTyped } from '../core/base/as-typed.ts';
import { isBareNumber } from '../core/base/number.ts';
import { clip, isBareGauge } from '../core/base/quantity.ts';
import { forReader, type Reader, type Units } from '../core/base/reader.ts';
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
import { inOwnUnits, type Kind } from './options.ts';
import { readyOptions, type ReadyOption } from './ready-options.ts';
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
  const { all: ready, byName } = readyOptions(question.options);
  for (const name of Object.keys(typed)) if (!byName.has(name)) throw noSuchOption(name, path, question);
  const options: Record<string, unknown> = {};
  const assumed: string[] = [];
  const all: TypedOption[] = [];
  for (const option of ready) {
    const { name, meta, leftOut } = option;
    const text = typed[name];
    if (text === undefined) {
      if (!leftOut) throw missing(option);
      if (leftOut.value !== undefined) options[name] = leftOut.value;
      if (leftOut.took !== undefined) assumed.push(leftOut.took);
      continue;
    }
    all.push({ name, kind: meta.kind, text });
    const plain = meta.kind === 'file' ? text : cutBlanks(text);
    options[name] = readOption(option, plain, reader);
    const took = meta.took?.(plain);
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

/** One option's value. Throws a Problem about it. */
function readOption({ name, meta, read }: ReadyOption, text: string, reader: Reader): unknown {
  try {
    return read(inOwnUnits(meta.kind, text, reader));
  } catch (problem) {
    throw problem instanceof Problem ? problem.about(name) : problem;
  }
}

const missing = ({ name, meta: { says, kind, example } }: ReadyOption) =>
  new Problem('option-missing', `The option ${name} is missing.`, {
    option: name,
    hint: `${says}: ${name}:${sampleOf(kind, example)}`,
  });

/**
 * The measures among typed options, with the units in which they were typed; undefined where there are none. `readIn`: the units they
 * are going to be read in, where that is known; what was typed in these need not be told apart.
 */
export function measuresTyped({ question }: Route, typed: RawOptions, readIn?: Units): AsTyped | undefined {
  const { byName } = readyOptions(question.options);
  const named = inOwnNames(typed, question.options);
  const measures = Object.keys(named).flatMap((name) => {
    const kind = byName.get(name)?.meta.kind;
    const text = named[name];
    if (kind === undefined || text === undefined || !isMeasured(kind)) return [];
    return readIn === 'metric' && isAllMetric(text) ? [] : measuresIn(kind, text);
  });
  return measures.length === 0 ? undefined : new Map(measures);
}

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
    const { question } = route;
    const pauses = new Pauses();
    const { options, assumed } = checkOptions(route, typed, context);
    const answer = await question.answer(options, context);
    // What she has changed may be the units that she reads in.
    const readIn = question.changes === true ? undefined : context.reader.units;
    const measures = answer.typed ?? measuresTyped(route, typed, readIn);
    // Answering, showing and what the room makes of it are three pieces of work: others are heard between them.
    if (pauses.areDue) await pauses.breathe();
    const greeting = context.greets?.();
    const said = greeting === undefined ? assumed : [greeting, ...assumed];
    const reader = question.changes === true ? await readerNow(context) : context.reader;
    const shown = show(answer, withTyped(reader, measures), said);
    if (pauses.areDue) await pauses.breathe();
    return shown;
  } catch (error) {
    throw inOwnWords(error, route, context.reader);
  }
}

type Asker = Pick<Context, 'reader' | 'projects' | 'maker'>;

/** An answer to a question in the asker's own ways. */
export async function showTo(
  answer: Answer,
  { question }: Pick<Route, 'question'>,
  context: Asker,
): Promise<RenderedAnswer> {
  const reader = question.changes === true ? await readerNow(context) : context.reader;
  return show(answer, withTyped(reader, answer.typed));
}

const withTyped = (reader: Reader, typed: AsTyped | undefined): Reader =>
  typed ? { ...reader, typed } : reader;

/**
 * The asker's ways once something is changed, which may be these themselves: she reads the answer in the new ones. It is on the
 * disk: the answer never fails because they cannot be looked up just now.
 */
async function readerNow({ reader, projects, maker }: Asker): Promise<Reader> {
  const settings = await projects.settings(maker.id).catch(() => reader);
  return defined({ ...settings, clock: reader.clock });
}
