/** Blankets of a wished number of motifs: how they can be set, how large that comes out, or how large each motif must be. */
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { SAMPLE_SIDE } from '../base/samples.ts';
import { count } from '../base/reader.ts';
import { formula, Working } from '../base/working.ts';
import { reckonBlockedSide } from './blocking.ts';
import {
  BLANKET_LENGTH,
  ENDS,
  MOST_OPTIONS,
  MOTIFS,
  OFF,
  optionOf,
  rankOptions,
  type MotifSize,
  type ResizeOption,
} from './resize.ts';
import type { Gauge } from '../base/quantity.ts';
import type { WishedSize } from './wished-size.ts';

export const SIDE_FOR_LENGTH = formula({
  label: 'Side of a motif that fits the width',
  formula: '(length - 2 * border) / motifs_along',
  given: { length: 'cm', border: 'cm', motifs_along: '' },
  unit: 'cm',
  source: 'derived: what the borders leave, shared by the motifs side by side',
});

/** The most motifs that a number is set out for. */
export const MOST_WISHED = 2500;

/** A blanket narrower than this to its length is a scarf: such settings are told last (our own choice). */
const NARROWEST = 0.5;

/** Every way of setting so many motifs in whole columns and rows, as `columns × rows`. */
export function listSettings(motifs: number): { columns: number; rows: number }[] {
  const found: { columns: number; rows: number }[] = [];
  for (let columns = 1; columns <= motifs; columns++)
    if (motifs % columns === 0) found.push({ columns, rows: motifs / columns });
  return found;
}

const shortToLong = ({ columns, rows }: { columns: number; rows: number }) =>
  Math.min(columns, rows) / Math.max(columns, rows);

/** Whether the number can be set as something that is not a strip. */
const sets = (motifs: number) => listSettings(motifs).some((one) => shortToLong(one) >= NARROWEST);

export interface WishedNumber {
  readonly options: readonly ResizeOption[];
  readonly best: ResizeOption;
  /** Where the number sets as a strip only: the nearest numbers below and above that do not. */
  readonly fewer?: number;
  readonly more?: number;
  readonly working: Working;
}

/** A wished number of motifs, and what else is said of the blanket: lengths in cm. */
interface AskedNumber {
  readonly motifs: number;
  readonly border: number;
  readonly endsAMotif: number;
  /** Sizes that the motif can have; empty where its side is what is asked. */
  readonly sizes: readonly MotifSize[];
  readonly gauge?: Gauge | undefined;
  readonly wish?: WishedSize | undefined;
}

/**
 * Blankets of exactly `motifs` motifs. With a wished size the settings nearest to it come first; without one, the ones nearest to a
 * square, higher than wide. Where the motif's side is not given (`sizes` empty), it is the one that fits the wished size best.
 *
 * Throws Problem: side-missing, border-too-wide.
 */
export function resizeToNumber(asked: AskedNumber): WishedNumber {
  refuseImpossible(asked);
  const options = listOptions(asked);
  const best = options[0];
  if (!best) throw new Error('every number can be set as a strip');
  const working = new Working();
  showOption(best, asked, working);
  return defined({ options, best, ...findNearStrip(asked.motifs), working });
}

function refuseImpossible({ motifs, border, sizes, wish }: AskedNumber): void {
  if (sizes.length === 0 && wish === undefined)
    throw new Problem('side-missing', 'How large one motif is, or the whole blanket is to be, is not said.', {
      option: 'side',
      hint: `Give ${SAMPLE_SIDE}, or gauge:13x10 with size:12, or the width and height you wish for.`,
      facts: { motifs },
    });
  if (wish && 2 * border >= Math.min(wish.width, wish.height))
    throw new Problem('border-too-wide', 'The border alone is wider than the blanket.', {
      option: 'border',
      hint: `Give a border narrower than half of the blanket.`,
    });
}

/** Every setting in every size that the motif can have, the best first. */
function listOptions({ motifs, border, endsAMotif, sizes, wish }: AskedNumber): ResizeOption[] {
  const optionWith = (motif: MotifSize, columns: number, rows: number): ResizeOption => {
    // Where nothing is wished of the size, nothing is off.
    const { width, height } = wish ?? {
      width: columns * motif.side + 2 * border,
      height: rows * motif.side + 2 * border,
    };
    return optionOf({ width, height, border, endsAMotif }, motif, columns, rows);
  };
  return listSettings(motifs)
    .flatMap(({ columns, rows }) => {
      const fit = sizes.length === 0 && wish ? [{ side: fitting(wish, border, columns, rows) }] : sizes;
      return fit.map((motif) => optionWith(motif, columns, rows));
    })
    .sort(wish ? rankOptions : bySquareness)
    .slice(0, MOST_OPTIONS);
}

/** The best option worked out as it is shown. */
function showOption(
  best: ResizeOption,
  { motifs, border, endsAMotif, sizes, gauge, wish }: AskedNumber,
  working: Working,
): void {
  const side =
    gauge && best.size !== undefined
      ? reckonBlockedSide(gauge, best.size, working)
      : sizes.length > 0 || !wish
        ? best.side
        : shownSide(wish, border, best, working);
  working.do(MOTIFS, { columns: best.columns, rows: best.rows });
  const across = working.do(BLANKET_LENGTH, { motifs_along: best.columns, side, border });
  const down = working.do(BLANKET_LENGTH, { motifs_along: best.rows, side, border }, 'Finished height');
  if (wish)
    working.do(OFF, {
      width: across,
      wished_width: wish.width,
      height: down,
      wished_height: wish.height,
    });
  working.do(ENDS, { motifs, ends_a_motif: endsAMotif });
}

/** Where a number sets as a strip only, the nearest numbers that do not. */
function findNearStrip(motifs: number): Pick<WishedNumber, 'fewer' | 'more'> {
  if (sets(motifs)) return {};
  // A strip is of three motifs at least; two set well, and so does some square or double square before their number is doubled.
  const near = (step: number): number => {
    let n = motifs + step;
    while (!sets(n)) n += step;
    return n;
  };
  return { fewer: near(-1), more: near(1) };
}

/** Nearest to a square first, then higher than wide, then the smaller motif. */
const bySquareness = (a: ResizeOption, b: ResizeOption) =>
  shortToLong(b) - shortToLong(a) || a.columns - b.columns || a.side - b.side;

/** Both sides that fit, one by the width and one by the height. */
const bothSides = (wish: WishedSize, border: number, columns: number, rows: number) => ({
  byWidth: (wish.width - 2 * border) / columns,
  byHeight: (wish.height - 2 * border) / rows,
});

/** What both deviations add up to is least at the one or the other: it is straight between them. */
function fitting(wish: WishedSize, border: number, columns: number, rows: number): number {
  const { byWidth, byHeight } = bothSides(wish, border, columns, rows);
  const off = (side: number) =>
    Math.abs(columns * side + 2 * border - wish.width) / wish.width +
    Math.abs(rows * side + 2 * border - wish.height) / wish.height;
  const [small, large] = [Math.min(byWidth, byHeight), Math.max(byWidth, byHeight)];
  return off(large) < off(small) ? large : small;
}

function shownSide(wish: WishedSize, border: number, best: ResizeOption, working: Working): number {
  const { byWidth, byHeight } = bothSides(wish, border, best.columns, best.rows);
  const byTheWidth = Math.abs(best.side - byWidth) <= Math.abs(best.side - byHeight);
  return byTheWidth
    ? working.do(SIDE_FOR_LENGTH, { length: wish.width, border, motifs_along: best.columns })
    : working.do(
        SIDE_FOR_LENGTH,
        { length: wish.height, border, motifs_along: best.rows },
        'Side of a motif that fits the height',
      );
}

/** What is said where the number sets as a strip only. */
export function describeStrip(
  motifs: number,
  { fewer, more }: Pick<WishedNumber, 'fewer' | 'more'>,
): string | undefined {
  const told = (n: number) => {
    const best = listSettings(n).reduce((a, b) => (shortToLong(b) > shortToLong(a) ? b : a));
    return `${best.columns} × ${best.rows} with ${count(n, 'motif')}`;
  };
  const near = [fewer, more].filter((n) => n !== undefined).map(told);
  return near.length === 0
    ? undefined
    : `${count(motifs, 'motif')} only make a strip; better set: ${near.join(', or ')}.`;
}
