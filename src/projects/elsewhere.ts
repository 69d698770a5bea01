/** Somewhere besides her own document that something is kept of a maker: the blankets of groups, files that were written for her. */
export interface Elsewhere {
  /** What is kept of her there, each said in a few words: `a place in the group blanket Allotment`. */
  says(makerId: string): Promise<readonly string[]>;
  /** The same in full, for her export; undefined where there is nothing. */
  collect(makerId: string): Promise<Readonly<Record<string, unknown>> | undefined>;
  /** Removes what is hers and makes her "a maker" in what stays. Done twice it does no harm. */
  forget(makerId: string): Promise<Forgotten>;
}

/** What came of it, each said in a few words. */
export interface Forgotten {
  readonly removed: readonly string[];
  /** What could not be reached, with who can. */
  readonly left: readonly string[];
}
