/** Yarn for a whole blanket from a weighed swatch, before any motif exists: by area. */
import type { Ball } from '../base/quantity.ts';
import { Problem } from '../base/problem.ts';
import { SAMPLE_SWATCH } from '../base/samples.ts';
import { formula, Working } from '../base/working.ts';
import { WHOLE_BALLS, YARN_OF_WEIGHT } from './balls.ts';

export const WEIGHT_OF_AREA = formula({
  label: 'Weight of the blanket, its area worked like the swatch',
  formula: 'weight * (width * height) / (swatch_width * swatch_height)',
  given: { weight: 'g', width: 'cm', height: 'cm', swatch_width: 'cm', swatch_height: 'cm' },
  unit: 'g',
  source: 'derived: the same stitches over another area weigh in proportion to it',
});
export const WEIGHT_WITH_RESERVE = formula({
  label: 'Weight with the reserve',
  formula: 'weight * (1 + reserve / 100)',
  given: { weight: 'g', reserve: '' },
  unit: 'g',
  source: 'common practice: 10 % in reserve',
});
export const SCALE_DOUBT = formula({
  label: 'How far a scale of whole grams leaves it open either way (per cent)',
  formula: '100 * half_step / weight',
  given: { half_step: 'g', weight: 'g' },
  unit: '',
  source: 'derived: half a step of the scale over the weight',
});

/** Half of what a kitchen scale steps by, in g (common practice: whole grams). */
const HALF_STEP = 0.5;

export interface SwatchYarn {
  /** Grams of the blanket alone, and with the reserve. */
  readonly plain: number;
  readonly weight: number;
  /** Metres with the reserve, and whole balls; unset where no ball was given. */
  readonly yarn?: number;
  readonly balls?: number;
  /** Per cent by which whole grams on the scale leave it open. */
  readonly doubt: number;
  readonly working: Working;
}

/**
 * The yarn for `width` × `height` cm from a swatch of `swatchWidth` × `swatchHeight` cm that weighs `weight` g; `reserve` in per
 * cent. Throws a Problem where the swatch is larger than the blanket.
 */
export function reckonSwatchYarn(asked: {
  swatchWidth: number;
  swatchHeight: number;
  weight: number;
  width: number;
  height: number;
  ball?: Ball | undefined;
  reserve: number;
}): SwatchYarn {
  const { swatchWidth, swatchHeight, weight, width, height, ball, reserve } = asked;
  if (swatchWidth * swatchHeight > width * height)
    throw new Problem('swatch-too-large', 'The swatch is larger than the blanket.', {
      option: 'swatch_width',
      hint: `Give the swatch’s own sides, like ${SAMPLE_SWATCH}.`,
      facts: { swatch: swatchWidth * swatchHeight, blanket: width * height },
    });
  const working = new Working();
  const plain = working.do(WEIGHT_OF_AREA, {
    weight,
    width,
    height,
    swatch_width: swatchWidth,
    swatch_height: swatchHeight,
  });
  const all = working.do(WEIGHT_WITH_RESERVE, { weight: plain, reserve });
  const inBalls = (of: Ball) => {
    const yarn = working.do(YARN_OF_WEIGHT, { weight: all, ball_length: of.m, ball_weight: of.g });
    return { yarn, balls: working.do(WHOLE_BALLS, { yarn, ball_length: of.m }) };
  };
  const bought = ball ? inBalls(ball) : {};
  const doubt = working.do(SCALE_DOUBT, { half_step: HALF_STEP, weight });
  return {
    plain,
    weight: all,
    ...bought,
    doubt,
    working,
  };
}
