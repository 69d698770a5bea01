/** One departure from a plan, seen from all sides, and the two ways of mending it. */
import type { RowPlan } from '../rows/index.ts';
import { count } from '../base/reader.ts';
import { sum } from '../base/sum.ts';

export interface Cause {
  /** Which slip it is, whatever the row and the counts: slips of many makers are counted by it. */
  readonly slip: string;
  /** What probably happened. */
  readonly cause: string;
  /** What in the counts speaks for it. */
  readonly why: string;
  /** How to put it right. */
  readonly mend: string;
  /** What mending that way costs the shape, or the time. */
  readonly cost: string;
}

/** A run of counts that departs from its plan at `row`. */
export interface Departure {
  readonly plan: RowPlan;
  readonly counts: readonly number[];
  readonly fromRow: number;
  readonly row: number;
  readonly expected: number;
  readonly counted: number;
  readonly difference: number;
  /** What is to be worked again after ripping back, in the plan's unit: its rows from this one to the last that was counted. */
  readonly again: number;
}

/** The departure at one of the counts (by its place among them, from 0), the first of them that of row `fromRow`. */
export function describeDeparture(
  plan: RowPlan,
  counts: readonly number[],
  fromRow: number,
  at: number,
): Departure {
  const row = fromRow + at;
  const counted = counts[at] ?? 0;
  const expected = plan.rows[row - 1]?.count ?? 0;
  return {
    plan,
    counts,
    fromRow,
    row,
    expected,
    counted,
    difference: counted - expected,
    again: sum(plan.rows.slice(row - 1, row - 1 + counts.length - at).map((one) => one.count)),
  };
}

/** A cause with its place in the queue: the lower, the likelier. */
export type Ranked = Cause & { readonly rank: number };

export interface Scene extends Departure {
  readonly called: 'row' | 'round';
  readonly one: string;
  readonly many: string;
  /** The count of the row before, as planned (and as counted, where it was counted). */
  readonly before: number | undefined;
  /** How the plan changes from the row before to this one. */
  readonly step: number;
  readonly too: string;
}

export const units = (scene: Scene, n: number) => count(n, scene.one, scene.many);

export function sceneOf(departure: Departure): Scene {
  const { plan, row, expected, difference } = departure;
  const blocks = plan.counted === 'blocks';
  const before = plan.rows[row - 2]?.count;
  return {
    ...departure,
    called: plan.called,
    one: blocks ? 'block' : 'stitch',
    many: blocks ? 'blocks' : 'stitches',
    before,
    step: before === undefined ? 0 : expected - before,
    too: difference > 0 ? 'too many' : 'too few',
  };
}

export function ripBack({ row, called, again, one, many }: Scene): Pick<Cause, 'mend' | 'cost'> {
  const to = row === 1 ? 'the beginning' : `the end of ${called} ${row - 1}`;
  return {
    mend: `Rip back to ${to} and work ${called} ${row} again.`,
    cost: `${count(again, one, many)} to work again; the shape stays true.`,
  };
}

/** A few stitches can be made up where the hook is now; more would show, so the row goes. */
export function makeUp(scene: Scene): Pick<Cause, 'mend' | 'cost'> {
  const { plan, called, row, counts, fromRow } = scene;
  const last = fromRow + counts.length - 1;
  // What is out by now, which may be more than at the row where it began, or nothing any more.
  const off = (counts.at(-1) ?? 0) - (plan.rows[last - 1]?.count ?? 0);
  const few = Math.abs(off);
  const back = ripBack(scene);
  if (few === 0) {
    return {
      mend: `Nothing to mend: by ${called} ${last} the count is right again.`,
      cost: `The edge steps a little at ${called} ${row}; a seam or a border hides it.`,
    };
  }
  const ends = last === plan.rows.length && last > row;
  if (few > 2 || ends || plan.counted === 'blocks' || last - row > 3) return back;
  const once = off < 0 ? 'work 2 in one stitch' : 'work 2 stitches together';
  const does = few === 1 ? once : `${once}, twice and apart`;
  const where =
    last === row
      ? `At the end of this ${called} ${does}`
      : `In ${called} ${last + 1} ${does}, besides what belongs there`;
  const shows =
    plan.worked === 'rounds'
      ? `One side is ${units(scene, few)} out there: it ripples a little until it is blocked.`
      : `The edge steps by ${units(scene, few)} there; a seam or a border hides it.`;
  return {
    mend: `${where}, and the count is right again; or ${back.mend.replace('Rip', 'rip')}`,
    cost: `${shows} Ripping back: ${back.cost}`,
  };
}
