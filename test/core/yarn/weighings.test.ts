import { describe, expect, it } from 'vitest';
import { seedChance } from '../../../src/core/base/chance.ts';
import { Working } from '../../../src/core/base/working.ts';
import { MOST_WEIGHINGS } from '../../../src/core/base/limits.ts';
import {
  addWeighing,
  isUnlikeEarlier,
  meanOf,
  readWeighings,
  weighingsOf,
  type Weighing,
} from '../../../src/core/yarn/weighings.ts';
import { normal, seedHere } from '../../simulated.ts';

const read = (...weighings: Weighing[]) => readWeighings(weighings, new Working());
const on = (weight: number, motifs = 1, step = 1): Weighing => ({ weight, motifs, step });

describe('what the scale tells', () => {
  it('one motif of 12 g on a scale of whole grams: the step and the usual spread', () => {
    const { mean, spread, error, band, motifs, readings } = read(on(12));
    expect([mean, motifs, readings]).toEqual([12, 1, 1]);
    // 4 % of 12 g; a step of a gram leaves 1 ÷ √12 g; two standard deviations are about 95 %.
    expect(spread).toBeCloseTo(0.48, 12);
    expect(error).toBeCloseTo(Math.sqrt(0.48 ** 2 + 1 / 12), 12);
    expect(band).toBeCloseTo((100 * 2 * Math.sqrt(0.48 ** 2 + 1 / 12)) / 12, 12);
  });

  it('five at once share one step and average their spread', () => {
    const { mean, error } = read(on(61, 5));
    expect(mean).toBeCloseTo(12.2, 12);
    expect(error).toBeCloseTo(Math.sqrt(5 * (0.04 * 12.2) ** 2 + 1 / 12) / 5, 12);
  });

  it('the mean counts motifs, not readings', () => {
    expect(meanOf([on(61, 5), on(13)])).toBeCloseTo(74 / 6, 12);
    expect(read(on(61, 5), on(13)).mean).toBeCloseTo(74 / 6, 12);
  });

  it('knows the spread better the more it sees, from what is usual to what hers is', () => {
    // 11 g and 13 g by turns on a fine scale: 1 g apart from the mean, sixteen times, and the usual 4 % counted four times.
    const apart = Array.from({ length: 16 }, (_, index) => on(index % 2 === 0 ? 11 : 13, 1, 0.001));
    expect(read(...apart).spread).toBeCloseTo(Math.sqrt((4 * 0.48 ** 2 + 16) / (4 + 15)), 5);
    // The scale's own step is no spread of the motifs.
    const coarse = apart.map((one) => ({ ...one, step: 5 }));
    expect(read(...coarse).spread).toBeCloseTo(Math.sqrt((4 * 0.48 ** 2) / (4 + 15)), 9);
    expect(read(...coarse).error).toBeGreaterThan(read(...apart).error);
  });

  it('takes off of several weighed at once what one step leaves of each of them', () => {
    // 40 g and 60 g of four each, in steps of 5 g: each four are 4 × 2.5² off the mean of 12.5 g, and a step is shared by them.
    const spread = Math.sqrt((4 * 0.5 ** 2 + 2 * 4 * 2.5 ** 2 - (2 * (25 / 12)) / 4) / (4 + 1));
    expect(read(on(40, 4, 5), on(60, 4, 5)).spread).toBeCloseTo(spread, 12);
  });

  it('is surer with every motif, with a finer scale, and at once rather than one by one', () => {
    const bands = [1, 2, 4, 8, 16].map((many) => read(...Array.from({ length: many }, () => on(12))).band);
    expect(bands).toEqual([...bands].sort((a, b) => b - a));
    expect(bands.at(-1)!).toBeLessThan(bands[0]! / 3);
    expect(read(on(12, 1, 0.1)).band).toBeLessThan(read(on(12)).band);
    const oneByOne = [on(11), on(13), on(12), on(12), on(12)];
    expect(read(on(60, 5)).band).toBeLessThan(read(...oneByOne).band);
  });

  it.each([1, 3, 8])('holds as often as it says, with %i weighed one by one and all at once', (many) => {
    const roll = seedChance(seedHere);
    const trials = 1500;
    let byOne = 0;
    let atOnce = 0;
    for (let trial = 0; trial < trials; trial++) {
      const truth = 8 + 30 * roll();
      const each = Array.from({ length: many }, () => truth * (1 + 0.04 * normal(roll)));
      const within = ({ mean, band }: { mean: number; band: number }) =>
        Math.abs(truth - mean) <= (mean * band) / 100;
      if (within(read(...each.map((one) => on(Math.round(one)))))) byOne++;
      if (within(read(on(Math.round(each.reduce((sum, one) => sum + one, 0)), many)))) atOnce++;
    }
    for (const held of [byOne, atOnce]) {
      expect(held / trials).toBeGreaterThan(0.93);
      expect(held / trials).toBeLessThan(0.99);
    }
  });

  it('takes a weight alone for one reading of one motif in whole grams', () => {
    expect(weighingsOf({ weight: 12 })).toEqual([on(12)]);
    expect(weighingsOf({ weight: 12, weighings: [on(24, 2, 0.1)] })).toEqual([on(24, 2, 0.1)]);
    expect(weighingsOf({})).toEqual([]);
  });

  it('forgets the oldest readings first', () => {
    const many = Array.from({ length: MOST_WEIGHINGS }, (_, index) => on(index + 1));
    const more = addWeighing(many, on(99));
    expect(more).toHaveLength(MOST_WEIGHINGS);
    expect([more[0], more.at(-1)]).toEqual([on(2), on(99)]);
  });

  it('sees a slip of the finger, and none in what differs as motifs do', () => {
    expect(isUnlikeEarlier(on(12), [])).toBe(false);
    expect(isUnlikeEarlier(on(120), [on(12), on(12)])).toBe(true);
    expect(isUnlikeEarlier(on(13), [on(12), on(12)])).toBe(false);
    // Just inside and just outside four standard deviations of the difference.
    const { error, spread } = read(on(12));
    const off = 4 * Math.sqrt(error ** 2 + spread ** 2 + 1 / 12);
    expect(isUnlikeEarlier(on(12 - off * 0.99), [on(12)])).toBe(false);
    expect(isUnlikeEarlier(on(12 - off * 1.01), [on(12)])).toBe(true);
    const four = 4 * Math.sqrt(error ** 2 + spread ** 2 / 4 + 1 / 12 / 16);
    expect(isUnlikeEarlier(on(4 * (12 + four * 0.99), 4), [on(12)])).toBe(false);
    expect(isUnlikeEarlier(on(4 * (12 + four * 1.01), 4), [on(12)])).toBe(true);
  });
});
