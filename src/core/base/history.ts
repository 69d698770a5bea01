/** A history: what happened, in order, from which the state of a thing is read. */

/** A history that breaks its own rules: an undo that would take the ground from under something later. */
export class BrokenHistory extends Error {}

/** Who did something, when, and the press or line it came from. */
export interface Stamp {
  /** The maker's id. */
  readonly by: string;
  /** ISO moment, UTC. */
  readonly at: string;
  /** The press or line it came from: what arrives twice is done once. */
  readonly once: string;
}

/** What a person who erased her data is called in the events that stay. */
export const SOMEBODY = 'a maker';

/** An id in place of one that was erased; no room makes ids that look so. */
export const strangerId = (number: number) => `somebody.${number}`;
export const isStranger = (maker: string) => /^somebody\.\d+$/.test(maker);

/** The numbers of the events that these took back. */
export function takenBack(events: readonly object[]): ReadonlySet<number> {
  const undone = new Set<number>();
  for (const one of events as readonly { readonly did?: string; readonly event?: number }[])
    if (one.did === 'undone' && one.event !== undefined) undone.add(one.event);
  return undone;
}
