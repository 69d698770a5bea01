/** Options with values, as they would be typed in her own units: what a hint shows of them. Invented. */
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
