/**
 * How far the yarn at hand goes: the largest blanket of a setting. Every size there is gets tried, so the answer is exact;
 * the search is plain arithmetic, for speed, and the tests hold it to the formulas that are shown.
 */
import { defined } from '../base/defined.ts';
import { MOST_ALONG, MOST_PLACES } from '../base/limits.ts';
import { Problem } from '../base/problem.ts';
import { countKinds, countKindsOtherwise, type Laying } from './layout.ts';
import type { Extent } from './materials.ts';
import type { Pieces } from './pieces.ts';
import { metresOf, needOf, stockOf } from './yarn-at-hand.ts';

/** What comes out even on paper is enough, whatever the last digit of the machine says (metres). */
const HAIR = 1e-6;

const enough = (need: readonly number[], stock: readonly (number | undefined)[]) =>
  need.every((metres, colour) => metres <= (stock[colour] ?? Infinity) + HAIR);

export interface Fit {
  /** The largest that can be made within the proportions; unset where not even the smallest can. */
  readonly best?: Extent;
  /** The largest of any proportions, and with the columns as they are, where those are other sizes. */
  readonly anyShape?: Extent;
  readonly sameColumns?: Extent;
  /** The colour that runs out first, going on from the best; unset where no yarn is what ends it. */
  readonly first?: string;
  /** True where the best has kinds in other counts than its size is usually laid with: a tie that the yarn settles. */
  readonly otherCounts?: true;
  /** True where the best is the largest that is laid at all, and the yarn would go further. */
  readonly atLimit?: true;
  /** Sizes tried. */
  readonly tried: number;
}

/** How much a blanket's proportions may change before it is another blanket, in per cent, where she does not say. */
export const USUAL_STRETCH = 25;

/** A size of blanket, and how far its proportion is off the blanket's own (as a logarithm, so that twice and half count alike). */
interface Candidate {
  readonly columns: number;
  readonly rows: number;
  readonly away: number;
}

/** Every size of at most so many motifs, those of most motifs first; of equally many the nearest proportion. */
function sizesDown(laying: Laying, most: number): Candidate[] {
  const wanted = laying.columns / laying.rows;
  const sizes: Candidate[] = [];
  for (let columns = 1; columns <= MOST_ALONG; columns++)
    for (let rows = 1; rows <= MOST_ALONG && columns * rows <= most; rows++)
      sizes.push({ columns, rows, away: Math.abs(Math.log(columns / rows / wanted)) });
  return sizes.sort(
    (a, b) => b.columns * b.rows - a.columns * a.rows || a.away - b.away || a.columns - b.columns,
  );
}

/** How far a proportion may be off, as a logarithm. */
const stretchOf = (stretch: number) => Math.log(1 + stretch / 100) + 1e-9;

/** The most motifs that are laid in these proportions at all. */
const mostWithin = (laying: Laying, stretch: number): number =>
  sizesDown(laying, MOST_PLACES)
    .filter(({ away }) => away <= stretchOf(stretch))
    .reduce((most, { columns, rows }) => Math.max(most, columns * rows), 0);

/** From the largest down: the first that the yarn makes is the answer to each of the three questions. */
function searchDown(
  laying: Laying,
  sizes: readonly Candidate[],
  { stretch, made }: { stretch: number; made: (columns: number, rows: number) => Extent | undefined },
): Pick<Fit, 'tried'> & { [Which in 'best' | 'anyShape' | 'sameColumns']?: Extent } {
  const within = stretchOf(stretch);
  const largest: { best?: Extent; anyShape?: Extent; sameColumns?: Extent } = {};
  let tried = 0;
  for (const { columns, rows, away } of sizes) {
    const open = {
      best: !largest.best && away <= within,
      anyShape: !largest.anyShape,
      sameColumns: !largest.sameColumns && columns === laying.columns,
    };
    if (!open.best && !open.anyShape && !open.sameColumns) continue;
    tried++;
    const extent = made(columns, rows);
    if (!extent) continue;
    if (open.best) largest.best = extent;
    if (open.anyShape) largest.anyShape = extent;
    if (open.sameColumns) largest.sameColumns = extent;
    if (largest.best && largest.sameColumns) break;
  }
  return { ...largest, tried };
}

/**
 * The most motifs, laid on as the blanket is laid now, that the yarn at hand makes: any whole columns and rows whose proportion
 * differs from the blanket's own by at most `stretch` per cent; of equally many motifs the nearest proportion.
 *
 * Throws Problem: yarn-at-hand-unknown, where no colour's balls are known.
 */
export function findLargestBlanket(pieces: Pieces, laying: Laying, stretch = USUAL_STRETCH): Fit {
  const stock = stockOf(pieces);
  if (stock.every((metres) => metres === undefined)) {
    const [colour = 'moss'] = pieces.colours;
    throw new Problem('yarn-at-hand-unknown', 'How much yarn is at hand is not known for any colour.', {
      option: 'colour',
      hint: 'Say it colour by colour: its ball, and how many there are.',
      facts: { colour },
    });
  }
  const need = needOf(pieces);
  const sizes = sizesDown(laying, Math.min(MOST_PLACES, motifsAtMost(pieces, stock)));
  const { best, anyShape, sameColumns, tried } = searchDown(laying, sizes, {
    stretch,
    // Of two kinds with equal claims to a place the yarn decides.
    made: (columns, rows) =>
      [extentOf(laying, columns, rows), ...otherExtents(laying, columns, rows)].find((extent) =>
        enough(need(extent), stock),
      ),
  });
  const atLimit =
    best && best.columns * best.rows === mostWithin(laying, stretch) ? (true as const) : undefined;
  const other = (extent?: Extent) =>
    extent?.columns === best?.columns && extent?.rows === best?.rows ? undefined : extent;
  return defined({
    best,
    anyShape: other(anyShape),
    sameColumns: other(sameColumns),
    otherCounts: best && !enough(need(extentOf(laying, best.columns, best.rows)), stock) ? true : undefined,
    atLimit,
    first: atLimit ? undefined : findFirstOut(pieces, need(best ?? extentOf(laying, 1, 1)), stock),
    tried,
  });
}

/** More motifs than this take more than all the yarn, even if all were of the kind that takes least: no larger size need be tried. */
function motifsAtMost(pieces: Pieces, stock: readonly (number | undefined)[]): number {
  const limited = new Set(
    pieces.colours.filter((_, colour) => stock[colour] !== undefined).map((colour) => colour.toLowerCase()),
  );
  const least = Math.min(
    ...pieces.motifs.map((motif) =>
      motif.colours
        .filter(({ colour }) => limited.has(colour.toLowerCase()))
        .reduce((sum, part) => sum + metresOf(part), 0),
    ),
  );
  const there = stock.reduce<number>((sum, metres) => sum + (metres ?? 0), 0);
  return least > 0
    ? Math.floor((there + HAIR * stock.length) / (least * (1 + pieces.reserve / 100)) + HAIR)
    : Infinity;
}

/** A blanket laid on to another size: its columns and rows, and how many of each kind that makes. */
export const extentOf = (laying: Laying, columns: number, rows: number): Extent => ({
  columns,
  rows,
  counts: countKinds({ ...laying, columns, rows }),
});

/** The same with ties between kinds settled otherwise. */
const otherExtents = (laying: Laying, columns: number, rows: number): Extent[] =>
  countKindsOtherwise({ ...laying, columns, rows }).map((counts) => ({ columns, rows, counts }));

/** The colour whose stock is used up by the largest part. */
function findFirstOut(
  pieces: Pieces,
  need: readonly number[],
  stock: readonly (number | undefined)[],
): string | undefined {
  let most = -1;
  let first: string | undefined;
  need.forEach((metres, colour) => {
    const there = stock[colour];
    if (there === undefined || metres === 0) return;
    const used = there === 0 ? Infinity : metres / there;
    if (used > most) {
      most = used;
      first = pieces.colours[colour];
    }
  });
  return first;
}
