import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reckonBlockedSide } from '../../../src/core/size/blocking.ts';
import {
  computeBlockedSide,
  resize,
  search,
  listSizesAround,
  type MotifSize,
} from '../../../src/core/size/resize.ts';
import { searchExhaustively } from './exhaustively.ts';
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
          const sizes = listSizesAround(GAUGE, size, step);
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
    // Two of 12 cm are as far above 22 cm as one of 20 is below: 400 square centimetres take less yarn than 576.
    const larger = search(
      { width: 22, height: 22, border: 0, endsAMotif: 0 },
      [{ side: 12 }, { side: 20 }],
      1,
    );
    expect(larger).toMatchObject([{ side: 20, columns: 1, rows: 1 }]);
    // Four of 10 cm are 400 square centimetres too, one of 24 is 576: here the more motifs take the less.
    const more = search({ width: 22, height: 22, border: 0, endsAMotif: 0 }, [{ side: 24 }, { side: 10 }], 1);
    expect(more).toMatchObject([{ side: 10, columns: 2, rows: 2 }]);
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
          expect(computeBlockedSide(gauge, size)).toBeCloseTo(
            reckonBlockedSide(gauge, size, new Working()),
            9,
          );
        },
      ),
      { numRuns: 40 },
    );
  });

  it('run from half to double in whole steps from the pattern’s own', () => {
    const of = (size: number, step?: number) => listSizesAround(GAUGE, size, step).map((one) => one.size);
    expect(of(12)).toEqual([12]);
    expect(of(12, 4)).toEqual([8, 12, 16, 20, 24]);
    expect(of(7, 3)).toEqual([4, 7, 10, 13]);
    expect(of(1, 1)).toEqual([1, 2]);
    expect(of(9, 20)).toEqual([9]);
    for (const { size, side } of listSizesAround(GAUGE, 12, 5))
      expect(side).toBe(computeBlockedSide(GAUGE, size!));
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

  it('names the pattern’s own size only where the best has another', () => {
    const wish = { width: 120, height: 160, border: 4 };
    expect(resize({ ...wish, gauge: GAUGE, size: 12 })).not.toHaveProperty('bestOwnSize');
    expect(resize({ ...wish, side: 15 })).not.toHaveProperty('bestOwnSize');
    expect(resize({ ...wish, side: 15 }).best).not.toHaveProperty('size');
  });

  it.each([
    // width, height, border, side: code, option, the nearest that can be and the border that leaves room.
    [14, 160, 0, 15, 'smaller-than-a-motif', 'width', 'The nearest possible is ⟦15x165 cm⟧.'],
    [160, 14, 0, 15, 'smaller-than-a-motif', 'height', 'The nearest possible is ⟦165x15 cm⟧.'],
    [14, 14, 0, 15, 'smaller-than-a-motif', 'width', 'The nearest possible is ⟦15x15 cm⟧.'],
    // 158 cm between the borders hold 11 of 15 cm best, and 17 is one with its borders.
    [
      14,
      160,
      1,
      15,
      'smaller-than-a-motif',
      'width',
      'The nearest possible is ⟦17x167 cm⟧, the border counted in.',
    ],
    // Between borders of 2 cm there are 14 and 156 cm.
    [
      18,
      160,
      2,
      15,
      'border-too-wide',
      'border',
      'At most border:1.5cm leaves room for a motif; with this border the nearest possible is ⟦19x154 cm⟧.',
    ],
    [
      15,
      160,
      2,
      15,
      'border-too-wide',
      'border',
      'At most border:0cm leaves room for a motif; with this border the nearest possible is ⟦19x154 cm⟧.',
    ],
  ])(
    'of %d × %d with a border of %d, motifs of %d: %s',
    (width, height, border, side, code, option, hint) => {
      expect(() => resize({ width, height, border, side })).toThrow(refused(code, { option, hint }));
    },
  );

  it('tells a border wider than the blanket from one that leaves too little room', () => {
    const said = (border: number) => () => resize({ width: 20, height: 90, border, side: 15 });
    expect(said(9)).toThrow('Inside that border there is no room for one motif.');
    expect(said(10)).toThrow('The border alone is wider than the blanket.');
    expect(said(2.5)).not.toThrow();
  });

  it('has room where the smallest size of the motif has', () => {
    // Sizes 6 to 24: 6 rising rows block to 7.8 cm, 12 to 15.4.
    const wish = { width: 10, height: 10, border: 0, gauge: GAUGE, size: 12 };
    expect(resize({ ...wish, rowStep: 1 }).best).toMatchObject({ columns: 1, rows: 1, size: 8 });
    expect(() => resize(wish)).toThrow(refused('smaller-than-a-motif'));
  });

  it('counts two ends a motif, or as many as are said', () => {
    const ends = (endsAMotif?: number) =>
      resize({ width: 30, height: 30, border: 0, side: 15, endsAMotif }).best.ends;
    expect([ends(), ends(5)]).toEqual([8, 20]);
  });

  it('is refused with the nearest possible where it cannot be', async () => {
    const room = asking();
    const asked = async (line: string) => room.ask(`/resize ${line}`);
    expect(await asked('width:120cm height:160cm side:15cm border:60cm')).toMatchObject({
      ok: false,
      option: 'border',
      code: 'border-too-wide',
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
    for (const [motif, code, option] of [
      [{}, 'motif-size-missing', 'side'],
      [{ gauge: GAUGE }, 'motif-size-missing', 'size'],
      [{ size: 12 }, 'gauge-missing', 'gauge'],
      [{ side: 15, size: 12 }, 'motif-given-twice', 'size'],
      [{ side: 15, gauge: GAUGE }, 'motif-given-twice', 'gauge'],
      [{ side: 15, rowStep: 2 }, 'row-step-without-size', 'row_step'],
      [{ size: 12, gauge: { stitches: 13, over: 10 } }, 'gauge-rows-missing', 'gauge'],
    ] as const)
      expect(() => resize({ ...wish, ...motif })).toThrow(refused(code, { option }));
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
