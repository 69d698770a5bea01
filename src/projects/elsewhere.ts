/** Somewhere besides her own document that something is kept of a maker: the blankets of groups. */
export interface Elsewhere {
  /** What is kept of her there, each said in a few words: `a place in the group blanket Allotment`. */
  says(makerId: string): Promise<readonly string[]>;
  /** The same in full, for her export; undefined where there is nothing. */
  collect(makerId: string): Promise<Readonly<Record<string, unknown>> | undefined>;
  /** Removes what is hers and makes her "a maker" in what stays. Done twice it does no harm. */
  forget(makerId: string): Promise<void>;
}
