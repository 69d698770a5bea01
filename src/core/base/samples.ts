/** Options with values, as they would be typed in her own units: what a hint shows of them. Invented. */
import { CM_PER_INCH, G_PER_OUNCE, M_PER_YARD } from '../../standards/units.ts';
import { unitsTyped } from './as-typed.ts';
import { readBall, readLength, readWeight } from './quantity.ts';
import { typedAs } from './reader.ts';

export const SAMPLE_BALL = typedAs('ball:170m/100g', 'ball:186yd/3.5oz');
export const SAMPLE_SIDE = typedAs('side:15cm', 'side:6in');
export const SAMPLE_SIZE = typedAs('width:120cm height:160cm', 'width:48in height:64in');
export const SAMPLE_WIDTH = typedAs('width:120cm', 'width:48in');
export const SAMPLE_WEIGHT = typedAs('weight:18g', 'weight:0.6oz');
export const SAMPLE_SWATCH = typedAs(
  'swatch_width:15cm swatch_height:15cm',
  'swatch_width:6in swatch_height:6in',
);

const inches = (cm: number) => {
  const long = cm / CM_PER_INCH;
  return long >= 10 ? Math.round(long) : Math.round(long * 2) / 2;
};
const ounces = (g: number, places: number) => Number((g / G_PER_OUNCE).toFixed(places));

/**
 * The example of an option as she would type it: one that is declared in metric units becomes a round one of inches, ounces and yards.
 *
 * @example
 * sampleOf('length', '15cm') // → '⟦typed 15cm|6in⟧'
 * sampleOf('ball', '170m/100g') // → '⟦typed 170m/100g|186yd/3.5oz⟧'
 * sampleOf('integer', '12') // → '12'
 */
export function sampleOf(kind: string, example: string): string {
  if (!/^(length|weight|ball)$/.test(kind) || unitsTyped(example) !== 'metric') return example;
  if (kind === 'length') return typedAs(example, `${inches(readLength(example))}in`);
  if (kind === 'weight') return typedAs(example, `${ounces(readWeight(example), 1)}oz`);
  const { m, g } = readBall(example);
  return typedAs(example, `${Math.round(m / M_PER_YARD)}yd/${ounces(g, g >= 60 ? 1 : 2)}oz`);
}
