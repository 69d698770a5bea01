/** Long lists of which many states are kept at once: each differs from the one before it in little and shares the rest. */

/** What can be asked of a list, an array or one that is shared. */
export interface ReadonlyList<T> extends Iterable<T> {
  readonly length: number;
  at(index: number): T | undefined;
  filter(test: (item: T) => boolean): T[];
  map<U>(make: (item: T, index: number) => U): U[];
  some(test: (item: T) => boolean): boolean;
  findLast(test: (item: T) => boolean): T | undefined;
}

/** So many stand together: a change copies these and no more. */
const TOGETHER = 256;

interface Part<T> {
  /** Whose it is: it is changed by nobody else. */
  readonly of: object;
  readonly items: T[];
}

export class SharedList<T> implements ReadonlyList<T> {
  #parts: Part<T>[] = [];
  #length = 0;
  #self = {};

  /** A list of the same, which changes by itself from here on. Costs next to nothing where `items` is such a list. */
  static of<T>(items: ReadonlyList<T>): SharedList<T> {
    if (items instanceof SharedList) return (items as SharedList<T>).share();
    const list = new SharedList<T>();
    for (const item of items) list.push(item);
    return list;
  }

  get length(): number {
    return this.#length;
  }

  at(index: number): T | undefined {
    const from = index < 0 ? index + this.#length : index;
    return this.#parts[Math.floor(from / TOGETHER)]?.items[from % TOGETHER];
  }

  *[Symbol.iterator](): Iterator<T> {
    for (const { items } of this.#parts) yield* items;
  }

  filter(test: (item: T) => boolean): T[] {
    return this.#parts.flatMap(({ items }) => items.filter(test));
  }

  map<U>(make: (item: T, index: number) => U): U[] {
    return this.#parts.flatMap(({ items }, part) =>
      items.map((item, index) => make(item, part * TOGETHER + index)),
    );
  }

  some(test: (item: T) => boolean): boolean {
    return this.#parts.some(({ items }) => items.some(test));
  }

  findLast(test: (item: T) => boolean): T | undefined {
    for (let part = this.#parts.length - 1; part >= 0; part--) {
      const found = this.#parts[part]?.items.findLast(test);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  push(item: T): void {
    const place = this.#length % TOGETHER;
    if (place === 0) this.#parts.push({ of: this.#self, items: [item] });
    else this.#own(this.#parts.length - 1).push(item);
    this.#length++;
  }

  /** Puts another in a place that there is. */
  set(index: number, item: T): void {
    if (index < 0 || index >= this.#length) throw new RangeError(`no place ${index} of ${this.#length}`);
    this.#own(Math.floor(index / TOGETHER))[index % TOGETHER] = item;
  }

  /** The same list once more; neither sees what becomes of the other. */
  share(): SharedList<T> {
    const copy = new SharedList<T>();
    copy.#parts = [...this.#parts];
    copy.#length = this.#length;
    // Nobody's from now on.
    this.#self = {};
    return copy;
  }

  /** The items of a part, copied first where they are not this list's alone. */
  #own(part: number): T[] {
    const known = this.#parts[part];
    if (known?.of === this.#self) return known.items;
    const own = { of: this.#self, items: [...(known?.items ?? [])] };
    this.#parts[part] = own;
    return own.items;
  }
}
