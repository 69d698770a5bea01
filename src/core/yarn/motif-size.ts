/** How large a motif comes out: its stitch, its row, its side. */
import { SEAMS_FORGIVE } from '../../standards/tolerances.ts';
import { isOffBy } from '../base/percent-off.ts';
import { Problem } from '../base/problem.ts';
import type { Gauge } from '../base/quantity.ts';
import { cm, num } from '../base/reader.ts';
import { formula, Working } from '../base/working.ts';
import { reckonBlockedSide, ROW_HEIGHT, STITCH_WIDTH } from '../size/blocking.ts';
import type { MotifSpec } from './motif.ts';

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
  refuseUnlikeSides(motif, working);
  if (side !== undefined) return { side, how: 'measured' };
  if (!gauge) throw unknownSize(motif, 'gauge');
  if (shape === 'blocks') throw unknownSize(motif, 'side');
  if (gauge.rows === undefined) throw unknownSize(motif, 'rows');
  if (shape === 'diagonal') return { side: reckonBlockedSide(gauge, motif.size, working), how: 'reckoned' };
  const height = working.do(ROW_HEIGHT, { over: gauge.over, rows: gauge.rows });
  if (shape === 'flat') return { side: reckonFlatSide(motif, gauge, height, working), how: 'reckoned' };
  return { side: working.do(ROUND_SIDE, { rounds: motif.size, row_height: height }), how: 'reckoned' };
}

/**
 * A piece that is longer one way than the other is no square, whatever one of its sides measures. Throws Problem: motif-not-square.
 */
function refuseUnlikeSides(motif: MotifSpec, working: Working): void {
  const { name, shape, size, otherSize, gauge } = motif;
  if (shape === 'blocks' && otherSize !== undefined && otherSize !== size)
    throw new Problem('motif-not-square', `${name} is ${num(size)} × ${num(otherSize)} blocks: no square.`, {
      option: 'kinds',
      hint: `As many blocks the other way, ${num(size)} × ${num(size)}, would make it one.`,
      facts: { motif: name, across: size, down: otherSize },
    });
  if (shape !== 'flat' || motif.side === undefined || gauge?.rows === undefined) return;
  const height = working.do(ROW_HEIGHT, { over: gauge.over, rows: gauge.rows });
  reckonFlatSide(motif, gauge, height, working);
}

/** Why a motif is no square, as far as its counts and its gauge tell; undefined where they do not say so. */
export function sayNotSquare(motif: MotifSpec): Problem | undefined {
  try {
    refuseUnlikeSides(motif, new Working());
    return undefined;
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
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
