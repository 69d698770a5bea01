/** What is saved of a maker: one document each, checked on reading and before writing. */
import * as z from 'zod';
import {
  LONGEST_NAME,
  MOST_ALONG,
  MOST_BLANKETS,
  MOST_KINDS,
  MOST_MINUTES,
  MOST_MOTIFS,
  MOST_ON_SCALE,
  MOST_PLACES,
  MOST_ROUNDS,
  MOST_ROWS,
  MOST_ROWS_WORKED,
  MOST_WEIGHINGS,
} from '../core/base/limits.ts';
import { lazily } from '../core/base/lazily.ts';
import { MOST_SEED } from '../core/base/chance.ts';
import { SEAM_METHODS } from '../core/edges/seams.ts';
import { SHAPES } from '../core/rows/plan.ts';
import { weighingsOf } from '../core/yarn/weighings.ts';
import { STITCHES } from '../standards/stitches.ts';
import { frozen } from './store.ts';

/**
 * A list, its length looked at before anything in it: a long one of what does not fit is refused at once. What was checked once is
 * frozen, and is not checked again where it stands in a list unchanged. What it is checked by is made for the first.
 */
function listOf<T extends z.ZodType>(of: () => T, most: number, least = 0) {
  const known = new WeakSet();
  // Nobody alters what stands in a list; what is to be different is put in its place.
  type One = z.output<T> extends object ? Readonly<z.output<T>> : z.output<T>;
  const isKnown = (one: unknown): one is One => typeof one === 'object' && one !== null && known.has(one);
  return z
    .array(z.unknown())
    .min(least)
    .max(most)
    .transform((list, { issues }) =>
      list.map((one, at): One => {
        if (isKnown(one)) return one;
        const { success, data, error } = of().safeParse(one);
        if (!success) {
          for (const issue of error.issues)
            issues.push({ ...issue, path: [at, ...issue.path], input: one } as (typeof issues)[number]);
          return z.NEVER;
        }
        const checked = frozen(data);
        if (typeof checked === 'object' && checked !== null) known.add(checked);
        return checked;
      }),
    );
}

/** A name a person gave: short, one line. */
export const nameText = lazily(() => z.string().trim().min(1).max(LONGEST_NAME));
const positive = lazily(() => z.number().positive());
const moment = lazily(() => z.iso.datetime());

export const settingsSchema = lazily(() =>
  z.object({
    units: z.enum(['metric', 'imperial']),
    terms: z.enum(['US', 'UK']),
    /** Who sees answers to her questions in a server; as is usual there if not set. */
    answers: z.enum(['everyone', 'me']).exactOptional(),
    /** How she hears of what concerns her in a group blanket; in its channel if not set. */
    tell: z.enum(['here', 'privately', 'not']).exactOptional(),
    /** The hand that holds her hook; the right if not set. */
    hand: z.enum(['right', 'left']).exactOptional(),
  }),
);
export type Settings = z.infer<ReturnType<typeof settingsSchema>>;
export const DEFAULT_SETTINGS: Settings = { units: 'metric', terms: 'US' };

export const gaugeSchema = lazily(() =>
  z.object({
    stitches: positive(),
    rows: positive().exactOptional(),
    /** cm */
    over: positive(),
  }),
);
/** metres and grams */
export const ballSchema = lazily(() => z.object({ m: positive(), g: positive() }));

/** Rows of one colour, one after the other. */
export const colourRunSchema = lazily(() =>
  z.object({
    colour: nameText(),
    rows: z.int().min(1).max(MOST_ROWS_WORKED),
  }),
);

/** One reading of the scale: grams of so many finished motifs together, and the steps that the scale shows. */
export const weighingSchema = lazily(() =>
  z.object({
    weight: positive(),
    motifs: z.int().min(1).max(MOST_ON_SCALE),
    step: positive(),
  }),
);

/** #rrggbb */
const hexText = lazily(() => z.string().regex(/^#[0-9a-f]{6}$/));

const lookSchema = lazily(() => z.object({ colour: nameText(), hex: hexText() }));

export const motifSchema = lazily(() =>
  z.object({
    name: nameText(),
    shape: z.enum(SHAPES),
    size: z.int().min(1).max(MOST_ROWS),
    otherSize: z.int().min(1).max(MOST_ROWS).exactOptional(),
    stitch: z.enum(STITCHES),
    /** mm */
    hook: positive().exactOptional(),
    gauge: gaugeSchema().exactOptional(),
    /** Whether the gauge was counted on a blocked piece. */
    blocked: z.boolean().exactOptional(),
    /** By row, from the first; empty for a motif in one unnamed colour. */
    runs: listOf(colourRunSchema, MOST_ROWS_WORKED),
    /** Grams of one finished motif, once one was weighed: the mean of all that were. */
    weight: positive().exactOptional(),
    /** The readings that it is the mean of, the latest last. */
    weighings: listOf(weighingSchema, MOST_WEIGHINGS, 1).exactOptional(),
    /** The ball it was worked from, where it was said at the scale. */
    ball: ballSchema().exactOptional(),
    /** cm along a side of one finished motif, once one was measured. */
    side: positive().exactOptional(),
    /** Minutes that one of it takes her, where she said so. */
    minutes: positive().max(MOST_MINUTES).exactOptional(),
    /** How its colours look, as far as that was said of this motif. */
    looks: listOf(lookSchema, MOST_ROWS_WORKED).exactOptional(),
  }),
);
export type Motif = z.infer<ReturnType<typeof motifSchema>>;

/** A colour of a blanket: how it looks, how it is bought, how much is at hand. */
export const yarnSchema = lazily(() =>
  z.object({
    colour: nameText(),
    hex: hexText().exactOptional(),
    ball: ballSchema().exactOptional(),
    /** Price of one ball, in whatever money she counts in. */
    price: z.number().nonnegative().exactOptional(),
    /** Balls in the basket; a part of a ball counts as a part. */
    balls: z.number().nonnegative().max(10_000).exactOptional(),
  }),
);

/** One place of the layout: which of the blanket's kinds, and how many quarter turns clockwise. */
export const cellSchema = lazily(() =>
  z.object({
    kind: z
      .int()
      .min(0)
      .max(MOST_KINDS - 1),
    turn: z.int().min(0).max(3),
  }),
);

/** A blanket before it is checked as a whole; group blankets are made of the same parts. */
export const blanketParts = lazily(() =>
  z.object({
    name: nameText(),
    /** Names of saved motifs, in the order in which the layout counts them. */
    kinds: listOf(nameText, MOST_KINDS, 1),
    columns: z.int().min(1).max(MOST_ALONG),
    rows: z.int().min(1).max(MOST_ALONG),
    /** Row by row from the top left. */
    layout: listOf(cellSchema, MOST_PLACES),
    /** The setting the layout was laid by, so that another size continues it. */
    setting: z.string().max(40),
    joining: z.object({
      method: z.enum(SEAM_METHODS),
      colour: nameText().exactOptional(),
    }),
    border: z.object({
      rounds: z
        .array(z.object({ stitch: z.enum(STITCHES), colour: nameText().exactOptional() }))
        .max(MOST_ROUNDS),
      /** Stitches in each corner. */
      corner: z.int().min(1).max(9),
    }),
    yarns: listOf(yarnSchema, 60),
    /** Per cent. */
    reserve: z.number().min(0).max(100),
  }),
);
export const blanketSchema = lazily(() =>
  blanketParts().refine(
    (blanket) => blanket.layout.length === blanket.columns * blanket.rows,
    'a cell for every place',
  ),
);
export type Blanket = z.infer<ReturnType<typeof blanketSchema>>;

export const MOST_MADE = 100_000;

const stepSchema = lazily(() =>
  z.object({
    at: moment(),
    did: z.enum(['row', 'back', 'set', 'finished', 'counted']),
    row: z.int(),
    made: z.int(),
  }),
);

/** Where a maker is with one kind of motif, in one blanket or by itself. */
export const progressSchema = lazily(() =>
  z.object({
    motif: nameText(),
    blanket: nameText().exactOptional(),
    /** The last finished row of the motif on the hook; 0 before the first. */
    row: z.int().min(0),
    /** Finished motifs of this kind. */
    made: z.int().min(0).max(MOST_MADE),
    /** Where she was before the oldest change that is kept; at the very beginning if not given. */
    before: z.object({ row: z.int().min(0), made: z.int().min(0) }).exactOptional(),
    history: listOf(stepSchema, 500),
  }),
);
export type Progress = z.infer<ReturnType<typeof progressSchema>>;

/** Something removed or changed, kept for a day so that it can come back. */
export const binSchema = lazily(() =>
  z.union([
    z.object({ at: moment(), kind: z.literal('motif'), thing: motifSchema() }),
    z.object({ at: moment(), kind: z.literal('blanket'), thing: blanketSchema() }),
    /** A blanket as it was before a change, and what it is called since. */
    z.object({ at: moment(), kind: z.literal('blanket-before'), thing: blanketSchema(), since: nameText() }),
  ]),
);

/** Tasks of one lesson that are counted. */
export const MOST_TASKS = 1_000_000;

/** A lesson that was begun: the box it lies in, and what the task that is open was drawn from. */
export const lessonSchema = lazily(() =>
  z.object({
    lesson: z.string().trim().min(1).max(40),
    box: z.int().min(0).max(9),
    /** When it comes back. */
    due: moment().exactOptional(),
    /** Tasks that were drawn so far. */
    tasks: z.int().min(0).max(MOST_TASKS),
    open: z
      .object({
        seed: z.int().min(1).max(MOST_SEED),
        units: z.enum(['metric', 'imperial']),
        terms: z.enum(['US', 'UK']),
        /** Rising rows of her own square at that time. */
        size: z.int().min(1).max(MOST_ROWS).exactOptional(),
        /** Wrong answers, and hints, so far. */
        wrong: z.int().min(0).max(9),
        hints: z.int().min(0).max(9),
      })
      .exactOptional(),
  }),
);
export type LessonKept = z.infer<ReturnType<typeof lessonSchema>>;

/**
 * 2: every reading of the scale is kept, where there was only the weight of one. 3: who sees her answers is unset until she
 * chooses it herself. 4: the minutes that a motif takes.
 */
export const MAKER_VERSION = 4;
const doneSchema = lazily(() => z.object({ once: z.string().max(120), said: z.string().max(4000) }));
export const makerSchema = lazily(() =>
  z.object({
    version: z.literal(MAKER_VERSION),
    id: z.string(),
    name: z.string().max(100),
    settings: settingsSchema(),
    motifs: listOf(motifSchema, MOST_MOTIFS),
    blankets: listOf(blanketSchema, MOST_BLANKETS),
    current: z.object({ motif: nameText().exactOptional(), blanket: nameText().exactOptional() }),
    progress: listOf(progressSchema, 500),
    bin: listOf(binSchema, 50),
    /** Lessons that she has begun, the latest last. */
    lessons: listOf(lessonSchema, 100).exactOptional(),
    /** When she was last told something. */
    told: moment().exactOptional(),
    /** Keys of the latest changes, each with what was answered: a press that arrives twice is done once. */
    done: listOf(doneSchema, 50),
  }),
);
export type MakerDoc = z.infer<ReturnType<typeof makerSchema>>;

export const newMaker = (id: string, name: string): MakerDoc => ({
  version: MAKER_VERSION,
  id,
  name,
  settings: { ...DEFAULT_SETTINGS },
  motifs: [],
  blankets: [],
  current: {},
  progress: [],
  bin: [],
  done: [],
});

/** Version 3 of a document of version 2: “everyone” stood there for all who never chose, and meant what is usual. */
export function unchosen(older: Record<string, unknown>): Record<string, unknown> {
  const { settings } = older;
  if (typeof settings !== 'object' || settings === null) return older;
  const { answers, ...others } = settings as { answers?: unknown };
  return { ...older, settings: answers === 'everyone' ? others : settings };
}

/** Version 2 of a document of version 1: what a motif weighs was read once, in whole grams as far as anybody knows. */
export function keepReadings(older: Record<string, unknown>): Record<string, unknown> {
  const weighed = (motif: unknown) => {
    const { weight } = (motif ?? {}) as { weight?: unknown };
    return typeof weight === 'number' ? { ...(motif as object), weighings: weighingsOf({ weight }) } : motif;
  };
  const { motifs, bin } = older;
  return {
    ...older,
    motifs: Array.isArray(motifs) ? motifs.map(weighed) : motifs,
    bin: Array.isArray(bin)
      ? bin.map((one: unknown) => {
          const { kind, thing } = (one ?? {}) as { kind?: unknown; thing?: unknown };
          return kind === 'motif' ? { ...(one as object), thing: weighed(thing) } : one;
        })
      : bin,
  };
}
