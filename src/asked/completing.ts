/** Completes a question with what somebody says after she was asked for an option of it. */
import type { RenderedAnswer } from '../chat/answer.ts';
import { inOwnWords, showTo } from '../chat/ask.ts';
import type { Answer } from '../chat/answer.ts';
import type { Context } from '../chat/context.ts';
import { inOwnUnits, metaOf } from '../chat/options.ts';
import { takes } from '../chat/ready-options.ts';
import type { Registry, Route } from '../chat/registry.ts';
import { answerRead, askFor, type Found } from './answer.ts';
import type { Waiting } from './asked-back.ts';
import { daysIn } from './days.ts';
import { fit } from './fit.ts';
import { slotsOf } from './fit/slots.ts';
import { hear } from './heard.ts';
import { inquires } from './inquiring.ts';
import { aroundOf } from './known.ts';
import { missingOf, understand, type Around, type Understood } from './read.ts';

/** Words in which a value is said and nothing else: “15 cm each”. */
const A_FEW = 3;
/** Speaks of what was asked for: “they are about 6 inches each”. */
const OF_IT =
  /^\W*(?:they|it|its|mine|each|all|about|around|roughly|approx\w*|maybe|one|a|the|that|those|these|my (?:squares?|motifs?|blocks?|grann\w+|swatch|hook|yarn|ball|gauge)|i (?:have|get|use|think|make|want))\b/iu;

/** A longer line is no value of an option that takes any text. */
const LONGEST_FREE = 60;
/** A value is so many words at most. */
const MOST_WORDS = 8;
/** Text options that are read like amounts: what stands there must be one of theirs. */
const READ = /^(counts|hook|yarn|closes|for|motifs)$/;

type Options = Readonly<Record<string, string>>;

/** Whether the words are a question of their own, or talk, and no answer to what was asked. */
function goesOn(words: string, { path }: Waiting, { verdict }: Understood): boolean {
  // A topic of the help is a word like any other: “ends” would be looked up.
  if (path === 'help') return false;
  if (verdict.kind === 'answer') return true;
  // Whoever asks another thing, or talks of one, is not answering what she was asked.
  const many = words.trim().split(/\s+/).length > A_FEW;
  const talk = verdict.kind === 'unclear' && verdict.why === 'chat' && !OF_IT.test(words);
  return many && (talk || inquires(words));
}

/** The words as the value of the option, where its reader takes them: `6 in`, `side: 6 in`. */
function valueOf(words: string, { option }: Waiting, route: Route, context: Context): string | undefined {
  const asked = route.question.options[option];
  if (!asked) return undefined;
  const { kind, suggest } = metaOf(asked);
  const isFree = kind === 'text' && suggest === undefined && !READ.test(option);
  const value = words
    .trim()
    .replace(/[.!]$/, '')
    .replace(new RegExp(`^${option}\\s*[:=]\\s*`, 'i'), '')
    .trim();
  if ((isFree && words.length > LONGEST_FREE) || value.split(/\s+/).length > MOST_WORDS) return undefined;
  return takes(asked, inOwnUnits(kind, value, context.reader)) ? value : undefined;
}

/** What the words say of the option that was asked for, or of others that are open. */
function optionsIn(words: string, waiting: Waiting, route: Route, around: Around): Options | undefined {
  const { asked } = route.question;
  if (!asked) return undefined;
  const heard = hear(words, around.names);
  // The option that was asked for takes what comes, whatever stands beside it.
  const slots = slotsOf(route, asked).map((slot) =>
    slot.name === waiting.option ? { ...slot, mark: { ...slot.mark, only: false }, nouns: [] } : slot,
  );
  const alone = fit(
    heard,
    asked,
    slots.filter(({ name }) => name === waiting.option),
  );
  if (Object.hasOwn(alone.options, waiting.option) && alone.unplaced.length === 0) return alone.options;
  const open = (name: string) => !Object.hasOwn(waiting.options, name);
  const fitted = fit(
    heard,
    asked,
    slots.filter(({ name }) => open(name)),
  );
  const more = asked.settle
    ? asked.settle({ ...waiting.options, ...fitted.options }, fitted.extras)
    : fitted.options;
  return fitted.unplaced.length > 0 || !Object.keys(more).some(open) ? undefined : more;
}

/**
 * What somebody says after she was asked for an option: the value, or words that hold it. Undefined where it is neither,
 * and where it is a question of its own.
 */
export async function completed(
  words: string,
  waiting: Waiting,
  registry: Registry,
  context: Context,
): Promise<{ readonly route: Route; readonly found: Found } | undefined> {
  const route = registry.get(waiting.path);
  if (!route?.question.asked || !route.question.options[waiting.option]) return undefined;
  const around = await aroundOf(context);
  const days = await daysIn(words, context.now);
  if (goesOn(words, waiting, understand(words, registry, { ...around, days }))) return undefined;
  const value = valueOf(words, waiting, route, context);
  const more = value === undefined ? optionsIn(words, waiting, route, around) : { [waiting.option]: value };
  if (!more) return undefined;
  const { path, options, assumed } = waiting;
  return { route, found: { path, options: { ...options, ...more }, assumed } };
}

/** Answers with what was completed, or asks for the next thing that is missing. */
export async function answerCompleted(route: Route, found: Found, context: Context): Promise<Answer> {
  const asked = route.question.asked;
  const missing = asked && missingOf(route, asked, found.options);
  if (missing !== undefined) throw askFor(route, found, missing);
  return answerRead(route, found, context);
}

/** The shown answer to what waited for these words; undefined where they say something else. */
export async function answerWaiting(
  words: string,
  waiting: Waiting,
  registry: Registry,
  context: Context,
): Promise<RenderedAnswer | undefined> {
  const complete = await completed(words, waiting, registry, context);
  if (!complete) return undefined;
  try {
    const answer = await answerCompleted(complete.route, complete.found, context);
    return await showTo(answer, complete.route, context);
  } catch (error) {
    throw inOwnWords(error, complete.route, context.reader);
  }
}
