/** Answers plain words: with the answer of the question that was meant, or with what is asked back. */
import type { Action, Answer, RenderedAnswer } from '../chat/answer.ts';
import type { RawOptions } from '../chat/line.ts';
import { adviceOn, checkOptions, inOwnWords, measuresTyped, showTo } from '../chat/ask.ts';
import { breathe } from '../chat/breathe.ts';
import type { Context } from '../chat/context.ts';
import { writeLine } from '../chat/line.ts';
import { metaOf } from '../chat/options.ts';
import type { Registry, Route } from '../chat/registry.ts';
import { cutBlanks } from '../core/base/blanks.ts';
import { defined } from '../core/base/defined.ts';
import { LONGEST_WORDS } from '../core/base/limits.ts';
import { Problem, QUESTION } from '../core/base/problem.ts';
import { num } from '../core/base/reader.ts';
import { sampleOf } from '../core/base/samples.ts';
import { clip } from '../core/base/quantity.ts';
import { openTask } from '../projects/lessons.ts';
import { NotSaved } from '../projects/not-saved.ts';
import { AskedBack } from './asked-back.ts';
import { placeBareWords } from './bare.ts';
import { daysIn } from './days.ts';
import { withoutDisowned } from './disowned.ts';
import { markOf } from './fit/slots.ts';
import { isYarnLength } from './fit/takes.ts';
import { inquires } from './inquiring.ts';
import { aroundOf } from './known.ts';
import { saidToTask } from './to-task.ts';
import { understand, type Reading, type Understood } from './read.ts';

/** Near questions that are named where a phrase was not understood. */
const NEAR = 3;

type Asks = Pick<Context, 'maker' | 'projects' | 'place' | 'reader' | 'now'>;

/** The line of a question, its options in the order in which they are declared. */
export const readAsLine = ({ path, question }: Route, options: Readonly<Record<string, string>>) =>
  writeLine({
    words: path.split(' '),
    options: Object.fromEntries(
      Object.keys(question.options).flatMap((name) => {
        const value = options[name];
        return value === undefined ? [] : [[name, value] as const];
      }),
    ),
  });

/** Words as they are understood, and whether what they mean is done: what would change something is not, where it is only spoken of. */
export interface ReadWords extends Understood {
  readonly isDone: boolean;
}

/** A minus right before a number, where it is no dash between two: `a -4 by 5 foot blanket`. */
const BELOW_NOTHING = /(?:^|[^\d\s]\s+|\()[-−](?=\d)/;

/** Reads words of somebody, with what she has saved in mind. Throws Problem: text-too-long, below-nothing. */
export async function readWords(typed: string, registry: Registry, context: Asks): Promise<ReadWords> {
  const words = cutBlanks(typed);
  // A message of somebody else’s may be of any length.
  if (words.length > LONGEST_WORDS)
    throw new Problem('text-too-long', `That is longer than ${num(LONGEST_WORDS)} characters.`, {
      option: 'words',
      facts: { most: LONGEST_WORDS, given: words.length },
      hint: 'Ask one thing at a time, in a sentence or two.',
    });
  if (BELOW_NOTHING.test(words))
    throw new Problem('below-nothing', 'A number with a minus before it is less than nothing.', {
      option: 'words',
      hint: 'Write it without the minus.',
    });
  const around = await aroundOf(context);
  const days = await daysIn(words, context.now);
  const read = understand(words, registry, { ...around, days });
  return { ...read, isDone: isDone(read, words, (part) => understand(part, registry, around)) };
}

/** Answers the question that plain words mean. Throws AskedBack where something is missing or unclear. */
export async function answerWords(words: string, registry: Registry, context: Context): Promise<Answer> {
  const { readings, verdict, isDone } = await readWords(words, registry, context);
  // Reading is a piece of work of its own.
  await breathe();
  if (verdict.kind === 'unclear') {
    const toTask = await taskAnswer(words, registry, context);
    if (toTask) return toTask;
    throw greeted(words) ?? notUnderstood(verdict.why, readings);
  }
  const { reading } = verdict;
  if (!isDone) return explain(reading, registry, context, words);
  const found = { path: reading.route.path, options: reading.options, assumed: reading.assumed };
  if (verdict.kind === 'missing') throw askFor(reading.route, found, verdict.option);
  return answerRead(reading.route, found, context, [otherwise(words)]);
}

const HELLO =
  /^\W*(?:hi|hello|hey|hiya|good (?:morning|afternoon|evening|night|day))(?: (?:there|all|everyone|everybody|folks))?\W*$/iu;
const THANKS =
  /^\W*(?:(?:ok(?:ay)?|great|perfect|lovely)\W+)?(?:thanks|thank you|thankyou|thx|ty|cheers)(?: (?:so much|very much|a lot|you|all|everyone))?\W*$/iu;
const ASK_LIKE = 'Ask something like: how many 6 inch squares for a 4 by 5 foot blanket? Or /help.';

/** A greeting or thanks are met as such: they are understood well enough. */
const greeted = (words: string): AskedBack | undefined =>
  HELLO.test(words)
    ? new AskedBack('asks-nothing', 'Hello.', { hint: ASK_LIKE })
    : THANKS.test(words)
      ? new AskedBack('asks-nothing', 'You are welcome.', {
          hint: 'Ask on whenever you like; /help says what.',
        })
      : undefined;

/** What is said to the task of a lesson, where one is open; undefined where it is not, or where the words are none of that. */
async function taskAnswer(words: string, registry: Registry, context: Context): Promise<Answer | undefined> {
  const said = saidToTask(words);
  const route = said && registry.get(said.path);
  if (!route) return undefined;
  const { maker, projects } = context;
  if (openTask(await projects.maker(maker.id, maker.name)) === undefined) return undefined;
  return answerRead(route, { ...said, assumed: [] }, context, [otherwise(words)]);
}

/** False where it would change something that was only asked about, or denied: “how do I leave the group”, “I’m not done with part 3”. */
function isDone({ heard, verdict }: Understood, words: string, read: (part: string) => Understood): boolean {
  if (verdict.kind === 'unclear') return true;
  const { route, asked, options } = verdict.reading;
  const by = asked.changesBy;
  const changes =
    route.question.changes === true && (by === undefined || by.some((name) => Object.hasOwn(options, name)));
  if (!changes) return true;
  if (inquires(words)) return false;
  const rest = withoutDisowned(heard, asked);
  if (rest === undefined) return true;
  const { verdict: again } = read(rest);
  return (
    again.kind === verdict.kind &&
    readAsLine(again.reading.route, again.reading.options) === readAsLine(route, options)
  );
}

/** How a thing is done, instead of doing it. */
async function explain(
  { route, options }: Reading,
  registry: Registry,
  context: Context,
  words: string,
): Promise<Answer> {
  const look = registry.get(route.question.asked?.looksLike ?? '');
  if (look) {
    const names = Object.entries(options).filter(([name]) => Object.hasOwn(look.question.options, name));
    const found = { path: look.path, options: Object.fromEntries(names), assumed: [] };
    return answerRead(look, found, context, [otherwise(words)]);
  }
  const help = registry.find(['help']);
  const found = { path: help.path, options: { about: route.path }, assumed: [] };
  const answer = await answerRead(help, found, context, [otherwise(words)]);
  const line = readAsLine(route, options);
  return { ...answer, lines: [`Nothing is done yet. This does it: ${line}`, ...(answer.lines ?? [])] };
}

/** The button that offers the next readings. */
export const otherwise = (words: string): Action => ({
  label: 'Not what I meant',
  question: 'ask',
  options: { words, other: 'yes' },
});

/** What else plain words may mean: nothing is answered, each reading is offered. */
export async function otherReadings(words: string, registry: Registry, context: Context): Promise<Answer> {
  const { readings } = await readWords(words, registry, context);
  const [, ...rest] = readings;
  const offered = rest.filter(({ score }) => score > -2).slice(0, 4);
  const near = nearQuestions(readings);
  return {
    headline:
      offered.length === 0
        ? 'No other question is near those words. Say it another way, or ask /help.'
        : `Those words may also mean ${offered.length === 1 ? 'this' : 'one of these'}:`,
    lines: offered.map(({ route, options }) => `${readAsLine(route, options)} — ${route.question.says}`),
    ...defined({ data: near === '' ? undefined : { near: offered.map(({ route }) => `/${route.path}`) } }),
    actions: offered
      .filter(({ missing }) => missing === undefined)
      .map(({ route, options }) => ({ label: `/${route.path}`, question: route.path, options })),
    private: true,
  };
}

const nearQuestions = (readings: readonly Reading[]) =>
  [...new Set(readings.filter(({ score }) => score > -3).map(({ route }) => route))]
    .slice(0, NEAR)
    .map(({ path, question }) => `/${path} (${question.says.replace(/^./, (first) => first.toLowerCase())})`)
    .join(', ');

function notUnderstood(
  why: 'chat' | 'unknown' | 'between' | 'number',
  readings: readonly Reading[],
): AskedBack {
  const near = nearQuestions(readings);
  const [best] = readings;
  const hint = near === '' ? 'Ask /help for what can be asked.' : `Near to it: ${near}.`;
  switch (why) {
    case 'chat':
      return new AskedBack('asks-nothing', 'That asks nothing that is answered here.', {
        hint: near === '' ? ASK_LIKE : hint,
      });
    case 'number': {
      const [left] = best?.fitted.unplaced ?? [];
      if (left && isYarnLength(left))
        return new AskedBack(
          'yarn-by-length',
          `${clip(left.text)} is read as yarn, which is reckoned by weight here.`,
          { hint: `Say what one motif weighs and what the band says: 12 g each, 170yd/100g. ${hint}` },
        );
      return new AskedBack(
        'number-without-place',
        left === undefined
          ? 'One number in that has no place.'
          : `What ${clip(left.text)} stands for in that is not clear.`,
        {
          hint: `Say what each number is. ${hint}`,
          readAs: best && readAsLine(best.route, best.options),
        },
      );
    }
    case 'between':
      return new AskedBack('two-readings', 'That may mean more than one question.', { hint });
    case 'unknown':
      return new AskedBack('not-understood', 'That was not understood.', { hint });
  }
}

export interface Found {
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
  readonly assumed: readonly string[];
}

/** Asks for one option that is missing, and keeps the rest. */
export function askFor(route: Route, { path, options, assumed }: Found, option: string): AskedBack {
  const schema = route.question.options[option];
  const meta = schema && metaOf(schema);
  const readAs = readAsLine(route, options);
  return new AskedBack(
    'option-missing',
    markOf(route, option)?.asks ??
      `One thing is missing, ${option}: ${(meta?.says ?? option).replace(/^./, (first) => first.toLowerCase())}.`,
    {
      option,
      hint: `Read as ${readAs} so far; say the rest, like ${option}:${meta === undefined ? '' : sampleOf(meta.kind, meta.example)}`.trim(),
      readAs,
      waiting: { path, options, option, assumed },
    },
  );
}

/** Answers a question that was read from plain words. */
export async function answerRead(
  route: Route,
  found: Found,
  context: Context,
  actions: readonly Action[] = [],
): Promise<Answer> {
  const { path, options } = found;
  const readAs = readAsLine(route, options);
  try {
    const checked = checkOptions(route, options, context);
    const answer = await route.question.answer(checked.options, context);
    return {
      ...answer,
      assumptions: [...found.assumed, ...checked.assumed, ...(answer.assumptions ?? [])],
      readAs: { path, line: readAs },
      actions: [...(answer.actions ?? []), ...actions],
      ...defined({
        typed: measuresTyped(route, options),
        private: route.question.private === true ? true : undefined,
      }),
    };
  } catch (error) {
    if (!(error instanceof Problem) || error instanceof NotSaved || error instanceof AskedBack) throw error;
    const { option } = error;
    // What the question itself misses is asked for like any other option.
    const asksFor =
      option !== undefined &&
      Object.hasOwn(route.question.options, option) &&
      !Object.hasOwn(options, option);
    throw new AskedBack(error.code, error.message, {
      option: option ?? QUESTION,
      hint: adviceOn(error, route),
      readAs,
      waiting: asksFor ? { path, options, option, assumed: found.assumed } : undefined,
    });
  }
}

/**
 * The shown answer to a question with words behind its own that name no option; undefined where they have no place in it.
 * Throws a Problem as the question does.
 */
export async function answerBare(
  route: Route,
  words: string,
  typed: RawOptions,
  context: Context,
): Promise<RenderedAnswer | undefined> {
  try {
    const { names } = await aroundOf(context);
    const options = placeBareWords(route, words, typed, names);
    if (!options) return undefined;
    const answer = await answerRead(route, { path: route.path, options, assumed: [] }, context);
    return await showTo(answer, route, context);
  } catch (error) {
    throw inOwnWords(error, route, context.reader);
  }
}
