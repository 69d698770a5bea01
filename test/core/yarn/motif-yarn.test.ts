/** Which data feed a motif's yarn: its own weight by its own ball, a weighed twin, its gauge, or hook and yarn alone. */
import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { piecesOf, type BlanketSpec } from '../../../src/core/blanket/pieces.ts';
import { reckonMotifYarn } from '../../../src/core/yarn/motif-yarn.ts';
import type { MotifSpec } from '../../../src/core/yarn/motif.ts';
import { asking } from '../../asking.ts';

const wool: MotifSpec = {
  name: 'wool sq',
  shape: 'diagonal',
  size: 12,
  stitch: 'hdc',
  gauge: { stitches: 13, rows: 10, over: 10 },
  hook: 5,
  runs: [{ colour: 'wool', rows: 24 }],
};
const LACE = { colour: 'lace', ball: { m: 400, g: 50 } };
const total = ({ colours }: ReturnType<typeof reckonMotifYarn>) =>
  colours.reduce((sum, { worked }) => sum + worked, 0);

describe('the yarn of a motif', () => {
  it('is never reckoned from its weight by the ball of another yarn', () => {
    const found = reckonMotifYarn({ ...wool, weight: 12 }, [LACE], new Working());
    expect(found.how).toBe('by-gauge');
    expect(total(found)).toBeLessThan(40);
    expect(found.assumptions.join(' ')).toMatch(/no ball of its own yarn is known.*12 g/);
  });

  it('is reckoned by the ball that was said at the scale, and by its own colour’s before that', () => {
    const own = reckonMotifYarn({ ...wool, weight: 12, ball: { m: 170, g: 100 } }, [LACE], new Working());
    expect(own.how).toBe('weighed');
    expect(total(own)).toBeCloseTo(20.4, 9);
    const bought = { colour: 'wool', ball: { m: 200, g: 100 } };
    const other = reckonMotifYarn({ ...wool, weight: 12, ball: { m: 170, g: 100 } }, [bought], new Working());
    expect(total(other)).toBeCloseTo(24, 9);
  });

  it('counts chains and second uprights by size: 25 chains and 24 of them in 12 rising rows', () => {
    const { colours } = reckonMotifYarn(wool, [], new Working());
    // Worked out by hand: 312 stitches of 2.32 × 10/13 + 7.52 × 1 cm, 25 chains of 5.1 × 10/13, 24 uprights of 7.52 cm.
    const cm = 312 * ((2.32 * 10) / 13 + 7.52) + 25 * 5.1 * (10 / 13) + 24 * 7.52;
    expect(colours[0]!.worked).toBeCloseTo(cm / 100, 9);
  });

  it('goes by hook and yarn where no gauge is known, the hook usual for the yarn', () => {
    const { name, shape, size, stitch, runs } = wool;
    const plain: MotifSpec = { name, shape, size, stitch, runs };
    const found = reckonMotifYarn(plain, [{ colour: 'wool', ball: { m: 400, g: 100 } }], new Working());
    expect(found.how).toBe('rough');
    expect(found.assumptions.join(' ')).not.toContain('⟦5 mm⟧');
    const thick = reckonMotifYarn(plain, [{ colour: 'wool', ball: { m: 50, g: 100 } }], new Working());
    expect(total(thick)).toBeGreaterThan(1.5 * total(found));
  });
});

describe('a weighed kind of a blanket', () => {
  const twin: MotifSpec = { ...wool, name: 'sand sq', size: 8, runs: [{ colour: 'sand', rows: 16 }] };
  const spec = (kinds: readonly MotifSpec[], yarns: BlanketSpec['yarns'] = []): BlanketSpec => ({
    kinds,
    joining: { method: 'single-crochet' },
    border: { rounds: [{ stitch: 'sc' }], corner: 3 },
    yarns,
    reserve: 10,
  });
  const weighed: MotifSpec = { ...wool, weight: 12, ball: { m: 170, g: 100 } };

  it('tells of its twins, of the border and of seams worked in stitches, whatever the order', () => {
    for (const kinds of [
      [weighed, twin],
      [twin, weighed],
    ]) {
      const { motifs, border, seam } = piecesOf(spec(kinds), new Working());
      const sand = motifs.find(({ name }) => name === 'sand sq')!;
      expect(sand.how).toBe('as-weighed');
      // 20.4 m over 312 stitches; 144 stitches of the small one.
      expect(sand.colours[0]!.worked).toBeCloseTo((144 * 20.4) / 312, 9);
      const inSc = 20.4 / 312 / 1.48;
      expect(border.rounds[0]).toMatchObject({ weighed: true });
      expect(border.rounds[0]!.perStitch).toBeCloseTo(inSc, 9);
      expect(seam.ratio).toBeCloseTo((inSc * 100) / (10 / 13), 9);
    }
  });

  it('tells nothing of a yarn of another thickness, or of another hook', () => {
    const lace = { ...twin, runs: [{ colour: 'lace', rows: 16 }] };
    expect(piecesOf(spec([weighed, lace], [LACE]), new Working()).motifs[1]!.how).toBe('by-gauge');
    expect(piecesOf(spec([weighed, { ...twin, hook: 4 }]), new Working()).motifs[1]!.how).toBe('by-gauge');
  });
});

describe('what is said at the scale', () => {
  it('is kept with the motif: the blanket knows it', async () => {
    const { ask, figure } = asking();
    await ask('/motif define name:"wool sq" shape:diagonal size:12 gauge:13x10 hook:5mm');
    await ask('/blanket start name:b kinds:"wool sq" columns:2 rows:2');
    await ask('/motif weigh name:"wool sq" weight:12g ball:170m/100g');
    const materials = await ask('/blanket materials');
    expect(materials.data.weighed).toEqual(['wool sq']);
    expect(materials.data.colours[0].motifs).toBeCloseTo(4 * 20.4, 9);
    expect(await figure('/blanket materials', 'yarn_total')).toBeGreaterThan(4 * 20.4);
  });
});
