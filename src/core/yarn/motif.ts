/** A motif and its yarns as they are kept: its rows, its colours, the stitches in each. */
import { STITCHES_A_BLOCK } from '../../standards/consumption.ts';
import type { Stitch } from '../../standards/stitches.ts';
import type { Ball, Gauge } from '../base/quantity.ts';
import { sameName } from '../base/nearest-name.ts';
import { countBeside } from '../rows/chains.ts';
import { planRows, sumCounts, type RowPlan, type Shape } from '../rows/index.ts';
import type { Weighing } from './weighings.ts';
import { listSpans, type ColourRun } from '../stripes/colour-runs.ts';

/** A motif as it is saved: lengths in cm, the hook in mm, the weight of one finished motif in g. */
export interface MotifSpec {
  readonly name: string;
  readonly shape: Shape;
  readonly size: number;
  readonly otherSize?: number;
  readonly stitch: Stitch;
  readonly hook?: number;
  readonly gauge?: Gauge;
  readonly runs: readonly ColourRun[];
  readonly weight?: number;
  /** The readings of the scale that the weight is the mean of. */
  readonly weighings?: readonly Weighing[];
  /** The ball it was worked from, where it was said at the scale. */
  readonly ball?: Ball;
  readonly side?: number;
  /** Minutes that one takes its maker, where she said so. */
  readonly minutes?: number;
}

/** A colour as it is bought: the ball, its price, how many are at hand. */
export interface Yarn {
  readonly colour: string;
  readonly ball?: Ball;
  readonly price?: number;
  readonly balls?: number;
}

/** The yarn of a colour, where the maker said something of it. Names of colours are the same whatever their capitals. */
export const yarnOf = <Y extends Yarn>(yarns: readonly Y[], colour: string): Y | undefined =>
  yarns.find((yarn) => sameName(yarn.colour, colour));

/** The rows of a saved motif. */
export const planOf = (motif: MotifSpec): RowPlan =>
  planRows(motif.shape, { size: motif.size, otherSize: motif.otherSize, stitch: motif.stitch });

/** A motif of one unnamed colour is of the colour that bears its own name. */
export const runsOf = (motif: MotifSpec, plan: RowPlan = planOf(motif)): readonly ColourRun[] =>
  motif.runs.length > 0 ? motif.runs : [{ colour: motif.name, rows: plan.rows.length }];

/** What is counted (stitches, or blocks) by colour from the row after `done` on, in the order in which the colours first appear. */
export function countByColour(plan: RowPlan, runs: readonly ColourRun[], done = 0): Map<string, number> {
  const by = new Map<string, number>();
  for (const { colour, from, to } of listSpans(runs))
    by.set(colour, (by.get(colour) ?? 0) + sumCounts(plan, to, Math.max(from, done + 1)));
  return by;
}

/** Stitches by colour; a corner-to-corner block is reckoned as its tall stitches and the chain that stands as one. */
export function countStitchesByColour(plan: RowPlan, runs: readonly ColourRun[]): Map<string, number> {
  const each = plan.counted === 'blocks' ? STITCHES_A_BLOCK : 1;
  return new Map([...countByColour(plan, runs)].map(([colour, counted]) => [colour, counted * each]));
}

/** Chains that stand for no stitch and second uprights by colour, as stitches are counted. */
export function countBesideByColour(
  plan: RowPlan,
  runs: readonly ColourRun[],
): Map<string, { chains: number; together: number }> {
  const by = new Map<string, { chains: number; together: number }>();
  for (const { colour, from, to } of listSpans(runs)) {
    const { chains, together } = countBeside(plan, from, to);
    const sum = by.get(colour) ?? { chains: 0, together: 0 };
    by.set(colour, { chains: sum.chains + chains, together: sum.together + together });
  }
  return by;
}
