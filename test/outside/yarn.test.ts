/** Yarn against measurements and definitions that others published. */
import { describe, expect, it } from 'vitest';
import { reckonSeamRatio } from '../../src/core/edges/seams.ts';
import { Working } from '../../src/core/base/working.ts';
import { reckonStitchYarn, reckonThickness } from '../../src/core/yarn/stitch-yarn.ts';
import { swapYarn, TEX } from '../../src/core/yarn/swap.ts';
import { reckonWeighed } from '../../src/core/yarn/weighed.ts';
import { ROUGH_BAND, WIDTH_OF_LOOP } from '../../src/standards/consumption.ts';
import { STITCH_FACTS } from '../../src/standards/stitches.ts';
import { M_PER_YARD } from '../../src/standards/units.ts';
import { YARN_WEIGHTS } from '../../src/standards/yarn-weights.ts';

const MEDIUM = 10.5;

describe('one row of 5 in on a 5 mm hook in medium yarn (windchilde.com/bluedepth, one maker’s measurement)', () => {
  const inches = { sc: 53, hdc: 78.5, dc: 102 };

  it('gives the ratios of the stitches', () => {
    expect(STITCH_FACTS.hdc.yarn).toBeCloseTo(inches.hdc / inches.sc, 2);
    expect(STITCH_FACTS.dc.yarn).toBeCloseTo(inches.dc / inches.sc, 2);
  });

  it('is met by a seam or row of single crochet, well within the band', () => {
    const ratio = reckonSeamRatio('single-crochet', { hook: 5, wpi: MEDIUM }, new Working());
    expect(Math.abs(ratio / (inches.sc / 5) - 1)).toBeLessThan(0.05);
  });

  it('is met by a slip stitch seam as a chain, of which the page gives two figures, 4.8 and 5.1 in an inch', () => {
    const ratio = reckonSeamRatio('slip-stitch', { hook: 5, wpi: MEDIUM }, new Working());
    expect(ratio).toBeGreaterThan(4.8 * 0.95);
    expect(ratio).toBeLessThan(5.1 * 1.05);
  });
});

describe('20 stitches by 20 rows on 6 mm (interweave.com, “Yarn usage: knitting vs. crochet”): sc 19 g, hdc 28 g', () => {
  it('gives nearly the same ratio of hdc to sc', () => {
    expect(Math.abs(28 / 19 / STITCH_FACTS.hdc.yarn - 1)).toBeLessThan(0.01);
  });

  it('is met by the rough figure within its band, for medium yarn of 170 to 220 m in 100 g', () => {
    const working = new Working();
    const sc = reckonStitchYarn(working, 'sc', 6, reckonThickness(working, MEDIUM));
    for (const perHundredGrams of [170, 200, 220]) {
      const measured = ((19 * perHundredGrams) / 100 / 400) * 1000;
      expect(Math.abs(sc / measured - 1)).toBeLessThan(ROUGH_BAND / 100);
    }
  });
});

describe('strips of equal yarn, 4 in wide (thesnugglery.net): sc 4.00 in high, dc 4.75, tr 4.75', () => {
  it('agrees with the rough ratios per area, within their band', () => {
    for (const stitch of ['dc', 'tr'] as const) {
      const perArea = STITCH_FACTS[stitch].yarn / STITCH_FACTS[stitch].height;
      expect(Math.abs(perArea / (4 / 4.75) - 1)).toBeLessThan(ROUGH_BAND / 100);
    }
  });
});

describe('the US yarn trade association’s table (single crochet over 4 in; hooks; wraps per inch)', () => {
  // Category 0 is stated in double crochet, categories 6 and 7 differ between editions.
  const published: Record<number, { stitches: [number, number]; hook: [number, number] }> = {
    1: { stitches: [21, 32], hook: [2.25, 3.5] },
    2: { stitches: [16, 20], hook: [3.5, 4.5] },
    3: { stitches: [12, 17], hook: [4.5, 5.5] },
    4: { stitches: [11, 14], hook: [5.5, 6.5] },
    5: { stitches: [8, 11], hook: [6.5, 9] },
  };

  it.each(Object.keys(published))('the stitch width assumed for a seam lies in category %s', (category) => {
    const { stitches, hook } = published[Number(category)]!;
    const wpi = YARN_WEIGHTS.find((yarn) => yarn.category === Number(category))!.wpi;
    const width = WIDTH_OF_LOOP * ((hook[0] + hook[1]) / 2 + 25.4 / ((wpi[0] + wpi[1]) / 2));
    expect(101.6 / width).toBeGreaterThanOrEqual(stitches[0]);
    expect(101.6 / width).toBeLessThanOrEqual(stitches[1]);
  });
});

describe('tex, grams per kilometre (ISO 1144; Textile Institute glossary)', () => {
  it('100 g in 200 yd is 546.807, 50 g in 100 m is 500', () => {
    const tex = (g: number, m: number) => new Working().do(TEX, { grams: g, metres: m, kilometre: 1000 });
    expect(tex(100, 200 * M_PER_YARD)).toBeCloseTo(546.807, 3);
    expect(tex(50, 100)).toBe(500);
    const { tex: old, newTex } = swapYarn({
      balls: 1,
      ball: { m: 200 * M_PER_YARD, g: 100 },
      newBall: { m: 100, g: 50 },
    });
    expect([old.toFixed(3), newTex]).toEqual(['546.807', 500]);
  });

  it('a weighed motif goes by the same: grams over tex are kilometres', () => {
    expect(reckonWeighed({ motif: 20, motifs: 1, ball: { m: 100, g: 50 }, reserve: 0 }).each).toBeCloseTo(
      (20 / 500) * 1000,
      9,
    );
  });
});
