/** How thick a yarn is: from its wraps per inch, from its ball band; and the hook that is usual for it. */
import { USUAL_YARN } from '../../standards/consumption.ts';
import { CM_PER_INCH, G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { WRAPS_BY_LENGTH } from '../../standards/yarn-thickness.ts';
import { YARN_WEIGHTS, type YarnWeight } from '../../standards/yarn-weights.ts';
import type { Ball } from '../base/quantity.ts';
import type { YarnThickness } from '../base/trade-words.ts';
import { formula, type Working } from '../base/working.ts';

export const YARN_THICKNESS = formula({
  label: 'Thickness of the yarn',
  formula: 'inch / wraps',
  given: { inch: 'mm', wraps: '' },
  unit: 'mm',
  source: 'derived: an inch of yarn wound side by side, shared among its wraps',
});
/** A yarn's thickness in mm from its wraps per inch. */
export const reckonThickness = (working: Working, wpi: number): number =>
  working.do(YARN_THICKNESS, { inch: CM_PER_INCH * 10, wraps: wpi });

/** Wraps per inch of a yarn from its ball band; the usual yarn's where there is none. */
export function wpiOf(ball: Ball | undefined): number {
  if (!ball) return USUAL_YARN.thickness.wpi;
  const yardsPerPound = (ball.m / M_PER_YARD / ball.g) * G_PER_POUND;
  return WRAPS_BY_LENGTH.find((row) => yardsPerPound >= row.yardsPerPound)?.wpi ?? USUAL_YARN.thickness.wpi;
}

/**
 * A usual hook in mm for a yarn, and the name of its category: the one it was read from, or the one whose published wraps
 * per inch it is nearest to the middle of.
 */
export function findUsualHook({ wpi, category }: YarnThickness): { mm: number; name: string } {
  const off = ({ wpi: [from, to] }: YarnWeight) => Math.abs((from + to) / 2 - wpi);
  const yarnWeight =
    YARN_WEIGHTS.find((yarn) => yarn.category === category) ??
    YARN_WEIGHTS.reduce((best, yarn) => (off(yarn) < off(best) ? yarn : best));
  return { mm: yarnWeight.usualHook, name: yarnWeight.name.toLowerCase() };
}
