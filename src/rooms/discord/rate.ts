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

/** Buckets that are remembered; the one unused longest is forgotten first, and is full again by then. */
const MOST = 10_000;

export class Rate {
  private readonly buckets = new Map<string, { left: number; at: number }>();

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
    const old = this.buckets.get(person) ?? { left: burst, at: now };
    return Math.min(burst, old.left + Math.max(0, now - old.at) * perSecond);
  }

  /** Takes one press of a person; returns how many seconds she has to wait, 0 where she need not. */
  take(person: string): number {
    const now = this.seconds();
    const { perSecond } = this.pace;
    const left = this.leftOf(person, now);
    const may = left >= 1;
    this.buckets.delete(person);
    this.buckets.set(person, { left: may ? left - 1 : left, at: now });
    if (this.buckets.size > MOST) {
      const [oldest] = this.buckets.keys();
      if (oldest !== undefined) this.buckets.delete(oldest);
    }
    return may ? 0 : Math.ceil((1 - left) / perSecond);
  }
}
