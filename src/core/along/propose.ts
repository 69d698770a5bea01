/** The parts of a make-along, proposed from the work itself: what there is to do, in the order in which it is done. */
import { LONGEST_NAME } from '../base/limits.ts';
import { Problem } from '../base/problem.ts';
import { when } from '../base/reader.ts';
import { sum } from '../base/sum.ts';
import type { BlanketSpec } from '../blanket/pieces.ts';
import { sumCounts } from '../rows/index.ts';
import { planOf, type MotifSpec } from '../yarn/motif.ts';
import { STITCHES_A_BLOCK } from '../../standards/consumption.ts';
import type { Part, Work } from './events.ts';
import { dayAfter } from './state.ts';

/** Stitches that a part of motifs holds where nobody says how many parts there are: about four hours at fifteen a minute (common practice). */
export const STITCHES_A_PART = 3600;
/** Parts of motifs at the most, and parts in all. */
export const MOST_SHARES = 26;
export const MOST_PARTS = 60;
/** Parts that are given out on one day, and years that the last of them may be away. */
export const MOST_PARTS_A_DAY = 2;
export const MOST_YEARS_AHEAD = 10;
/** A first motif of fewer rows than this is made at one go. */
const ROWS_FOR_HALVES = 4;

/** Stitches in one motif; a corner-to-corner block is reckoned as its tall stitches and the chain that stands as one. */
export function countStitchesOf(motif: MotifSpec): number {
  const plan = planOf(motif);
  return sumCounts(plan) * (plan.counted === 'blocks' ? STITCHES_A_BLOCK : 1);
}

/** Refuses a day that is too far away; both YYYY-MM-DD. Throws Problem: day-too-far. */
export function mustBeNear(day: string, today: string, option: string): void {
  const last = `${Number(today.slice(0, 4)) + MOST_YEARS_AHEAD}${today.slice(4)}`;
  if (day <= last) return;
  throw new Problem('day-too-far', `A part would be given out on ${when(day)}, which is too far away.`, {
    option,
    hint: `Every part is to be given out within ${MOST_YEARS_AHEAD} years.`,
    facts: { from: day, years: MOST_YEARS_AHEAD },
  });
}

/** Refuses more parts on one of these days than a channel should get. Throws Problem: too-many-parts-a-day. */
export function mustNotCrowd(
  parts: readonly Pick<Part, 'from'>[],
  days: readonly string[],
  option: string,
): void {
  const crowded = days.find((day) => parts.filter(({ from }) => from === day).length > MOST_PARTS_A_DAY);
  if (crowded === undefined) return;
  throw new Problem(
    'too-many-parts-a-day',
    `More than ${MOST_PARTS_A_DAY} parts would be given out on ${when(crowded)}.`,
    {
      option,
      hint: 'Give each a day of its own, or put what is done on one day into one part.',
      facts: { from: crowded, most: MOST_PARTS_A_DAY },
    },
  );
}

/** So many parts the motifs are shared over, the first motif left out, which has parts of its own. */
function countShares(kinds: readonly MotifSpec[], counts: readonly number[]): number {
  const left = sum(counts) - 1;
  const stitches = sum(kinds.map((kind, index) => countStitchesOf(kind) * (counts[index] ?? 0)));
  return Math.min(left, MOST_SHARES, Math.max(1, Math.ceil(stitches / STITCHES_A_PART)));
}

/** What is wished of the proposal. */
export interface Proposal {
  readonly blanket: Pick<BlanketSpec, 'kinds' | 'border'>;
  readonly columns: number;
  readonly rows: number;
  readonly counts: readonly number[];
  /** The day of the first part, YYYY-MM-DD, and the days from one to the next. */
  readonly starts: string;
  readonly every: number;
  /** Parts that the motifs are shared over; by their stitches if not given. */
  readonly shares?: number | undefined;
}

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];

/** `The first furrow, first half`; of a name that has no room in a title, `The first motif, first half`. */
function titleOfFirst(name: string, half: string | undefined): string {
  const titled = (of: string) => `The first ${of}${half === undefined ? '' : `, ${half}`}`;
  return titled(name).length <= LONGEST_NAME ? titled(name) : titled('motif');
}

/** The works of a blanket with their titles, in order. */
function worksOf({ blanket, columns, rows, counts, shares }: Proposal): { work: Work; title: string }[] {
  const { kinds, border } = blanket;
  const [first] = kinds;
  if (!first) throw new Error('a blanket has at least one kind');
  const plan = planOf(first);
  const halves = plan.rows.length >= ROWS_FOR_HALVES ? ['first half', 'second half'] : [undefined];
  const many = sum(counts) > 1 ? Math.min(shares ?? countShares(kinds, counts), sum(counts) - 1) : 0;
  const works: { work: Work; title: string }[] = [
    { work: 'swatch', title: 'Swatch' },
    ...halves.map((half) => ({
      work: 'first' as const,
      title: titleOfFirst(first.name, half),
    })),
    ...Array.from({ length: many }, (_, share) => ({
      work: 'motifs' as const,
      title: many === 1 ? 'The other motifs' : `Motifs, ${ORDINALS[share] ?? `${share + 1}th`} share`,
    })),
    { work: 'ends', title: 'Ends' },
  ];
  if (columns * rows > 1)
    works.push({ work: 'laying-out', title: 'Laying out' }, { work: 'joining', title: 'Joining' });
  if (border.rounds.length > 0) works.push({ work: 'border', title: 'Border' });
  return works;
}

/** Proposes the parts: a swatch, the first motif in halves, the motifs shared by their stitches, ends, laying out, joining, border. */
export const proposeParts = (asked: Proposal): Part[] =>
  worksOf(asked).map((one, index) => ({
    id: index + 1,
    from: dayAfter(asked.starts, index * asked.every),
    ...one,
  }));
