/**
 * Measuring on a machine that has other things to do: both sides in turn, many times, and of what was seen the middle and the tenth
 * percentile. Rounds in which others took the processors that were needed do not count; where hardly any is left, nothing was measured.
 */
import { cpus } from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';

/** The value below which so large a share of them lies. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) * share)] ?? NaN;
}

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

/** What one side took in a round: ms by the clock for one of what is counted, and of the processor. */
export interface Took {
  readonly ms: number;
  readonly cpu: number;
  /** ms of the processor that other processes of ours took in all, this one left out. */
  readonly elsewhere: number;
}

/** What was seen of one side over all rounds, in ms. */
export interface Seen {
  readonly median: number;
  readonly p10: number;
  /** Time of the processor, in the middle. */
  readonly cpu: number;
}

export interface Compared {
  readonly ours: Seen;
  readonly reference: Seen;
  /** The middle of the ratios of every round, ours over the reference; the same of the processor's time. */
  readonly ratio: number;
  readonly cpuRatio: number;
  /** Why nothing was measured, where it was not. */
  readonly disturbed?: string;
}

/** So much of a processor may be taken from a round that it still counts. */
const TOLERATED = 0.25;
/** So many rounds must be left. */
const FEWEST = 3;
/** Rounds beyond those that are wanted, one for each that is disturbed, each after a pause. */
const MORE = 3;
const PAUSE_MS = 500;

/** ms that all processors together have worked since the machine began. */
const worked = () =>
  cpus().reduce((sum, { times }) => sum + times.user + times.nice + times.sys + times.irq, 0);
const own = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

type Side = () => Promise<number | Took>;

/** One side once. What gives its time alone took of the processor what this process did meanwhile. */
async function once(side: Side): Promise<Took> {
  const [from, before] = [performance.now(), own()];
  const took = await side();
  if (typeof took !== 'number') return took;
  const share = (own() - before) / (performance.now() - from);
  return { ms: took, cpu: took * share, elsewhere: 0 };
}

interface Round {
  readonly ours: Took;
  readonly reference: Took;
  /** How many processors others had. */
  readonly others: number;
}

async function roundOf(ours: Side, reference: Side, first: boolean): Promise<Round> {
  const [from, all, mine] = [performance.now(), worked(), own()];
  // Whoever goes second may find the machine warm: they change places.
  const before = first ? await once(ours) : undefined;
  const held = await once(reference);
  const took = before ?? (await once(ours));
  const our = own() - mine + took.elsewhere + held.elsewhere;
  const others = Math.max(0, worked() - all - our) / (performance.now() - from);
  return { ours: took, reference: held, others };
}

const seenOf = (all: readonly Took[]): Seen => ({
  median: median(all.map(({ ms }) => ms)),
  p10: quantile(
    all.map(({ ms }) => ms),
    0.1,
  ),
  cpu: median(all.map(({ cpu }) => cpu)),
});

/**
 * Measures both in turn, `rounds` times after one round that does not count, in rounds that others left `needs` processors for.
 */
export async function sideBySide(
  rounds: number,
  ours: Side,
  reference: Side,
  { needs = 1 }: { readonly needs?: number } = {},
): Promise<Compared> {
  await roundOf(ours, reference, true);
  // The other processors share the memory: half of them at the most.
  const left = (cpus().length - needs) / 2 + TOLERATED;
  const all: Round[] = [];
  const quiet = () => all.filter(({ others }) => others <= left);
  while (quiet().length < rounds && all.length < rounds * (1 + MORE)) {
    const last = all.at(-1);
    if (last && last.others > left) await sleep(PAUSE_MS);
    all.push(await roundOf(ours, reference, all.length % 2 === 1));
  }
  const counted = quiet().length >= FEWEST ? quiet() : all;
  const busy = median(all.map(({ others }) => others));
  return {
    ours: seenOf(counted.map((one) => one.ours)),
    reference: seenOf(counted.map((one) => one.reference)),
    ratio: median(counted.map((one) => one.ours.ms / one.reference.ms)),
    cpuRatio: median(counted.map((one) => one.ours.cpu / one.reference.cpu)),
    ...(counted === all && quiet().length < FEWEST
      ? {
          disturbed: `other work had ${busy.toFixed(1)} of ${cpus().length} processors, and this needs ${needs}`,
        }
      : {}),
  };
}
