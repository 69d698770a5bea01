/** Where a class got stuck, what her counts tell, and the slip worked for showing. */
import { describe, expect, it } from 'vitest';
import type { Part, Work } from '../../../src/core/along/events.ts';
import { alone } from '../../../src/core/along/open.ts';
import { NO_WAY, reckonOwn } from '../../../src/core/along/own.ts';
import type { Stuck } from '../../../src/core/along/state.ts';
import { checkStuck, kindOfPart, slipIn } from '../../../src/core/along/stuck.ts';
import {
  exampleToShow,
  listHelpWanted,
  listTroubles,
  workedExample,
} from '../../../src/core/along/troubles.ts';
import { checkCounts } from '../../../src/core/miscount/check-counts.ts';
import { planOf, type MotifSpec } from '../../../src/core/yarn/motif.ts';
import { PATTERN, plan } from './scene.ts';

const FURROW = PATTERN.kinds[0]!;
const meadow: MotifSpec = {
  name: 'meadow',
  shape: 'solid-square',
  size: 7,
  stitch: 'dc',
  gauge: FURROW.gauge!,
  runs: [],
};
const part = (work: Work): Part => ({ id: 1, title: 'x', from: '2031-01-06', work });
const stuck = (maker: string, of: number, more: Partial<Stuck> = {}): Stuck => ({
  maker,
  part: of,
  at: '2031-01-07T12:00:00.000Z',
  help: false,
  ...more,
});
const parts = [part('swatch'), { ...part('first'), id: 9 }, { ...part('motifs'), id: 3 }];

describe('where a class got stuck', () => {
  it('is told by part, row and slip, the place of most makers first', () => {
    const told = listTroubles({
      parts,
      stuck: [
        stuck('a', 3),
        stuck('b', 3, { row: 9 }),
        stuck('c', 3, { row: 7 }),
        stuck('d', 9, { row: 8, slip: 'increase-missed' }),
        stuck('e', 9, { row: 8, slip: 'one-increase-too-many' }),
        stuck('f', 9, { row: 8, slip: 'increase-missed' }),
        stuck('g', 1),
      ],
    });
    expect(told).toEqual([
      { part: 9, row: 8, slip: 'increase-missed', makers: 2 },
      // Of as many makers: the earlier part, as they are listed and not by their ids; then the lower row; then by the slip.
      { part: 1, row: undefined, slip: undefined, makers: 1 },
      { part: 9, row: 8, slip: 'one-increase-too-many', makers: 1 },
      { part: 3, row: undefined, slip: undefined, makers: 1 },
      { part: 3, row: 7, slip: undefined, makers: 1 },
      { part: 3, row: 9, slip: undefined, makers: 1 },
    ]);
    const alike = listTroubles({
      parts,
      stuck: [
        stuck('a', 9, { row: 8, slip: 'turn-missed' }),
        stuck('b', 9, { row: 8, slip: 'increase-missed' }),
      ],
    });
    expect(alike.map(({ slip }) => slip)).toEqual(['increase-missed', 'turn-missed']);
  });

  it('counts a maker once, by what she said most of', () => {
    const of = (...said: readonly Stuck[]) =>
      listTroubles({ parts, stuck: said }).map(({ row, slip, makers }) => [row, slip, makers]);
    const bare = stuck('a', 9);
    const row = stuck('a', 9, { row: 8 });
    const slip = stuck('a', 9, { row: 8, slip: 'increase-missed' });
    expect(of(bare, bare)).toEqual([[undefined, undefined, 1]]);
    expect(of(bare, row)).toEqual([[8, undefined, 1]]);
    expect(of(row, bare)).toEqual([[8, undefined, 1]]);
    expect(of(bare, row, slip)).toEqual([[8, 'increase-missed', 1]]);
    expect(of(bare, slip)).toEqual([[8, 'increase-missed', 1]]);
    // Another row, another part, another maker is another matter.
    expect(of(slip, stuck('a', 9, { row: 7 }))).toEqual([
      [7, undefined, 1],
      [8, 'increase-missed', 1],
    ]);
    expect(of(slip, stuck('b', 9))).toHaveLength(2);
    expect(of(row, stuck('b', 9, { row: 8 }))).toEqual([[8, undefined, 2]]);
    expect(of(slip, stuck('a', 3))).toHaveLength(2);
    expect(of(slip, stuck('a', 3, { row: 8 }))).toHaveLength(2);
  });

  it('names who asks for help and is not done since, her latest', () => {
    const said = [
      stuck('a', 9, { help: true, row: 3 }),
      stuck('a', 3, { help: true, row: 4 }),
      stuck('b', 9),
      stuck('c', 9, { help: true }),
      stuck('d', 9, { help: true }),
    ];
    const done = new Map([
      [9, new Set(['c'])],
      [1, new Set(['d'])],
    ]);
    expect(listHelpWanted({ stuck: said, done }).map(({ maker, part: at }) => [maker, at])).toEqual([
      ['a', 3],
      ['d', 9],
    ]);
  });
});

describe('what she counted', () => {
  it('is held against the rows before the one that she names', () => {
    // 3, 5, 7 … : row 7 has 15.
    expect(checkStuck(FURROW, { row: 7, counts: [11, 13, 15] })).toMatchObject({
      fromRow: 5,
      lastRow: 7,
      difference: 0,
      next: 17,
    });
    expect(checkStuck(FURROW, { row: 7, counts: [11, 13, 14] })?.wrong).toMatchObject({
      row: 7,
      expected: 15,
      counted: 14,
    });
    expect(checkStuck(FURROW, { counts: [3, 5] })).toMatchObject({ fromRow: 1, lastRow: 2 });
    expect(checkStuck(FURROW, { row: 7 })).toBeUndefined();
    expect(checkStuck(FURROW, {})).toBeUndefined();
    expect(checkStuck(FURROW, { row: 24, counts: [1] })).toMatchObject({ lastRow: 24 });
    expect(checkStuck(FURROW, { row: 2, counts: [3, 5] })).toMatchObject({ fromRow: 1 });
  });

  it('is refused where there is no such row, or there are more counts than rows', () => {
    expect(() => checkStuck(FURROW, { row: 25 })).toThrow(
      expect.objectContaining({
        code: 'no-such-row',
        option: 'row',
        facts: { row: 25, rows: 24 },
        message: 'Your furrow ends with row 24; there is no row 25.',
      }),
    );
    expect(() => checkStuck(FURROW, { row: 2, counts: [3, 5, 7] })).toThrow(
      expect.objectContaining({
        code: 'too-many-counts',
        message: '3 counts are given, but row 2 is the last of them.',
        hint: 'Give at most 2, the last of them that of row 2.',
        facts: { given: 3, most: 2 },
      }),
    );
    expect(() => checkStuck(meadow, { row: 8 })).toThrow(
      expect.objectContaining({ message: expect.stringContaining('round 8') as string }),
    );
  });

  it('tells of a slip: the likeliest, at the row where it happened', () => {
    const found = checkStuck(FURROW, { row: 7, counts: [11, 13, 14] });
    expect(slipIn(found)).toEqual({ row: 7, slip: found?.wrong?.causes[0]?.slip });
    expect(slipIn(checkStuck(FURROW, { row: 7, counts: [15] }))).toBeUndefined();
    expect(slipIn(undefined)).toBeUndefined();
    // 19 stitches are those of row 9: the row that she takes it for is the slip, wherever else one may lie.
    const ahead = checkStuck(FURROW, { row: 7, counts: [19] });
    expect(ahead?.wrong?.elsewhere).toBeDefined();
    expect(slipIn(ahead)).toEqual({ row: 7, slip: ahead?.wrong?.causes[0]?.slip });
    // Two rows ahead, and one that went wrong there.
    const both = checkStuck(FURROW, { row: 8, counts: [17, 19, 21, 23, 24] });
    expect(both?.wrong?.elsewhere).toBeDefined();
    expect(both?.wrong?.slip).toBeDefined();
    expect(slipIn(both)).toEqual({ row: both!.wrong!.row, slip: both!.wrong!.causes[0]!.slip });
    const plain = { ...both!, wrong: { ...both!.wrong!, elsewhere: undefined } } as unknown as Parameters<
      typeof slipIn
    >[0];
    expect(slipIn(plain)).toEqual({ row: both!.wrong!.slip!.row, slip: both!.wrong!.slip!.causes[0]!.slip });
  });

  it('is of the kind that the part is about', () => {
    const own = reckonOwn(plan({ pattern: { ...PATTERN, kinds: [FURROW, meadow], counts: [6, 6] } }), NO_WAY);
    expect(kindOfPart(own, part('motifs'), { motifs: [0, 4] })).toBe(1);
    expect(kindOfPart(own, part('motifs'), { motifs: [2, 4] })).toBe(0);
    expect(kindOfPart(own, part('motifs'), { motifs: [0, 0] })).toBe(0);
    expect(kindOfPart(own, part('motifs'), {})).toBe(0);
    expect(kindOfPart(own, part('first'), { motifs: [0, 1] })).toBe(0);
  });
});

describe('the slip worked for showing', () => {
  const own = reckonOwn(plan({ pattern: { ...PATTERN, kinds: [FURROW, meadow], counts: [6, 6] } }), NO_WAY);
  const counts = planOf(FURROW).rows.map(({ count }) => count);

  it('gives a count that is put down to it, the smallest that is, with the rows before it right', () => {
    const shown = workedExample(own, { row: 7, slip: 'increase-missed' })!;
    expect(shown).toMatchObject({ motif: { name: 'furrow' }, row: 7 });
    expect(shown.found?.wrong).toMatchObject({ row: 7, expected: 15, counted: 14 });
    expect(shown.found?.fromRow).toBe(5);
    expect(shown.found?.wrong?.causes[0]?.slip).toBe('increase-missed');
    expect(workedExample(own, { row: 7, slip: 'one-increase-too-many' })?.found?.wrong).toMatchObject({
      counted: 16,
    });
    // The first row has none before it, the second one.
    expect(workedExample(own, { row: 2, slip: 'increase-missed' })?.found).toMatchObject({
      fromRow: 1,
      lastRow: 2,
    });
    // Every slip that it shows is what those counts are put down to by themselves.
    for (const slip of [
      'increase-missed',
      'both-increases-missed',
      'one-increase-too-many',
      'increases-too-many',
    ])
      for (const row of [3, 7, 11]) {
        const found = workedExample(own, { row, slip })?.found;
        if (found === undefined) continue;
        const from = Math.max(1, row - 2);
        const again = checkCounts(
          planOf(FURROW),
          [...counts.slice(from - 1, row - 1), found.wrong!.counted],
          from,
        );
        expect(again.wrong?.causes[0]?.slip, `${slip} ${row}`).toBe(slip);
      }
  });

  it('is the row alone where no count is put down to it, or no slip is known; nothing without a row', () => {
    expect(workedExample(own, { row: 7, slip: undefined })).toEqual({ motif: own.spec.kinds[0], row: 7 });
    expect(workedExample(own, { row: 7, slip: 'corner-missed' })).toEqual({
      motif: own.spec.kinds[0],
      row: 7,
    });
    expect(workedExample(own, { row: undefined, slip: 'increase-missed' })).toBeUndefined();
    expect(workedExample(own, { row: 7, slip: 'increase-missed' }, 5)).toBeUndefined();
  });

  it('is of another kind where the one that the part begins with has no such slip', () => {
    const corner = { row: 3, slip: 'corner-of-other-size' };
    expect(exampleToShow(own, corner, 0)).toMatchObject({ motif: { name: 'meadow' }, row: 3 });
    expect(exampleToShow(own, corner, 0)?.found?.wrong?.causes[0]?.slip).toBe('corner-of-other-size');
    expect(exampleToShow(own, { row: 7, slip: 'increase-missed' }, 0)).toMatchObject({
      motif: { name: 'furrow' },
    });
    expect(exampleToShow(own, { row: 7, slip: 'no-such-slip' }, 1)).toEqual({
      motif: own.spec.kinds[1],
      row: 7,
    });
    expect(exampleToShow(own, { row: 3, slip: undefined }, 0)).toEqual({ motif: own.spec.kinds[0], row: 3 });
    expect(exampleToShow(own, { row: undefined, slip: undefined }, 0)).toBeUndefined();
  });

  it('is shown on the last row where the pattern has fewer, and on the kind that is meant', () => {
    expect(workedExample(own, { row: 90, slip: undefined })).toMatchObject({ row: 24 });
    const round = workedExample(own, { row: 4, slip: 'corner-missed' }, 1)!;
    expect(round).toMatchObject({ motif: { name: 'meadow' }, row: 4 });
    expect(round.found === undefined || round.found.wrong?.causes[0]?.slip === 'corner-missed').toBe(true);
    // No count below one is tried: the last row of a diagonal square has one stitch.
    const last = workedExample(own, { row: 24, slip: 'turned-too-early' });
    expect(last?.found === undefined || last.found.wrong!.counted >= 1).toBe(true);
    expect(reckonOwn(plan({ pattern: alone(FURROW) }), NO_WAY).spec.kinds).toHaveLength(1);
  });
});
