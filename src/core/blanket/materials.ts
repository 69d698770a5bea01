/**
 * What a whole blanket takes, colour by colour: motifs row by row, tails, carried strands, seams, every round of its border,
 * a reserve, and then whole balls.
 */
import { ROUGH_BAND, TAIL, USUAL_HOOK } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { borderRounds, borderSpacing } from '../edges/border.ts';
import {
  motifSide,
  motifYarn,
  otherStitch,
  rowHeight,
  sameColour,
  stitchWidth,
  TAILS,
  TALLER,
  wpiOf,
  yarnOf,
  type MotifSpec,
  type MotifYarn,
  type Yarn,
} from '../yarn/motif-yarn.ts';
import { hoursFor } from '../yarn/pace.ts';
import { BLANKET_LENGTH } from '../size/resize.ts';
import { SEAM_LENGTH, SEAM_TAILS, SEAM_YARN, seamRatio, SEAMS, type SeamMethod } from '../edges/seams.ts';
import { formula, Working } from '../base/working.ts';
import { thickness, stitchYarn, WHOLE_BALLS, YARN_OF_STITCHES } from '../yarn/yardage.ts';

/** A blanket without its layout: what its pieces are, and how it is put together. */
export interface BlanketSpec {
  readonly kinds: readonly MotifSpec[];
  readonly joining: { readonly method: SeamMethod; readonly colour?: string };
  readonly border: {
    readonly rounds: readonly { readonly stitch: Stitch; readonly colour?: string }[];
    readonly corner: number;
  };
  readonly yarns: readonly Yarn[];
  /** Per cent. */
  readonly reserve: number;
}

/** How many columns and rows, and how many of each kind. */
export interface Extent {
  readonly columns: number;
  readonly rows: number;
  readonly counts: readonly number[];
}

export const FOR_ALL = formula({
  label: 'For all of a kind',
  formula: 'each * motifs',
  given: { each: 'm', motifs: '' },
  unit: 'm',
  source: 'derived',
});
export const ROUND_YARN = formula({
  label: 'Yarn in a round of the border',
  formula: 'stitches * stitch_yarn',
  given: { stitches: '', stitch_yarn: 'm' },
  unit: 'm',
  source: 'derived: stitches of the round, times the yarn in one',
});
export const COLOUR_TOTAL = formula({
  label: 'All of a colour, with the reserve',
  formula: '(motifs + tails + carried + seams + border) * (1 + reserve / 100)',
  given: { motifs: 'm', tails: 'm', carried: 'm', seams: 'm', border: 'm', reserve: '' },
  unit: 'm',
  source: 'common practice: everything counted, then a reserve',
});
export const HIGH_TOTAL = formula({
  label: 'The same, what is estimated taken at its high end',
  formula: '(sure + estimated * (1 + band / 100)) * (1 + reserve / 100)',
  given: { sure: 'm', estimated: 'm', band: '', reserve: '' },
  unit: 'm',
  source: 'common practice: figures from few measurements may be a quarter out',
});
export const TO_BUY = formula({
  label: 'Balls still to buy',
  formula: 'max(0, ceil(round(yarn / ball_length - at_hand, 6)))',
  given: { yarn: 'm', ball_length: 'm', at_hand: '' },
  unit: '',
  source: 'common practice: balls round up, never down, each colour for itself',
});
export const WEIGHT_OF_YARN = formula({
  label: 'Its weight',
  formula: 'yarn * ball_weight / ball_length',
  given: { yarn: 'm', ball_weight: 'g', ball_length: 'm' },
  unit: 'g',
  source: 'derived: the ball band’s weight to its length',
});
export const COST = formula({
  label: 'Cost',
  formula: 'to_buy * price',
  given: { to_buy: '', price: '' },
  unit: '',
  source: 'derived',
});
export const ALL_ENDS = formula({
  label: 'Ends to weave in',
  formula: 'in_motifs + 2 * seams + in_border',
  given: { in_motifs: '', seams: '', in_border: '' },
  unit: '',
  source: 'common practice: every length of yarn has a beginning and an end',
});
export const HEIGHT_OF_ROUND = formula({
  label: 'Height of a round of the border',
  formula: 'row_height * height / motif_height',
  given: { row_height: 'cm', height: '', motif_height: '' },
  unit: 'cm',
  source:
    'published proportions of row ends: 1, 2 and 3 ⟦sc⟧ per ⟦sc⟧, ⟦dc⟧ and ⟦tr⟧ row; ⟦hdc⟧ from memory, 1.5',
});

export interface BorderRoundYarn {
  readonly stitch: Stitch;
  readonly colour: string;
  /** Metres in a stitch. */
  readonly perStitch: number;
  /** In cm. */
  readonly height: number;
}

/** Everything that does not depend on how many motifs there are. */
export interface Pieces {
  readonly motifs: readonly MotifYarn[];
  /** Side of a motif in cm. */
  readonly side: number;
  readonly sideHow: 'measured' | 'reckoned';
  /** Sides of the kinds, where they differ by more than seams forgive. */
  readonly uneven?: { readonly name: string; readonly side: number };
  readonly seam: { readonly colour: string; readonly ratio: number };
  readonly border: {
    readonly rounds: readonly BorderRoundYarn[];
    readonly corner: number;
    /** Stitches of the border over 10 cm, as on the first kind. */
    readonly stitchWidth: number;
    /** In cm, on every side. */
    readonly width: number;
  };
  readonly yarns: readonly Yarn[];
  /** Colours in the order in which they are told. */
  readonly colours: readonly string[];
  readonly reserve: number;
  readonly assumptions: readonly string[];
}

/** Motifs whose sides differ by more than this many per cent pucker at their seams (common practice: a few per cent). */
const SIDES_WITHIN = 3;

/**
 * The pieces of a blanket, each with its yarn; the steps are added to the working. Throws a Problem where a motif's size is not known,
 * or where it does not lie in a grid.
 */
export function piecesOf(blanket: BlanketSpec, working: Working): Pieces {
  const { yarns, reserve } = blanket;
  const first = blanket.kinds[0];
  if (!first) throw new Error('a blanket has at least one kind');
  const motifs = blanket.kinds.map((kind) => motifYarn(kind, yarns, working));
  const sides = blanket.kinds.map((kind) => motifSide(kind, working));
  const { side = 0, how = 'measured' } = sides[0] ?? {};
  const off = sides.findIndex((other) => Math.abs(other.side / side - 1) * 100 > SIDES_WITHIN);
  const main = motifs[0]?.colours[0]?.colour ?? first.name;
  const assumptions = motifs.flatMap((motif) => motif.assumptions);

  const seamColour = blanket.joining.colour ?? main;
  if (blanket.joining.colour === undefined) assumptions.push(`Joined with ${seamColour}.`);
  const hook = first.hook ?? USUAL_HOOK.mm;
  const ballOf = (colour: string) =>
    yarnOf(yarns, colour)?.ball ?? yarnOf(yarns, main)?.ball ?? yarns.find(({ ball }) => ball)?.ball;
  const ratio = seamRatio(
    blanket.joining.method,
    { gauge: first.gauge, hook, wpi: wpiOf(ballOf(seamColour)) },
    working,
  );

  const width = stitchWidth(first, wpiOf(ballOf(main)), working);
  const height = blanket.border.rounds.length === 0 ? 0 : rowHeight(first, width, working);
  let colour = blanket.joining.colour ?? main;
  if (blanket.border.rounds[0] && blanket.border.rounds[0].colour === undefined)
    assumptions.push(`The border begins in ${colour}.`);
  const weighed = motifs[0]?.how === 'weighed' ? motifs[0] : undefined;
  const rounds = blanket.border.rounds.map((round): BorderRoundYarn => {
    colour = round.colour ?? colour;
    return {
      stitch: round.stitch,
      colour,
      perStitch: weighed
        ? otherStitch(weighed.perStitch, weighed.plan.stitch, round.stitch, working)
        : working.do(YARN_OF_STITCHES, {
            stitches: 1,
            stitch_yarn: stitchYarn(working, round.stitch, hook, thickness(working, wpiOf(ballOf(colour)))),
            mm_per_m: 1000,
          }),
      height:
        first.gauge?.rows === undefined
          ? working.do(TALLER, {
              stitch_width: width,
              height_to_width: STITCH_FACTS[round.stitch].height,
            })
          : working.do(HEIGHT_OF_ROUND, {
              row_height: height,
              height: STITCH_FACTS[round.stitch].height,
              motif_height: STITCH_FACTS[first.stitch].height,
            }),
    };
  });

  const colours: string[] = [];
  const told = (name: string) => {
    if (!colours.some((known) => sameColour(known, name))) colours.push(name);
  };
  for (const motif of motifs) for (const part of motif.colours) told(part.colour);
  told(seamColour);
  for (const round of rounds) told(round.colour);
  return {
    motifs,
    side,
    sideHow: how,
    ...(off < 0 ? {} : { uneven: { name: motifs[off]?.name ?? '', side: sides[off]?.side ?? 0 } }),
    seam: { colour: seamColour, ratio },
    border: {
      rounds,
      corner: blanket.border.corner,
      stitchWidth: width,
      width: rounds.reduce((sum, round) => sum + round.height, 0),
    },
    yarns,
    colours,
    reserve,
    assumptions,
  };
}

/** Runs of border rounds in one colour, each a length of yarn of its own. */
const borderLengths = (pieces: Pieces, colour?: string) =>
  pieces.border.rounds.filter(
    (round, index, all) =>
      (colour === undefined || sameColour(round.colour, colour)) &&
      !(index > 0 && sameColour(all[index - 1]?.colour ?? '', round.colour)),
  ).length;

/** Metres of one colour, by what they are for, before the reserve. */
export interface Parts {
  readonly motifs: number;
  readonly tails: number;
  readonly carried: number;
  readonly seams: number;
  readonly border: number;
}

export interface ColourNeed extends Parts {
  readonly colour: string;
  /** Metres with the reserve, and with every estimate at its high end. */
  readonly total: number;
  readonly high: number;
  /** True where part of the motifs' yarn was weighed. */
  readonly weighed: boolean;
  /** What follows where the ball is known. */
  readonly balls?: number;
  readonly ballsHigh?: number;
  readonly toBuy?: number;
  readonly weight?: number;
  readonly cost?: number;
}

export interface Materials {
  readonly colours: readonly ColourNeed[];
  /** Metres in all. */
  readonly total: number;
  readonly balls?: number;
  readonly toBuy?: number;
  /** Grams. */
  readonly weight?: number;
  readonly cost?: number;
  readonly ends: number;
  /** Metres of seam, and their number. */
  readonly seamLength: number;
  readonly seams: number;
  /** The rounds of the border with their stitches and metres. */
  readonly border: readonly (BorderRoundYarn & { readonly stitches: number; readonly metres: number })[];
  /** Finished size in cm. */
  readonly width: number;
  readonly height: number;
  readonly hours?: number;
}

/** What a blanket of this extent takes. The steps are added to the working. `perMinute` is the maker's pace in stitches. */
export function materials(pieces: Pieces, extent: Extent, working: Working, perMinute?: number): Materials {
  const { columns, rows, counts } = extent;
  const { side, reserve } = pieces;
  const single = columns * rows === 1;
  const seamLength = single ? 0 : working.do(SEAM_LENGTH, { side, columns, rows, cm_per_m: 100 });
  const seamYarn = single ? 0 : working.do(SEAM_YARN, { seam: seamLength, ratio: pieces.seam.ratio });
  const seams = single ? 0 : working.do(SEAMS, { rows, columns });
  const seamTails = single ? 0 : working.do(SEAM_TAILS, { seams, tail: TAIL });
  const border = borderOf(pieces, extent, working);
  const size = {
    width: working.do(BLANKET_LENGTH, {
      motifs_along: columns,
      side,
      border: pieces.border.width,
    }),
    height: working.do(
      BLANKET_LENGTH,
      { motifs_along: rows, side, border: pieces.border.width },
      'Finished height',
    ),
  };

  const colours = pieces.colours.map((colour): ColourNeed => {
    const parts = { motifs: 0, tails: 0, carried: 0, seams: 0, border: 0 };
    let estimated = 0;
    let weighed = false;
    pieces.motifs.forEach((motif, kind) => {
      const many = counts[kind] ?? 0;
      const part = motif.colours.find((one) => sameColour(one.colour, colour));
      if (!part || many === 0) return;
      const all = (each: number, what: string) =>
        working.do(FOR_ALL, { each, motifs: many }, `${colour}, ${what} ${motif.name}`);
      const worked = all(part.worked, 'in every');
      parts.motifs += worked;
      if (motif.how === 'weighed') weighed = true;
      else estimated += worked;
      if (part.tails > 0) parts.tails += all(part.tails, 'tails of every');
      if (part.carried > 0) parts.carried += all(part.carried, 'carried in every');
    });
    if (sameColour(pieces.seam.colour, colour)) {
      parts.seams += seamYarn;
      parts.tails += seamTails;
    }
    for (const round of border) if (sameColour(round.colour, colour)) parts.border += round.metres;
    const lengths = borderLengths(pieces, colour);
    if (lengths > 0)
      parts.tails += working.do(TAILS, { lengths, tail: TAIL }, `${colour}, tails of the border`);
    estimated += parts.carried + parts.seams + parts.border;
    const total = working.do(COLOUR_TOTAL, { ...parts, reserve }, `${colour}, with the reserve`);
    const high = working.do(
      HIGH_TOTAL,
      { sure: partsSum(parts) - estimated, estimated, band: ROUGH_BAND, reserve },
      `${colour}, what is estimated taken at its high end`,
    );
    return { colour, ...parts, total, high, weighed, ...bought(pieces, colour, total, high, working) };
  });

  const sum = (of: (need: ColourNeed) => number | undefined) => {
    const known = colours.map(of).filter((value) => value !== undefined);
    return known.length === 0 ? undefined : known.reduce((all, value) => all + value, 0);
  };
  const inMotifs = pieces.motifs.reduce((all, motif, kind) => all + motif.ends * (counts[kind] ?? 0), 0);
  const ends = working.do(ALL_ENDS, {
    in_motifs: inMotifs,
    seams,
    in_border: 2 * borderLengths(pieces),
  });
  const found = { balls: sum(({ balls }) => balls), toBuy: sum(({ toBuy }) => toBuy) };
  const weight = sum((need) => need.weight);
  const cost = sum((need) => need.cost);
  return {
    colours,
    total: sum(({ total }) => total) ?? 0,
    ...(found.balls === undefined ? {} : { balls: found.balls }),
    ...(found.toBuy === undefined ? {} : { toBuy: found.toBuy }),
    ...(weight === undefined ? {} : { weight }),
    ...(cost === undefined ? {} : { cost }),
    ends,
    seamLength,
    seams,
    border,
    ...size,
    ...(perMinute === undefined
      ? {}
      : {
          hours: hoursFor(
            pieces.motifs.reduce((all, motif, kind) => all + motif.stitches * (counts[kind] ?? 0), 0),
            perMinute,
            working,
            'Hours for the motifs; joining and border come on top',
          ),
        }),
  };
}

const partsSum = ({ motifs, tails, carried, seams, border }: Parts) =>
  motifs + tails + carried + seams + border;

function bought(pieces: Pieces, colour: string, total: number, high: number, working: Working) {
  const yarn = yarnOf(pieces.yarns, colour);
  if (!yarn?.ball) return {};
  const { m, g } = yarn.ball;
  const toBuy = working.do(
    TO_BUY,
    { yarn: total, ball_length: m, at_hand: yarn.balls ?? 0 },
    `${colour}, balls still to buy`,
  );
  return {
    balls: working.do(WHOLE_BALLS, { yarn: total, ball_length: m }, `${colour}, whole balls`),
    ballsHigh: working.do(
      WHOLE_BALLS,
      { yarn: high, ball_length: m },
      `${colour}, whole balls at the high end`,
    ),
    toBuy,
    weight: working.do(WEIGHT_OF_YARN, { yarn: total, ball_weight: g, ball_length: m }, `${colour}, weight`),
    ...(yarn.price === undefined
      ? {}
      : { cost: working.do(COST, { to_buy: toBuy, price: yarn.price }, `${colour}, cost`) }),
  };
}

function borderOf(pieces: Pieces, { columns, rows }: Extent, working: Working): Materials['border'] {
  const { border, side } = pieces;
  if (border.rounds.length === 0) return [];
  const first = borderSpacing({
    width: columns * side,
    height: rows * side,
    gauge: { stitches: 1, over: border.stitchWidth },
    corner: border.corner,
    multiple: 1,
    plus: 0,
  });
  working.steps.push(...first.working.steps);
  const counted = borderRounds({
    across: first.across,
    down: first.down,
    corner: border.corner,
    stitches: border.rounds.map(({ stitch }) => stitch),
  });
  working.steps.push(...counted.working.steps);
  return border.rounds.map((round, index) => {
    const stitches = counted.rounds[index]?.total ?? 0;
    return {
      ...round,
      stitches,
      metres: working.do(
        ROUND_YARN,
        { stitches, stitch_yarn: round.perStitch },
        `Yarn in round ${index + 1} of the border`,
      ),
    };
  });
}
