/**
 * When people of whom nothing else is saved were last told something: for a day, so that nobody is told twice within one, also
 * after a restart.
 */
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Elsewhere, Forgotten } from './elsewhere.ts';
import type { Kind, Store } from './store.ts';

const DAY_MS = 24 * 60 * 60 * 1000;
/** People at most; those who were told longest ago go first. */
const MOST = 5_000;

const toldSchema = lazily(() =>
  z.object({
    version: z.literal(1),
    told: z.array(z.object({ maker: z.string(), at: z.iso.datetime() })),
  }),
);
type ToldDoc = z.infer<ReturnType<typeof toldSchema>>;

/** There is one document. */
const ALL = 'all';
export const TOLD: Kind<ToldDoc> = {
  folder: 'told',
  called: 'Who was told something of late',
  version: 1,
  get schema() {
    return toldSchema();
  },
  migrations: {},
  builtBeside: true,
  // Lost, it costs somebody a second word within a day.
  derived: true,
};

export class Told implements Elsewhere {
  constructor(private readonly store: Store) {}

  /** When she was last told something; undefined where nobody knows. */
  async last(maker: string): Promise<string | undefined> {
    return (await this.store.read(TOLD, ALL))?.told.find((one) => one.maker === maker)?.at;
  }

  /** Notes that she was told something, and lets go of whoever was told longer ago than a day. */
  async note(maker: string, now: Date): Promise<void> {
    await this.store.change(TOLD, ALL, (doc) => {
      const others = (doc?.told ?? []).filter(
        (one) => one.maker !== maker && now.getTime() - Date.parse(one.at) < DAY_MS,
      );
      const told = [...others, { maker, at: now.toISOString() }].slice(-MOST);
      return { keep: { version: 1 as const, told }, tell: undefined, forgets: true };
    });
  }

  async says(maker: string): Promise<readonly string[]> {
    return (await this.last(maker)) === undefined ? [] : ['when you were last told something'];
  }

  async collect(maker: string): Promise<Readonly<Record<string, unknown>> | undefined> {
    const at = await this.last(maker);
    return at === undefined ? undefined : { told: at };
  }

  async forget(maker: string): Promise<Forgotten> {
    const removed = await this.says(maker);
    if (removed.length > 0)
      await this.store.change(TOLD, ALL, (doc) => ({
        keep: doc && { ...doc, told: doc.told.filter((one) => one.maker !== maker) },
        tell: undefined,
        forgets: true,
      }));
    return { removed, left: [] };
  }
}
