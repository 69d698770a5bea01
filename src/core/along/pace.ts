/** How a class comes along: parts that are out, parts that she is done with, and what most of the others are at. */
import { partsBegun } from './rules.ts';
import type { AlongState } from './state.ts';

export interface AlongPace {
  /** Parts that are given out by now. */
  readonly givenOut: number;
  /** Parts that she is done with; unset where she takes no part. */
  readonly done?: number;
  /** Given out and not done by her. */
  readonly behind?: number;
  /** Parts that the middle one of all makers is done with, of an even number the lower of the two. */
  readonly middle: number;
  /** Makers who are done with every part that is given out. */
  readonly upToDate: number;
  /** The day of the last part, YYYY-MM-DD. */
  readonly ends?: string;
}

/** Reads it off the state at a moment. */
export function readPace(state: AlongState, maker: string, now: Date): AlongPace {
  const begun = partsBegun(state, now);
  const doneBy = (who: string) =>
    state.parts.filter(({ id }) => state.done.get(id)?.has(who) === true).length;
  const isUpToDate = (who: string) => begun.every(({ id }) => state.done.get(id)?.has(who) === true);
  const all = [...state.members.keys()].map(doneBy).sort((a, b) => a - b);
  const last = state.parts.at(-1);
  return {
    givenOut: begun.length,
    middle: all[Math.floor((all.length - 1) / 2)] ?? 0,
    upToDate: [...state.members.keys()].filter(isUpToDate).length,
    ...(last === undefined ? {} : { ends: last.from }),
    ...(state.members.has(maker)
      ? {
          done: doneBy(maker),
          behind: begun.filter(({ id }) => state.done.get(id)?.has(maker) !== true).length,
        }
      : {}),
  };
}
