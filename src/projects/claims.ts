/**
 * Who of several processes that share a store does what only one may do at a time. A claim runs out by itself, so that one that died
 * keeps nobody waiting for long; one that was asleep meanwhile finds that it has passed to somebody else.
 */
import { randomUUID } from 'node:crypto';
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Kind, Store } from './store.ts';

const claimSchema = lazily(() =>
  z.object({
    version: z.literal(1),
    /** The process that has it; none where it was given back. */
    holder: z.string().exactOptional(),
    /** ms of the clock until which it is good. */
    until: z.number(),
  }),
);
type Claim = z.infer<ReturnType<typeof claimSchema>>;

const CLAIMS: Kind<Claim> = {
  folder: 'claims',
  called: 'Who does what just now',
  version: 1,
  get schema() {
    return claimSchema();
  },
  migrations: {},
  builtBeside: true,
  derived: true,
};

/** Longer than any request takes with its repetitions; the clocks of the machines may differ by a part of it. */
const GOOD_FOR_MS = 30_000;

export class Claims {
  /** This process, among all that share the store. */
  private readonly self = randomUUID();
  /** Until when what this process has is good, ms. */
  private readonly mine = new Map<string, number>();

  constructor(
    private readonly store: Store,
    private readonly now: () => number = Date.now,
  ) {}

  /** Takes a claim, or holds on to it; false where another process has it. `what` must be fit for an id. */
  async take(what: string): Promise<boolean> {
    // Good for long enough yet: nobody need be asked.
    if (this.left(what) > GOOD_FOR_MS / 2) return true;
    const good = this.now() + GOOD_FOR_MS;
    const got = await this.store.change<Claim, boolean>(CLAIMS, what, (claim) => {
      const others = claim?.holder !== undefined && claim.holder !== this.self && claim.until > this.now();
      if (others) return { keep: undefined, tell: false };
      return { keep: { version: 1, holder: this.self, until: good }, tell: true };
    });
    if (got) this.mine.set(what, good);
    else this.mine.delete(what);
    return got;
  }

  /** Whether it is this process’s yet, by the clock alone. */
  isMine(what: string): boolean {
    return this.left(what) > 0;
  }

  /** How long a claim of this process is good yet, in ms; not at all where the clock was set back since it was taken. */
  private left(what: string): number {
    const left = (this.mine.get(what) ?? 0) - this.now();
    return left <= GOOD_FOR_MS ? left : 0;
  }

  /** Gives a claim back, unless it has passed to another process already. */
  async give(what: string): Promise<void> {
    if (!this.mine.delete(what)) return;
    await this.store.change<Claim, undefined>(CLAIMS, what, (claim) => ({
      keep: claim?.holder === this.self ? { version: 1, until: 0 } : undefined,
      tell: undefined,
    }));
  }
}
