/** What one motif takes of each colour: worked row by row, its tails, and what is carried up its side. */
import {
  STITCHES_A_BLOCK,
  TAIL,
  USUAL_HOOK,
  USUAL_YARN,
  WIDTH_OF_LOOP,
} from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { WRAPS_BY_LENGTH } from '../../standards/yarn-thickness.ts';
import { blockedSide, ROW_HEIGHT, STITCH_WIDTH } from '../size/blocking.ts';
import { carriedStrand, lengths } from '../stripes/carrying.ts';
import { spans, type ColourRun } from '../stripes/colour-runs.ts';
import { Problem } from '../base/problem.ts';
import type { Ball, Gauge } from '../base/quantity.ts';
import { rowPlan, total, type RowPlan, type Shape } from '../rows/index.ts';
import { USUAL_PITCH } from '../edges/seams.ts';
import { cm } from '../base/reader.ts';
import { formula, type Working } from '../base/working.ts';
import { stitchYarn, thickness, YARN_OF_STITCHES } from './yardage.ts';

/** A motif as it is saved: lengths in cm, the hook in mm, the weight of one finished motif in g. */
export interface MotifSpec {
  readonly name: string;
  readonly shape: Shape;
  readonly size: number;
  readonly otherSize?: number;
  readonly stitch: Stitch;
  readonly hook?: number;
  readonly gauge?: Gauge;
  readonly runs: readonly ColourRun[];
  readonly weight?: number;
  readonly side?: number;
}

/** A colour as it is bought: the ball, its price, how many are at hand. */
export interface Yarn {
  readonly colour: string;
  readonly ball?: Ball;
  readonly price?: number;
  readonly balls?: number;
}

export const WEIGHT_A_STITCH_LENGTH = formula({
  label: 'Weight, for every metre in a stitch',
  formula: 'stitches * ball_weight / ball_length',
  given: { stitches: '', ball_weight: 'g', ball_length: 'm' },
  unit: 'g/m',
  source: 'derived: stitches times the weight of a metre of their yarn',
});
export const WEIGHED_STITCH = formula({
  label: 'Yarn in a stitch, from the weight of a finished motif',
  formula: 'weight / weight_of_all',
  given: { weight: 'g', weight_of_all: 'g/m' },
  unit: 'm',
  source: 'common practice: a finished motif weighed, shared evenly over its stitches; its tails are in it',
});
export const WORKED = formula({
  label: 'Yarn worked',
  formula: 'stitches * stitch_yarn',
  given: { stitches: '', stitch_yarn: 'm' },
  unit: 'm',
  source: 'derived: stitches of the rows in this colour, times the yarn in one',
});
export const TAILS = formula({
  label: 'Tails, two to every length of yarn',
  formula: '2 * lengths * tail',
  given: { lengths: '', tail: 'm' },
  unit: 'm',
  source: 'published: 4–6 in at each end (creativecrochetcorner.com, "How to end off")',
});
export const ROUND_SIDE = formula({
  label: 'Side of the square',
  formula: '2 * rounds * row_height',
  given: { rounds: '', row_height: 'cm' },
  unit: 'cm',
  source: 'derived: every round adds its height on both sides of the middle',
});
export const PIECE_ALONG = formula({
  label: 'Width of the piece',
  formula: 'number_of * each',
  given: { number_of: '', each: 'cm' },
  unit: 'cm',
  source: 'derived: stitches times their width, or rows times their height',
});
export const TALLER = formula({
  label: 'Height of a row',
  formula: 'stitch_width * height_to_width',
  given: { stitch_width: 'cm', height_to_width: '' },
  unit: 'cm',
  source:
    'derived: one ⟦sc⟧ about as tall as wide; others in the published proportions of their row ends (1, 2 and 3 ⟦sc⟧ per ⟦sc⟧, ⟦dc⟧ and ⟦tr⟧ row)',
});
export const IN_CM = formula({
  label: 'The same in centimetres',
  formula: 'pitch / mm_per_cm',
  given: { pitch: 'mm', mm_per_cm: 'mm/cm' },
  unit: 'cm',
  source: 'derived',
});
export const OTHER_STITCH = formula({
  label: 'Yarn in a stitch of another height',
  formula: 'stitch_yarn * ratio / motif_ratio',
  given: { stitch_yarn: 'm', ratio: '', motif_ratio: '' },
  unit: 'm',
  source: 'published ratios of the stitches, one maker’s measurement (windchilde.com/bluedepth)',
});

/** Names of colours are the same whatever their capitals. */
export const sameColour = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

/** The yarn of a colour, where the maker said something of it. */
export const yarnOf = <Y extends Yarn>(yarns: readonly Y[], colour: string): Y | undefined =>
  yarns.find((yarn) => sameColour(yarn.colour, colour));

/** Wraps per inch of a yarn from its ball band; the usual yarn's where there is none. */
export function wpiOf(ball: Ball | undefined): number {
  if (!ball) return USUAL_YARN.thickness.wpi;
  const yardsPerPound = (ball.m / M_PER_YARD / ball.g) * G_PER_POUND;
  return WRAPS_BY_LENGTH.find((row) => yardsPerPound >= row.yardsPerPound)?.wpi ?? USUAL_YARN.thickness.wpi;
}

export interface ColourPart {
  readonly colour: string;
  readonly stitches: number;
  /** Metres worked, hanging as tails, and carried up the side, in one motif. */
  readonly worked: number;
  readonly tails: number;
  readonly carried: number;
}

export interface MotifYarn {
  readonly name: string;
  readonly plan: RowPlan;
  /** A weighed motif holds its tails and carried strands already. */
  readonly how: 'weighed' | 'rough';
  readonly stitches: number;
  readonly colours: readonly ColourPart[];
  /** Ends to weave in. */
  readonly ends: number;
  /** Metres in a stitch of the motif's own, the thickness of its first colour. */
  readonly perStitch: number;
  readonly assumptions: readonly string[];
}

/** Stitches of a plan; a corner-to-corner block is reckoned as its tall stitches and the chain that stands as one. */
const stitchesIn = (plan: RowPlan, from: number, to: number) =>
  total(plan, to, from) * (plan.counted === 'blocks' ? STITCHES_A_BLOCK : 1);

/** The rows of a saved motif. */
export const planOf = (motif: MotifSpec): RowPlan =>
  rowPlan(motif.shape, { size: motif.size, otherSize: motif.otherSize, stitch: motif.stitch });

/** A motif of one unnamed colour is of the colour that bears its own name. */
export const runsOf = (motif: MotifSpec, plan: RowPlan = planOf(motif)): readonly ColourRun[] =>
  motif.runs.length > 0 ? motif.runs : [{ colour: motif.name, rows: plan.rows.length }];

/** Stitches by colour, row by row, in the order in which the colours first appear. */
export function stitchesByColour(plan: RowPlan, runs: readonly ColourRun[]): Map<string, number> {
  const by = new Map<string, number>();
  for (const { colour, from, to } of spans(runs))
    by.set(colour, (by.get(colour) ?? 0) + stitchesIn(plan, from, Math.min(to, plan.rows.length)));
  return by;
}

/** Width of a stitch in cm: from the gauge, or from hook and yarn where there is none. */
export function stitchWidth(motif: MotifSpec, wpi: number, working: Working): number {
  if (motif.gauge)
    return working.do(STITCH_WIDTH, { over: motif.gauge.over, stitches: motif.gauge.stitches });
  const pitch = working.do(
    USUAL_PITCH,
    {
      width_of_loop: WIDTH_OF_LOOP,
      hook: motif.hook ?? USUAL_HOOK.mm,
      thickness: thickness(working, wpi),
    },
    'Width of a stitch',
  );
  return working.do(IN_CM, { pitch, mm_per_cm: 10 });
}

/** Height of a row in cm: from the gauge, or from the stitch's width and how tall it is. */
export function rowHeight(motif: MotifSpec, width: number, working: Working): number {
  if (motif.gauge?.rows !== undefined)
    return working.do(ROW_HEIGHT, { over: motif.gauge.over, rows: motif.gauge.rows });
  return working.do(TALLER, {
    stitch_width: width,
    height_to_width: STITCH_FACTS[motif.stitch].height,
  });
}

/**
 * What one motif takes of each colour. Weighed where its weight and the length of a ball are known, otherwise the rough
 * estimate from hook and yarn. A colour without a ball of its own is taken to be like the first that has one.
 */
export function motifYarn(motif: MotifSpec, yarns: readonly Yarn[], working: Working): MotifYarn {
  const plan = planOf(motif);
  const runs = runsOf(motif, plan);
  const by = stitchesByColour(plan, runs);
  const carrying = lengths(plan, runs);
  const assumptions: string[] = [];
  const of = (label: string) => `${motif.name}: ${label}`;
  const anyBall = [...by.keys()].map((colour) => yarnOf(yarns, colour)?.ball).find((ball) => ball);
  const fallback = anyBall ?? yarns.find(({ ball }) => ball)?.ball;
  const ballOf = (colour: string) => yarnOf(yarns, colour)?.ball ?? fallback;
  const stitches = [...by.values()].reduce((sum, n) => sum + n, 0);
  const shared = { name: motif.name, plan, stitches, ends: carrying.ends };

  if (motif.weight !== undefined && fallback) {
    let weightOfAll = 0;
    for (const [colour, n] of by) {
      const ball = ballOf(colour) ?? fallback;
      weightOfAll += working.do(
        WEIGHT_A_STITCH_LENGTH,
        { stitches: n, ball_weight: ball.g, ball_length: ball.m },
        of(`weight of its ${colour} stitches, for every metre in a stitch`),
      );
    }
    const perStitch = working.do(
      WEIGHED_STITCH,
      { weight: motif.weight, weight_of_all: weightOfAll },
      of('yarn in a stitch, from the weight of a finished motif'),
    );
    const colours = [...by].map(([colour, n]) => ({
      colour,
      stitches: n,
      worked: working.do(WORKED, { stitches: n, stitch_yarn: perStitch }, of(`${colour} in one`)),
      tails: 0,
      carried: 0,
    }));
    return { ...shared, how: 'weighed', perStitch, colours, assumptions };
  }

  if (motif.weight !== undefined)
    assumptions.push(
      `${motif.name} was weighed, but no ball’s length and weight are known: its yarn is the rough estimate.`,
    );
  const hook = motif.hook ?? USUAL_HOOK.mm;
  if (motif.hook === undefined)
    assumptions.push(`${motif.name}: ${USUAL_HOOK.assumed.replace(/^A/, 'a').replace(/\.$/, '')}.`);
  if (!fallback) assumptions.push(`${motif.name}: medium yarn, as no ball was given.`);
  const perStitchOf = new Map<number, number>();
  const stitchOf = (colour: string) => {
    const wpi = wpiOf(ballOf(colour));
    const known = perStitchOf.get(wpi);
    if (known !== undefined) return known;
    const found = working.do(
      YARN_OF_STITCHES,
      {
        stitches: 1,
        stitch_yarn: stitchYarn(working, plan.stitch, hook, thickness(working, wpi)),
        mm_per_m: 1000,
      },
      of('yarn in a stitch, rough'),
    );
    perStitchOf.set(wpi, found);
    return found;
  };
  const [first = ''] = by.keys();
  const height =
    carrying.carriedOver > 0
      ? rowHeight(motif, stitchWidth(motif, wpiOf(ballOf(first)), working), working)
      : 0;
  const colours = [...by].map(([colour, n]): ColourPart => {
    const part = carrying.byColour.get(colour) ?? { lengths: 1, carriedOver: 0 };
    return {
      colour,
      stitches: n,
      worked: working.do(
        WORKED,
        { stitches: n, stitch_yarn: stitchOf(colour) },
        of(`${colour} worked in one`),
      ),
      tails: working.do(
        TAILS,
        { lengths: part.lengths, tail: TAIL },
        of(`tails of ${colour} in one, two to every length`),
      ),
      carried: part.carriedOver > 0 ? carriedStrand(part.carriedOver, height, working) : 0,
    };
  });
  return { ...shared, how: 'rough', perStitch: stitchOf(first), colours, assumptions };
}

/** Two sides of a piece that differ by more than this many per cent do not make a square. */
const SQUARE_WITHIN = 3;

export interface Side {
  /** In cm. */
  readonly side: number;
  readonly how: 'measured' | 'reckoned';
}

/**
 * The side of a finished motif in cm: measured, or reckoned from its gauge (blocked square, where it is a diagonal one).
 * Throws a Problem where neither is known, or where it is no square.
 */
export function motifSide(motif: MotifSpec, working: Working): Side {
  const measured = { hint: `Measure a finished one: /motif weigh name:"${motif.name}" side:15cm.` };
  if (motif.shape === 'circle' || motif.shape === 'hexagon') {
    throw new Problem('unsorted', `${motif.name} is a ${motif.shape}: it does not lie in columns and rows.`, {
      option: 'kinds',
      hint: 'Choose square motifs: diagonal, blocks, clusters, solid-square, or a flat piece as high as wide.',
    });
  }
  if (motif.side !== undefined) return { side: motif.side, how: 'measured' };
  const { gauge } = motif;
  if (!gauge)
    throw new Problem('unsorted', `How large one ${motif.name} is, is not known.`, {
      option: 'kinds',
      ...measured,
    });
  if (motif.shape === 'blocks')
    throw new Problem(
      'unsorted',
      `How large one ${motif.name} is, its gauge does not tell: blocks lie slanting.`,
      {
        option: 'kinds',
        ...measured,
      },
    );
  if (gauge.rows === undefined)
    throw new Problem('unsorted', `The gauge of ${motif.name} has no rows, so its size is not known.`, {
      option: 'kinds',
      ...measured,
    });
  if (motif.shape === 'diagonal') return { side: blockedSide(gauge, motif.size, working), how: 'reckoned' };
  const height = working.do(ROW_HEIGHT, { over: gauge.over, rows: gauge.rows });
  if (motif.shape !== 'flat')
    return { side: working.do(ROUND_SIDE, { rounds: motif.size, row_height: height }), how: 'reckoned' };
  const width = working.do(STITCH_WIDTH, { over: gauge.over, stitches: gauge.stitches });
  const across = working.do(PIECE_ALONG, { number_of: motif.size, each: width }, 'Width of the piece');
  const down = working.do(
    PIECE_ALONG,
    { number_of: motif.otherSize ?? 1, each: height },
    'Height of the piece',
  );
  if (Math.abs(across / down - 1) * 100 > SQUARE_WITHIN)
    throw new Problem('unsorted', `${motif.name} is ${cm(across)} wide and ${cm(down)} high: no square.`, {
      option: 'kinds',
      hint: `About ${Math.max(1, Math.round(across / height))} rows would make it one.`,
    });
  return { side: across, how: 'reckoned' };
}

/** Metres in a stitch of another height, from a stitch whose yarn is known. */
export const otherStitch = (perStitch: number, from: Stitch, to: Stitch, working: Working): number =>
  from === to
    ? perStitch
    : working.do(OTHER_STITCH, {
        stitch_yarn: perStitch,
        ratio: STITCH_FACTS[to].yarn,
        motif_ratio: STITCH_FACTS[from].yarn,
      });
