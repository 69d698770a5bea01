/**
 * Common practice: a colour hanging at the side is picked up again only if the rows between are even in number and few;
 * each unbroken length of yarn leaves two ends, so three lengths leave six, however many stripes.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { carriedStrand, CARRY_PAST, lengths, otherStripes } from '../../../src/core/stripes/carrying.ts';
import { joinRuns, rowsIn } from '../../../src/core/stripes/colour-runs.ts';
import { readRuns } from '../../../src/core/stripes/read-runs.ts';
import { rowPlan } from '../../../src/core/rows/index.ts';
import { Working } from '../../../src/core/base/working.ts';

const square = rowPlan('diagonal', { size: 12 });
const rounds = rowPlan('clusters', { size: 24 });
const of = (text: string, plan = square) => lengths(plan, readRuns(text, plan.rows.length, plan.called));

describe('carrying or cutting', () => {
  it('one colour is one length with two ends', () => {
    expect(lengths(square, [])).toMatchObject({ ends: 2, endsIfCut: 2, carriedOver: 0 });
  });

  it('even stripes of two colours climb the side: two lengths, however many stripes', () => {
    const carried = of('2 rows moss, 2 rows sand, six times');
    expect(carried).toMatchObject({ ends: 4, endsIfCut: 24 });
    // Moss climbs past five stripes of sand, sand past five of moss.
    expect(carried.carriedOver).toBe(20);
    expect(carried.lengths.map(({ colour, fromRow, toRow, rows }) => [colour, fromRow, toRow, rows])).toEqual(
      [
        ['moss', 1, 22, 12],
        ['sand', 3, 24, 12],
      ],
    );
  });

  it('odd stripes of two colours must be cut in rows: two ends a stripe', () => {
    expect(of('3 rows moss, 3 rows sand, four times')).toMatchObject({
      ends: 16,
      endsIfCut: 16,
      carriedOver: 0,
    });
  });

  it('three colours of one row each come back to their side', () => {
    expect(of('1 row moss, 1 row sand, 1 row clay, eight times')).toMatchObject({ ends: 6, endsIfCut: 48 });
  });

  it('counts the ends of each colour, which are all ends', () => {
    const { byColour, ends } = of('3 rows moss, 2 rows sand, 3 rows moss, 16 rows sand');
    // Moss climbs past two rows of sand; sand is cut, as three rows end at the other side.
    expect([...byColour].map(([colour, one]) => [colour, one.ends])).toEqual([
      ['moss', 2],
      ['sand', 4],
    ]);
    expect(ends).toBe(6);
  });

  it('joined rounds begin at one place, so odd ones carry too', () => {
    expect(of('3 rounds moss, 3 rounds sand, four times', rounds)).toMatchObject({ ends: 4 });
    expect(of('5 rounds moss, 5 rounds sand, twice, then 4 rounds moss', rounds)).toMatchObject({ ends: 10 });
  });

  it('more rows than a few are not carried past', () => {
    expect(of('6 rows moss, 6 rows sand, twice')).toMatchObject({ ends: 8 });
  });

  it('other heights that save ends are offered, checked, and never longer or shorter', () => {
    const other = otherStripes(square, readRuns('3 rows moss, 3 rows sand, four times', 24));
    expect(other[0]).toEqual({
      runs: readRuns('4 rows moss, 4 rows sand, three times', 24),
      ends: 4,
      saves: 12,
    });
    expect(otherStripes(square, readRuns('4 rows moss, 4 rows sand, three times', 24))).toEqual([]);
  });

  const someRuns = fc
    .array(fc.record({ colour: fc.constantFrom('a', 'b', 'c', 'd'), rows: fc.integer({ min: 1, max: 7 }) }), {
      minLength: 1,
      maxLength: 14,
    })
    .map(joinRuns);

  it('every row belongs to one length, and every pick-up obeys the rule', () => {
    fc.assert(
      fc.property(someRuns, fc.boolean(), (runs, inRounds) => {
        const rows = rowsIn(runs);
        const plan = inRounds
          ? rowPlan('clusters', { size: rows })
          : rowPlan('flat', { size: 10, otherSize: rows });
        const carried = lengths(plan, runs);
        expect(carried.ends).toBe(2 * carried.lengths.length);
        expect(carried.ends).toBeLessThanOrEqual(carried.endsIfCut);
        expect(carried.lengths.reduce((sum, one) => sum + one.rows, 0)).toBe(rows);
        // Each change of colour either joins a new length or picks one up.
        const pickUps = carried.lengths.flatMap((one) => one.pickUps);
        expect(carried.lengths.length + pickUps.length).toBe(runs.length);
        for (const { row, since, over } of pickUps) {
          expect(over).toBe(row - since - 1);
          expect(over).toBeLessThanOrEqual(CARRY_PAST);
          if (!inRounds) expect(over % 2).toBe(0);
        }
        expect([...carried.byColour.values()].reduce((sum, one) => sum + one.carriedOver, 0)).toBe(
          carried.carriedOver,
        );
        for (const one of otherStripes(plan, runs)) {
          expect(rowsIn(one.runs)).toBe(rows);
          expect(lengths(plan, one.runs).ends).toBe(one.ends);
          expect(one.saves).toBe(carried.ends - one.ends);
          expect(one.saves).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('the strand climbs as high as the rows it passes: 14 rows of 1 cm are 14 cm', () => {
    expect(carriedStrand(14, 1, new Working())).toBeCloseTo(0.14, 12);
  });
});
