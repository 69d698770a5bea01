/** Increases or decreases spread evenly over a row or a round, and the instruction that works them. */
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { formula, Working } from '../base/working.ts';

export const CHANGES = formula({
  label: 'Changes',
  formula: 'abs(to - from)',
  given: { to: '', from: '' },
  unit: '',
  source: 'derived: each change makes one stitch more or one fewer',
});
export const PLAIN = formula({
  label: 'Stitches left plain',
  formula: 'from - eaten * changes',
  given: { from: '', eaten: '', changes: '' },
  unit: '',
  source: 'derived: an increase is worked into one stitch, a decrease takes two together',
});
export const RUN = formula({
  label: 'Plain stitches in a run',
  formula: 'floor(plain / runs)',
  given: { plain: '', runs: '' },
  unit: '',
  source:
    'published: divide the stitches by the sections (Dummies (Wiley), "How to increase at several points in the same row")',
});
export const LONGER = formula({
  label: 'Runs with one more',
  formula: 'mod(plain, runs)',
  given: { plain: '', runs: '' },
  unit: '',
  source:
    'published: the remainder is shared out one each (studyres.com/doc/1062783, instructional article, 2010)',
});
export const LEFT = formula({
  label: 'Stitches afterwards',
  formula: 'plain + leaves * changes',
  given: { plain: '', leaves: '', changes: '' },
  unit: '',
  source: 'derived: an increase leaves two, a decrease leaves one',
});

export type Worked = 'flat' | 'round';

export interface Spread {
  readonly change: 'increase' | 'decrease' | 'none';
  readonly changes: number;
  /** Plain stitches between changes, in order: `changes` of them in the round, one more worked flat. */
  readonly runs: readonly number[];
  readonly instruction: readonly Segment[];
  readonly working: Working;
}

/** A stretch of the instruction: these runs, each with its change behind it, so many times. */
export interface Segment {
  readonly runs: readonly number[];
  readonly times: number;
  /** True for the last run of flat work, which no change follows. */
  readonly bare: boolean;
}

/**
 * `total` shared over `parts`: parts that differ by at most one, the larger ones spread as evenly as they go.
 *
 * @example
 * shareEvenly(11, 4) // → [2, 3, 3, 3]
 */
export function shareEvenly(total: number, parts: number): number[] {
  const least = Math.floor(total / parts);
  const larger = total % parts;
  return Array.from(
    { length: parts },
    (_, index) => least + Math.floor(((index + 1) * larger) / parts) - Math.floor((index * larger) / parts),
  );
}

/**
 * Both counts, where a change of so many (more +, fewer −) names the one that is missing; as they are where both are known, or neither.
 *
 * @example
 * completeCounts({ from: 60 }, -8) // → { from: 60, to: 52 }
 */
export function completeCounts(
  { from, to }: { readonly from?: number | undefined; readonly to?: number | undefined },
  by: number,
): { readonly from?: number; readonly to?: number } {
  if (from !== undefined && to === undefined) return { from, to: from + by };
  if (to !== undefined && from === undefined) return { from: to - by, to };
  return defined({ from, to });
}

/**
 * Both counts of “increase 60 to 68” and “increase 8 to 68”: as one row at most doubles and at best halves, the first number is the
 * count that there is where it can be, and else how many the change is. `first` is what is said behind “increase” or “decrease”.
 *
 * @example
 * readChange({ to: 68 }, 'increase', 60) // → { from: 60, to: 68 }
 * readChange({ to: 68 }, 'increase', 8) // → { from: 60, to: 68 }
 */
export function readChange(
  { from, to }: { readonly from?: number | undefined; readonly to?: number | undefined },
  change: 'increase' | 'decrease',
  first: number,
): { readonly from?: number; readonly to?: number } {
  const isCount = change === 'increase' ? 2 * first >= (to ?? 0) && first < (to ?? 0) : first > (to ?? first);
  if (from === undefined && to !== undefined && isCount) return { from: first, to };
  return completeCounts({ from, to }, change === 'increase' ? first : -first);
}

/**
 * Spreads the changes from `from` stitches to `to`. An increase eats one stitch and leaves two, a decrease eats two
 * and leaves one, so one row at most doubles and at best halves.
 *
 * Throws Problem: too-many-stitches, too-few-stitches, with the nearest count that can be.
 *
 * @example
 * spreadChanges(60, 67, 'round').runs // → [7, 8, 7, 8, 7, 8, 8]
 */
export function spreadChanges(from: number, to: number, worked: Worked): Spread {
  const fewest = Math.ceil(from / 2);
  const most = 2 * from;
  if (to > most || to < fewest) {
    throw new Problem(
      to > most ? 'too-many-stitches' : 'too-few-stitches',
      to > most
        ? `${from} stitches cannot become ${to} in one go: two in every stitch makes ${most}.`
        : `${from} stitches cannot become ${to} in one go: two together all the way leaves ${fewest}.`,
      {
        option: 'to',
        hint: `The nearest is to:${to > most ? most : fewest}; take the rest in the next ${worked === 'flat' ? 'row' : 'round'}.`,
        facts: { from, to, fewest, most },
      },
    );
  }
  const working = new Working();
  const changes = working.do(CHANGES, { to, from });
  if (changes === 0) {
    return { change: 'none', changes, runs: [from], instruction: [bareRun(from)], working };
  }
  const increase = to > from;
  const plain = working.do(PLAIN, { from, eaten: increase ? 1 : 2, changes });
  const runs = worked === 'flat' ? changes + 1 : changes;
  working.do(RUN, { plain, runs });
  working.do(LONGER, { plain, runs });
  working.do(LEFT, { plain, leaves: increase ? 2 : 1, changes });
  const shared = shareEvenly(plain, runs);
  return {
    change: increase ? 'increase' : 'decrease',
    changes,
    runs: shared,
    instruction: segments(shared, worked),
    working,
  };
}

const bareRun = (run: number): Segment => ({ runs: [run], times: 1, bare: true });

/** The longest pattern that is looked for when runs are said as "so many times". */
const LONGEST_PATTERN = 12;

/** Says the runs the short way: at each place the pattern that covers the most by being repeated. */
function segments(runs: readonly number[], worked: Worked): Segment[] {
  const changed = worked === 'flat' ? runs.slice(0, -1) : runs;
  const said: Segment[] = [];
  for (let at = 0; at < changed.length;) {
    let best = { length: 1, times: 1 };
    for (let length = 1; length <= Math.min(LONGEST_PATTERN, (changed.length - at) / 2); length++) {
      const times = repeats(changed, at, length);
      if ((times - 1) * length > (best.times - 1) * best.length) best = { length, times };
    }
    said.push({ runs: changed.slice(at, at + best.length), times: best.times, bare: false });
    at += best.length * best.times;
  }
  const last = runs[runs.length - 1] ?? 0;
  return worked === 'flat' && last > 0 ? [...said, bareRun(last)] : said;
}

function repeats(runs: readonly number[], at: number, length: number): number {
  let times = 1;
  const again = (index: number) => runs[at + times * length + index] === runs[at + index];
  while (at + (times + 1) * length <= runs.length && Array.from({ length }, (_, i) => i).every(again))
    times++;
  return times;
}

/**
 * One stretch as a person works it, with brackets where different runs alternate:
 * `[work 7, 2 in the next; (work 8, 2 in the next) 6 times] 2 times`.
 *
 * @example
 * writeSegment({ runs: [8], times: 7, bare: false }, 'increase') // → 'work 8, 2 in the next; 7 times'
 */
export function writeSegment({ runs, times, bare }: Segment, change: Spread['change']): string {
  const does = change === 'increase' ? '2 in the next' : 'the next 2 together';
  if (bare) return `work ${runs[0] ?? 0}`;
  const stretches: { run: number; times: number }[] = [];
  for (const run of runs) {
    const last = stretches.at(-1);
    if (last?.run === run) last.times++;
    else stretches.push({ run, times: 1 });
  }
  const phrase = (run: number) => (run === 0 ? does : `work ${run}, ${does}`);
  const only = stretches.length === 1 ? stretches[0] : undefined;
  if (only) {
    const all = only.times * times;
    return all === 1 ? phrase(only.run) : `${phrase(only.run)}; ${all} times`;
  }
  const inner = stretches.map((one) =>
    one.times === 1 ? phrase(one.run) : `(${phrase(one.run)}) ${one.times} times`,
  );
  return `[${inner.join('; ')}] ${times} times`;
}
