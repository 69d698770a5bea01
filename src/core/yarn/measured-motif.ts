/** What a finished motif on the scale and under the tape measure tells: yarn in a stitch, and whether its size is right. */
import { motifSide, planOf, type MotifSpec } from './motif-yarn.ts';
import type { Ball } from '../base/quantity.ts';
import { total } from '../rows/index.ts';
import { formula, Working } from '../base/working.ts';
import { YARN_OF_WEIGHT } from './yardage.ts';

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
export const SIDE_OFF = formula({
  label: 'Side, too long (+) or too short (−), per cent',
  formula: '100 * (measured / expected - 1)',
  given: { measured: 'cm', expected: 'cm' },
  unit: '',
  source: 'derived: the measured side over the one that the gauge gives',
});
export const HOOK_FOR_SIDE = formula({
  label: 'Hook that would come nearer',
  formula: 'hook * expected / measured',
  given: { hook: 'mm', expected: 'cm', measured: 'cm' },
  unit: 'mm',
  source: 'common practice: size goes roughly with the hook',
});

/** Per cent off that nobody sees once it is joined, and that blocking still sets right (common practice: a few per cent). */
export const UNSEEN = 2;
export const BLOCKABLE = 5;

export interface Weighed {
  readonly total: number;
  /** Grams in a stitch (or block); unset where nothing was weighed. */
  readonly perStitch?: number;
  /** Metres in one motif, and centimetres in a stitch; unset without a ball. */
  readonly metres?: number;
  readonly yarnPerStitch?: number;
  /** The side that the gauge gives, in cm, and by how many per cent the measured one is off. */
  readonly expected?: number;
  readonly off?: number;
  /** In mm, where it is off by more than blocking sets right and the hook is known. */
  readonly hook?: number;
  readonly working: Working;
}

const reckonable = ({ shape, gauge, size, otherSize }: MotifSpec) =>
  gauge?.rows !== undefined &&
  (shape === 'diagonal' || shape === 'clusters' || shape === 'solid-square') &&
  size > 0 &&
  otherSize === undefined;

/** Reads a motif's weight (g) and side (cm), as far as they are known. */
export function weighed(motif: MotifSpec, ball?: Ball): Weighed {
  const working = new Working();
  const all = total(planOf(motif));
  const perStitch =
    motif.weight === undefined
      ? undefined
      : working.do(WEIGHT_PER_STITCH, { weight: motif.weight, in_one: all });
  const metres =
    motif.weight === undefined || !ball
      ? undefined
      : working.do(
          YARN_OF_WEIGHT,
          { weight: motif.weight, ball_length: ball.m, ball_weight: ball.g },
          'Yarn in one',
        );
  const yarnPerStitch =
    metres === undefined
      ? undefined
      : working.do(YARN_IN_STITCH, { yarn: metres, cm_per_m: 100, in_one: all });
  const { side, ...unmeasured } = motif;
  const expected = reckonable(motif) ? motifSide(unmeasured, working).side : undefined;
  const off =
    side === undefined || expected === undefined
      ? undefined
      : working.do(SIDE_OFF, { measured: side, expected });
  const hook =
    off === undefined ||
    Math.abs(off) <= BLOCKABLE ||
    motif.hook === undefined ||
    side === undefined ||
    expected === undefined
      ? undefined
      : working.do(HOOK_FOR_SIDE, { hook: motif.hook, expected, measured: side });
  return {
    total: all,
    working,
    ...(perStitch === undefined ? {} : { perStitch }),
    ...(metres === undefined ? {} : { metres }),
    ...(yarnPerStitch === undefined ? {} : { yarnPerStitch }),
    ...(expected === undefined ? {} : { expected }),
    ...(off === undefined ? {} : { off }),
    ...(hook === undefined ? {} : { hook }),
  };
}
