import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { listSettings, describeStrip, resizeToNumber } from '../../../src/core/size/wished-number.ts';
import { requireWishedSize, readWishedSize } from '../../../src/core/size/wished-size.ts';
import { computeBlockedSide } from '../../../src/core/size/resize.ts';
import { SIZES } from '../../../src/standards/sizes.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';
import { expectOwnUnits } from '../../own-units.ts';

const asked = { border: 0, endsAMotif: 2, sizes: [] };

describe('a wished number of motifs', () => {
  it('is set in every way there is, and in no other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2500 }), (motifs) => {
        const found = listSettings(motifs);
        for (const { columns, rows } of found) expect(columns * rows).toBe(motifs);
        for (let columns = 1; columns <= motifs; columns++)
          expect(found.some((one) => one.columns === columns)).toBe(motifs % columns === 0);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps its number in every option, the best being nearest to a square', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 600 }),
        fc.double({ min: 2, max: 40, noNaN: true }),
        (motifs, side) => {
          const { options, best, working } = resizeToNumber({ ...asked, motifs, sizes: [{ side }] });
          for (const option of options) expect(option.motifs).toBe(motifs);
          expect(best.columns).toBeLessThanOrEqual(best.rows);
          for (const { columns, rows } of listSettings(motifs))
            expect(Math.abs(best.rows - best.columns)).toBeLessThanOrEqual(Math.abs(rows - columns));
          expectOwnUnits(working);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('for a size finds the side that is off least', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (motifs, width, height, border, other) => {
          const { best, working } = resizeToNumber({ ...asked, motifs, border, wish: { width, height } });
          const off = (side: number) =>
            100 *
            (Math.abs(best.columns * side + 2 * border - width) / width +
              Math.abs(best.rows * side + 2 * border - height) / height);
          expect(best.offPercent).toBeLessThanOrEqual(off(other) + 1e-9);
          expectOwnUnits(working);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('that only makes a strip names its neighbours that do not', () => {
    expect(resizeToNumber({ ...asked, motifs: 47, sizes: [{ side: 15 }] })).toMatchObject({
      fewer: 45,
      more: 48,
    });
    expect(resizeToNumber({ ...asked, motifs: 48, sizes: [{ side: 15 }] }).fewer).toBeUndefined();
  });
});

describe('what is set out for a number', () => {
  const columnsAndSides = (found: { options: readonly { columns: number; side: number }[] }) =>
    found.options.map(({ columns, side }) => [columns, side]);
  const labels = (found: { working: { steps: readonly { label: string }[] } }) =>
    found.working.steps.map(({ label }) => label);

  it('without a size: nearest to a square, then higher than wide, then the smaller motif; twelve at most', () => {
    const sizes = [{ side: 20 }, { side: 10 }, { side: 15 }];
    const found = resizeToNumber({ ...asked, border: 3, motifs: 12, sizes });
    const each = [3, 4, 2, 6].flatMap((columns) => [10, 15, 20].map((side) => [columns, side]));
    expect(columnsAndSides(found)).toEqual(each);
    for (const { columns, rows, side, width, height, offPercent, ends } of found.options)
      expect([width, height, offPercent, ends]).toEqual([columns * side + 6, rows * side + 6, 0, 24]);
    expect(labels(found)).toEqual(['Motifs', 'Finished width', 'Finished height', 'Ends to weave in']);
  });

  it('with a size and a motif: what comes nearest, as it is off', () => {
    const wish = { width: 95, height: 125 };
    const found = resizeToNumber({ ...asked, border: 2.5, motifs: 12, sizes: [{ side: 30 }], wish });
    expect(found.best).toMatchObject({ columns: 3, rows: 4, width: 95, height: 125, offPercent: 0 });
    expect(found.options.map(({ columns }) => columns)).toEqual([3, 4, 2, 6, 1, 12]);
    expect(labels(found)).not.toContain('Side of a motif that fits the width');
    expect(labels(found)).toHaveLength(5);
  });

  it('with a gauge: the side that the size blocks to is shown', () => {
    const gauge = { stitches: 13, rows: 10, over: 10 };
    const sizes = [{ size: 12, side: computeBlockedSide(gauge, 12) }];
    const found = resizeToNumber({ ...asked, motifs: 4, sizes, gauge });
    expect(labels(found)).toContain('Side, blocked square');
    expect(labels(resizeToNumber({ ...asked, motifs: 4, sizes: [{ side: 15 }], gauge }))).toHaveLength(4);
  });

  it('with a size alone: the side that is off least, the better of the two that fit one way', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.integer({ min: 50, max: 300 }),
        fc.integer({ min: 50, max: 300 }),
        fc.integer({ min: 0, max: 20 }),
        (motifs, width, height, border) => {
          const { best, working } = resizeToNumber({ ...asked, motifs, border, wish: { width, height } });
          const off = (columns: number, rows: number, side: number) =>
            Math.abs(columns * side + 2 * border - width) / width +
            Math.abs(rows * side + 2 * border - height) / height;
          // Off by the height alone, or by the width alone: between the two it changes evenly.
          const least = listSettings(motifs).flatMap(({ columns, rows }) => [
            off(columns, rows, (width - 2 * border) / columns),
            off(columns, rows, (height - 2 * border) / rows),
          ]);
          expect(best.offPercent).toBeCloseTo(100 * Math.min(...least), 6);
          const [first] = working.steps;
          expect(first!.result).toBeCloseTo(best.side, 9);
          const [byWidth, byHeight] = [best.width, best.height].map((one, index) =>
            Math.abs(one - [width, height][index]!),
          );
          if (byWidth! > 1e-6) expect(first!.label).toBe('Side of a motif that fits the height');
          if (byHeight! > 1e-6) expect(first!.label).toBe('Side of a motif that fits the width');
        },
      ),
      // 19 × 9: 180 ÷ 19 = 9.47 cm is off by 5.3 %, 80 ÷ 9 = 8.89 cm by 5.6 %: here the larger one is nearer.
      { numRuns: 60, examples: [[171, 200, 100, 10]] },
    );
  });

  it('needs a side or a size, and room between the borders', () => {
    expect(() => resizeToNumber({ ...asked, motifs: 48 })).toThrow(
      refused('side-missing', { option: 'side', facts: { motifs: 48 } }),
    );
    const bordered = (width: number, height: number) => () =>
      resizeToNumber({ ...asked, border: 10, motifs: 4, wish: { width, height } });
    for (const wish of [bordered(20, 90), bordered(90, 20)])
      expect(wish).toThrow(refused('border-too-wide', { option: 'border' }));
    expect(bordered(20.1, 90)).not.toThrow();
  });

  it('calls a strip what is narrower than half its length', () => {
    const strip = (motifs: number) => {
      const { fewer, more } = resizeToNumber({ ...asked, motifs, sizes: [{ side: 15 }] });
      return [fewer, more];
    };
    // 2 is 1 × 2 and 8 is 2 × 4, half as wide as long; 3 and 5 set one by one only, 7 between 6 and 8; 2209 is 47 × 47.
    expect([1, 2, 8, 2209].map(strip)).toEqual(Array.from({ length: 4 }, () => [undefined, undefined]));
    expect([3, 5, 7].map(strip)).toEqual([
      [2, 4],
      [4, 6],
      [6, 8],
    ]);
  });

  it('says what would set better, higher than wide', () => {
    expect(describeStrip(47, { fewer: 45, more: 48 })).toBe(
      '47 motifs only make a strip; better set: 5 × 9 with 45 motifs, or 6 × 8 with 48 motifs.',
    );
    expect(describeStrip(3, { more: 4 })).toBe(
      '3 motifs only make a strip; better set: 2 × 2 with 4 motifs.',
    );
    expect(describeStrip(48, {})).toBeUndefined();
  });
});

describe('a wished size', () => {
  const throwSize = SIZES.find((size) => size.of === 'throw')!;
  it('is both sides, or a word, or nothing', () => {
    expect(readWishedSize({})).toBeUndefined();
    expect(readWishedSize({ width: 120, height: 160 })).toEqual({ width: 120, height: 160 });
    expect(readWishedSize({ for: throwSize })).toEqual({ width: 127, height: 152.4 });
    expect(requireWishedSize({ width: 120, height: 160 })).toEqual({ width: 120, height: 160 });
  });
  it.each([
    [{ width: 120 }, 'height-missing', 'height'],
    [{ height: 120 }, 'width-missing', 'width'],
    [{ for: throwSize, width: 120 }, 'size-given-twice', 'for'],
    [{ for: throwSize, height: 120 }, 'size-given-twice', 'for'],
  ])('is refused by half or twice (%#)', (given, code, option) => {
    expect(() => readWishedSize(given)).toThrow(refused(code, { option }));
  });
  it('is asked for where it is needed', () => {
    expect(() => requireWishedSize({})).toThrow(refused('width-missing', { option: 'width' }));
  });
});

describe('/resize', () => {
  const room = asking();
  it('takes a number in place of a size, beside one, and with a size word', async () => {
    // Charity, younger child, 36 × 48 in (cthugsandkisses.org): 48 squares of 6 in set 6 × 8.
    expect((await room.ask('/resize motifs:48 side:6in')).figures).toMatchObject({
      columns: { value: 6 },
      rows: { value: 8 },
      width: { value: 36 * 2.54 },
      height: { value: 48 * 2.54 },
    });
    const sides = await room.ask('/resize motifs:48 width:36in height:48in');
    expect(sides.figures['side']!.value).toBeCloseTo(6 * 2.54, 9);
    // The common trade size of a throw, 50 × 60 in (from memory, as the answer says).
    const thrown = await room.ask('/resize for:throw side:10in');
    expect(thrown.figures).toMatchObject({ columns: { value: 5 }, rows: { value: 6 } });
    expect(thrown.assumptions.join(' ')).toContain('from memory: common trade size');
  });
  it.each([
    ['side:15cm', 'width', 'width-missing'],
    ['side:15cm width:120cm', 'height', 'height-missing'],
    ['side:15cm width:120cm for:throw', 'for', 'size-given-twice'],
    ['motifs:48', 'side', 'side-missing'],
    ['motifs:48 width:10cm height:10cm border:6cm', 'border', 'border-too-wide'],
  ])('refuses %s about %s', async (typed, option, code) => {
    expect(await room.ask(`/resize ${typed}`)).toMatchObject({ ok: false, option, code });
  });
});
