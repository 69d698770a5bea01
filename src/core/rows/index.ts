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
 * The rows of a shape. Throws a Problem when a second measure is given to a shape that has none, or
 * a stitch that the shape is not worked in.
 */
export function rowPlan(shape: Shape, options: PlanOptions): RowPlan {
  if (options.otherSize !== undefined && !TWO_MEASURES.has(shape)) {
    throw new Problem('unsorted', `A ${shape} has one measure only.`, {
      option: 'other_size',
      hint: 'Leave other_size out; blocks and flat pieces take it.',
    });
  }
  return BUILDERS[shape](options);
}
