/** Answers that cannot be asked again, for those who want to see their working: at hand for a while, then in what is kept. */
import type { RenderedAnswer } from '../../chat/answer.ts';
import { Pauses } from '../../chat/breathe.ts';
import type { LatestAnswers } from '../../projects/latest-answers.ts';
import { Latest } from './recent.ts';

/** Answers that are at hand. */
const AT_HAND = 500;
/** Nobody waits for them to be kept, and what comes shortly after one another is kept together. */
const LATER_MS = 3_000;

export interface Unfoldable {
  /** The question it answered. */
  readonly path: string;
  readonly shown: RenderedAnswer;
}

export interface UnfoldablesParts {
  readonly kept: LatestAnswers;
  /** Whether other processes change what is kept. */
  readonly inCommon: boolean;
  /** Whether anything is saved of her yet, where this answer left it. */
  readonly isKnown: (maker: string, shown: RenderedAnswer) => Promise<boolean>;
  readonly now: () => Date;
  /** Told what could not be kept: that costs somebody its working after a restart, and no more. */
  readonly missed: (error: unknown) => void;
  readonly later?: number;
}

/** An answer as plain data, its working in words: without files, and without what only programs read. */
const plain = ({ path, shown }: Unfoldable): Unfoldable => ({
  path,
  shown: {
    ...shown,
    data: undefined,
    files: [],
    working: shown.working.map(
      ({ label, source, formula, with: given, units, result, unit, shown: said, general, worked }) => ({
        label,
        source,
        formula,
        with: given,
        units,
        result,
        unit,
        shown: said,
        general,
        worked,
      }),
    ),
  },
});

export class Unfoldables {
  private readonly latest = new Latest<Unfoldable>(AT_HAND);
  /** By maker: what is not kept yet. */
  private unkept = new Map<string, Map<string, Unfoldable>>();
  private timer: NodeJS.Timeout | undefined;
  private keeping: Promise<void> = Promise.resolve();

  constructor(private readonly parts: UnfoldablesParts) {
    parts.kept.whenUnnamed((isHer) => this.unname(isHer));
  }

  put(maker: string, key: string, answer: Unfoldable): void {
    this.latest.put(`${maker} ${key}`, answer);
    // Whoever has erased everything is not kept anew by the answer that says so.
    if (answer.shown.forgets === true) return;
    const hers = this.unkept.get(maker) ?? new Map<string, Unfoldable>();
    hers.set(key, answer);
    this.unkept.set(maker, hers);
    this.timer ??= setTimeout(() => void this.keep(), this.parts.later ?? LATER_MS).unref();
  }

  /** Rejects as the store does. */
  async get(maker: string, key: string): Promise<Unfoldable | undefined> {
    const fresh = this.unkept.get(maker)?.get(key);
    if (fresh !== undefined) return fresh;
    // She may have erased everything by another process meanwhile: what is kept says so.
    if (this.parts.inCommon) await this.keeping;
    const atHand = this.parts.inCommon ? undefined : this.latest.get(`${maker} ${key}`);
    return atHand ?? ((await this.parts.kept.find(maker, key)) as Unfoldable | undefined);
  }

  /** What is at hand of somebody who erased everything; what is kept of her is erased with all else. */
  async forget(maker: string): Promise<void> {
    this.latest.forget(`${maker} `);
    this.unkept.delete(maker);
    // What was being kept just now is kept no longer.
    await this.keeping;
    await this.parts.kept.forget(maker).catch(this.parts.missed);
  }

  /** Lets go of answers that name somebody who erases everything, whosever they are. */
  private async unname(isHer: (said: unknown) => boolean): Promise<void> {
    // There may be hundreds, and each is put into words for it: others are heard in between.
    const pauses = new Pauses();
    const isSo = async (answer: Unfoldable) => {
      if (pauses.areDue) await pauses.breathe();
      return isHer(plain(answer));
    };
    for (const [name, answer] of this.latest.entries()) if (await isSo(answer)) this.latest.drop(name);
    for (const answers of this.unkept.values())
      for (const [key, answer] of answers) if (await isSo(answer)) answers.delete(key);
    await this.keeping;
    // What another process has answered already and not kept yet is kept by then.
    const { kept, inCommon, missed, later = LATER_MS } = this.parts;
    if (inCommon) setTimeout(() => void kept.unnameKept(isHer).catch(missed), 2 * later).unref();
  }

  /** Keeps what is not kept yet. Never rejects. */
  async keep(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    const unkept = this.unkept;
    this.unkept = new Map();
    const before = this.keeping;
    this.keeping = (async () => {
      await before;
      for (const [maker, answers] of unkept) {
        await this.keepOf(maker, answers).catch(this.parts.missed);
      }
    })();
    await this.keeping;
  }

  private async keepOf(maker: string, answers: ReadonlyMap<string, Unfoldable>): Promise<void> {
    const { kept, inCommon, isKnown, now } = this.parts;
    // She may have erased everything by another process since she was answered.
    for (const { shown } of answers.values()) if (inCommon && !(await isKnown(maker, shown))) return;
    const all = [...answers].map(([key, answer]) => ({ key, answer: plain(answer) }));
    await kept.keep(maker, all, now());
  }
}
