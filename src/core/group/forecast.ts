/**
 * When a group blanket will be done, and how sure that is. Parcels are taken to come at a steady rate that nobody knows:
 * what came, and a little of what the makers said they can do, tells of the rate; the time to the end is spread by what is
 * not known of the rate and by chance together. Ten motifs in one parcel say less than ten parcels, so they count as so
 * many equal parcels as would scatter alike.
 *
 * Everybody begins at her own time, and a group whose makers are still buying yarn is slower than it will be. So each maker's
 * clock starts with her first parcel, or when she had time enough to start; what tells of the rate is how much came of what they
 * said, and the rate to come is that of all who take part.
 *
 * With Jeffreys' prior the rate after n arrivals in time T is gamma of shape n + ½ and rate T; the time to the next m
 * arrivals is then T · m ÷ (n + ½) · F(2m, 2n + 1), a ratio of two gamma variables (derived). The tests hold the end dates
 * of whole simulated seasons to it.
 */
import type { Work } from './at-work.ts';
import { cumulateF, findQuantileOfChiSquare, findQuantileOfF } from './distributions.ts';
import { sum } from '../base/sum.ts';
import { formula, type Working } from '../base/working.ts';

const DAYS_A_WEEK = 7;
/** The shares of all cases that lie before the two ends and the middle: a tenth on either side is left out. */
const EARLY = 0.1;
const MIDDLE = 0.5;
const LATE = 0.9;
/** What the makers said they can do counts as much as so many parcels that came. */
export const SAID_COUNTS_AS = 1;

export const RATE = formula({
  label: 'Motifs a week so far',
  formula: 'done / (days / days_a_week)',
  given: { done: '', days: '', days_a_week: '' },
  unit: '',
  source: 'derived: what was handed in, over the weeks since the opening',
});
export const PARCELS = formula({
  label: 'Equal parcels that would say as much',
  formula: 'done^2 / squares',
  given: { done: '', squares: '' },
  unit: '',
  source: 'derived: mean and scatter of a sum of parcels that come at a steady rate',
});
export const WEEKS_SCATTER = formula({
  label: 'How many times as much the weeks scatter as such parcels would',
  formula: 'max(1, off / (done / parcels) / chance_alone)',
  given: { off: '', done: '', parcels: '', chance_alone: '' },
  unit: '',
  source:
    'index of dispersion of the weeks’ counts about what the makers at work would bring evenly, held to the chi-square value that chance alone passes one time in five; derived',
});
export const PARCELS_ALIKE = formula({
  label: 'Equal parcels that would say as much, busy and quiet weeks allowed for',
  formula: 'parcels / scatter',
  given: { parcels: '', scatter: '' },
  unit: '',
  source: 'derived: what scatters so many times as much says so many times less',
});
export const MOTIFS_EACH = formula({
  label: 'Motifs in each of those',
  formula: 'done / parcels',
  given: { done: '', parcels: '' },
  unit: '',
  source: 'derived',
});
export const PARCELS_TOLD = formula({
  label: 'Parcels that tell of the rate: those after each maker’s start, and what the makers said',
  formula: 'parcels * counted / came + said_counts',
  given: { parcels: '', counted: '', came: '', said_counts: '' },
  unit: '',
  source:
    'derived: a maker’s first parcel only starts her clock, since everybody’s first motif takes its time; what was said counts as one parcel',
});
export const DAYS_AT_WORK = formula({
  label: 'Days that all together have been at it, each maker counted by what she said',
  formula: 'said_days / said',
  given: { said_days: '', said: '' },
  unit: '',
  source:
    'derived: days since each maker’s start times the motifs a week that she said, summed, over the motifs a week of all who take part',
});
export const DAYS_TOLD = formula({
  label: 'Days that they stand for',
  formula: 'at_work + said_counts * each * days_a_week / said',
  given: { at_work: '', said_counts: '', each: '', days_a_week: '', said: '' },
  unit: '',
  source:
    'derived: the days that the makers have been at it, and the days one parcel takes at the pace that they said',
});
export const PARCELS_TO_COME = formula({
  label: 'Parcels to come',
  formula: '(to_come + (each - 1) / 2) / each',
  given: { to_come: '', each: '' },
  unit: '',
  source: 'derived: the last parcel brings, in the mean, half a parcel more than is wanted (renewal theory)',
});
export const NEEDED_RATE = formula({
  label: 'Motifs a week needed',
  formula: 'to_come / (days_left / days_a_week)',
  given: { to_come: '', days_left: '', days_a_week: '' },
  unit: '',
  source: 'derived: what is to come, over the weeks left',
});
export const EXPECTED_RATE = formula({
  label: 'Motifs a week that are expected',
  formula: 'to_come / (middle / days_a_week)',
  given: { to_come: '', middle: '', days_a_week: '' },
  unit: '',
  source: 'derived: what is to come, over the weeks to the middle of all ends',
});
export const DAYS_TO_GO = formula({
  label: 'Days to go',
  formula: 'days * more / (parcels + 1 / 2) * f_value',
  given: { days: '', more: '', parcels: '', f_value: '' },
  unit: '',
  source:
    'derived: ratio of two gamma variables, the rate with Jeffreys’ prior; f value of 2 × more and 2 × parcels + 1 degrees of freedom',
});
export const CHANCE_F = formula({
  label: 'The closing day as an f value',
  formula: 'days_left * (parcels + 1 / 2) / (days * more)',
  given: { days_left: '', parcels: '', days: '', more: '' },
  unit: '',
  source: 'derived: the days to go, solved for the f value',
});

/** What the makers' work tells; where nobody said anything, `saidDays` are the days since the first parcel. */
export interface Asked extends Work {
  readonly done: number;
  /** Parcels that came: what one maker handed in on one day is one. */
  readonly came: number;
  /** The squares of their motifs, summed. */
  readonly squares: number;
  /** Days since the opening; less than one counts as one. */
  readonly days: number;
  readonly toCome: number;
  /** Days to the closing day; unset without one. */
  readonly daysLeft: number | undefined;
  /** Motifs a week that the makers said they can make, all together. */
  readonly said: number;
}

export interface Forecast {
  /** Motifs a week so far. */
  readonly rate: number;
  /** Motifs a week that bring the middle of the ends about; unset without ends. */
  readonly expected: number | undefined;
  /** Equal parcels that would say as much as what came. */
  readonly parcels: number;
  /** Motifs a week that the date needs; unset without a date, or once it has passed. */
  readonly needed: number | undefined;
  /** Days from now: one end in ten is earlier, half are, nine in ten are. Unset where nothing tells of the rate. */
  readonly ends: { readonly early: number; readonly middle: number; readonly late: number } | undefined;
  /** Per cent of all cases in which it is done by the closing day; unset without one, or without ends. */
  readonly chance: number | undefined;
}

/** Fewer whole weeks than this say nothing of busy and quiet ones. */
const FEWEST_WEEKS = 3;
/** One time in five chance alone passes the value that scatter is held to. */
const BY_CHANCE = 0.8;

/** Parcels that come in bursts say less than so many that come evenly. */
function allowForBursts({ weeks, done }: Asked, parcels: number, working: Working): number {
  const inWeeks = sum(weeks.map(({ motifs }) => motifs));
  const saidDays = sum(weeks.map((week) => week.saidDays));
  if (weeks.length < FEWEST_WEEKS || inWeeks === 0 || saidDays === 0) return parcels;
  const off = weeks.map(({ motifs, saidDays: part }) => {
    const evenly = (inWeeks * part) / saidDays;
    return evenly === 0 ? 0 : (motifs - evenly) ** 2 / evenly;
  });
  const scatter = working.do(WEEKS_SCATTER, {
    off: sum(off),
    done,
    parcels,
    chance_alone: findQuantileOfChiSquare(BY_CHANCE, weeks.length - 1),
  });
  return scatter === 1 ? parcels : working.do(PARCELS_ALIKE, { parcels, scatter });
}

/** Reckons when the rest will be in. Rates are motifs a week, times days. The steps are added to the working. */
export function forecastEnd(asked: Asked, working: Working): Forecast {
  const { done, came, squares, counted, saidDays, toCome, daysLeft, said } = asked;
  const rate = working.do(RATE, { done, days: Math.max(1, asked.days), days_a_week: DAYS_A_WEEK });
  const parcels = done === 0 ? 0 : allowForBursts(asked, working.do(PARCELS, { done, squares }), working);
  const needed =
    daysLeft === undefined || daysLeft <= 0 || toCome === 0
      ? undefined
      : working.do(NEEDED_RATE, { to_come: toCome, days_left: daysLeft, days_a_week: DAYS_A_WEEK });
  const known = { rate, parcels, needed };
  // Where nobody said her pace, that of the parcels needs one after the first, and some time between.
  if (toCome === 0 || (said === 0 && (counted < 1 || saidDays <= 0)))
    return { ...known, expected: undefined, ends: undefined, chance: undefined };

  const each = done === 0 ? 1 : working.do(MOTIFS_EACH, { done, parcels });
  const counts = said > 0 ? SAID_COUNTS_AS : 0;
  const told =
    came === 0 ? counts : working.do(PARCELS_TOLD, { parcels, counted, came, said_counts: counts });
  const days =
    counts === 0
      ? saidDays
      : working.do(DAYS_TOLD, {
          at_work: working.do(DAYS_AT_WORK, { said_days: saidDays, said }),
          said_counts: counts,
          each,
          days_a_week: DAYS_A_WEEK,
          said,
        });
  const more = working.do(PARCELS_TO_COME, { to_come: toCome, each });
  const freedom = [2 * more, 2 * told + 1] as const;
  const daysAt = (share: number, label: string) =>
    working.do(DAYS_TO_GO, { days, more, parcels: told, f_value: findQuantileOfF(share, ...freedom) }, label);
  const ends = {
    early: daysAt(EARLY, 'Days to go, at the soonest: one time in ten it is less'),
    middle: daysAt(MIDDLE, 'Days to go: as often less as more'),
    late: daysAt(LATE, 'Days to go, at the latest: nine times in ten it is less'),
  };
  const chance =
    daysLeft === undefined
      ? undefined
      : daysLeft <= 0
        ? 0
        : 100 *
          cumulateF(working.do(CHANCE_F, { days_left: daysLeft, parcels: told, days, more }), ...freedom);
  const expected = working.do(EXPECTED_RATE, {
    to_come: toCome,
    middle: ends.middle,
    days_a_week: DAYS_A_WEEK,
  });
  return { ...known, expected, ends, chance };
}
