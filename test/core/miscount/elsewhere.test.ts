/** Counts that belong to other rows than they were taken for. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCounts } from '../../../src/core/miscount/check-counts.ts';
import { findElsewhere } from '../../../src/core/miscount/elsewhere.ts';
import { planRows, SHAPES } from '../../../src/core/rows/index.ts';
import { asking } from '../../asking.ts';

describe('counts of other rows', () => {
  it('are found to belong to rows that have them all', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES.filter((shape) => shape !== 'flat')),
        fc.integer({ min: 4, max: 30 }),
        fc.nat(),
        fc.nat(),
        fc.integer({ min: 1, max: 5 }),
        (shape, size, really, taken, many) => {
          const { rows } = planRows(shape, { size });
          fc.pre(rows.length >= many);
          const from = 1 + (really % (rows.length - many + 1));
          const fromRow = 1 + (taken % (rows.length - many + 1));
          const counts = rows.slice(from - 1, from - 1 + many).map(({ count }) => count);
          fc.pre(counts[0] !== rows[fromRow - 1]!.count);
          const found = findElsewhere(planRows(shape, { size }), counts, fromRow)!;
          expect(found.slipAt).toBeUndefined();
          expect([found.firstRow, ...found.otherFirstRows]).toContain(from);
          expect([found.lastRow, ...found.otherLastRows]).toContain(from + many - 1);
          expect(rows.slice(found.firstRow - 1, found.lastRow).map(({ count }) => count)).toEqual(counts);
          const { wrong } = checkCounts(planRows(shape, { size }), counts, fromRow);
          expect(wrong!.causes[0]!.cause).toMatch(/ahead of|behind/);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('of which one went wrong are still told from a row that went wrong from the start', () => {
    const plan = planRows('diagonal', { size: 14 });
    expect(findElsewhere(plan, [13, 15, 16], 5)).toMatchObject({ by: 1, firstRow: 6, slipAt: 2 });
    // One slip explains these where they are.
    expect(findElsewhere(plan, [12, 14, 16], 5)).toBeUndefined();
    expect(findElsewhere(plan, [12, 13, 15], 5)).toBeUndefined();
  });

  it('do not exist where all rows are alike', () => {
    expect(findElsewhere(planRows('flat', { size: 20, otherSize: 9 }), [19, 19], 3)).toBeUndefined();
  });
});

describe('19 alone on a square of 14', () => {
  it('is row 9, never 16 too many to rip back', async () => {
    const text = await asking().text('/stitches check shape:diagonal size:14 counts:19');
    expect(text).toContain('row 9');
    expect(text).not.toMatch(/rip back|16 too many/i);
  });
  it('is so for a saved motif too, with a press that sets it right', async () => {
    const room = asking();
    await room.ask('/motif define name:moss shape:diagonal size:14');
    const answer = await room.ask('/progress counted counts:19');
    expect(answer.headline).toContain('row 9');
    expect(answer.figures).toMatchObject({ first_wrong_row: { value: 1 }, expected: { value: 3 } });
    const text = await room.text('/progress counted counts:19');
    expect(text).toContain('/progress at motif:moss row:9');
    expect(text).not.toMatch(/rip back|ripped back/i);
  });
});

describe('13, 15, 16 at row 7', () => {
  it('is one row ahead and one slip', async () => {
    const room = asking();
    await room.ask('/motif define name:moss shape:diagonal size:14');
    await room.ask('/progress at row:7');
    const answer = await room.ask('/progress counted counts:"13 15 16"');
    expect(answer.headline).toContain('1 row ahead');
    expect(answer.headline).toContain('row 8 has 16 stitches where 17 belong, 1 too few');
    expect(
      await room.figure('/stitches check shape:diagonal size:14 counts:"13 15 16" from_row:5', 'likely_row'),
    ).toBe(8);
  });
});
