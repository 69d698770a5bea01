/** What one motif takes of each colour: worked row by row, its tails, and what is carried up its side. */
import { GAUGED_BAND, OTHER_STITCH_BAND, ROUGH_BAND, TAIL } from '../../standards/consumption.ts';
import type { Stitch } from '../../standards/stitches.ts';
import { keepDefined } from '../base/defined.ts';
import type { Ball } from '../base/quantity.ts';
import { g, mm, num, t } from '../base/reader.ts';
import { formula, type Working } from '../base/working.ts';
import type { RowPlan } from '../rows/index.ts';
import { reckonRowHeight, reckonStitchWidth, type Worked } from '../size/stitch-size.ts';
import { reckonCarriedStrand, cutLengths, type Carrying } from '../stripes/carrying.ts';
import {
  countBesideByColour,
  countStitchesByColour,
  planOf,
  runsOf,
  yarnOf,
  type MotifSpec,
  type Yarn,
} from './motif.ts';
import {
  reckonOtherStitch,
  reckonStitchMetres,
  YARN_WORKED,
  YARN_WORKED_WHOLE,
  type StitchYarn,
} from './stitch-yarn.ts';
import { findUsualHook, wpiOf } from './thickness.ts';
import { readWeighings, weighingsOf } from './weighings.ts';

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

export const TWIN_BAND = formula({
  label: 'Right to about, per cent either way, by a weighed one of another stitch',
  formula: 'sqrt(weighed^2 + other_stitch^2)',
  given: { weighed: '', other_stitch: '' },
  unit: '',
  source:
    'derived: what the weighing and what the ratio of the stitches leave open, added up by their squares',
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
  /** A weighed motif holds its tails and carried strands already; the others are estimated, from gauge or from hook and yarn. */
  readonly how: 'weighed' | 'as-weighed' | 'by-gauge' | 'rough';
  /** Per cent either way that its yarn is right to, 19 times in 20. */
  readonly band: number;
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
  /** A colour of which no ball is known is taken to be like another of the same motif's; unset where none of them is. */
  readonly ballOf: (colour: string) => Ball | undefined;
  /** The colours that are taken to be like another. */
  readonly alike: readonly string[];
}

/** The ball that a colour of a motif is reckoned with: its own, or that of another of the motif's colours. */
export const findBall = (motif: MotifSpec, yarns: readonly Yarn[], colour: string): Ball | undefined =>
  layOpen(motif, yarns).ballOf(colour);

function layOpen(motif: MotifSpec, yarns: readonly Yarn[]): LaidOpen {
  const plan = planOf(motif);
  const runs = runsOf(motif, plan);
  const stitches = countStitchesByColour(plan, runs);
  // Each colour is looked for once: a motif of many is asked for each of them again and again.
  const balls = new Map([...stitches.keys()].map((colour) => [colour, yarnOf(yarns, colour)?.ball]));
  const known = (colour: string) =>
    (balls.has(colour) ? balls.get(colour) : yarnOf(yarns, colour)?.ball) ?? motif.ball;
  const like = [...stitches.keys()].map(known).find((ball) => ball);
  return {
    motif,
    plan,
    stitches,
    carrying: cutLengths(plan, runs),
    ballOf: (colour) => known(colour) ?? like,
    alike: like ? [...stitches.keys()].filter((colour) => !known(colour)) : [],
  };
}

/**
 * What one motif takes of each colour. Weighed where its weight and a ball of its own yarn are known: the weight becomes
 * metres by no other ball. Otherwise as a weighed motif beside it of the same yarn and hook (`weighed`), or estimated, from its gauge where there is one, or from hook and yarn.
 */
export function reckonMotifYarn(
  motif: MotifSpec,
  yarns: readonly Yarn[],
  working: Working,
  weighed: readonly WeighedStitch[] = [],
): MotifYarn {
  const open = layOpen(motif, yarns);
  return {
    name: motif.name,
    plan: open.plan,
    stitches: [...open.stitches.values()].reduce((sum, stitches) => sum + stitches, 0),
    ends: open.carrying.ends,
    ...(shareWeight(open, working) ?? takeFromTwin(open, weighed, working) ?? estimate(open, working)),
  };
}

type Reckoned = Pick<MotifYarn, 'how' | 'band' | 'perStitch' | 'colours' | 'assumptions'>;

const alikeWords = ({ motif, alike }: LaidOpen): string[] =>
  alike.length === 0
    ? []
    : [
        `${motif.name}: ${alike.join(', ')} of the same yarn as its other colours, as no ball of it is known.`,
      ];

/** The weight of a finished motif shared evenly over its stitches; undefined where it, or every ball, is not known. */
function shareWeight(open: LaidOpen, working: Working): Reckoned | undefined {
  const { motif, stitches, ballOf } = open;
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
  const { band } = readWeighings(weighingsOf(motif), working, of);
  return { how: 'weighed', band, perStitch, colours, assumptions: alikeWords(open) };
}

/** What the weight of a finished motif tells of a stitch: metres in it, and how it was worked. */
export interface WeighedStitch {
  readonly name: string;
  readonly stitch: Stitch;
  readonly hook: number | undefined;
  readonly wpi: number;
  readonly perStitch: number;
  /** Per cent either way that it is right to. */
  readonly band: number;
}

/** What every weighed motif of a blanket tells of its stitch. The steps are added to the working. */
export function readWeighedStitches(
  motifs: readonly MotifSpec[],
  yarns: readonly Yarn[],
  working: Working,
): WeighedStitch[] {
  return motifs.flatMap((motif) => {
    const open = layOpen(motif, yarns);
    const reckoned = shareWeight(open, working);
    if (!reckoned) return [];
    const [first = ''] = open.stitches.keys();
    const { name, hook, stitch } = { ...motif, stitch: open.plan.stitch };
    const { perStitch, band } = reckoned;
    return [{ name, stitch, hook, wpi: wpiOf(open.ballOf(first)), perStitch, band }];
  });
}

/** The weighed stitch that tells of another: of the same thickness, and of the same hook where both are known; the same stitch first. */
export function findTwin(
  weighed: readonly WeighedStitch[],
  { stitch, hook, wpi }: { stitch: Stitch; hook: number | undefined; wpi: number },
): WeighedStitch | undefined {
  const alike = weighed.filter(
    (one) => one.wpi === wpi && (hook === undefined || one.hook === undefined || one.hook === hook),
  );
  return alike.find((one) => one.stitch === stitch) ?? alike[0];
}

/** The yarn of a motif that was not weighed, from one that was; undefined where none tells of it. */
function takeFromTwin(
  { motif, plan, stitches, ballOf }: LaidOpen,
  weighed: readonly WeighedStitch[],
  working: Working,
): Reckoned | undefined {
  const [first = ''] = stitches.keys();
  const twin = findTwin(weighed, { stitch: plan.stitch, hook: motif.hook, wpi: wpiOf(ballOf(first)) });
  if (!twin) return undefined;
  const perStitch = reckonOtherStitch(twin.perStitch, twin.stitch, plan.stitch, working);
  const colours = [...stitches].map(([colour, many]) => ({
    colour,
    stitches: many,
    worked: working.do(
      YARN_WORKED,
      { stitches: many, stitch_yarn: perStitch },
      `${motif.name}: ${colour} in one, as ${twin.name} was weighed`,
    ),
    tails: 0,
    carried: 0,
  }));
  return {
    how: 'as-weighed',
    band:
      twin.stitch === plan.stitch
        ? twin.band
        : working.do(
            TWIN_BAND,
            { weighed: twin.band, other_stitch: OTHER_STITCH_BAND },
            `${motif.name}: right to about, per cent either way`,
          ),
    perStitch,
    colours,
    assumptions: [
      twin.stitch === plan.stitch
        ? `${motif.name} takes as much yarn in a stitch as ${twin.name}, which was weighed.`
        : `${motif.name} is reckoned from ${twin.name}, which was weighed: a stitch of ${t(plan.stitch)} takes ${num(perStitch / twin.perStitch, 1)} times the yarn of ${t(twin.stitch)}.`,
    ],
  };
}

/** The estimate: the yarn of a stitch by its size, or by hook and yarn; tails and what is carried up the side counted one by one. */
function estimate(open: LaidOpen, working: Working): Reckoned {
  const { motif, plan, stitches, carrying, ballOf } = open;
  const of = (label: string) => `${motif.name}: ${label}`;
  const [first = ''] = stitches.keys();
  const worked = workedAs(motif);
  const known = new Map<number, StitchYarn>();
  const yarnIn = (colour: string) => {
    const wpi = wpiOf(ballOf(colour));
    const yarn =
      known.get(wpi) ??
      reckonStitchMetres(working, { ...worked, wpi, label: of('yarn in a stitch, estimated') });
    known.set(wpi, yarn);
    return yarn;
  };
  const height =
    carrying.carriedOver > 0
      ? reckonRowHeight(worked, reckonStitchWidth(worked, wpiOf(ballOf(first)), working), working)
      : 0;
  const beside = countBesideByColour(plan, runsOf(motif, plan));
  const colours = [...stitches].map(([colour, many]): ColourPart => {
    const part = carrying.byColour.get(colour) ?? { lengths: 1, carriedOver: 0 };
    const counted = { stitches: many, ...(beside.get(colour) ?? { chains: 0, together: 0 }) };
    return {
      colour,
      stitches: many,
      worked: reckonWorked(counted, yarnIn(colour), working, of(`${colour} worked in one`)),
      tails: working.do(
        TAILS,
        { lengths: part.lengths, tail: TAIL },
        of(`tails of ${colour} in one, two to every length`),
      ),
      carried: part.carriedOver > 0 ? reckonCarriedStrand(part.carriedOver, height, working) : 0,
    };
  });
  const { bySize, stitch } = yarnIn(first);
  return {
    how: bySize ? 'by-gauge' : 'rough',
    band: bySize ? GAUGED_BAND : ROUGH_BAND,
    perStitch: stitch,
    colours,
    assumptions: [...assumptionsOf(open, bySize), ...alikeWords(open)],
  };
}

/** The yarn (m) in so many stitches; chains and second uprights count where the gauge tells what is in them. */
const reckonWorked = (
  { stitches, chains, together }: { stitches: number; chains: number; together: number },
  { stitch, chain, upright, bySize }: StitchYarn,
  working: Working,
  label: string,
): number =>
  bySize
    ? working.do(
        YARN_WORKED_WHOLE,
        { stitches, stitch_yarn: stitch, chains, chain_yarn: chain, together, upright },
        label,
      )
    : working.do(YARN_WORKED, { stitches, stitch_yarn: stitch }, label);

/** Blocks lie slanting, so that a gauge does not tell their stitches' size. */
const workedAs = ({ shape, stitch, hook, gauge }: MotifSpec): Worked => ({
  stitch,
  hook,
  gauge: shape === 'blocks' ? undefined : gauge,
});

/** What the estimate takes for granted. */
/** How surely the yarn of a motif is known that was neither weighed nor is like one that was. */
export const sayEstimated = (name: string): string =>
  `${name}: its yarn is estimated from its gauge, right to about ${num(GAUGED_BAND)} %.`;

function assumptionsOf({ motif, stitches, ballOf }: LaidOpen, bySize: boolean): string[] {
  const { name, weight, hook } = motif;
  const [first = ''] = stitches.keys();
  const ball = ballOf(first);
  const weighed =
    weight === undefined
      ? undefined
      : `${name} was weighed, but no ball of its own yarn is known: its metres are the estimate, its weight is ${g(weight)} each.`;
  if (bySize) return keepDefined([weighed, sayEstimated(name)]);
  const usual = hook === undefined ? findUsualHook({ wpi: wpiOf(ball) }).mm : undefined;
  return keepDefined([
    weighed,
    usual === undefined
      ? undefined
      : `${name}: a hook of ${mm(usual)}, usual for its yarn, as none was given.`,
    ball ? undefined : `${name}: medium yarn, as no ball was given.`,
  ]);
}
