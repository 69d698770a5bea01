/** How far a blanket is: what is made of what its layout needs. */
import { sum } from '../base/sum.ts';

/**
 * How many of each kind are made for the layout: what is made beyond its need is over.
 *
 * @example
 * countMadeOfNeeded([10, 10], [12, 4]) // → [10, 4]
 */
export const countMadeOfNeeded = (needed: readonly number[], made: readonly number[]): number[] =>
  needed.map((most, kind) => Math.min(made[kind] ?? 0, most));

/** How many motifs of the layout are made, all kinds together. */
export const countMade = (needed: readonly number[], made: readonly number[]): number =>
  sum(countMadeOfNeeded(needed, made));

/** How many are still to be made of so many. */
export const countStillToMake = (needed: number, made: number): number => Math.max(0, needed - made);
