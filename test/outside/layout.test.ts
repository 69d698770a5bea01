/** Scattered layouts held to an exact mixed-integer solver on the same boards: no layout of theirs has fewer touches than ours. */
import { describe, expect, it } from 'vitest';
import { seedChance } from '../../src/core/base/chance.ts';
import { findFewestTouches, scatter, touchesOf } from '../../src/core/blanket/scatter.ts';
import { scatterProgram } from '../scatter-program.ts';
import { solver } from '../solver.ts';

/** The fewest touches there are. */
function exactly(columns: number, rows: number, quotas: readonly number[]): number {
  const found = solver.solve(scatterProgram(columns, rows, quotas));
  expect(found.Status).toBe('Optimal');
  return Math.round(found.ObjectiveValue);
}

const BOARDS: readonly (readonly [columns: number, rows: number, quotas: readonly number[]])[] = [
  [1, 5, [3, 2]],
  [7, 1, [5, 1, 1]],
  [2, 2, [2, 1, 1]],
  [2, 3, [2, 2, 2]],
  [2, 6, [8, 2, 2]],
  [3, 3, [3, 3, 3]],
  [3, 3, [5, 4]],
  [3, 3, [6, 3]],
  [3, 3, [7, 2]],
  [3, 4, [9, 2, 1]],
  [3, 4, [4, 4, 4]],
  [3, 5, [9, 6]],
  [3, 5, [11, 4]],
  [4, 4, [10, 6]],
  [4, 4, [12, 4]],
  [4, 4, [13, 3]],
  [4, 4, [6, 5, 5]],
  [4, 4, [4, 4, 4, 4]],
  [5, 5, [14, 11]],
  [5, 5, [15, 10]],
  [5, 5, [16, 9]],
  [5, 5, [17, 5, 3]],
];

describe('an exact solver', () => {
  it.each(BOARDS)('finds no fewer touches on %i by %i for quotas %j', (columns, rows, quotas) => {
    const kinds = scatter(columns, rows, quotas, seedChance(5));
    const touches = touchesOf(kinds, columns);
    expect(touches).toBe(exactly(columns, rows, quotas));
    expect(touches).toBe(findFewestTouches(columns, rows, quotas).fewest);
  });
});
