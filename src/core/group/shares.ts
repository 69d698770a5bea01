/**
 * A fair share of the motifs still open. Whole motifs, nobody over what she can make by the date, as many motifs
 * placed as can be; among all such splits the one in which every maker carries as nearly as possible the same part of
 * what she can make: the least sum of (held + share)² ÷ capacity, the measure by which largest-remainder shares are
 * nearest to proportional.
 */
export interface Sharer {
  readonly maker: string;
  /** Motifs she could make by the date; need not be whole. */
  readonly capacity: number;
  /** Motifs she has pledged and not made: they count against her capacity. */
  readonly held: number;
  /** By kind: whether she has the colours for it. */
  readonly can: readonly boolean[];
}

export interface Shares {
  /** By sharer, in the order given: motifs of each kind. */
  readonly motifs: readonly (readonly number[])[];
  /** By kind: motifs that nobody can make. */
  readonly unplaced: readonly number[];
}

/**
 * Splits `open` motifs (by kind) among the sharers. Exact: the splits that can be made form a polymatroid, on which giving
 * one motif at a time to whoever it burdens least, moving earlier ones aside where that makes room, reaches the optimum
 * (Federgruen and Groenevelt, "The greedy procedure for resource allocation problems", Operations Research 34, 1986; the
 * reference from memory, the result checked against an exact solver in the tests).
 */
export function shareOut(open: readonly number[], sharers: readonly Sharer[]): Shares {
  const motifs = sharers.map(() => open.map(() => 0));
  const left = [...open];
  const given = sharers.map(() => 0);
  const room = sharers.map(({ capacity, held }) => Math.max(0, Math.floor(capacity + 1e-9) - held));
  // In the order given: of two who carry as much the first comes first.
  const waiting = sharers.flatMap((_, index) => ((room[index] ?? 0) > 0 ? [index] : []));
  const burden = ({ held, capacity }: Sharer, has: number) => (2 * (held + has) + 1) / capacity;
  const burdens = Float64Array.from(sharers, (sharer) => burden(sharer, 0));
  while (waiting.length > 0) {
    let turn = 0;
    for (let at = 1; at < waiting.length; at++)
      if ((burdens[waiting[at] ?? 0] ?? 0) < (burdens[waiting[turn] ?? 0] ?? 0)) turn = at;
    const next = waiting[turn] ?? 0;
    if (!place(next, sharers, motifs, left)) {
      // What cannot be placed now never can: room for her only shrinks.
      waiting.splice(turn, 1);
      continue;
    }
    const has = (given[next] ?? 0) + 1;
    given[next] = has;
    const sharer = sharers[next];
    if (sharer) burdens[next] = burden(sharer, has);
    if (has === room[next]) waiting.splice(turn, 1);
  }
  return { motifs, unplaced: left };
}

/** Gives one more motif to a sharer, moving others between kinds along the shortest chain of exchanges. */
function place(start: number, sharers: readonly Sharer[], motifs: number[][], left: number[]): boolean {
  const kinds = left.length;
  // Mostly there is one of a kind that she can make.
  const direct = left.findIndex((many, kind) => many > 0 && sharers[start]?.can[kind] === true);
  if (direct >= 0) {
    left[direct] = (left[direct] ?? 0) - 1;
    const hers = motifs[start] ?? [];
    hers[direct] = (hers[direct] ?? 0) + 1;
    return true;
  }
  const reachedBy = new Array<number>(kinds).fill(-1);
  const cameFrom = new Array<number>(sharers.length).fill(-1);
  const seen = new Set([start]);
  const queue = [start];
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    const can = sharers[at]?.can ?? [];
    const free = left.findIndex((many, kind) => many > 0 && can[kind] === true && reachedBy[kind] === -1);
    if (free >= 0) {
      left[free] = (left[free] ?? 0) - 1;
      reachedBy[free] = at;
      follow(free, start, reachedBy, cameFrom, motifs);
      return true;
    }
    for (let kind = 0; kind < kinds; kind++) {
      if (can[kind] !== true || reachedBy[kind] !== -1) continue;
      reachedBy[kind] = at;
      for (let other = 0; other < motifs.length; other++) {
        if ((motifs[other]?.[kind] ?? 0) === 0 || seen.has(other)) continue;
        seen.add(other);
        cameFrom[other] = kind;
        queue.push(other);
      }
    }
  }
  return false;
}

/** Walks the chain back: each sharer on it takes the kind found and hands on the one she came by. */
function follow(
  found: number,
  start: number,
  reachedBy: readonly number[],
  cameFrom: readonly number[],
  motifs: number[][],
): void {
  let kind = found;
  for (;;) {
    const sharer = reachedBy[kind] ?? start;
    const hers = motifs[sharer] ?? [];
    hers[kind] = (hers[kind] ?? 0) + 1;
    if (sharer === start) return;
    kind = cameFrom[sharer] ?? 0;
    hers[kind] = (hers[kind] ?? 0) - 1;
  }
}
