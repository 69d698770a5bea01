/** Flat pieces worked in rounds from the middle: the circle and the hexagon. */
import { CIRCLE_GROWTH, CIRCLE_GROWTH_SOURCE, HEXAGON_GROWTH } from '../../standards/growth.ts';
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
