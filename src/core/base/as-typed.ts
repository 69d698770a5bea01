/**
 * Measures as they were typed: who reads in inches and types a ball of 100 g is shown 100 g, not 3.53 oz. Lengths and sizes that are
 * reckoned stay in her own units.
 */
import { GAUGE_OVER, isBareGauge, partsOfBall, readBall, readGauge, readWeight } from './quantity.ts';
import { isBareNumber } from './number.ts';
import type { ShownUnit, Units } from './reader.ts';

/** Measures in the core's units (`100 g`), each with the units in which it was typed. */
export type AsTyped = ReadonlyMap<string, Units>;

/** What a measure is called in that map. */
export const measureName = (value: number | string, unit: ShownUnit): string => `${value} ${unit}`;

const IMPERIAL =
  /(?:["']|(?:^|[^a-z])(?:in|ins|inch|inches|ft|foot|feet|yds?|yards?|oz|ozs|ounces?|lbs?|pounds?))\.?\s*$/i;

/** Whatever of inches, feet, yards, ounces and pounds might be in a text, found in one look. */
const MAYBE_IMPERIAL = /["'“”″’‘′]|in|f[oet]|y[da]|oz|ou|lb|po/i;

/** Whether nothing in a text can have been typed in inches, yards or ounces. */
export const isAllMetric = (text: string): boolean => !MAYBE_IMPERIAL.test(text);

/** The units in which an amount is typed; undefined for a bare number. */
export const unitsTyped = (text: string): Units | undefined =>
  isBareNumber(text) ? undefined : IMPERIAL.test(text) ? 'imperial' : 'metric';

/** Whether an option of that kind may hold measures that are shown as they were typed. */
export const isMeasured = (kind: string): boolean => kind === 'weight' || kind === 'ball' || kind === 'gauge';

/** The measures in an option of that kind, each with the units in which it was typed; none in what cannot be read. */
export function measuresIn(kind: string, text: string): readonly (readonly [name: string, units: Units])[] {
  const named = (value: number, unit: ShownUnit, typed: string) => {
    const units = unitsTyped(typed);
    return units === undefined ? [] : [[measureName(value, unit), units] as const];
  };
  try {
    if (kind === 'weight') return named(readWeight(text), 'g', text);
    if (kind === 'ball') {
      const parts = partsOfBall(text);
      if (!parts) return [];
      const ball = readBall(text);
      return [...named(ball.m, 'm', parts.length), ...named(ball.g, 'g', parts.weight)];
    }
    if (kind === 'gauge') {
      const { over } = readGauge(text);
      // 13x10 is read over 10 cm, whoever types it.
      return isBareGauge(text) ? [[measureName(GAUGE_OVER, 'cm'), 'metric']] : named(over, 'cm', text);
    }
  } catch {
    // What cannot be read is refused by its own reader.
  }
  return [];
}
