/** What a group blanket has and wants, by kind and all kinds together. */
import { findBorderWidth } from '../blanket/pieces.ts';
import { sum } from '../base/sum.ts';
import type { GroupPlan } from './events.ts';
import { openFor, type GroupState, type Tally } from './state.ts';

export interface KindTotals extends Tally {
  readonly name: string;
  /** What the layout needs, and the spares beside it. */
  readonly quota: number;
  readonly spares: number;
  /** Both together. */
  readonly wanted: number;
  /** What may still be pledged. */
  readonly open: number;
}

const NOTHING: Tally = { pledged: 0, handedIn: 0, accepted: 0 };

/** Every kind of the blanket, in the order of its plan. */
export const totalKinds = (state: Pick<GroupState, 'plan' | 'tally'>): KindTotals[] =>
  state.plan.kinds.map(({ name, quota, spares }, kind) => {
    const tally = state.tally[kind] ?? NOTHING;
    return {
      name,
      quota,
      spares,
      wanted: quota + spares,
      ...tally,
      open: openFor(state, kind),
    };
  });

/** All kinds together. */
export function totalsOf(state: Pick<GroupState, 'plan' | 'tally'>): Omit<KindTotals, 'name'> {
  const kinds = totalKinds(state);
  const all = (of: keyof Omit<KindTotals, 'name'>) => sum(kinds.map((kind) => kind[of]));
  return {
    quota: all('quota'),
    spares: all('spares'),
    wanted: all('wanted'),
    pledged: all('pledged'),
    handedIn: all('handedIn'),
    accepted: all('accepted'),
    open: all('open'),
  };
}

/** How many motifs of a kind a maker has pledged and not handed in. */
export const pledgedOf = (state: Pick<GroupState, 'pledges'>, maker: string, kind: number): number =>
  state.pledges.get(maker)?.[kind] ?? 0;

/** Of so many motifs of a kind that she hands in, how many she has not pledged. */
export const countBeyondPledge = (
  state: Pick<GroupState, 'pledges'>,
  maker: string,
  kind: number,
  motifs: number,
): number => Math.max(0, motifs - pledgedOf(state, maker, kind));

/** How many motifs a maker has pledged and not handed in, of all kinds. */
export const countPledged = (state: Pick<GroupState, 'pledges'>, maker: string): number =>
  sum(state.pledges.get(maker) ?? []);

/** The blanket's edges in cm, its motifs as large as wanted, its border counted in. */
export function edgesOf(plan: Pick<GroupPlan, 'columns' | 'rows' | 'side' | 'kinds' | 'border' | 'yarns'>): {
  readonly width: number;
  readonly height: number;
} {
  const { columns, rows, side } = plan;
  const border = 2 * findBorderWidth(plan);
  return { width: columns * side + border, height: rows * side + border };
}
