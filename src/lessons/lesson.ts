/**
 * What a lesson is: an idea, one worked example, and practice with fresh numbers, in which a wrong number is met with the slip that
 * gives exactly that number. Texts are neutral, as an answer's are: units and terms are tokens.
 */
import { seedChance, type Chance } from '../core/base/chance.ts';
import type { Reader } from '../core/base/reader.ts';
import { Working, type Formula, type Step } from '../core/base/working.ts';
import { CM_PER_INCH, G_PER_OUNCE } from '../standards/units.ts';

/** The numbers of one task, by name, in the core's units. */
export type Given<Name extends string = string> = Readonly<Record<Name, number>>;

/** Whose lesson it is: her ways, and the rising rows of her own diagonal square, if she has saved one. */
export interface Own extends Pick<Reader, 'units' | 'terms'> {
  readonly size?: number | undefined;
}

/** What is asked for, and so how an answer is read and how near it must come. */
export type Asks =
  /** How many of something; a row by its number; a number that may have decimals; per cent. */
  | { readonly kind: 'count' | 'row' | 'number' | 'percent'; readonly of: string }
  /** A length, and yarn or seam. */
  | { readonly kind: 'cm' | 'm'; readonly of: string }
  /** A stitch by its name in these terms; its number is its place among the stitches. */
  | { readonly kind: 'stitch'; readonly of: string; readonly terms: Reader['terms'] };

/** The result with the steps that lead to it. */
export interface Solved {
  readonly value: number;
  readonly working: readonly Step[];
}

/** One way of going wrong that people know. */
export interface Slip<Name extends string> {
  /** Stays the same: it is counted and kept. */
  readonly key: string;
  /** What one arrives at by it; undefined where these numbers leave no room for it. */
  value(given: Given<Name>): number | undefined;
  /** What happened, and what to do with the hands or the pencil; never the result. */
  says(given: Given<Name>): string;
}

export interface Practice<Name extends string> {
  /** Fresh numbers; with her own motif's where the task is about one. */
  draw(chance: Chance, own: Own): Given<Name>;
  /** The task in a sentence or two that end in a question. */
  says(given: Given<Name>): string;
  asks(given: Given<Name>): Asks;
  /** Whether these numbers have one right answer only, however it is rounded; they have, where this is left out. */
  isPlain?(given: Given<Name>): boolean;
  solve(given: Given<Name>): Solved;
  readonly slips: readonly Slip<Name>[];
  /** The first thing to check, where nothing tells what went wrong. */
  first(given: Given<Name>): string;
}

/**
 * What a lesson has drawn: a small square from corner to corner, stitch by stitch; the top edge of a row; a square on its diagonals; squares
 * sewn in strips; a corner of a border.
 */
export type Drawn = 'square' | 'edge' | 'diagonals' | 'strips' | 'corner';

/** Numbers of a worked example, and the question that answers it: its line, and which of its figures, if it is one. */
export interface Example<Name extends string = string> {
  readonly given: Given<Name>;
  readonly line: string;
  readonly figure?: string;
}

export interface Lesson<Name extends string = string> {
  /** As it is typed. */
  readonly name: string;
  readonly title: string;
  /** What is good to know first: names of lessons. */
  readonly needs: readonly string[];
  /** Two or three sentences. */
  readonly idea: string;
  readonly example: Example<Name>;
  /** The same for those who measure in inches, where its numbers would come out odd. */
  readonly inInches?: Example<Name>;
  /** What is drawn, where a drawing says it better. */
  readonly draws?: Drawn;
  readonly practice: Practice<Name>;
}

/** Declares a lesson; the names of the example's numbers are those that the practice is handed. */
export function lesson<const Name extends string>(declared: Lesson<Name>): Lesson<Name> {
  return declared;
}

/** The example that is in her units. */
export const exampleFor = (
  { example, inInches }: Pick<Lesson, 'example' | 'inInches'>,
  { units }: Pick<Own, 'units'>,
): Example => (units === 'imperial' ? (inInches ?? example) : example);

/** The result of one formula, with its step. */
export function solveBy<Name extends string>(
  what: Formula<Name>,
  values: Readonly<Record<NoInfer<Name>, number>>,
): Solved {
  const working = new Working();
  return { value: working.do(what, values), working: working.steps };
}

/** Of many steps those of these formulas. */
export const stepsOf = (working: Working, ...formulas: readonly Formula[]): readonly Step[] =>
  working.steps.filter((step) => formulas.some(({ formula }) => formula === step.formula));

/** A number from `least` to `most`, going by `by`. */
export const pick = (chance: Chance, least: number, most: number, by = 1): number =>
  least + by * Math.floor(chance() * (Math.floor((most - least) / by + 1e-9) + 1));

/** One of a list. */
export const pickOf = <T>(chance: Chance, list: readonly T[]): T => {
  const one = list[pick(chance, 0, list.length - 1)];
  if (one === undefined) throw new Error('nothing to pick from');
  return one;
};

/** A length in cm that is whole in her own units: from `least` to `most` cm or inches. */
export const pickLength = (
  chance: Chance,
  { units }: Pick<Own, 'units'>,
  inCm: readonly [number, number],
  inInches: readonly [number, number],
): number => (units === 'metric' ? pick(chance, ...inCm) : CM_PER_INCH * pick(chance, ...inInches));

/** A weight in g as her scale shows it: from `least` to `most` whole grams or tenths of an ounce. */
export const pickWeight = (
  chance: Chance,
  { units }: Pick<Own, 'units'>,
  inGrams: readonly [number, number],
  inTenths: readonly [number, number],
): number => (units === 'metric' ? pick(chance, ...inGrams) : (G_PER_OUNCE * pick(chance, ...inTenths)) / 10);

/** The largest of her own squares that a task is about. */
const LARGEST_OWN = 40;

/** Her own size where it is large enough for a task, else one that is drawn. */
export const pickSize = (chance: Chance, { size }: Pick<Own, 'size'>, least = 8, most = 18): number =>
  size !== undefined && size >= least && size <= LARGEST_OWN ? size : pick(chance, least, most);

/** Measured answers may be off by so much of the right one: what rounding on the way makes of it. */
const MEASURED_WITHIN = 0.015;
/** The same of per cent, in points. */
const PERCENT_WITHIN = 0.3;

/** How far an answer may be off and still be that number. */
export function nearEnough({ kind }: Pick<Asks, 'kind'>, value: number): number {
  if (kind === 'count' || kind === 'row' || kind === 'stitch') return 0;
  const part = MEASURED_WITHIN * Math.abs(value);
  return kind === 'percent' ? Math.max(PERCENT_WITHIN, part) : part;
}

const isNear = (asks: Asks, given: number, wanted: number) =>
  Math.abs(given - wanted) <= nearEnough(asks, wanted) + 1e-9;

/** The slips that these numbers leave room for, each with what it gives. */
export const listSlips = <Name extends string>({ practice }: Lesson<Name>, given: Given<Name>) =>
  practice.slips.flatMap((slip) => {
    const value = slip.value(given);
    return value === undefined ? [] : [{ slip, value }];
  });

/** Whether no two ways through the task, right or wrong, could be taken for one another, and there is one right one. */
export function isClear<Name extends string>(of: Lesson<Name>, given: Given<Name>): boolean {
  if (of.practice.isPlain?.(given) === false) return false;
  const asks = of.practice.asks(given);
  const values = [of.practice.solve(given).value, ...listSlips(of, given).map(({ value }) => value)];
  return values.every(
    (one, at) =>
      Number.isFinite(one) &&
      values
        .slice(at + 1)
        .every((other) => Math.abs(one - other) > nearEnough(asks, one) + nearEnough(asks, other) + 1e-6),
  );
}

const MOST_DRAWS = 300;

/** Numbers for a task, the same from the same seed: such as tell every slip from every other and from the right way. */
export function drawTask<Name extends string>(of: Lesson<Name>, seed: number, own: Own): Given<Name> {
  const chance = seedChance(seed);
  for (let tried = 0; tried < MOST_DRAWS; tried++) {
    const given = of.practice.draw(chance, own);
    if (isClear(of, given)) return given;
  }
  throw new Error(`${MOST_DRAWS} draws of the lesson ${of.name} gave no clear task`);
}

/** What an answer is: right, a slip that is known, or neither. */
export function judge<Name extends string>(
  of: Lesson<Name>,
  given: Given<Name>,
  answer: number,
): { readonly right: boolean; readonly slip?: Slip<Name> } {
  const asks = of.practice.asks(given);
  if (isNear(asks, answer, of.practice.solve(given).value)) return { right: true };
  const found = listSlips(of, given).find(({ value }) => isNear(asks, answer, value));
  return found === undefined ? { right: false } : { right: false, slip: found.slip };
}
