/**
 * The latest answers that cannot be asked again, because they changed something: whoever wants to see the working of one finds it here, in
 * whichever process she asks, also after a restart. Few of each maker, for two days; all together they never take more room than these slots.
 */
import { createHash } from 'node:crypto';
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Elsewhere, Forgotten } from './elsewhere.ts';
import type { Kind, Store } from './store.ts';

const SLOTS = 256;
const MOST_IN_SLOT = 24;
const MOST_OF_MAKER = 4;
const KEPT_MS = 2 * 24 * 60 * 60 * 1000;
/** Characters of one answer; what is longer is not kept. */
const LONGEST = 20_000;
/** Slots that are looked through at once for somebody who erases everything. */
const LOOKED_AT = 8;

const answersSchema = lazily(() =>
  z.object({
    version: z.literal(1),
    answers: z.array(
      z.object({
        maker: z.string(),
        /** What its buttons carry. */
        key: z.string(),
        at: z.iso.datetime(),
        /** As the room that gave it needs it. */
        answer: z.unknown(),
      }),
    ),
  }),
);
type Answers = z.infer<ReturnType<typeof answersSchema>>;

export const ANSWERS: Kind<Answers> = {
  folder: 'answers',
  called: 'The latest answers',
  version: 1,
  get schema() {
    return answersSchema();
  },
  migrations: {},
  builtBeside: true,
  // Lost, they cost somebody the working of what is saved all the same.
  derived: true,
};

const slotOf = (maker: string) => String(createHash('sha256').update(maker).digest().readUInt32BE() % SLOTS);
const WORDS = 'the latest answers that changed something, with their working, for two days';

export class LatestAnswers implements Elsewhere {
  /** Told who is to be found in no answer any more, before it is looked for in those that are kept. */
  private readonly listeners: ((isHer: (said: unknown) => boolean) => Promise<void>)[] = [];

  constructor(private readonly store: Store) {}

  /** Has somebody told who is to be found in no answer any more. */
  whenUnnamed(listener: (isHer: (said: unknown) => boolean) => Promise<void>): void {
    this.listeners.push(listener);
  }

  /**
   * Removes the answers of anybody that name somebody, by whatever finds her in them: an organiser’s tell of her motifs. In doubt one goes too many:
   * it costs its working, and no more.
   */
  async unname(isHer: (said: unknown) => boolean): Promise<void> {
    for (const listener of this.listeners) await listener(isHer);
    await this.unnameKept(isHer);
  }

  /** The same for those that are kept by now alone. */
  async unnameKept(isHer: (said: unknown) => boolean): Promise<void> {
    const slots = await this.store.ids(ANSWERS);
    // Few at a time: all of them may be more than anybody wants at hand at once.
    for (let from = 0; from < slots.length; from += LOOKED_AT)
      await Promise.all(slots.slice(from, from + LOOKED_AT).map((slot) => this.unnameIn(slot, isHer)));
  }

  private async unnameIn(slot: string, isHer: (said: unknown) => boolean): Promise<void> {
    const doc = await this.store.read(ANSWERS, slot);
    if (doc?.answers.some(({ answer }) => isHer(answer)) !== true) return;
    await this.store.change(ANSWERS, slot, (there) => ({
      keep: there && { ...there, answers: there.answers.filter(({ answer }) => !isHer(answer)) },
      tell: undefined,
      forgets: true,
    }));
  }

  /** Keeps answers of one maker; each must be plain data. Resolves when they are kept. */
  async keep(
    maker: string,
    answers: readonly { readonly key: string; readonly answer: unknown }[],
    now: Date,
  ): Promise<void> {
    const added = answers
      .filter(({ answer }) => JSON.stringify(answer).length <= LONGEST)
      .map((one) => ({ maker, at: now.toISOString(), ...one }));
    if (added.length === 0) return;
    await this.store.change(ANSWERS, slotOf(maker), (doc) => {
      const good = (doc?.answers ?? []).filter(({ at }) => now.getTime() - Date.parse(at) < KEPT_MS);
      const others = good.filter((one) => one.maker !== maker);
      const hers = [...good.filter((one) => one.maker === maker), ...added].slice(-MOST_OF_MAKER);
      const all = [...others, ...hers].slice(-MOST_IN_SLOT);
      return { keep: { version: 1 as const, answers: all }, tell: undefined, forgets: true };
    });
  }

  /** The answer of this key; undefined where it is not kept any more. */
  async find(maker: string, key: string): Promise<unknown> {
    return (await this.of(maker)).find((one) => one.key === key)?.answer;
  }

  private async of(maker: string) {
    return ((await this.store.read(ANSWERS, slotOf(maker)))?.answers ?? []).filter(
      (one) => one.maker === maker,
    );
  }

  async says(maker: string): Promise<readonly string[]> {
    return (await this.of(maker)).length === 0 ? [] : [WORDS];
  }

  async collect(maker: string): Promise<Readonly<Record<string, unknown>> | undefined> {
    const hers = await this.of(maker);
    return hers.length === 0 ? undefined : { answers: hers.map(({ at, answer }) => ({ at, answer })) };
  }

  async forget(maker: string): Promise<Forgotten> {
    const removed = await this.says(maker);
    if (removed.length > 0)
      await this.store.change(ANSWERS, slotOf(maker), (doc) => ({
        keep: doc && { ...doc, answers: doc.answers.filter((one) => one.maker !== maker) },
        tell: undefined,
        forgets: true,
      }));
    return { removed, left: [] };
  }
}
