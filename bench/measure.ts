/** Measuring on a machine that has other things to do: both sides in turn, many times, and the middle of what was seen. */

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1
    ? (sorted[middle] ?? NaN)
    : ((sorted[middle - 1] ?? NaN) + (sorted[middle] ?? NaN)) / 2;
}

/** How long something takes, in milliseconds. */
export async function timed(run: () => unknown): Promise<number> {
  const from = performance.now();
  await run();
  return performance.now() - from;
}

/** Milliseconds that one call takes, from as many as go into `ms`; at least one. */
export async function each(run: (round: number) => unknown, ms = 100): Promise<number> {
  const from = performance.now();
  let rounds = 0;
  let taken = 0;
  while (rounds === 0 || taken < ms) {
    const result = run(rounds++);
    // Awaiting what is no promise would cost more than what is measured.
    if (result instanceof Promise) await result;
    taken = performance.now() - from;
  }
  return taken / rounds;
}

/** The same for what takes less than a look at the clock: `batch` calls between two looks. */
export const eachOf = async (batch: number, run: () => void, ms = 100): Promise<number> =>
  (await each(() => {
    for (let call = 0; call < batch; call++) run();
  }, ms)) / batch;

export interface Compared {
  readonly ours: number;
  readonly reference: number;
  /** The middle of the ratios of every round, ours over the reference. */
  readonly ratio: number;
}

/** Measures both in turn, `rounds` times after one round that does not count, and takes medians. */
export async function sideBySide(
  rounds: number,
  ours: () => Promise<number>,
  reference: () => Promise<number>,
): Promise<Compared> {
  const seen: { ours: number; reference: number }[] = [];
  for (let round = 0; round <= rounds; round++) {
    // Whoever goes second may find the machine warm: they change places.
    const first = round % 2 === 0;
    const before = first ? await ours() : undefined;
    const held = await reference();
    seen.push({ ours: before ?? (await ours()), reference: held });
  }
  const counted = seen.slice(1);
  return {
    ours: median(counted.map((one) => one.ours)),
    reference: median(counted.map((one) => one.reference)),
    ratio: median(counted.map((one) => one.ours / one.reference)),
  };
}
