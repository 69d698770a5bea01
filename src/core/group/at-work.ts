/** How long the makers of a group blanket have been at it, and what came of it: what tells of the rate at which motifs come. */
import { sum } from '../base/sum.ts';

/**
 * So many days after she joined, a maker who handed in nothing has had time to start: yarn to buy, a first motif to make. From
 * then on her silence counts (our own choice; the tests try other starts).
 */
export const START_DAYS = 14;
const DAYS_A_WEEK = 7;

/** Who takes part: the motifs a week that she said, and how many days ago she joined and handed in each parcel. */
export interface TakesPart {
  readonly said: number;
  readonly joined: number;
  readonly parcels: readonly { readonly ago: number; readonly motifs: number }[];
}

/** A week of the makers' work. */
export interface Week {
  /** Motifs of the parcels that are counted in it. */
  readonly motifs: number;
  readonly saidDays: number;
}

export interface Work {
  /** Parcels that came after their maker's clock had started. */
  readonly counted: number;
  /** Days since each maker's start times the motifs a week that she said, summed. */
  readonly saidDays: number;
  /** The whole weeks since the first maker started, in order. */
  readonly weeks: readonly Week[];
}

/**
 * Counts the work of makers since their starts. A maker's clock starts with her first parcel, which is therefore not counted
 * itself, or when she had `START_DAYS` for it, whichever was first.
 *
 * @example
 * countWork([{ said: 2, joined: 20, parcels: [{ ago: 10, motifs: 3 }, { ago: 4, motifs: 1 }] }]).saidDays // → 20
 */
export function countWork(makers: readonly TakesPart[]): Work {
  const atWork = makers.map(({ said, joined, parcels }) => {
    const days = Math.max(0, joined - START_DAYS, ...parcels.map(({ ago }) => ago));
    return { said, days, parcels: parcels.filter(({ ago }) => ago < days) };
  });
  const parcels = atWork.flatMap((maker) => maker.parcels);
  const longest = Math.max(0, ...atWork.map(({ days }) => days));
  const weeks = Array.from({ length: Math.floor(longest / DAYS_A_WEEK) }, (_, index): Week => {
    const from = longest - index * DAYS_A_WEEK;
    const to = from - DAYS_A_WEEK;
    return {
      motifs: sum(parcels.filter(({ ago }) => ago <= from && ago > to).map(({ motifs }) => motifs)),
      saidDays: sum(atWork.map(({ said, days }) => said * Math.max(0, Math.min(days, from) - to))),
    };
  });
  return {
    counted: parcels.length,
    saidDays: sum(atWork.map(({ said, days }) => said * days)),
    weeks,
  };
}
