/** From a blanket to what a group is asked to make: quotas by kind from the layout, spares, the side of one motif. */
import { defined } from '../base/defined.ts';
import { reckonSide, type Side } from '../yarn/motif-size.ts';
import { Problem } from '../base/problem.ts';
import { when } from '../base/reader.ts';
import { Working, formula } from '../base/working.ts';
import type { BlanketSpec } from '../blanket/pieces.ts';
import type { GroupPlan } from './events.ts';

export const WANTED_OF_KIND = formula({
  label: 'Motifs wanted',
  formula: 'cells + spares',
  given: { cells: '', spares: '' },
  unit: '',
  source: 'derived: the cells of the layout that hold this kind, and the spares',
});

export interface Opening extends BlanketSpec {
  readonly name: string;
  readonly columns: number;
  readonly rows: number;
  readonly layout: GroupPlan['layout'];
  /** Motifs of each kind beyond its cells. */
  readonly spares: number;
  /** cm; reckoned from the first kind where it is not given. */
  readonly side: number | undefined;
  /** Per cent. */
  readonly tolerance: number;
  readonly closes: string | undefined;
  readonly joinable: GroupPlan['joinable'];
  /** The day of asking, YYYY-MM-DD. */
  readonly today: string;
}

export interface Opened {
  readonly plan: GroupPlan;
  /** How the side was found, where none was given. */
  readonly sideTaken?: Side['how'];
  readonly working: Working;
}

/**
 * The plan of a group blanket.
 *
 * Throws Problem: day-passed; and where the side of a motif is neither given nor known, motif-size-unknown,
 * motif-not-square, not-for-a-grid.
 */
export function planGroup(asked: Opening): Opened {
  const { closes, today, layout } = asked;
  if (closes !== undefined && closes < today) {
    throw new Problem('day-passed', `${when(closes)} has passed.`, {
      option: 'closes',
      hint: 'Give a day to come.',
      facts: { closes },
    });
  }
  const working = new Working();
  const [first] = asked.kinds;
  if (!first) throw new Error('a blanket has at least one kind');
  const taken = asked.side === undefined ? reckonSide(first, working) : undefined;
  const kinds = asked.kinds.map((kind, index) => {
    const quota = layout.filter((cell) => cell.kind === index).length;
    working.do(WANTED_OF_KIND, { cells: quota, spares: asked.spares }, `${kind.name} wanted`);
    // How long one takes her is hers, and of no other maker.
    return defined({ ...kind, minutes: undefined, quota, spares: asked.spares });
  });
  return defined({
    plan: defined({
      name: asked.name,
      kinds,
      columns: asked.columns,
      rows: asked.rows,
      layout,
      side: taken?.side ?? asked.side ?? 0,
      tolerance: asked.tolerance,
      closes,
      joining: asked.joining,
      border: asked.border,
      yarns: asked.yarns,
      reserve: asked.reserve,
      joinable: asked.joinable,
    }),
    working,
    sideTaken: taken?.how,
  });
}
