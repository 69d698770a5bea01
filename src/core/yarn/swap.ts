/** As many balls of another yarn as the pattern asks for of its own. */
import { M_PER_KM } from '../../standards/units.ts';
import { percentOff } from '../base/percent-off.ts';
import type { Ball } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';
import { WHOLE_BALLS, YARN_OF_BALLS } from './balls.ts';

export const SPARE_OF_BALLS = formula({
  label: 'Left over',
  formula: 'new_balls * ball_length - yarn',
  given: { new_balls: '', ball_length: 'm', yarn: 'm' },
  unit: 'm',
  source: 'derived: what is bought less what is needed',
});
export const TEX = formula({
  label: 'Tex: grams in a kilometre, whatever units are shown elsewhere',
  formula: 'grams / metres * kilometre',
  given: { grams: '', metres: '', kilometre: '' },
  unit: '',
  source: 'published: ISO 1144, the tex system, grams per kilometre',
});
export const TEX_CHANGE = percentOff('new_tex', 'old_tex', {
  label: 'Per cent by which the new yarn is heavier, metre for metre',
  unit: '',
});

export interface Swap {
  /** Metres that the pattern's balls hold. */
  readonly total: number;
  readonly balls: number;
  readonly spare: number;
  /** Grams of the pattern's balls, and of the new ones. */
  readonly weight: number;
  readonly newWeight: number;
  /** Grams per kilometre of each yarn, and the difference in per cent. */
  readonly tex: number;
  readonly newTex: number;
  readonly heavierPercent: number;
  readonly working: Working;
}

/**
 * As many balls of another yarn as hold the length of the pattern's: substituting goes by length, never by weight (common
 * practice).
 */
export function swapYarn(asked: { balls: number; ball: Ball; newBall: Ball }): Swap {
  const { ball, newBall } = asked;
  const working = new Working();
  const total = working.do(
    YARN_OF_BALLS,
    { balls: asked.balls, ball_length: ball.m },
    'Yarn in the balls asked for',
  );
  const balls = working.do(
    WHOLE_BALLS,
    { yarn: total, ball_length: newBall.m },
    'Whole balls of the new yarn',
  );
  const spare = working.do(SPARE_OF_BALLS, { new_balls: balls, ball_length: newBall.m, yarn: total });
  const tex = (of: Ball, label: string) =>
    working.do(TEX, { grams: of.g, metres: of.m, kilometre: M_PER_KM }, label);
  const oldTex = tex(ball, 'Weight of a kilometre of the pattern’s yarn (tex)');
  const newTex = tex(newBall, 'Weight of a kilometre of the new yarn (tex)');
  const heavierPercent = working.do(TEX_CHANGE, { new_tex: newTex, old_tex: oldTex });
  return {
    total,
    balls,
    spare,
    weight: asked.balls * ball.g,
    newWeight: balls * newBall.g,
    tex: oldTex,
    newTex,
    heavierPercent,
    working,
  };
}
