/** Whole seasons of a group blanket, invented: makers who hand in parcels until every motif is in. */
import type { Chance } from '../../../src/core/base/chance.ts';
import type { Asked } from '../../../src/core/group/forecast.ts';
import { countWork } from '../../../src/core/group/at-work.ts';

export type Habit = 'steady' | 'slowing' | 'bursty';
type Known = Asked & { readonly truth: number };

export interface Season {
  /** What is known when the share of the motifs is in, at a moment between two parcels; and when the last came, in days from then. */
  at(share: number): Known;
  /** The same so many days after the first parcel. */
  after(days: number): Known;
}

export interface Group {
  readonly makers?: number;
  readonly motifs?: number;
  /** Motifs in the largest parcel. */
  readonly largest?: number;
  /** The last maker has begun by this day; everybody on a day of her own. 0: all on one day. */
  readonly starts?: number;
  /** What they say they can do, over what they do. */
  readonly boast?: number;
  /** The share of those who join and never make anything. */
  readonly never?: number;
}

const exponential = (roll: Chance, mean: number) => -Math.log(1 - roll()) * mean;
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

/**
 * All join on day 0. `steady`: from her start on each maker's parcels come at a rate of her own, by chance alone. `slowing`:
 * everybody is half as quick at the end as at the start. `bursty`: a week of seven times the rate now and then, with quiet between.
 */
export function season(
  roll: Chance,
  habit: Habit,
  { makers = 12, motifs = 120, largest = 3, starts = 14, boast = 1, never = 0 }: Group = {},
): Season {
  const rates = Array.from({ length: makers }, () => 0.3 + 1.4 * roll());
  const mean = (1 + largest) / 2;
  const saids = rates.map((rate) => boast * rate * mean * (0.7 + 0.6 * roll()));
  const together = 10 * roll();
  const begins = rates.map((_, maker) =>
    maker > 0 && roll() < never ? Infinity : starts === 0 ? together : starts * roll(),
  );
  const came: { day: number; motifs: number; maker: number }[] = [];
  let [day, done] = [0, 0];
  let week = -1;
  let factor = 1;
  while (done < motifs) {
    const working = rates.map((rate, maker) => (begins[maker]! <= day ? rate : 0));
    const next = Math.min(...begins.filter((begin) => begin > day));
    const then = sum(working) === 0 ? Infinity : day + exponential(roll, 7 / (sum(working) * factor));
    if (next < then) {
      // Nothing is remembered of the waiting: it is drawn anew with one more maker.
      day = next;
      continue;
    }
    day = then;
    const now = Math.floor(day / 7);
    if (habit === 'slowing') factor = 1 - 0.5 * (done / motifs);
    if (habit === 'bursty' && now !== week) {
      week = now;
      factor = roll() < 0.25 ? 2.8 : 0.4;
    }
    let at = roll() * sum(working);
    const maker = working.findIndex((rate) => (at -= rate) < 0);
    const parcel = Math.min(1 + Math.floor(roll() * largest), motifs - done);
    came.push({ day, motifs: parcel, maker });
    done += parcel;
  }
  const end = day;

  const knownOn = (now: number): Known => {
    const parcels = came.filter((parcel) => parcel.day <= now);
    const makersNow = saids.map((said, maker) => ({
      said,
      joined: now,
      parcels: parcels
        .filter((parcel) => parcel.maker === maker)
        .map((parcel) => ({ ago: now - parcel.day, motifs: parcel.motifs })),
    }));
    const handedIn = sum(parcels.map((parcel) => parcel.motifs));
    return {
      done: handedIn,
      came: parcels.length,
      squares: sum(parcels.map((parcel) => parcel.motifs ** 2)),
      days: now,
      ...countWork(makersNow),
      toCome: motifs - handedIn,
      daysLeft: undefined,
      said: sum(saids),
      truth: end - now,
    };
  };
  return {
    at(share) {
      let [soFar, index] = [0, 0];
      while (soFar < motifs * share) soFar += came[index++]!.motifs;
      const last = came[index - 1]!.day;
      return knownOn(last + roll() * ((came[index]?.day ?? last) - last));
    },
    after: (days) => knownOn(came[0]!.day + days),
  };
}
