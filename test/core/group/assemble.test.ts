import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  assembling,
  measureStrain,
  listTouching,
  type MotifToPlace,
} from '../../../src/core/group/assemble.ts';
import { atOneGo } from './at-one-go.ts';
import { seedChance } from '../../../src/core/base/chance.ts';

const assemble = (...asked: Parameters<typeof assembling>) => atOneGo(assembling(...asked)).placed;

/** Every way of placing the motifs, for boards small enough to try them all. */
function bestOfAll(motifs: readonly MotifToPlace[], layout: readonly number[], columns: number): number {
  const touches = listTouching(columns, layout.length / columns);
  const sides: (number | undefined)[] = layout.map(() => undefined);
  const used = new Set<number>();
  let least = Infinity;
  const fill = (cell: number) => {
    if (cell === layout.length) {
      least = Math.min(least, measureStrain(sides, touches));
      return;
    }
    for (const motif of motifs) {
      if (motif.kind !== layout[cell] || used.has(motif.piece)) continue;
      used.add(motif.piece);
      sides[cell] = motif.side;
      fill(cell + 1);
      used.delete(motif.piece);
    }
  };
  fill(0);
  return least;
}

const boards = fc
  .record({ columns: fc.integer({ min: 2, max: 4 }), rows: fc.integer({ min: 1, max: 2 }), seed: fc.nat() })
  .chain(({ columns, rows, seed }) =>
    fc.record({
      columns: fc.constant(columns),
      seed: fc.constant(seed),
      layout: fc.array(fc.integer({ min: 0, max: 1 }), {
        minLength: columns * rows,
        maxLength: columns * rows,
      }),
      sides: fc.array(fc.integer({ min: 140, max: 160 }), {
        minLength: columns * rows,
        maxLength: columns * rows,
      }),
    }),
  );

describe('assembling', () => {
  it('uses every motif once, in a cell of its kind', () => {
    fc.assert(
      fc.property(boards, ({ columns, layout, sides, seed }) => {
        const motifs = layout.map((kind, index) => ({ piece: index + 1, kind, side: sides[index]! / 10 }));
        const placed = assemble(motifs, layout, columns, 15, seedChance(seed));
        expect(placed.map((motif) => motif?.piece).sort()).toEqual(motifs.map(({ piece }) => piece).sort());
        placed.forEach((motif, cell) => expect(motif?.kind).toBe(layout[cell]));
      }),
    );
  });

  it('comes close to the best of all on small boards, and beats the order of arrival', () => {
    let [found, best, arrival, boardsTried, exactly] = [0, 0, 0, 0, 0];
    fc.assert(
      fc.property(boards, ({ columns, layout, sides, seed }) => {
        const motifs = layout.map((kind, index) => ({ piece: index + 1, kind, side: sides[index]! / 10 }));
        const touches = listTouching(columns, layout.length / columns);
        const placed = assemble(motifs, layout, columns, 15, seedChance(seed));
        const strained = measureStrain(
          placed.map((motif) => motif?.side),
          touches,
        );
        const least = bestOfAll(motifs, layout, columns);
        expect(strained).toBeGreaterThanOrEqual(least - 1e-9);
        found += strained;
        best += least;
        arrival += measureStrain(
          motifs.map(({ side }) => side),
          touches,
        );
        boardsTried++;
        if (strained <= least + 1e-9) exactly++;
      }),
      { numRuns: 60, seed: 11 },
    );
    expect(exactly / boardsTried).toBeGreaterThan(0.9);
    expect(found).toBeLessThanOrEqual(best * 1.02);
    expect(found).toBeLessThan(arrival);
  });

  it('leaves over the motifs farthest from the size that is wanted, and cells empty where none is made', () => {
    const motifs = [15, 15.1, 18].map((side, index) => ({ piece: index + 1, kind: 0, side }));
    const placed = assemble(motifs, [0, 0, 1], 3, 15, seedChance(1));
    expect(placed.map((motif) => motif?.piece)).toEqual(expect.arrayContaining([1, 2, undefined]));
  });

  it('looks at no more exchanges than it may, pauses, and says that there were more', () => {
    const motifs = Array.from({ length: 1_000 }, (_, index) => ({
      piece: index + 1,
      kind: 0,
      side: 15 + ((index * 7919) % 1_000) / 1_000,
    }));
    const layout = motifs.map(() => 0);
    const work = assembling(motifs, layout, 40, 15, seedChance(1), 0, 4_000_000);
    let pauses = 0;
    for (;;) {
      const { done, value } = work.next();
      if (!done) {
        pauses += 1;
        continue;
      }
      expect(value.whole).toBe(false);
      expect(new Set(value.placed.map((motif) => motif?.piece)).size).toBe(1_000);
      break;
    }
    expect(pauses).toBeGreaterThanOrEqual(8);
  });
});
