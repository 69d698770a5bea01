/** Chains that stand for no stitch and stitches worked together, counted along the row as it is worked. */
import { describe, expect, it } from 'vitest';
import { countBeside, countFoundationChain, countLosingChain } from '../../../src/core/rows/chains.ts';
import { planWhole, planRows, type Shape } from '../../../src/core/rows/index.ts';
import { STITCHES, type Stitch } from '../../../src/standards/stitches.ts';
import { refused } from '../../refused.ts';

const beside = (shape: Shape, stitch: Stitch, size: number, otherSize?: number) =>
  countBeside(planRows(shape, { size, otherSize, stitch }));

describe('chains', () => {
  it('begin a flat piece, stitch by stitch', () => {
    // One more for sc, two for dc (crochetcabana.com, "Multiples"); hdc and tr as their skipped chains count.
    expect(STITCHES.map((stitch) => countFoundationChain(stitch, 10))).toEqual([11, 11, 12, 13]);
  });

  it('begin a row that loses stitches: one shorter where the stitch is taller than two', () => {
    expect(STITCHES.map((stitch) => countLosingChain(stitch))).toEqual([1, 2, 2, 3]);
  });

  it.each([
    // Three rows of ten: the foundation less the chain that is the first stitch; sc turns twice with a chain that is none.
    ['flat', 'sc', 10, 3, 11 + 1 + 1],
    ['flat', 'hdc', 10, 3, 11 - 2],
    ['flat', 'dc', 10, 3, 12 - 3],
    ['flat', 'tr', 10, 3, 13 - 4],
    // Every round is closed with a slip stitch, as long as a chain; sc opens with one too; four corners of two chains each.
    ['circle', 'dc', 3, undefined, 3 * 1],
    ['circle', 'sc', 3, undefined, 3 * (1 + 1)],
    ['hexagon', 'tr', 2, undefined, 2 * 1],
    ['solid-square', 'sc', 4, undefined, 4 * (1 + 1)],
    ['clusters', 'dc', 3, undefined, 3 * (1 + 4 * 2)],
    ['clusters', 'sc', 3, undefined, 3 * (1 + 1 + 4 * 2)],
    // Corner to corner: ch 2 and three sc into the second; ch 4 and two dc into the fourth. The rows that lose begin with a chain
    // that stands for nothing.
    ['diagonal', 'sc', 3, undefined, 2 + (1 + 1) + (1 + 1 + 1)],
    ['diagonal', 'hdc', 2, undefined, 1 + 0 + (2 + 2)],
    ['diagonal', 'dc', 2, undefined, 1 + 0 + (2 + 2)],
    ['diagonal', 'tr', 2, undefined, 1 + 0 + (3 + 3)],
    // A block's chains are reckoned in the block.
    ['blocks', 'dc', 4, 3, 0],
  ] as const)('%s in %s of %i', (shape, stitch, size, otherSize, chains) => {
    expect(beside(shape, stitch, size, otherSize).chains).toBe(chains);
  });

  it('and what is worked together stand in their rows', () => {
    // Rows of 3, 5, 7, 5, 3, 1: two together at each end of the last three.
    const plan = planRows('diagonal', { size: 3, stitch: 'dc' });
    expect(countBeside(plan)).toEqual({ chains: 1 + 3 * 2, together: 6 });
    expect(countBeside(plan, 2, 3)).toEqual({ chains: 0, together: 0 });
    expect(countBeside(plan, 3, 4)).toEqual({ chains: 2, together: 2 });
    expect(countBeside(plan, 6, 6)).toEqual({ chains: 2, together: 2 });
    expect(countBeside(plan, 4, 3)).toEqual({ chains: 0, together: 0 });
    expect(beside('blocks', 'dc', 3).together).toBe(0);
  });
});

describe('a whole piece', () => {
  it('of a flat one needs its rows, of any other shape its size alone', () => {
    expect(() => planWhole('flat', { size: 10 })).toThrow(refused('rows-missing', { option: 'other_size' }));
    expect(planWhole('flat', { size: 10, otherSize: 4 }).rows).toHaveLength(4);
    expect(planWhole('blocks', { size: 3 }).rows).toHaveLength(5);
    expect(planWhole('blocks', { size: 3, otherSize: 4 }).rows).toHaveLength(6);
    expect(() => planWhole('circle', { size: 3, otherSize: 4 })).toThrow(refused('one-measure-only'));
  });
});
