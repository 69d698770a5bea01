/** What a blanket takes, what is left of the yarn and how many motifs it makes, added up with a pencil. */
import { describe, expect, it } from 'vitest';
import { reckonMaterials } from '../../../src/core/blanket/materials.ts';
import { countMotifsAlone } from '../../../src/core/blanket/motifs-alone.ts';
import type { Pieces } from '../../../src/core/blanket/pieces.ts';
import { needOf, stockOf } from '../../../src/core/blanket/yarn-at-hand.ts';
import { findLacking, reckonLeft } from '../../../src/core/blanket/yarn-left.ts';
import { Working } from '../../../src/core/base/working.ts';
import { BY_HAND, withStock } from './by-hand.ts';

const EXTENT = { columns: 3, rows: 4, counts: [6, 6] };
const materials = (pieces: Pieces = BY_HAND, paces?: readonly number[]) =>
  reckonMaterials(pieces, EXTENT, new Working(), paces);
const close = (value: number | undefined, expected: number) => expect(value).toBeCloseTo(expected, 9);

/**
 * Three by four: 8 short sides and 9 long ones are 17 of 10 cm, 1.7 m of seam in 4 × 2 + 3 = 11 seams. The border's first round has
 * 40 along the width, 53 along the height (53.3 lie flat) and four corners of 3: 198; each further one 8 more.
 */
const MOSS = {
  motifs: 6 * 10,
  tails: 6 * 0.3 + 11 * 0.3 + 0.3,
  carried: 6 * 0.2,
  seams: 1.7 * 3,
  border: 198 * 0.03,
};
const SAND = { motifs: 6 * 4 + 6 * 12, tails: 12 * 0.3, carried: 0, seams: 0, border: 0 };
const PLUM = { motifs: 0, tails: 0.3, carried: 0, seams: 0, border: (206 + 214) * 0.05 };
const inAll = ({ motifs, tails, carried, seams, border }: typeof MOSS) =>
  (motifs + tails + carried + seams + border) * 1.1;

describe('what a blanket takes', () => {
  it('is so much of every colour, for this and for that', () => {
    const { colours, total } = materials();
    expect(colours.map(({ colour }) => colour)).toEqual(['moss', 'sand', 'plum']);
    [MOSS, SAND, PLUM].forEach((parts, index) => {
      for (const [part, metres] of Object.entries(parts))
        close(colours[index]![part as keyof typeof MOSS], metres);
      close(colours[index]!.total, inAll(parts));
    });
    close(total, 85.404 + 109.56 + 23.43);
  });

  it('is the same in the search over sizes', () => {
    needOf(BY_HAND)(EXTENT).forEach((metres, colour) => close(metres, inAll([MOSS, SAND, PLUM][colour]!)));
    // One motif alone has no seam; without a border nothing goes round it. 13 of 13.3 stitches lie along its side.
    const alone = { columns: 1, rows: 1, counts: [1, 0] };
    const bare = { ...BY_HAND, border: { ...BY_HAND.border, rounds: [] } };
    needOf(bare)(alone).forEach((metres, colour) => close(metres, [10.5 * 1.1, 4.3 * 1.1, 0][colour]!));
    const round = 4 * 13 + 12;
    close(needOf(BY_HAND)(alone)[0], (10.5 + round * 0.03 + 0.3) * 1.1);
    close(needOf(BY_HAND)(alone)[2], ((round + 8) * 0.05 + (round + 16) * 0.05 + 0.3) * 1.1);
    // A strip of two by one is a single seam, one by two as well.
    for (const [columns, rows] of [
      [2, 1],
      [1, 2],
    ] as const)
      close(needOf(bare)({ columns, rows, counts: [2, 0] })[0], (2 * 10.5 + 0.1 * 3 + 0.3) * 1.1);
  });

  it('puts what was estimated at its high end: 15 % by the gauge, 25 % by hook and yarn', () => {
    const high = (pieces: Pieces) => materials(pieces).colours.map((need) => need.high);
    const beside = 1.2 + 5.1 + 5.94;
    const [moss, sand, plum] = high(BY_HAND);
    close(moss, (5.4 + (60 + beside) * 1.15) * 1.1);
    close(sand, (3.6 + 24 * 1.15 + 72 * 1.25) * 1.1);
    close(plum, (0.3 + 21 * 1.15) * 1.1);
    const [rough] = high({ ...BY_HAND, gauged: false });
    close(rough, (5.4 + 60 * 1.15 + beside * 1.25) * 1.1);
  });

  it('is as sure of what was weighed as the weighing is', () => {
    for (const how of ['weighed', 'as-weighed'] as const) {
      const [dark, light] = BY_HAND.motifs;
      const [moss, sand, plum] = materials({
        ...BY_HAND,
        motifs: [{ ...dark!, how, band: 4 }, light!],
      }).colours;
      expect([moss!.weighed, sand!.weighed, plum!.weighed]).toEqual([true, true, false]);
      close(moss!.high, (5.4 + 60 * 1.04 + (1.2 + 5.1 + 5.94) * 1.15) * 1.1);
      close(sand!.high, (3.6 + 24 * 1.04 + 72 * 1.25) * 1.1);
    }
    expect(materials().colours.map(({ weighed }) => weighed)).toEqual([false, false, false]);
  });

  it('is bought in whole balls, what is at hand taken off, where the ball is known', () => {
    const { colours, balls, toBuy, weight, cost } = materials();
    const [moss, sand, plum] = colours;
    // 85.4 m are 0.854 of a ball of 100 m; half a ball is there.
    expect(moss).toMatchObject({ balls: 1, ballsHigh: 1, toBuy: 1, cost: 4 });
    close(moss!.weight, 42.702);
    expect(sand).toMatchObject({ balls: 1, ballsHigh: 1, toBuy: 0 });
    close(sand!.weight, 54.78);
    expect(sand).not.toHaveProperty('cost');
    for (const part of ['balls', 'ballsHigh', 'toBuy', 'weight', 'cost'])
      expect(plum).not.toHaveProperty(part);
    expect([balls, toBuy, cost]).toEqual([2, 1, 4]);
    close(weight, 97.482);
    // At the high end the moss is 97.3 m: of 90 m balls one would not do.
    const small = { ...BY_HAND, yarns: [{ colour: 'moss', ball: { m: 90, g: 50 } }] };
    expect(materials(small).colours[0]).toMatchObject({ balls: 1, ballsHigh: 2, toBuy: 1 });
    const unknown = materials({ ...BY_HAND, yarns: [] });
    for (const part of ['balls', 'toBuy', 'weight', 'cost']) expect(unknown).not.toHaveProperty(part);
  });

  it('has its size, its seams, its ends and its hours', () => {
    const made = materials(BY_HAND, [7, 7]);
    expect(made).toMatchObject({ width: 38, height: 48, seams: 11 });
    close(made.seamLength, 1.7);
    // Motifs' own, two to each seam, and two lengths of border: moss, and plum for both of its rounds.
    expect(made.ends).toBe(6 * 4 + 6 * 2 + 2 * 11 + 2 * 2);
    // 12 × 84 stitches, 7 a minute.
    close(made.hours, 2.4);
    // Six dark ones at 7 a minute and six light ones at 3.5: 1.2 and 2.4 hours.
    close(materials(BY_HAND, [7, 3.5]).hours, 3.6);
    expect(materials()).not.toHaveProperty('hours');
    expect(made.border.map(({ across, down, stitches }) => [across, down, stitches])).toEqual([
      [40, 53, 198],
      [42, 55, 206],
      [44, 57, 214],
    ]);
    made.border.forEach(({ metres }, index) => close(metres, [198 * 0.03, 206 * 0.05, 214 * 0.05][index]!));
    const one = reckonMaterials(BY_HAND, { columns: 1, rows: 1, counts: [0, 1] }, new Working());
    expect(one).toMatchObject({ seams: 0, seamLength: 0, ends: 2 + 4 });
    expect(one.colours[0]).toMatchObject({ motifs: 0, seams: 0, weighed: false });
  });

  it('shows no step for what is nothing', () => {
    const working = new Working();
    reckonMaterials(BY_HAND, { columns: 3, rows: 4, counts: [12, 0] }, working);
    const labels = working.steps.map(({ label }) => label);
    expect(labels.filter((label) => label.includes('light'))).toEqual([]);
    expect(labels.filter((label) => label.includes('dark'))).toEqual([
      'moss, in every dark',
      'moss, by how much dark may take more',
      'moss, tails of every dark',
      'moss, carried in every dark',
      'sand, in every dark',
      'sand, by how much dark may take more',
      'sand, tails of every dark',
    ]);
    expect(labels.filter((label) => label.includes('tails of the border'))).toEqual([
      'moss, tails of the border',
      'plum, tails of the border',
    ]);
    const bare = new Working();
    reckonMaterials({ ...BY_HAND, border: { ...BY_HAND.border, rounds: [] } }, EXTENT, bare);
    expect(bare.steps.some(({ label }) => /round|Along/.test(label))).toBe(false);
  });
});

describe('the yarn at hand', () => {
  it('is what is there in balls, and not known where that was not said', () => {
    expect(stockOf(BY_HAND)).toEqual([50, 400, undefined]);
    const without = {
      ...BY_HAND,
      yarns: [
        { colour: 'moss', balls: 3 },
        { colour: 'sand', ball: { m: 90, g: 50 }, balls: 0 },
      ],
    };
    expect(stockOf(without)).toEqual([undefined, 0, undefined]);
  });

  it('leaves over or lacks so much, where it is known', () => {
    const working = new Working();
    const { colours } = materials();
    const left = reckonLeft(BY_HAND, colours, working);
    expect(left.map(({ colour, atHand }) => [colour, atHand])).toEqual([
      ['moss', 50],
      ['sand', 400],
    ]);
    [85.404, 109.56].forEach((need, index) => close(left[index]!.need, need));
    [-35.404, 290.44].forEach((metres, index) => close(left[index]!.left, metres));
    expect(working.steps.map(({ label }) => label)).toEqual([
      'moss at hand',
      'moss left over',
      'sand at hand',
      'sand left over',
    ]);
    const lacking = findLacking(BY_HAND, colours);
    expect(lacking.map(({ colour }) => colour)).toEqual(['moss']);
    close(lacking[0]!.short, 35.404);
    // Just enough is not short.
    const total = 85.404;
    const need = { ...colours[0]!, total };
    expect(findLacking(withStock(total), [need])).toEqual([]);
  });

  it('makes so many motifs of a kind, or of every kind alike', () => {
    // With the reserve a dark one takes 11.55 m of moss and 4.73 of sand, a light one 13.53 of sand; one of each 18.26 of sand.
    const working = new Working();
    expect(countMotifsAlone(BY_HAND, working)).toEqual({ alone: [4, 29], together: 4, first: 'moss' });
    expect(working.steps.map(({ label }) => label)).toEqual([
      'dark alone, as far as moss goes',
      'dark alone, as far as sand goes',
      'light alone, as far as sand goes',
      'One of every kind, as far as moss goes',
      'One of every kind, as far as sand goes',
    ]);
    const alone = (...stock: Parameters<typeof withStock>) =>
      countMotifsAlone(withStock(...stock), new Working());
    expect(alone(undefined, 400)).toEqual({ alone: [84, 29], together: 21, first: 'sand' });
    expect(alone(11.55, 1000)).toEqual({ alone: [1, 73], together: 1, first: 'moss' });
    expect(alone(11.54, 1000)).toMatchObject({ alone: [0, 73], together: 0 });
    // Of two that stop at the same number the first is named.
    expect(alone(23.1, 36.52)).toMatchObject({ together: 2, first: 'moss' });
    expect(alone()).toEqual({ alone: [undefined, undefined] });
    expect(alone(undefined, undefined, 5)).toEqual({ alone: [undefined, undefined] });
  });
});
