/**
 * How far the yarn at hand goes: the largest blanket of a setting, or motifs alone. Every size there is gets tried, so the
 * answer is exact; the search is plain arithmetic, for speed, and the tests hold it to the formulas that are shown.
 */
import { TAIL } from '../../standards/consumption.ts';
import { kindCounts, MOST_ALONG, MOST_PLACES, type Laying } from './layout.ts';
import type { Extent, Pieces } from './materials.ts';
import { sameColour, yarnOf } from '../yarn/motif-yarn.ts';
import { Problem } from '../base/problem.ts';
import { formula, type Working } from '../base/working.ts';

export const AT_HAND = formula({
  label: 'Yarn at hand',
  formula: 'balls * ball_length',
  given: { balls: '', ball_length: 'm' },
  unit: 'm',
  source: 'derived',
});
export const SPARE = formula({
  label: 'Left over (short, where it is below nothing)',
  formula: 'at_hand - yarn',
  given: { at_hand: 'm', yarn: 'm' },
  unit: 'm',
  source: 'derived: what is there less what is needed, the reserve counted in',
});
export const WHOLE_MOTIFS = formula({
  label: 'Whole motifs',
  formula: 'floor(round(at_hand / (each * (1 + reserve / 100)), 6))',
  given: { at_hand: 'm', each: 'm', reserve: '' },
  unit: '',
  source: 'derived: whole motifs only',
});

/** What comes out even on paper is enough, whatever the last digit of the machine says (metres). */
const HAIR = 1e-6;

/** Metres of every colour (in the order of `pieces.colours`) that a blanket of some extent takes, the reserve counted in. */
export function needOf(pieces: Pieces): (extent: Extent) => number[] {
  const index = (colour: string) => pieces.colours.findIndex((known) => sameColour(known, colour));
  const perKind = pieces.motifs.map((motif) => {
    const each = pieces.colours.map(() => 0);
    for (const part of motif.colours)
      each[index(part.colour)] = (each[index(part.colour)] ?? 0) + part.worked + part.tails + part.carried;
    return each;
  });
  const seam = index(pieces.seam.colour);
  const { side, border, reserve } = pieces;
  const rounds = border.rounds.map((round, at, all) => ({
    colour: index(round.colour),
    perStitch: round.perStitch,
    tails: at > 0 && index(all[at - 1]?.colour ?? '') === index(round.colour) ? 0 : 2 * TAIL,
  }));
  const along = (motifs: number) =>
    Math.max(1, Math.ceil(Math.round(((motifs * side) / border.stitchWidth) * 1e6) / 1e6 - 0.5));
  return ({ columns, rows, counts }) => {
    const need = pieces.colours.map(() => 0);
    const add = (colour: number, metres: number) => (need[colour] = (need[colour] ?? 0) + metres);
    perKind.forEach((each, kind) => {
      const many = counts[kind] ?? 0;
      if (many > 0) each.forEach((metres, colour) => add(colour, metres * many));
    });
    if (columns * rows > 1) {
      const seams = (columns - 1) * rows + (rows - 1);
      add(seam, ((side * ((columns - 1) * rows + (rows - 1) * columns)) / 100) * pieces.seam.ratio);
      add(seam, seams * 2 * TAIL);
    }
    if (rounds.length > 0) {
      const sides = 2 * (along(columns) + along(rows));
      rounds.forEach(({ colour, perStitch, tails }, at) => {
        const stitches = sides + 4 * (border.corner - 1) * at + 4 * border.corner;
        add(colour, stitches * perStitch + tails);
      });
    }
    return need.map((metres) => metres * (1 + reserve / 100));
  };
}

/** Metres at hand by colour, in the order of `pieces.colours`; undefined where she did not say how much there is. */
export const stockOf = (pieces: Pieces): (number | undefined)[] =>
  pieces.colours.map((colour) => {
    const yarn = yarnOf(pieces.yarns, colour);
    return yarn?.balls === undefined || !yarn.ball ? undefined : yarn.balls * yarn.ball.m;
  });

const enough = (need: readonly number[], stock: readonly (number | undefined)[]) =>
  need.every((metres, colour) => metres <= (stock[colour] ?? Infinity) + HAIR);

export interface Fit {
  /** The largest that can be made within the proportions; unset where not even the smallest can. */
  readonly best?: Extent;
  /** The largest of any proportions, and with the columns as they are, where those are other sizes. */
  readonly anyShape?: Extent;
  readonly sameColumns?: Extent;
  /** The colour that runs out first, going on from the best. */
  readonly first?: string;
  /** Sizes tried. */
  readonly tried: number;
}

/** How much a blanket's proportions may change before it is another blanket, in per cent, where she does not say. */
export const USUAL_STRETCH = 25;

/**
 * The most motifs, laid on as the blanket is laid now, that the yarn at hand makes: any whole columns and rows whose proportion
 * differs from the blanket's own by at most `stretch` per cent; of equally many motifs the nearest proportion.
 * Throws a Problem where no colour's balls are known.
 */
export function fit(pieces: Pieces, laying: Laying, stretch = USUAL_STRETCH): Fit {
  const stock = stockOf(pieces);
  if (stock.every((metres) => metres === undefined)) {
    throw new Problem('unsorted', 'How much yarn is at hand is not known for any colour.', {
      option: 'colour',
      hint: `Say it colour by colour: /blanket colours colour:${pieces.colours[0] ?? 'moss'} ball:170m/100g balls:4.`,
    });
  }
  const need = needOf(pieces);
  const wanted = laying.columns / laying.rows;
  const off = ({ columns, rows }: { columns: number; rows: number }) =>
    Math.abs(Math.log(columns / rows / wanted));
  const within = Math.log(1 + stretch / 100) + 1e-9;
  const sizes: { columns: number; rows: number; motifs: number; off: number }[] = [];
  const most = Math.min(MOST_PLACES, motifsAtMost(pieces, stock));
  for (let columns = 1; columns <= MOST_ALONG; columns++)
    for (let rows = 1; rows <= MOST_ALONG && columns * rows <= most; rows++)
      sizes.push({ columns, rows, motifs: columns * rows, off: off({ columns, rows }) });
  sizes.sort((a, b) => b.motifs - a.motifs || a.off - b.off || a.columns - b.columns);
  // From the largest down: the first that the yarn makes is the answer to each of the three questions.
  let tried = 0;
  let best: Extent | undefined;
  let anyShape: Extent | undefined;
  let sameColumns: Extent | undefined;
  for (const { columns, rows, off: away } of sizes) {
    const asked = {
      best: !best && away <= within,
      anyShape: !anyShape,
      sameColumns: !sameColumns && columns === laying.columns,
    };
    if (!asked.best && !asked.anyShape && !asked.sameColumns) continue;
    tried++;
    const extent = extentOf(laying, columns, rows);
    if (!enough(need(extent), stock)) continue;
    if (asked.best) best = extent;
    if (asked.anyShape) anyShape = extent;
    if (asked.sameColumns) sameColumns = extent;
    if (best && sameColumns) break;
  }
  const same = (a?: Extent, b?: Extent) => a?.columns === b?.columns && a?.rows === b?.rows;
  const from = best ?? extentOf(laying, 1, 1);
  return {
    ...(best ? { best } : {}),
    ...(anyShape && !same(anyShape, best) ? { anyShape } : {}),
    ...(sameColumns && !same(sameColumns, best) ? { sameColumns } : {}),
    ...firstOut(pieces, need(from), stock),
    tried,
  };
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
        .reduce((sum, part) => sum + part.worked + part.tails + part.carried, 0),
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
  counts: kindCounts({ ...laying, columns, rows }),
});

/** The colour whose stock is used up by the largest part. */
function firstOut(
  pieces: Pieces,
  need: readonly number[],
  stock: readonly (number | undefined)[],
): { first?: string } {
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
  return first === undefined ? {} : { first };
}

export interface EachFit {
  /** How many of each kind, if all the yarn goes to that kind; undefined where nothing limits it. */
  readonly alone: readonly (number | undefined)[];
  /** How many of every kind alike, if they share the yarn; undefined where nothing limits them. */
  readonly together?: number;
  /** The colour that stops them then. */
  readonly first?: string;
}

/**
 * Motifs alone, without seams and border: the most of each kind by itself, and the most of every kind alike. The steps are added to the
 * working.
 */
export function fitEach(pieces: Pieces, working: Working): EachFit {
  const stock = stockOf(pieces);
  const { reserve } = pieces;
  const each = pieces.motifs.map((motif) =>
    pieces.colours.map((colour) =>
      motif.colours
        .filter((part) => sameColour(part.colour, colour))
        .reduce((sum, part) => sum + part.worked + part.tails + part.carried, 0),
    ),
  );
  const whole = (need: readonly number[], of: string) => {
    let most: number | undefined;
    let first: string | undefined;
    need.forEach((metres, colour) => {
      const there = stock[colour];
      const name = pieces.colours[colour] ?? '';
      if (metres <= 0 || there === undefined) return;
      const many = working.do(
        WHOLE_MOTIFS,
        { at_hand: there, each: metres, reserve },
        `${of}, as far as ${name} goes`,
      );
      if (most === undefined || many < most) {
        most = many;
        first = name;
      }
    });
    return { many: most, first };
  };
  const alone = pieces.motifs.map(({ name }, kind) => whole(each[kind] ?? [], `${name} alone`).many);
  const together = whole(
    pieces.colours.map((_, colour) => each.reduce((sum, kind) => sum + (kind[colour] ?? 0), 0)),
    'One of every kind',
  );
  return {
    alone,
    ...(together.many === undefined ? {} : { together: together.many }),
    ...(together.first === undefined ? {} : { first: together.first }),
  };
}
