/** How fast one person may ask: a bucket of presses each, refilled steadily. */
export interface Pace {
  /** Presses at once. */
  readonly burst: number;
  readonly perSecond: number;
}

/** Quick fingers on a row counter stay below it; a script does not. */
export const PACE: Pace = { burst: 20, perSecond: 1 };

/** Keys typed into an option that has offers: a quick typist’s ten a second, one after the other. */
const KEYS_A_PRESS = 5;
export const typingPace = ({ burst, perSecond }: Pace = PACE): Pace => ({
  burst: burst * KEYS_A_PRESS,
  perSecond: perSecond * KEYS_A_PRESS,
});

/**
 * Buckets that are remembered at least, twice as many at most: in two generations, of which the older is forgotten as a whole. Those
 * unused longest go first, and are full again by then.
 */
const MOST = 10_000;

interface Bucket {
  readonly left: number;
  readonly at: number;
  /** Presses that were let pass and that no other process was told of. */
  readonly untold: number;
}

export class Rate {
  private young = new Map<string, Bucket>();
  private old: ReadonlyMap<string, Bucket> = new Map();
  /** Who has little left: of these others are told. */
  private readonly low = new Set<string>();

  /** `seconds` is a clock that never jumps back. */
  constructor(
    private readonly seconds: () => number,
    private readonly pace: Pace = PACE,
  ) {}

  /** How many seconds a person would have to wait; nothing is taken. */
  waits(person: string): number {
    const left = this.leftOf(person, this.seconds());
    return left >= 1 ? 0 : Math.ceil((1 - left) / this.pace.perSecond);
  }

  private leftOf(person: string, now: number): number {
    const { burst, perSecond } = this.pace;
    const bucket = this.bucketOf(person);
    return bucket ? Math.min(burst, bucket.left + Math.max(0, now - bucket.at) * perSecond) : burst;
  }

  /** Takes one press of a person; returns how many seconds she has to wait, 0 where she need not. */
  take(person: string): number {
    const now = this.seconds();
    const { burst, perSecond } = this.pace;
    const left = this.leftOf(person, now);
    const may = left >= 1;
    // Full again: what she pressed before is over for the others as well.
    const untold = left >= burst ? 0 : (this.bucketOf(person)?.untold ?? 0);
    this.put(person, { left: may ? left - 1 : left, at: now, untold: may ? untold + 1 : untold });
    if (may && left - 1 < burst / 2) this.low.add(person);
    return may ? 0 : Math.ceil((1 - left) / perSecond);
  }

  /** Presses of those who have less than half their burst left, as far as this was not asked before. */
  untold(): Map<string, number> {
    const all = new Map<string, number>();
    for (const person of this.low) {
      const bucket = this.bucketOf(person);
      if (bucket === undefined || bucket.untold === 0) continue;
      all.set(person, bucket.untold);
      this.put(person, { ...bucket, untold: 0 });
    }
    this.low.clear();
    return all;
  }

  /** Takes presses that another process let pass so many seconds ago; never more than a second burst, which would be waited for too long. */
  elsewhere(person: string, presses: number, secondsAgo: number): void {
    const now = this.seconds();
    const { burst, perSecond } = this.pace;
    const over = presses - secondsAgo * perSecond;
    if (over <= 0) return;
    const untold = this.bucketOf(person)?.untold ?? 0;
    this.put(person, { left: Math.max(-burst, this.leftOf(person, now) - over), at: now, untold });
  }

  private bucketOf(person: string): Bucket | undefined {
    return this.young.get(person) ?? this.old.get(person);
  }

  private put(person: string, bucket: Bucket): void {
    this.young.set(person, bucket);
    if (this.young.size <= MOST) return;
    this.old = this.young;
    this.young = new Map();
  }
}

/** The other processes of this bot, as far as they tell of presses. */
export interface OtherProcesses {
  exchange(
    mine: ReadonlyMap<string, number>,
  ): Promise<readonly { readonly who: string; readonly presses: number; readonly ago: number }[]>;
}

const EXCHANGED_MS = 1_000;
/** Where nobody presses, nobody is asked. */
const ASLEEP_AFTER_MS = 30_000;

/** Keeps one person’s pace the same in all processes, about a second late; no press waits for it. */
export class CommonPace {
  private timer: NodeJS.Timeout | undefined;
  private latest = 0;
  private closed = false;

  constructor(
    private readonly rate: Rate,
    private readonly others: OtherProcesses,
    private readonly every = EXCHANGED_MS,
  ) {}

  /** Says that somebody pressed here. */
  pressed(): void {
    this.latest = performance.now();
    if (this.timer === undefined) this.later();
  }

  close(): void {
    this.closed = true;
    clearTimeout(this.timer);
  }

  private later(): void {
    if (this.closed) return;
    this.timer = setTimeout(() => void this.exchange(), this.every);
    this.timer.unref();
  }

  private async exchange(): Promise<void> {
    try {
      for (const { who, presses, ago } of await this.others.exchange(this.rate.untold()))
        this.rate.elsewhere(who, presses, ago / 1000);
    } catch {
      // Out of reach: each process keeps its own pace meanwhile.
    }
    this.timer = undefined;
    if (performance.now() - this.latest < ASLEEP_AFTER_MS) this.later();
  }
}
