/**
 * From plain words to a question with its options. No guess is answered: a reading counts only if it is complete, clearly
 * better than the next, and every number in the phrase has found its place.
 */
import type { Asked } from '../chat/asked.ts';
import { isRequired } from '../chat/options.ts';
import type { Registry, Route } from '../chat/registry.ts';
import type { DayFound } from './days.ts';
import { fit, type Fitted } from './fit.ts';
import { senseNames, slotsOf, type Slot } from './fit/slots.ts';
import { hear, weightOf, type Heard } from './heard.ts';
import type { Said } from './lexicon.ts';
import type { KnownName } from './pieces/piece.ts';
import { asksTermAlone, termIn } from './terms.ts';
import type { SenseName } from './words.ts';

type Part =
  | { readonly kind: 'sense'; readonly any: readonly SenseName[] }
  | { readonly kind: 'goal'; readonly any: readonly SenseName[] }
  | { readonly kind: 'piece'; readonly any: readonly string[] }
  | { readonly kind: 'name'; readonly of: string };

interface Grammar {
  readonly route: Route;
  readonly asked: Asked;
  readonly ways: readonly (readonly Part[])[];
  readonly also: ReadonlySet<SenseName>;
  readonly not: ReadonlySet<SenseName>;
  /** Kinds of pieces and of names that speak of another matter. */
  readonly notPieces: readonly Part[];
  readonly slots: readonly Slot[];
}

function readWay(way: string): Part[] {
  return way.split(' ').map((part): Part => {
    if (part.startsWith('?')) return { kind: 'goal', any: senseNames(part.slice(1)) };
    if (part.startsWith('@')) return { kind: 'name', of: part.slice(1) };
    if (part.startsWith('<')) return { kind: 'piece', any: part.slice(1, -1).split('|') };
    return { kind: 'sense', any: senseNames(part) };
  });
}

function grammarOf(route: Route): Grammar | undefined {
  const asked = route.question.asked;
  if (!asked) return undefined;
  const slots = slotsOf(route, asked);
  const ways = asked.ways.map(readWay);
  return {
    route,
    asked,
    ways,
    also: new Set([
      ...senseNames(asked.also),
      ...ways.flat().flatMap((part) => (part.kind === 'piece' || part.kind === 'name' ? [] : part.any)),
      ...slots.flatMap(({ nouns, near, choices }) => [
        ...nouns,
        ...near,
        ...choices.flatMap(({ senses }) => senses),
      ]),
    ]),
    not: new Set(
      (asked.not ?? '')
        .split(' ')
        .filter((name) => name !== '' && !/^[<@]/.test(name))
        .flatMap(senseNames),
    ),
    notPieces: (asked.not ?? '')
      .split(' ')
      .filter((name) => /^[<@]/.test(name))
      .flatMap(readWay),
    slots,
  };
}

const grammars = new WeakMap<Registry, readonly Grammar[]>();
function grammarsOf(registry: Registry): readonly Grammar[] {
  let known = grammars.get(registry);
  if (!known) {
    known = registry.routes.flatMap((route) => grammarOf(route) ?? []);
    grammars.set(registry, known);
  }
  return known;
}

/** Senses that are part of asking anything. */
const NEUTRAL = new Set<SenseName>([
  'what' as SenseName,
  'which',
  'need',
  'each',
  'total',
  'mine',
  'where',
  'show',
  'new',
  'change',
  'all',
  'getting',
  'wanted',
  'wish',
  'round-it',
  'no-border',
  'odd-shape',
  'abbreviation',
  'size',
  'across',
  'down',
  'side',
  'measure',
  'open',
  'pattern',
  'piece',
  'how-many',
  'how-much',
  'list',
  'done',
  'us',
  'uk',
  'who',
  'when',
  'units',
  'imperial',
  'metric',
  'choose',
  'round',
  'row',
  'terms',
  'answers',
  'right' as SenseName,
  'count',
  'roughly',
  'save',
  'group',
  'place',
  'kind',
  'data',
  'help',
  'still',
  'close',
  'bed',
  'hand',
  'leave',
  'settings',
  'claim',
  'enough',
  'give-back',
  'stuck',
  'behind',
]);

/** A question that may be meant, with what the phrase says of its options. */
export interface Reading {
  readonly route: Route;
  readonly asked: Asked;
  readonly options: Readonly<Record<string, string>>;
  readonly score: number;
  /** The first option that is needed and not given. */
  readonly missing: string | undefined;
  readonly fitted: Fitted;
  /** What was taken off the score because nothing is saved that it could be asked of. */
  readonly absent: number;
  /** What was taken from elsewhere than the phrase, in words. */
  readonly assumed: readonly string[];
}

/** What speaks for the meaning of a word where nothing but that is asked after: it may be the name of another matter. */
const TERM_ALONE = 6;

function partScore(part: Part, heard: Prepared): number | undefined {
  if (part.kind === 'name') {
    if (part.of === 'term')
      return termIn(heard) === undefined ? undefined : asksTermAlone(heard) ? TERM_ALONE : 1;
    return heard.names.some(({ known }) => known.of === part.of) ? 1.5 : undefined;
  }
  if (part.kind === 'piece') {
    if (part.any.includes('number'))
      return heard.pieces.some(({ kind, must }) => must && /^(count|counts|row)$/.test(kind)) ? 1 : undefined;
    return heard.pieces.some(
      (piece) =>
        (part.any.includes(piece.kind) && (piece.must || piece.kind !== 'count')) ||
        part.any.includes(`${piece.kind}:${piece.text}`) ||
        piece.parts?.some(({ kind }) => part.any.includes(kind)),
    )
      ? 1
      : undefined;
  }
  if (part.kind === 'goal') {
    let best: number | undefined;
    for (const goal of heard.goals) {
      const hit = goal.senses.find((sense) => part.any.includes(sense));
      if (hit !== undefined) best = Math.max(best ?? 0, weightOf(hit) + (goal.by === 'which' ? 0.8 : 1.8));
      // “how many do I need”: whatever was spoken of.
      else if (
        goal.senses.length === 0 &&
        !goal.unknown &&
        goal.by !== 'which' &&
        part.any.some((sense) => heard.present.has(sense))
      )
        best = Math.max(best ?? 0, 1.2);
    }
    return best;
  }
  let best: number | undefined;
  for (const sense of part.any) {
    const speaks = heard.weighed.get(sense);
    if (speaks !== undefined && (best === undefined || speaks.for > best)) best = speaks.for;
  }
  return best;
}

/** What a sense that is said speaks for a question, and against one that it does not belong to. */
interface Weighed {
  readonly for: number;
  /** Undefined where it was said inside a longer form only: that speaks against nothing. */
  readonly against: number | undefined;
}

type Prepared = Heard & { readonly weighed: ReadonlyMap<SenseName, Weighed> };

/** Weighs what was said once, for all questions. */
function prepare(heard: Heard): Prepared {
  const { asking, sentence } = heard.mood;
  const asks = (said: readonly Said[]) =>
    asking.size === 0 || said.some(({ from }) => asking.has(sentence[from] ?? 0));
  const weighed = new Map<SenseName, Weighed>();
  for (const [sense, every] of heard.present) {
    const weight = weightOf(sense);
    const words = Math.max(...every.map((one) => one.words));
    const outer = every.filter(({ inner }) => inner !== true);
    weighed.set(sense, {
      for: (weight + Math.min(0.6, (words - 1) * 0.25)) * (asks(every) ? 1 : 0.8),
      against: outer.length === 0 ? undefined : NEUTRAL.has(sense) ? 0 : weight * (asks(outer) ? 0.8 : 0.35),
    });
  }
  return { ...heard, weighed };
}

function wayScore(way: readonly Part[], heard: Prepared): number | undefined {
  let sum = 0;
  for (const part of way) {
    const one = partScore(part, heard);
    if (one === undefined) return undefined;
    sum += one;
  }
  return sum;
}

function judge(grammar: Grammar, heard: Prepared): { score: number } | undefined {
  let best: number | undefined;
  for (const way of grammar.ways) {
    const sum = wayScore(way, heard);
    if (sum !== undefined) best = Math.max(best ?? 0, sum);
  }
  if (best === undefined) return undefined;
  let score = best;
  for (const [sense, { against }] of heard.weighed) {
    if (against === undefined) continue;
    if (grammar.not.has(sense)) score -= 1.5 + weightOf(sense);
    else if (against > 0 && !grammar.also.has(sense)) score -= against;
  }
  // Somebody who asks for a number or a size reports nothing.
  if (
    grammar.asked.reports === true &&
    /^(motif|group)$/.test(grammar.asked.saved ?? '') &&
    heard.goals.some(({ senses }) => senses.length > 0) &&
    !grammar.ways.flat().some(({ kind }) => kind === 'goal')
  )
    score -= ASKED_NOT_TOLD;
  // “I want 50 squares of 15 cm”: what is wished for is not there to be measured or counted yet.
  if (grammar.asked.reports === true && grammar.asked.saved === 'motif' && WISHES.test(heard.phrase))
    score -= WISHED_NOT_TOLD;
  for (const part of grammar.notPieces) if (partScore(part, heard) !== undefined) score -= 2;
  return { score };
}

const WISHES =
  /\b(?:i|we)(?:\s+(?:really|just|now))?\s+(?:want|need|wish|hope|plan|(?:would|['’]d)\s+like)\b(?!\s+to\s+(?:save|keep|note|count|undo|mark))/iu;
/** What is taken off a report where something is wished for. */
const WISHED_NOT_TOLD = 4;

/** What is taken off a report where something is asked for by its noun. */
const ASKED_NOT_TOLD = 1.5;

/** The least that a reading must speak for itself, and how far the next must stay behind. */
const SURE = 2;
const CLEAR = 0.6;
/** The same, where the next would need more than was said and the best has all it needs. */
const CLEAR_OF_GAPS = 0.4;
const REPORT_SURE = 2;
/** The same, where the numbers of a problem are laid down and nothing is asked. */
const STATED_SURE = 4;

export interface Understood {
  readonly heard: Heard;
  /** Readings that are possible at all, the best first. */
  readonly readings: readonly Reading[];
  readonly verdict:
    | { readonly kind: 'answer'; readonly reading: Reading }
    | { readonly kind: 'missing'; readonly reading: Reading; readonly option: string }
    | { readonly kind: 'unclear'; readonly why: 'chat' | 'unknown' | 'between' | 'number' };
}

/** What fills an option that the phrase leaves out, from what is saved: its text, and how that is said. */
export type Fill = (
  option: string,
  reading: {
    readonly route: Route;
    readonly options: Readonly<Record<string, string>>;
    readonly heard: Heard;
  },
) => { readonly text: string; readonly said: string } | undefined;

export interface Around {
  readonly names: readonly KnownName[];
  readonly saved: ReadonlySet<string>;
  readonly fill: Fill;
  /** What was done last of what can be taken back, with the options that name it. */
  readonly last?: { readonly undoes: Asked['undoes']; readonly options: Readonly<Record<string, string>> };
  /** The days that the phrase names. */
  readonly days?: readonly DayFound[];
}

const NOTHING_SAVED: Around = { names: [], saved: new Set(), fill: () => undefined };

/** Senses without which nothing is asked of a make-along where nobody has one. */
const OF_ALONGS: readonly SenseName[] = ['along', 'part', 'my-part'];

/** Senses that say nothing of what is to be taken back. */
const ONLY_UNDO = new Set<SenseName>(['undo', 'mistake', 'mine', 'change', 'done', 'all', 'which', 'need']);
const NOTHING_DONE: Around['last'] = { undoes: 'count', options: {} };
const saysOnlyUndo = ({ present, names, pieces }: Heard): boolean =>
  names.length === 0 && pieces.length === 0 && [...present.keys()].every((sense) => ONLY_UNDO.has(sense));

/** Reads a phrase. */
export function understand(phrase: string, registry: Registry, around: Around = NOTHING_SAVED): Understood {
  const heard = prepare(hear(phrase, around.names, around.days));
  const readings: Reading[] = [];
  for (const grammar of grammarsOf(registry)) {
    const judged = judge(grammar, heard);
    if (!judged || judged.score < 0) continue;
    const { route, asked, slots } = grammar;
    const stated = !heard.mood.asks && asked.reports !== true;
    if (stated && !heard.mood.states) continue;
    if (!(heard.mood.asks || heard.mood.reports)) continue;
    const last =
      asked.undoes !== undefined && saysOnlyUndo(heard) ? (around.last ?? NOTHING_DONE) : undefined;
    if (last && last.undoes !== asked.undoes) continue;
    // “how far behind are we” is no word of a make-along where there is none.
    const isAbsent = asked.saved !== undefined && !around.saved.has(asked.saved);
    if (isAbsent && asked.saved === 'along' && !OF_ALONGS.some((sense) => heard.present.has(sense))) continue;
    const fitted = fit(heard, asked, slots);
    let options: Readonly<Record<string, string>> = { ...last?.options, ...fitted.options };
    if (asked.settle) options = asked.settle(options, fitted.extras);
    const assumed = [...fitted.assumed];
    for (const option of asked.fills ?? []) {
      if (Object.hasOwn(options, option)) continue;
      const found = around.fill(option, { route, options, heard });
      if (found) {
        options = { ...options, [option]: found.text };
        assumed.push(found.said);
      }
    }
    const missing = missingOf(route, asked, options);
    const strange = asked.reports ? heard.strange * 0.5 : heard.strange * 0.12;
    const absent = isAbsent ? 1 : 0;
    const score =
      judged.score -
      absent +
      fitted.score -
      fitted.unplaced.length * 1.5 -
      fitted.unnamed * 1 -
      strange -
      (missing === undefined ? 0 : 0.7);
    // A problem laid down without a word of asking is a question only where nothing of it is left over.
    if (stated && (missing !== undefined || fitted.unplaced.length > 0 || heard.strange > 1)) continue;
    readings.push({ route, asked, options, score, missing, fitted, absent, assumed });
  }
  readings.sort((a, b) => b.score - a.score);
  return { heard, readings, verdict: decide(heard, readings) };
}

/** The first option that is needed and not given; in the order in which they are declared. */
export function missingOf(
  route: Route,
  asked: Asked,
  options: Readonly<Record<string, string>>,
): string | undefined {
  return Object.entries(route.question.options).find(
    ([name, schema]) =>
      !Object.hasOwn(options, name) && (isRequired(schema) || isNeeded(asked, name, options)),
  )?.[0];
}

/** Whether it is the first of a list of which nothing is given. */
export const isNeeded = ({ needs = [] }: Asked, name: string, options: Readonly<Record<string, string>>) =>
  needs.some((list) => list[0] === name && !list.some((one) => Object.hasOwn(options, one)));

function decide(heard: Heard, readings: readonly Reading[]): Understood['verdict'] {
  const [best, next] = readings;
  if (!best)
    return { kind: 'unclear', why: heard.mood.asks && !heard.present.has('chatting') ? 'unknown' : 'chat' };
  const sure = heard.mood.asks ? SURE : best.asked.reports ? REPORT_SURE : STATED_SURE;
  // What asks for something that is not saved yet is understood all the same: the answer says how it is saved.
  const plain = heard.mood.asks && heard.mood.reports && heard.strange === 0;
  const told = best.asked.reports === true && /\b(i|i'm|i've|im|ive|we|we've)\b/i.test(heard.phrase);
  const unsaved = plain && !told ? best.absent : 0;
  if (best.score + unsaved < sure) return { kind: 'unclear', why: 'unknown' };
  const whole = best.missing === undefined && best.fitted.unplaced.length === 0;
  const clear = whole && next?.missing !== undefined ? CLEAR_OF_GAPS : CLEAR;
  if (next && best.score - next.score < clear) return { kind: 'unclear', why: 'between' };
  if (best.fitted.unplaced.length > 0) return { kind: 'unclear', why: 'number' };
  if (best.missing !== undefined) return { kind: 'missing', reading: best, option: best.missing };
  return { kind: 'answer', reading: best };
}
