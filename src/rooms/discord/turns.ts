/**
 * Work that one thread does for everybody, by turns: after one maker's comes another's, however much the first has asked for. Few
 * of one maker's wait at a time, and what would come too late to be delivered is not begun.
 */
import { Problem } from '../../core/base/problem.ts';

/** Of one maker, beside what is in hand. */
const MOST_WAITING = 2;
/** The platform takes an answer for a quarter of an hour; nobody looks for one that long. */
const LATE_MS = 5 * 60_000;

interface Job {
  readonly asked: number;
  readonly start: () => Promise<void>;
  readonly refuse: (problem: Problem) => void;
}

export class Turns {
  /** What waits, by maker; whoever was served last stands last. */
  private readonly waiting = new Map<string, Job[]>();
  private busy = false;

  /** `now` is a clock in ms that never jumps back. */
  constructor(
    /** What is made, more than one: `pictures`. */
    private readonly what: string,
    private readonly now: () => number = () => performance.now(),
  ) {}

  /**
   * Does it when it is this maker's turn. Rejects as it does, or with a Problem: too-many-waiting, where two of hers wait already;
   * came-too-late.
   */
  take<T>(maker: string, work: () => Promise<T>): Promise<T> {
    const hers = this.waiting.get(maker) ?? [];
    if (hers.length >= MOST_WAITING)
      return Promise.reject(
        new Problem(
          'too-many-waiting',
          `${MOST_WAITING} ${this.what} of yours are waiting to be made already.`,
          {
            hint: 'Ask for this one when they are there.',
            facts: { most: MOST_WAITING },
          },
        ),
      );
    return new Promise<T>((done, refuse) => {
      const start = () => work().then(done, refuse);
      hers.push({ asked: this.now(), start, refuse });
      this.waiting.set(maker, hers);
      if (!this.busy) void this.go();
    });
  }

  private async go(): Promise<void> {
    this.busy = true;
    for (;;) {
      const [next] = this.waiting;
      if (!next) break;
      const [maker, hers] = next;
      const job = hers.shift();
      this.waiting.delete(maker);
      if (hers.length > 0) this.waiting.set(maker, hers);
      if (job === undefined) continue;
      if (this.now() - job.asked > LATE_MS)
        job.refuse(
          new Problem('came-too-late', 'So much was to be made that this was given up.', {
            hint: 'Ask for it again.',
          }),
        );
      else await job.start();
    }
    this.busy = false;
  }
}
