/** The store in memory, for tests and for trying things: the same rules, nothing kept. */
import { changedInto, isGrowing, type GrowingKind } from './grown.ts';
import { frozen, SAFE_ID, type Changed, type Kind, type Store } from './store.ts';

export class MemoryStore implements Store {
  readonly waiting = 0;
  readonly unreadable = 0;
  readonly alone = this;
  private readonly docs = new Map<string, unknown>();

  private static key(kind: Kind<unknown>, id: string): string {
    if (!SAFE_ID.test(id)) throw new Error(`unsafe id ${JSON.stringify(id)}`);
    return `${kind.folder}/${id}`;
  }

  read<T>(kind: Kind<T>, id: string): Promise<T | undefined> {
    return Promise.resolve(this.docs.get(MemoryStore.key(kind, id)) as T | undefined);
  }

  async change<T, R>(kind: Kind<T>, id: string, change: (doc: T | undefined) => Changed<T, R>): Promise<R> {
    const key = MemoryStore.key(kind, id);
    const saved = this.docs.get(key) as T | undefined;
    const changed = change(kind.builtBeside ? saved : structuredClone(saved));
    const { keep, tell } = changed;
    if (isGrowing(kind)) {
      const { doc } = changedInto(
        kind as GrowingKind<object>,
        saved as object | undefined,
        changed as Changed<object, R>,
      );
      if (doc !== undefined) this.docs.set(key, doc);
    } else if (keep !== undefined) this.docs.set(key, frozen(kind.schema.parse(keep)));
    return Promise.resolve(tell);
  }

  erase(kind: Kind<unknown>, id: string): Promise<void> {
    const key = MemoryStore.key(kind, id);
    this.docs.delete(key);
    return Promise.resolve();
  }

  ids(kind: Kind<unknown>, prefix = ''): Promise<string[]> {
    const start = `${kind.folder}/${prefix}`;
    return Promise.resolve(
      [...this.docs.keys()]
        .filter((key) => key.startsWith(start))
        .map((key) => key.slice(kind.folder.length + 1)),
    );
  }

  close(): Promise<void> {
    return Promise.resolve();
  }
}
