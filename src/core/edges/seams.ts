/** Joining motifs in a grid: the length of the seams, the yarn they take, and the order in which they are sewn. */
import {
  SEAM_STRANDS,
  SEWING_STRAND,
  TAIL,
  WIDTH_OF_LOOP,
  YARN_PER_LENGTH,
} from '../../standards/consumption.ts';
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import type { Gauge } from '../base/quantity.ts';
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';
import { USUAL_PITCH } from '../size/stitch-size.ts';
import { MM_PER_M, reckonStitchMetres } from '../yarn/stitch-yarn.ts';
import { reckonThickness } from '../yarn/thickness.ts';

export const SEAM_METHODS = ['whip', 'slip-stitch', 'single-crochet'] as const;
export type SeamMethod = (typeof SEAM_METHODS)[number];

export const SEAM_LENGTH = formula({
  label: 'Length of all seams inside',
  formula: 'side * ((columns - 1) * rows + (rows - 1) * columns) / cm_per_m',
  given: { side: 'cm', columns: '', rows: '', cm_per_m: 'cm/m' },
  unit: 'm',
  source: 'derived: a seam on every side that two motifs share',
});
export const SEAMS = formula({
  label: 'Seams, sewn strip by strip',
  formula: 'rows * (columns - 1) + (rows - 1)',
  given: { rows: '', columns: '' },
  unit: '',
  source: 'derived: the short ones within the strips, then one between each two strips',
});
export const SEAM_TAILS = formula({
  label: 'Tails, two to every length of yarn in the seams',
  formula: 'seams * 2 * tail',
  given: { seams: '', tail: 'm' },
  unit: 'm',
  source: 'published: 4–6 in at each end (creativecrochetcorner.com, "How to end off")',
});
export const GAUGED_PITCH = formula({
  label: 'From stitch to stitch along the seam',
  formula: 'over * mm_per_cm / stitches',
  given: { over: 'cm', mm_per_cm: 'mm/cm', stitches: '' },
  unit: 'mm',
  source: 'common practice: one stitch of the seam to each stitch of the edge',
});
export const IN_STRANDS = formula({
  label: 'In strands of the yarn',
  formula: 'strands * thickness',
  given: { strands: '', thickness: 'mm' },
  unit: 'mm',
  source: 'common practice: sewn in by about a strand, the edge about a strand and a half thick',
});
export const WHIP_STITCH = formula({
  label: 'Yarn in one whip stitch',
  formula: '2 * sqrt((2 * bite)^2 + (pitch / 2)^2) + 2 * fabric',
  given: { bite: 'mm', pitch: 'mm', fabric: 'mm' },
  unit: 'mm',
  source:
    'derived: the two slanting strands and the two ways through; no published figure for sewing by hand',
});
export const PER_LENGTH = formula({
  label: 'Yarn in so much of the seam',
  formula: 'stitch_yarn / pitch',
  given: { stitch_yarn: 'mm', pitch: 'mm' },
  unit: '',
  source: 'derived: one stitch’s yarn over its length of the seam',
});
export const IN_MM = formula({
  label: 'Yarn in one stitch of the seam',
  formula: 'stitch_yarn * mm_per_m',
  given: { stitch_yarn: 'm', mm_per_m: 'mm/m' },
  unit: 'mm',
  source: 'derived',
});
export const SLIP_STITCH_SHARE = formula({
  label: 'Yarn in so much of the seam, in ⟦sl st⟧',
  formula: 'single_crochet * chain / measured_single_crochet',
  given: { single_crochet: '', chain: '', measured_single_crochet: '' },
  unit: '',
  source:
    'derived: a slip stitch takes the yarn of a chain, which one maker measured as 5.1 in an inch (and prints as 4.8 ' +
    'too) beside 10.6 of ⟦sc⟧ (windchilde.com/bluedepth)',
});
export const SEAM_YARN = formula({
  label: 'Yarn in the seams',
  formula: 'seam * ratio',
  given: { seam: 'm', ratio: '' },
  unit: 'm',
  source: 'derived: seam times yarn in so much of it',
});

/** Rounded before it is rounded up, so that the last digit of a machine's arithmetic never cuts a strand. */
export const SEWING_STRANDS = formula({
  label: 'Strands to sew with',
  formula: 'seams * ceil(round(seam * ratio / cm_per_m / (strand - 2 * tail), 6))',
  given: { seams: '', seam: 'cm', ratio: '', cm_per_m: 'cm/m', strand: 'm', tail: 'm' },
  unit: '',
  source:
    'common practice: strands of about 1.5 m, a seam begun with a new one; a tail at both ends (published: 4–6 in, creativecrochetcorner.com, "How to end off")',
});

const CM_PER_M = 100;
const MM_PER_CM = 10;

/**
 * Yarn in a length of seam, over that length. With a gauge the stitches of the seam follow it; without one they follow hook (mm)
 * and yarn (wraps per inch). Stitches take what a weighed one (metres in a ⟦sc⟧) does, where there is one.
 */
export function reckonSeamRatio(
  method: SeamMethod,
  {
    gauge,
    hook,
    wpi,
    weighed,
  }: { gauge?: Gauge | undefined; hook: number; wpi: number; weighed?: number | undefined },
  working: Working,
): number {
  // Its rows are those of the motif's own stitch.
  const edge = gauge && { stitches: gauge.stitches, over: gauge.over };
  const strand = reckonThickness(working, wpi);
  const pitch = gauge
    ? working.do(GAUGED_PITCH, { over: gauge.over, mm_per_cm: MM_PER_CM, stitches: gauge.stitches })
    : working.do(USUAL_PITCH, { width_of_loop: WIDTH_OF_LOOP, hook, thickness: strand });
  if (method === 'whip') {
    const bite = working.do(
      IN_STRANDS,
      { strands: SEAM_STRANDS.bite, thickness: strand },
      'In from each edge',
    );
    const fabric = working.do(
      IN_STRANDS,
      { strands: SEAM_STRANDS.fabric, thickness: strand },
      'Thickness of the edge',
    );
    const stitch = working.do(WHIP_STITCH, { bite, pitch, fabric });
    return working.do(PER_LENGTH, { stitch_yarn: stitch, pitch });
  }
  const metres = weighed ?? reckonStitchMetres(working, { stitch: 'sc', gauge: edge, hook, wpi }).stitch;
  const stitchYarn = working.do(IN_MM, { stitch_yarn: metres, mm_per_m: MM_PER_M });
  const inSingle = working.do(PER_LENGTH, { stitch_yarn: stitchYarn, pitch });
  if (method === 'single-crochet') return inSingle;
  return working.do(SLIP_STITCH_SHARE, {
    single_crochet: inSingle,
    chain: YARN_PER_LENGTH.chain,
    measured_single_crochet: YARN_PER_LENGTH.sc,
  });
}

export interface Joining {
  /** Metres of seam, and of yarn in it, tails left out. */
  readonly seamLength: number;
  readonly yarn: number;
  readonly ratio: number;
  readonly seams: number;
  /** Metres of yarn that hang as tails. */
  readonly tails: number;
  /** Short seams in each strip, and strips; each short seam and each long one in cm. */
  readonly shortSeams: number;
  readonly strips: number;
  readonly shortLength: number;
  readonly longLength: number;
  /** Lengths of yarn where every seam runs straight through, those down and those across: strands where they are sewn. */
  readonly straight: number;
  /** Strands of `SEWING_STRAND` m that the seams take in this order, two ends each; unset where they are crocheted from the ball. */
  readonly strands?: number;
  /** All motifs together, in cm. */
  readonly width: number;
  readonly height: number;
  readonly working: Working;
}

/**
 * Joins `columns` × `rows` motifs with a side in cm.
 *
 * Throws Problem: nothing-to-join, where there is only one motif.
 */
export function joinMotifs(asked: {
  columns: number;
  rows: number;
  side: number;
  method: SeamMethod;
  gauge?: Gauge | undefined;
  hook: number;
  wpi: number;
}): Joining {
  const { columns, rows, side } = asked;
  if (columns * rows === 1) {
    throw new Problem('nothing-to-join', 'One motif has nothing to be joined to.', {
      option: 'columns',
      hint: 'Give how many stand side by side and how many under each other, like columns:9 rows:12.',
    });
  }
  const working = new Working();
  const seamLength = working.do(SEAM_LENGTH, { side, columns, rows, cm_per_m: CM_PER_M });
  const ratio = reckonSeamRatio(asked.method, asked, working);
  const yarn = working.do(SEAM_YARN, { seam: seamLength, ratio });
  const seams = working.do(SEAMS, { rows, columns });
  const strands =
    asked.method === 'whip' ? reckonStrands({ columns, rows, side, ratio }, working) : undefined;
  const tails = working.do(SEAM_TAILS, { seams: strands ?? seams, tail: TAIL });
  return defined({
    seamLength,
    yarn,
    ratio,
    seams,
    tails,
    strands,
    shortSeams: columns - 1,
    strips: rows,
    shortLength: side,
    longLength: columns * side,
    straight:
      strands === undefined
        ? columns - 1 + (rows - 1)
        : reckonRuns(
            [
              { seams: columns - 1, seam: rows * side, label: 'Strands for seams straight down' },
              { seams: rows - 1, seam: columns * side, label: 'Strands for seams straight across' },
            ],
            ratio,
            working,
          ),
    width: columns * side,
    height: rows * side,
    working,
  });
}

/** Motifs in a grid, the side of one in cm, and yarn in a length of their seams over that length. */
interface SewnGrid {
  readonly columns: number;
  readonly rows: number;
  readonly side: number;
  readonly ratio: number;
}

/**
 * The strands to sew a grid with, a seam begun with a new one: those of the short seams, then those of the long ones between the
 * strips. The steps are added to the working.
 */
export function reckonStrands({ columns, rows, side, ratio }: SewnGrid, working: Working): number {
  return reckonRuns(
    [
      { seams: rows * (columns - 1), seam: side, label: 'Strands for the short seams' },
      { seams: rows - 1, seam: columns * side, label: 'Strands for the long seams' },
    ],
    ratio,
    working,
  );
}

/** The strands for so many seams of each length in cm. */
const reckonRuns = (
  runs: readonly { readonly seams: number; readonly seam: number; readonly label: string }[],
  ratio: number,
  working: Working,
): number =>
  sum(
    runs.map(({ seams, seam, label }) =>
      seams === 0
        ? 0
        : working.do(
            SEWING_STRANDS,
            { seams, seam, ratio, cm_per_m: CM_PER_M, strand: SEWING_STRAND, tail: TAIL },
            label,
          ),
    ),
  );

/** The same by plain arithmetic, for searches over sizes. */
export function countStrands({ columns, rows, side, ratio }: SewnGrid): number {
  const inSeam = (seam: number) =>
    Math.ceil(Math.round(((seam * ratio) / CM_PER_M / (SEWING_STRAND - 2 * TAIL)) * 1e6) / 1e6);
  return rows * (columns - 1) * inSeam(side) + (rows - 1) * inSeam(columns * side);
}
