/**
 * Options, declared once: each reads the text that a person types, and carries what Discord's registration,
 * autocomplete, the help page and the reference need to know.
 */
import { clip, isBareNumber, readNumber, refuseUnclear } from '../core/base/number.ts';
import {
  partsOfBall,
  readBall,
  readGauge,
  readLength,
  readWeight,
  readYarnAtHand,
} from '../core/base/quantity.ts';
import { readCounts, readDay, readIdInList, readNumbers, type InList } from '../core/base/lists.ts';
import {
  describeOtherHooks,
  describeOtherYarns,
  readHook,
  readStitch,
  readStitches,
  readYarn,
} from '../core/base/trade-words.ts';
import { MOST_PRICE, MOST_ROWS } from '../core/base/limits.ts';
import { findBlanketSize, describeBlanketSize, SIZE_NAMES } from '../core/lookup/size.ts';
import { SHAPES } from '../core/rows/index.ts';
import { SHAPE_NAMES } from '../standards/trade-names.ts';
import { Problem } from '../core/base/problem.ts';
import { plain, type Reader } from '../core/base/reader.ts';
import { remembered } from '../core/base/remembered.ts';
import { HOOKS } from '../standards/hooks.ts';
import { STITCHES } from '../standards/stitches.ts';
import { TERMS } from '../standards/terms.ts';
import type { Context } from './context.ts';
import type { RawOptions } from './line.ts';

/** How an option is typed; a room chooses its own control by it. */
export type Kind =
  | 'text'
  | 'integer'
  | 'number'
  | 'choice'
  | 'yesno'
  | 'length'
  | 'weight'
  | 'gauge'
  | 'ball'
  | 'stitch'
  | 'stitches'
  | 'person'
  | 'file'
  | 'photo';

/** Whether it is attached to a question: it is neither typed nor asked again. */
export const isAttachment = (kind: Kind | undefined) => kind === 'file' || kind === 'photo';

export interface Choice {
  /** What is sent. */
  readonly value: string;
  /** What is shown; the value if not given. */
  readonly label?: string;
  /** Other words that mean it, in lower case with single spaces. */
  readonly also?: readonly string[];
}

export interface OptionMeta {
  readonly kind: Kind;
  /** One line, at most 100 characters, that says what to give. */
  readonly says: string;
  /** A value that works. */
  readonly example: string;
  readonly min?: number;
  readonly max?: number;
  readonly maxLength?: number;
  readonly choices?: readonly Choice[];
  /** Words that may stand where a number is asked: `all`. A room's control must let them be typed. */
  readonly words?: readonly string[];
  /** Offers while typing; from memory or from what the maker has saved. The typed text may still be anything. */
  readonly suggest?: (
    typed: string,
    context: Context,
    /** The other options, as far as they are typed. */
    given?: RawOptions,
  ) => readonly Choice[] | Promise<readonly Choice[]>;
  /** True where nothing but what is offered makes sense: a room may let it be chosen instead of typed. */
  readonly onlyOffered?: boolean;
  /** What stands between several, where several may be given. */
  readonly several?: string;
  /** Said among the assumptions when the option is left out; empty where the answer itself says it. */
  readonly assumed?: string;
  /** Said among the assumptions of what was typed, where it could have meant something else. */
  readonly took?: (typed: string) => string | undefined;
}

/**
 * An option as it is declared: what reads its text, and what it is where it is left out. There are hundreds, each made at every
 * start: they are small.
 */
export class Option<T = unknown, K extends Kind = Kind, Needed extends boolean = boolean> {
  constructor(
    readonly meta: OptionMeta & { readonly kind: K },
    /** Its value, of what was typed. Throws a Problem for what it cannot read. */
    readonly read: (text: string) => Exclude<T, undefined>,
    /** Whether it must be given. */
    readonly needed: Needed,
    /** What it is where it is left out. */
    readonly leftOut: T | undefined,
  ) {}

  /** The same, which may be left out. */
  optional(): Option<T | undefined, K, false> {
    return new Option<T | undefined, K, false>(this.meta, this.read, false, undefined);
  }

  /** The same, which is this where it is left out. */
  default(leftOut: Exclude<T, undefined>): Option<T, K, false> {
    return new Option<T, K, false>(this.meta, this.read, false, leftOut);
  }
}

/** An option that must be given, by what reads its text: in the core mostly. */
const declare = <T, K extends Kind>(
  read: (text: string) => Exclude<T, undefined>,
  meta: OptionMeta & { readonly kind: K },
) => new Option<T, K, true>(meta, read, true, undefined);

/** What was declared of an option beside what reads it. */
export const metaOf = ({ meta }: Option): OptionMeta => meta;

/** Whether the option must be given. */
export const isRequired = ({ needed }: Option): boolean => needed;

const outOfRange = (
  shown: string,
  value: number,
  { min, max, hint }: { readonly min: number; readonly max: number; readonly hint: string },
) =>
  new Problem(
    value < min ? 'too-small' : 'too-large',
    `${shown} is ${value < min ? 'too small' : 'too large'} here.`,
    { hint, facts: { min, max, given: value } },
  );

const wholeReader =
  (min: number, max: number, example: string) =>
  (text: string): number => {
    const hint = `Give a whole number from ${min} to ${max}, like ${example}.`;
    const typed = text.trim();
    refuseUnclear(text);
    // More digits than a number holds exactly are said back as they stand.
    if (/^[+-]?\d{17,}$/.test(typed)) throw outOfRange(clip(text), Number(text), { min, max, hint });
    const value = /^[+-]?\d{1,16}$/.test(typed) ? Number(typed) : readNumber(typed);
    if (value === undefined || !Number.isInteger(value))
      throw new Problem('not-a-whole-number', `“${clip(text)}” is not a whole number.`, { hint });
    if (value < min || value > max) throw outOfRange(String(value), value, { min, max, hint });
    return value;
  };

function decimalReader(min: number, max: number, example: string, bare = (text: string) => text) {
  return (text: string): number => {
    const hint = `Give a number from ${min} to ${max}, like ${example}.`;
    const typed = bare(text.trim()).trim();
    refuseUnclear(typed);
    const signed = /^[+-]?\d{1,9}(?:[.,]\d{1,6})?$/.test(typed) ? Number(typed.replace(',', '.')) : undefined;
    const value = signed ?? readNumber(typed);
    if (value === undefined) throw new Problem('not-a-number', `“${clip(text)}” is not a number.`, { hint });
    if (value < min || value > max) throw outOfRange(String(value), value, { min, max, hint });
    return value;
  };
}

/** `10 %`, `10 per cent`. */
const withoutPercent = (text: string) => text.replace(/\s*(?:%|per\s?cent|pct?\.?)$/i, '');
/** `£3.95`, `3,95 €`, `4.50 USD`: whatever money she counts in. */
const withoutMoney = (text: string) =>
  text
    .replace(/^(?:\p{Sc}|[A-Z]{3}\b)\s*/iu, '')
    .replace(/\s*(?:\p{Sc}|\b[A-Z]{3}|euros?|pounds?|dollars?)$/iu, '');

type Said = string | (Partial<Omit<OptionMeta, 'kind'>> & { says: string });
const meta = <K extends Kind>(
  said: Said,
  rest: Omit<OptionMeta, 'says' | 'kind'> & { readonly kind: K },
): OptionMeta & { readonly kind: K } => ({
  ...rest,
  ...(typeof said === 'string' ? { says: said } : said),
});

/** `Solid_Square ` is solid square: capitals, hyphens and lines between words say nothing. */
const plainWords = (text: string) =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ');

const namesOf = remembered(({ value, label, also = [] }: Choice) =>
  [value, ...(label === undefined ? [] : [label]), ...also].map(plainWords),
);

/** A beginning shorter than this may be a slip of the thumb. */
const SHORTEST_BEGINNING = 2;

/**
 * The choice that is meant: its name, its label, another word for it, or a beginning that only one of them has; undefined where it is
 * none of them or could be several.
 */
export function choiceMeant<C extends Choice>(choices: readonly C[], typed: string): C | undefined {
  const words = plainWords(typed);
  const exact = choices.find((choice) => namesOf(choice).includes(words));
  if (exact ?? words.length < SHORTEST_BEGINNING) return exact;
  const begun = choices.filter((choice) => namesOf(choice).some((name) => name.startsWith(words)));
  return begun.length === 1 ? begun[0] : undefined;
}

function oneOf<const V extends string>(choices: readonly (V | (Choice & { readonly value: V }))[]) {
  const listed: readonly (Choice & { readonly value: V })[] = choices.map((choice) =>
    typeof choice === 'string' ? { value: choice } : choice,
  );
  return {
    listed,
    read: (text: string): V => {
      const found = choiceMeant(listed, text);
      if (found) return found.value;
      throw new Problem('not-a-choice', `“${clip(text)}” is not one of the choices.`, {
        hint: `Choose ${listed.map(({ value, also }) => (also?.[0] === undefined ? value : `${value} (${also[0]})`)).join(', ')}.`,
      });
    },
  };
}

const matching = (choices: readonly Choice[], typed: string) =>
  choices.filter((choice) =>
    `${choice.value} ${choice.label ?? ''}`.toLowerCase().includes(typed.trim().toLowerCase()),
  );

/** All of them, as people say it. */
const ALL = /^\s*(?:all|all of (?:them|it)|every(?: one|thing)?|the (?:lot|whole (?:lot|blanket)))\s*$/i;

const YES_NO = [
  { value: 'yes', also: ['y', 'yeah', 'yep', 'ok', 'okay', 'sure', 'true', 'on'] },
  { value: 'no', also: ['n', 'nope', 'false', 'off'] },
] as const;

const SHAPE_CHOICES = SHAPES.map((value) => {
  const { names, alone } = SHAPE_NAMES[value];
  return { value, also: [...names, ...alone] };
});

/** Text without tokens and controls. Throws Problem: empty-text, text-too-long. */
function readText(text: string, max: number, example: string): string {
  const clean = plain(text)
    .replace(/[\p{Cc}\p{Cf}]/gu, ' ')
    .trim();
  if (clean === '')
    throw new Problem('empty-text', 'Nothing is written there.', {
      hint: `Write something like ${example}.`,
    });
  if ([...clean].length > max) {
    throw new Problem('text-too-long', `That is longer than ${max} characters.`, {
      facts: { most: max, given: [...clean].length },
      hint: `Write at most ${max}, like ${example}.`,
    });
  }
  return clean;
}

/** The kinds of options. Each takes a line that says what to give, or that line with more of its declaration. */
export const opt = {
  /** Free text: a name, a note. */
  text: (said: Said, { max = 100, example = 'moss' } = {}) =>
    declare((text) => readText(text, max, example), meta(said, { kind: 'text', example, maxLength: max })),
  /** A whole number. */
  whole: (said: Said, { min = 1, max = 10_000, example = '12' } = {}) =>
    declare(wholeReader(min, max, example), meta(said, { kind: 'integer', example, min, max })),
  /** A whole number, or `all` of something that is known: 'all' is handed on. */
  wholeOrAll: (said: Said, { min = 1, max = 10_000, example = '12' } = {}) => {
    const number = wholeReader(min, max, example);
    return declare(
      (text): number | 'all' => (ALL.test(text) ? 'all' : number(text)),
      meta(said, { kind: 'integer', example, min, max, words: ['all'] }),
    );
  },
  /** A thing in a list by its number; or by the id that stays its own, which buttons carry as `id12`. */
  inList: (said: Said, { max = 10_000, example = '12' } = {}) => {
    const number = wholeReader(1, max, example);
    return declare(
      (text): InList => readIdInList(text) ?? { number: number(text) },
      meta(said, { kind: 'integer', example, min: 1, max }),
    );
  },
  /** A percentage, with or without its sign. */
  percent: (said: Said, { min = 0, max = 100, example = '10' } = {}) =>
    declare(
      decimalReader(min, max, example, withoutPercent),
      meta(said, { kind: 'number', example, min, max }),
    ),
  /** Any other number: an amount of money, hours. */
  number: (said: Said, { min = 0, max = MOST_PRICE, example = '4.5' } = {}) =>
    declare(decimalReader(min, max, example), meta(said, { kind: 'number', example, min, max })),
  /** An amount of money, with or without its sign. */
  money: (said: Said, { max = MOST_PRICE, example = '4.50' } = {}) =>
    declare(
      decimalReader(0, max, example, withoutMoney),
      meta(said, { kind: 'number', example, min: 0, max }),
    ),
  choice: <const V extends string>(
    said: Said,
    choices: readonly (V | (Choice & { readonly value: V }))[],
    example: V,
  ) => {
    const { read, listed } = oneOf(choices);
    return declare(read, meta(said, { kind: 'choice', example, choices: listed }));
  },
  yesno: (said: Said, example: 'yes' | 'no' = 'yes') => {
    const { read, listed } = oneOf(YES_NO);
    return declare((text) => read(text) === 'yes', meta(said, { kind: 'yesno', example, choices: listed }));
  },
  shape: (said: Said = 'The motif’s shape', example: (typeof SHAPES)[number] = 'diagonal') => {
    const { read, listed } = oneOf(SHAPE_CHOICES);
    return declare(read, meta(said, { kind: 'choice', example, choices: listed }));
  },
  /** What the shape is sized by. */
  size: (
    said: Said = 'Rising rows of a diagonal square, blocks along a side, rounds, or stitches of a flat piece',
  ) =>
    declare(
      wholeReader(1, MOST_ROWS, '12'),
      meta(said, { kind: 'integer', example: '12', min: 1, max: MOST_ROWS }),
    ),
  /** A length; `allowZero` where nothing of it is a sensible answer too. */
  length: (said: Said, example = '120cm', { allowZero = false } = {}) =>
    declare(
      allowZero ? (text) => readLength(text, { allowZero }) : readLength,
      meta(said, { kind: 'length', example, maxLength: 40 }),
    ),
  weight: (said: Said, example = '85g') =>
    declare(readWeight, meta(said, { kind: 'weight', example, maxLength: 40 })),
  /** Yarn at hand: a weight, or so many balls. */
  yarnAtHand: (said: Said, example = '85g') =>
    declare(readYarnAtHand, meta(said, { kind: 'weight', example, maxLength: 40 })),
  gauge: (said: Said = 'Stitches x rows over 10 cm, like 13x10, or 13x10 over 4in', example = '13x10') =>
    declare(readGauge, meta(said, { kind: 'gauge', example, maxLength: 60 })),
  ball: (said: Said = 'Length and weight of a ball, like 170m/100g or 364yd/198g', example = '170m/100g') =>
    declare(readBall, meta(said, { kind: 'ball', example, maxLength: 60 })),
  hook: (said: Said = 'The hook: 5mm, or a US size like H-8', example = '5mm') =>
    declare(
      readHook,
      meta(said, {
        kind: 'text',
        example,
        maxLength: 20,
        took: describeOtherHooks,
        suggest: (typed) =>
          matching(
            HOOKS.map((hook) => ({
              value: `${hook.mm}mm`,
              label: `${hook.mm} mm${hook.US === undefined ? '' : ` · US ${hook.US}`}${hook.oldUK === undefined ? '' : ` · old UK ${hook.oldUK}`}`,
            })),
            typed,
          ),
      }),
    ),
  stitch: (said: Said = 'The stitch', example: (typeof STITCHES)[number] = 'hdc') =>
    declare(
      readStitch,
      meta(said, {
        kind: 'stitch',
        example,
        // A choice from a list says whose terms it is in, so that nobody's setting can turn it into another stitch.
        choices: STITCHES.map((stitch) => ({
          value: `US ${stitch}`,
          label: `US ${TERMS[stitch].US} (UK ${TERMS[stitch].UK})`,
        })),
      }),
    ),
  /** One stitch a round. */
  stitches: (said: Said, example = 'hdc dc hdc') =>
    declare(readStitches, meta(said, { kind: 'stitches', example, maxLength: 200 })),
  yarn: (
    said: Said = 'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi',
    example = '4',
  ) => declare(readYarn, meta(said, { kind: 'text', example, maxLength: 40, took: describeOtherYarns })),
  /** What a blanket is for: a word such as queen, throw, crib. */
  blanketSize: (
    said: Said = 'What it is for, instead of width and height: throw, queen, crib, UK king',
    example = 'throw',
  ) =>
    declare(
      (text) => findBlanketSize(text).taken,
      meta(said, {
        kind: 'text',
        example,
        maxLength: 40,
        took: describeBlanketSize,
        suggest: (typed) =>
          matching(
            SIZE_NAMES.map((value) => ({ value })),
            typed,
          ),
      }),
    ),
  counts: (said: Said, example = '3 5 7 8') =>
    declare(readCounts, meta(said, { kind: 'text', example, maxLength: 2000 })),
  /** A day, YYYY-MM-DD. */
  day: (said: Said, example = '2031-05-31') =>
    declare(readDay, meta(said, { kind: 'text', example, maxLength: 30 })),
  /** A list of numbers, `3 5 7-9`. */
  numbers: (said: Said, example = '3 5 7-9') =>
    declare(readNumbers, meta(said, { kind: 'text', example, maxLength: 2000 })),
  /** A list of numbers, or `all` of something that is known: 'all' is handed on. */
  numbersOrAll: (said: Said, example = '3 5 7-9') =>
    declare(
      (text): number[] | 'all' => (ALL.test(text) ? 'all' : readNumbers(text)),
      meta(said, { kind: 'text', example, maxLength: 2000 }),
    ),
  /** Somebody: a room that knows people lets one be chosen; elsewhere a name is typed. */
  person: (
    said: Said,
    { suggest, example = 'rowan' }: Pick<OptionMeta, 'suggest'> & { readonly example?: string } = {},
  ) =>
    declare(
      (text) => readText(text, 100, example),
      meta(said, { kind: 'person', example, maxLength: 100, ...(suggest === undefined ? {} : { suggest }) }),
    ),
  /** The text of a file: an attachment in Discord, a path in the terminal. */
  file: (said: Said, example = 'project.json') =>
    declare((text) => text, meta(said, { kind: 'file', example })),
  /** The name of a picture that is attached; the room has the picture itself, where it can show one. */
  photo: (said: Said, example = 'photo.jpg') =>
    declare((text) => text, meta(said, { kind: 'photo', example })),
};

/**
 * A typed value made independent of whose it is: a bare number gets the maker's own unit, a bare stitch her own terms.
 * Everything after this reads text that says what it means.
 */
export function inOwnUnits(kind: Kind, text: string, reader: Reader): string {
  const imperial = reader.units === 'imperial';
  if (kind === 'length') return withUnit(text, imperial ? 'in' : 'cm');
  if (kind === 'weight') return withUnit(text, imperial ? 'oz' : 'g');
  if (kind === 'ball') {
    const parts = partsOfBall(text);
    if (parts === undefined) return text;
    return `${withUnit(parts.length, imperial ? 'yd' : 'm')}/${withUnit(parts.weight, imperial ? 'oz' : 'g')}`;
  }
  if (kind === 'gauge') {
    const over = overOf(text);
    return over !== undefined && isBareNumber(over) ? `${text.trim()} ${imperial ? 'in' : 'cm'}` : text;
  }
  if (kind === 'stitch' || kind === 'stitches') return `${reader.terms} ${text.trim()}`;
  return text;
}

/** A bare number with the unit behind it. */
const withUnit = (part: string, unit: string) => (isBareNumber(part) ? `${part.trim()} ${unit}` : part);

/** What a gauge is said to be counted over: the end of `13x10 over 4`. */
const overOf = (text: string) =>
  /(?:\b(?:over|per|in|to|for|every)\s+|[/=@]\s*)(\S[^/=@]*)$/i.exec(text)?.[1];

export type Options = Readonly<Record<string, Option>>;

/** What a question is handed: each option read. */
export type Parsed<O extends Options> = {
  readonly [Name in keyof O]: O[Name] extends Option<infer T> ? T : never;
};

/** An option that may be left out. */
type Optional = Option<unknown, Kind, false>;

/** What is given for an option where another question names it: a value, with the core's unit where it has one. */
type GivenValue<O> =
  O extends Option<infer T, 'choice'>
    ? Exclude<T, undefined>
    : O extends Option<unknown, infer K>
      ? K extends keyof GivenByKind
        ? GivenByKind[K]
        : string
      : string;

interface GivenByKind {
  readonly integer: number;
  readonly number: number;
  readonly yesno: boolean;
  /** A bare number would be read in the reader's own units. */
  readonly length: `${number}cm`;
  readonly weight: `${number}g`;
}

/** Options given to a question by another: those that must be given, those that may be. */
export type Given<O extends Options> = {
  readonly [Name in keyof O as O[Name] extends Optional ? never : Name]: GivenValue<O[Name]>;
} & {
  readonly [Name in keyof O as O[Name] extends Optional ? Name : never]?: GivenValue<O[Name]> | undefined;
};

/** Given values as they would be typed; what is undefined is left out. */
export function typed(given: Readonly<Record<string, string | number | boolean | undefined>>): RawOptions {
  return Object.fromEntries(
    Object.entries(given).flatMap(([name, value]) =>
      value === undefined
        ? []
        : [[name, typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value)]],
    ),
  );
}
