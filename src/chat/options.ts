/**
 * Options, declared once: each is a zod schema of the text a person types, carrying what Discord's registration,
 * autocomplete, the help page and the reference need to know.
 */
import * as z from 'zod';
import {
  clip,
  isBareNumber,
  readBall,
  readGauge,
  readLength,
  readWeight,
  refuseUnclear,
} from '../core/base/quantity.ts';
import { readCounts, readDay, readNumbers } from '../core/base/lists.ts';
import { readHook, readStitch, readStitches, readYarn } from '../core/base/trade-words.ts';
import { lookUpHook } from '../core/lookup/hook.ts';
import { MOST_ROWS } from '../core/base/limits.ts';
import { blanketFor, blanketForWords, SIZE_NAMES } from '../core/lookup/size.ts';
import { SHAPES } from '../core/rows/index.ts';
import { Problem } from '../core/base/problem.ts';
import { mm, plain, type Reader } from '../core/base/reader.ts';
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
  | 'file';

export interface Choice {
  /** What is sent. */
  readonly value: string;
  /** What is shown; the value if not given. */
  readonly label?: string;
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
  /** Offers while typing; from memory or from what the maker has saved. The typed text may still be anything. */
  readonly suggest?: (typed: string, context: Context) => readonly Choice[] | Promise<readonly Choice[]>;
  /** Said among the assumptions when the option is left out. */
  readonly assumed?: string;
  /** Said among the assumptions of what was typed, where it could have meant something else. */
  readonly took?: (typed: string) => string | undefined;
}

const registered = new WeakMap<z.ZodType, OptionMeta>();

declare const KIND: unique symbol;
/** A schema that is known, to the compiler alone, to be typed as a kind. */
type Declared<S extends z.ZodType, K extends Kind> = S & { readonly [KIND]?: K };

function declare<S extends z.ZodType, K extends Kind>(
  schema: S,
  meta: OptionMeta & { readonly kind: K },
): Declared<S, K> {
  registered.set(schema, meta);
  return schema;
}

/** What was declared of an option, looking through `.optional()` and `.default()`. */
export function metaOf(schema: z.ZodType): OptionMeta {
  for (let inner: z.ZodType | undefined = schema; inner;) {
    const meta = registered.get(inner);
    if (meta) return meta;
    inner = (inner.def as { innerType?: z.ZodType }).innerType;
  }
  throw new Error('an option that was not declared through opt');
}

/** Whether the option must be given. */
export const isRequired = (schema: z.ZodType) => !schema.safeParse(undefined).success;

/** One for all that are read: there are hundreds of options, and each start would wait for as many to be made. */
const TEXT = z.string();

/** Text of a person, read by the core; a Problem becomes an issue of zod's, which `problemOf` gives back. */
function reading<T>(read: (text: string) => T) {
  return TEXT.transform((text, issues): T => {
    try {
      return read(text);
    } catch (problem) {
      if (!(problem instanceof Problem)) throw problem;
      issues.addIssue({ code: 'custom', message: problem.message, params: { problem } });
      return z.NEVER;
    }
  });
}

/** The Problem that a reader threw, out of what zod makes of it. */
export function problemOf({ issues: [issue] }: z.ZodError): Problem | undefined {
  const problem: unknown = issue?.code === 'custom' ? issue.params?.['problem'] : undefined;
  return problem instanceof Problem ? problem : undefined;
}

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

function whole(min: number, max: number, example: string) {
  return reading((text) => {
    const hint = `Give a whole number from ${min} to ${max}, like ${example}.`;
    refuseUnclear(text);
    // More digits than a number holds exactly are said back as they stand.
    if (/^[+-]?\d{17,}$/.test(text.trim())) throw outOfRange(clip(text), Number(text), { min, max, hint });
    if (!/^[+-]?\d{1,16}$/.test(text.trim()))
      throw new Problem('not-a-whole-number', `“${clip(text)}” is not a whole number.`, { hint });
    const value = Number(text);
    if (value < min || value > max) throw outOfRange(String(value), value, { min, max, hint });
    return value;
  });
}

function decimal(min: number, max: number, example: string, suffix = '') {
  return reading((text) => {
    const hint = `Give a number from ${min} to ${max}, like ${example}.`;
    refuseUnclear(text);
    const bare = suffix === '' ? text.trim() : text.trim().replace(new RegExp(`\\s*${suffix}$`), '');
    if (!/^[+-]?\d{1,9}([.,]\d{1,6})?$/.test(bare))
      throw new Problem('not-a-number', `“${clip(text)}” is not a number.`, { hint });
    const value = Number(bare.replace(',', '.'));
    if (value < min || value > max) throw outOfRange(String(value), value, { min, max, hint });
    return value;
  });
}

type Said = string | (Partial<Omit<OptionMeta, 'kind'>> & { says: string });
const meta = <K extends Kind>(
  said: Said,
  rest: Omit<OptionMeta, 'says' | 'kind'> & { readonly kind: K },
): OptionMeta & { readonly kind: K } => ({
  ...rest,
  ...(typeof said === 'string' ? { says: said } : said),
});

function oneOf<const V extends string>(choices: readonly (V | (Choice & { readonly value: V }))[]) {
  const listed = choices.map((choice) => (typeof choice === 'string' ? { value: choice } : choice));
  return {
    listed,
    schema: reading((text): V => {
      const typed = text.trim().toLowerCase();
      const found = listed.find(
        (choice) => choice.value.toLowerCase() === typed || choice.label?.toLowerCase() === typed,
      );
      if (found) return found.value;
      throw new Problem('not-a-choice', `“${clip(text)}” is not one of the choices.`, {
        hint: `Choose ${listed.map((choice) => choice.value).join(', ')}.`,
      });
    }),
  };
}

const matching = (choices: readonly Choice[], typed: string) =>
  choices.filter((choice) =>
    `${choice.value} ${choice.label ?? ''}`.toLowerCase().includes(typed.trim().toLowerCase()),
  );

/** A bare number is millimetres; where it is the number of another hook too, that is said. */
function otherHooks(typed: string): string | undefined {
  if (!isBareNumber(typed)) return undefined;
  const read = readHook(typed);
  const others = lookUpHook(typed).filter(
    ({ system, mm: size }) => (system === 'US' || system === 'US steel') && size !== read,
  );
  if (others.length === 0) return undefined;
  const named = others.map(({ system, mm: size }) => `${system} ${typed.trim()} is ${mm(size)}`);
  return `${typed.trim()} is read as ${mm(read)}; ${named.join(', ')}.`;
}

/** The kinds of options. Each takes a line that says what to give, or that line with more of its declaration. */
export const opt = {
  /** Free text: a name, a note. */
  text: (said: Said, { max = 100, example = 'moss' } = {}) =>
    declare(
      reading((text) => {
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
      }),
      meta(said, { kind: 'text', example, maxLength: max }),
    ),
  /** A whole number. */
  whole: (said: Said, { min = 1, max = 10_000, example = '12' } = {}) =>
    declare(whole(min, max, example), meta(said, { kind: 'integer', example, min, max })),
  /** A percentage, with or without its sign. */
  percent: (said: Said, { min = 0, max = 100, example = '10' } = {}) =>
    declare(decimal(min, max, example, '%'), meta(said, { kind: 'number', example, min, max })),
  /** Any other number: an amount of money, hours. */
  number: (said: Said, { min = 0, max = 1_000_000, example = '4.5' } = {}) =>
    declare(decimal(min, max, example), meta(said, { kind: 'number', example, min, max })),
  choice: <const V extends string>(
    said: Said,
    choices: readonly (V | (Choice & { readonly value: V }))[],
    example: V,
  ) => {
    const { schema, listed } = oneOf(choices);
    return declare(schema, meta(said, { kind: 'choice', example, choices: listed }));
  },
  yesno: (said: Said, example: 'yes' | 'no' = 'yes') => {
    const { schema, listed } = oneOf(['yes', 'no']);
    return declare(
      schema.transform((value) => value === 'yes'),
      meta(said, { kind: 'yesno', example, choices: listed }),
    );
  },
  shape: (said: Said = 'The motif’s shape', example: (typeof SHAPES)[number] = 'diagonal') => {
    const { schema, listed } = oneOf(SHAPES);
    return declare(schema, meta(said, { kind: 'choice', example, choices: listed }));
  },
  /** What the shape is sized by. */
  size: (
    said: Said = 'Rising rows of a diagonal square, blocks along a side, rounds, or stitches of a flat piece',
  ) =>
    declare(
      whole(1, MOST_ROWS, '12'),
      meta(said, { kind: 'integer', example: '12', min: 1, max: MOST_ROWS }),
    ),
  /** A length; `allowZero` where nothing of it is a sensible answer too. */
  length: (said: Said, example = '120cm', { allowZero = false } = {}) =>
    declare(
      reading(allowZero ? (text) => readLength(text, { allowZero }) : readLength),
      meta(said, { kind: 'length', example, maxLength: 40 }),
    ),
  weight: (said: Said, example = '85g') =>
    declare(reading(readWeight), meta(said, { kind: 'weight', example, maxLength: 40 })),
  gauge: (said: Said = 'Stitches x rows over 10 cm, like 13x10, or 13x10 over 4in', example = '13x10') =>
    declare(reading(readGauge), meta(said, { kind: 'gauge', example, maxLength: 60 })),
  ball: (said: Said = 'Length and weight of a ball, like 170m/100g or 364yd/198g', example = '170m/100g') =>
    declare(reading(readBall), meta(said, { kind: 'ball', example, maxLength: 60 })),
  hook: (said: Said = 'The hook: 5mm, or a US size like H-8', example = '5mm') =>
    declare(
      reading(readHook),
      meta(said, {
        kind: 'text',
        example,
        maxLength: 20,
        took: otherHooks,
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
      reading(readStitch),
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
    declare(reading(readStitches), meta(said, { kind: 'stitches', example, maxLength: 200 })),
  yarn: (
    said: Said = 'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi',
    example = '4',
  ) => declare(reading(readYarn), meta(said, { kind: 'text', example, maxLength: 30 })),
  /** What a blanket is for: a word such as queen, throw, crib. */
  blanketSize: (
    said: Said = 'What it is for, instead of width and height: throw, queen, crib, UK king',
    example = 'throw',
  ) =>
    declare(
      reading((text) => blanketFor(text).taken),
      meta(said, {
        kind: 'text',
        example,
        maxLength: 40,
        took: blanketForWords,
        suggest: (typed) =>
          matching(
            SIZE_NAMES.map((value) => ({ value })),
            typed,
          ),
      }),
    ),
  counts: (said: Said, example = '3 5 7 8') =>
    declare(reading(readCounts), meta(said, { kind: 'text', example, maxLength: 2000 })),
  /** A day, YYYY-MM-DD. */
  day: (said: Said, example = '2031-05-31') =>
    declare(reading(readDay), meta(said, { kind: 'text', example, maxLength: 10 })),
  /** A list of numbers, `3 5 7-9`. */
  numbers: (said: Said, example = '3 5 7-9') =>
    declare(reading(readNumbers), meta(said, { kind: 'text', example, maxLength: 2000 })),
  /** The text of a file: an attachment in Discord, a path in the terminal. */
  file: (said: Said, example = 'project.json') => declare(z.string(), meta(said, { kind: 'file', example })),
};

/**
 * A typed value made independent of whose it is: a bare number gets the maker's own unit, a bare stitch her own terms.
 * Everything after this reads text that says what it means.
 */
export function inOwnUnits(kind: Kind, text: string, reader: Reader): string {
  const imperial = reader.units === 'imperial';
  if (kind === 'length' && isBareNumber(text)) return `${text.trim()}${imperial ? 'in' : 'cm'}`;
  if (kind === 'weight' && isBareNumber(text)) return `${text.trim()}${imperial ? 'oz' : 'g'}`;
  if (kind === 'ball') {
    const [length, weight, ...more] = text.split('/');
    if (length === undefined || weight === undefined || more.length > 0) return text;
    const unit = (part: string, own: string) => (isBareNumber(part) ? `${part.trim()}${own}` : part);
    return `${unit(length, imperial ? 'yd' : 'm')}/${unit(weight, imperial ? 'oz' : 'g')}`;
  }
  if (kind === 'gauge') {
    const over = /(?:\b(?:over|per|in|to)\s+|\/\s*)(\S[^/]*)$/i.exec(text)?.[1];
    return over !== undefined && isBareNumber(over) ? `${text.trim()}${imperial ? 'in' : 'cm'}` : text;
  }
  if ((kind === 'stitch' || kind === 'stitches') && !/^\s*(us|uk)\s/i.test(text))
    return `${reader.terms} ${text.trim()}`;
  return text;
}

export type Options = Readonly<Record<string, z.ZodType>>;

/** What a question is handed: each option read. */
export type Parsed<O extends Options> = { readonly [Name in keyof O]: z.output<O[Name]> };

/** An option that may be left out. */
type Optional = z.ZodOptional | z.ZodDefault;

/** What is given for an option where another question names it: a value, with the core's unit where it has one. */
type GivenValue<S> = S extends z.ZodOptional<infer Inner> | z.ZodDefault<infer Inner>
  ? GivenValue<Inner>
  : S extends Declared<infer Schema, 'choice'>
    ? z.output<Schema>
    : S extends Declared<z.ZodType, infer K>
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
