/**
 * Common practice: a colour hanging at the side is picked up again only if the rows between are even in number and few;
 * each unbroken length of yarn leaves two ends, so three lengths leave six, however many stripes.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  reckonCarriedStrand,
  CARRY_PAST,
  cutLengths,
  findOtherStripes,
} from '../../../src/core/stripes/carrying.ts';
import { joinRuns, countRows } from '../../../src/core/stripes/colour-runs.ts';
import { readRuns } from '../../../src/core/stripes/read-runs.ts';
import { planRows } from '../../../src/core/rows/index.ts';
import { Working } from '../../../src/core/base/working.ts';

const square = planRows('diagonal', { size: 12 });
const rounds = planRows('clusters', { size: 24 });
const of = (text: string, plan = square) => cutLengths(plan, readRuns(text, plan.rows.length, plan.called));

describe('carrying or cutting', () => {
  it('one colour is one length with two ends', () => {
    expect(cutLengths(square, [])).toMatchObject({ ends: 2, endsIfCut: 2, carriedOver: 0 });
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
    const other = findOtherStripes(square, readRuns('3 rows moss, 3 rows sand, four times', 24));
    expect(other[0]).toEqual({
      runs: readRuns('4 rows moss, 4 rows sand, three times', 24),
      ends: 4,
      saves: 12,
    });
    expect(findOtherStripes(square, readRuns('4 rows moss, 4 rows sand, three times', 24))).toEqual([]);
  });

  // Worked stripe by stripe on paper: which heights save ends, the fewest ends first, then those nearest to what there was.
  it.each([
    [
      '5 rows moss, 1 row sand, four times',
      24,
      [
        ['4 2', 4],
        ['2 2', 4],
        ['4 4', 4],
        ['6 2', 8],
        ['4 1', 12],
      ],
    ],
    [
      '7 rows moss, 3 rows sand, twice',
      20,
      [
        ['8 4', 4],
        ['4 2', 4],
        ['4 4', 4],
        ['2 2', 4],
        ['6 2', 6],
      ],
    ],
    // Three stripes that repeat but for the end: carried on in twos, the last one row.
    [
      '3 rows moss, 3 rows sand, twice, then 3 rows moss',
      15,
      [
        ['4 4 4 3', 4],
        ['2 2 2 2 2 2 2 1', 4],
      ],
    ],
    // The last stripe may be cut short, and repeats all the same.
    [
      '3 rows moss, 3 rows sand, twice, then 3 rows moss, 1 row sand',
      16,
      [
        ['4 4 4 4', 4],
        ['2 2 2 2 2 2 2 2', 4],
      ],
    ],
    // Nothing repeats: the last takes what is left, and no colour is lost.
    ['3 rows moss, 3 rows sand, 3 rows moss, 3 rows clay', 12, [['2 2 2 6', 6]]],
    ['3 rows moss, 1 row sand, 3 rows moss, 1 row clay', 8, [['2 2 2 2', 6]]],
    // A last stripe that is longer is no repeat: the four stripes as they are, the last one filling up.
    [
      '3 rows moss, 1 row sand, 3 rows moss, 3 rows sand',
      10,
      [
        ['4 2 4', 4],
        ['2 2 2 4', 4],
        ['4 4 2', 4],
      ],
    ],
  ] as const)('%s: what saves ends', (text, rows, expected) => {
    const plan = planRows('flat', { size: 10, otherSize: rows });
    const runs = readRuns(text, rows);
    const others = findOtherStripes(plan, runs);
    const now = cutLengths(plan, runs).ends;
    expect(
      others.map((one, index) => [
        one.runs
          .slice(0, expected[index]?.[0].split(' ').length)
          .map(({ rows: height }) => height)
          .join(' '),
        one.ends,
      ]),
    ).toEqual(expected);
    for (const one of others) {
      expect(one.saves).toBe(now - one.ends);
      expect(Object.keys(one).sort()).toEqual(['ends', 'runs', 'saves']);
    }
  });

  it('in rounds tries the most that is carried past', () => {
    // Neither fives nor sixes are carried past, but of sixes there are fewer; fours and twos are.
    const others = findOtherStripes(
      rounds,
      readRuns('5 rounds moss, 5 rounds sand, twice, then 4 rounds moss', 24, 'round'),
    );
    expect(others.map(({ runs, ends }) => [runs[0]!.rows, ends])).toEqual([
      [4, 4],
      [2, 4],
      [6, 8],
    ]);
  });

  it('counts the lengths of each colour', () => {
    const { byColour } = of('3 rows moss, 3 rows sand, four times');
    expect([...byColour]).toEqual([
      ['moss', { lengths: 4, ends: 8, carriedOver: 0 }],
      ['sand', { lengths: 4, ends: 8, carriedOver: 0 }],
    ]);
  });

  it('takes a length up once more where it lies nearer', () => {
    // Moss is cut at row 8, five rows on; from there it climbs past two.
    const { lengths: all } = of('2 rows moss, 5 rows sand, 2 rows moss, 2 rows sand, 13 rows moss');
    expect(
      all.map(({ colour, fromRow, toRow, carriedOver }) => [colour, fromRow, toRow, carriedOver]),
    ).toEqual([
      ['moss', 1, 2, 0],
      ['sand', 3, 11, 2],
      ['moss', 8, 24, 2],
    ]);
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
        const rows = countRows(runs);
        const plan = inRounds
          ? planRows('clusters', { size: rows })
          : planRows('flat', { size: 10, otherSize: rows });
        const carried = cutLengths(plan, runs);
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
        for (const one of findOtherStripes(plan, runs)) {
          expect(countRows(one.runs)).toBe(rows);
          expect(cutLengths(plan, one.runs).ends).toBe(one.ends);
          expect(one.saves).toBe(carried.ends - one.ends);
          expect(one.saves).toBeGreaterThan(0);
        }
      }),
    );
  });

  it('the strand climbs as high as the rows it passes: 14 rows of 1 cm are 14 cm', () => {
    expect(reckonCarriedStrand(14, 1, new Working())).toBeCloseTo(0.14, 12);
  });
});
