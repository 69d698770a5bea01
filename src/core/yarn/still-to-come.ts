/** What is still to come of a motif, alone or as often as a blanket has it: stitches, and yarn by colour. */
import { defined, keepDefined } from '../base/defined.ts';
import type { Ball } from '../base/quantity.ts';
import { sum } from '../base/sum.ts';
import { formula, type Working } from '../base/working.ts';
import { sumCounts, type RowPlan } from '../rows/index.ts';
import { listSpans, type ColourRun } from '../stripes/colour-runs.ts';
import { WEIGHT_OF_YARN } from './balls.ts';
import { countByColour, planOf, runsOf, type MotifSpec, type Yarn } from './motif.ts';
import { findBall, readWeighedStitches, reckonMotifYarn, type MotifYarn } from './motif-yarn.ts';
import { readWeighings, weighingsOf } from './weighings.ts';

export const STITCHES_TO_COME = formula({
  label: 'Still to be worked',
  formula: 'motifs_to_come * in_one - done_of_one',
  given: { motifs_to_come: '', in_one: '', done_of_one: '' },
  unit: '',
  source: 'derived: all that is not finished, less what is done of the motif on the hook',
});
export const YARN_TO_COME = formula({
  label: 'Yarn of a colour still to come',
  formula: 'each * to_come / in_one',
  given: { each: 'm', to_come: '', in_one: '' },
  unit: 'm',
  source: 'derived: what one motif takes of the colour, shared evenly over what is worked in it',
});
export const WEIGHT_TO_COME = formula({
  label: 'Weight of the yarn still to come',
  formula: 'weight * to_come / in_one',
  given: { weight: 'g', to_come: '', in_one: '' },
  unit: 'g',
  source: 'common practice: the weight of a finished motif, shared evenly over its stitches',
});
export const PERCENT_DONE = formula({
  label: 'Done of the motif on the hook (per cent)',
  formula: '100 * done / in_one',
  given: { done: '', in_one: '' },
  unit: '',
  source: 'derived: by stitches, as rows are not of one length',
});
export const SPARE_WEIGHT = formula({
  label: 'Left over (+) or missing (−)',
  formula: 'left - to_come',
  given: { left: 'g', to_come: 'g' },
  unit: 'g',
  source: 'derived: what is on the scale less what is still to come',
});

export interface Stripe {
  readonly colour: string;
  readonly from: number;
  readonly to: number;
  /** In the plan's unit: stitches, or blocks. */
  readonly stitches: number;
}

/** The stripes with what each has of stitches. */
export const listStripes = (plan: RowPlan, runs: readonly ColourRun[]): Stripe[] =>
  listSpans(runs).map(({ colour, from, to }) => ({ colour, from, to, stitches: sumCounts(plan, to, from) }));

/** What is still to come of a colour: in the plan's unit, in metres, and in grams where its ball or a weighed motif tells them. */
export interface ColourToCome {
  readonly colour: string;
  readonly stitches: number;
  readonly metres: number;
  readonly weight?: number;
}

export interface ToCome {
  /** Stitches (or blocks) still to be worked. */
  readonly stitches: number;
  /** How its yarn is known: weighed, as another that was, or estimated. */
  readonly how: MotifYarn['how'];
  /** Per cent either way that its metres are right to; its grams, where it was weighed without a ball of its own yarn. */
  readonly band: number;
  readonly weightBand: number;
  /** Metres still to come, and grams; those are unset where neither a ball of every colour nor a weighed motif tells them. */
  readonly metres: number;
  readonly weight?: number;
  readonly colours: readonly ColourToCome[];
  readonly assumptions: readonly string[];
}

/**
 * What is still to come, by the same yarn of each colour that a whole blanket is reckoned with. `motifs` are the motifs not
 * yet finished, the one on the hook among them; `row` is its last finished row; `beside` are the kinds of its blanket, of
 * which a weighed one tells of the others. A motif that was weighed without a ball of its own yarn shares its grams evenly
 * over its stitches, its metres being the estimate.
 */
export function reckonToCome(
  asked: {
    motif: MotifSpec;
    beside?: readonly MotifSpec[] | undefined;
    yarns: readonly Yarn[];
    motifs: number;
    row: number;
  },
  working: Working,
): ToCome {
  const { motif, beside = [], yarns, motifs, row } = asked;
  const plan = planOf(motif);
  const stitches = working.do(STITCHES_TO_COME, {
    motifs_to_come: motifs,
    in_one: sumCounts(plan),
    done_of_one: motifs === 0 ? 0 : sumCounts(plan, row),
  });
  const yarn = reckonMotifYarn(motif, yarns, working, readWeighedStitches(beside, yarns, working));
  const lengths = reckonLengths(asked, plan, yarn, working);
  const weighedAlone = yarn.how === 'weighed' ? undefined : motif.weight;
  const colours = lengths.map((length) => {
    const label = `Weight of the ${length.colour} to come`;
    const weight =
      weighedAlone === undefined
        ? reckonWeight(findBall(motif, yarns, length.colour), length.metres, working, label)
        : working.do(
            WEIGHT_TO_COME,
            { weight: weighedAlone, to_come: length.stitches, in_one: sumCounts(plan) },
            label,
          );
    return defined({ ...length, weight });
  });
  const weights = keepDefined(colours.map(({ weight }) => weight));
  return defined({
    stitches,
    how: yarn.how,
    band: yarn.band,
    weightBand:
      weighedAlone === undefined
        ? yarn.band
        : readWeighings(weighingsOf(motif), working, (label) => `${motif.name}: ${label}`).band,
    metres: sum(colours.map(({ metres }) => metres)),
    weight: weights.length === colours.length ? sum(weights) : undefined,
    colours,
    assumptions: yarn.assumptions,
  });
}

/** What is still to come of every colour: of the motif on the hook from the row after `row` on, of the others the whole. */
function reckonLengths(
  { motif, motifs, row }: { motif: MotifSpec; motifs: number; row: number },
  plan: RowPlan,
  yarn: MotifYarn,
  working: Working,
): Omit<ColourToCome, 'weight'>[] {
  const runs = runsOf(motif, plan);
  const left = countByColour(plan, runs, row);
  return [...countByColour(plan, runs)].map(([colour, inOne]) => {
    const stitches = motifs === 0 ? 0 : (motifs - 1) * inOne + (left.get(colour) ?? 0);
    const part = yarn.colours.find((one) => one.colour === colour);
    const each = part ? part.worked + part.tails + part.carried : 0;
    const metres = working.do(
      YARN_TO_COME,
      { each, to_come: stitches, in_one: inOne },
      `${motif.name}: ${colour} still to come`,
    );
    return { colour, stitches, metres };
  });
}

/** The weight (g) of a length (m) by its ball; undefined where none is known. */
const reckonWeight = (ball: Ball | undefined, metres: number, working: Working, label: string) =>
  ball && working.do(WEIGHT_OF_YARN, { yarn: metres, ball_weight: ball.g, ball_length: ball.m }, label);

/** How much of the motif on the hook is done, in per cent of its stitches. */
export const reckonPercentDone = (plan: RowPlan, row: number, working: Working): number =>
  working.do(PERCENT_DONE, { done: sumCounts(plan, row), in_one: sumCounts(plan) });

/** Other rows that have this count, the nearest first. */
export const findRowsWith = (plan: RowPlan, counted: number, near: number): number[] =>
  plan.rows
    .filter(({ row, count }) => count === counted && row !== near)
    .map(({ row }) => row)
    .sort((a, b) => Math.abs(a - near) - Math.abs(b - near));

/** Whether what is left over or missing is less than the weight to come may be off by `band` per cent. */
export const isTooClose = (spare: number, come: number, band: number): boolean =>
  Math.abs(spare) < (come * band) / 100;

/** What is left on the scale less what is still to come, in grams: negative where it will not do. */
export const reckonSpareWeight = (left: number, come: number, working: Working): number =>
  working.do(SPARE_WEIGHT, { left, to_come: come });
