/** Reading quantities that people type: numbers, lengths, weights, gauges, balls. Every reader throws a Problem that says what would work. */
import { CM_PER_INCH, G_PER_OUNCE, G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { defined } from './defined.ts';
import { HEAVIEST_G, LONGEST_CM } from './limits.ts';
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

const FRACTIONS: Readonly<Record<string, number>> = {
  '½': 0.5,
  '¼': 0.25,
  '¾': 0.75,
  '⅓': 1 / 3,
  '⅔': 2 / 3,
  '⅛': 0.125,
};
const NUMBER = String.raw`(?:\d{1,7}(?:[.,]\d{1,6})?|\.\d{1,6})`;
const MIXED = String.raw`(?:(?:\d{1,5}\s+)?\d{1,3}\/[1-9]\d?|${NUMBER}\s?[½¼¾⅓⅔⅛]?|[½¼¾⅓⅔⅛])`;

/** A number as people write it: `12`, `12.5`, `12,5`, `7 1/2`, `7½`. Returns undefined where it is none. */
export function readNumber(text: string): number | undefined {
  const trimmed = text.trim();
  if (!new RegExp(`^${MIXED}$`).test(trimmed)) return undefined;
  // 1,360 is one thousand three hundred and sixty to some and one point three six to others: neither is guessed.
  if (/^\d{1,3},\d{3}$/.test(trimmed)) return undefined;
  const slash = /^(?:(\d+)\s+)?(\d+)\/(\d+)$/.exec(trimmed);
  if (slash) return Number(slash[1] ?? 0) + Number(slash[2]) / Number(slash[3]);
  const sign = /[½¼¾⅓⅔⅛]$/.exec(trimmed)?.[0];
  const whole = sign === undefined ? trimmed : trimmed.slice(0, -1).trim();
  return (
    (whole === '' ? 0 : Number(whole.replace(',', '.'))) + (sign === undefined ? 0 : (FRACTIONS[sign] ?? 0))
  );
}

/** Whether the text is a bare number, which takes the maker's own unit. */
export const isBareNumber = (text: string) => readNumber(text) !== undefined;

/** A metric unit in full, as both sides of the Atlantic spell it. */
function spelled(stem: string, factor: number): Record<string, number> {
  return Object.fromEntries(['re', 'res', 'er', 'ers'].map((end) => [`${stem}${end}`, factor]));
}

const LENGTHS: Readonly<Record<string, number>> = {
  mm: 0.1,
  ...spelled('millimet', 0.1),
  cm: 1,
  ...spelled('centimet', 1),
  m: 100,
  ...spelled('met', 100),
  in: CM_PER_INCH,
  inch: CM_PER_INCH,
  inches: CM_PER_INCH,
  '"': CM_PER_INCH,
  ft: 12 * CM_PER_INCH,
  feet: 12 * CM_PER_INCH,
  foot: 12 * CM_PER_INCH,
  "'": 12 * CM_PER_INCH,
  yd: M_PER_YARD * 100,
  yds: M_PER_YARD * 100,
  yard: M_PER_YARD * 100,
  yards: M_PER_YARD * 100,
};
const WEIGHTS: Readonly<Record<string, number>> = {
  g: 1,
  gram: 1,
  grams: 1,
  gramme: 1,
  grammes: 1,
  kg: 1000,
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
};

/** Marks of feet and inches as a phone or a printer sets them. */
const plainMarks = (text: string) => text.replace(/[”“″]/g, '"').replace(/[’‘′]/g, "'");

/** What to write instead of 1,200; undefined where the number is not unclear in that way. */
function unclear(text: string): Problem | undefined {
  const number = /^[+-]?(\d{1,3},\d{3})(?!\d)/.exec(text.trim())?.[1];
  return number === undefined
    ? undefined
    : new Problem('unclear-number', `“${clip(text)}” is unclear: a thousand, or a decimal?`, {
        hint: `Write ${number.replace(',', '')} or ${number.replace(',', '.')}.`,
      });
}

/**
 * Refuses a number with a comma that some read as a thousand and some as a decimal.
 *
 * Throws Problem: unclear-number.
 */
export function refuseUnclear(text: string): void {
  const problem = unclear(text);
  if (problem) throw problem;
}

function readMeasure(
  text: string,
  units: Readonly<Record<string, number>>,
  {
    code,
    what,
    example,
    allowZero = false,
  }: { code: string; what: string; example: string; allowZero?: boolean },
): number {
  refuseUnclear(text);
  const match = new RegExp(`^(${MIXED})\\s*([a-z]{1,11}\\.?|["'])$`, 'i').exec(plainMarks(text).trim());
  const amount = match?.[1] === undefined ? undefined : readNumber(match[1]);
  const unit = match?.[2]?.toLowerCase().replace('.', '') ?? '';
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (amount === undefined || factor === undefined) {
    throw new Problem(code, `“${clip(text)}” is not ${what}.`, { hint: `Write it like ${example}.` });
  }
  if (amount < 0 || (amount === 0 && !allowZero))
    throw new Problem('not-above-zero', `${sentence(what)} must be more than nothing.`, {
      hint: `Write it like ${example}.`,
      facts: { given: amount },
    });
  return amount * factor;
}

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What a person typed, short enough to be said back to her. */
export const clip = (text: string, longest = 40) =>
  text.length <= longest ? text : `${[...text].slice(0, longest - 1).join('')}…`;

function within(value: number, most: number, what: string, mostShown: string): number {
  if (value > most)
    throw new Problem('too-large', `${what} of more than ${mostShown} is beyond this craft.`, {
      hint: `Give less than ${mostShown}.`,
      facts: { most, given: value },
    });
  return value;
}

/**
 * A length such as `120cm`, `48in`, `1.2m`, `4ft`, in centimetres; nothing at all only where it is allowed.
 *
 * Throws Problem: not-a-length, not-above-zero, too-large, unclear-number.
 *
 * @example
 * readLength('1.2m') // → 120
 */
export function readLength(text: string, { allowZero = false } = {}): number {
  const feet = /^(\d{1,3})\s*(?:ft|')\s*(\d{1,2}(?:\.\d+)?)\s*(?:in\.?|inch|inches|")?$/i.exec(
    plainMarks(text).trim(),
  );
  const length = feet
    ? (Number(feet[1]) * 12 + Number(feet[2])) * CM_PER_INCH
    : readMeasure(text, LENGTHS, {
        code: 'not-a-length',
        what: 'a length',
        example: '120cm, 48in, 1.2m or 4ft',
        allowZero,
      });
  return within(length, LONGEST_CM, 'A length', '100 m');
}

/**
 * A weight such as `85g` or `3oz`, in grams.
 *
 * Throws Problem: not-a-weight, not-above-zero, too-large, unclear-number.
 *
 * @example
 * readWeight('0.5kg') // → 500
 */
export function readWeight(text: string): number {
  const weight = readMeasure(text, WEIGHTS, {
    code: 'not-a-weight',
    what: 'a weight',
    example: '85g or 3oz',
  });
  return within(weight, HEAVIEST_G, 'A weight', '100 kg');
}

/**
 * A gauge such as `13x10` (stitches × rows over 10 cm), `13x10 over 4in`, or `13` where rows are not needed.
 *
 * Throws Problem: not-a-gauge, impossible-gauge, unclear-number, and those of a length.
 *
 * @example
 * readGauge('13x10 over 4in') // → { stitches: 13, over: 10.16, rows: 10 }
 */
export function readGauge(text: string): Gauge {
  const hint = 'Write it like 13x10 (stitches x rows over 10 cm), or 13x10 over 4in.';
  const [, counted, other] = /^\s*(\d{1,4}),\s*(\d{1,4})\s*(?:(?:over|in|per|\/|to)\b.*)?$/i.exec(text) ?? [];
  if (counted !== undefined && other !== undefined)
    throw new Problem('unclear-number', `“${clip(text)}” is unclear: stitches and rows, or a decimal?`, {
      hint: `Write ${counted}x${other} for ${counted} stitches and ${other} rows, or ${counted}.${other} for stitches alone.`,
    });
  const match = new RegExp(
    `^(${NUMBER})\\s*(?:st|sts|stitches)?\\s*(?:(?:[x×*]|by|and)\\s*(${NUMBER})\\s*(?:r|rows)?)?(?:\\s*(?:over|in|per|\\/|to)\\s*(.+))?$`,
    'i',
  ).exec(text.trim());
  const stitches = match?.[1] === undefined ? undefined : readNumber(match[1]);
  const rows = match?.[2] === undefined ? undefined : readNumber(match[2]);
  if (stitches === undefined) throw new Problem('not-a-gauge', `“${clip(text)}” is not a gauge.`, { hint });
  const over = match?.[3] === undefined ? GAUGE_OVER : readLength(match[3]);
  for (const n of rows === undefined ? [stitches] : [stitches, rows]) {
    const perTen = (n / over) * GAUGE_OVER;
    if (perTen < 0.5 || perTen > 200) {
      throw new Problem(
        'impossible-gauge',
        `${n} over ${over === GAUGE_OVER ? '10 cm' : `${Math.round(over * 100) / 100} cm`} is no gauge that can be crocheted.`,
        { hint, facts: { given: n, over } },
      );
    }
  }
  return defined({ stitches, over, rows });
}

/**
 * A ball such as `170m/100g` or `364yd/198g`.
 *
 * Throws Problem: not-a-ball, impossible-ball, not-above-zero, unclear-number.
 *
 * @example
 * readBall('170m/100g') // → { m: 170, g: 100 }
 */
export function readBall(text: string): Ball {
  const hint = 'Write length and weight from the band, like 170m/100g or 364yd/198g.';
  const parts = text.split('/');
  const [length, weight] = parts;
  if (parts.length !== 2 || length === undefined || weight === undefined) {
    throw new Problem('not-a-ball', `“${clip(text)}” is not a ball.`, { hint });
  }
  const metres = readMeasure(
    length,
    {
      m: 1,
      ...spelled('met', 1),
      yard: M_PER_YARD,
      yd: M_PER_YARD,
      yds: M_PER_YARD,
      yards: M_PER_YARD,
      ft: (12 * CM_PER_INCH) / 100,
    },
    { code: 'not-a-ball', what: 'a ball’s length', example: '170m/100g' },
  );
  const grams = readMeasure(weight, WEIGHTS, {
    code: 'not-a-ball',
    what: 'a ball’s weight',
    example: '170m/100g',
  });
  const ball = { m: metres, g: grams };
  // From cobweb to rope: 20 m to 20,000 m in 100 g. Beyond that, length and weight were swapped or misread.
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
