/** A piece of work shared over several parts by its stitches: the rows of one motif, the motifs of a blanket. */

/**
 * Cuts a row of things, each with its weight, into `parts` runs of nearly the same weight: every cut lies as near as it can to its share of
 * the whole, and no run is empty as long as there are things enough. Returns how many things each run has.
 *
 * @example
 * cutByWeight([3, 5, 7, 9, 7, 5, 3, 1], 2) // → [4, 4]
 */
export function cutByWeight(weights: readonly number[], parts: number): number[] {
  const upTo = [0];
  for (const weight of weights) upTo.push((upTo.at(-1) ?? 0) + weight);
  const all = upTo.at(-1) ?? 0;
  const cuts = [0];
  for (let part = 1; part < parts; part++) {
    const wanted = (all * part) / parts;
    const least = Math.min((cuts.at(-1) ?? 0) + 1, weights.length);
    const most = Math.max(least, weights.length - (parts - part));
    let cut = least;
    const off = (at: number) => Math.abs((upTo[at] ?? all) - wanted);
    while (cut < most && off(cut + 1) < off(cut)) cut++;
    cuts.push(cut);
  }
  cuts.push(weights.length);
  return cuts.slice(1).map((cut, index) => cut - (cuts[index] ?? 0));
}

/** Rows of a motif, both counted in. */
export interface RowSpan {
  readonly from: number;
  readonly to: number;
}

/** The rows of a motif in so many parts, by their counts; a part may be empty where there are more parts than rows. */
export function shareRows(counts: readonly number[], parts: number): RowSpan[] {
  let before = 0;
  return cutByWeight(counts, parts).map((rows) => {
    const span = { from: before + 1, to: before + rows };
    before = span.to;
    return span;
  });
}

/**
 * Motifs of every kind in so many parts, by their stitches: kind after kind, so that one is learnt before the next. Returns for each part how
 * many of each kind.
 *
 * @example
 * shareMotifs([2, 2], [100, 300], 2) // → [[2, 1], [0, 1]]
 */
export function shareMotifs(
  motifs: readonly number[],
  stitches: readonly number[],
  parts: number,
): number[][] {
  const kinds = motifs.flatMap((many, kind) => Array.from({ length: many }, () => kind));
  let at = 0;
  return cutByWeight(
    kinds.map((kind) => stitches[kind] ?? 0),
    parts,
  ).map((many) => {
    const counts = motifs.map(() => 0);
    for (const kind of kinds.slice(at, at + many)) counts[kind] = (counts[kind] ?? 0) + 1;
    at += many;
    return counts;
  });
}
