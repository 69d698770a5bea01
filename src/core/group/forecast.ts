/**
 * When a group blanket will be done, with a spread that is honest about few data. Hand-ins are taken as events at a steady
 * rate, each of some motifs; ten motifs in one parcel say less than ten parcels, so they count as so many equal parcels as
 * would scatter alike (motifs² over the sum of the parcels' squares). The rate's 80 % limits are Garwood's (Biometrika 28, 1936), their chi-square values by Wilson and Hilferty's
 * cube-root rule (PNAS 17, 1931). Both references from memory; the coverage is checked by simulation in the tests.
 */
import { formula, type Working } from '../base/working.ts';

const DAYS_A_WEEK = 7;
/** The standard normal value that leaves a tenth on either side: limits that hold four times in five. */
const Z_80 = 1.2815515655446004;

export const RATE = formula({
  label: 'Motifs a week so far',
  formula: 'done / (days / days_a_week)',
  given: { done: '', days: '', days_a_week: '' },
  unit: '',
  source: 'derived: what was handed in, over the weeks since the first',
});
export const PARCELS = formula({
  label: 'Equal parcels that would say as much',
  formula: 'done^2 / squares',
  given: { done: '', squares: '' },
  unit: '',
  source: 'derived: mean and scatter of a sum of parcels that come at a steady rate',
});
export const MOTIFS_EACH = formula({
  label: 'Motifs in each of those',
  formula: 'done / parcels',
  given: { done: '', parcels: '' },
  unit: '',
  source: 'derived',
});
export const NEEDED_RATE = formula({
  label: 'Motifs a week needed',
  formula: 'to_come / (days_left / days_a_week)',
  given: { to_come: '', days_left: '', days_a_week: '' },
  unit: '',
  source: 'derived: what is to come, over the weeks left',
});
export const WEEKS_TO_GO = formula({
  label: 'Weeks to go at that rate',
  formula: 'to_come / rate',
  given: { to_come: '', rate: '' },
  unit: '',
  source: 'derived: what is to come, over motifs a week',
});
export const RATE_LOW = formula({
  label: 'Motifs a week, if this was a lucky stretch',
  formula: 'each * parcels * (1 - 1 / (9 * parcels) - z / (3 * sqrt(parcels)))^3 / (days / days_a_week)',
  given: { each: '', parcels: '', z: '', days: '', days_a_week: '' },
  unit: '',
  source: 'Garwood’s limits for a count, by Wilson and Hilferty’s rule (from memory, checked by simulation)',
});
export const RATE_HIGH = formula({
  label: 'Motifs a week, if this was an unlucky stretch',
  formula:
    'each * (parcels + 1) * (1 - 1 / (9 * (parcels + 1)) + z / (3 * sqrt(parcels + 1)))^3 / (days / days_a_week)',
  given: { each: '', parcels: '', z: '', days: '', days_a_week: '' },
  unit: '',
  source: 'Garwood’s limits for a count, by Wilson and Hilferty’s rule (from memory, checked by simulation)',
});

export interface Forecast {
  /** Motifs a week so far, with limits that hold four times in five; low is 0 while nothing is in. */
  readonly rate: number;
  readonly low: number;
  readonly high: number;
  /** Equal parcels that would say as much as what came. */
  readonly parcels: number;
  /** Motifs a week that the date needs; unset without a date, or once it has passed. */
  readonly needed: number | undefined;
  /** Weeks to go, the likely value and the two ends; unset where the rate allows no end. */
  readonly weeks: number | undefined;
  readonly soonest: number;
  readonly latest: number | undefined;
}

/**
 * `done` motifs in `days` days since the start, which came in parcels whose squares sum to `squares` (one by one if not given);
 * `toCome` still wanted, `daysLeft` to the date (undefined without one).
 * Less than a day counts as a day. Rates are motifs a week, times weeks.
 */
export function forecast(
  {
    done,
    squares = done,
    days,
    toCome,
    daysLeft,
  }: { done: number; squares?: number; days: number; toCome: number; daysLeft: number | undefined },
  working: Working,
): Forecast {
  const time = { days: Math.max(1, days), days_a_week: DAYS_A_WEEK };
  const rate = working.do(RATE, { done, ...time });
  const parcels = done === 0 ? 0 : working.do(PARCELS, { done, squares });
  const each = done === 0 ? 1 : working.do(MOTIFS_EACH, { done, parcels });
  const low = done === 0 ? 0 : Math.max(0, working.do(RATE_LOW, { each, parcels, z: Z_80, ...time }));
  const high = working.do(RATE_HIGH, { each, parcels, z: Z_80, ...time });
  const needed =
    daysLeft === undefined || daysLeft <= 0 || toCome === 0
      ? undefined
      : working.do(NEEDED_RATE, { to_come: toCome, days_left: daysLeft, days_a_week: DAYS_A_WEEK });
  const weeks = (perWeek: number, label?: string) =>
    perWeek > 0 ? working.do(WEEKS_TO_GO, { to_come: toCome, rate: perWeek }, label) : undefined;
  return {
    rate,
    low,
    high,
    parcels,
    needed,
    weeks: weeks(rate),
    soonest: weeks(high, 'Weeks to go, at the soonest') ?? 0,
    latest: weeks(low, 'Weeks to go, at the latest'),
  };
}
