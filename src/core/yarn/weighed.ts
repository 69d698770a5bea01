/** How much yarn, from the weight of one finished motif. */
import type { Ball } from '../base/quantity.ts';
import { Working } from '../base/working.ts';
import { reckonLength, WHOLE_BALLS, YARN_WITH_RESERVE } from './balls.ts';

export interface Weighed {
  /** Metres in one motif, and in all with the reserve. */
  readonly each: number;
  readonly total: number;
  readonly balls: number;
  readonly working: Working;
}

/**
 * Yarn (m) and whole balls from the weight (g) of one finished motif; `reserve` in per cent.
 *
 * @example
 * reckonWeighed({ motif: 12, motifs: 80, ball: { m: 170, g: 100 }, reserve: 10 }).balls // → 11
 */
export function reckonWeighed(asked: {
  motif: number;
  motifs: number;
  ball: Ball;
  reserve: number;
}): Weighed {
  const { motif, motifs, ball, reserve } = asked;
  const working = new Working();
  const each = reckonLength(motif, ball, working, 'Yarn in one motif');
  const total = working.do(YARN_WITH_RESERVE, { each, motifs, reserve });
  const balls = working.do(WHOLE_BALLS, { yarn: total, ball_length: ball.m });
  return { each, total, balls, working };
}
