/**
 * What people who press very fast have spent of their pace, told among processes that share a store: whoever is on servers of several
 * processes has one pace in all. Told in the background, for a minute, and of nobody who presses as people do.
 */
import { randomUUID } from 'node:crypto';
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Kind, Store } from './store.ts';

const spentSchema = lazily(() =>
  z.object({
    version: z.literal(1),
    told: z.array(
      z.object({
        /** Whose presses. */
        who: z.string(),
        presses: z.int(),
        /** The process that let them pass, and which telling of its this is. */
        by: z.string(),
        turn: z.int(),
        /** ms of its clock. */
        at: z.number(),
      }),
    ),
  }),
);
type SpentDoc = z.infer<ReturnType<typeof spentSchema>>;

const SPENT: Kind<SpentDoc> = {
  folder: 'spent',
  called: 'Who presses fast just now',
  version: 1,
  get schema() {
    return spentSchema();
  },
  migrations: {},
  builtBeside: true,
  derived: true,
};
/** There is one document. */
const ALL = 'all';

const KEPT_MS = 60_000;
/** Far more than press too fast at any moment. */
const MOST = 500;

export class Spent {
  private readonly self = randomUUID().slice(0, 8);
  private turn = 0;
  /** The latest telling of each other process that was learned. */
  private readonly learned = new Map<string, number>();

  constructor(
    private readonly store: Store,
    private readonly now: () => number = Date.now,
  ) {}

  /** Tells the others of presses, and learns of those that they let pass since: whose, how many, how many ms ago. */
  async exchange(
    mine: ReadonlyMap<string, number>,
  ): Promise<readonly { readonly who: string; readonly presses: number; readonly ago: number }[]> {
    const now = this.now();
    const isOld = ({ at }: SpentDoc['told'][number]) => now - at > KEPT_MS;
    let doc = await this.store.read(SPENT, ALL);
    if (mine.size > 0 || doc?.told.some(isOld) === true) {
      const turn = ++this.turn;
      const added = [...mine].map(([who, presses]) => ({ who, presses, by: this.self, turn, at: now }));
      doc = await this.store.change<SpentDoc, SpentDoc>(SPENT, ALL, (there) => {
        const told = [...(there?.told ?? []).filter((one) => !isOld(one)), ...added].slice(-MOST);
        const keep: SpentDoc = { version: 1, told };
        return { keep, tell: keep, forgets: true };
      });
    }
    const others = (doc?.told ?? []).filter(
      ({ by, turn }) => by !== this.self && turn > (this.learned.get(by) ?? 0),
    );
    for (const { by, turn } of others) this.learned.set(by, Math.max(turn, this.learned.get(by) ?? 0));
    // Processes come and go; whoever told nothing for long is not heard of again.
    const heard = new Set(doc?.told.map(({ by }) => by));
    for (const by of this.learned.keys())
      if (!heard.has(by) && this.learned.size > MOST) this.learned.delete(by);
    return others.map(({ who, presses, at }) => ({ who, presses, ago: Math.max(0, now - at) }));
  }
}
