/** The same object, its unset parts left out: an optional part is either there or not, never there and undefined. */
export type Defined<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/**
 * Leaves out what is undefined.
 *
 * @example
 * defined({ stitches: 13, rows: undefined }) // → { stitches: 13 }
 */
export const defined = <const T extends object>(parts: T): Defined<T> =>
  Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined)) as Defined<T>;

/**
 * Leaves out of a list what is undefined.
 *
 * @example
 * keepDefined(['moss', undefined, 'sand']) // → ['moss', 'sand']
 */
export const keepDefined = <T>(parts: readonly (T | undefined)[]): T[] =>
  parts.filter((part) => part !== undefined);
