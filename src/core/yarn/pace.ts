/** How fast a maker works: her own pace, from the moments at which she finished rows or from what she says. */
import { formula, type Working } from '../base/working.ts';

export const PACE = formula({
  label: 'Stitches a minute, at her own pace',
  formula: 'stitches / minutes',
  given: { stitches: '', minutes: '' },
  unit: '',
  source: 'derived: stitches of the rows that were finished one after the other, over the time between',
});
export const HOURS = formula({
  label: 'Hours at that pace',
  formula: 'stitches / pace / minutes_per_hour',
  given: { stitches: '', pace: '', minutes_per_hour: '' },
  unit: '',
  source: 'derived: time goes with stitches; ends, seams and breaks are not in it',
});

/** One finished row: its stitches, and the minutes since the row before was finished. */
export interface Finished {
  readonly stitches: number;
  readonly minutes: number;
}

export interface Pace {
  /** Stitches (or blocks) a minute. */
  readonly perMinute: number;
  /** Rows that it rests on. */
  readonly rows: number;
  readonly minutes: number;
}

/** Longer than this between two rows was a break, in minutes (common practice: nobody works an hour on one row without pause). */
export const LONGEST_ROW = 60;
/** Faster than this is no crochet, but rows counted afterwards: stitches a minute. */
export const FASTEST = 60;
/** From fewer rows than this nothing is said. */
export const FEWEST_ROWS = 3;
/** From fewer rows than this it is said with a caution. */
export const FEW_ROWS = 10;

/** Her pace from rows finished one after the other; undefined where they are too few to say anything. */
export function paceOf(finished: readonly Finished[], working?: Working): Pace | undefined {
  const told = finished.filter(
    ({ stitches, minutes }) => minutes > 0 && minutes <= LONGEST_ROW && stitches / minutes <= FASTEST,
  );
  if (told.length < FEWEST_ROWS) return undefined;
  const stitches = told.reduce((sum, row) => sum + row.stitches, 0);
  const minutes = told.reduce((sum, row) => sum + row.minutes, 0);
  const perMinute = working ? working.do(PACE, { stitches, minutes }) : stitches / minutes;
  return { perMinute, rows: told.length, minutes };
}

/** Her pace from what she says: so many minutes for a piece of so many stitches. */
export const saidPace = (stitches: number, minutes: number, working: Working): number =>
  working.do(PACE, { stitches, minutes }, 'Stitches a minute, from the minutes that one takes you');

/** Hours for so many stitches at a pace in stitches a minute. */
export const hoursFor = (stitches: number, perMinute: number, working: Working, label?: string): number =>
  working.do(HOURS, { stitches, pace: perMinute, minutes_per_hour: 60 }, label);
