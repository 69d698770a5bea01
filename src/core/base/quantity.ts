/** Reading quantities that people type: lengths, weights, gauges, balls. Every reader throws a Problem that says what would work. */
import { CM_PER_INCH, G_PER_OUNCE, G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { defined } from './defined.ts';
import { HEAVIEST_G, LONGEST_CM } from './limits.ts';
import { clip, isBareNumber, NUMBER, readNumber, refuseUnclear } from './number.ts';
import { Problem } from './problem.ts';

/** Stitches and rows counted over a length; rows are unset where only stitches were given. */
export interface Gauge {
  readonly stitches: number;
  readonly rows?: number;
  /** The length they were counted over, in cm. */
  readonly over: number;
}

/** A yarn put-up, as printed on the ball band. */
export interface Ball {
  /** Length in metres. */
  readonly m: number;
  /** Weight in grams. */
  readonly g: number;
}

/** The gauge's length where none is given: 10 cm. */
export const GAUGE_OVER = 10;

export { clip, isBareNumber, readNumber, refuseUnclear } from './number.ts';

/** A metric unit in full, as both sides of the Atlantic spell it. */
function spelled(stem: string, factor: number): Record<string, number> {
  return Object.fromEntries(['re', 'res', 'er', 'ers'].map((end) => [`${stem}${end}`, factor]));
}

type UnitTable = ReadonlyMap<string, number>;

/** Units by every name they are typed with, each with what one of it is in the core's own. */
const table = (units: Readonly<Record<string, number>>): UnitTable => new Map(Object.entries(units));

const LENGTHS = table({
  mm: 0.1,
  ...spelled('millimet', 0.1),
  cm: 1,
  cms: 1,
  ...spelled('centimet', 1),
  m: 100,
  ...spelled('met', 100),
  in: CM_PER_INCH,
  ins: CM_PER_INCH,
  inch: CM_PER_INCH,
  inches: CM_PER_INCH,
  '"': CM_PER_INCH,
  "''": CM_PER_INCH,
  ft: 12 * CM_PER_INCH,
  feet: 12 * CM_PER_INCH,
  foot: 12 * CM_PER_INCH,
  "'": 12 * CM_PER_INCH,
  yd: M_PER_YARD * 100,
  yds: M_PER_YARD * 100,
  yard: M_PER_YARD * 100,
  yards: M_PER_YARD * 100,
});
const WEIGHTS = table({
  g: 1,
  gr: 1,
  gm: 1,
  gms: 1,
  gram: 1,
  grams: 1,
  gramme: 1,
  grammes: 1,
  kg: 1000,
  kgs: 1000,
  kilo: 1000,
  kilos: 1000,
  kilogram: 1000,
  kilograms: 1000,
  oz: G_PER_OUNCE,
  ounce: G_PER_OUNCE,
  ounces: G_PER_OUNCE,
  lb: G_PER_POUND,
  lbs: G_PER_POUND,
  pound: G_PER_POUND,
  pounds: G_PER_POUND,
});
/** Yarn on a ball, in metres. */
const YARN_LENGTHS = table({
  m: 1,
  mt: 1,
  mtr: 1,
  mtrs: 1,
  mts: 1,
  ...spelled('met', 1),
  yd: M_PER_YARD,
  yds: M_PER_YARD,
  yard: M_PER_YARD,
  yards: M_PER_YARD,
  ft: (12 * CM_PER_INCH) / 100,
  feet: (12 * CM_PER_INCH) / 100,
});

/** A unit behind a number, or a mark of feet or inches. */
const UNIT = String.raw`(?:[a-z]{1,11}\.?|''|["'])`;

/** Marks of feet and inches as a phone or a printer sets them. */
const plainMarks = (text: string) => text.replace(/[”“″]/g, '"').replace(/[’‘′]/g, "'");

const MEASURED = new RegExp(`^(.*?)[\\s-]*(${UNIT})$`, 'is');
/** A number with a unit, and what is behind it. */
const COMPOUND = new RegExp(`^(\\d[^a-z"']{0,12}?)\\s*(${UNIT})\\s*(?:,|and)?\\s*(\\d.*)$`, 'is');

interface Measured {
  readonly amount: number;
  readonly factor: number;
}

/** A number with a unit of a table: `48in`, `7 1/2 inches`, `6-inch`, `half an inch`, `a foot`; undefined where it is none. */
function measured(text: string, units: UnitTable): Measured | undefined {
  const match = MEASURED.exec(plainMarks(text).trim());
  const unit = match?.[2]?.toLowerCase().replace('.', '') ?? '';
  const factor = units.get(unit);
  if (factor === undefined) return undefined;
  const number = (match?.[1] ?? '').trim();
  const amount = /^an?$/i.test(number) ? 1 : readNumber(number.replace(/\s+(?:of\s+)?an?$/i, ''));
  return amount === undefined ? undefined : { amount, factor };
}

/** Measures that are written as a larger and a smaller unit, and the smaller where it is left out: `5'6`, `1 m 20`. */
const SMALLER: UnitTable = table({
  ft: CM_PER_INCH,
  feet: CM_PER_INCH,
  foot: CM_PER_INCH,
  "'": CM_PER_INCH,
  m: 1,
  lb: G_PER_OUNCE,
  lbs: G_PER_OUNCE,
});

/** `4ft 2in`, `5'6"`, `1 m 20`, `2 lb 3 oz`: the sum of both, in the unit of the table; undefined where it is none. */
function compound(text: string, units: UnitTable): number | undefined {
  const [, first = '', unit = '', second = ''] = COMPOUND.exec(plainMarks(text).trim()) ?? [];
  const large = measured(`${first}${unit}`, units);
  if (large === undefined || !Number.isInteger(large.amount)) return undefined;
  const bare = readNumber(second);
  const step = SMALLER.get(unit.toLowerCase().replace('.', ''));
  const small =
    bare === undefined
      ? measured(second, units)
      : step === undefined
        ? undefined
        : { amount: bare, factor: step };
  // The second is less than one of the first: 4 ft 14 in is a slip.
  if (small === undefined || small.amount * small.factor >= large.factor * (1 - 1e-9)) return undefined;
  return large.amount * large.factor + small.amount * small.factor;
}

function readMeasure(
  text: string,
  units: UnitTable,
  {
    what,
    code,
    example,
    allowZero = false,
  }: { what: string; code: string; example: string; allowZero?: boolean },
): number {
  refuseUnclear(text);
  const found = measured(text, units);
  const amount = found ? found.amount * found.factor : compound(text, units);
  if (amount === undefined)
    throw new Problem(code, `“${clip(text)}” is not ${what}.`, { hint: `Write it like ${example}.` });
  if (amount < 0 || (amount === 0 && !allowZero))
    throw new Problem('not-above-zero', `${sentence(what)} must be more than nothing.`, {
      hint: `Write it like ${example}.`,
    });
  return amount;
}

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function within(value: number, most: number, what: string, mostShown: string): number {
  if (value > most)
    throw new Problem('too-large', `${what} of more than ${mostShown} is beyond this craft.`, {
      hint: `Give less than ${mostShown}.`,
      facts: { most, given: value },
    });
  return value;
}

/**
 * A length in centimetres; nothing at all only where it is allowed.
 *
 * Throws Problem: not-a-length, not-above-zero, unclear-number, too-large.
 *
 * @example
 * readLength('4ft 2in') // → 127
 */
export function readLength(text: string, { allowZero = false } = {}): number {
  const length = readMeasure(text, LENGTHS, {
    what: 'a length',
    code: 'not-a-length',
    example: '120cm, 48in, 1.2m or 4ft',
    allowZero,
  });
  return within(length, LONGEST_CM, 'A length', '100 m');
}

/**
 * A weight such as `85g`, `3oz`, `half a pound`, in grams.
 *
 * Throws Problem: not-a-weight, not-above-zero, unclear-number, too-large.
 */
export function readWeight(text: string): number {
  const weight = readMeasure(text, WEIGHTS, {
    what: 'a weight',
    code: 'not-a-weight',
    example: '85g or 3oz',
  });
  return within(weight, HEAVIEST_G, 'A weight', '100 kg');
}

/** Yarn at hand: grams, or a number of balls. */
export type YarnAtHand = number | { readonly balls: number };

/**
 * A weight, or a number of balls: `85g`, `2 balls`, `1.5 skeins`. Balls are weighed by their band.
 *
 * Throws Problem as a weight does.
 *
 * @example
 * readYarnAtHand('1.5 skeins') // → { balls: 1.5 }
 */
export function readYarnAtHand(text: string): YarnAtHand {
  const [, number = ''] = /^\s*(.{1,20}?)[\s-]*(?:balls?|skeins?|hanks?|cakes?)\.?\s*$/i.exec(text) ?? [];
  const balls = number === '' ? undefined : readNumber(number);
  return balls === undefined || balls <= 0 || balls > MOST_BALLS ? readWeight(text) : { balls };
}
const MOST_BALLS = 1000;

const GAUGE_HINT = 'Write it like 13x10 (stitches x rows over 10 cm), or 13x10 over 4in.';
const STITCHES_WORD = String.raw`(?:st|sts|stitch|stitches|s|(?:us |uk )?(?:sc|hdc|htr|dc|tr|dtr)s?)\.?`;
const ROWS_WORD = String.raw`(?:r|rs|row|rows|rnds|rounds)\.?`;
const ONLY_ROWS = new RegExp(`^${ROWS_WORD}$`, 'i');
const GAUGE = new RegExp(
  `^(${NUMBER}|[a-z-]+)\\s*(${STITCHES_WORD}|${ROWS_WORD})?` +
    `(?:(?:\\s*(?:[x×*,]|by|and|&)\\s*|\\s+)(${NUMBER}|[a-z-]+)\\s*(${STITCHES_WORD}|${ROWS_WORD})?)?` +
    `(?:\\s*(?:\\b(?:over|in|per|to|for|every|is|makes?)\\b|[/=@])\\s*(.+))?$`,
  'i',
);

/**
 * A gauge such as `13x10` (stitches × rows over 10 cm), `13x10 over 4in`, `14 stitches and 10 rows to 10 cm`, `3.5 sts per inch`, or
 * `13` where rows are not needed.
 *
 * Throws Problem: not-a-gauge, impossible-gauge, unclear-number, and those of a length.
 */
export function readGauge(text: string): Gauge {
  const [, counted, other] = /^\s*(\d{1,4}),\s*(\d{1,4})\s*(?:(?:over|in|per|\/|to)\b.*)?$/i.exec(text) ?? [];
  if (counted !== undefined && other !== undefined)
    throw new Problem('unclear-number', `“${clip(text)}” is unclear: stitches and rows, or a decimal?`, {
      hint: `Write ${counted}x${other} for ${counted} stitches and ${other} rows, or ${counted}.${other} for stitches alone.`,
    });
  const match = text.length > LONGEST_GAUGE ? null : GAUGE.exec(text.trim());
  const [, first, firstWord, second, secondWord, along] = match ?? [];
  const number = (typed: string | undefined) => (typed === undefined ? undefined : readNumber(typed));
  const isRows = (word: string | undefined) => word !== undefined && ONLY_ROWS.test(word);
  // “10 rows and 14 stitches” says by its words which is which.
  const turned = isRows(firstWord);
  const [stitches, rows] = turned ? [number(second), number(first)] : [number(first), number(second)];
  const unread = second !== undefined && number(second) === undefined;
  if (
    stitches === undefined ||
    unread ||
    (turned ? isRows(secondWord) : secondWord !== undefined && !isRows(secondWord))
  )
    throw new Problem('not-a-gauge', `“${clip(text)}” is not a gauge.`, { hint: GAUGE_HINT });
  const over = along === undefined ? GAUGE_OVER : readLength(/^\d/.test(along) ? along : withOne(along));
  for (const n of rows === undefined ? [stitches] : [stitches, rows]) {
    const perTen = (n / over) * GAUGE_OVER;
    if (perTen < 0.5 || perTen > 200) {
      throw new Problem(
        'impossible-gauge',
        `${n} over ${over === GAUGE_OVER ? '10 cm' : `${Math.round(over * 100) / 100} cm`} is no gauge that can be crocheted.`,
        { hint: GAUGE_HINT, facts: { given: n, over } },
      );
    }
  }
  return defined({ stitches, over, rows });
}

/** What a gauge says that it is counted over, as typed: `4in` of `14x10 over 4in`. */
export const overTyped = (text: string): string | undefined => GAUGE.exec(text.trim())?.[5];

/** Whether a gauge names no length that it is counted over. */
export const isBareGauge = (text: string): boolean => overTyped(text) === undefined;

/** Longer than any gauge that is meant. */
const LONGEST_GAUGE = 80;

/** `inch` behind “per” is one of it. */
const withOne = (unit: string) =>
  /^[a-z]+\.?$/i.test(unit.trim()) && !isBareNumber(unit) ? `1 ${unit}` : unit;

/** Words and marks that may stand between a ball's length and its weight. */
const BETWEEN_BALL =
  /^(?:[\s/=,:·()–-]|\b(?:per|to|in|is|has|holds|for|and|at|of|a|an|the|each|one|every|long|weighs?|balls?|skeins?|hanks?)\b)*$/i;
/** A fraction only behind a whole number: 170/100 is a length and a weight. */
const BALL_NUMBER = String.raw`(?:\d{1,5}\s+[1-9]\/[2-9]|${NUMBER}\s?[½¼¾⅓⅔⅛]?)`;
const BALL_PART = new RegExp(`(${BALL_NUMBER})(?:[\\s-]*(${UNIT}))?`, 'gi');

/**
 * A ball's length and weight as they are typed, in whatever order: `170m/100g`, `100 g, 170 m`, `170 m to 100 g`. Each may lack its unit,
 * the length coming first then. Undefined where there are not just these two.
 */
export function partsOfBall(text: string): { readonly length: string; readonly weight: string } | undefined {
  const typed = plainMarks(text).trim();
  if (typed.length > LONGEST_GAUGE) return undefined;
  const parts: { readonly number: string; readonly unit: string }[] = [];
  const between = typed.replace(BALL_PART, (_, number: string, unit = '') => {
    const name = (unit as string).toLowerCase().replace('.', '');
    const known = YARN_LENGTHS.has(name) || WEIGHTS.has(name);
    parts.push({ number, unit: known ? name : '' });
    return known ? ' ' : ` ${unit} `;
  });
  const [first, second] = parts;
  if (first === undefined || second === undefined || parts.length > 2 || !BETWEEN_BALL.test(between))
    return undefined;
  const turned = WEIGHTS.has(first.unit) || YARN_LENGTHS.has(second.unit);
  const [length, weight] = turned ? [second, first] : [first, second];
  if (WEIGHTS.has(length.unit) || YARN_LENGTHS.has(weight.unit)) return undefined;
  return { length: `${length.number}${length.unit}`, weight: `${weight.number}${weight.unit}` };
}

/**
 * A ball such as `170m/100g`, `364yd/198g` or `100 g = 170 m`.
 *
 * Throws Problem: not-a-ball, impossible-ball, and those of its length and weight.
 */
export function readBall(text: string): Ball {
  const hint = 'Write length and weight from the band, like 170m/100g or 364yd/198g.';
  const parts = partsOfBall(text);
  if (parts === undefined) throw new Problem('not-a-ball', `“${clip(text)}” is not a ball.`, { hint });
  const ball = {
    m: readMeasure(parts.length, YARN_LENGTHS, {
      what: 'a ball’s length',
      code: 'not-a-ball',
      example: '170m/100g',
    }),
    g: readMeasure(parts.weight, WEIGHTS, {
      what: 'a ball’s weight',
      code: 'not-a-ball',
      example: '170m/100g',
    }),
  };
  // From cobweb to rope: 2 m to 20,000 m in 100 g. Beyond that, length and weight were swapped or misread.
  const per100 = (ball.m / ball.g) * 100;
  if (per100 < 2 || per100 > 20_000 || ball.m > 100_000) {
    throw new Problem(
      'impossible-ball',
      `A ball with ${Math.round(ball.m)} m in ${Math.round(ball.g)} g is no yarn for a blanket.`,
      { hint, facts: { m: ball.m, g: ball.g } },
    );
  }
  return ball;
}
