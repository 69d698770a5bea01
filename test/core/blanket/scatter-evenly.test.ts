/** Scattering leaves to chance what it can: no place is any kind's own, and no two seeds lay alike. */
import { describe, expect, it } from 'vitest';
import { seedChance } from '../../../src/core/base/chance.ts';
import { scatter } from '../../../src/core/blanket/scatter.ts';

describe('scattering', () => {
  const SEEDS = 400;
  const layouts = (columns: number, rows: number, quotas: readonly number[]) =>
    Array.from({ length: SEEDS }, (_, seed) => scatter(columns, rows, quotas, seedChance(seed + 1)));

  it('gives every kind every place about as often as its share says', () => {
    const laid = layouts(4, 4, [4, 4, 4, 4]);
    for (let place = 0; place < 16; place++)
      for (let kind = 0; kind < 4; kind++) {
        const often = laid.filter((kinds) => kinds[place] === kind).length;
        // A quarter of 400, and four and a half standard deviations either way: one run in thousands lies outside somewhere.
        expect(Math.abs(often - SEEDS / 4)).toBeLessThan(4.5 * Math.sqrt(SEEDS * (1 / 4) * (3 / 4)));
      }
  });

  it('hardly ever lays alike from another seed', () => {
    expect(new Set(layouts(4, 4, [4, 4, 4, 4]).map((kinds) => kinds.join(''))).size).toBeGreaterThan(
      0.95 * SEEDS,
    );
    // Two kinds of a chess board have two layouts without a touch; both come up.
    expect(new Set(layouts(4, 4, [8, 8]).map((kinds) => kinds.join(''))).size).toBe(2);
    // One kind crowds out the others. They cover most sides in the five inner places of the first corner's colour and one of the
    // four in the middle of an edge, three of each kind: 4 × 20 layouts, of which 400 seeds miss hardly any.
    const crowded = new Set(layouts(5, 5, [19, 3, 3]).map((kinds) => kinds.join('')));
    expect(crowded.size).toBeLessThanOrEqual(80);
    expect(crowded.size).toBeGreaterThan(70);
  });

  it('does not begin in a corner: kinds of any quota lie on both colours of the board', () => {
    const laid = layouts(5, 5, [9, 8, 8]);
    for (let kind = 0; kind < 3; kind++) {
      const onDark = laid.map(
        (kinds) => kinds.filter((one, place) => one === kind && place % 2 === 0).length,
      );
      expect(Math.min(...onDark)).toBeLessThan(4);
      expect(Math.max(...onDark)).toBeGreaterThan(4);
      expect(new Set(onDark).size).toBeGreaterThan(3);
    }
  });

  // Noted when this was written, by chance found and, where one kind has all places of a colour or more, built: whoever wrote
  // down her seed lays the same blanket again in every later version.
  it.each<[string[], number]>([
    [['BACBAC', 'ACBACB', 'CBACBA', 'BACBAC', 'ACBACB'], 2485],
    [['BADAD', 'ADCBA', 'CBADC', 'ACDBA', 'BACAC', 'ABACB', 'BCBDA'], 7],
    [['BABABA', 'ABABAB', 'BABABA', 'ABABAB', 'BABABA', 'ACABAB'], 11],
    [['ABCBABA', 'BABACAB', 'ABACACA', 'BACABAC', 'ACACABA'], 3],
    [['AABAA', 'ACABA', 'AACAA', 'ABABA', 'AAAAA'], 5],
    [['ABABACAB', 'BABACABA', 'ABACACAB', 'CABABABA', 'ACACACAC', 'BABABABA', 'ACABABAB', 'BABACACA'], 9],
  ])('lays %j from a seed for good', (lines, seed) => {
    const [columns, places] = [lines[0]!.length, lines.join('')];
    const quotas = ['A', 'B', 'C', 'D'].map((kind) => places.split(kind).length - 1);
    const used = quotas.slice(0, quotas.findLastIndex((quota) => quota > 0) + 1);
    const laid = scatter(columns, lines.length, used, seedChance(seed));
    expect(laid.map((kind) => 'ABCD'[kind]).join('')).toBe(places);
  });
});
