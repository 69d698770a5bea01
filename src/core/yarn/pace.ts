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

/** Faster than this is no crochet, but rows counted afterwards: stitches a minute (common practice). */
export const FASTEST = 60;
/** Slower than this nobody works: there was a break (common practice). Stitches a minute. */
export const SLOWEST = 1;
/** A time so many times her middle time for a stitch held a break. */
export const BREAK_TIMES = 3;
/** From fewer spells than this nothing is said. */
export const FEWEST_ROWS = 3;
/** From fewer rows than this it is said with a caution. */
export const FEW_ROWS = 10;

/** Rows that were worked between two moments at which she counted, and how many they are. */
interface Spell extends Finished {
  readonly rows: number;
}

/** Rows counted one right after the other were worked in the time before the first of them: they are one spell. */
function spellsOf(finished: readonly Finished[]): Spell[] {
  const spells: Spell[] = [];
  for (const { stitches, minutes } of finished) {
    const last = spells.at(-1);
    if (minutes <= 0 || stitches / minutes > FASTEST) {
      if (last)
        spells[spells.length - 1] = {
          stitches: last.stitches + stitches,
          minutes: last.minutes + Math.max(0, minutes),
          rows: last.rows + 1,
        };
    } else spells.push({ stitches, minutes, rows: 1 });
  }
  return spells;
}

/** The time for a stitch that half of the stitches took less than. */
function middleTime(spells: readonly Spell[]): number {
  const sorted = [...spells].sort((a, b) => a.minutes / a.stitches - b.minutes / b.stitches);
  const half = sorted.reduce((sum, { stitches }) => sum + stitches, 0) / 2;
  let sofar = 0;
  for (const { stitches, minutes } of sorted) {
    sofar += stitches;
    if (sofar >= half) return minutes / stitches;
  }
  return Infinity;
}

/**
 * Her pace from rows finished one after the other; undefined where they are too few to say anything. A spell that took
 * over `BREAK_TIMES` her own middle time for a stitch held a break and is left out, however short or long her rows are.
 */
export function paceOf(finished: readonly Finished[], working?: Working): Pace | undefined {
  const worked = spellsOf(finished).filter(({ stitches, minutes }) => stitches / minutes >= SLOWEST);
  const longest = BREAK_TIMES * middleTime(worked);
  const told = worked.filter(({ stitches, minutes }) => minutes / stitches <= longest);
  if (told.length < FEWEST_ROWS) return undefined;
  const sum = (of: (spell: Spell) => number) => told.reduce((all, spell) => all + of(spell), 0);
  const stitches = sum((spell) => spell.stitches);
  const minutes = sum((spell) => spell.minutes);
  const perMinute = working ? working.do(PACE, { stitches, minutes }) : stitches / minutes;
  return { perMinute, rows: sum((spell) => spell.rows), minutes };
}

/** Her pace from what she says: so many minutes for a piece of so many stitches. */
export const reckonSaidPace = (stitches: number, minutes: number, working: Working): number =>
  working.do(PACE, { stitches, minutes }, 'Stitches a minute, from the minutes that one takes you');

/** Hours for so many stitches at a pace in stitches a minute. */
export const reckonHours = (stitches: number, perMinute: number, working: Working, label?: string): number =>
  working.do(HOURS, { stitches, pace: perMinute, minutes_per_hour: 60 }, label);
