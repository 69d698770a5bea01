/** Seasons of a group blanket, invented: what makers have weighed, what they hold, and what it will take them. */
import type { Chance } from '../../../src/core/base/chance.ts';
import { Working } from '../../../src/core/base/working.ts';
import { reckonBuying, reckonUse, type Amount, type Reading } from '../../../src/core/group/use.ts';
import { normal } from '../../simulated.ts';

export interface YarnSeason {
  /** Lists that ran out, of all makers who hold something; those of makers who had weighed something, and who had not. */
  readonly ranOut: { readonly weighed: boolean; readonly out: boolean }[];
  /** Whether all together ran out; what was bought together, and what a flat reserve of 10 % on the same would have bought. */
  readonly togetherOut: boolean;
  readonly together: number;
  readonly flat: number;
}

export interface Habits {
  readonly makers?: number;
  /** Per cent, as standard deviations: from maker to maker, from motif to motif, and how far the reckoning is off for all. */
  readonly between?: number;
  readonly within?: number;
  readonly reckoning?: number;
  /** The chance that a maker has weighed something, the most times that she did, and the most motifs at a time. */
  readonly weighing?: number;
  readonly times?: number;
  readonly most?: number;
}

/** Motifs reckoned to 12 g and 20 m each, weighed together at hand-in on a scale of whole grams. */
export function yarnSeason(
  roll: Chance,
  {
    makers = 40,
    between = 12,
    within = 4,
    reckoning = 7.5,
    weighing = 0.75,
    times = 1,
    most = 4,
  }: Habits = {},
): YarnSeason {
  const scatter = (percent: number) => 1 + (percent / 100) * normal(roll);
  const level = scatter(reckoning);
  const all = Array.from({ length: makers }, (_, index) => {
    const hand = level * scatter(between);
    const motifs = (many: number) => Array.from({ length: many }, () => hand * scatter(within));
    const handIns = roll() < weighing ? (times === 1 ? 1 : 1 + Math.floor(roll() * times)) : 0;
    const weighed = Array.from({ length: handIns }, () => motifs(1 + Math.floor(roll() * most)));
    return { maker: `m${index}`, weighed, toCome: motifs(3 + Math.floor(roll() * 10)) };
  });
  const sum = (numbers: readonly number[]) => numbers.reduce((total, one) => total + one, 0);
  const readings: Reading[] = all.flatMap(({ maker, weighed }) =>
    weighed.map((together) => ({
      maker,
      motifs: together.length,
      weight: Math.round(12 * sum(together)),
      step: 1,
      reckoned: 12,
    })),
  );
  const working = new Working();
  const use = reckonUse(readings, 7.5, working);
  const uses = new Map(all.map(({ maker }) => [maker, use.of(maker, working)]));
  const amounts = all.map(({ maker, toCome }): Amount => ({
    maker,
    metres: 20 * toCome.length,
    squares: 400 * toCome.length,
    unsure: 0,
  }));
  const buying = (some: readonly Amount[]) => reckonBuying(some, use, uses, working, (label) => label);
  const together = buying(amounts);
  return {
    ranOut: all.map(({ weighed, toCome }, index) => ({
      weighed: weighed.length > 0,
      out: 20 * sum(toCome) > buying([amounts[index]!]).buy,
    })),
    togetherOut: 20 * sum(all.flatMap(({ toCome }) => toCome)) > together.buy,
    together: together.buy,
    flat: together.expected * 1.1,
  };
}
