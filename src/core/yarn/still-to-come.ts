/** What is still to come of a motif, alone or as often as a blanket has it: stitches, and yarn by colour. */
import { countByColour } from './motif.ts';
import { spans, type ColourRun } from '../stripes/colour-runs.ts';
import { total, type RowPlan } from '../rows/index.ts';
import { defined } from '../base/defined.ts';
import { formula, type Working } from '../base/working.ts';

export const STITCHES_TO_COME = formula({
  label: 'Still to be worked',
  formula: 'motifs_to_come * in_one - done_of_one',
  given: { motifs_to_come: '', in_one: '', done_of_one: '' },
  unit: '',
  source: 'derived: all that is not finished, less what is done of the motif on the hook',
});
export const WEIGHT_TO_COME = formula({
  label: 'Yarn still to come',
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
  spans(runs).map(({ colour, from, to }) => ({ colour, from, to, stitches: total(plan, to, from) }));

export interface ToCome {
  /** Stitches (or blocks) still to be worked. */
  readonly stitches: number;
  /** Grams still to come; unset where no motif was weighed. */
  readonly weight?: number;
  readonly colours: readonly {
    readonly colour: string;
    readonly stitches: number;
    readonly weight?: number;
  }[];
}

/**
 * What is still to come. `motifs` are the motifs not yet finished, the one on the hook among them; `row` is its last
 * finished row; `weight` in g is that of one finished motif.
 */
export function reckonToCome(
  asked: {
    plan: RowPlan;
    runs: readonly ColourRun[];
    motifs: number;
    row: number;
    weight?: number | undefined;
  },
  working: Working,
): ToCome {
  const { plan, runs, motifs, row, weight } = asked;
  const inOne = total(plan);
  const done = motifs === 0 ? 0 : total(plan, row);
  const stitches = working.do(STITCHES_TO_COME, {
    motifs_to_come: motifs,
    in_one: inOne,
    done_of_one: done,
  });
  const grams = (of: number, label?: string) =>
    weight === undefined
      ? undefined
      : working.do(WEIGHT_TO_COME, { weight, to_come: of, in_one: inOne }, label);
  const all = grams(stitches);
  const inAll = countByColour(plan, runs);
  const left = countByColour(plan, runs, row);
  const colours = [...inAll].map(([colour, each]) => {
    const of = motifs === 0 ? 0 : (motifs - 1) * each + (left.get(colour) ?? 0);
    const own = inAll.size > 1 ? grams(of, `Of that in ${colour}`) : all;
    return defined({ colour, stitches: of, weight: own });
  });
  return defined({ stitches, colours, weight: all });
}

/** How much of the motif on the hook is done, in per cent of its stitches. */
export const reckonPercentDone = (plan: RowPlan, row: number, working: Working): number =>
  working.do(PERCENT_DONE, { done: total(plan, row), in_one: total(plan) });

/** Other rows that have this count, the nearest first. */
export const findRowsWith = (plan: RowPlan, counted: number, near: number): number[] =>
  plan.rows
    .filter(({ row, count }) => count === counted && row !== near)
    .map(({ row }) => row)
    .sort((a, b) => Math.abs(a - near) - Math.abs(b - near));

/** What is left on the scale less what is still to come, in grams: negative where it will not do. */
export const reckonSpareWeight = (left: number, come: number, working: Working): number =>
  working.do(SPARE_WEIGHT, { left, to_come: come });
