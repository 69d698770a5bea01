/** Every cause of a miscount is worked out again from its words: what it would leave on the row, and what its mend leaves. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCounts } from '../../../src/core/miscount/check-counts.ts';
import type { Cause } from '../../../src/core/miscount/mending.ts';
import { planRows, SHAPES, type RowPlan, type Shape } from '../../../src/core/rows/index.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { asking } from '../../asking.ts';
import {
  ANYWHERE,
  BY_SHAPE,
  elsewhereOf,
  LISTS,
  noRowHasIt,
  pieceOf,
  planned,
  readElsewhere,
  reread,
  step,
  type Piece,
  type Reading,
} from './rereading.ts';
import { refused } from '../../refused.ts';

/** Counts that are right up to a row, off by `off` there, and afterwards go on from it, come right, or drift further. */
const AFTERWARDS = ['stays', 'right', 'drifts', 'ends'] as const;
type Afterwards = (typeof AFTERWARDS)[number];
function wrongFrom(
  of: RowPlan,
  fromRow: number,
  row: number,
  off: number,
  then: Afterwards,
  many: number,
): number[] {
  const before = of.rows.slice(fromRow - 1, row - 1).map(({ count }) => count);
  const after = of.rows.slice(row, row + (then === 'ends' ? 0 : many)).map(({ count }, index) => {
    if (then === 'right') return count;
    return count + off + (then === 'drifts' ? Math.sign(off) * (index + 1) : 0);
  });
  return [...before, of.rows[row - 1]!.count + off, ...after];
}

const names = (readings: readonly Reading[], piece: Piece) =>
  readings.filter(({ when }) => when(piece)).map(({ key }) => key);
const isLevel = ({ plan }: Piece) => new Set(plan.rows.map(({ count }) => count)).size === 1;
/** Further off than slips in one row reach. */
const isFar = (piece: Piece) =>
  Math.abs(piece.off) > 16 &&
  Math.abs(piece.off) > 2 * Math.abs(step(piece)) &&
  Math.abs(piece.off) > planned(piece, piece.row)! / 4;

/** What could have happened, by what each thing leaves on the row: the slips of one row, or, too far off for them, another row's. */
function possible(piece: Piece): string[] {
  const lists = isLevel(piece)
    ? []
    : names(
        LISTS.filter(({ key }) => key !== 'written down wrongly'),
        piece,
      );
  const slips = names([...BY_SHAPE, ...ANYWHERE], piece);
  return [...lists, ...(isFar(piece) ? ['written down wrongly'] : slips)].sort();
}

const figures = fc.record({
  shape: fc.constantFrom(...SHAPES),
  stitch: fc.constantFrom(...STITCHES),
  size: fc.integer({ min: 2, max: 14 }),
  otherSize: fc.integer({ min: 2, max: 14 }),
  where: fc.nat(),
  start: fc.nat(),
  off: fc.integer({ min: -30, max: 30 }).filter((off) => off !== 0),
  then: fc.constantFrom(...AFTERWARDS),
  many: fc.integer({ min: 1, max: 5 }),
});

const drawn = figures.map(({ shape, stitch, size, otherSize, where, start, off, then, many }) => {
  const two = shape === 'blocks' || shape === 'flat';
  const plan = planRows(shape, { size, stitch, ...(two ? { otherSize } : {}) });
  const row = 1 + (where % plan.rows.length);
  const fromRow = 1 + (start % row);
  return { plan, fromRow, row, counts: wrongFrom(plan, fromRow, row, off, then, many) };
});

describe('every cause', () => {
  it('leaves what was counted, is mended by what it says, and costs what it says; none is left out', () => {
    fc.assert(
      fc.property(drawn, ({ plan, fromRow, row, counts }) => {
        fc.pre(counts.every((count) => count >= 0));
        // A list that departs at once may belong to other rows: that is told below.
        fc.pre(row > fromRow);
        const piece = pieceOf(plan, counts, fromRow);
        const { wrong } = checkCounts(plan, counts, fromRow);
        expect(wrong!.causes.map((cause) => reread(piece, cause)).sort()).toEqual(possible(piece));
      }),
      { numRuns: 500 },
    );
  });

  it('of a list that departs at once is told from rows that the counts belong to', () => {
    // Every stretch of a small plan, taken for any other, with or without a slip behind it.
    const stretch = fc.record({
      shape: fc.constantFrom(...SHAPES),
      size: fc.integer({ min: 2, max: 9 }),
      otherSize: fc.integer({ min: 2, max: 9 }),
      really: fc.nat(),
      taken: fc.nat(),
      many: fc.integer({ min: 1, max: 5 }),
      slip: fc.integer({ min: -3, max: 3 }),
    });
    fc.assert(
      fc.property(stretch, ({ shape, size, otherSize, really, taken, many, slip }) => {
        const two = shape === 'blocks' || shape === 'flat';
        const plan = planRows(shape, { size, ...(two ? { otherSize } : {}) });
        fc.pre(plan.rows.length >= many);
        const from = 1 + (really % (plan.rows.length - many + 1));
        const fromRow = 1 + (taken % (plan.rows.length - many + 1));
        const counts = plan.rows
          .slice(from - 1, from - 1 + many)
          .map(({ count }, index) => count + (index >= 2 ? slip : 0));
        fc.pre(counts[0] !== plan.rows[fromRow - 1]!.count && counts.every((count) => count >= 0));
        holdAtOnce(plan, counts, fromRow);
      }),
      { numRuns: 400 },
    );
  });

  it('of a list that departs at once, be it at the very first row, is one of a slip where no other row explains it', () => {
    fc.assert(
      fc.property(drawn, ({ plan, row, counts, fromRow }) => {
        const from = counts.slice(row - fromRow);
        fc.pre(from.every((count) => count >= 0));
        holdAtOnce(plan, from, row);
        const begun = [plan.rows[0]!.count + from[0]! - plan.rows[row - 1]!.count, ...from.slice(1)].slice(
          0,
          plan.rows.length,
        );
        if (begun[0]! >= 0) holdAtOnce(plan, begun, 1);
      }),
      { numRuns: 300 },
    );
  });
});

/** A list whose first count is not that of its row: told from all rows that it may belong to, or from slips in one. */
function holdAtOnce(plan: RowPlan, counts: readonly number[], fromRow: number): void {
  const piece = pieceOf(plan, counts, fromRow);
  const { wrong } = checkCounts(plan, counts, fromRow);
  const found = elsewhereOf(piece);
  expect(wrong!.elsewhere).toEqual(
    found && {
      by: found.from - fromRow,
      firstRow: found.from,
      lastRow: found.from + counts.length - 1,
      otherFirstRows: found.others,
      otherLastRows: found.others.map((row) => row + counts.length - 1),
      ...(found.slipAt === undefined ? {} : { slipAt: found.slipAt }),
    },
  );
  const [first, ...rest] = wrong!.causes;
  const slips = names([...BY_SHAPE, ...ANYWHERE], piece).sort();
  if (!found) {
    expect(wrong!.slip).toBeUndefined();
    expect([first!, ...rest].map((cause) => reread(piece, cause)).sort()).toEqual(
      isFar(piece) ? ['written down wrongly'] : slips,
    );
    return;
  }
  const there = checkCounts(plan, counts, found.from);
  readElsewhere(piece, first!, there.wrong?.causes[0]);
  // Four at most are taken for slips where another row explains them.
  expect(rest.map((cause) => reread(piece, cause)).sort()).toEqual(
    isFar(piece) || Math.abs(piece.off) > 4 ? ['written down wrongly'] : slips,
  );
  const { row, expected, counted, causes } = there.wrong ?? {};
  expect(wrong!.slip).toEqual(
    found.slipAt === undefined
      ? undefined
      : { row, expected, counted, difference: counted! - expected!, causes },
  );
}

describe('a miscount', () => {
  it('has the counts, the next row, and what ripping undoes', () => {
    fc.assert(
      fc.property(drawn, ({ plan, fromRow, row, counts }) => {
        fc.pre(counts.every((count) => count >= 0));
        const piece = pieceOf(plan, counts, fromRow);
        const found = checkCounts(plan, counts, fromRow);
        const last = fromRow + counts.length - 1;
        const next = plan.rows.find((one) => one.row === last + 1)?.count;
        expect(found).toMatchObject({ fromRow, lastRow: last, difference: piece.off });
        expect(found.next).toBe(next);
        const wrong = found.wrong!;
        expect([wrong.row, wrong.counted, wrong.expected]).toEqual([
          row,
          counts[row - fromRow],
          plan.rows[row - 1]!.count,
        ]);
        const planned = plan.rows.filter((one) => one.row >= row && one.row <= last);
        expect(wrong.again).toBe(planned.reduce((total, one) => total + one.count, 0));
        // The reason that no row has such a count is given just where none has.
        const called = plan.worked === 'rounds' ? 'round' : 'row';
        const by = commonStep(plan);
        const slipped = isFar(piece)
          ? ''
          : `, so stitches were missed or added, in the work or in the counting; a slip in counting the ${called}s cannot be it`;
        const ends = isFar(piece)
          ? 'and no row of any size has it'
          : 'so a stitch was missed or added, in the work or in the counting; a slip in counting the rows cannot be it';
        expect(wrong.noRowHasIt).toBe(
          !noRowHasIt(piece)
            ? undefined
            : plan.shape === 'diagonal'
              ? `Every row of the diagonal square has an odd count. ${wrong.counted} is even, ${ends}.`
              : `The ${called}s of this piece go by ${by}s and none has ${wrong.counted}${slipped}.`,
        );
      }),
      { numRuns: 300 },
    );
  });

  it('says of right counts which row is next', () => {
    const plan = planRows('diagonal', { size: 3 });
    expect(checkCounts(plan, [5, 7], 2)).toMatchObject({ fromRow: 2, lastRow: 3, difference: 0, next: 5 });
    expect(checkCounts(plan, [5, 3, 1], 4)).not.toHaveProperty('next');
    expect(checkCounts(plan, [5, 7], 2)).not.toHaveProperty('wrong');
  });

  it('is refused where the plan has no such rows, with the counts that would do', () => {
    const circle = planRows('circle', { size: 4 });
    expect(() => checkCounts(circle, [6], 5)).toThrow(
      refused('no-such-row', { option: 'from_row', facts: { row: 5, rows: 4 } }),
    );
    expect(() => checkCounts(circle, [12, 18, 24, 30], 2)).toThrow(
      refused('too-many-counts', {
        option: 'counts',
        hint: 'Give at most 3 counts, or a smaller from_row.',
        facts: { most: 3, given: 4 },
      }),
    );
    expect(() => checkCounts(planRows('diagonal', { size: 2 }), [3], 5)).toThrow(
      expect.objectContaining({
        option: 'from_row',
        hint: 'Start from a row from 1 to 4.',
        facts: { row: 5, rows: 4 },
      }),
    );
  });
});

/** The largest step that all counts of the plan lie apart by: tried from the largest down. */
function commonStep({ rows }: RowPlan): number {
  for (let by = Math.max(...rows.map(({ count }) => count)); by > 1; by--)
    if (rows.every(({ count }) => (count - rows[0]!.count) % by === 0)) return by;
  return 1;
}

describe('of several causes the likeliest', () => {
  /** In the order in which they are told, for counts that speak for several. */
  it.each<[string, Shape, number, number[], string[]]>([
    [
      'one too few while it grows',
      'diagonal',
      12,
      [3, 5, 7, 8],
      ['increase missed at one end', 'stray', 'chain not counted'],
    ],
    [
      'the count of the row before',
      'diagonal',
      12,
      [3, 5, 5],
      ['increase missed at both ends', 'behind', 'one end decreased while it grows', 'stray'],
    ],
    [
      'the same, and on from it',
      'diagonal',
      12,
      [3, 5, 5, 7],
      ['behind', 'increase missed at both ends', 'one end decreased while it grows', 'stray'],
    ],
    ['the turn missed', 'diagonal', 3, [3, 5, 7, 9], ['turn missed', 'stray']],
    ['the turn too early', 'diagonal', 6, [3, 5, 7, 5], ['turned too early', 'two behind', 'stray']],
    [
      'a round without its corners',
      'clusters',
      4,
      [12, 12],
      ['round without its corners', 'clusters missing', 'behind', 'stray'],
    ],
    [
      'one increase missed',
      'circle',
      6,
      [6, 12, 17],
      ['increases missed', 'stray', 'first stitch skipped', 'stitch before the join missed'],
    ],
    ['one more on a straight piece', 'flat', 20, [20, 21], ['edge worked twice', 'chain counted', 'stray']],
  ])('%s', (_, shape, size, counts, keys) => {
    const plan = planRows(shape, {
      size,
      ...(shape === 'flat' ? { otherSize: 9, stitch: 'sc' as const } : {}),
    });
    const piece = pieceOf(plan, counts);
    expect(checkCounts(plan, counts).wrong!.causes.map((cause) => reread(piece, cause))).toEqual(keys);
  });
});

describe('the answer', () => {
  it('says it all in the order in which it is needed', async () => {
    const { ask } = asking();
    const { headline, lines, data } = await ask('/stitches check shape:diagonal size:12 counts:"3 5 7 8 10"');
    const [first, ...others] = data.causes as Cause[];
    expect(headline).toBe(
      'Row 4 is the first that departs, 8 stitches where 9 belong, 1 too few; most likely the increase at one end was missed, most often at the last stitch of the row.',
    );
    expect(lines!.slice(0, 4)).toEqual([
      `Why: ${first!.why}`,
      'Every row of the diagonal square has an odd count. 8 is even, so a stitch was missed or added, in the work or in the counting; a slip in counting the rows cannot be it.',
      `To mend it: ${first!.mend}`,
      `What that costs: ${first!.cost}`,
    ]);
    expect(lines!.slice(4)).toHaveLength(Math.min(3, others.length));
  });
});
