/** Which colour may climb the side and which must be cut, how many ends that leaves, and what other stripes would save. */
import { cutRuns, joinRuns, countRows, listSpans, type ColourRun } from './colour-runs.ts';
import type { RowPlan } from '../rows/plan.ts';
import { formula, type Working } from '../base/working.ts';

/** The most rows that a colour is carried past (common practice: a few; more leaves a long loop at the edge). */
export const CARRY_PAST = 4;

/** Its beginning and its end. */
const ENDS_A_LENGTH = 2;

export const CARRIED_STRAND = formula({
  label: 'Yarn carried up the side',
  formula: 'rows_carried * row_height / cm_per_m',
  given: { rows_carried: '', row_height: 'cm', cm_per_m: 'cm/m' },
  unit: 'm',
  source: 'derived: the strand climbs past as many rows as it is carried over',
});

/** A colour picked up again where it was left hanging. */
export interface PickUp {
  /** The row that begins with it. */
  readonly row: number;
  /** The row after which it was left hanging. */
  readonly since: number;
  /** Rows of other colours between. */
  readonly over: number;
}

/** One unbroken length of yarn. */
export interface Length {
  readonly colour: string;
  readonly fromRow: number;
  readonly toRow: number;
  /** Rows worked with it. */
  readonly rows: number;
  readonly pickUps: readonly PickUp[];
  /** Rows that it climbs past at the side, over all pick-ups. */
  readonly carriedOver: number;
}

export interface ColourCarried {
  readonly lengths: number;
  readonly ends: number;
  readonly carriedOver: number;
}

export interface Carrying {
  /** In the order in which they are joined. */
  readonly lengths: readonly Length[];
  /** Ends to weave in: two a length. */
  readonly ends: number;
  /** Ends if every change of colour were cut. */
  readonly endsIfCut: number;
  /** Rows climbed past, by all lengths together. */
  readonly carriedOver: number;
  /** Lengths of yarn by colour, with their ends, and the rows that they climb past. */
  readonly byColour: ReadonlyMap<string, ColourCarried>;
}

/**
 * Whether a colour left hanging after one row may be picked up after `over` more: few rows, and, worked in turned rows,
 * an even number, so that the work is back at that side. Joined rounds all begin at the same place. Common practice.
 */
export const mayCarry = (over: number, worked: RowPlan['worked'], past = CARRY_PAST) =>
  over <= past && (worked === 'rounds' || over % 2 === 0);

/** The unbroken lengths of yarn that a striped piece is made from. A piece of one colour is one length. */
export function cutLengths(plan: Pick<RowPlan, 'worked' | 'rows'>, runs: readonly ColourRun[]): Carrying {
  const open = new Map<string, Length>();
  const all: Length[] = [];
  const put = (length: Length) => {
    const before = open.get(length.colour);
    if (before && before.fromRow === length.fromRow) all[all.indexOf(before)] = length;
    else all.push(length);
    open.set(length.colour, length);
  };
  const striped = runs.length === 0 ? [{ colour: '', rows: plan.rows.length }] : runs;
  for (const { colour, from, to, rows } of listSpans(striped)) {
    const hanging = open.get(colour);
    const over = hanging ? from - hanging.toRow - 1 : 0;
    if (hanging && mayCarry(over, plan.worked)) {
      put({
        ...hanging,
        toRow: to,
        rows: hanging.rows + rows,
        pickUps: [...hanging.pickUps, { row: from, since: hanging.toRow, over }],
        carriedOver: hanging.carriedOver + over,
      });
    } else put({ colour, fromRow: from, toRow: to, rows, pickUps: [], carriedOver: 0 });
  }
  const byColour = new Map<string, ColourCarried>();
  for (const { colour, carriedOver } of all) {
    const so = byColour.get(colour) ?? { lengths: 0, ends: 0, carriedOver: 0 };
    byColour.set(colour, {
      lengths: so.lengths + 1,
      ends: so.ends + ENDS_A_LENGTH,
      carriedOver: so.carriedOver + carriedOver,
    });
  }
  return {
    lengths: all,
    ends: ENDS_A_LENGTH * all.length,
    endsIfCut: ENDS_A_LENGTH * striped.length,
    carriedOver: all.reduce((sum, { carriedOver }) => sum + carriedOver, 0),
    byColour,
  };
}

/** Metres carried up the side, from the rows climbed past and the height of a row in cm; the step is added to the working. */
export const reckonCarriedStrand = (rowsCarried: number, rowHeight: number, working: Working): number =>
  working.do(CARRIED_STRAND, { rows_carried: rowsCarried, row_height: rowHeight, cm_per_m: 100 });

export interface OtherStripes {
  readonly runs: readonly ColourRun[];
  readonly ends: number;
  readonly saves: number;
}

/** The shortest run of colours and heights that repeats; the whole where none does. */
function period(runs: readonly ColourRun[]): number {
  for (let length = 1; length < runs.length; length++) {
    if (
      runs.every((run, at) => {
        const before = runs[at - length];
        if (at < length || !before) return true;
        // The last stripe may be cut short where the piece ends.
        const whole = run.rows === before.rows || (at === runs.length - 1 && run.rows < before.rows);
        return run.colour === before.colour && whole;
      })
    )
      return length;
  }
  return runs.length;
}

/** Runs with other heights, carried on in their own order until the rows are filled. */
function refilled(runs: readonly ColourRun[], height: (rows: number) => number, rows: number): ColourRun[] {
  const group = runs.slice(0, period(runs)).map(({ colour, rows }) => ({ colour, rows: height(rows) }));
  const out = group.length === runs.length ? [...group] : [];
  if (out.length > 0) {
    const last = out.at(-1);
    const left = rows - countRows(out);
    if (last && left > 0) out[out.length - 1] = { colour: last.colour, rows: last.rows + left };
  }
  while (countRows(out) < rows) out.push(...group);
  return cutRuns(joinRuns(out), rows);
}

/**
 * Stripes of another height, of the same colours in the same order, that leave fewer ends; the nearest heights first.
 * Heights tried: the next even ones up and down, two and four rows, and in rounds the most that may be carried past.
 */
export function findOtherStripes(
  plan: Pick<RowPlan, 'worked' | 'rows'>,
  runs: readonly ColourRun[],
): OtherStripes[] {
  const rows = plan.rows.length;
  const now = cutLengths(plan, runs).ends;
  const even = (n: number) => Math.max(2, n);
  const heights: ((rows: number) => number)[] = [
    (n) => even(2 * Math.ceil(n / 2)),
    (n) => even(2 * Math.floor(n / 2)),
    (n) => Math.min(n, CARRY_PAST),
    (n) => Math.min(even(2 * Math.floor(n / 2)), CARRY_PAST),
    () => 2,
    () => CARRY_PAST,
  ];
  const found = new Map<string, OtherStripes & { far: number }>();
  const colours = new Set(runs.map(({ colour }) => colour)).size;
  for (const height of heights) {
    const other = refilled(runs, height, rows);
    const { ends } = cutLengths(plan, other);
    const key = JSON.stringify(other);
    if (ends >= now || new Set(other.map(({ colour }) => colour)).size < colours || found.has(key)) continue;
    const far = runs.reduce((sum, run) => sum + Math.abs(height(run.rows) - run.rows), 0);
    found.set(key, { runs: other, ends, saves: now - ends, far });
  }
  return [...found.values()]
    .sort((a, b) => a.ends - b.ends || a.far - b.far)
    .map(({ runs, ends, saves }) => ({ runs, ends, saves }));
}
