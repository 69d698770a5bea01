/** What stands on the bands of balls in the tasks, as balls are sold; of no maker (invented). */
import type { Ball } from '../core/base/quantity.ts';
import { G_PER_OUNCE, M_PER_YARD } from '../standards/units.ts';
import type { Own } from './lesson.ts';

const METRIC: readonly Ball[] = [
  { m: 170, g: 100 },
  { m: 210, g: 100 },
  { m: 125, g: 50 },
  { m: 85, g: 50 },
  { m: 300, g: 150 },
];
const inYards = (yards: number, ounces: number): Ball => ({ m: yards * M_PER_YARD, g: ounces * G_PER_OUNCE });
const IMPERIAL: readonly Ball[] = [inYards(200, 3.5), inYards(220, 4), inYards(100, 1.75), inYards(330, 6)];

/** The bands of her side of the sea. */
export const bandsOf = ({ units }: Pick<Own, 'units'>): readonly Ball[] =>
  units === 'metric' ? METRIC : IMPERIAL;
