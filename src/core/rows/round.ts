/** Flat pieces worked in rounds from the middle: the circle and the hexagon, and where every growing round begins. */
import { CIRCLE_GROWTH, CIRCLE_GROWTH_SOURCE, CORNER_FOR, HEXAGON_GROWTH } from '../../standards/growth.ts';
import type { Stitch } from '../../standards/stitches.ts';
import { formula } from '../base/working.ts';
import { buildRows, type PlanOptions, type RowPlan, type Shape } from './plan.ts';

export const CIRCLE_COUNT = formula({
  label: 'Stitches in the round',
  formula: 'increases * round_number',
  given: { increases: '', round_number: '' },
  unit: '',
  source: CIRCLE_GROWTH_SOURCE,
});
export const HEXAGON_COUNT = formula({
  label: 'Stitches in the round',
  formula: 'first + increases * (round_number - 1)',
  given: { first: '', increases: '', round_number: '' },
  unit: '',
  source: 'derived: six corners; flat when the growth a round is about 4√3 × height ÷ width of a stitch',
});
export const ROUND_SO_FAR = formula({
  label: 'Stitches up to and with this round',
  formula: 'increases * round_number * (round_number + 1) / 2',
  given: { increases: '', round_number: '' },
  unit: '',
  source: 'derived: the sum of the rounds',
});

function inRounds(shape: Shape, size: number, stitch: Stitch, growth: number): RowPlan {
  return {
    shape,
    size,
    stitch,
    counted: 'stitches',
    worked: 'rounds',
    called: 'round',
    rows: buildRows(Array.from({ length: size }, (_, index) => growth * (index + 1))),
    countFormula: (row) =>
      shape === 'circle'
        ? { formula: CIRCLE_COUNT, values: { increases: growth, round_number: row } }
        : { formula: HEXAGON_COUNT, values: { first: growth, increases: growth, round_number: row } },
    soFarFormula: (row) => ({ formula: ROUND_SO_FAR, values: { increases: growth, round_number: row } }),
  };
}

/** A circle of `size` rounds: as many stitches more in every round as the stitch's height asks for. */
export const planCircle = ({ size, stitch = 'sc' }: PlanOptions): RowPlan =>
  inRounds('circle', size, stitch, CIRCLE_GROWTH[stitch]);

/** A hexagon of `size` rounds, its growth shared over six corners. */
export const planHexagon = ({ size, stitch = 'sc' }: PlanOptions): RowPlan =>
  inRounds('hexagon', size, stitch, HEXAGON_GROWTH[stitch]);

/** How a shape worked in rounds of stitches grows. */
export interface Growth {
  /** Places where it grows, evenly around. */
  readonly sections: number;
  /** Stitches more at each of them, in every round. */
  readonly grows: number;
  /** Stitches of the first round before its first such place. */
  readonly before: number;
}

/** The places where a circle, a hexagon or a solid square grows. */
export function growthOf({ shape, stitch }: Pick<RowPlan, 'shape' | 'stitch'>): Growth {
  if (shape === 'circle') return { sections: CIRCLE_GROWTH[stitch], grows: 1, before: 0 };
  if (shape === 'hexagon') return { sections: 6, grows: HEXAGON_GROWTH[stitch] / 6, before: 0 };
  const grows = CORNER_FOR[stitch] - 1;
  return { sections: 4, grows, before: Math.floor((grows - 2) / 2) };
}

/**
 * Stitches from the beginning of a round to its first corner. Rounds are joined above each other, and each corner is worked in the
 * middle of the one below (in the two beside it by turns, where it has no middle stitch), so the beginning falls back
 * from the corner by half of what a side grows. In a circle every round begins with an increase. Derived.
 *
 * @example
 * countToCorner({ shape: 'solid-square', stitch: 'sc' }, 5) // → 3
 * countToCorner({ shape: 'circle', stitch: 'sc' }, 5) // → 0
 */
export function countToCorner(plan: Pick<RowPlan, 'shape' | 'stitch'>, round: number): number {
  const { grows, before } = growthOf(plan);
  if (plan.shape === 'circle' || round === 1) return before;
  return before + Math.floor((grows * (round - 2)) / 2);
}
