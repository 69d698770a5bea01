/**
 * The largest blanket from the yarn at hand, held to an exact mixed-integer solver. The solver is handed what one motif, one seam and one border
 * stitch take, and reckons every size by itself; it chooses among the sizes and among whole motifs.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findLargestBlanket } from '../../src/core/blanket/largest-blanket.ts';
import { countMotifsAlone } from '../../src/core/blanket/motifs-alone.ts';
import { stockOf } from '../../src/core/blanket/yarn-at-hand.ts';
import type { Pieces } from '../../src/core/blanket/pieces.ts';
import { Working } from '../../src/core/base/working.ts';
import { layingFor, pieces, specs } from '../core/blanket/pieces.ts';
import { solver } from '../solver.ts';

/** Sizes up to this along a side: beyond them the stock of these tests never reaches. */
const ALONG = 14;

/** Metres of a colour in one motif of a kind. */
const inOne = (made: Pieces, kind: number, colour: string) =>
  made.motifs[kind]!.colours.filter((part) => part.colour === colour).reduce(
    (sum, part) => sum + part.worked + part.tails + part.carried,
    0,
  );

/** Metres of a colour in the seams and the border of a blanket of `columns` × `rows`. */
function around(made: Pieces, colour: string, columns: number, rows: number): number {
  let metres = 0;
  if (made.seam.colour === colour && columns * rows > 1) {
    const edges = (columns - 1) * rows + (rows - 1) * columns;
    const seams = rows * (columns - 1) + rows - 1;
    metres += (edges * made.side * made.seam.ratio) / 100 + seams * 0.3;
  }
  const { rounds, corner, stitchWidth } = made.border;
  const nearest = (motifs: number) => {
    const exact = (motifs * made.side) / stitchWidth;
    const below = Math.floor(exact + 1e-7);
    return Math.max(1, exact - below > 0.5 + 1e-7 ? below + 1 : below);
  };
  rounds.forEach((round, index) => {
    if (round.colour !== colour) return;
    const sides = 2 * (nearest(columns) + nearest(rows)) + 4 * index * (corner - 1);
    metres += (sides + 4 * corner) * round.perStitch;
    if (rounds[index - 1]?.colour !== colour) metres += 0.3;
  });
  return metres;
}

/** The most motifs, the kinds in turn along every row and column, by the solver. */
function exactly(made: Pieces): number {
  const stock = stockOf(made);
  const sizes = Array.from({ length: ALONG * ALONG }, (_, index) => ({
    columns: (index % ALONG) + 1,
    rows: Math.floor(index / ALONG) + 1,
  })).filter(({ columns, rows }) => Math.abs(Math.log(columns / rows / (6 / 8))) <= Math.log(1.25) + 1e-9);
  const kinds = made.motifs.length;
  const many = sizes.map(({ columns, rows }) => {
    const counts = made.motifs.map(() => 0);
    for (let row = 0; row < rows; row++)
      for (let column = 0; column < columns; column++) counts[(row + column) % kinds]!++;
    return counts;
  });
  const terms = (of: (index: number) => number) =>
    sizes.map((_, index) => `${of(index).toFixed(9)} y${index}`).join(' + ');
  const lines = [
    'Maximize',
    ` motifs: ${terms((index) => sizes[index]!.columns * sizes[index]!.rows)}`,
    'Subject To',
    ` ${sizes.map((_, index) => `y${index}`).join(' + ')} <= 1`,
    ...made.colours.map(
      (colour, at) =>
        ` ${terms((index) => {
          const { columns, rows } = sizes[index]!;
          const motifs = many[index]!.reduce((sum, n, kind) => sum + n * inOne(made, kind, colour), 0);
          return (motifs + around(made, colour, columns, rows)) * (1 + made.reserve / 100);
        })} <= ${stock[at]!.toFixed(9)}`,
    ),
    'Binary',
    ...sizes.map((_, index) => ` y${index}`),
    'End',
  ];
  const found = solver.solve(lines.join('\n'));
  expect(found.Status).toBe('Optimal');
  return Math.round(found.ObjectiveValue);
}

describe('an exact solver', () => {
  it('finds no larger blanket in the same yarn', () => {
    let reached = 0;
    fc.assert(
      fc.property(specs, (spec) => {
        const made = pieces(spec);
        const { best } = findLargestBlanket(made, layingFor(spec, 6, 8, 'checked'), 25);
        const motifs = best ? best.columns * best.rows : 0;
        // What is larger than the sizes that the solver is given is not compared.
        if (best && (best.columns > ALONG - 2 || best.rows > ALONG - 2)) return;
        expect(motifs).toBe(exactly(made));
        if (motifs > 0) reached++;
      }),
      { numRuns: 15, seed: 7 },
    );
    expect(reached).toBeGreaterThan(5);
  });

  it('finds no more motifs, of one kind alone or of every kind alike', () => {
    fc.assert(
      fc.property(specs, (spec) => {
        const made = pieces(spec);
        const stock = stockOf(made);
        const found = countMotifsAlone(made, new Working());
        const most = (kinds: readonly number[]) => {
          const lines = [
            'Maximize',
            ' motifs: n',
            'Subject To',
            ...made.colours.map((colour, at) => {
              const each = kinds.reduce((sum, kind) => sum + inOne(made, kind, colour), 0);
              return ` ${(each * (1 + made.reserve / 100)).toFixed(9)} n <= ${stock[at]!.toFixed(9)}`;
            }),
            'General',
            ' n',
            'End',
          ];
          return Math.round(solver.solve(lines.join('\n')).ObjectiveValue);
        };
        expect(found.together).toBe(most(made.motifs.map((_, kind) => kind)));
        made.motifs.forEach((_, kind) => expect(found.alone[kind]).toBe(most([kind])));
      }),
      { numRuns: 10, seed: 7 },
    );
  });
});
