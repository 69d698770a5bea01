/**
 * When a lesson comes back: boxes, each with longer days. Published: three boxes, every day, every three days, every five days; what
 * is right goes one box on, what is wrong goes back to the first (en.wikipedia.org/wiki/Leitner_system).
 */
export const DAYS_BY_BOX: readonly number[] = [1, 3, 5];

const DAY_MS = 24 * 60 * 60 * 1000;

/** Tries that a task has before its working is shown. */
export const TRIES = 3;

/** Where a lesson lies: box 0 is not yet right once, the last box's next success makes it known. */
export interface Place {
  readonly box: number;
  /** When it comes back (ISO); unset where it is known, or has not been right yet. */
  readonly due?: string | undefined;
}

/** The box that comes after a task was right, and when it is due. */
export function moveOn({ box }: Pick<Place, 'box'>, now: Date): Place {
  const next = Math.min(box + 1, DAYS_BY_BOX.length + 1);
  const days = DAYS_BY_BOX[next - 1];
  return days === undefined
    ? { box: next }
    : { box: next, due: new Date(now.getTime() + days * DAY_MS).toISOString() };
}

/** Back to the first box, due the day after. */
export const moveBack = (now: Date): Place => moveOn({ box: 0 }, now);

/** Whether it has gone through all boxes. */
export const isKnown = ({ box }: Pick<Place, 'box'>): boolean => box > DAYS_BY_BOX.length;

export const isDue = ({ due }: Pick<Place, 'due'>, now: Date): boolean =>
  due !== undefined && Date.parse(due) <= now.getTime();
