/** From a shape and its size to its rows. */
import { Problem } from '../base/problem.ts';
import { blocks } from './blocks.ts';
import { clusters } from './clusters.ts';
import { diagonal } from './diagonal.ts';
import { flat } from './flat.ts';
import type { PlanOptions, RowPlan, Shape } from './plan.ts';
import { circle, hexagon } from './round.ts';
import { solidSquare } from './solid-square.ts';

export * from './plan.ts';

const BUILDERS: Readonly<Record<Shape, (options: PlanOptions) => RowPlan>> = {
  diagonal,
  blocks,
  clusters,
  'solid-square': solidSquare,
  circle,
  hexagon,
  flat,
};

/** Shapes that have a second measure: blocks along the other side, or rows of a flat piece. */
const TWO_MEASURES: ReadonlySet<Shape> = new Set(['blocks', 'flat']);

/**
 * The rows of a shape.
 *
 * Throws Problem: one-measure-only, where a second measure is given to a shape that has none.
 */
export function rowPlan(shape: Shape, options: PlanOptions): RowPlan {
  if (options.otherSize !== undefined && !TWO_MEASURES.has(shape)) {
    throw new Problem('one-measure-only', `A ${shape} has one measure only.`, {
      option: 'other_size',
      hint: 'Leave other_size out; blocks and flat pieces take it.',
      facts: { shape },
    });
  }
  return BUILDERS[shape](options);
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
  return rowPlan(shape, options);
}
