import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareGauges, suggestHook, HOOK_STAYS_WITHIN } from '../../../src/core/size/compare-gauges.ts';
import { Working } from '../../../src/core/base/working.ts';
import { HOOKS, STEEL_HOOKS } from '../../../src/standards/hooks.ts';
import { asking } from '../../asking.ts';

const stitches = fc.integer({ min: 50, max: 300 }).map((tenths) => tenths / 10);
const sizes = HOOKS.filter(({ mm }) => mm >= 2.25 && mm <= 10).map(({ mm }) => mm);

describe('compare', () => {
  it('says by how much a piece worked to the counts comes out', () => {
    fc.assert(
      fc.property(stitches, stitches, fc.constantFrom(10, 10.16, 5), (have, want, over) => {
        const width = 120;
        const found = compareGauges({
          have: { stitches: have, over },
          want: { stitches: want, over: 10 },
          width,
        });
        const counted = (width * want) / 10;
        const comesOut = (counted * over) / have;
        expect(found.comesOut).toBeCloseTo(comesOut, 6);
        expect(found.widthPercent).toBeCloseTo(100 * (comesOut / width - 1), 6);
        expect(found.heightPercent).toBeUndefined();
      }),
      { numRuns: 100 },
    );
  });

  it('never proposes the hook in hand when it is off, and goes the right way', () => {
    fc.assert(
      fc.property(stitches, stitches, fc.constantFrom(...sizes), (have, want, hook) => {
        fc.pre(have / want < 2 && want / have < 2);
        const { mm } = suggestHook(hook, have, want, new Working())!;
        const off = 100 * (want / have - 1);
        if (Math.abs(off) > HOOK_STAYS_WITHIN) expect(Math.sign(mm - hook)).toBe(-Math.sign(off));
        if (off === 0) expect(mm).toBe(hook);
      }),
      { numRuns: 200 },
    );
  });

  it('proposes the listed size nearest to the ideal, steel ones among them', () => {
    const all = [...HOOKS, ...STEEL_HOOKS.filter(({ mm }) => mm < 2)].map(({ mm }) => mm);
    fc.assert(
      fc.property(stitches, stitches, fc.constantFrom(...sizes), (have, want, hook) => {
        const off = 100 * (want / have - 1);
        fc.pre(Math.abs(off) > HOOK_STAYS_WITHIN);
        const ideal = (hook * have) / want;
        const right = all.filter((mm) => (off > 0 ? mm < hook : mm > hook));
        const advice = suggestHook(hook, have, want, new Working());
        expect(Math.abs(advice!.mm - ideal)).toBeCloseTo(
          Math.min(...right.map((mm) => Math.abs(mm - ideal))),
          9,
        );
        expect(advice!.stillOff).toBeCloseTo(100 * (advice!.mm / ideal - 1), 9);
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    // hook, have, want: the size, whether it is listed from memory. 3 % off is not off yet.
    [5, 20, 20, 5, false],
    [5, 20, 20.5, 5, false],
    [5, 20, 20.6, 5, false],
    [5, 20, 20.7, 4.5, false],
    [5, 21, 20, 5.25, true],
    // 5.375 mm lies midway between 5.25 and 5.5: of two as near the smaller.
    [5, 21.5, 20, 5.25, true],
    [5, 22, 20, 5.5, false],
    [5.1, 20, 20, 5.1, false],
    [2.25, 20, 25, 1.8, false],
  ])('hook %d with %d for %d: %d', (hook, have, want, mm, fromMemory) => {
    expect(suggestHook(hook, have, want, new Working())).toMatchObject({ mm, fromMemory });
  });

  it('has none smaller than the smallest, nor larger than the largest', () => {
    expect(suggestHook(0.75, 20, 25, new Working())).toBeUndefined();
    expect(suggestHook(30, 25, 20, new Working())).toBeUndefined();
  });

  it('holds rows to rows, over the length of the swatch', () => {
    // 16 rows over 4 in (10.16 cm) are 15.748 over 10; with 14 of one's own a piece comes out 12.5 % too long.
    const found = compareGauges({
      have: { stitches: 12, rows: 14, over: 10 },
      want: { stitches: 12.192, rows: 16, over: 10.16 },
      width: 50,
    });
    expect(found.have).toEqual({ stitches: 12, rows: 14 });
    expect(found.want.stitches).toBeCloseTo(12, 9);
    expect(found.want.rows).toBeCloseTo(15.748, 3);
    expect(found.heightPercent).toBeCloseTo(12.486, 3);
    expect(found.widthPercent).toBeCloseTo(0, 9);
    expect(found).not.toHaveProperty('suggested');
    const halves = [
      { have: { stitches: 12, over: 10 }, want: { stitches: 12, rows: 16, over: 10 } },
      { have: { stitches: 12, rows: 14, over: 10 }, want: { stitches: 12, over: 10 } },
    ];
    for (const { have, want } of halves) {
      const half = compareGauges({ have, want, width: 50, hook: 5 });
      expect(half).not.toHaveProperty('heightPercent');
      expect([half.have, half.want]).toEqual([{ stitches: 12 }, { stitches: 12 }]);
      expect(half.suggested!.mm).toBe(5);
    }
  });

  it.each([
    ['have:12x9 want:11.5x9 hook:6.5mm', 7, 'try 7 mm instead of 6.5 mm', 'listed from memory'],
    ['have:5x5 want:23x23 hook:4mm', 0.85, 'it takes a thinner yarn, or fewer stitches and rows', ''],
    ['have:23x23 want:5x5 hook:4mm', 19, 'it takes a thicker yarn, or more stitches and rows', ''],
    // A size and a half: 15 % are reached, 16 not.
    ['have:20x20 want:23x23 hook:5mm', 4.25, 'try 4.25 mm instead of 5 mm', ''],
    ['have:20x20 want:24x24 hook:5mm', 4.25, 'no hook reaches so far (about a size and a half)', ''],
    ['have:20x20 want:21x21 hook:15mm', 12, '16 % too narrow, so it takes another yarn', 'from memory'],
  ])('%s: the nearest hook is %d mm', async (typed, hook, headline, lines) => {
    const answer = await asking().ask(`/gauge compare ${typed}`);
    expect(answer.figures['suggested_hook']!.value).toBe(hook);
    expect(answer.headline).toContain(headline);
    expect(answer.lines!.join(' ')).toContain(lines);
  });

  it('says that another yarn is needed where no hook is left', async () => {
    const answer = await asking().ask('/gauge compare have:14x10 want:16x10 hook:0.75mm');
    expect(answer.figures['suggested_hook']).toBeUndefined();
    expect(answer.headline).toContain('no smaller hook is listed here, so it takes another yarn');
  });

  it('says what a bare number might have meant', async () => {
    const said = async (hook: string) =>
      (await asking().ask(`/gauge compare have:14x10 want:13x10 hook:${hook}`)).assumptions.join(' ');
    expect(await said('7')).toContain('7 is read as 7 mm; US 7 is 4.5 mm, US steel 7 is 1.65 mm.');
    expect(await said('7mm')).not.toContain('read as');
    expect(await said('4.5')).not.toContain('read as');
  });

  it('blames only the odd stitch where a row is as high as a stitch is wide', async () => {
    const { lines } = await asking().ask('/gauge shape gauge:10x10 size:1');
    expect(lines!.join(' ')).toContain('only the odd stitch in the middle, 3 stitches across to 2 rows');
    expect(lines!.join(' ')).not.toContain('1 times');
  });

  it('says the same in inches', async () => {
    const room = asking();
    await room.ask('wren: /settings change units:imperial');
    const answer = await room.ask('wren: /gauge compare have:14x10 want:13x10 width:48in');
    expect(answer.figures['width_percent']!.value).toBeCloseTo(-7.1429, 4);
    expect(answer.headline).toContain('48 in wide would come out 44.6 in, 7.1 % too narrow');
  });
});
