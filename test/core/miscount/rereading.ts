/**
 * Reads the sentences of a miscount as a maker would and works them: what each cause would have left on the row, what each mend
 * leaves, what each cost undoes. Nothing of the core is used but the plan's counts.
 */
import { expect } from 'vitest';
import type { Cause } from '../../../src/core/miscount/mending.ts';
import type { RowPlan } from '../../../src/core/rows/index.ts';

/** A list of counts that departs from its plan, worked out from the plan's counts alone. */
export interface Piece {
  readonly plan: RowPlan;
  readonly counts: readonly number[];
  readonly fromRow: number;
  /** The row that departs first. */
  readonly row: number;
  readonly off: number;
}

export const planned = ({ plan }: Pick<Piece, 'plan'>, row: number): number | undefined =>
  plan.rows[row - 1]?.count;
const lastRow = ({ fromRow, counts }: Piece) => fromRow + counts.length - 1;
const countOf = ({ fromRow, counts }: Piece, row: number) => counts[row - fromRow];
const name = ({ plan }: Piece) => (plan.worked === 'rounds' ? 'round' : 'row');
const unit = ({ plan }: Piece, n: number) =>
  plan.counted === 'blocks' ? (n === 1 ? 'block' : 'blocks') : n === 1 ? 'stitch' : 'stitches';
/** What the plan adds from the row before to this one. */
export const step = (piece: Piece) =>
  planned(piece, piece.row)! - (planned(piece, piece.row - 1) ?? planned(piece, piece.row)!);

export function pieceOf(plan: RowPlan, counts: readonly number[], fromRow = 1): Piece {
  const at = counts.findIndex((counted, index) => counted !== plan.rows[fromRow + index - 1]!.count);
  const row = fromRow + at;
  return { plan, counts, fromRow, row, off: counts[at]! - plan.rows[row - 1]!.count };
}

/** Stitches that each kind wants in a corner, and chains at the start of a row with whether they count: the handbook's. */
const CORNER = { sc: 3, hdc: 4, dc: 5, tr: 7 } as const;
const TURNING = {
  sc: { chains: 1, counts: false },
  hdc: { chains: 2, counts: true },
  dc: { chains: 3, counts: true },
  tr: { chains: 4, counts: true },
} as const;

/** In the falling rows of the diagonal square the chain stands for nothing. */
const chainCounts = (piece: Piece) =>
  TURNING[piece.plan.stitch].counts && !(piece.plan.shape === 'diagonal' && step(piece) < 0);

/** How a row is put right: ripped, or made up at the hook; or nothing but the list is wrong. */
export type Repair = 'rip' | 'make up' | 'list' | 'recount';

export interface Reading {
  readonly key: string;
  /** What is read, from the first word to the last. */
  readonly words: RegExp;
  /** Whether this happening in that row leaves what was counted. */
  readonly when: (piece: Piece) => boolean;
  /** Whether the figures in the words, those in brackets, are the piece's. */
  readonly says?: (piece: Piece, said: readonly string[]) => boolean;
  readonly repair: Repair;
  /** Whether the reason that is given is true, and of this cause. */
  readonly why: RegExp;
  readonly whyFits?: (piece: Piece, said: readonly string[]) => boolean;
}

const shape = (piece: Piece, ...shapes: readonly string[]) => shapes.includes(piece.plan.shape);
const isRow = (piece: Piece, text = '') => Number(text) === piece.row;
const isBefore = (piece: Piece, text = '') => Number(text) === piece.row - 1;
const first = (piece: Piece) => piece.row === 1;
/** What the row has if both ends do this to the count of the row before. */
const ends = (piece: Piece, one: number, other: number) =>
  !first(piece) && planned(piece, piece.row)! + piece.off === planned(piece, piece.row - 1)! + one + other;
const grows = (piece: Piece) => step(piece) > 0;
const away = (piece: Piece, text = '') => Number(text) === Math.abs(piece.off);

const TOO = '(too many|too few)';
const isToo = (piece: Piece, text = '') => (piece.off > 0 ? 'too many' : 'too few') === text;

/** The causes of each shape. An increase makes one more, a decrease one fewer, at either end of the row. */
export const BY_SHAPE: readonly Reading[] = [
  {
    key: 'diagonal begun wrongly',
    words:
      /^The first row began with (\d+) stitch(?:es)? instead of 3: the skipped chains stand as one, and two go into the first chain\.$/,
    when: (piece) => shape(piece, 'diagonal') && first(piece),
    says: (piece, [began]) => Number(began) === 3 + piece.off,
    repair: 'rip',
    why: /^Everything after grows from this row\.$/,
  },
  ...(['increase', 'decrease'] as const).flatMap((change): Reading[] => {
    const by = change === 'increase' ? 1 : -1;
    const here = (piece: Piece) => shape(piece, 'diagonal') && grows(piece) === (by === 1);
    return [
      {
        key: `${change} missed at one end`,
        words: new RegExp(
          `^The ${change} at one end was missed, most often at the last stitch of the row\\.$`,
        ),
        when: (piece) => here(piece) && ends(piece, by, 0),
        repair: 'make up',
        why: new RegExp(`^One ${TOO} is one ${change}; both ends need one\\.$`),
        whyFits: (piece, [too]) => isToo(piece, too),
      },
      {
        key: `${change} missed at both ends`,
        words: new RegExp(`^The ${change}s at both ends were missed: row (\\d+) was worked straight\\.$`),
        when: (piece) => here(piece) && ends(piece, 0, 0),
        says: isRowIn,
        repair: 'make up',
        why: /^The count is that of row (\d+) again\.$/,
        whyFits: (piece, [row]) =>
          isBefore(piece, row) && planned(piece, piece.row)! + piece.off === planned(piece, piece.row - 1),
      },
    ];
  }),
  {
    key: 'one end decreased while it grows',
    words: /^One end was decreased instead of increased; the other was increased as it should be\.$/,
    when: (piece) => shape(piece, 'diagonal') && grows(piece) && ends(piece, 1, -1),
    repair: 'rip',
    why: /^That too makes two (too many|too few), and leaves one edge leaning inwards\.$/,
    whyFits: (piece, [too]) => isToo(piece, too) && Math.abs(piece.off) === 2,
  },
  {
    key: 'one end increased while it shrinks',
    words: /^One end was increased instead of decreased; the other was decreased as it should be\.$/,
    when: (piece) => shape(piece, 'diagonal') && !grows(piece) && ends(piece, 1, -1),
    repair: 'rip',
    why: /^That too makes two (too many|too few)\.$/,
    whyFits: (piece, [too]) => isToo(piece, too) && Math.abs(piece.off) === 2,
  },
  {
    key: 'turned too early',
    words: /^Both ends were decreased instead of increased: the turn was worked too early\.$/,
    when: (piece) => shape(piece, 'diagonal') && grows(piece) && ends(piece, -1, -1),
    repair: 'rip',
    why: /^The count is 2 fewer than row (\d+); it should be 2 more\.$/,
    whyFits: (piece, [row]) => isBefore(piece, row) && ends(piece, -1, -1) && step(piece) === 2,
  },
  {
    key: 'turn missed',
    words: /^The turn was missed: both ends were increased where they should be decreased\.$/,
    when: (piece) => shape(piece, 'diagonal') && piece.row === piece.plan.size + 1 && ends(piece, 1, 1),
    repair: 'rip',
    why: /^The count is 2 more than row (\d+); after row (\d+) it should be 2 fewer\.$/,
    whyFits: (piece, [row, turn]) =>
      isBefore(piece, row) && Number(turn) === piece.plan.rows.length / 2 && ends(piece, 1, 1),
  },
  {
    key: 'both ends increased while it shrinks',
    words: /^Both ends were increased instead of decreased\.$/,
    when: (piece) => shape(piece, 'diagonal') && piece.row > piece.plan.size + 1 && ends(piece, 1, 1),
    repair: 'rip',
    why: /^The count is 2 more than row (\d+); after row (\d+) it should be 2 fewer\.$/,
    whyFits: (piece, [row, turn]) =>
      isBefore(piece, row) && Number(turn) === piece.plan.rows.length / 2 && ends(piece, 1, 1),
  },
  {
    key: 'one more at an end',
    words:
      /^A stitch was worked into the turning chain and one more beside it, or an end got 3 instead of 2\.$/,
    when: (piece) => shape(piece, 'diagonal') && grows(piece) && ends(piece, 1, 2),
    repair: 'make up',
    why: /^Both ends did their increase, and one more came\.$/,
  },
  {
    key: 'one fewer at an end',
    words: /^Three were taken together at one end instead of two, or a stitch was skipped\.$/,
    when: (piece) => shape(piece, 'diagonal') && !grows(piece) && ends(piece, -1, -2),
    repair: 'make up',
    why: /^Both ends did their decrease, and one more went\.$/,
  },
  {
    key: 'three at both ends',
    words: /^Both ends got 3 instead of 2\.$/,
    when: (piece) => shape(piece, 'diagonal') && grows(piece) && ends(piece, 2, 2),
    repair: 'make up',
    why: /^Two (too many|too few), and the increases come in pairs\.$/,
    whyFits: (piece, [too]) => isToo(piece, too),
  },
  {
    key: 'three together at both ends',
    words: /^Three were taken together at both ends instead of two\.$/,
    when: (piece) => shape(piece, 'diagonal') && !grows(piece) && ends(piece, -2, -2),
    repair: 'make up',
    why: /^Two (too many|too few), and the decreases come in pairs\.$/,
    whyFits: (piece, [too]) => isToo(piece, too),
  },
  // Blocks.
  {
    key: 'blocks begun wrongly',
    words: /^The piece begins with one block in the corner\.$/,
    when: (piece) => shape(piece, 'blocks') && first(piece),
    repair: 'rip',
    why: /^Everything after grows from it\.$/,
  },
  {
    key: 'new block left out',
    words:
      /^The new block at the start of row (\d+) was left out, or the last sl st and block were skipped\.$/,
    when: (piece) => shape(piece, 'blocks') && grows(piece) && ends(piece, 0, 0),
    says: isRowIn,
    repair: 'rip',
    why: /^One block too few in a growing row is one block not begun\.$/,
    whyFits: (piece) => piece.off === -1,
  },
  {
    key: 'blocks turned too early',
    words: /^The row was begun as a shrinking one: the turn came too early\.$/,
    when: (piece) => shape(piece, 'blocks') && grows(piece) && piece.off < -1,
    repair: 'rip',
    why: /^The count fell from (\d+) where it should rise\.$/,
    whyFits: (piece, [from]) =>
      Number(from) === planned(piece, piece.row - 1) && Number(from) > countOf(piece, piece.row)!,
  },
  {
    key: 'two blocks in a space',
    words: /^Two blocks were worked into one space\.$/,
    when: (piece) => shape(piece, 'blocks') && grows(piece) && piece.off > 0,
    repair: 'rip',
    why: /^A growing row gains one block only, at its start\.$/,
  },
  {
    key: 'level row not dropped',
    words: /^A block was added at the start and the last one was not dropped\.$/,
    when: (piece) => shape(piece, 'blocks') && !first(piece) && step(piece) === 0 && piece.off > 0,
    repair: 'rip',
    why: /^From row (\d+) on the plan keeps its count\.$/,
    whyFits: isRowIn,
  },
  {
    key: 'blocks’ turn missed',
    words:
      /^The turn was missed: row (\d+) should begin with sl sts over a block and end one block sooner\.$/,
    when: (piece) => shape(piece, 'blocks') && step(piece) === -1 && piece.off > 0,
    says: isRowIn,
    repair: 'rip',
    why: /^From row (\d+) on the plan loses a block a row\.$/,
    whyFits: isRowIn,
  },
  {
    key: 'row of blocks ended too soon',
    words: /^The row ended a block too soon\.$/,
    when: (piece) => shape(piece, 'blocks') && !first(piece) && !grows(piece) && piece.off < 0,
    repair: 'rip',
    why: /^A block of the row before was not worked into\.$/,
  },
  // Flat.
  ...([-1, 1] as const).map((way): Reading => ({
    key: way < 0 ? 'last stitch missed' : 'edge worked twice',
    words:
      way < 0
        ? /^The last stitch of the row was missed: it stands at the very edge and hides under the turning chain\.$/
        : /^A stitch was worked into the edge twice, at the start or at the end of the row\.$/,
    when: (piece) => shape(piece, 'flat') && Math.sign(piece.off) === way,
    repair: 'make up',
    why: /^(?:The (count drifts) the same way row after row, so it happens at an edge every time|(One|A few) (too many|too few) in a straight piece mostly happens at an edge)\.$/,
    whyFits: (piece, [drifts, few, too]) => {
      const rest = piece.counts
        .slice(piece.row - piece.fromRow)
        .map((counted) => way * (counted - piece.plan.size));
      // At least one more is out with every row.
      const drifting = rest.length > 1 && rest.every((off, index) => off >= index + 1);
      if (drifts !== undefined) return drifting;
      return !drifting && isToo(piece, too) && (few === 'One') === (Math.abs(piece.off) === 1);
    },
  })),
  // Clusters: three stitches each, one more at each of four corners a round.
  {
    key: 'round without its corners',
    words: /^Each corner got one cluster instead of two: round (\d+) was worked without its corners\.$/,
    when: (piece) => shape(piece, 'clusters') && !first(piece) && piece.off === -4 * 3,
    says: isRowIn,
    repair: 'rip',
    why: /^The count is that of round (\d+) again\.$/,
    whyFits: (piece, [row]) => isBefore(piece, row),
  },
  {
    key: 'clusters missing',
    words:
      /^(\d+) whole clusters? missing: a space was passed over, or a corner got one cluster instead of two\.$/,
    when: (piece) => shape(piece, 'clusters') && piece.off < 0 && piece.off % 3 === 0,
    says: (piece, [many]) => piece.off === -3 * Number(many),
    repair: 'rip',
    why: /^The difference is a multiple of 3, and a cluster is 3 stitches\.$/,
  },
  {
    key: 'clusters more',
    words: /^(\d+) whole clusters? more: a space was worked twice, or a corner got three clusters\.$/,
    when: (piece) => shape(piece, 'clusters') && piece.off > 0 && piece.off % 3 === 0,
    says: (piece, [many]) => piece.off === 3 * Number(many),
    repair: 'rip',
    why: /^The difference is a multiple of 3, and a cluster is 3 stitches\.$/,
  },
  ...([-1, 1] as const).map((way): Reading => ({
    key: way < 0 ? 'a short cluster' : 'a long cluster',
    words:
      way < 0
        ? /^A cluster has 2 stitches instead of 3, or the starting chain was not counted as a stitch\.$/
        : /^A cluster has 4 stitches instead of 3, or the starting chain was counted beside a whole cluster\.$/,
    when: (piece) => shape(piece, 'clusters') && Math.sign(piece.off) === way && piece.off % 3 !== 0,
    repair: 'rip',
    why: /^The difference is no multiple of 3, so it is not a whole cluster\.$/,
  })),
  // Solid squares: a corner makes several of one.
  ...([-1, 1] as const).map((way): Reading => ({
    key: way < 0 ? 'corners missed' : 'corners too many',
    words:
      way < 0
        ? /^(\d) corners? missed: one stitch there instead of (\d)\.$/
        : /^(\d) corners? too many: (\d) worked where one belongs\.$/,
    when: (piece) =>
      shape(piece, 'solid-square') &&
      !first(piece) &&
      [1, 2, 3, 4].some((many) => piece.off === way * many * (CORNER[piece.plan.stitch] - 1)),
    says: (piece, [many, corner]) =>
      Number(corner) === CORNER[piece.plan.stitch] && piece.off === way * Number(many) * (Number(corner) - 1),
    repair: 'rip',
    why: /^A corner makes (\d) of one, so each is worth (\d)\.$/,
    whyFits: ({ plan }, [corner, worth]) =>
      Number(corner) === CORNER[plan.stitch] && Number(worth) === CORNER[plan.stitch] - 1,
  })),
  {
    key: 'a corner of another size',
    words: /^A corner got (\d+) stitches instead of (\d)\.$/,
    when: (piece) =>
      shape(piece, 'solid-square') && !first(piece) && Math.abs(piece.off) < CORNER[piece.plan.stitch] - 1,
    says: (piece, [got, corner]) =>
      Number(corner) === CORNER[piece.plan.stitch] && Number(got) - Number(corner) === piece.off,
    repair: 'make up',
    why: /^(\d) stitch(?:es)? (too many|too few) is less than a whole corner\.$/,
    whyFits: (piece, [off, too]) => away(piece, off) && isToo(piece, too),
  },
  // Circles and hexagons.
  {
    key: 'round without its increases',
    words: /^Round (\d+) was worked without its increases\.$/,
    when: (piece) => shape(piece, 'circle', 'hexagon') && !first(piece) && piece.off === -step(piece),
    says: isRowIn,
    repair: 'rip',
    why: /^The count is that of round (\d+) again\.$/,
    whyFits: (piece, [row]) => isBefore(piece, row),
  },
  {
    key: 'increases missed',
    words: /^(\d+) increases? of (\d+) missed\.$/,
    when: (piece) =>
      shape(piece, 'circle', 'hexagon') && !first(piece) && piece.off < 0 && -piece.off < step(piece),
    says: (piece, [many, of]) => Number(of) === step(piece) && piece.off === -Number(many),
    repair: 'make up',
    why: /^Each increase is worth one stitch\.$/,
  },
  {
    key: 'increases too many',
    words: /^(\d+) increases? too many: the increases came too close together\.$/,
    when: (piece) => shape(piece, 'circle', 'hexagon') && !first(piece) && piece.off > 0,
    says: (piece, [many]) => piece.off === Number(many),
    repair: 'make up',
    why: /^Each increase is worth one stitch\.$/,
  },
];

function isRowIn(piece: Piece, [row]: readonly string[]): boolean {
  return isRow(piece, row);
}

const oneOff = (piece: Piece, way: number) => piece.off === way && piece.plan.counted === 'stitches';
const chain = (piece: Piece, text = '') => text === (piece.plan.worked === 'rounds' ? 'starting' : 'turning');

/** The causes that any shape has. */
export const ANYWHERE: readonly Reading[] = [
  {
    key: 'chain not counted',
    words:
      /^The (starting|turning) chain was not counted, or not worked into: in (\w+) its (\d) chains stand as the first stitch\.$/,
    when: (piece) => oneOff(piece, -1) && chainCounts(piece),
    says: (piece, [which, stitch, chains]) =>
      chain(piece, which) &&
      stitch === piece.plan.stitch &&
      Number(chains) === TURNING[piece.plan.stitch].chains,
    repair: 'recount',
    why: /^One (too many|too few), and the (starting|turning) chain is the stitch most often counted wrong\.$/,
    whyFits: (piece, [too, which]) => isToo(piece, too) && chain(piece, which),
  },
  {
    key: 'stitch at the foot of the chain',
    words:
      /^The (starting|turning) chain stands as the first stitch in (\w+), and a stitch was worked at its foot besides\.$/,
    when: (piece) => oneOff(piece, 1) && chainCounts(piece),
    says: (piece, [which, stitch]) => chain(piece, which) && stitch === piece.plan.stitch,
    repair: 'recount',
    why: /^One (too many|too few), and the (starting|turning) chain is the stitch most often counted wrong\.$/,
    whyFits: (piece, [too, which]) => isToo(piece, too) && chain(piece, which),
  },
  {
    key: 'first stitch skipped',
    words:
      /^The first stitch was skipped as if the (starting|turning) chain stood for it; here it does not\.$/,
    when: (piece) => oneOff(piece, -1) && !chainCounts(piece),
    says: (piece, [which]) => chain(piece, which),
    repair: 'recount',
    why: /^One (too many|too few), and the (starting|turning) chain is the stitch most often counted wrong\.$/,
    whyFits: (piece, [too, which]) => isToo(piece, too) && chain(piece, which),
  },
  {
    key: 'chain counted',
    words: /^The (starting|turning) chain was counted as a stitch; here it is not one\.$/,
    when: (piece) => oneOff(piece, 1) && !chainCounts(piece),
    says: (piece, [which]) => chain(piece, which),
    repair: 'recount',
    why: /^One (too many|too few), and the (starting|turning) chain is the stitch most often counted wrong\.$/,
    whyFits: (piece, [too, which]) => isToo(piece, too) && chain(piece, which),
  },
  {
    key: 'joining stitch counted',
    words: /^The sl st that joins the round was counted, or worked into, as a stitch\.$/,
    when: (piece) => piece.plan.worked === 'rounds' && oneOff(piece, 1),
    repair: 'make up',
    why: /^At the join one stitch is easily taken for another\.$/,
  },
  {
    key: 'stitch before the join missed',
    words: /^The last stitch before the joining sl st was missed\.$/,
    when: (piece) => piece.plan.worked === 'rounds' && oneOff(piece, -1),
    repair: 'make up',
    why: /^At the join one stitch is easily taken for another\.$/,
  },
  {
    key: 'stray',
    words:
      /^A (stitch|block) was (skipped|worked twice) in the middle of the (row|round)(, more than once)?\.$/,
    when: () => true,
    says: (piece, [what, how, called, more]) =>
      what === unit(piece, 1) &&
      how === (piece.off < 0 ? 'skipped' : 'worked twice') &&
      called === name(piece) &&
      (more !== undefined) === Math.abs(piece.off) > 1,
    repair: 'make up',
    why: /^(?:(\d+) (?:stitch|block)(?:e?s)? (too many|too few) could be this anywhere in the (?:row|round)|Every row .*|The (?:row|round)s of this piece .*)\.$/,
    whyFits: (piece, [off, too]) =>
      off === undefined ? noRowHasIt(piece) : !noRowHasIt(piece) && away(piece, off) && isToo(piece, too),
  },
];

/** Whether the count is told from every row of the plan by a remainder that they share: tried one divisor after the other. */
export function noRowHasIt(piece: Piece): boolean {
  const counted = planned(piece, piece.row)! + piece.off;
  const all = piece.plan.rows.map(({ count }) => count);
  for (let by = 2; by <= Math.max(...all); by++) {
    const left = new Set(all.map((count) => count % by));
    if (left.size === 1 && all.length > 1 && new Set(all).size > 1 && !left.has(counted % by)) return true;
  }
  return false;
}

export const LISTS: readonly Reading[] = [
  {
    key: 'ahead',
    words:
      /^You are (\d+) (row|round)s? ahead of where you think: these are the counts from (?:row|round) (\d+) on\.$/,
    when: (piece) => [1, 2].some((by) => restFits(piece, by)),
    says: (piece, [by, called, from]) =>
      called === name(piece) && Number(from) === piece.row + Number(by) && restFits(piece, Number(by)),
    repair: 'list',
    why: /^(The count matches|Both counts from here on match|All \d+ counts from here on match) the plan of (?:row|round) (\d+)( and after)?\.$/,
    whyFits: (piece, [many, from, after]) => manyMatch(piece, many, after) && Number(from) > piece.row,
  },
  {
    key: 'behind',
    words:
      /^You are 1 (row|round) behind: (?:row|round) (\d+) repeats the count of (?:row|round) (\d+), so it was noted twice or worked straight\.$/,
    when: (piece) => restFits(piece, -1),
    says: (piece, [called, row, as]) => called === name(piece) && isRow(piece, row) && isBefore(piece, as),
    repair: 'list',
    why: /^(The count matches|Both counts from here on match|All \d+ counts from here on match) the plan of (?:row|round) (\d+)( and after)?\.$/,
    whyFits: (piece, [many, from, after]) => manyMatch(piece, many, after) && isBefore(piece, from),
  },
  {
    key: 'two behind',
    words:
      /^You are 2 (row|round)s behind: from (?:row|round) (\d+) on the counts are those from (?:row|round) (\d+) on again, so 2 were noted twice\.$/,
    when: (piece) => piece.row - 2 >= piece.fromRow && restFits(piece, -2) && !restFits(piece, -1),
    says: (piece, [called, row, as]) =>
      called === name(piece) && isRow(piece, row) && Number(as) === piece.row - 2,
    repair: 'list',
    why: /^(The count matches|Both counts from here on match|All \d+ counts from here on match) the plan of (?:row|round) (\d+)( and after)?\.$/,
    whyFits: (piece, [many, from, after]) => manyMatch(piece, many, after) && Number(from) === piece.row - 2,
  },
  {
    key: 'written down wrongly',
    words:
      /^The count of (row|round) (\d+) was written down wrongly, or the work is of another size or shape than the one given\.$/,
    when: () => true,
    says: (piece, [called, row]) => called === name(piece) && isRow(piece, row),
    repair: 'list',
    why: /^(\d+) (?:stitch|block)(?:e?s)? where (\d+) belongs? is further off than one (?:row|round) goes wrong by\.$/,
    whyFits: (piece, [counted, belong]) =>
      Number(counted) === countOf(piece, piece.row) && Number(belong) === planned(piece, piece.row),
  },
];

/** The rows that counts belong to which depart at once: tried from every row of the plan, the nearest first. */
export function elsewhereOf({
  plan,
  counts,
  fromRow,
}: Piece): { from: number; others: number[]; slipAt?: number } | undefined {
  if (new Set(plan.rows.map(({ count }) => count)).size === 1) return undefined;
  const offsFrom = (from: number) =>
    counts.map((counted, index) => counted - (plan.rows[from + index - 1]?.count ?? NaN));
  const starts = plan.rows
    .map(({ row }) => row)
    .filter((from) => from !== fromRow && from + counts.length - 1 <= plan.rows.length)
    .sort((a, b) => Math.abs(a - fromRow) - Math.abs(b - fromRow) || b - a);
  const [from, ...others] = starts.filter((one) => offsFrom(one).every((off) => off === 0));
  if (from !== undefined) return { from, others };
  // How often the counts leave what they were: a slip is carried on by the rows after it.
  const slips = (one: number) =>
    offsFrom(one).reduce(({ last, many }, off) => ({ last: off, many: many + (off === last ? 0 : 1) }), {
      last: 0,
      many: 0,
    }).many;
  if (slips(fromRow) <= 1) return undefined;
  const slipped = starts.find((one) => offsFrom(one)[0] === 0 && offsFrom(one)[1] === 0 && slips(one) === 1);
  return slipped === undefined
    ? undefined
    : { from: slipped, others: [], slipAt: offsFrom(slipped).findIndex((off) => off !== 0) };
}

/** Reads the cause of a list that begins at other rows; `then` is what is said of the row that still went wrong. */
export function readElsewhere(
  piece: Piece,
  { cause, why, mend, cost }: Cause,
  then: Cause | undefined,
): void {
  const { from, others, slipAt } = elsewhereOf(piece)!;
  const called = name(piece);
  const by = Math.abs(from - piece.fromRow);
  const rows = `${by} ${called}${by === 1 ? '' : 's'}`;
  const way = from > piece.fromRow ? 'ahead of' : 'behind';
  const lone = piece.counts.length === 1;
  const turned = others.map((other) => `, or of ${called} ${other} after the turn`).join('');
  const where = `You are ${rows} ${way} where you think: ${lone ? `this is the count of ${called} ${from}` : `these are the counts from ${called} ${from} on`}${turned}`;
  if (slipAt === undefined) {
    expect(cause).toBe(`${where}.`);
    expect(why).toBe(
      lone
        ? `The count matches the plan of ${called} ${from}.`
        : `${piece.counts.length === 2 ? 'Both' : `All ${piece.counts.length}`} counts match the plan of ${called} ${from} and after.`,
    );
    if (way === 'ahead of') {
      expect(mend).toBe(
        `Nothing is wrong in the work: start the list from ${called} ${from} (from_row:${from}).`,
      );
      expect(cost).toBe('Nothing: the shape is as planned.');
      return;
    }
    const [, fewer, straight, rip] =
      /^Count the (?:row|round)s in the work\. If the work has (.*) fewer than the list, only the list is wrong: go on from there\. If not(, .* was worked without its change)?: (rip back .*)$/.exec(
        mend,
      ) ?? [];
    expect(fewer, mend).toBe(rows);
    expect(straight).toBe(by === 1 ? `, ${called} ${piece.row} was worked without its change` : undefined);
    const anew = workedAgain(piece, piece.row - 1);
    const again = `${anew} ${unit(piece, anew)} to work again; the shape stays true.`;
    expect(cost).toBe(
      `Nothing if only the list is wrong. ${by === 1 ? `Left in, one straight ${called} makes the edge step once and the piece a ${called} higher.` : `If not: ${again}`}`,
    );
    readRip(piece, small(rip!), again);
    return;
  }
  const row = from + slipAt;
  const belongs = planned(piece, row)!;
  const off = piece.counts[slipAt]! - belongs;
  expect(cause).toBe(
    `${where}, and ${called} ${row} has ${piece.counts[slipAt]!} where ${belongs} belong${belongs === 1 ? 's' : ''}, ${Math.abs(off)} too ${off < 0 ? 'few' : 'many'}.`,
  );
  expect(why).toBe(
    `The first ${slipAt} counts match the plan of ${called} ${from} and after; only then one ${called} goes wrong.`,
  );
  expect(mend.startsWith(`Start the list from ${called} ${from} (from_row:${from}). Then: `)).toBe(true);
  expect(small(mend.slice(mend.indexOf('Then: ') + 6))).toBe(then!.mend);
  expect(cost).toBe(then!.cost);
}

const restOf = (piece: Piece) => piece.counts.slice(piece.row - piece.fromRow);
/** Whether the counts from the departure on are the plan's, moved by so many rows. */
export const restFits = (piece: Piece, by: number) =>
  restOf(piece).every((counted, index) => counted === planned(piece, piece.row + by + index));
const manyMatch = (piece: Piece, text = '', after?: string) => {
  const many = restOf(piece).length;
  const said =
    many === 1
      ? 'The count matches'
      : many === 2
        ? 'Both counts from here on match'
        : `All ${many} counts from here on match`;
  return text === said && (after === undefined) === (many === 1);
};

const small = (text: string) => text.replace(/^./, (letter) => letter.toUpperCase());

/** What the plan has from the row after `kept` to the last that was counted. */
function workedAgain(piece: Piece, kept: number): number {
  let anew = 0;
  for (let row = kept + 1; row <= lastRow(piece); row++) anew += planned(piece, row)!;
  return anew;
}

/** Rips to where the mend says, and works again: what is kept must be right. */
function readRip(piece: Piece, mend: string, cost: string): void {
  const ripped =
    /^Rip back to (?:(the beginning)|the end of (row|round) (\d+)) and work (row|round) (\d+) again\.$/.exec(
      mend,
    );
  expect(ripped, mend).not.toBeNull();
  const [, beginning, , kept, called, again] = ripped!;
  const to = beginning === undefined ? Number(kept) : 0;
  expect([called, Number(again)]).toEqual([name(piece), to + 1]);
  for (let row = piece.fromRow; row <= to; row++) expect(countOf(piece, row)).toBe(planned(piece, row));
  expect(countOf(piece, to + 1)).not.toBe(planned(piece, to + 1));
  const anew = workedAgain(piece, to);
  expect(cost).toBe(
    `${anew.toLocaleString('en-US', { useGrouping: anew >= 10_000 })} ${unit(piece, anew)} to work again; the shape stays true.`,
  );
}

/** Works what is to be made up, row by row, until the counts are the plan's again; gives false where a mend rips instead. */
function readMakeUp(piece: Piece, mend: string, cost: string): void {
  const last = lastRow(piece);
  const now = countOf(piece, last)!;
  const off = now - planned(piece, last)!;
  if (off === 0) {
    expect(mend).toBe(`Nothing to mend: by ${name(piece)} ${last} the count is right again.`);
    expect(cost).toBe(`The edge steps a little at ${name(piece)} ${piece.row}; a seam or a border hides it.`);
    return;
  }
  // More than two show; a finished piece has no row left; and what lies far back is not mended from here.
  const complete = last === piece.plan.rows.length && last > piece.row;
  if (Math.abs(off) > 2 || complete || piece.plan.counted === 'blocks' || last > piece.row + 3) {
    readRip(piece, mend, cost);
    return;
  }
  const made =
    /^(?:At the end of this (row|round)|In (row|round) (\d+)) work (2 in one stitch|2 stitches together)(, twice and apart)?(, besides what belongs there)?, and the count is right again; or (rip back .*)$/.exec(
      mend,
    );
  expect(made, mend).not.toBeNull();
  const [, here, then, row, how, twice, besides, rip] = made!;
  expect(here ?? then).toBe(name(piece));
  const change = (how === '2 in one stitch' ? 1 : -1) * (twice === undefined ? 1 : 2);
  if (here !== undefined) {
    expect([last, besides]).toEqual([piece.row, undefined]);
    expect(now + change).toBe(planned(piece, last));
  } else {
    const next = Number(row);
    expect([next, besides]).toEqual([last + 1, ', besides what belongs there']);
    expect(now + (planned(piece, next)! - planned(piece, last)!) + change).toBe(planned(piece, next));
  }
  const [, shows, ripping] = /^(.*) Ripping back: (.*)$/.exec(cost) ?? [];
  const few = `${Math.abs(off)} ${unit(piece, Math.abs(off))}`;
  expect(shows).toBe(
    piece.plan.worked === 'rounds'
      ? `One side is ${few} out there: it ripples a little until it is blocked.`
      : `The edge steps by ${few} there; a seam or a border hides it.`,
  );
  readRip(piece, small(rip!), ripping!);
}

/** Only the list is at fault: with the missing rows put in, or the extra ones left out, it is the plan's. */
function readList(piece: Piece, key: string, mend: string, cost: string): void {
  const called = name(piece);
  if (key === 'written down wrongly') {
    expect(mend).toBe(
      `Count ${called} ${piece.row} again; if it really has ${countOf(piece, piece.row)!}, ask again with the size and shape that the work has.`,
    );
    expect(cost).toBe('Nothing if only the list is wrong.');
    return;
  }
  if (key === 'ahead') {
    const [, at, row, end] =
      /^(?:A count is|Counts are) missing in the list: look for (row|round) (\d+) in the work, and call the last one (?:row|round) (\d+)\.$/.exec(
        mend,
      ) ?? [];
    expect([at, Number(row)], mend).toEqual([called, piece.row]);
    const list: (number | undefined)[] = [...piece.counts];
    const missing = Number(end) - lastRow(piece);
    expect(missing).toBeGreaterThan(0);
    expect(mend.startsWith('A count is')).toBe(missing === 1);
    list.splice(
      piece.row - piece.fromRow,
      0,
      ...Array.from({ length: missing }, (_, index) => planned(piece, piece.row + index)),
    );
    expect(list).toEqual(piece.plan.rows.slice(piece.fromRow - 1, Number(end)).map(({ count }) => count));
    expect(cost).toBe('Nothing: the shape is as planned.');
    return;
  }
  const [, many, fewer, straight, rip] =
    /^Count the (?:row|round)s in the work\. If the work has (\d) ((?:row|round)s?) fewer than the list, only the list is wrong: go on from there\. If not(, (?:row|round) \d+ was worked without its change)?: (rip back .*)$/.exec(
      mend,
    ) ?? [];
  expect([many, fewer], mend).toEqual(key === 'behind' ? ['1', called] : ['2', `${called}s`]);
  const list = [...piece.counts];
  list.splice(piece.row - piece.fromRow - Number(many), Number(many));
  expect(list).toEqual(
    piece.plan.rows.slice(piece.fromRow - 1, piece.fromRow - 1 + list.length).map(({ count }) => count),
  );
  // Only once can a row without its change have the count of the one before.
  expect(straight).toBe(
    key === 'behind' ? `, ${called} ${piece.row} was worked without its change` : undefined,
  );
  const anew = workedAgain(piece, piece.row - 1);
  const again = `${anew} ${unit(piece, anew)} to work again; the shape stays true.`;
  expect(cost).toBe(
    `Nothing if only the list is wrong. ${key === 'behind' ? `Left in, one straight ${called} makes the edge step once and the piece a ${called} higher.` : `If not: ${again}`}`,
  );
  readRip(piece, small(rip!), again);
}

export const neutral = (text: string) => text.replaceAll(/[⟦⟧]/g, '');

/** Reads one cause whole and holds all it says against the piece; gives the name of what it was taken for. */
export function reread(piece: Piece, { cause, why, mend, cost }: Cause): string {
  const words = neutral(cause);
  const readings = [...BY_SHAPE, ...ANYWHERE, ...LISTS].filter((one) => one.words.test(words));
  const reading = readings.find(
    ({ words: read, when, says = () => true }) => when(piece) && says(piece, read.exec(words)!.slice(1)),
  );
  expect(reading, `${words} does not leave ${countOf(piece, piece.row)!} in row ${piece.row}`).toBeDefined();
  const { key, repair, why: reason, whyFits = () => true } = reading!;
  const said = reason.exec(neutral(why));
  expect(said && whyFits(piece, said.slice(1)), `${key}: ${why}`).toBe(true);
  if (repair === 'list') readList(piece, key, mend, cost);
  else if (repair === 'make up') readMakeUp(piece, mend, cost);
  else if (repair === 'recount') {
    const [, really, then] =
      /^Count the (?:row|round) again with that in mind; if the stitch is really (missing|there): (.*)$/.exec(
        mend,
      ) ?? [];
    expect(really).toBe(piece.off < 0 ? 'missing' : 'there');
    expect(mend).toContain(`Count the ${name(piece)} again`);
    readMakeUp(piece, small(then!), cost.replace('Nothing if it was only the counting. ', ''));
    expect(cost).toMatch(/^Nothing if it was only the counting\. /);
  } else if (key === 'turned too early') {
    const rip = mend.replace(' Or keep the early turn, and make every motif of this size.', '');
    const [, cheap, smaller] =
      /^(.*) Kept, the motif is (\d+) rising rows? smaller than planned\.$/.exec(cost) ?? [];
    expect(rip).not.toBe(mend);
    // Turned after the row before, it has so many rising rows.
    expect(piece.plan.size - Number(smaller)).toBe(piece.row - 1);
    readRip(piece, rip, cheap!);
  } else readRip(piece, mend, cost);
  return key;
}
