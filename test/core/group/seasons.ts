/** Whole seasons of a group blanket, invented: makers who hand in parcels until every motif is in. */
import type { Chance } from '../../../src/core/base/chance.ts';
import type { Asked } from '../../../src/core/group/forecast.ts';

export type Habit = 'steady' | 'slowing' | 'bursty';

export interface Season {
  /** What is known when the share of the motifs is in, at a moment between two parcels; and when the last came, in days from then. */
  at(share: number): Asked & { readonly truth: number };
}

const exponential = (roll: Chance, mean: number) => -Math.log(1 - roll()) * mean;

/**
 * `steady`: each maker's parcels come at a rate of her own, by chance alone. `slowing`: everybody is half as quick at the
 * end as at the start. `bursty`: a week of four times the rate now and then, with quiet between.
 */
export function season(roll: Chance, habit: Habit, { makers = 12, motifs = 120, largest = 3 } = {}): Season {
  const rates = Array.from({ length: makers }, () => 0.3 + 1.4 * roll());
  const mean = (1 + largest) / 2;
  const said = rates.reduce((sum, rate) => sum + rate * mean * (0.7 + 0.6 * roll()), 0);
  const total = rates.reduce((sum, rate) => sum + rate, 0);
  const lag = 3 + 7 * roll();
  const came: { day: number; motifs: number }[] = [];
  let [day, sum] = [lag, 0];
  let week = -1;
  let factor = 1;
  while (sum < motifs) {
    day += exponential(roll, 7 / (total * factor));
    const now = Math.floor(day / 7);
    if (habit === 'slowing') factor = 1 - 0.5 * (sum / motifs);
    if (habit === 'bursty' && now !== week) {
      week = now;
      factor = roll() < 0.25 ? 2.8 : 0.4;
    }
    const parcel = Math.min(1 + Math.floor(roll() * largest), motifs - sum);
    came.push({ day, motifs: parcel });
    sum += parcel;
  }
  const end = day;
  return {
    at(share) {
      const wanted = motifs * share;
      let done = 0;
      let index = 0;
      while (done < wanted) done += came[index++]!.motifs;
      const last = came[index - 1]!.day;
      const now = last + roll() * ((came[index]?.day ?? last) - last);
      const parcels = came.slice(0, index);
      return {
        done,
        came: parcels.length,
        squares: parcels.reduce((all, parcel) => all + parcel.motifs ** 2, 0),
        weeks: Array.from({ length: Math.floor((now - came[0]!.day) / 7) }, (_, index) =>
          parcels.reduce(
            (all, parcel) =>
              all + (Math.floor((parcel.day - came[0]!.day) / 7) === index ? parcel.motifs : 0),
            0,
          ),
        ),
        days: now,
        sinceFirst: now - came[0]!.day,
        toCome: motifs - done,
        daysLeft: undefined,
        said,
        truth: end - now,
      };
    },
  };
}
