/**
 * Another process that serves the same shards: the platform tells both of everything and takes the first answer. Where this one cannot reach what is
 * saved, or ends just now, its refusal must not come before the other’s answer, which may have saved what she pressed.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import { NotSaved } from '../../projects/not-saved.ts';

/** Taken for there as long as it answered something before this one within so long, ms. */
const THERE_MS = 60 * 60_000;
/** The other has this long, from when she pressed, ms: the platform waits for three seconds, and a slow line needs some of them. */
export const YIELDS_MS = 2_200;

/** Problems of a process itself, not of what it is asked. */
const OWN = ['restarting', 'too-fast'];

/** Whether another process might do better: what is refused of itself is refused by every one. */
export const isOwnTrouble = (error: unknown): boolean =>
  error instanceof NotSaved || OWN.includes((error as { code?: unknown } | undefined)?.code as string);

export class Companion {
  private noticed = -Infinity;

  constructor(
    /** Whether what is saved is out of reach of this process just now. */
    private readonly away: () => boolean = () => false,
    private readonly now: () => number = () => performance.now(),
  ) {}

  /** Notes that something was answered already, and not by this process. */
  notice(): void {
    this.noticed = this.now();
  }

  isThere(): boolean {
    return this.now() - this.noticed < THERE_MS;
  }

  /** ms for which this process says nothing yet about what she pressed then, not even that an answer is on its way. */
  hasLeft(since: number): number {
    return this.isThere() && this.away() ? this.left(since) : 0;
  }

  /** Waits before it is refused for a trouble of this process alone. */
  async yields(since: number): Promise<void> {
    if (this.isThere() && this.left(since) > 0) await sleep(this.left(since));
  }

  private left(since: number): number {
    return Math.max(0, YIELDS_MS - (this.now() - since));
  }
}
