/** What one motif takes of each colour: worked row by row, its tails, and what is carried up its side. */
import { TAIL, USUAL_HOOK } from '../../standards/consumption.ts';
import type { Ball } from '../base/quantity.ts';
import { formula, type Working } from '../base/working.ts';
import type { RowPlan } from '../rows/index.ts';
import { carriedStrand, lengths, type Carrying } from '../stripes/carrying.ts';
import { countStitchesByColour, planOf, runsOf, yarnOf, type MotifSpec, type Yarn } from './motif.ts';
import { reckonRowHeight, reckonStitchWidth } from './motif-size.ts';
import { reckonStitchMetres, wpiOf, YARN_WORKED } from './stitch-yarn.ts';

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
export const TAILS = formula({
  label: 'Tails, two to every length of yarn',
  formula: '2 * lengths * tail',
  given: { lengths: '', tail: 'm' },
  unit: 'm',
  source: 'published: 4–6 in at each end (creativecrochetcorner.com, "How to end off")',
});

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

/** A motif laid open: its rows, its lengths of yarn, and the ball of every colour. */
interface LaidOpen {
  readonly motif: MotifSpec;
  readonly plan: RowPlan;
  readonly stitches: ReadonlyMap<string, number>;
  readonly carrying: Carrying;
  /** A colour without a ball of its own is taken to be like the first that has one; unset where none has. */
  readonly ballOf: (colour: string) => Ball | undefined;
}

function layOpen(motif: MotifSpec, yarns: readonly Yarn[]): LaidOpen {
  const plan = planOf(motif);
  const runs = runsOf(motif, plan);
  const stitches = countStitchesByColour(plan, runs);
  const own = [...stitches.keys()].map((colour) => yarnOf(yarns, colour)?.ball).find((ball) => ball);
  const fallback = own ?? yarns.find(({ ball }) => ball)?.ball;
  return {
    motif,
    plan,
    stitches,
    carrying: lengths(plan, runs),
    ballOf: (colour) => yarnOf(yarns, colour)?.ball ?? fallback,
  };
}

/**
 * What one motif takes of each colour. Weighed where its weight and the length of a ball are known, otherwise the rough
 * estimate from hook and yarn.
 */
export function reckonMotifYarn(motif: MotifSpec, yarns: readonly Yarn[], working: Working): MotifYarn {
  const open = layOpen(motif, yarns);
  return {
    name: motif.name,
    plan: open.plan,
    stitches: [...open.stitches.values()].reduce((sum, stitches) => sum + stitches, 0),
    ends: open.carrying.ends,
    ...(shareWeight(open, working) ?? estimate(open, working)),
  };
}

type Reckoned = Pick<MotifYarn, 'how' | 'perStitch' | 'colours' | 'assumptions'>;

/** The weight of a finished motif shared evenly over its stitches; undefined where it, or every ball, is not known. */
function shareWeight({ motif, stitches, ballOf }: LaidOpen, working: Working): Reckoned | undefined {
  const of = (label: string) => `${motif.name}: ${label}`;
  if (motif.weight === undefined) return undefined;
  let weightOfAll = 0;
  for (const [colour, many] of stitches) {
    const ball = ballOf(colour);
    if (!ball) return undefined;
    weightOfAll += working.do(
      WEIGHT_A_STITCH_LENGTH,
      { stitches: many, ball_weight: ball.g, ball_length: ball.m },
      of(`weight of its ${colour} stitches, for every metre in a stitch`),
    );
  }
  const perStitch = working.do(
    WEIGHED_STITCH,
    { weight: motif.weight, weight_of_all: weightOfAll },
    of('yarn in a stitch, from the weight of a finished motif'),
  );
  const colours = [...stitches].map(([colour, many]) => ({
    colour,
    stitches: many,
    worked: working.do(YARN_WORKED, { stitches: many, stitch_yarn: perStitch }, of(`${colour} in one`)),
    tails: 0,
    carried: 0,
  }));
  return { how: 'weighed', perStitch, colours, assumptions: [] };
}

/** The rough estimate: the yarn of a stitch by hook and yarn, tails and what is carried up the side counted one by one. */
function estimate({ motif, plan, stitches, carrying, ballOf }: LaidOpen, working: Working): Reckoned {
  const of = (label: string) => `${motif.name}: ${label}`;
  const [first = ''] = stitches.keys();
  const hook = motif.hook ?? USUAL_HOOK.mm;
  const perStitch = new Map<number, number>();
  const stitchYarnOf = (colour: string) => {
    const wpi = wpiOf(ballOf(colour));
    const metres =
      perStitch.get(wpi) ??
      reckonStitchMetres(working, {
        stitch: plan.stitch,
        hook,
        wpi,
        label: of('yarn in a stitch, rough'),
      });
    perStitch.set(wpi, metres);
    return metres;
  };
  const height =
    carrying.carriedOver > 0
      ? reckonRowHeight(motif, reckonStitchWidth(motif, wpiOf(ballOf(first)), working), working)
      : 0;
  const colours = [...stitches].map(([colour, many]): ColourPart => {
    const part = carrying.byColour.get(colour) ?? { lengths: 1, carriedOver: 0 };
    return {
      colour,
      stitches: many,
      worked: working.do(
        YARN_WORKED,
        { stitches: many, stitch_yarn: stitchYarnOf(colour) },
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
  return {
    how: 'rough',
    perStitch: stitchYarnOf(first),
    colours,
    assumptions: assumptionsOf(motif, ballOf(first) !== undefined),
  };
}

/** What the rough estimate takes for granted. */
function assumptionsOf({ name, weight, hook }: MotifSpec, ballKnown: boolean): string[] {
  return [
    ...(weight === undefined
      ? []
      : [`${name} was weighed, but no ball’s length and weight are known: its yarn is the rough estimate.`]),
    ...(hook === undefined ? [`${name}: ${USUAL_HOOK.assumed.replace(/^A/, 'a').replace(/\.$/, '')}.`] : []),
    ...(ballKnown ? [] : [`${name}: medium yarn, as no ball was given.`]),
  ];
}
