/**
 * Every whole-number blanket near a wished size, ranked: nearest first, then fewest ends, then least yarn. The search is plain
 * arithmetic, for speed; what is shown of the choice is computed again by the formulas, and tests hold the two to each other.
 */
import { defined } from '../base/defined.ts';
import { ENDS_A_MOTIF } from '../../standards/consumption.ts';
import { reckonBlockedSide, rowsOfGauge } from './blocking.ts';
import { Problem } from '../base/problem.ts';
import { SAMPLE_SIDE } from '../base/samples.ts';
import type { Gauge } from '../base/quantity.ts';
import { MOST_ROWS } from '../base/limits.ts';
import { size as sizeText } from '../base/reader.ts';
import { formula, Working } from '../base/working.ts';

export const BLANKET_LENGTH = formula({
  label: 'Finished width',
  formula: 'motifs_along * side + 2 * border',
  given: { motifs_along: '', side: 'cm', border: 'cm' },
  unit: 'cm',
  source: 'derived: motifs side by side and a border at both ends',
});
export const OFF = formula({
  label: 'Off the wished size, width and height together (per cent)',
  formula: '100 * (abs(width - wished_width) / wished_width + abs(height - wished_height) / wished_height)',
  given: { width: 'cm', wished_width: 'cm', height: 'cm', wished_height: 'cm' },
  unit: '',
  source: 'derived: the two deviations, each over what was wished',
});
export const MOTIFS = formula({
  label: 'Motifs',
  formula: 'columns * rows',
  given: { columns: '', rows: '' },
  unit: '',
  source: 'derived',
});
export const ENDS = formula({
  label: 'Ends to weave in',
  formula: 'motifs * ends_a_motif',
  given: { motifs: '', ends_a_motif: '' },
  unit: '',
  source: 'common practice: every length of yarn leaves two ends',
});

/** As many options as are told. */
export const MOST_OPTIONS = 12;

/** A size that the motif can have, and the side (cm) it comes to. `size` is unset where only a side was given. */
export interface MotifSize {
  readonly size?: number;
  readonly side: number;
}

/** What is wished for, in cm. */
export interface Wish {
  readonly width: number;
  readonly height: number;
  readonly border: number;
  readonly endsAMotif: number;
}

export interface ResizeOption {
  readonly columns: number;
  readonly rows: number;
  readonly size?: number;
  readonly side: number;
  readonly width: number;
  readonly height: number;
  readonly motifs: number;
  readonly ends: number;
  /** Both deviations together, in per cent. */
  readonly offPercent: number;
}

/** Two options are as near as each other when they differ by less than this many per cent: no tape measure tells them apart. */
const SAME = 1e-7;
const nearness = ({ offPercent }: ResizeOption) => Math.round(offPercent / SAME);
const area = ({ motifs, side }: ResizeOption) => motifs * side * side;

/** The ranking: nearest, then fewest ends, then least yarn (by area); then the smaller motif and the fewer columns, to be definite. */
export function rankOptions(a: ResizeOption, b: ResizeOption): number {
  return (
    nearness(a) - nearness(b) ||
    a.ends - b.ends ||
    area(a) - area(b) ||
    a.side - b.side ||
    a.columns - b.columns
  );
}

/** One combination with its size, its ends and how far it is off the wish. */
export function optionOf(wish: Wish, motif: MotifSize, columns: number, rows: number): ResizeOption {
  const width = columns * motif.side + 2 * wish.border;
  const height = rows * motif.side + 2 * wish.border;
  const motifs = columns * rows;
  return {
    columns,
    rows,
    ...motif,
    width,
    height,
    motifs,
    ends: motifs * wish.endsAMotif,
    offPercent:
      100 * (Math.abs(width - wish.width) / wish.width + Math.abs(height - wish.height) / wish.height),
  };
}

/** Counts along one side, nearest to the wish first; a little more than are told, so that ties at the end are seen. */
function nearestCounts(wished: number, border: number, side: number, many: number): number[] {
  const exact = (wished - 2 * border) / side;
  let below = Math.floor(exact);
  let above = Math.max(1, below + 1);
  const counts: number[] = [];
  while (counts.length < many) counts.push(below >= 1 && exact - below <= above - exact ? below-- : above++);
  return counts;
}

/** How far a side with so many motifs is off what was wished, as a part of it. */
const partOff = (motifs: number, side: number, border: number, wished: number) =>
  Math.abs(motifs * side + 2 * border - wished) / wished;

/**
 * The best options, at most `most`. Width and height are off independently of each other, so among the best pairs of a size
 * are only the best counts of each side: that is all that has to be tried to rank every combination there is.
 */
export function search(wish: Wish, sizes: readonly MotifSize[], most = MOST_OPTIONS): ResizeOption[] {
  const many = most + 2;
  let best: ResizeOption[] = [];
  for (const motif of sizes) {
    const columns = nearestCounts(wish.width, wish.border, motif.side, many);
    const rows = nearestCounts(wish.height, wish.border, motif.side, many);
    // Counts get no nearer further on, so what follows one that is clearly farther off than the last option told is left.
    const worst = (best[most - 1]?.offPercent ?? Infinity) + 2 * SAME;
    const offs = rows.map((row) => partOff(row, motif.side, wish.border, wish.height));
    const tried: ResizeOption[] = [];
    for (const [i, column] of columns.entries()) {
      const off = partOff(column, motif.side, wish.border, wish.width);
      // Before the pair (i, j) come all pairs of nearer counts, of which a tie can take back the last of each side.
      for (let j = 0; j < rows.length && Math.max(1, i) * Math.max(1, j) <= most; j++) {
        if (100 * (off + (offs[j] ?? 0)) > worst) break;
        tried.push(optionOf(wish, motif, column, rows[j] ?? 1));
      }
      if (100 * (off + (offs[0] ?? 0)) > worst) break;
    }
    if (tried.length > 0) best = [...best, ...tried].sort(rankOptions).slice(0, most);
  }
  return best;
}

/** The side (cm) of a blocked diagonal square, as the formulas of blocking give it, in plain arithmetic for the search. */
export function computeBlockedSide(gauge: Gauge, size: number): number {
  const across = ((2 * size + 1) * gauge.over) / gauge.stitches;
  const along = (2 * size * gauge.over) / rowsOfGauge(gauge);
  return Math.sqrt(across * across + along * along) / 2;
}

/** Sizes from half to double of the pattern's own, in whole steps from it; only its own where no step is given. */
export function listSizesAround(gauge: Gauge, size: number, step?: number): MotifSize[] {
  const one = (rows: number): MotifSize => ({ size: rows, side: computeBlockedSide(gauge, rows) });
  if (step === undefined) return [one(size)];
  const sizes: MotifSize[] = [];
  const below = Math.floor(size / 2 / step);
  const above = Math.floor(Math.min(size, MOST_ROWS - size) / step);
  for (let k = -below; k <= above; k++) sizes.push(one(size + k * step));
  return sizes;
}

export interface Resized {
  readonly options: readonly ResizeOption[];
  readonly best: ResizeOption;
  /** The best with the pattern's own size of motif, where the best of all changes it. */
  readonly bestOwnSize?: ResizeOption;
  readonly working: Working;
}

/**
 * The blankets nearest to `width` × `height` cm with a border of `border` cm all round, of motifs with a `side` (cm), or of
 * diagonal squares of `size` rising rows at a gauge, whose size may change by `rowStep`.
 *
 * Throws Problem where the motif is not given in exactly one way: motif-given-twice, motif-size-missing, gauge-missing,
 * gauge-rows-missing, row-step-without-size; where there is no room for one: smaller-than-a-motif, border-too-wide.
 */
export function resize(asked: {
  width: number;
  height: number;
  border: number;
  side?: number | undefined;
  gauge?: Gauge | undefined;
  size?: number | undefined;
  rowStep?: number | undefined;
  endsAMotif?: number | undefined;
}): Resized {
  const { width, height, border, gauge, size } = asked;
  const wish: Wish = { width, height, border, endsAMotif: asked.endsAMotif ?? ENDS_A_MOTIF };
  const sizes = listMotifSizes(asked);
  refuseImpossible(wish, sizes);
  const options = search(wish, sizes);
  const best = options[0];
  if (!best) throw new Error('a wish with room for a motif has an option');
  const own =
    best.size === size
      ? undefined
      : search(
          wish,
          sizes.filter((one) => one.size === size),
          1,
        )[0];
  const working = new Working();
  const side = gauge && best.size !== undefined ? reckonBlockedSide(gauge, best.size, working) : best.side;
  const across = working.do(BLANKET_LENGTH, { motifs_along: best.columns, side, border });
  const down = working.do(BLANKET_LENGTH, { motifs_along: best.rows, side, border }, 'Finished height');
  working.do(OFF, { width: across, wished_width: width, height: down, wished_height: height });
  const motifs = working.do(MOTIFS, { columns: best.columns, rows: best.rows });
  working.do(ENDS, { motifs, ends_a_motif: wish.endsAMotif });
  return defined({ options, best, bestOwnSize: own, working });
}

const ONE_WAY = `Give ${SAMPLE_SIDE}, or gauge:13x10 with size:12.`;

/** The sizes that the motif can have, by its side or by its rows. Throws a Problem where it is not given in exactly one way. */
export function listMotifSizes(asked: {
  side?: number | undefined;
  gauge?: Gauge | undefined;
  size?: number | undefined;
  rowStep?: number | undefined;
}): MotifSize[] {
  const { side, gauge, size, rowStep } = asked;
  if (side !== undefined) {
    const other = gauge ? 'gauge' : size !== undefined ? 'size' : undefined;
    if (other !== undefined) {
      throw new Problem('motif-given-twice', 'The motif is given twice, by its side and by its rows.', {
        option: other,
        hint: ONE_WAY,
      });
    }
    if (rowStep !== undefined) {
      throw new Problem('row-step-without-size', 'A side alone does not say what another row would add.', {
        option: 'row_step',
        hint: 'Give gauge and size instead of side, or leave row_step out.',
      });
    }
    return [{ side }];
  }
  if (gauge === undefined && size === undefined) {
    throw new Problem('motif-size-missing', 'How large one motif is, is not said.', {
      option: 'side',
      hint: ONE_WAY,
    });
  }
  if (gauge === undefined || size === undefined) {
    throw new Problem(
      gauge ? 'motif-size-missing' : 'gauge-missing',
      gauge
        ? 'The gauge alone does not say how large the motif is.'
        : 'The size alone does not say how large a stitch is.',
      { option: gauge ? 'size' : 'gauge', hint: ONE_WAY },
    );
  }
  return listSizesAround(gauge, size, rowStep);
}

/** Lengths are typed, not measured to the last digit: a wish this much short of one motif still has room for it. */
const HAIR = 1e-9;

function refuseImpossible({ width, height, border }: Wish, sizes: readonly MotifSize[]): void {
  const least = Math.min(...sizes.map(({ side }) => side));
  const short = Math.min(width, height);
  if (short - 2 * border >= least * (1 - HAIR)) return;
  // Whole motifs: the nearest that can really be made.
  const whole = (wanted: number) =>
    Math.max(1, Math.round((wanted - 2 * border) / least)) * least + 2 * border;
  const nearest = sizeText(whole(width), whole(height));
  const room = (short - least) / 2;
  if (room < 0) {
    throw new Problem('smaller-than-a-motif', 'That is smaller than one motif.', {
      option: width <= height ? 'width' : 'height',
      hint: `The nearest possible is ${nearest}${border > 0 ? ', the border counted in' : ''}.`,
    });
  }
  throw new Problem(
    'border-too-wide',
    2 * border >= short
      ? 'The border alone is wider than the blanket.'
      : 'Inside that border there is no room for one motif.',
    {
      option: 'border',
      hint: `At most border:${Math.floor(room * 100) / 100}cm leaves room for a motif; with this border the nearest possible is ${nearest}.`,
    },
  );
}
