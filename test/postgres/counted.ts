/** Makers who press while things go wrong, and the count of what came of it. */
import { NotSaved } from '../../src/projects/not-saved.ts';
import type { Store } from '../../src/projects/store.ts';
import { DIARIES } from '../projects/kinds.ts';

export interface Counted {
  /** What was answered as done, refused as not done, and neither. */
  readonly done: Set<string>;
  readonly refused: Set<string>;
  readonly unknown: Set<string>;
}

/** Begins the diary that is written to. */
export const beginDiary = (store: Store, id = 'd') =>
  store.change(DIARIES, id, () => ({
    keep: { version: 1, title: 'first', events: [{ by: 'nobody', n: 0 }] },
    tell: 0,
  }));

/** Writes one entry after the other until it is enough, each of its own name; a sentence is noted, and the next is tried. */
export async function pressUntil(
  store: Store,
  who: string,
  enough: () => boolean,
  counted: Counted,
  id = 'd',
): Promise<void> {
  for (let n = 0; !enough(); n++) {
    const by = `${who}-${n}`;
    try {
      await store.change(DIARIES, id, () => ({ keep: undefined, add: [{ by, n }], tell: 0 }));
      counted.done.add(by);
    } catch (error) {
      if (!(error instanceof NotSaved)) throw error;
      (error.code === 'not-known' ? counted.unknown : counted.refused).add(by);
    }
  }
}

export const nothingCounted = (): Counted => ({ done: new Set(), refused: new Set(), unknown: new Set() });

/** What should be empty: answered as done and not there, there twice, there though it was refused. */
export async function wrongIn(store: Store, { done, refused }: Counted, id = 'd') {
  const names = ((await store.read(DIARIES, id))?.events ?? []).map(({ by }) => by);
  const there = new Set(names);
  return {
    lost: [...done].filter((by) => !there.has(by)),
    doubled: names.filter((by, index) => names.indexOf(by) !== index),
    thereThoughRefused: [...refused].filter((by) => there.has(by)),
  };
}
