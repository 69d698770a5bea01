/** Two edges of different length in one seam: the longer is eased to the shorter, as far as that goes. */
import { SEAMS_FORGIVE } from '../../standards/tolerances.ts';
import { isOffBy } from '../base/percent-off.ts';
import { formula, type Working } from '../base/working.ts';

export const TO_EASE = formula({
  label: 'To be eased into every seam',
  formula: 'abs(side - wanted)',
  given: { side: 'cm', wanted: 'cm' },
  unit: 'cm',
  source: 'derived: the longer edge is gathered to the shorter',
});
export const EASES = formula({
  label: 'What a seam of that length eases without a pucker',
  formula: 'wanted * forgiven / 100',
  given: { wanted: 'cm', forgiven: '' },
  unit: 'cm',
  source: 'common practice: a few per cent; the number is our own choice',
});

export interface Sided {
  readonly name: string;
  /** cm */
  readonly side: number;
  /** The side in cm that it is pinned out to when it is blocked, where it may be. */
  readonly pinned?: number | undefined;
}

/** Whether two sides make a seam that lies flat, either of them as it is or as it is pinned out. */
const meet = (one: Sided, other: Sided): boolean =>
  [one.side, one.pinned ?? one.side].some((side) =>
    [other.side, other.pinned ?? other.side].some((beside) => !isOffBy(side, beside, SEAMS_FORGIVE)),
  );

/** A motif whose side differs from another's by more than seams forgive. */
export interface Uneven extends Sided {
  readonly beside: Sided;
  /** cm to be eased into every seam between the two, and cm that a seam eases without a pucker. */
  readonly ease: number;
  readonly eases: number;
}

/** The one that differs most from the first, where it is by more than seams and pins bring together; undefined where none does. */
export function findUneven([first, ...others]: readonly Sided[], working: Working): Uneven | undefined {
  if (first === undefined) return undefined;
  const off = (one: Sided) => Math.abs(one.side - first.side);
  const farthest = others
    .filter((one) => !meet(one, first))
    .reduce<Sided | undefined>((most, one) => (most && off(most) >= off(one) ? most : one), undefined);
  if (!farthest) return undefined;
  return {
    ...farthest,
    beside: first,
    ease: working.do(TO_EASE, { side: farthest.side, wanted: first.side }),
    eases: working.do(EASES, { wanted: first.side, forgiven: SEAMS_FORGIVE }),
  };
}
