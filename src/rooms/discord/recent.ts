/** The latest of something, a bounded number of them. */
export class Recent {
  private readonly seen = new Set<string>();

  constructor(private readonly most: number) {}

  /** Notes a key; false where it was noted before. */
  add(key: string): boolean {
    if (this.seen.has(key)) return false;
    this.seen.add(key);
    if (this.seen.size > this.most) {
      const [oldest] = this.seen;
      if (oldest !== undefined) this.seen.delete(oldest);
    }
    return true;
  }

  forget(key: string): void {
    this.seen.delete(key);
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

  /** Forgets all whose names begin so. */
  forget(begins: string): void {
    for (const name of this.kept.keys()) if (name.startsWith(begins)) this.kept.delete(name);
  }
}
