/**
 * A maker's own ways: units and terms. The core writes its texts once, with the places that differ from
 * maker to maker as tokens (`⟦120 cm⟧`, `⟦hdc⟧`); `forReader` fills them in when an answer is shown. So the same
 * answer serves a reader in inches and US terms and a reader in centimetres and UK terms.
 */
import { TERMS, type Term } from '../../standards/terms.ts';
import { CM_PER_INCH, G_PER_OUNCE, M_PER_YARD } from '../../standards/units.ts';

export type Units = 'metric' | 'imperial';
export type Terms = 'US' | 'UK';
export interface Reader {
  readonly units: Units;
  readonly terms: Terms;
  /** The hand that holds the hook; the right if not given. */
  readonly hand?: 'right' | 'left';
  /** How a room shows a day (YYYY-MM-DD) or a moment (ISO, UTC) in the reader's own time; in words and UTC if not given. */
  readonly clock?: (iso: string) => string;
  /** Measures that were typed, by their names (`100 g`), with the units in which they were: they are shown so again. */
  readonly typed?: ReadonlyMap<string, Units>;
}

/** The units that people are shown, each with what it becomes for a maker who uses inches, yards and ounces. */
const SHOWN = {
  cm: { to: 'in', factor: 1 / CM_PER_INCH },
  m: { to: 'yd', factor: 1 / M_PER_YARD },
  g: { to: 'oz', factor: 1 / G_PER_OUNCE },
  mm: { to: 'mm', factor: 1 },
} as const satisfies Record<string, { readonly to: string; readonly factor: number }>;
export type ShownUnit = keyof typeof SHOWN;

/**
 * A unit of a number in the core: one of the shown units, a ratio of two (`m/g`, `cm/m`), or '' for a count,
 * a percentage or an angle. Lengths are centimetres, yarn is metres, weight is grams, hooks are millimetres.
 */
export type Unit = '' | ShownUnit | `${ShownUnit}/${ShownUnit}` | `/${ShownUnit}`;

/** By how much a number in this unit is multiplied when it is shown in the maker's own units. */
export function toOwn(unit: Unit, reader: Reader): number {
  if (unit === '' || reader.units === 'metric') return 1;
  const [over = '', under] = unit.split('/');
  const factor = (name: string) => (name === '' ? 1 : SHOWN[name as ShownUnit].factor);
  return factor(over) / (under === undefined ? 1 : factor(under));
}

/** The unit's name in the maker's own units: `m/g` becomes `yd/oz`. */
export function ownUnit(unit: Unit, reader: Reader): string {
  if (reader.units === 'metric') return unit;
  return unit
    .split('/')
    .map((name) => (name === '' ? '' : SHOWN[name as ShownUnit].to))
    .join('/');
}

/** One for each number of decimals, with and without commas: making one takes longer than a whole answer should. */
const formats = new Map<string, Intl.NumberFormat>();
function formatOf(places: number, commas: boolean): Intl.NumberFormat {
  const key = `${places} ${commas}`;
  let known = formats.get(key);
  if (!known) {
    known = new Intl.NumberFormat('en-US', { maximumFractionDigits: places, useGrouping: commas });
    formats.set(key, known);
  }
  return known;
}

/** Decimals that people read of a number of that size. */
const placesOf = (value: number) => (Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2);

const TENFOLD = [1, 10, 100, 1_000, 10_000];
/** Up to here a number times a power of ten is exact to far less than `NEAR`. */
const PLAIN = 1e9;
/** So near to the middle between two decimals, whether it is rounded up is a matter of what is read of its digits. */
const NEAR = 1e-6;

/**
 * What `Intl` makes of it, which takes several times as long and is asked where the number lies in the middle between two
 * decimals, is very large or is none.
 */
function written(value: number, places: number, commas: boolean): string {
  const size = Math.abs(value);
  const tenfold = TENFOLD[places] ?? NaN;
  const scaled = size * tenfold;
  let digits = Math.floor(scaled);
  const rest = scaled - digits;
  if (!(scaled < PLAIN) || Math.abs(rest - 0.5) < NEAR) return formatOf(places, commas).format(value);
  if (rest > 0.5) digits += 1;
  const whole = Math.floor(digits / tenfold);
  const sign = value < 0 ? '-' : '';
  const before = commas ? grouped(whole) : String(whole);
  let decimals = digits - whole * tenfold;
  if (decimals === 0) return `${digits === 0 ? '' : sign}${before}`;
  let shown = places;
  for (; decimals % 10 === 0; shown -= 1) decimals /= 10;
  return `${sign}${before}.${String(decimals).padStart(shown, '0')}`;
}

/** Thousands parted by commas. */
function grouped(whole: number): string {
  if (whole < 1_000) return String(whole);
  const above = Math.floor(whole / 1_000);
  return `${grouped(above)},${String(whole - above * 1_000).padStart(3, '0')}`;
}

/**
 * A number as people read it: rounded to `decimals` (by size if not given: none from 100, one from 10,
 * two below), thousands parted by commas, no trailing zeros.
 */
export function num(value: number, decimals?: number): string {
  const size = Math.abs(value);
  if (size < 10_000 && Number.isInteger(value)) return String(value);
  const text = written(value, decimals ?? placesOf(value), size >= 10_000);
  return text === '-0' ? '0' : text;
}

/** The same without commas. */
export function bareNum(value: number, decimals: number): string {
  const text =
    Number.isInteger(value) && Math.abs(value) < PLAIN ? String(value) : written(value, decimals, false);
  return text === '-0' ? '0' : text;
}

/**
 * A sum of money, in whatever money: two places, unless it is whole.
 *
 * @example
 * money(47.4) // → '47.40'
 */
export const money = (sum: number): string => (Number.isInteger(sum) ? num(sum) : sum.toFixed(2));

/** `1 row`, `12 rows`: a count with its word. */
export function count(n: number, one: string, many = `${one}s`): string {
  return `${num(n, 2)} ${n === 1 ? one : many}`;
}

const MINUTES_PER_HOUR = 60;

/** `1 hour`, `12.5 hours`: to a tenth, which is six minutes; less than an hour in minutes, `5 minutes`. */
export const hours = (n: number): string =>
  n > 0 && n < 1
    ? count(Math.max(1, Math.round(n * MINUTES_PER_HOUR)), 'minute')
    : count(Math.round(n * 10) / 10, 'hour');

const token = (inside: string) => `⟦${inside}⟧`;
const measure = (unit: ShownUnit) => (value: number, decimals?: number) =>
  token(`${value}${decimals === undefined ? '' : `~${decimals}`} ${unit}`);

/** A length in centimetres, shown in the reader's own units. */
export const cm = measure('cm');
/** Yarn or seam in metres, shown in the reader's own units. */
export const m = measure('m');
/** A weight in grams, shown in the reader's own units. */
export const g = measure('g');
/** A hook in millimetres. */
export const mm = measure('mm');
/** A finished size, width by height, in centimetres. */
export const size = (width: number, height: number, decimals?: number) =>
  token(`${width}x${height}${decimals === undefined ? '' : `~${decimals}`} cm`);
/** A trade term by its US abbreviation, shown in the reader's own terms: `t('hdc')`, `t('gauge')`. */
export const t = (term: Term) => token(term);

/** A day (YYYY-MM-DD) or a moment (ISO, UTC), shown in the reader's own time. */
export const when = (iso: string) => token(`at ${iso}`);

/**
 * What is said one way to who holds the hook in the right hand, and the other way to who holds it in the left: `handed('left', 'right')`.
 */
export const handed = (right: string, left: string) => token(`hand ${right}|${left}`);

/**
 * A value as it would be typed by who reads in centimetres, and by who reads in inches: `typedAs('side:15cm', 'side:6in')`. For hints.
 */
export const typedAs = (metric: string, imperial: string) => token(`typed ${metric}|${imperial}`);

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** A day or a moment in words, in UTC: `31 May 2026`, `31 May 2026, 18:05 UTC`. */
export function inWords(iso: string): string {
  const [, year = '', month = '', day = '', time] = /^(\d{4})-(\d\d)-(\d\d)(?:T(\d\d:\d\d))?/.exec(iso) ?? [];
  const date = `${Number(day)} ${MONTHS[Number(month) - 1] ?? ''} ${year}`;
  return time === undefined ? date : `${date}, ${time} UTC`;
}

const MEASURED = /^([^x~ ]+)(?:x([^x~ ]+))?(?:~(\d+))? (cm|m|g|mm)$/;

const BEGIN = '⟦';
const END = '⟧';

/** Fills the tokens in: every length, weight and trade term in the reader's own units and terms. */
export function forReader(text: string, reader: Reader): string {
  let begin = text.indexOf(BEGIN);
  if (begin < 0) return text;
  let filled = '';
  let done = 0;
  while (begin >= 0) {
    const end = text.indexOf(END, begin);
    if (end < 0) break;
    // A bracket that is opened again before it is closed begins a token there.
    begin = text.lastIndexOf(BEGIN, end);
    filled += text.slice(done, begin) + filledIn(text.slice(begin + 1, end), reader);
    done = end + 1;
    begin = text.indexOf(BEGIN, done);
  }
  return filled + text.slice(done);
}

/** What a token says to a reader; the token itself where it is none. */
function filledIn(inside: string, reader: Reader): string {
  // What is measured has a space before its unit; most terms have none.
  const measured = inside.includes(' ') ? MEASURED.exec(inside) : null;
  if (measured) return measuredFor(measured, inside, reader);
  if (inside.startsWith('at ')) return (reader.clock ?? inWords)(inside.slice(3));
  if (inside.startsWith('hand ')) {
    const [right = '', left = ''] = inside.slice('hand '.length).split('|');
    return reader.hand === 'left' ? left : right;
  }
  if (inside.startsWith('typed ')) {
    const [metric = '', imperial = ''] = inside.slice('typed '.length).split('|');
    return reader.units === 'imperial' ? imperial : metric;
  }
  return inside in TERMS ? TERMS[inside as Term][reader.terms] : `${BEGIN}${inside}${END}`;
}

function measuredFor(
  [, first = '', second, decimals, unit = '']: readonly (string | undefined)[],
  inside: string,
  reader: Reader,
): string {
  // What was typed in other units than her own is shown as it was typed.
  const units = second === undefined ? reader.typed?.get(`${first} ${unit}`) : undefined;
  if (units !== undefined && units !== reader.units) return filledIn(inside, { units, terms: reader.terms });
  const toHers = toOwn(unit as ShownUnit, reader);
  const amount = Number(first) * toHers;
  const other = second === undefined ? amount : Number(second) * toHers;
  // Both sides of a size are rounded alike: 91 × 122, not 91.2 × 122.
  const places = decimals === undefined ? placesOf(Math.max(amount, other)) : Number(decimals);
  const shown = num(amount, places);
  return `${second === undefined ? shown : `${shown} × ${num(other, places)}`} ${ownUnit(unit as ShownUnit, reader)}`;
}

/** What a person typed can hold no token: she could otherwise write into the fabric of an answer. */
export const plain = (typed: string) => typed.replace(/[⟦⟧]/g, '');
