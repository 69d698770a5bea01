/** What a finished motif on the scale and under the tape measure tells: yarn in a stitch, and whether its size is right. */
import { BLOCKING_MENDS, SLIP_OF_TAPE, UNSEEN } from '../../standards/tolerances.ts';
import { defined } from '../base/defined.ts';
import { isOffBy, percentOff } from '../base/percent-off.ts';
import { Problem } from '../base/problem.ts';
import type { Ball } from '../base/quantity.ts';
import { cm, t } from '../base/reader.ts';
import { formula, Working } from '../base/working.ts';
import { sumCounts } from '../rows/index.ts';
import { suggestHook, type HookAdvice } from '../size/compare-gauges.ts';
import { reckonLength } from './balls.ts';
import { planOf, type MotifSpec } from './motif.ts';
import { reckonSide } from './motif-size.ts';
import { readWeighings, weighingsOf, type Weighed, type Weighing } from './weighings.ts';

export const WEIGHT_PER_STITCH = formula({
  label: 'Weight of a stitch',
  formula: 'weight / in_one',
  given: { weight: 'g', in_one: '' },
  unit: 'g',
  source: 'common practice: the weight of a finished motif, shared evenly over its stitches',
});
export const YARN_IN_STITCH = formula({
  label: 'Yarn in a stitch',
  formula: 'yarn * cm_per_m / in_one',
  given: { yarn: 'm', cm_per_m: 'cm/m', in_one: '' },
  unit: 'cm',
  source: 'derived: the yarn of one, shared evenly over its stitches',
});
export const SIDE_OFF = percentOff('measured', 'expected', {
  label: 'Side, too long (+) or too short (−), per cent',
  unit: 'cm',
  source: 'derived: the measured side over the one that the gauge gives',
});

export interface MeasuredMotif {
  readonly total: number;
  /** What the readings of the scale tell; unset where nothing was weighed. */
  readonly weighed?: Weighed;
  /** Grams in a stitch (or block); unset where nothing was weighed. */
  readonly perStitch?: number;
  /** Metres in one motif, and centimetres in a stitch; unset without a ball. */
  readonly metres?: number;
  readonly yarnPerStitch?: number;
  /** The side that the gauge gives, in cm, and by how many per cent the measured one is off. */
  readonly expected?: number;
  readonly off?: number;
  /** The hook to try, where it is off by more than blocking mends and the hook is known; undefined where none is listed that way. */
  readonly hook?: HookAdvice;
  readonly working: Working;
}

const reckonable = ({ shape, gauge, size, otherSize }: MotifSpec) =>
  gauge?.rows !== undefined &&
  (shape === 'diagonal' || shape === 'clusters' || shape === 'solid-square') &&
  size > 0 &&
  otherSize === undefined;

/** Reads a motif's weight (g) and side (cm), as far as they are known. */
export function readMeasured(motif: MotifSpec, ball?: Ball): MeasuredMotif {
  const working = new Working();
  const inOne = sumCounts(planOf(motif));
  const weighings = weighingsOf(motif);
  const yarn = weighings.length === 0 ? {} : readWeight(weighings, inOne, ball, working);
  return defined({ total: inOne, ...yarn, ...readSide(motif, working), working });
}

function readWeight(weighings: readonly Weighing[], inOne: number, ball: Ball | undefined, working: Working) {
  const weighed = readWeighings(weighings, working);
  const perStitch = working.do(WEIGHT_PER_STITCH, { weight: weighed.mean, in_one: inOne });
  if (!ball) return { weighed, perStitch };
  const metres = reckonLength(weighed.mean, ball, working, 'Yarn in one');
  return {
    weighed,
    perStitch,
    metres,
    yarnPerStitch: working.do(YARN_IN_STITCH, { yarn: metres, cm_per_m: 100, in_one: inOne }),
  };
}

/** The side that the gauge gives, and what the measured one says beside it. */
function readSide({ side, ...unmeasured }: MotifSpec, working: Working) {
  const expected = reckonable(unmeasured) ? reckonSide(unmeasured, working).side : undefined;
  if (expected === undefined || side === undefined) return { expected };
  const off = working.do(SIDE_OFF, { measured: side, expected });
  const { hook } = unmeasured;
  // A little too small is pinned out; a little too large is not.
  const advice =
    hook === undefined || !isOffBy(side, expected, side > expected ? UNSEEN : BLOCKING_MENDS)
      ? undefined
      : suggestHook(hook, expected, side, working);
  return { expected, off, hook: advice };
}

/** The side in cm that a measured motif is pinned out to, where it is smaller than its gauge says by no more than blocking mends. */
export function findPinnedSide(motif: MotifSpec): number | undefined {
  const { side } = motif;
  const { expected } = readMeasured(motif);
  if (side === undefined || expected === undefined || side >= expected) return undefined;
  return isOffBy(side, expected, BLOCKING_MENDS) ? undefined : expected;
}

/**
 * Refuses a measured side that no motif of such a gauge has.
 *
 * Throws Problem: side-unlike-gauge.
 */
export function refuseUnlikelySide(motif: MotifSpec): void {
  const { name, side } = motif;
  const { expected } = readMeasured(motif);
  if (side === undefined || expected === undefined || !isOffBy(side, expected, SLIP_OF_TAPE)) return;
  throw new Problem(
    'side-unlike-gauge',
    `By its ${t('gauge')} and its rows a side of ${name} should be about ${cm(expected)}, not ${cm(side)}.`,
    {
      option: 'side',
      hint: `Measure one side of one finished motif, with its unit. If that is right, put its ${t('gauge')} or its size right first.`,
      facts: { motif: name, side, expected },
    },
  );
}
