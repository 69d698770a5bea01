/** What the search for a size is held against: every combination, tried one by one. */
import {
  MOST_OPTIONS,
  optionOf,
  rankOptions,
  type MotifSize,
  type ResizeOption,
  type Wish,
} from '../../../src/core/size/resize.ts';

/** Every combination up to twice the wish and a few beyond, ranked; at most `most`. */
export function searchExhaustively(
  wish: Wish,
  sizes: readonly MotifSize[],
  most = MOST_OPTIONS,
): ResizeOption[] {
  const all: ResizeOption[] = [];
  for (const motif of sizes) {
    const upTo = (wished: number) => Math.ceil((2 * (wished - 2 * wish.border)) / motif.side) + most + 2;
    for (let columns = 1; columns <= upTo(wish.width); columns++)
      for (let rows = 1; rows <= upTo(wish.height); rows++) all.push(optionOf(wish, motif, columns, rows));
  }
  return all.sort(rankOptions).slice(0, most);
}
