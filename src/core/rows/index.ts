/** From a shape and its size to its rows. */
import { Problem } from '../base/problem.ts';
import { planBlocks } from './blocks.ts';
import { planClusters } from './clusters.ts';
import { planDiagonal } from './diagonal.ts';
import { planFlat } from './flat.ts';
import type { PlanOptions, RowPlan, Shape } from './plan.ts';
import { planCircle, planHexagon } from './round.ts';
import { planSolidSquare } from './solid-square.ts';

export * from './plan.ts';

const BUILDERS: Readonly<Record<Shape, (options: PlanOptions) => RowPlan>> = {
  diagonal: planDiagonal,
  blocks: planBlocks,
  clusters: planClusters,
  'solid-square': planSolidSquare,
  circle: planCircle,
  hexagon: planHexagon,
  flat: planFlat,
};

/** Shapes that have a second measure: blocks along the other side, or rows of a flat piece. */
const TWO_MEASURES: ReadonlySet<Shape> = new Set(['blocks', 'flat']);

/** Plans that were asked for last: one answer asks for those of its motifs again and again. Nobody alters a plan. */
const known = new Map<string, RowPlan>();
const KNOWN = 100;

/**
 * The rows of a shape.
 *
 * Throws Problem: one-measure-only, where a second measure is given to a shape that has none.
 */
export function planRows(shape: Shape, options: PlanOptions): RowPlan {
  if (options.otherSize !== undefined && !TWO_MEASURES.has(shape)) {
    throw new Problem('one-measure-only', `A ${shape} has one measure only.`, {
      option: 'other_size',
      hint: 'Leave other_size out; blocks and flat pieces take it.',
      facts: { shape },
    });
  }
  const { size, otherSize, stitch } = options;
  const key = `${shape} ${size} ${otherSize} ${stitch}`;
  let plan = known.get(key);
  if (!plan) {
    plan = BUILDERS[shape](options);
    known.set(key, plan);
    for (const oldest of known.keys()) {
      if (known.size <= KNOWN) break;
      known.delete(oldest);
    }
  }
  return plan;
}

/**
 * The same for a whole piece: one row of a flat piece is nobody's question about yarn.
 *
 * Throws Problem: rows-missing, one-measure-only.
 */
export function planWhole(shape: Shape, options: PlanOptions): RowPlan {
  if (shape === 'flat' && options.otherSize === undefined) {
    throw new Problem('rows-missing', 'A flat piece needs its rows as well as its stitches.', {
      option: 'other_size',
      hint: 'Give the number of rows, like other_size:40.',
    });
  }
  return planRows(shape, options);
}
