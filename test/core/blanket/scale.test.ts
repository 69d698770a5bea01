/** The same blanket at another size, worked by hand on pieces in round numbers. */
import { describe, expect, it } from 'vitest';
import type { Laying } from '../../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../../src/core/blanket/materials.ts';
import { scaleBlanket, type NewSize } from '../../../src/core/blanket/scale.ts';
import { Working } from '../../../src/core/base/working.ts';
import { refused } from '../../refused.ts';
import { BY_HAND } from './by-hand.ts';

const laying = (arrangement: Laying['laid']['arrangement'], shares?: readonly number[]): Laying => ({
  columns: 3,
  rows: 4,
  kinds: 2,
  laid: { arrangement, setting: 'upright', seed: 1 },
  shares,
});
const scaled = (to: NewSize, by = laying('checked')) => scaleBlanket(BY_HAND, by, to);

describe('a blanket at another size', () => {
  it('keeps the side that is not said', () => {
    expect(scaled({ columns: 5 }).after).toMatchObject({ columns: 5, rows: 4, counts: [10, 10] });
    expect(scaled({ rows: 5 }).after).toMatchObject({ columns: 3, rows: 5, counts: [8, 7] });
    const both = scaled({ columns: 5, rows: 5 });
    expect(both.after).toMatchObject({ columns: 5, rows: 5, counts: [13, 12], width: 58, height: 58 });
    expect(both.before).toMatchObject({ columns: 3, rows: 4, counts: [6, 6], width: 38, height: 48 });
    expect(both).not.toHaveProperty('offPercent');
  });

  it('takes what a blanket of that size takes, before and after', () => {
    const { before, after, working } = scaled({ columns: 5, rows: 5 });
    const alone = (columns: number, rows: number, counts: number[]) => {
      const steps = new Working();
      return { ...reckonMaterials(BY_HAND, { columns, rows, counts }, steps), steps: steps.steps };
    };
    const { steps: was, ...small } = alone(3, 4, [6, 6]);
    const { steps, ...large } = alone(5, 5, [13, 12]);
    expect(before).toMatchObject(small);
    expect(after).toMatchObject(large);
    // Only the new one is shown.
    expect(working.steps).toEqual(steps);
    expect(was).not.toEqual(steps);
  });

  it('comes as near to a length as whole motifs do, its border counted in', () => {
    // 92 cm between borders of 4 cm hold nine motifs of 10 cm best: 98 cm, 2 % short of 100.
    const wide = scaled({ width: 100 });
    expect(wide.after).toMatchObject({ columns: 9, rows: 4, width: 98, height: 48 });
    expect(wide.offPercent).toBeCloseTo(2, 9);
    expect(wide.working.steps.map(({ result }) => result)).toEqual(expect.arrayContaining([98, 48, 36]));
    const high = scaled({ height: 100 });
    expect(high.after).toMatchObject({ columns: 3, rows: 9 });
    expect(scaled({ width: 60, height: 80 }).after).toMatchObject({ columns: 5, rows: 7 });
  });

  it('keeps the shares of kinds that lie free, and says how they were shared', () => {
    const free = scaled({ columns: 5, rows: 5 }, laying('scattered', [8, 4]));
    // Two thirds and one third of 25: 16.67 and 8.33.
    expect(free.before.counts).toEqual([8, 4]);
    expect(free.after.counts).toEqual([17, 8]);
    const shown = free.working.steps.slice(0, 2);
    expect(shown.map(({ label }) => label)).toEqual(['Exact share of A (dark)', 'Exact share of B (light)']);
    expect(shown[0]!.result).toBeCloseTo(50 / 3, 9);
    expect(scaled({ columns: 5, rows: 5 }, laying('typed', [4, 8])).after.counts).toEqual([8, 17]);
    // Without shares all kinds alike.
    expect(scaled({ columns: 4, rows: 4 }, laying('scattered')).after.counts).toEqual([8, 8]);
  });

  it.each([
    [{}, 'size-missing', 'columns'],
    [{ columns: 4, width: 90 }, 'size-given-twice', 'width'],
    [{ rows: 4, height: 90 }, 'size-given-twice', 'height'],
    [{ rows: 4, width: 90, height: 90 }, 'size-given-twice', 'width'],
    [{ columns: 101 }, 'blanket-too-large', 'columns'],
    [{ width: 9 }, 'smaller-than-a-motif', 'width'],
    [{ width: 17 }, 'border-too-wide', 'border'],
  ])('refuses %j', (to, code, option) => {
    expect(() => scaled(to)).toThrow(refused(code, { option }));
  });
});
