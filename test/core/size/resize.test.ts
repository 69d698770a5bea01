import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blockedSide } from '../../../src/core/size/blocking.ts';
import {
  plainBlockedSide,
  resize,
  search,
  searchExhaustively,
  sizesAround,
  type MotifSize,
} from '../../../src/core/size/resize.ts';
import { Working } from '../../../src/core/base/working.ts';
import { expectOwnUnits } from '../../own-units.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

const GAUGE = { stitches: 13, rows: 10, over: 10 };

describe('the search', () => {
  it('finds what trying every combination finds, in the same order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 30, max: 160 }),
        fc.integer({ min: 30, max: 160 }),
        fc.integer({ min: 0, max: 10 }),
        fc.array(fc.integer({ min: 8, max: 60 }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 1, max: 15 }),
        (width, height, border, halves, most) => {
          const sizes: MotifSize[] = halves.map((half) => ({ side: half / 2 }));
          const wish = { width, height, border, endsAMotif: 2 };
          expect(search(wish, sizes, most)).toEqual(searchExhaustively(wish, sizes, most));
        },
      ),
      { numRuns: 60 },
    );
  });

  it('finds it for sides that come out of a gauge, too', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 200, noNaN: true }),
        fc.double({ min: 40, max: 200, noNaN: true }),
        fc.integer({ min: 6, max: 14 }),
        fc.integer({ min: 1, max: 3 }),
        (width, height, size, step) => {
          const sizes = sizesAround(GAUGE, size, step);
          const wish = { width, height, border: 2.5, endsAMotif: 6 };
          expect(search(wish, sizes)).toEqual(searchExhaustively(wish, sizes));
        },
      ),
      { numRuns: 25 },
    );
  });

  it('prefers, of blankets as near, the one with fewer ends, then less yarn', () => {
    // 25 cm lies midway between two motifs of 10 cm and three.
    const found = search({ width: 25, height: 25, border: 0, endsAMotif: 2 }, [{ side: 10 }], 4);
    expect(found.map(({ columns, rows }) => [columns, rows])).toEqual([
      [2, 2],
      [2, 3],
      [3, 2],
      [3, 3],
    ]);
    const yarn = search({ width: 20, height: 20, border: 0, endsAMotif: 0 }, [{ side: 24 }, { side: 16 }], 2);
    expect(yarn.map(({ side }) => side)).toEqual([16, 24]);
  });
});

describe('sizes', () => {
  it('have the side that the formulas of blocking give', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 40 }),
        fc.integer({ min: 5, max: 40 }),
        fc.constantFrom(10, 10.16),
        fc.integer({ min: 1, max: 400 }),
        (stitches, rows, over, size) => {
          const gauge = { stitches, rows, over };
          expect(plainBlockedSide(gauge, size)).toBeCloseTo(blockedSide(gauge, size, new Working()), 9);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('run from half to double in whole steps from the pattern’s own', () => {
    const of = (size: number, step?: number) => sizesAround(GAUGE, size, step).map((one) => one.size);
    expect(of(12)).toEqual([12]);
    expect(of(12, 4)).toEqual([8, 12, 16, 20, 24]);
    expect(of(7, 3)).toEqual([4, 7, 10, 13]);
    expect(of(1, 1)).toEqual([1, 2]);
    expect(Math.max(...of(300, 50).map((size) => size!))).toBe(400);
  });
});

describe('a wish', () => {
  it('is answered best first, with the own size beside it where the best changes it', () => {
    const found = resize({ width: 120, height: 160, border: 4, gauge: GAUGE, size: 12, rowStep: 1 });
    expect(found.best).toMatchObject({ columns: 8, rows: 11, size: 11, motifs: 88, ends: 176 });
    expect(found.bestOwnSize).toMatchObject({ columns: 7, rows: 10, size: 12 });
    expect(found.options).toHaveLength(12);
    expectOwnUnits(found.working);
    const steps = found.working.steps.map(({ result }) => result);
    for (const value of [found.best.width, found.best.height, found.best.offPercent, 88, 176])
      expect(steps.some((step) => Math.abs(step - value) < 1e-9)).toBe(true);
  });

  it('is refused with the nearest possible where it cannot be', async () => {
    const room = asking();
    const asked = async (line: string) => room.ask(`/resize ${line}`);
    expect(await asked('width:120cm height:160cm side:15cm border:60cm')).toMatchObject({
      ok: false,
      option: 'border',
      code: 'border-too-wide',
      problem: 'The border alone is wider than the blanket.',
      hint: expect.stringContaining('border:52.5cm'),
    });
    expect(await asked('width:120cm height:160cm side:15cm border:55cm')).toMatchObject({
      option: 'border',
    });
    expect(await asked('width:14cm height:160cm side:15cm')).toMatchObject({
      option: 'width',
      code: 'smaller-than-a-motif',
      hint: 'The nearest possible is 15 × 165 cm.',
    });
    expect(await asked('width:160cm height:14cm side:15cm')).toMatchObject({ option: 'height' });
    expect((await asked('width:120cm height:160cm side:15cm border:52.5cm')).ok).toBe(true);
    expect(room.faults).toEqual([]);
  });

  it('says in its own units what would be possible', async () => {
    const room = asking();
    expect(await room.ask('/settings change units:imperial')).toMatchObject({ ok: true });
    const answer = await room.ask('/resize width:5in height:60in side:6in');
    expect(answer.ok).toBe(false);
    expect(answer.hint).toBe('The nearest possible is 6 × 60 in.');
  });

  it('needs the motif in exactly one way', () => {
    const wish = { width: 100, height: 100, border: 0 };
    for (const [motif, code] of [
      [{}, 'motif-size-missing'],
      [{ gauge: GAUGE }, 'motif-size-missing'],
      [{ size: 12 }, 'gauge-missing'],
      [{ side: 15, size: 12 }, 'motif-given-twice'],
      [{ side: 15, gauge: GAUGE }, 'motif-given-twice'],
      [{ side: 15, rowStep: 2 }, 'row-step-without-size'],
      [{ size: 12, gauge: { stitches: 13, over: 10 } }, 'gauge-rows-missing'],
    ] as const)
      expect(() => resize({ ...wish, ...motif })).toThrow(refused(code));
  });

  it('takes the reckoning from rows for diagonal squares only', async () => {
    const room = asking();
    const line = '/resize width:120cm height:160cm gauge:13x10 size:12 shape:clusters';
    expect(await room.ask(line)).toMatchObject({ ok: false, option: 'shape' });
    expect(await room.ask('/resize width:120cm height:160cm side:15cm shape:clusters')).toMatchObject({
      ok: true,
    });
  });

  it('cautions about babies where the blanket is small', async () => {
    const room = asking();
    const cautions = async (line: string) => (await room.ask(`/resize ${line} side:15cm`)).cautions.join();
    expect(await cautions('width:75cm height:90cm')).toMatch(/12 months/);
    expect(await cautions('width:120cm height:160cm')).toBe('');
  });
});
