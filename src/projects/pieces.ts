/** Long work in pieces, between which others are heard. */
import { setImmediate } from 'node:timers/promises';

/** Does work that pauses now and then, and lets others in at each pause. */
export async function inPieces<T>(work: Generator<void, T>): Promise<T> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    await setImmediate();
  }
}

/** Does it without a pause. */
export function atOnce<T>(work: Generator<void, T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}
