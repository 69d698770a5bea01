/** What the scale tells of a motif, and how well: every reading has a step, and no two motifs weigh the same. */
import { LIMITS_95, SCALE_STEP, SPREAD_COUNTS, USUAL_SPREAD } from '../../standards/consumption.ts';
import { MOST_WEIGHINGS } from '../base/limits.ts';
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';

/** One reading of the scale: grams of so many finished motifs of one kind together, on a scale that shows steps of so many grams. */
export interface Weighing {
  readonly weight: number;
  readonly motifs: number;
  readonly step: number;
}

const OUR_CHOICE =
  'common practice: motifs of one maker differ by a few per cent; that it counts as a few weighings is our own choice';

export const MEAN_WEIGHT = formula({
  label: 'Weight of one, over all that were weighed',
  formula: 'weight / motifs',
  given: { weight: 'g', motifs: '' },
  unit: 'g',
  source: 'derived: the mean of what lay on the scale',
});
export const SCALE_ERROR = formula({
  label: 'What the steps of the scale leave open',
  formula: 'step * sqrt(readings / 12)',
  given: { step: 'g', readings: '' },
  unit: 'g',
  source:
    'derived: a value rounded to a step is off by step ÷ √12, root mean square, and errors add up by their squares',
});
export const SPREAD_OF_ONE = formula({
  label: 'By how much one differs from the next, as a standard deviation',
  formula:
    'sqrt((counts * (usual / 100 * mean)^2 + max(0, apart^2 - scale_error^2)) / (counts + readings - 1))',
  given: { counts: '', usual: '', mean: 'g', apart: 'g', scale_error: 'g', readings: '' },
  unit: 'g',
  source: `derived: the scatter of the readings about their mean, the scale’s own error taken off, pooled with what is usual; ${OUR_CHOICE}`,
});
export const MEAN_ERROR = formula({
  label: 'By how much that mean may be off, as a standard deviation',
  formula: 'sqrt(motifs * spread^2 + scale_error^2) / motifs',
  given: { motifs: '', spread: 'g', scale_error: 'g' },
  unit: 'g',
  source: 'derived: variances of the motifs and of the readings added up',
});
export const WEIGHING_BAND = formula({
  label: 'Right to about, per cent either way',
  formula: '100 * limits * error / mean',
  given: { limits: '', error: 'g', mean: 'g' },
  unit: '',
  source: 'derived: about 95 % of a normal distribution lie within two standard deviations',
});

export interface Weighed {
  /** Motifs that were weighed, and on how many readings. */
  readonly motifs: number;
  readonly readings: number;
  /** Grams of one, the standard deviation from one to the next, and that of the mean. */
  readonly mean: number;
  readonly spread: number;
  readonly error: number;
  /** Per cent either way that the mean is right to, 19 times in 20. */
  readonly band: number;
}

/** The readings of a motif; where only a weight (g) is known, that is one reading of one motif on a scale in steps of a gram. */
export const weighingsOf = ({
  weighings,
  weight,
}: {
  readonly weighings?: readonly Weighing[];
  readonly weight?: number;
}): readonly Weighing[] =>
  weighings ?? (weight === undefined ? [] : [{ weight, motifs: 1, step: SCALE_STEP }]);

/** The readings with one more; the oldest go first where there are too many. */
export const addWeighing = (earlier: readonly Weighing[], one: Weighing): Weighing[] =>
  [...earlier, one].slice(-MOST_WEIGHINGS);

/** Grams of one motif: the mean over everything that was weighed. */
export const meanOf = (weighings: readonly Omit<Weighing, 'step'>[]): number =>
  sum(weighings.map(({ weight }) => weight)) / sum(weighings.map(({ motifs }) => motifs));

/** What at least one reading tells of one motif, in g, and how surely. The steps are added to the working, named by `of`. */
export function readWeighings(
  weighings: readonly Weighing[],
  working: Working,
  of: (label: string) => string = (label) => label,
): Weighed {
  const readings = weighings.length;
  const motifs = sum(weighings.map((one) => one.motifs));
  const step = Math.sqrt(sum(weighings.map((one) => one.step ** 2)) / readings);
  const mean = working.do(
    MEAN_WEIGHT,
    { weight: sum(weighings.map(({ weight }) => weight)), motifs },
    of(MEAN_WEIGHT.label),
  );
  const spread = working.do(
    SPREAD_OF_ONE,
    {
      counts: SPREAD_COUNTS,
      usual: USUAL_SPREAD,
      mean,
      // A reading of several scatters less, and counts for as many.
      apart: Math.sqrt(sum(weighings.map((one) => one.motifs * (one.weight / one.motifs - mean) ** 2))),
      scale_error: Math.sqrt(sum(weighings.map((one) => one.step ** 2 / 12 / one.motifs))),
      readings,
    },
    of(SPREAD_OF_ONE.label),
  );
  const scaleError = working.do(SCALE_ERROR, { step, readings }, of(SCALE_ERROR.label));
  const error = working.do(MEAN_ERROR, { motifs, spread, scale_error: scaleError }, of(MEAN_ERROR.label));
  const band = working.do(WEIGHING_BAND, { limits: LIMITS_95, error, mean }, of(WEIGHING_BAND.label));
  return { motifs, readings, mean, spread, error, band };
}

/** Standard deviations beyond which a new reading does not look like the earlier ones. */
const UNLIKELY = 4;

/** Whether a reading is so far from the earlier ones that one of them looks like a slip. */
export function isUnlikeEarlier(one: Weighing, earlier: readonly Weighing[]): boolean {
  if (earlier.length === 0) return false;
  const { mean, error, spread } = readWeighings(earlier, new Working());
  const off = Math.hypot(error, spread / Math.sqrt(one.motifs), one.step / Math.sqrt(12) / one.motifs);
  return Math.abs(one.weight / one.motifs - mean) > UNLIKELY * off;
}
