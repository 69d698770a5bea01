/** How many whole motifs the yarn at hand makes. */
import type { Ball, YarnAtHand } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';
import { weighAtHand } from './balls.ts';

export const MOTIFS_BY_WEIGHT = formula({
  label: 'Whole motifs',
  formula: 'floor(round(left / each, 6))',
  given: { left: 'g', each: 'g' },
  unit: '',
  source: 'derived: whole motifs only; a weighed motif has its tails in it',
});
export const WEIGHT_OVER = formula({
  label: 'Left over',
  formula: 'left - motifs * each',
  given: { left: 'g', motifs: '', each: 'g' },
  unit: 'g',
  source: 'derived: what is there less what they take',
});

export interface Made {
  readonly motifs: number;
  /** Grams at hand, and left over. */
  readonly left: number;
  readonly over: number;
  readonly working: Working;
}

/**
 * Whole motifs from the yarn at hand (g, or balls), each of a weight (g).
 *
 * Throws Problem: ball-missing.
 *
 * @example
 * countFromYarn({ left: 350, each: 13 }).motifs // → 26
 */
export function countFromYarn(asked: { left: YarnAtHand; each: number; ball?: Ball | undefined }): Made {
  const { each } = asked;
  const working = new Working();
  const left = weighAtHand(asked.left, asked.ball, working);
  const motifs = working.do(MOTIFS_BY_WEIGHT, { left, each });
  return { motifs, left, over: working.do(WEIGHT_OVER, { left, motifs, each }), working };
}
