import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seedChance } from '../../../src/core/base/chance.ts';
import { findFewestTouches, scatter, showTouches, touchesOf } from '../../../src/core/blanket/scatter.ts';
import { Working } from '../../../src/core/base/working.ts';

/** Every way to share `places` among at most `kinds` kinds, the largest first. */
function* partitions(places: number, kinds: number, largest = places): Generator<number[]> {
  if (places === 0) yield [];
  else if (kinds > 0)
    for (let first = Math.min(places, largest); first >= 1; first--)
      for (const rest of partitions(places - first, kinds - 1, first)) yield [first, ...rest];
}

/** Touches counted side by side, without the board of the code. */
function plainTouches(kinds: readonly number[], columns: number): number {
  let touches = 0;
  kinds.forEach((kind, place) => {
    if (place % columns < columns - 1 && kinds[place + 1] === kind) touches++;
    if (kinds[place + columns] === kind) touches++;
  });
  return touches;
}

describe('scattering', () => {
  it('reaches the fewest touches for all quotas of up to four kinds on every board to 5 by 5', () => {
    let boards = 0;
    for (let columns = 1; columns <= 5; columns++)
      for (let rows = 1; rows <= 5; rows++)
        for (const quotas of partitions(columns * rows, 4)) {
          const kinds = scatter(columns, rows, quotas, seedChance(boards));
          expect(plainTouches(kinds, columns)).toBe(findFewestTouches(columns, rows, quotas).fewest);
          quotas.forEach((quota, kind) => expect(kinds.filter((one) => one === kind)).toHaveLength(quota));
          boards++;
        }
    expect(boards).toBeGreaterThan(700);
  });

  it('reaches them on any board, and keeps every quota', () => {
    const boards = fc
      .record({
        columns: fc.integer({ min: 1, max: 25 }),
        rows: fc.integer({ min: 1, max: 25 }),
        cuts: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 0, maxLength: 7 }),
        seed: fc.integer({ min: 1, max: 9999 }),
      })
      .map(({ columns, rows, cuts, seed }) => {
        const places = columns * rows;
        const at = [0, ...cuts.map((cut) => Math.round(cut * places)).sort((a, b) => a - b), places];
        return { columns, rows, seed, quotas: at.slice(1).map((cut, index) => cut - at[index]!) };
      });
    fc.assert(
      fc.property(boards, ({ columns, rows, quotas, seed }) => {
        const kinds = scatter(columns, rows, quotas, seedChance(seed));
        const { fewest } = findFewestTouches(columns, rows, quotas);
        expect(touchesOf(kinds, columns)).toBe(fewest);
        expect(plainTouches(kinds, columns)).toBe(fewest);
        quotas.forEach((quota, kind) => expect(kinds.filter((one) => one === kind)).toHaveLength(quota));
      }),
      { numRuns: 150 },
    );
  });

  it('is impossible without a touch exactly where one kind has more than half the places', () => {
    expect(findFewestTouches(3, 3, [5, 4])).toEqual({ fewest: 0 });
    // Six of one kind on 3 by 3: the other three at the middles of sides keep 9 of 12 sides apart.
    expect(findFewestTouches(3, 3, [6, 3])).toEqual({ fewest: 3, crowded: 0, keptApart: 9 });
    expect(findFewestTouches(4, 1, [1, 3])).toMatchObject({ fewest: 1, crowded: 1 });
    expect(findFewestTouches(20, 25, [251, 249]).fewest).toBeGreaterThan(0);
  });

  it('shows how many touches there must be', () => {
    const working = new Working();
    showTouches(working, 3, 3, [6, 3]);
    expect(working.steps.map(({ result }) => result)).toEqual([5, 12, 3]);
  });

  it('refuses quotas that do not fill the board', () => {
    expect(() => scatter(2, 2, [1, 2], seedChance(1))).toThrow('fill');
  });
});
