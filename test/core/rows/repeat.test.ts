import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRepeat } from '../../../src/core/rows/repeat.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

describe('repeat', () => {
  it('has neighbours that suit and lie around the wish', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: 1, max: 900 }),
        (multiple, plus, near) => {
          fc.pre(near >= plus);
          const { below, above, nearest } = findRepeat({ multiple, plus, near, stitch: 'sc' });
          expect(below.stitches).toBeLessThanOrEqual(near);
          expect(above.stitches).toBeGreaterThanOrEqual(near);
          expect(above.stitches - below.stitches).toBeLessThanOrEqual(multiple);
          for (const one of [below, above, nearest]) expect(one.stitches).toBe(one.repeats * multiple + plus);
          expect(nearest.repeats).toBeGreaterThanOrEqual(1);
          if (below.repeats >= 1)
            expect(Math.abs(nearest.stitches - near)).toBe(
              Math.min(near - below.stitches, above.stitches - near),
            );
        },
      ),
      { numRuns: 200 },
    );
  });

  // Worked by counting along: 8, 16, 24 … and with a plus 3, 11, 19 …
  it.each([
    // multiple, plus, near: below, above, nearest, whether as near, steps that are shown
    [8, 0, 12, 8, 16, 16, true, 5],
    [8, 0, 11, 8, 16, 8, false, 5],
    [8, 0, 13, 8, 16, 16, false, 5],
    [8, 0, 20, 16, 24, 24, true, 5],
    [8, 0, 16, 16, 16, 16, false, 4],
    [8, 0, 4, 0, 8, 8, false, 5],
    [8, 0, 3, 0, 8, 8, false, 5],
    [8, 3, 3, 3, 3, 11, false, 5],
    [8, 3, 7, 3, 11, 11, false, 5],
  ])('%i + %i near %i', (multiple, plus, near, below, above, nearest, tied, steps) => {
    const found = findRepeat({ multiple, plus, near, stitch: 'dc' });
    expect(found).toMatchObject({
      near,
      below: { stitches: below, repeats: (below - plus) / multiple },
      above: { stitches: above, repeats: (above - plus) / multiple },
      nearest: { stitches: nearest },
      tied,
    });
    expect(found.working.steps).toHaveLength(steps);
    expect(found.nearest).not.toHaveProperty('width');
  });

  it('gives the chain to begin with and where the first stitch goes, stitch by stitch', () => {
    // Stitches and foundation chain: one more for sc, two for dc (crochetcabana.com, "Multiples"); turning chains 1 to 4 (Dummies
    // (Wiley), "How to crochet a turning chain"), the stitch going into the next chain from the hook.
    const begin = STITCHES.map((stitch) => findRepeat({ multiple: 6, plus: 1, near: 31, stitch }));
    expect(begin.map(({ foundationChain }) => foundationChain)).toEqual([32, 32, 33, 34]);
    expect(begin.map(({ firstInto }) => firstInto)).toEqual([2, 3, 4, 5]);
  });

  it('refuses fewer than the plus, and says the least that holds one repeat', () => {
    const byCount = { multiple: 8, plus: 10, near: 6, stitch: 'sc' } as const;
    expect(() => findRepeat(byCount)).toThrow(
      refused('too-few-stitches', {
        message: 'The plus alone is 10 stitches, more than the 6 wished for.',
        option: 'near',
        hint: 'One repeat is the least: near:18 or more.',
        facts: { needed: 18, given: 6 },
      }),
    );
    // 5 cm at 13 over 10 cm are 6.5 stitches; 18 take 13.85 cm.
    const gauge = { stitches: 13, over: 10 };
    const byWidth = { multiple: 8, plus: 10, width: 5, gauge, stitch: 'sc' } as const;
    expect(() => findRepeat(byWidth)).toThrow(
      refused('too-few-stitches', {
        message: 'The plus alone is 10 stitches, more than the 6.5 wished for.',
        option: 'width',
        hint: 'One repeat is the least: width:14cm or more.',
        facts: { needed: 18, given: 6.5 },
      }),
    );
    expect(findRepeat({ ...byCount, near: 18 }).below.repeats).toBe(1);
    expect(findRepeat({ ...byWidth, width: 14 }).below.repeats).toBe(1);
    expect(findRepeat({ ...byWidth, width: 13 }).below.repeats).toBe(0);
  });

  it('needs one wish, and only one', () => {
    const asked = { multiple: 8, plus: 0, stitch: 'sc' } as const;
    const gauge = { stitches: 13, over: 10 };
    expect(() => findRepeat(asked)).toThrow(refused('wish-missing', { option: 'near' }));
    expect(() => findRepeat({ ...asked, near: 90, width: 120, gauge })).toThrow(
      refused('wish-given-twice', { option: 'width' }),
    );
    expect(() => findRepeat({ ...asked, width: 120 })).toThrow(refused('gauge-missing', { option: 'gauge' }));
  });

  it('finds the count for a width, and the width each makes', async () => {
    const { figures, data } = await asking().ask(
      '/stitches repeat multiple:6 plus:1 width:120cm gauge:13x10',
    );
    // 120 cm at 13 over 10 cm is 156 stitches; 151 and 157 suit.
    expect(figures).toMatchObject({ below: { value: 151 }, above: { value: 157 }, nearest: { value: 157 } });
    expect(figures['width']!.value).toBeCloseTo(120.769, 3);
    expect(data.neighbours.below.width).toBeCloseTo(116.154, 3);
  });

  it.each([
    ['multiple:8', 'near'],
    ['multiple:8 near:90 width:120cm gauge:13x10', 'width'],
    ['multiple:8 width:120cm', 'gauge'],
    ['multiple:8 plus:10 near:6', 'near'],
    ['multiple:8 plus:100 width:10cm gauge:13x10', 'width'],
  ])('refuses %s', async (options, option) => {
    expect(await asking().ask(`/stitches repeat ${options}`)).toMatchObject({ ok: false, option });
  });
});
