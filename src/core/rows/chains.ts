/** Chains of a row that stand for no stitch, and where two are worked together: what takes yarn beside the stitches counted. */
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import type { RowPlan } from './plan.ts';

/** Chains to begin a flat piece of `stitches` stitches (published for sc, hdc and dc, from memory for tr). */
export const countFoundationChain = (stitch: Stitch, stitches: number): number =>
  stitches + STITCH_FACTS[stitch].foundationExtra;

/** The chain of a row that loses stitches stands for nothing, one shorter where the stitch is tall (common practice). */
export function countLosingChain(stitch: Stitch): number {
  const { turningChain } = STITCH_FACTS[stitch];
  return turningChain > 2 ? turningChain - 1 : turningChain;
}

/** Corner spaces of a round of clusters, and the chains of each (common practice). */
const CORNERS = 4;
const CORNER_CHAINS = 2;
/** A round is closed with a slip stitch, which takes the yarn of a chain. */
const CLOSING = 1;

/** Chains of one row or round that stand for no stitch. A block's are reckoned in the block. */
function chainsOfRow({ shape, stitch, size, worked }: RowPlan, row: number): number {
  const { turningChain, chainCounts } = STITCH_FACTS[stitch];
  const opening = chainCounts ? 0 : turningChain;
  const standing = chainCounts ? turningChain : 0;
  if (shape === 'blocks') return 0;
  if (shape === 'diagonal') {
    if (row === 1) return chainCounts ? 1 : 2;
    return row <= size ? opening : countLosingChain(stitch);
  }
  if (worked === 'rounds') return opening + CLOSING + (shape === 'clusters' ? CORNERS * CORNER_CHAINS : 0);
  return row === 1 ? countFoundationChain(stitch, size) - standing : opening;
}

/**
 * Chains that stand for no stitch and uprights beyond the first where stitches are worked together, in rows `from` to `to`,
 * both counted in.
 */
export function countBeside(
  plan: RowPlan,
  from = 1,
  to = plan.rows.length,
): { chains: number; together: number } {
  const sum = { chains: 0, together: 0 };
  for (let row = from; row <= to; row++) {
    sum.chains += chainsOfRow(plan, row);
    if (plan.shape !== 'blocks') sum.together += plan.rows[row - 1]?.decreases ?? 0;
  }
  return sum;
}
