/** Where a class got stuck most: by part, row and slip, in numbers alone; and who asked to be helped. */
import { checkCounts, type Miscount } from '../miscount/check-counts.ts';
import { planOf, type MotifSpec } from '../yarn/motif.ts';
import type { Own } from './own.ts';
import type { AlongState, Stuck } from './state.ts';

export interface Trouble {
  /** The part's own number in the state. */
  readonly part: number;
  readonly row: number | undefined;
  readonly slip: string | undefined;
  /** How many makers were stuck there. */
  readonly makers: number;
}

/** Every place where somebody was stuck, the one of most makers first; then the earlier part, the lower row. */
export function listTroubles(state: Pick<AlongState, 'stuck' | 'parts'>): Trouble[] {
  const places = new Map<string, { trouble: Omit<Trouble, 'makers'>; makers: Set<string> }>();
  const order = new Map(state.parts.map(({ id }, index) => [id, index]));
  for (const { part, row, slip, maker } of mostTelling(state.stuck)) {
    const key = JSON.stringify([part, row, slip]);
    const place = places.get(key) ?? { trouble: { part, row, slip }, makers: new Set<string>() };
    place.makers.add(maker);
    places.set(key, place);
  }
  return [...places.values()]
    .map(({ trouble, makers }) => ({ ...trouble, makers: makers.size }))
    .sort(
      (a, b) =>
        b.makers - a.makers ||
        (order.get(a.part) ?? 0) - (order.get(b.part) ?? 0) ||
        (a.row ?? 0) - (b.row ?? 0) ||
        (a.slip ?? '').localeCompare(b.slip ?? ''),
    );
}

/** What each maker said, without what she later said more of: a part alone beside a row of it, a row beside the slip in it. */
function mostTelling(stuck: AlongState['stuck']): Stuck[] {
  const more = new Set(
    [...stuck].flatMap(({ maker, part, row, slip }) => [
      ...(row === undefined ? [] : [JSON.stringify([maker, part])]),
      ...(slip === undefined ? [] : [JSON.stringify([maker, part]), JSON.stringify([maker, part, row])]),
    ]),
  );
  return stuck.filter(
    ({ maker, part, row, slip }) =>
      slip !== undefined || !more.has(JSON.stringify(row === undefined ? [maker, part] : [maker, part, row])),
  );
}

/** Who asked to be helped and is not done with the part since: the latest of each maker. */
export function listHelpWanted(state: Pick<AlongState, 'stuck' | 'done'>): Stuck[] {
  const latest = new Map<string, Stuck>();
  for (const one of state.stuck)
    if (one.help && state.done.get(one.part)?.has(one.maker) !== true) latest.set(one.maker, one);
  return [...latest.values()];
}

/** A slip shown on the teacher's own motif. */
export interface WorkedExample {
  readonly motif: MotifSpec;
  readonly row: number;
  /** A count of that row that this slip gives; unset where none does, or no slip is known. */
  readonly found?: Miscount;
}

/**
 * The example to show: of the kind that a part is about, or of the first other one that has such a slip: what she was stuck at may have been
 * another kind than the part begins with. Undefined where no row is known.
 */
export function exampleToShow(
  own: Own,
  trouble: Pick<Trouble, 'row' | 'slip'>,
  kind: number,
): WorkedExample | undefined {
  const first = workedExample(own, trouble, kind);
  if (trouble.slip === undefined || first === undefined || first.found !== undefined) return first;
  for (const other of own.spec.kinds.keys()) {
    const shown = workedExample(own, trouble, other);
    if (shown?.found !== undefined) return shown;
  }
  return first;
}

/** Counts so far off are tried for one that the slip gives. */
const TRIED = 6;

/**
 * A slip worked in the teacher's motif of a kind, at the same row where it has one: the smallest difference that is put down to that slip first.
 * Undefined where no row is known.
 */
export function workedExample(
  own: Own,
  { row, slip }: Pick<Trouble, 'row' | 'slip'>,
  kind = 0,
): WorkedExample | undefined {
  const motif = own.spec.kinds[kind];
  if (motif === undefined || row === undefined) return undefined;
  const plan = planOf(motif);
  const here = Math.min(row, plan.rows.length);
  const planned = plan.rows[here - 1]?.count ?? 0;
  // With the rows before it right, only this row is in question.
  const from = Math.max(1, here - 2);
  const right = plan.rows.slice(from - 1, here - 1).map(({ count }) => count);
  for (let off = 1; slip !== undefined && off <= TRIED; off++)
    for (const counted of [planned - off, planned + off]) {
      if (counted < 1) continue;
      const found = checkCounts(plan, [...right, counted], from);
      if (found.wrong?.causes[0]?.slip === slip) return { motif, row: here, found };
    }
  return { motif, row: here };
}
