/** How large a motif comes out: its stitch, its row, its side. */
import { USUAL_HOOK, WIDTH_OF_LOOP } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { SEAMS_FORGIVE } from '../../standards/tolerances.ts';
import { isOffBy } from '../base/percent-off.ts';
import { Problem } from '../base/problem.ts';
import type { Gauge } from '../base/quantity.ts';
import { cm } from '../base/reader.ts';
import { formula, type Working } from '../base/working.ts';
import { USUAL_PITCH } from '../edges/seams.ts';
import { blockedSide, ROW_HEIGHT, STITCH_WIDTH } from '../size/blocking.ts';
import type { MotifSpec } from './motif.ts';
import { reckonThickness } from './stitch-yarn.ts';

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

const MM_PER_CM = 10;

/** Width of a stitch in cm: from the gauge, or from hook and yarn where there is none. */
export function reckonStitchWidth(motif: MotifSpec, wpi: number, working: Working): number {
  if (motif.gauge)
    return working.do(STITCH_WIDTH, { over: motif.gauge.over, stitches: motif.gauge.stitches });
  const pitch = working.do(
    USUAL_PITCH,
    {
      width_of_loop: WIDTH_OF_LOOP,
      hook: motif.hook ?? USUAL_HOOK.mm,
      thickness: reckonThickness(working, wpi),
    },
    'Width of a stitch',
  );
  return working.do(IN_CM, { pitch, mm_per_cm: MM_PER_CM });
}

/** Height of a row in cm: from the gauge, or from the stitch's width and how tall it is. */
export function reckonRowHeight(motif: MotifSpec, width: number, working: Working): number {
  if (motif.gauge?.rows !== undefined)
    return working.do(ROW_HEIGHT, { over: motif.gauge.over, rows: motif.gauge.rows });
  return reckonTaller(motif.stitch, width, working);
}

/** Height in cm of a row of a stitch, from how wide it is (cm) and how tall for its width. */
export const reckonTaller = (stitch: Stitch, width: number, working: Working): number =>
  working.do(TALLER, { stitch_width: width, height_to_width: STITCH_FACTS[stitch].height });

export interface Side {
  /** In cm. */
  readonly side: number;
  readonly how: 'measured' | 'reckoned';
}

/** Why the side of a motif is not known: what its gauge lacks, or that a gauge does not tell it. */
function unknownSize({ name }: MotifSpec, lacks: 'gauge' | 'side' | 'rows'): Problem {
  const sentence = {
    gauge: `How large one ${name} is, is not known.`,
    side: `How large one ${name} is, its gauge does not tell: blocks lie slanting.`,
    rows: `The gauge of ${name} has no rows, so its size is not known.`,
  }[lacks];
  return new Problem('motif-size-unknown', sentence, {
    option: 'kinds',
    hint: 'Measure a finished one.',
    facts: { motif: name, lacks },
  });
}

/**
 * The side of a finished motif in cm: measured, or reckoned from its gauge (blocked square, where it is a diagonal one).
 *
 * Throws Problem: not-for-a-grid (a circle, a hexagon), motif-size-unknown, motif-not-square.
 */
export function reckonSide(motif: MotifSpec, working: Working): Side {
  const { name, shape, side, gauge } = motif;
  if (shape === 'circle' || shape === 'hexagon') {
    throw new Problem('not-for-a-grid', `${name} is a ${shape}: it does not lie in columns and rows.`, {
      option: 'kinds',
      hint: 'Choose square motifs: diagonal, blocks, clusters, solid-square, or a flat piece as high as wide.',
      facts: { motif: name, shape },
    });
  }
  if (side !== undefined) return { side, how: 'measured' };
  if (!gauge) throw unknownSize(motif, 'gauge');
  if (shape === 'blocks') throw unknownSize(motif, 'side');
  if (gauge.rows === undefined) throw unknownSize(motif, 'rows');
  if (shape === 'diagonal') return { side: blockedSide(gauge, motif.size, working), how: 'reckoned' };
  const height = working.do(ROW_HEIGHT, { over: gauge.over, rows: gauge.rows });
  if (shape === 'flat') return { side: reckonFlatSide(motif, gauge, height, working), how: 'reckoned' };
  return { side: working.do(ROUND_SIDE, { rounds: motif.size, row_height: height }), how: 'reckoned' };
}

/** The width of a flat piece (cm) that is as high as wide, its rows `height` cm high. Throws Problem: motif-not-square. */
function reckonFlatSide(motif: MotifSpec, gauge: Gauge, height: number, working: Working): number {
  const width = working.do(STITCH_WIDTH, { over: gauge.over, stitches: gauge.stitches });
  const across = working.do(PIECE_ALONG, { number_of: motif.size, each: width }, 'Width of the piece');
  const down = working.do(
    PIECE_ALONG,
    { number_of: motif.otherSize ?? 1, each: height },
    'Height of the piece',
  );
  if (isOffBy(across, down, SEAMS_FORGIVE))
    throw new Problem(
      'motif-not-square',
      `${motif.name} is ${cm(across)} wide and ${cm(down)} high: no square.`,
      {
        option: 'kinds',
        hint: `About ${Math.max(1, Math.round(across / height))} rows would make it one.`,
        facts: { motif: motif.name, across, down },
      },
    );
  return across;
}
