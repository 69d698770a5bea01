/** Why a diagonal square comes off the hook as a diamond, what it blocks to, and how it would come out square. */
import { Problem } from '../base/problem.ts';
import type { Gauge } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';

export const STITCH_WIDTH = formula({
  label: 'Width of a stitch',
  formula: 'over / stitches',
  given: { over: 'cm', stitches: '' },
  unit: 'cm',
  source: 'derived: the length over the stitches counted on it',
});
export const ROW_HEIGHT = formula({
  label: 'Height of a row',
  formula: 'over / rows',
  given: { over: 'cm', rows: '' },
  unit: 'cm',
  source: 'derived: the length over the rows counted on it',
});
export const ACROSS = formula({
  label: 'Across the widest row',
  formula: '(2 * size + 1) * stitch_width',
  given: { size: '', stitch_width: 'cm' },
  unit: 'cm',
  source: 'derived: the widest row has 2 × size + 1 stitches',
});
export const ALONG = formula({
  label: 'From the first corner to the last',
  formula: '2 * size * row_height',
  given: { size: '', row_height: 'cm' },
  unit: 'cm',
  source: 'derived: 2 × size rows, one on the other',
});
export const BLOCKED_SIDE = formula({
  label: 'Side, blocked square',
  formula: 'sqrt(across^2 + along^2) / 2',
  given: { across: 'cm', along: 'cm' },
  unit: 'cm',
  source: 'derived: the edges of a rhombus keep their length while it is sheared to a square',
});
export const CORNER_ANGLE = formula({
  label: 'Angle of the corner at the start, off the hook (degrees)',
  formula: '2 * atan(across / along) * 180 / pi',
  given: { across: 'cm', along: 'cm' },
  unit: '',
  source: 'derived: the angle of a rhombus from its two diagonals; 90 is square',
});
export const PULL = formula({
  label: 'How much wider the widest row becomes when blocked square (per cent)',
  formula: '100 * (sqrt(2) * side / across - 1)',
  given: { side: 'cm', across: 'cm' },
  unit: '',
  source: 'derived: the diagonal of a square is √2 times its side',
});
export const STEP_OUT = formula({
  label: 'Increases at each end of a row that would make it square off the hook, on average',
  formula: 'row_height / stitch_width',
  given: { row_height: 'cm', stitch_width: 'cm' },
  unit: '',
  source: 'derived: at a right-angled corner each edge moves out as far as the row is high',
});
export const SQUARE_SIDE = formula({
  label: 'Side of that square',
  formula: 'along / sqrt(2)',
  given: { along: 'cm' },
  unit: 'cm',
  source: 'derived: the diagonal of a square is √2 times its side',
});

export interface BlockedSquare {
  /** Width of a stitch and height of a row, in cm. */
  readonly stitchWidth: number;
  readonly rowHeight: number;
  /** The widest row, and the other diagonal, in cm. */
  readonly across: number;
  readonly along: number;
  /** In cm. */
  readonly side: number;
}

/** The gauge's rows. Throws Problem: gauge-rows-missing, where only stitches were given. */
export function rowsOfGauge(gauge: Gauge, option = 'gauge'): number {
  if (gauge.rows === undefined)
    throw new Problem('gauge-rows-missing', 'The rows are needed too.', {
      option,
      hint: `Count them on the swatch as well: ${option}:${gauge.stitches}x10.`,
    });
  return gauge.rows;
}

/**
 * The diagonals of a diagonal square of `size` rising rows and the side it blocks to, in cm; the steps are added to the
 * working.
 *
 * Throws Problem: gauge-rows-missing.
 */
export function reckonBlockedSquare(gauge: Gauge, size: number, working: Working): BlockedSquare {
  const rows = rowsOfGauge(gauge);
  const stitchWidth = working.do(STITCH_WIDTH, { over: gauge.over, stitches: gauge.stitches });
  const rowHeight = working.do(ROW_HEIGHT, { over: gauge.over, rows });
  const across = working.do(ACROSS, { size, stitch_width: stitchWidth });
  const along = working.do(ALONG, { size, row_height: rowHeight });
  const side = working.do(BLOCKED_SIDE, { across, along });
  return { stitchWidth, rowHeight, across, along, side };
}

/** The side alone, in cm, of a diagonal square of `size` rising rows. */
export const reckonBlockedSide = (gauge: Gauge, size: number, working: Working): number =>
  reckonBlockedSquare(gauge, size, working).side;

/** Gauges are typed with at most six decimals: as whole millionths their ratio is exact. */
const MILLION = 1_000_000;

/**
 * Increases at each end of rows 1 to `rows` that make the piece square off the hook: ⌊i·q⌋ − ⌊(i−1)·q⌋ with
 * q = stitches ÷ rows (derived), computed from whole numbers so that i·q never falls just short of one.
 */
export function planIncreases(gauge: Gauge, rows: number): number[] {
  const stitches = Math.round(gauge.stitches * MILLION);
  const perRow = Math.round(rowsOfGauge(gauge) * MILLION);
  const out = (row: number) => Math.floor((row * stitches) / perRow);
  return Array.from({ length: rows }, (_, index) => out(index + 1) - out(index));
}

export interface Diamond extends BlockedSquare {
  /** In degrees; 90 is square. */
  readonly cornerAngle: number;
  /** Per cent by which blocking widens the widest row; negative where it draws it in. */
  readonly pull: number;
  /** Whether it is square as it comes off the hook, as far as any ruler can tell. */
  readonly isSquare: boolean;
  /** How high a row is for the width of a stitch, and whether the two are alike. */
  readonly heightToWidth: number;
  readonly isEven: boolean;
  /** Rows in all, and stitches in the widest of them. */
  readonly rows: number;
  readonly widest: number;
  readonly increases: readonly number[];
  /** The side of the piece that those increases make, in cm. */
  readonly squareSide: number;
  readonly working: Working;
}

const RIGHT_ANGLE = 90;
/** Degrees that are beyond any ruler. */
const ANGLE_TOLD = 0.05;
/** A ratio that is read as 1, to two decimals. */
const RATIO_TOLD = 0.005;

/** Everything about the diagonal square's true shape. Throws Problem: gauge-rows-missing. */
export function reckonDiamond(gauge: Gauge, size: number): Diamond {
  const working = new Working();
  const blocked = reckonBlockedSquare(gauge, size, working);
  const { across, along, side, rowHeight, stitchWidth } = blocked;
  const cornerAngle = working.do(CORNER_ANGLE, { across, along });
  const pull = working.do(PULL, { side, across });
  const heightToWidth = working.do(STEP_OUT, { row_height: rowHeight, stitch_width: stitchWidth });
  const squareSide = working.do(SQUARE_SIDE, { along });
  return {
    ...blocked,
    cornerAngle,
    pull,
    isSquare: Math.abs(cornerAngle - RIGHT_ANGLE) < ANGLE_TOLD,
    heightToWidth,
    isEven: Math.abs(heightToWidth - 1) < RATIO_TOLD,
    rows: 2 * size,
    widest: 2 * size + 1,
    squareSide,
    increases: planIncreases(gauge, size),
    working,
  };
}
