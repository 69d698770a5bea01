/**
 * The latest of something: at least so many of them, at most twice as many. They are kept in two generations, of which the older is
 * forgotten as a whole: to look for the oldest of a set takes the longer the more have gone before it.
 */
export class Recent {
  private young = new Set<string>();
  private old = new Set<string>();

  constructor(private readonly most: number) {}

  /** Notes a key; false where it was noted before. */
  add(key: string): boolean {
    if (this.young.has(key) || this.old.has(key)) return false;
    if (this.young.size >= this.most) {
      this.old = this.young;
      this.young = new Set();
    }
    this.young.add(key);
    return true;
  }

  forget(key: string): void {
    this.young.delete(key);
    this.old.delete(key);
  }
}

/** The latest things under their names, a bounded number of them. */
export class Latest<T> {
  private readonly kept = new Map<string, T>();

  constructor(private readonly most: number) {}

  put(name: string, thing: T): void {
    this.kept.set(name, thing);
    if (this.kept.size <= this.most) return;
    const [oldest] = this.kept.keys();
    if (oldest !== undefined) this.kept.delete(oldest);
  }

  get(name: string): T | undefined {
    return this.kept.get(name);
  }

  /** Each under its name; what is put there while somebody goes through them comes last. */
  entries(): Iterable<[string, T]> {
    return this.kept.entries();
  }

  drop(name: string): void {
    this.kept.delete(name);
  }

  /** Forgets all whose names begin so. */
  forget(begins: string): void {
    for (const name of this.kept.keys()) if (name.startsWith(begins)) this.kept.delete(name);
  }
}
