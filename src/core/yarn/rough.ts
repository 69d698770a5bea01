/** How much yarn, roughly, from the stitches of a shape, the hook and the thickness of the yarn. */
import { ROUGH_BAND, STITCHES_A_BLOCK } from '../../standards/consumption.ts';
import type { Stitch } from '../../standards/stitches.ts';
import type { Ball } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';
import { planWhole, type RowPlan, type Shape } from '../rows/index.ts';
import { WHOLE_BALLS, YARN_WITH_RESERVE } from './balls.ts';
import { MM_PER_M, reckonStitchYarn, reckonThickness, YARN_OF_STITCHES } from './stitch-yarn.ts';

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
  source: 'common practice: figures from few measurements may be a quarter out',
});
export const HIGH_END = formula({
  label: 'The high end of the band',
  formula: 'each * (1 + band / 100)',
  given: { each: 'm', band: '' },
  unit: 'm',
  source: 'common practice: figures from few measurements may be a quarter out',
});

export interface Rough {
  readonly plan: RowPlan;
  readonly stitches: number;
  /** Metres in one motif, tails left out, and the ends of its band. */
  readonly each: number;
  readonly low: number;
  readonly high: number;
  /** Metres in all, with the reserve. */
  readonly total: number;
  /** Whole balls, and as many as the high end of the band would take; unset where no ball was given. */
  readonly balls?: number;
  readonly ballsHigh?: number;
  readonly working: Working;
}

/**
 * A rough estimate of yarn (m) from the stitches of a shape, the hook (mm) and the yarn's wraps per inch. Tails, chains, seams
 * and border are left out.
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
  motifs: number;
  ball?: Ball | undefined;
  reserve: number;
}): Rough {
  const { hook, wpi, motifs, ball, reserve } = asked;
  const plan = planWhole(asked.shape, asked);
  const working = new Working();
  const inAll = plan.soFarFormula(plan.rows.length);
  const counted = working.do(inAll.formula, inAll.values, `All ${plan.counted} of one motif`);
  const stitches =
    plan.counted === 'blocks'
      ? working.do(STITCHES_OF_BLOCKS, { blocks: counted, stitches_a_block: STITCHES_A_BLOCK })
      : counted;
  const perStitch = reckonStitchYarn(working, plan.stitch, hook, reckonThickness(working, wpi));
  const each = working.do(YARN_OF_STITCHES, { stitches, stitch_yarn: perStitch, mm_per_m: MM_PER_M });
  const low = working.do(LOW_END, { each, band: ROUGH_BAND });
  const high = working.do(HIGH_END, { each, band: ROUGH_BAND });
  const total = working.do(YARN_WITH_RESERVE, { each, motifs, reserve });
  const estimate = { plan, stitches, each, low, high, total, working };
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
