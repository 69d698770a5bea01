/** Blankets for the tests of yarn, fit and scale, built as they would be saved. */
import fc from 'fast-check';
import { countKinds, type Arrangement, type Laying } from '../../../src/core/blanket/layout.ts';
import { piecesOf, type BlanketSpec } from '../../../src/core/blanket/pieces.ts';
import type { MotifSpec } from '../../../src/core/yarn/motif.ts';
import { Working } from '../../../src/core/base/working.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';

export const COLOURS = ['moss', 'sand', 'clay', 'plum'] as const;

const motif: fc.Arbitrary<MotifSpec> = fc
  .record({
    size: fc.integer({ min: 2, max: 14 }),
    stitch: fc.constantFrom(...STITCHES),
    hook: fc.constantFrom(4, 5, 6.5),
    stripes: fc.array(fc.constantFrom(...COLOURS), { minLength: 1, maxLength: 6 }),
    weight: fc.option(fc.integer({ min: 5, max: 40 }), { nil: undefined }),
  })
  .map(({ size, stitch, hook, stripes, weight }) => {
    const rows = 2 * size;
    const used = stripes.slice(0, rows);
    return {
      name: `patch ${size}`,
      shape: 'diagonal' as const,
      size,
      stitch,
      hook,
      gauge: { stitches: 13, rows: 10, over: 10 },
      side: 15,
      runs: used.map((colour, index) => ({
        colour,
        rows: index < used.length - 1 ? 1 : rows - used.length + 1,
      })),
      ...(weight === undefined ? {} : { weight }),
    };
  });

export const specs: fc.Arbitrary<BlanketSpec> = fc
  .record({
    kinds: fc.array(motif, { minLength: 1, maxLength: 4 }),
    method: fc.constantFrom('whip' as const, 'slip-stitch' as const, 'single-crochet' as const),
    rounds: fc.array(
      fc.record({
        stitch: fc.constantFrom(...STITCHES),
        colour: fc.option(fc.constantFrom(...COLOURS), { nil: undefined }),
      }),
      { maxLength: 5 },
    ),
    corner: fc.integer({ min: 1, max: 7 }),
    balls: fc.array(
      fc.integer({ min: 10, max: 400 }).map((tenths) => tenths / 10),
      { minLength: 4, maxLength: 4 },
    ),
    reserve: fc.integer({ min: 0, max: 30 }),
  })
  .map(({ kinds, method, rounds, corner, balls, reserve }) => ({
    kinds: kinds.map((kind, index) => ({ ...kind, name: `patch ${index}` })),
    joining: { method },
    border: {
      rounds: rounds.map(({ stitch, colour }) => ({ stitch, ...(colour === undefined ? {} : { colour }) })),
      corner,
    },
    yarns: COLOURS.map((colour, index) => ({
      colour,
      ball: { m: 100 + 30 * index, g: 50 },
      balls: balls[index]!,
    })),
    reserve,
  }));

export const pieces = (spec: BlanketSpec) => piecesOf(spec, new Working());

export const layingFor = (
  spec: BlanketSpec,
  columns: number,
  rows: number,
  arrangement: Arrangement,
): Laying => ({
  columns,
  rows,
  kinds: spec.kinds.length,
  laid: { arrangement, setting: 'upright', seed: 1 },
});

export const extent = (laying: Laying) => ({
  columns: laying.columns,
  rows: laying.rows,
  counts: countKinds(laying),
});
