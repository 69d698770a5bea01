/** The largest blanket from the yarn at hand, held to trying every size in turn. */
import fc from 'fast-check';
import { asking } from '../../asking.ts';
import { describe, expect, it } from 'vitest';
import { findLargestBlanket, type Fit } from '../../../src/core/blanket/largest-blanket.ts';
import type { Laying } from '../../../src/core/blanket/layout.ts';
import type { Extent } from '../../../src/core/blanket/materials.ts';
import type { Pieces } from '../../../src/core/blanket/pieces.ts';
import { needOf } from '../../../src/core/blanket/yarn-at-hand.ts';
import { refused } from '../../refused.ts';
import { BY_HAND, withStock } from './by-hand.ts';

const LAYING: Laying = {
  columns: 3,
  rows: 4,
  kinds: 2,
  laid: { arrangement: 'checked', setting: 'upright', seed: 1 },
};

/** Kinds in turn along rows and columns, counted place by place. */
const laidOut = (columns: number, rows: number): Extent => {
  const counts = [0, 0];
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < rows; row++) counts[(column + row) % 2]!++;
  return { columns, rows, counts };
};

const enough = (pieces: Pieces, stock: readonly (number | undefined)[], size: Extent) =>
  needOf(pieces)(size).every((metres, colour) => metres <= (stock[colour] ?? Infinity) + 1e-6);

/** The one that suits with most motifs, of equally many the one nearest to 3 by 4. */
function largest(sizes: readonly Extent[]): Extent | undefined {
  const motifs = ({ columns, rows }: Extent) => columns * rows;
  const away = ({ columns, rows }: Extent) =>
    Math.max((columns * 4) / (rows * 3), (rows * 3) / (columns * 4));
  let best: Extent | undefined;
  for (const size of sizes)
    if (
      !best ||
      motifs(size) > motifs(best) ||
      (motifs(size) === motifs(best) && away(size) < away(best) - 1e-12)
    )
      best = size;
  return best;
}

const sizeOf = (size?: Extent) => size && [size.columns, size.rows];

describe('the largest blanket', () => {
  it('is what trying every size finds: in proportion, in any, and with the columns kept', () => {
    fc.assert(
      fc.property(
        fc.option(fc.integer({ min: 0, max: 400 }), { nil: undefined }),
        fc.integer({ min: 0, max: 400 }),
        fc.option(fc.integer({ min: 0, max: 90 }), { nil: undefined }),
        fc.constantFrom(0, 10, 25, 60),
        (moss, sand, plum, stretch) => {
          const pieces = withStock(moss, sand, plum);
          const stock = [moss, sand, plum];
          // Every motif takes sand, 4.3 m with nothing else: 400 m make no 94.
          const sizes: Extent[] = [];
          for (let columns = 1; columns <= 94; columns++)
            for (let rows = 1; columns * rows <= 94; rows++) sizes.push(laidOut(columns, rows));
          const made = sizes.filter((size) => enough(pieces, stock, size));
          const within = made.filter(({ columns, rows }) => {
            const off = (columns * 4) / (rows * 3);
            return Math.max(off, 1 / off) <= 1 + stretch / 100 + 1e-9;
          });
          const found: Fit = findLargestBlanket(pieces, LAYING, stretch);
          const best = sizeOf(largest(within));
          const other = (size?: Extent) =>
            JSON.stringify(sizeOf(size)) === JSON.stringify(best) ? undefined : sizeOf(size);
          expect([found.best, found.anyShape, found.sameColumns].map(sizeOf)).toEqual([
            best,
            other(largest(made)),
            other(largest(made.filter(({ columns }) => columns === 3))),
          ]);
          expect(found.best?.counts).toEqual(best && laidOut(best[0]!, best[1]!).counts);
          // What goes first is what has the largest part of it used up.
          const need = needOf(pieces)(found.best ?? laidOut(1, 1));
          const used = need.map((metres, colour) =>
            stock[colour] === undefined || metres === 0 ? -1 : metres / stock[colour],
          );
          expect(found.first).toBe(pieces.colours[used.indexOf(Math.max(...used))]);
          expect(found.tried).toBeLessThanOrEqual(sizes.length);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('takes yarn to its last metre, and not a hand’s breadth beyond', () => {
    // Three by four takes 85.404 m of moss (added up in the test of materials), and sand and plum there are.
    const best = (moss: number) => sizeOf(findLargestBlanket(withStock(moss, 9000, 900), LAYING, 0).best);
    expect(best(85.404)).toEqual([3, 4]);
    expect(best(85.403)).toBeUndefined();
  });

  it('is tried from the top down, no size beyond what all the yarn could make', () => {
    expect(findLargestBlanket(withStock(0, 0, 0), LAYING, 25)).toMatchObject({ tried: 0, first: 'moss' });
    const plenty = findLargestBlanket(withStock(1e6, 1e6, 1e6), LAYING, 25);
    // 2500 is the most that is laid out, 50 by 50, a third out of proportion; within a quarter 48 by 52 is the most, or 39 by 64.
    expect(sizeOf(plenty.anyShape)).toEqual([50, 50]);
    expect(plenty.best!.columns * plenty.best!.rows).toBe(48 * 52);
    expect(sizeOf(plenty.sameColumns)).toEqual([3, 100]);
  });

  it('allows a quarter of another proportion where nothing is said', () => {
    const pieces = withStock(200, 400, 90);
    expect(findLargestBlanket(pieces, LAYING)).toEqual(findLargestBlanket(pieces, LAYING, 25));
    expect(findLargestBlanket(pieces, LAYING)).not.toEqual(findLargestBlanket(pieces, LAYING, 0));
  });

  it('needs to know of one colour at least', () => {
    expect(() => findLargestBlanket(withStock(), LAYING)).toThrow(
      refused('yarn-at-hand-unknown', { option: 'colour', facts: { colour: 'moss' } }),
    );
    expect(findLargestBlanket(withStock(undefined, undefined, 50), LAYING).first).toBe('plum');
    expect(findLargestBlanket({ ...withStock(90), colours: BY_HAND.colours }, LAYING).first).toBe('moss');
  });
});

describe('where no yarn ends it', () => {
  it('blames no colour: no more motifs are laid than there are places', async () => {
    const { ask } = asking();
    for (const line of [
      '/motif define name:sq shape:diagonal size:3 gauge:13x10',
      '/blanket start name:t kinds:sq columns:5 rows:5',
      '/blanket colours colour:sq ball:1000m/500g balls:1000',
    ])
      expect(await ask(line)).toMatchObject({ ok: true });
    const all = await ask('/blanket fit');
    expect(all.figures['motifs']!.value).toBe(2500);
    expect(all.headline).toContain('would go further: no more than 2500 motifs are laid here');
    expect(all.data.first_out).toBeNull();
    // Yarn for 100 motifs and no more ends it.
    await ask('/blanket colours colour:sq balls:0.4');
    const some = await ask('/blanket fit');
    expect(some.figures['motifs']!.value).toBeLessThan(120);
    expect(some.headline).toContain('sq runs out first');
    expect(some.data.first_out).toBe('sq');
  });
});

describe('an odd place to which two kinds have equal claims', () => {
  it('goes to the kind whose yarn makes it', async () => {
    const { ask } = asking();
    for (const line of [
      '/motif define name:dark shape:diagonal size:12 gauge:13x10 hook:5mm colours:"24 rows moss"',
      '/motif define name:light shape:diagonal size:12 gauge:13x10 hook:5mm colours:"24 rows sand"',
      '/motif weigh name:dark weight:10g ball:100m/100g',
      '/motif weigh name:light weight:10g ball:100m/100g',
      '/blanket start name:t kinds:"dark, light" columns:6 rows:8 join_colour:plum reserve:0',
      // Yarn for 22 dark ones and 23 light ones.
      '/blanket colours colour:moss ball:100m/100g balls:2.25',
      '/blanket colours colour:sand ball:100m/100g balls:2.35',
    ])
      expect(await ask(line)).toMatchObject({ ok: true });
    const found = await ask('/blanket fit stretch:50');
    expect(found.figures).toMatchObject({
      motifs: { value: 45 },
      kind_a: { value: 22 },
      kind_b: { value: 23 },
    });
    expect(found.lines!.join(' ')).toContain('equal claims to the odd place');
    // Laid with those counts it can be made.
    const { columns, rows } = found.figures;
    const laid = await ask(
      `/blanket layout columns:${columns!.value} rows:${rows!.value} counts:"A 22, B 23" confirm:yes`,
    );
    expect(laid).toMatchObject({ ok: true, data: { counts: [22, 23] } });
    expect((await ask('/blanket fit stretch:50')).headline).toContain('just as planned');
    await ask('/blanket undo');
    // The other way about the usual counts do, and nothing is said of it.
    await ask('/blanket colours colour:moss balls:2.35');
    await ask('/blanket colours colour:sand balls:2.25');
    const usual = await ask('/blanket fit stretch:50');
    expect(usual.figures).toMatchObject({
      motifs: { value: 45 },
      kind_a: { value: 23 },
      kind_b: { value: 22 },
    });
    expect(usual.lines!.join(' ')).not.toContain('equal claims');
  });
});
