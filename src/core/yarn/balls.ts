/** The put-up of a yarn: a weight of it as a length, and a length in whole balls. */
import { Problem } from '../base/problem.ts';
import type { Ball, YarnAtHand } from '../base/quantity.ts';
import { formula, type Working } from '../base/working.ts';

export const YARN_OF_WEIGHT = formula({
  label: 'Yarn in that weight',
  formula: 'weight * ball_length / ball_weight',
  given: { weight: 'g', ball_length: 'm', ball_weight: 'g' },
  unit: 'm',
  source: 'derived: the ball band’s length to its weight',
});
export const YARN_WITH_RESERVE = formula({
  label: 'Yarn for all, with the reserve',
  formula: 'each * motifs * (1 + reserve / 100)',
  given: { each: 'm', motifs: '', reserve: '' },
  unit: 'm',
  source: 'common practice: a reserve on what the motifs take, usually 10 %',
});
export const WEIGHT_OF_YARN = formula({
  label: 'Its weight',
  formula: 'yarn * ball_weight / ball_length',
  given: { yarn: 'm', ball_weight: 'g', ball_length: 'm' },
  unit: 'g',
  source: 'derived: the ball band’s weight to its length',
});
/** Rounded before it is rounded up, so that the last digit of a machine's arithmetic never buys a ball. */
export const WHOLE_BALLS = formula({
  label: 'Whole balls',
  formula: 'ceil(round(yarn / ball_length, 6))',
  given: { yarn: 'm', ball_length: 'm' },
  unit: '',
  source: 'common practice: balls round up, never down',
});
export const YARN_OF_BALLS = formula({
  label: 'Yarn in the balls',
  formula: 'balls * ball_length',
  given: { balls: '', ball_length: 'm' },
  unit: 'm',
  source: 'derived: as many lengths as there are balls',
});

export const WEIGHT_OF_BALLS = formula({
  label: 'Weight of the balls',
  formula: 'balls * ball_weight',
  given: { balls: '', ball_weight: 'g' },
  unit: 'g',
  source: 'derived: as many weights as there are balls',
});

/**
 * What the yarn at hand weighs (g); balls weigh what their band says.
 *
 * Throws Problem: ball-missing.
 */
export function weighAtHand(left: YarnAtHand, ball: Ball | undefined, working: Working): number {
  if (typeof left === 'number') return left;
  if (ball === undefined)
    throw new Problem('ball-missing', 'What a ball weighs is not known.', {
      option: 'ball',
      hint: 'Give what the band says, like 170m/100g, or weigh the yarn.',
    });
  return working.do(WEIGHT_OF_BALLS, { balls: left.balls, ball_weight: ball.g });
}

/** The length (m) of yarn in a weight (g), by its ball band. */
export const reckonLength = (weight: number, ball: Ball, working: Working, label: string): number =>
  working.do(YARN_OF_WEIGHT, { weight, ball_length: ball.m, ball_weight: ball.g }, label);
