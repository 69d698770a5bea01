/** What the yarn at hand leaves over, and what it lacks, colour by colour. */
import { formula, type Working } from '../base/working.ts';
import { YARN_OF_BALLS } from '../yarn/balls.ts';
import { yarnOf } from '../yarn/motif.ts';
import type { ColourNeed } from './materials.ts';
import type { Pieces } from './pieces.ts';
import { stockOf } from './yarn-at-hand.ts';

export const SPARE = formula({
  label: 'Left over (short, where it is below nothing)',
  formula: 'at_hand - yarn',
  given: { at_hand: 'm', yarn: 'm' },
  unit: 'm',
  source: 'derived: what is there less what is needed, the reserve counted in',
});

/** Metres of a colour that are there, that are needed, and that are left over: below nothing where it is short. */
export interface ColourLeft {
  readonly colour: string;
  readonly atHand: number;
  readonly need: number;
  readonly left: number;
}

/** What is left of every colour whose balls are known. The steps are added to the working. */
export function reckonLeft(pieces: Pieces, needs: readonly ColourNeed[], working: Working): ColourLeft[] {
  return needs.flatMap(({ colour, total }) => {
    const yarn = yarnOf(pieces.yarns, colour);
    if (yarn?.balls === undefined || !yarn.ball) return [];
    const atHand = working.do(
      YARN_OF_BALLS,
      { balls: yarn.balls, ball_length: yarn.ball.m },
      `${colour} at hand`,
    );
    const left = working.do(SPARE, { at_hand: atHand, yarn: total }, `${colour} left over`);
    return [{ colour, atHand, need: total, left }];
  });
}

/** The colours of which there is too little, each with the metres that it is short. */
export function findLacking(
  pieces: Pieces,
  needs: readonly ColourNeed[],
): { readonly colour: string; readonly short: number }[] {
  const stock = stockOf(pieces);
  return needs.flatMap(({ colour, total }, index) => {
    const short = total - (stock[index] ?? Infinity);
    return short > 0 ? [{ colour, short }] : [];
  });
}
