/** How far the yarn that is left will go. */
import { TAIL } from '../../standards/consumption.ts';
import type { Stitch } from '../../standards/stitches.ts';
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import type { Ball, YarnAtHand } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';
import { planWhole, type RowPlan, type Shape } from '../rows/index.ts';
import { reckonLength, weighAtHand } from './balls.ts';
import { MM_PER_M, YARN_PER_STITCH } from './stitch-yarn.ts';

export const SHARE_PER_STITCH = formula({
  label: 'Yarn per unit counted',
  formula: 'motif_yarn * mm_per_m / motif_count',
  given: { motif_yarn: 'm', mm_per_m: 'mm/m', motif_count: '' },
  unit: 'mm',
  source: 'derived: a finished motif’s yarn shared evenly over its stitches',
});
export const IN_REACH = formula({
  label: 'Within reach, the tail kept back',
  formula: '(yarn_left - tail) * mm_per_m / share',
  given: { yarn_left: 'm', tail: 'm', mm_per_m: 'mm/m', share: 'mm' },
  unit: '',
  source: 'derived; a tail of 15 cm (published: 4–6 in, creativecrochetcorner.com, "How to end off")',
});
export const YARN_SPARE = formula({
  label: 'Left over after that row, the tail included',
  formula: 'yarn_left - (done_after - done_before) * share / mm_per_m',
  given: { yarn_left: 'm', done_after: '', done_before: '', share: 'mm', mm_per_m: 'mm/m' },
  unit: 'm',
  source: 'derived: what is there less what those rows take',
});
export const MORE_MOTIFS = formula({
  label: 'Further motifs in the rest, each with its own tail',
  formula: 'max(0, floor(round((spare - tail) / (motif_yarn + tail), 6)))',
  given: { spare: 'm', tail: 'm', motif_yarn: 'm' },
  unit: '',
  source: 'derived: whole motifs only',
});
export const SHARE_AT_TURN = formula({
  label: 'Share of the motif’s yarn worked by the end of the turn row',
  formula: '100 * (size^2 + 2 * size) / (2 * size^2 + 2 * size)',
  given: { size: '' },
  unit: '',
  source: 'derived: stitches of the rising rows over all stitches',
});

const CM_PER_M = 100;

/** The last row whose stitches, from the row after `doneRow` on, are within reach; `doneRow` itself where none is. */
export function findLastRowInReach(plan: RowPlan, doneRow: number, reach: number): number {
  let last = doneRow;
  let taken = 0;
  // What comes out even on paper is within reach, whatever the last digit of the machine says.
  const enough = reach + 1e-9 * Math.max(1, Math.abs(reach));
  for (const { row, count } of plan.rows.slice(doneRow)) {
    taken += count;
    if (taken > enough) break;
    last = row;
  }
  return last;
}

export interface Left {
  readonly plan: RowPlan;
  /** Metres at hand, and in one finished motif. */
  readonly yarnLeft: number;
  readonly motifYarn: number;
  /** Stitches (or blocks) that the yarn reaches for, the tail kept back. */
  readonly reach: number;
  readonly lastRow: number;
  /** Metres left after that row, the tail included. */
  readonly spare: number;
  /** Further whole motifs from the rest; unset while this one cannot be finished. */
  readonly more?: number;
  /** Kept back for the tail, in cm. */
  readonly tail: number;
  /** Per cent of the yarn worked by the end of the turn row, where the shape turns. */
  readonly atTurn?: number;
  readonly working: Working;
}

/**
 * How far the yarn at hand (g, or balls) goes: the last row that can be finished with a tail of 15 cm left over, walking the rows after
 * `doneRow`. `each` is the weight (g) of one finished motif.
 *
 * Throws Problem: no-such-row, rows-missing, one-measure-only.
 *
 * @example
 * reckonLeft({ left: 5, ball: { m: 170, g: 100 }, shape: 'diagonal', size: 12, each: 12, doneRow: 6 }).lastRow // → 12
 */
export function reckonLeft(asked: {
  left: YarnAtHand;
  ball: Ball;
  shape: Shape;
  size: number;
  otherSize?: number | undefined;
  stitch?: Stitch | undefined;
  each: number;
  doneRow: number;
}): Left {
  const { ball, doneRow } = asked;
  const plan = planWhole(asked.shape, asked);
  const rows = plan.rows.length;
  if (doneRow > rows) {
    throw new Problem(
      'no-such-row',
      `This motif ends with ${plan.called} ${rows}; ${plan.called} ${doneRow} cannot be done.`,
      {
        option: 'done_row',
        hint: `Give the last finished ${plan.called}, from 0 (nothing yet) to ${rows}.`,
        facts: { row: doneRow, rows },
      },
    );
  }
  const working = new Working();
  const yarnLeft = reckonLength(weighAtHand(asked.left, ball, working), ball, working, 'Yarn at hand');
  const motifYarn = reckonLength(asked.each, ball, working, 'Yarn in a finished motif');
  const walked = walkRows(plan, doneRow, { yarnLeft, motifYarn }, working);
  const { lastRow, spare } = walked;
  return defined({
    plan,
    yarnLeft,
    motifYarn,
    ...walked,
    tail: TAIL * CM_PER_M,
    more:
      lastRow === rows ? working.do(MORE_MOTIFS, { spare, tail: TAIL, motif_yarn: motifYarn }) : undefined,
    atTurn: plan.shape === 'diagonal' ? working.do(SHARE_AT_TURN, { size: plan.size }) : undefined,
    working,
  });
}

/** From the rows that are done to the last that the yarn reaches, each count of stitches (or blocks) a step of the working. */
function walkRows(
  plan: RowPlan,
  doneRow: number,
  { yarnLeft, motifYarn }: Pick<Left, 'yarnLeft' | 'motifYarn'>,
  working: Working,
): Pick<Left, 'reach' | 'lastRow' | 'spare'> {
  const { called } = plan;
  const rows = plan.rows.length;
  const counted = plan.counted === 'blocks' ? 'Blocks' : 'Stitches';
  const upTo = (row: number, label: string) => {
    if (row === 0) return 0;
    const { formula: soFar, values } = plan.soFarFormula(row);
    return working.do(soFar, values, label);
  };
  const share = working.do(
    SHARE_PER_STITCH,
    {
      motif_yarn: motifYarn,
      mm_per_m: MM_PER_M,
      motif_count: upTo(rows, `All ${plan.counted} of the motif`),
    },
    plan.counted === 'blocks' ? 'Yarn in a block' : YARN_PER_STITCH.label,
  );
  const reach = working.do(
    IN_REACH,
    { yarn_left: yarnLeft, tail: TAIL, mm_per_m: MM_PER_M, share },
    `${counted} within reach, the tail kept back`,
  );
  const before = upTo(doneRow, `${counted} done, to ${called} ${doneRow}`);
  const lastRow = findLastRowInReach(plan, doneRow, reach);
  const after = upTo(lastRow, `${counted} to ${called} ${lastRow}`);
  if (lastRow < rows) upTo(lastRow + 1, `${counted} to ${called} ${lastRow + 1}, which is out of reach`);
  const spare = working.do(YARN_SPARE, {
    yarn_left: yarnLeft,
    done_after: after,
    done_before: before,
    share,
    mm_per_m: MM_PER_M,
  });
  return { reach, lastRow, spare };
}
