/** Reading what people type: lengths, weights, gauges, balls, hooks, stitches, yarns. Every reader throws a Problem that says what would work. */
import { HOOKS } from '../../standards/hooks.ts';
import { STITCHES, type Stitch } from '../../standards/stitches.ts';
import { TERMS } from '../../standards/terms.ts';
import { CM_PER_INCH, G_PER_OUNCE, G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { YARN_WEIGHTS } from '../../standards/yarn-weights.ts';
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

/** A yarn's thickness: wraps per inch, and the category it was read from, where it was. */
export interface YarnThickness {
  readonly wpi: number;
  readonly category?: number;
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
    : new Problem('unsorted', `“${clip(text)}” is unclear: a thousand, or a decimal?`, {
        hint: `Write ${number.replace(',', '')} or ${number.replace(',', '.')}.`,
      });
}

/** Throws a Problem for a number with a comma that some read as a thousand and some as a decimal. */
export function refuseUnclear(text: string): void {
  const problem = unclear(text);
  if (problem) throw problem;
}

function readMeasure(
  text: string,
  units: Readonly<Record<string, number>>,
  what: string,
  example: string,
  { allowZero = false } = {},
): number {
  refuseUnclear(text);
  const match = new RegExp(`^(${MIXED})\\s*([a-z]{1,11}\\.?|["'])$`, 'i').exec(plainMarks(text).trim());
  const amount = match?.[1] === undefined ? undefined : readNumber(match[1]);
  const unit = match?.[2]?.toLowerCase().replace('.', '') ?? '';
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (amount === undefined || factor === undefined) {
    throw new Problem('unsorted', `“${clip(text)}” is not ${what}.`, { hint: `Write it like ${example}.` });
  }
  if (amount < 0 || (amount === 0 && !allowZero))
    throw new Problem('unsorted', `${sentence(what)} must be more than nothing.`, {
      hint: `Write it like ${example}.`,
    });
  return amount * factor;
}

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What a person typed, short enough to be said back to her. */
export const clip = (text: string, longest = 40) =>
  text.length <= longest ? text : `${[...text].slice(0, longest - 1).join('')}…`;

/** The longest length and the heaviest weight that are taken for a piece of crochet: 100 m and 100 kg. */
const LONGEST_CM = 10_000;
const HEAVIEST_G = 100_000;

function within(value: number, most: number, what: string, mostShown: string): number {
  if (value > most)
    throw new Problem('unsorted', `${what} of more than ${mostShown} is beyond this craft.`, {
      hint: `Give less than ${mostShown}.`,
    });
  return value;
}

/** A length such as `120cm`, `48in`, `1.2m`, `4ft`, in centimetres; nothing at all only where it is allowed. */
export function readLength(text: string, { allowZero = false } = {}): number {
  const feet = /^(\d{1,3})\s*(?:ft|')\s*(\d{1,2}(?:\.\d+)?)\s*(?:in\.?|inch|inches|")?$/i.exec(
    plainMarks(text).trim(),
  );
  const length = feet
    ? (Number(feet[1]) * 12 + Number(feet[2])) * CM_PER_INCH
    : readMeasure(text, LENGTHS, 'a length', '120cm, 48in, 1.2m or 4ft', { allowZero });
  return within(length, LONGEST_CM, 'A length', '100 m');
}

/** A weight such as `85g` or `3oz`, in grams. */
export function readWeight(text: string): number {
  return within(readMeasure(text, WEIGHTS, 'a weight', '85g or 3oz'), HEAVIEST_G, 'A weight', '100 kg');
}

/** A gauge such as `13x10` (stitches × rows over 10 cm), `13x10 over 4in`, or `13` where rows are not needed. */
export function readGauge(text: string): Gauge {
  const hint = 'Write it like 13x10 (stitches x rows over 10 cm), or 13x10 over 4in.';
  const [, counted, other] = /^\s*(\d{1,4}),\s*(\d{1,4})\s*(?:(?:over|in|per|\/|to)\b.*)?$/i.exec(text) ?? [];
  if (counted !== undefined && other !== undefined)
    throw new Problem('unsorted', `“${clip(text)}” is unclear: stitches and rows, or a decimal?`, {
      hint: `Write ${counted}x${other} for ${counted} stitches and ${other} rows, or ${counted}.${other} for stitches alone.`,
    });
  const match = new RegExp(
    `^(${NUMBER})\\s*(?:st|sts|stitches)?\\s*(?:(?:[x×*]|by|and)\\s*(${NUMBER})\\s*(?:r|rows)?)?(?:\\s*(?:over|in|per|\\/|to)\\s*(.+))?$`,
    'i',
  ).exec(text.trim());
  const stitches = match?.[1] === undefined ? undefined : readNumber(match[1]);
  const rows = match?.[2] === undefined ? undefined : readNumber(match[2]);
  if (stitches === undefined) throw new Problem('unsorted', `“${clip(text)}” is not a gauge.`, { hint });
  const over = match?.[3] === undefined ? GAUGE_OVER : readLength(match[3]);
  for (const n of rows === undefined ? [stitches] : [stitches, rows]) {
    const perTen = (n / over) * GAUGE_OVER;
    if (perTen < 0.5 || perTen > 200) {
      throw new Problem(
        'unsorted',
        `${n} over ${over === GAUGE_OVER ? '10 cm' : `${Math.round(over * 100) / 100} cm`} is no gauge that can be crocheted.`,
        { hint },
      );
    }
  }
  return { stitches, over, ...(rows === undefined ? {} : { rows }) };
}

/** A ball such as `170m/100g` or `364yd/198g`. */
export function readBall(text: string): Ball {
  const hint = 'Write length and weight from the band, like 170m/100g or 364yd/198g.';
  const parts = text.split('/');
  const [length, weight] = parts;
  if (parts.length !== 2 || length === undefined || weight === undefined) {
    throw new Problem('unsorted', `“${clip(text)}” is not a ball.`, { hint });
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
    'a ball’s length',
    '170m/100g',
  );
  const ball = { m: metres, g: readMeasure(weight, WEIGHTS, 'a ball’s weight', '170m/100g') };
  // From cobweb to rope: 20 m to 20,000 m in 100 g. Beyond that, length and weight were swapped or misread.
  const per100 = (ball.m / ball.g) * 100;
  if (per100 < 2 || per100 > 20_000 || ball.m > 100_000) {
    throw new Problem(
      'unsorted',
      `A ball with ${Math.round(ball.m)} m in ${Math.round(ball.g)} g is no yarn for a blanket.`,
      { hint },
    );
  }
  return ball;
}

/** A hook: `5mm`, `5`, or a US size with its letter, `H-8`. In millimetres. */
export function readHook(text: string): number {
  const hint = 'Give millimetres, like 5mm, or a US size with its letter, like H-8.';
  const typed = text.trim();
  const named = typed.toUpperCase().replace(/^US\s+/, '');
  const known = HOOKS.find(
    (hook) =>
      hook.US !== undefined &&
      (/[A-Z]/.test(hook.US) || /^US\s/i.test(typed)) &&
      hook.US.toUpperCase() === named,
  );
  if (known) return known.mm;
  const amount = readNumber(typed.replace(/\s*mm$/i, ''));
  if (amount === undefined) throw new Problem('unsorted', `“${clip(text)}” is not a hook.`, { hint });
  // Hooks are made from 0.35 mm to 25 mm (en.wikipedia.org, Crochet hook); some lists go to 30.
  if (amount < 0.35 || amount > 30)
    throw new Problem('unsorted', `No hook of ${amount} mm is made.`, {
      hint: 'Hooks run from 0.35mm to 30mm.',
    });
  return amount;
}

/**
 * A stitch: `hdc`, `US dc`, `UK tr`, or its full name. A bare abbreviation is taken in US terms. What only the other
 * terms have can mean one stitch alone and is taken, whosever terms were named: `US htr` is `UK htr`.
 */
export function readStitch(text: string): Stitch {
  const match = /^(?:(us|uk)\s+)?(.+)$/i.exec(text.trim().replace(/\s+/g, ' ')) ?? [];
  const terms = match[1]?.toUpperCase();
  const name = match[2]?.toLowerCase() ?? '';
  const long: Readonly<Record<Stitch, keyof typeof TERMS>> = {
    sc: 'single crochet',
    hdc: 'half double crochet',
    dc: 'double crochet',
    tr: 'treble',
  };
  const called = (stitch: Stitch, which: 'US' | 'UK') =>
    name === TERMS[stitch][which] || name === TERMS[long[stitch]][which];
  for (const which of terms === 'UK' ? (['UK', 'US'] as const) : (['US', 'UK'] as const)) {
    const found = STITCHES.find((stitch) => called(stitch, which));
    if (found) return found;
    // A stitch of these terms that is taller than any counted here: never the other terms' stitch of that name.
    if (Object.values(TERMS).some((pair) => pair[which] === name)) break;
  }
  throw new Problem('unsorted', `“${clip(match[2] ?? text)}” is not a stitch that is counted here.`, {
    hint: 'Use sc, hdc, dc or tr (US), or say whose terms you mean: UK dc.',
  });
}

/** A run of stitches, one a round, such as `hdc dc hdc`; `UK htr tr` says whose terms they are in. */
export function readStitches(text: string): Stitch[] {
  const match = /^(?:(us|uk)\s+)?(.*)$/is.exec(text.trim()) ?? [];
  const terms = match[1] === undefined ? '' : `${match[1]} `;
  const names = (match[2] ?? '').split(/[\s,]+/).filter((name) => name !== '');
  if (names.length === 0)
    throw new Problem('unsorted', 'No stitch is named.', {
      hint: 'Name one stitch a round, like hdc dc hdc.',
    });
  return names.map((name) => readStitch(terms + name));
}

/** A yarn's thickness: a category 0–7 or its name (`4`, `medium`, `worsted`, `DK`), or wraps per inch (`11wpi`). */
export function readYarn(text: string): YarnThickness {
  const hint = 'Give a category 0 to 7, its name (medium, DK, worsted), or wraps per inch like 11wpi.';
  const typed = text.trim().toLowerCase();
  const wraps = /^(.+?)\s*(?:wpi|wraps)$/.exec(typed)?.[1];
  if (wraps !== undefined) {
    const wpi = readNumber(wraps);
    if (wpi === undefined || wpi < 1 || wpi > 80)
      throw new Problem('unsorted', `“${clip(text)}” is no count of wraps per inch.`, { hint });
    return { wpi };
  }
  const exact = YARN_WEIGHTS.find(
    (yarn) => String(yarn.category) === typed || yarn.name.toLowerCase() === typed,
  );
  const typedAs = YARN_WEIGHTS.filter((yarn) => yarn.types.toLowerCase().split(', ').includes(typed));
  // A type that stands in two categories (baby, fingering) names neither.
  const found = exact ?? (typedAs.length === 1 ? typedAs[0] : undefined);
  if (!found) throw new Problem('unsorted', `“${clip(text)}” does not say how thick the yarn is.`, { hint });
  return { wpi: (found.wpi[0] + found.wpi[1]) / 2, category: found.category };
}

/** A run of counts such as `3 5 7 8`, whole and not negative. */
export function readCounts(text: string): number[] {
  const hint = 'Write the counts row by row with spaces between, like 3 5 7 8.';
  const parts = text
    .trim()
    .split(/[\s,;]+/)
    .filter((part) => part !== '');
  if (parts.length === 0) throw new Problem('unsorted', 'No counts are given.', { hint });
  if (parts.length > 400)
    throw new Problem('unsorted', 'More than 400 counts are too many at once.', {
      hint: 'Give the last rows only, with from_row.',
    });
  return parts.map((part) => {
    if (!/^\d{1,6}$/.test(part)) throw new Problem('unsorted', `“${clip(part)}” is not a count.`, { hint });
    return Number(part);
  });
}

/** A day as YYYY-MM-DD. Throws a Problem for one that no calendar has. */
export function readDay(text: string): string {
  const hint = 'Write the day as year-month-day, like 2031-05-31.';
  const [, year, month, day] = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text.trim()) ?? [];
  const date = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  // 31 February rolls over into March: no such day.
  if (day === undefined || date.getUTCDate() !== Number(day) || date.getUTCMonth() !== Number(month) - 1) {
    throw new Problem('unsorted', `“${clip(text)}” is not a day.`, { hint });
  }
  return date.toISOString().slice(0, 10);
}

/** The largest list of numbers that is read at once. */
const MOST_NUMBERS = 1000;

/** Numbers such as `3 5 7-9`, each once, in order. */
export function readNumbers(text: string): number[] {
  const hint = 'Write numbers with spaces between, or from-to, like 3 5 7-9.';
  const numbers = new Set<number>();
  for (const part of text.split(/[\s,;]+/).filter((one) => one !== '')) {
    const [, first, last = first] = /^#?(\d{1,5})(?:[-–](\d{1,5}))?$/.exec(part) ?? [];
    if (first === undefined || Number(last) < Number(first)) {
      throw new Problem('unsorted', `“${clip(part)}” is not a number.`, { hint });
    }
    if (Number(last) - Number(first) + numbers.size >= MOST_NUMBERS) {
      throw new Problem('unsorted', `More than ${MOST_NUMBERS} numbers are too many at once.`, { hint });
    }
    for (let number = Number(first); number <= Number(last); number++) numbers.add(number);
  }
  if (numbers.size === 0) throw new Problem('unsorted', 'No number is given.', { hint });
  return [...numbers].sort((a, b) => a - b);
}
