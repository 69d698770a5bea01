/** How much yarn a piece takes: weighed, estimated from its stitches, left over, or swapped for another yarn. */
import { ROUGH_BAND, SC_LOOPS, STITCHES_A_BLOCK, TAIL } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { CM_PER_INCH, M_PER_KM } from '../../standards/units.ts';
import { YARN_WEIGHTS, type YarnWeight } from '../../standards/yarn-weights.ts';
import { Problem } from '../base/problem.ts';
import type { Ball, YarnThickness } from '../base/quantity.ts';
import { rowPlan, type PlanOptions, type RowPlan, type Shape } from '../rows/index.ts';
import { formula, Working } from '../base/working.ts';

export const YARN_OF_WEIGHT = formula({
  label: 'Yarn in that weight',
  formula: 'weight * ball_length / ball_weight',
  given: { weight: 'g', ball_length: 'm', ball_weight: 'g' },
  unit: 'm',
  source: 'derived: the ball band’s length to its weight',
});
export const YARN_WITH_RESERVE = formula({
  label: 'Yarn for all, with the reserve',
  formula: 'each * motifs * (1 + reserve / 100)',
  given: { each: 'm', motifs: '', reserve: '' },
  unit: 'm',
  source: 'common practice: 10 % in reserve',
});
/** Rounded before it is rounded up, so that the last digit of a machine's arithmetic never buys a ball. */
export const WHOLE_BALLS = formula({
  label: 'Whole balls',
  formula: 'ceil(round(yarn / ball_length, 6))',
  given: { yarn: 'm', ball_length: 'm' },
  unit: '',
  source: 'common practice: balls round up, never down',
});
export const YARN_THICKNESS = formula({
  label: 'Thickness of the yarn',
  formula: 'inch / wraps',
  given: { inch: 'mm', wraps: '' },
  unit: 'mm',
  source: 'derived: an inch of yarn wound side by side, shared among its wraps',
});
export const YARN_PER_STITCH = formula({
  label: 'Yarn in a stitch',
  formula: 'loops * ratio * pi * (hook + thickness)',
  given: { loops: '', ratio: '', hook: 'mm', thickness: 'mm' },
  unit: 'mm',
  source:
    'derived: loops drawn over the hook, about 3.2 a ⟦sc⟧, fitted to two published hand measurements; ratios of the ' +
    'stitches from one maker’s measurement (windchilde.com/bluedepth)',
});
export const STITCHES_OF_BLOCKS = formula({
  label: 'Stitches, a block reckoned as its tall stitches and the chain that stands as one',
  formula: 'blocks * stitches_a_block',
  given: { blocks: '', stitches_a_block: '' },
  unit: '',
  source: 'common practice: three tall stitches and a chain as high',
});
export const YARN_OF_STITCHES = formula({
  label: 'Yarn in one motif',
  formula: 'stitches * stitch_yarn / mm_per_m',
  given: { stitches: '', stitch_yarn: 'mm', mm_per_m: 'mm/m' },
  unit: 'm',
  source: 'derived: stitches times the yarn in one',
});
export const LOW_END = formula({
  label: 'The low end of the band',
  formula: 'each * (1 - band / 100)',
  given: { each: 'm', band: '' },
  unit: 'm',
  source: 'common practice: figures from few measurements may be a quarter out',
});
export const HIGH_END = formula({
  label: 'The high end of the band',
  formula: 'each * (1 + band / 100)',
  given: { each: 'm', band: '' },
  unit: 'm',
  source: 'common practice: figures from few measurements may be a quarter out',
});
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
export const YARN_OF_BALLS = formula({
  label: 'Yarn in the balls asked for',
  formula: 'balls * ball_length',
  given: { balls: '', ball_length: 'm' },
  unit: 'm',
  source: 'derived: substituting goes by length, never by weight (common practice)',
});
export const SPARE_OF_BALLS = formula({
  label: 'Left over',
  formula: 'new_balls * ball_length - yarn',
  given: { new_balls: '', ball_length: 'm', yarn: 'm' },
  unit: 'm',
  source: 'derived: what is bought less what is needed',
});
export const TEX = formula({
  label: 'Tex: grams in a kilometre, whatever units are shown elsewhere',
  formula: 'grams / metres * kilometre',
  given: { grams: '', metres: '', kilometre: '' },
  unit: '',
  source: 'published: ISO 1144, the tex system, grams per kilometre',
});
export const TEX_CHANGE = formula({
  label: 'Per cent by which the new yarn is heavier, metre for metre',
  formula: '100 * (new_tex / old_tex - 1)',
  given: { new_tex: '', old_tex: '' },
  unit: '',
  source: 'derived',
});

/**
 * A usual hook in mm for a yarn, and the name of its category: the one it was read from, or the one whose published wraps
 * per inch it is nearest to the middle of.
 */
export function usualHook({ wpi, category }: YarnThickness): { mm: number; name: string } {
  const off = ({ wpi: [from, to] }: YarnWeight) => Math.abs((from + to) / 2 - wpi);
  const found =
    YARN_WEIGHTS.find((yarn) => yarn.category === category) ??
    YARN_WEIGHTS.reduce((best, yarn) => (off(yarn) < off(best) ? yarn : best));
  return { mm: found.usualHook, name: found.name.toLowerCase() };
}

const MM_PER_M = 1000;

export interface Weighed {
  /** Metres in one motif, and in all with the reserve. */
  readonly each: number;
  readonly total: number;
  readonly balls: number;
  readonly working: Working;
}

/** Yarn (m) and whole balls from the weight (g) of one finished motif; `reserve` in per cent. */
export function weighed(asked: { motif: number; motifs: number; ball: Ball; reserve: number }): Weighed {
  const { motif, motifs, ball, reserve } = asked;
  const working = new Working();
  const each = working.do(
    YARN_OF_WEIGHT,
    { weight: motif, ball_length: ball.m, ball_weight: ball.g },
    'Yarn in one motif',
  );
  const all = working.do(YARN_WITH_RESERVE, { each, motifs, reserve });
  const balls = working.do(WHOLE_BALLS, { yarn: all, ball_length: ball.m });
  return { each, total: all, balls, working };
}

/** The shape's rows. Throws a Problem where a flat piece comes without its rows: one row of it is nobody's question about yarn. */
function planFor(shape: Shape, options: PlanOptions): RowPlan {
  if (shape === 'flat' && options.otherSize === undefined) {
    throw new Problem('unsorted', 'A flat piece needs its rows as well as its stitches.', {
      option: 'other_size',
      hint: 'Give the number of rows, like other_size:40.',
    });
  }
  return rowPlan(shape, options);
}

/** A yarn's thickness in mm from its wraps per inch. */
export const thickness = (working: Working, wpi: number) =>
  working.do(YARN_THICKNESS, { inch: CM_PER_INCH * 10, wraps: wpi });

/** The yarn in one stitch (mm) by the loops drawn over the hook (mm) with a yarn so thick (mm); right to about a quarter. */
export const stitchYarn = (working: Working, stitch: Stitch, hook: number, yarnThickness: number) =>
  working.do(YARN_PER_STITCH, {
    loops: SC_LOOPS,
    ratio: STITCH_FACTS[stitch].yarn,
    hook,
    thickness: yarnThickness,
  });

export interface Rough {
  readonly plan: RowPlan;
  readonly stitches: number;
  /** Metres in one motif, tails left out, and the ends of its band. */
  readonly each: number;
  readonly low: number;
  readonly high: number;
  /** Metres in all, with the reserve. */
  readonly total: number;
  /** Whole balls, and as many as the high end of the band would take; unset where no ball was given. */
  readonly balls?: number;
  readonly ballsHigh?: number;
  readonly working: Working;
}

/**
 * A rough estimate of yarn (m) from the stitches of a shape, the hook (mm) and the yarn's wraps per inch. Tails, chains, seams
 * and border are left out. Throws a Problem where the shape cannot be as asked.
 */
export function rough(asked: {
  shape: Shape;
  size: number;
  otherSize?: number | undefined;
  stitch?: Stitch | undefined;
  hook: number;
  wpi: number;
  motifs: number;
  ball?: Ball | undefined;
  reserve: number;
}): Rough {
  const { hook, wpi, motifs, ball, reserve } = asked;
  const plan = planFor(asked.shape, asked);
  const working = new Working();
  const inAll = plan.soFarFormula(plan.rows.length);
  const counted = working.do(inAll.formula, inAll.values, `All ${plan.counted} of one motif`);
  const stitches =
    plan.counted === 'blocks'
      ? working.do(STITCHES_OF_BLOCKS, { blocks: counted, stitches_a_block: STITCHES_A_BLOCK })
      : counted;
  const perStitch = stitchYarn(working, plan.stitch, hook, thickness(working, wpi));
  const each = working.do(YARN_OF_STITCHES, { stitches, stitch_yarn: perStitch, mm_per_m: MM_PER_M });
  const low = working.do(LOW_END, { each, band: ROUGH_BAND });
  const high = working.do(HIGH_END, { each, band: ROUGH_BAND });
  const all = working.do(YARN_WITH_RESERVE, { each, motifs, reserve });
  const found = { plan, stitches, each, low, high, total: all, working };
  if (!ball) return found;
  const balls = working.do(WHOLE_BALLS, { yarn: all, ball_length: ball.m });
  const most = working.do(
    YARN_WITH_RESERVE,
    { each: high, motifs, reserve },
    'Yarn for all at the high end, with the reserve',
  );
  const ballsHigh = working.do(
    WHOLE_BALLS,
    { yarn: most, ball_length: ball.m },
    'Whole balls at the high end',
  );
  return { ...found, balls, ballsHigh };
}

/** The last row whose stitches, from the row after `doneRow` on, are within reach; `doneRow` itself where none is. */
export function lastRowInReach(plan: RowPlan, doneRow: number, reach: number): number {
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
  /** Per cent of the yarn worked by the end of the turn row, where the shape turns. */
  readonly atTurn?: number;
  readonly working: Working;
}

/**
 * How far the yarn at hand (g) goes: the last row that can be finished with a tail of 15 cm left over, walking the rows after
 * `doneRow`. `each` is the weight (g) of one finished motif. Throws a Problem where the motif has no such row.
 */
export function left(asked: {
  left: number;
  ball: Ball;
  shape: Shape;
  size: number;
  otherSize?: number | undefined;
  stitch?: Stitch | undefined;
  each: number;
  doneRow: number;
}): Left {
  const { ball, doneRow } = asked;
  const plan = planFor(asked.shape, asked);
  const rows = plan.rows.length;
  if (doneRow > rows) {
    throw new Problem('unsorted', `This motif ends with row ${rows}; row ${doneRow} cannot be done.`, {
      option: 'done_row',
      hint: `Give the last finished row, from 0 (nothing yet) to ${rows}.`,
    });
  }
  const working = new Working();
  const inWeight = (weight: number, label: string) =>
    working.do(YARN_OF_WEIGHT, { weight, ball_length: ball.m, ball_weight: ball.g }, label);
  const yarnLeft = inWeight(asked.left, 'Yarn at hand');
  const motifYarn = inWeight(asked.each, 'Yarn in a finished motif');
  const upTo = (row: number, label: string) => {
    if (row === 0) return 0;
    const { formula: what, values } = plan.soFarFormula(row);
    return working.do(what, values, label);
  };
  const called = plan.worked === 'rounds' ? 'round' : 'row';
  const counted = plan.counted === 'blocks' ? 'Blocks' : 'Stitches';
  const all = upTo(rows, `All ${plan.counted} of the motif`);
  const share = working.do(
    SHARE_PER_STITCH,
    { motif_yarn: motifYarn, mm_per_m: MM_PER_M, motif_count: all },
    plan.counted === 'blocks' ? 'Yarn in a block' : YARN_PER_STITCH.label,
  );
  const reach = working.do(
    IN_REACH,
    { yarn_left: yarnLeft, tail: TAIL, mm_per_m: MM_PER_M, share },
    `${counted} within reach, the tail kept back`,
  );
  const before = upTo(doneRow, `${counted} done, to ${called} ${doneRow}`);
  const lastRow = lastRowInReach(plan, doneRow, reach);
  const after = upTo(lastRow, `${counted} to ${called} ${lastRow}`);
  if (lastRow < rows) {
    upTo(lastRow + 1, `${counted} to ${called} ${lastRow + 1}, which is out of reach`);
  }
  const spare = working.do(YARN_SPARE, {
    yarn_left: yarnLeft,
    done_after: after,
    done_before: before,
    share,
    mm_per_m: MM_PER_M,
  });
  const more =
    lastRow === rows ? working.do(MORE_MOTIFS, { spare, tail: TAIL, motif_yarn: motifYarn }) : undefined;
  const atTurn = plan.shape === 'diagonal' ? working.do(SHARE_AT_TURN, { size: plan.size }) : undefined;
  return {
    plan,
    yarnLeft,
    motifYarn,
    reach,
    lastRow,
    spare,
    ...(more === undefined ? {} : { more }),
    ...(atTurn === undefined ? {} : { atTurn }),
    working,
  };
}

export interface Swap {
  /** Metres that the pattern's balls hold. */
  readonly total: number;
  readonly balls: number;
  readonly spare: number;
  /** Grams of the pattern's balls, and of the new ones. */
  readonly weight: number;
  readonly newWeight: number;
  /** Grams per kilometre of each yarn, and the difference in per cent. */
  readonly tex: number;
  readonly newTex: number;
  readonly heavierPercent: number;
  readonly working: Working;
}

/** As many balls of another yarn as hold the length of the pattern's. */
export function swap(asked: { balls: number; ball: Ball; newBall: Ball }): Swap {
  const { ball, newBall } = asked;
  const working = new Working();
  const all = working.do(YARN_OF_BALLS, { balls: asked.balls, ball_length: ball.m });
  const balls = working.do(WHOLE_BALLS, { yarn: all, ball_length: newBall.m }, 'Whole balls of the new yarn');
  const spare = working.do(SPARE_OF_BALLS, { new_balls: balls, ball_length: newBall.m, yarn: all });
  const tex = (of: Ball, label: string) =>
    working.do(TEX, { grams: of.g, metres: of.m, kilometre: M_PER_KM }, label);
  const oldTex = tex(ball, 'Weight of a kilometre of the pattern’s yarn (tex)');
  const newTex = tex(newBall, 'Weight of a kilometre of the new yarn (tex)');
  const heavierPercent = working.do(TEX_CHANGE, { new_tex: newTex, old_tex: oldTex });
  return {
    total: all,
    balls,
    spare,
    weight: asked.balls * ball.g,
    newWeight: balls * newBall.g,
    tex: oldTex,
    newTex,
    heavierPercent,
    working,
  };
}
