/**
 * Which of several processes' commands are registered: the newest that any process at work declares. Without this, one of an earlier
 * version that is started again while the others are brought up to date would put its own back.
 */
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Kind, Store } from './store.ts';

const declaredSchema = lazily(() =>
  z.object({
    version: z.literal(1),
    /** Commands that were declared, each by its sign; when they were first and last said to be, ms. */
    sets: z.array(z.object({ sign: z.string(), first: z.number(), seen: z.number() })),
  }),
);
type Declared = z.infer<ReturnType<typeof declaredSchema>>;

const DECLARED: Kind<Declared> = {
  folder: 'declared',
  called: 'Which commands are declared',
  version: 1,
  get schema() {
    return declaredSchema();
  },
  migrations: {},
  builtBeside: true,
  derived: true,
};
/** There is one document. */
const ALL = 'all';

/** Every process says this often what it declares, ms. */
export const SAID_EVERY_MS = 2 * 60_000;
/** What nobody has declared for so long is not at work any more: then an earlier version may put its commands back. */
const GONE_AFTER_MS = 2.5 * SAID_EVERY_MS;
/** Versions that are remembered. */
const MOST = 20;

export class Registrations {
  constructor(
    private readonly store: Store,
    private readonly now: () => number = Date.now,
  ) {}

  /** Notes that commands of this sign are declared by a process at work; whether no newer ones are. */
  async isNewest(sign: string): Promise<boolean> {
    return this.store.change<Declared, boolean>(DECLARED, ALL, (doc) => {
      const now = this.now();
      const others = (doc?.sets ?? []).filter((one) => one.sign !== sign);
      const first = doc?.sets.find((one) => one.sign === sign)?.first ?? now;
      const sets = [...others, { sign, first, seen: now }].sort((a, b) => a.seen - b.seen).slice(-MOST);
      const newer = others.some((one) => one.first > first && now - one.seen < GONE_AFTER_MS);
      return { keep: { version: 1, sets }, tell: !newer };
    });
  }
}
