/** How much yarn, roughly, from the stitches of a shape, the hook and the thickness of the yarn. */
import { GAUGED_BAND, ROUGH_BAND, STITCHES_A_BLOCK } from '../../standards/consumption.ts';
import type { Stitch } from '../../standards/stitches.ts';
import type { Ball, Gauge } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';
import { countBeside } from '../rows/chains.ts';
import { planWhole, type RowPlan, type Shape } from '../rows/index.ts';
import { WHOLE_BALLS, YARN_WITH_RESERVE } from './balls.ts';
import {
  MM_PER_M,
  reckonStitchMetres,
  reckonStitchYarn,
  YARN_OF_STITCHES,
  YARN_WORKED_WHOLE,
} from './stitch-yarn.ts';
import { reckonThickness } from './thickness.ts';

export const STITCHES_OF_BLOCKS = formula({
  label: 'Stitches, a block reckoned as its tall stitches and the chain that stands as one',
  formula: 'blocks * stitches_a_block',
  given: { blocks: '', stitches_a_block: '' },
  unit: '',
  source: 'common practice: three tall stitches and a chain as high',
});
export const LOW_END = formula({
  label: 'The low end of the band',
  formula: 'each * (1 - band / 100)',
  given: { each: 'm', band: '' },
  unit: 'm',
  source:
    'derived: limits of the fit to published measurements where a gauge tells; common practice: a quarter where only hook and yarn do',
});
export const HIGH_END = formula({
  label: 'The high end of the band',
  formula: 'each * (1 + band / 100)',
  given: { each: 'm', band: '' },
  unit: 'm',
  source:
    'derived: limits of the fit to published measurements where a gauge tells; common practice: a quarter where only hook and yarn do',
});

export interface Rough {
  readonly plan: RowPlan;
  readonly stitches: number;
  /** Metres in one motif, tails left out, and the ends of its band. */
  readonly each: number;
  readonly low: number;
  readonly high: number;
  /** Per cent by which it may be out either way, and whether the gauge told it. */
  readonly band: number;
  readonly bySize: boolean;
  /** Metres in all, with the reserve. */
  readonly total: number;
  /** Whole balls, and as many as the high end of the band would take; unset where no ball was given. */
  readonly balls?: number;
  readonly ballsHigh?: number;
  readonly working: Working;
}

/**
 * An estimate of yarn (m) from the stitches of a shape: by their size where a gauge is given, chains and stitches worked together
 * counted in; otherwise by the hook (mm) and the yarn's wraps per inch, chains left out. Tails, seams and border are left out.
 *
 * Throws Problem: rows-missing, one-measure-only.
 */
export function estimateYarn(asked: {
  shape: Shape;
  size: number;
  otherSize?: number | undefined;
  stitch?: Stitch | undefined;
  hook: number;
  wpi: number;
  gauge?: Gauge | undefined;
  motifs: number;
  ball?: Ball | undefined;
  reserve: number;
}): Rough {
  const { motifs, ball, reserve } = asked;
  const plan = planWhole(asked.shape, asked);
  const working = new Working();
  const inAll = plan.soFarFormula(plan.rows.length);
  const counted = working.do(inAll.formula, inAll.values, `All ${plan.counted} of one motif`);
  const stitches =
    plan.counted === 'blocks'
      ? working.do(STITCHES_OF_BLOCKS, { blocks: counted, stitches_a_block: STITCHES_A_BLOCK })
      : counted;
  const bySize = asked.gauge !== undefined && plan.counted !== 'blocks';
  const each = bySize
    ? reckonBySize(plan, stitches, asked, working)
    : reckonByHook(plan, stitches, asked, working);
  const band = bySize ? GAUGED_BAND : ROUGH_BAND;
  const low = working.do(LOW_END, { each, band });
  const high = working.do(HIGH_END, { each, band });
  const total = working.do(YARN_WITH_RESERVE, { each, motifs, reserve });
  const estimate = { plan, stitches, each, low, high, band, bySize, total, working };
  if (!ball) return estimate;
  const balls = working.do(WHOLE_BALLS, { yarn: total, ball_length: ball.m });
  const most = working.do(
    YARN_WITH_RESERVE,
    { each: high, motifs, reserve },
    'Yarn for all at the high end, with the reserve',
  );
  const ballsHigh = working.do(
    WHOLE_BALLS,
    { yarn: most, ball_length: ball.m },
    'Whole balls at the high end',
  );
  return { ...estimate, balls, ballsHigh };
}

interface How {
  readonly hook: number;
  readonly wpi: number;
  readonly gauge?: Gauge | undefined;
}

const reckonByHook = ({ stitch }: RowPlan, stitches: number, { hook, wpi }: How, working: Working): number =>
  working.do(YARN_OF_STITCHES, {
    stitches,
    stitch_yarn: reckonStitchYarn(working, stitch, hook, reckonThickness(working, wpi)),
    mm_per_m: MM_PER_M,
  });

function reckonBySize(plan: RowPlan, stitches: number, { hook, wpi, gauge }: How, working: Working): number {
  const yarn = reckonStitchMetres(working, { stitch: plan.stitch, hook, gauge, wpi });
  const { chains, together } = countBeside(plan);
  return working.do(
    YARN_WORKED_WHOLE,
    { stitches, stitch_yarn: yarn.stitch, chains, chain_yarn: yarn.chain, together, upright: yarn.upright },
    'Yarn in one motif, with chains, and the second upright where two are worked together',
  );
}
