/**
 * What a whole blanket takes, colour by colour: motifs row by row, tails, carried strands, seams, every round of its border,
 * a reserve, and then whole balls.
 */
import { GAUGED_BAND, ROUGH_BAND, TAIL } from '../../standards/consumption.ts';
import { defined } from '../base/defined.ts';
import { sameName } from '../base/nearest-name.ts';
import { sum } from '../base/sum.ts';
import { formula, type Working } from '../base/working.ts';
import { countBorderRounds, spaceBorder } from '../edges/border.ts';
import { reckonStrands, SEAM_LENGTH, SEAM_TAILS, SEAM_YARN, SEAMS } from '../edges/seams.ts';
import { BLANKET_LENGTH } from '../size/resize.ts';
import { WEIGHT_OF_YARN, WHOLE_BALLS } from '../yarn/balls.ts';
import { yarnOf } from '../yarn/motif.ts';
import { TAILS } from '../yarn/motif-yarn.ts';
import { reckonHours } from '../yarn/pace.ts';
import { YARN_WORKED } from '../yarn/stitch-yarn.ts';
import type { BorderRoundYarn, Pieces } from './pieces.ts';

/** How many columns and rows, and how many of each kind. */
export interface Extent {
  readonly columns: number;
  readonly rows: number;
  readonly counts: readonly number[];
}

/** How many motifs that is. */
export const countMotifsIn = ({ columns, rows }: Pick<Extent, 'columns' | 'rows'>): number => columns * rows;

export const FOR_ALL = formula({
  label: 'For all of a kind',
  formula: 'each * motifs',
  given: { each: 'm', motifs: '' },
  unit: 'm',
  source: 'derived',
});
export const COLOUR_TOTAL = formula({
  label: 'All of a colour, with the reserve',
  formula: '(motifs + tails + carried + seams + border) * (1 + reserve / 100)',
  given: { motifs: 'm', tails: 'm', carried: 'm', seams: 'm', border: 'm', reserve: '' },
  unit: 'm',
  source: 'common practice: everything counted, then a reserve',
});
export const HIGH_TOTAL = formula({
  label: 'The same, everything taken at its high end',
  formula: '(yarn + more) * (1 + reserve / 100)',
  given: { yarn: 'm', more: 'm', reserve: '' },
  unit: 'm',
  source: 'derived: everything that is not sure at the upper end of its band at once',
});
export const MORE_AT_MOST = formula({
  label: 'By how much it may be more',
  formula: 'yarn * band / 100',
  given: { yarn: 'm', band: '' },
  unit: 'm',
  source:
    'derived: the band of the weighings, or the limits of the fit to published measurements where a gauge tells; common practice: a quarter where only hook and yarn do',
});
export const TO_BUY = formula({
  label: 'Balls still to buy',
  formula: 'max(0, ceil(round(yarn / ball_length - at_hand, 6)))',
  given: { yarn: 'm', ball_length: 'm', at_hand: '' },
  unit: '',
  source: 'common practice: balls round up, never down, each colour for itself',
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

const CM_PER_M = 100;

/** Runs of border rounds in one colour, each a length of yarn of its own. */
const borderLengths = (pieces: Pieces, colour?: string) =>
  pieces.border.rounds.filter(
    (round, index, all) =>
      (colour === undefined || sameName(round.colour, colour)) &&
      !(index > 0 && sameName(all[index - 1]?.colour ?? '', round.colour)),
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

/** What a round of the border counts: stitches along a side between two corners, in all, and metres. */
export interface BorderCounts {
  readonly across: number;
  readonly down: number;
  readonly stitches: number;
  readonly metres: number;
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
  /** Strands to sew with, two ends each; unset where the seams are crocheted. */
  readonly strands?: number;
  /** The rounds of the border with their stitches and metres. */
  readonly border: readonly (BorderRoundYarn & BorderCounts)[];
  /** Finished size in cm. */
  readonly width: number;
  readonly height: number;
  readonly hours?: number;
}

/** What a blanket of this extent takes. The steps are added to the working. `paces` are the maker's, in stitches a minute, by kind. */
export function reckonMaterials(
  pieces: Pieces,
  extent: Extent,
  working: Working,
  paces?: readonly number[],
): Materials {
  const { columns, rows, counts } = extent;
  const seams = reckonSeams(pieces, extent, working);
  const border = reckonBorderYarn(pieces, extent, working);
  const along = (motifs: number, label?: string) =>
    working.do(
      BLANKET_LENGTH,
      { motifs_along: motifs, side: pieces.side, border: pieces.border.width },
      label,
    );
  const size = { width: along(columns), height: along(rows, 'Finished height') };
  const whole = { pieces, counts, seams, border };
  const colours = pieces.colours.map((colour) => reckonColour(whole, colour, working));
  const ends = working.do(ALL_ENDS, {
    in_motifs: sumOverMotifs(pieces, counts, ({ ends }) => ends),
    seams: seams.strands ?? seams.number,
    in_border: 2 * borderLengths(pieces),
  });
  const hours = paces && sum(hoursByKind(pieces, counts, paces, working));
  return defined({
    colours,
    total: sumKnown(colours, ({ total }) => total) ?? 0,
    balls: sumKnown(colours, ({ balls }) => balls),
    toBuy: sumKnown(colours, ({ toBuy }) => toBuy),
    weight: sumKnown(colours, ({ weight }) => weight),
    cost: sumKnown(colours, ({ cost }) => cost),
    ends,
    seamLength: seams.length,
    seams: seams.number,
    strands: seams.strands,
    border,
    ...size,
    hours,
  });
}

/** The sum of what is known of the colours; undefined where nothing is. */
function sumKnown(
  colours: readonly ColourNeed[],
  of: (need: ColourNeed) => number | undefined,
): number | undefined {
  const known = colours.map(of).filter((value) => value !== undefined);
  return known.length === 0 ? undefined : known.reduce((sum, value) => sum + value, 0);
}

/** The same of every motif, as often as it is made. */
const sumOverMotifs = (
  { motifs }: Pieces,
  counts: readonly number[],
  of: (motif: Pieces['motifs'][number]) => number,
): number => motifs.reduce((sum, motif, kind) => sum + of(motif) * (counts[kind] ?? 0), 0);

/** The hours that the motifs of each kind take; joining and border come on top. */
const hoursByKind = (
  { motifs }: Pieces,
  counts: readonly number[],
  paces: readonly number[],
  working: Working,
): number[] =>
  motifs.map(({ name, stitches }, kind) => {
    const many = counts[kind] ?? 0;
    return many === 0
      ? 0
      : reckonHours(stitches * many, paces[kind] ?? Infinity, working, `${name}: hours for ${many} of it`);
  });

/** Metres of seam, of yarn in it and of its tails, and the number of seams; nothing where one motif is all. */
interface Seams {
  readonly length: number;
  readonly yarn: number;
  readonly number: number;
  readonly tails: number;
  /** Lengths of yarn they are sewn with; unset where they are crocheted. */
  readonly strands?: number;
}

function reckonSeams({ side, seam }: Pieces, { columns, rows }: Extent, working: Working): Seams {
  if (columns * rows === 1) return { length: 0, yarn: 0, number: 0, tails: 0 };
  const length = working.do(SEAM_LENGTH, { side, columns, rows, cm_per_m: CM_PER_M });
  const yarn = working.do(SEAM_YARN, { seam: length, ratio: seam.ratio });
  const number = working.do(SEAMS, { rows, columns });
  const strands =
    seam.sewn === true ? reckonStrands({ columns, rows, side, ratio: seam.ratio }, working) : undefined;
  const tails = working.do(SEAM_TAILS, { seams: strands ?? number, tail: TAIL });
  return defined({ length, yarn, number, tails, strands });
}

/** All of one colour: by what it is for, with the reserve, at the high end, in balls. */
function reckonColour(
  whole: { pieces: Pieces; counts: readonly number[]; seams: Seams; border: Materials['border'] },
  colour: string,
  working: Working,
): ColourNeed {
  const { pieces, counts, seams, border } = whole;
  const inMotifs = reckonInMotifs(pieces, counts, colour, working);
  const joins = sameName(pieces.seam.colour, colour);
  const lengths = borderLengths(pieces, colour);
  const borderTails =
    lengths > 0 ? working.do(TAILS, { lengths, tail: TAIL }, `${colour}, tails of the border`) : 0;
  const parts = {
    motifs: inMotifs.worked,
    tails: inMotifs.tails + (joins ? seams.tails : 0) + borderTails,
    carried: inMotifs.carried,
    seams: joins ? seams.yarn : 0,
    border: border
      .filter((round) => sameName(round.colour, colour))
      .reduce((sum, { metres }) => sum + metres, 0),
  };
  const beside = parts.carried + parts.seams + parts.border;
  const more = [
    ...inMotifs.more,
    ...(beside > 0
      ? [
          working.do(
            MORE_AT_MOST,
            { yarn: beside, band: pieces.gauged ? GAUGED_BAND : ROUGH_BAND },
            `${colour}, by how much carried strands, seams and border may be more`,
          ),
        ]
      : []),
  ];
  const { reserve } = pieces;
  const total = working.do(COLOUR_TOTAL, { ...parts, reserve }, `${colour}, with the reserve`);
  const high = working.do(
    HIGH_TOTAL,
    { yarn: sumOfParts(parts), more: sum(more), reserve },
    `${colour}, everything taken at its high end`,
  );
  const { weighed } = inMotifs;
  return { colour, ...parts, total, high, weighed, ...reckonBalls(pieces, colour, total, high, working) };
}

/** What all motifs take of a colour in m, and by how much those of each kind may take more. */
function reckonInMotifs(pieces: Pieces, counts: readonly number[], colour: string, working: Working) {
  const all = { worked: 0, tails: 0, carried: 0, more: [] as number[], weighed: false };
  pieces.motifs.forEach((motif, kind) => {
    const motifs = counts[kind] ?? 0;
    const part = motif.colours.find((one) => sameName(one.colour, colour));
    if (!part || motifs === 0) return;
    const forAll = (each: number, what: string) =>
      working.do(FOR_ALL, { each, motifs }, `${colour}, ${what} ${motif.name}`);
    const worked = forAll(part.worked, 'in every');
    all.worked += worked;
    if (motif.how === 'weighed' || motif.how === 'as-weighed') all.weighed = true;
    all.more.push(
      working.do(
        MORE_AT_MOST,
        { yarn: worked, band: motif.band },
        `${colour}, by how much ${motif.name} may take more`,
      ),
    );
    if (part.tails > 0) all.tails += forAll(part.tails, 'tails of every');
    if (part.carried > 0) all.carried += forAll(part.carried, 'carried in every');
  });
  return all;
}

const sumOfParts = ({ motifs, tails, carried, seams, border }: Parts) =>
  motifs + tails + carried + seams + border;

/** Whole balls of a colour, what is still to buy, its weight and cost; nothing where its ball is not known. */
function reckonBalls(pieces: Pieces, colour: string, total: number, high: number, working: Working) {
  const yarn = yarnOf(pieces.yarns, colour);
  if (!yarn?.ball) return {};
  const { m, g } = yarn.ball;
  const toBuy = working.do(
    TO_BUY,
    { yarn: total, ball_length: m, at_hand: yarn.balls ?? 0 },
    `${colour}, balls still to buy`,
  );
  return defined({
    balls: working.do(WHOLE_BALLS, { yarn: total, ball_length: m }, `${colour}, whole balls`),
    ballsHigh: working.do(
      WHOLE_BALLS,
      { yarn: high, ball_length: m },
      `${colour}, whole balls at the high end`,
    ),
    toBuy,
    weight: working.do(WEIGHT_OF_YARN, { yarn: total, ball_weight: g, ball_length: m }, `${colour}, weight`),
    cost:
      yarn.price === undefined
        ? undefined
        : working.do(COST, { to_buy: toBuy, price: yarn.price }, `${colour}, cost`),
  });
}

/** The rounds of the border with their stitches and metres. */
function reckonBorderYarn(pieces: Pieces, { columns, rows }: Extent, working: Working): Materials['border'] {
  const { border, side } = pieces;
  if (border.rounds.length === 0) return [];
  const first = spaceBorder({
    width: columns * side,
    height: rows * side,
    gauge: { stitches: 1, over: border.stitchWidth },
    corner: border.corner,
    multiple: 1,
    plus: 0,
  });
  working.steps.push(...first.working.steps);
  const counted = countBorderRounds({
    across: first.across,
    down: first.down,
    corner: border.corner,
    stitches: border.rounds.map(({ stitch }) => stitch),
  });
  working.steps.push(...counted.working.steps);
  return border.rounds.map((round, index) => {
    const { across = 0, down = 0, total: stitches = 0 } = counted.rounds[index] ?? {};
    return {
      ...round,
      across,
      down,
      stitches,
      metres: working.do(
        YARN_WORKED,
        { stitches, stitch_yarn: round.perStitch },
        `Yarn in round ${index + 1} of the border`,
      ),
    };
  });
}
