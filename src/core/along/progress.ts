/** How a class stands with its parts, in numbers: all parts at once, and everything anybody was stuck at gone through once. */
import type { AlongState } from './state.ts';

export interface PartProgress {
  readonly done: number;
  /** Stuck at it and not done since. */
  readonly stuck: number;
  readonly notBegun: number;
}

/** How many are done with each part, stuck at it now, and neither; by the part's id. */
export function countByPart(
  state: Pick<AlongState, 'parts' | 'done' | 'stuck' | 'members'>,
): ReadonlyMap<number, PartProgress> {
  const stuckAt = new Map<number, Set<string>>();
  for (const { part, maker } of state.stuck) {
    if (state.done.get(part)?.has(maker) === true) continue;
    const makers = stuckAt.get(part);
    if (makers) makers.add(maker);
    else stuckAt.set(part, new Set([maker]));
  }
  return new Map(
    state.parts.map(({ id }) => {
      const done = state.done.get(id)?.size ?? 0;
      const stuck = stuckAt.get(id)?.size ?? 0;
      return [id, { done, stuck, notBegun: state.members.size - done - stuck }];
    }),
  );
}
