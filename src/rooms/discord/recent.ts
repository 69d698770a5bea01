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

  has(key: string): boolean {
    return this.seen.has(key);
  }

  forget(key: string): void {
    this.seen.delete(key);
  }
}
