/** Colour differences, contrasts and colour vision against what was published, and against another implementation. */
import {
  differenceCiede2000,
  filterDeficiencyDeuter,
  filterDeficiencyProt,
  filterDeficiencyTrit,
  lab65,
  rgb,
} from 'culori';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ciede2000,
  reckonContrast,
  measureDifference,
  labOf,
  simulateSight,
  type Lab,
  type Sight,
} from '../../src/core/blanket/colour.ts';

const anyHex = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`);

/**
 * Sharma, Wu & Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes, Supplementary Test Data, and
 * Mathematical Observations", Color Research & Application 30(1):21-30, 2005, Table 1, by the numbers of its pairs.
 */
const SHARMA: [pair: number, Lab, Lab, published: number][] = [
  [1, [50, 2.6772, -79.7751], [50, 0, -82.7485], 2.0425],
  [3, [50, 2.8361, -74.02], [50, 0, -82.7485], 3.4412],
  [4, [50, -1.3802, -84.2814], [50, 0, -82.7485], 1.0],
  [7, [50, 0, 0], [50, -1, 2], 2.3669],
  [9, [50, 2.49, -0.001], [50, -2.49, 0.0009], 7.1792],
  [10, [50, 2.49, -0.001], [50, -2.49, 0.001], 7.1792],
  [11, [50, 2.49, -0.001], [50, -2.49, 0.0011], 7.2195],
  [14, [50, -0.001, 2.49], [50, 0.001, -2.49], 4.8045],
  [16, [50, 2.5, 0], [50, 0, -2.5], 4.3065],
  [17, [50, 2.5, 0], [73, 25, -18], 27.1492],
  [19, [50, 2.5, 0], [56, -27, -3], 31.903],
  [25, [60.2574, -34.0099, 36.2677], [60.4626, -34.1751, 39.4387], 1.2644],
  [31, [90.8027, -2.0831, 1.441], [91.1528, -1.6435, 0.0447], 1.4441],
];

describe('CIEDE2000', () => {
  test.each(SHARMA)('published pair %i', (_pair, one, other, published) => {
    expect(ciede2000(one, other)).toBeCloseTo(published, 4);
    expect(ciede2000(other, one)).toBeCloseTo(published, 4);
  });

  test('agrees with culori on any two colours of a screen', () => {
    const outside = differenceCiede2000();
    fc.assert(
      fc.property(anyHex, anyHex, (one, other) => {
        const labs = [labOf(one), labOf(other)].map(([l, a, b]) => ({ mode: 'lab65' as const, l, a, b }));
        expect(measureDifference(one, other)).toBeCloseTo(outside(labs[0]!, labs[1]!), 6);
      }),
      { numRuns: 500 },
    );
  });

  test('L*a*b* under D65 agrees with culori', () => {
    fc.assert(
      fc.property(anyHex, (hex) => {
        const outside = lab65(hex)!;
        const [l, a, b] = labOf(hex);
        expect(Math.abs(l - outside.l) + Math.abs(a - outside.a) + Math.abs(b - outside.b)).toBeLessThan(
          0.05,
        );
      }),
    );
  });
});

/** WCAG 2.x, contrast ratio and relative luminance (w3c/wcag): the range 1 to 21 is published, the rest follows from the formula. */
test.each([
  ['#000000', '#ffffff', 21],
  ['#ffffff', '#ffffff', 1],
  ['#777777', '#ffffff', 4.4781],
  ['#767676', '#ffffff', 4.5422],
  ['#595959', '#ffffff', 7.0047],
  ['#ff0000', '#ffffff', 3.9985],
  ['#00ff00', '#ffffff', 1.3722],
  ['#0000ff', '#ffffff', 8.5925],
  ['#808080', '#ffffff', 3.9494],
  ['#808080', '#000000', 5.3172],
])('WCAG contrast of %s and %s', (one, other, ratio) => {
  expect(reckonContrast(one, other)).toBeCloseTo(ratio, 4);
  expect(reckonContrast(other, one)).toBe(reckonContrast(one, other));
});

test('WCAG: a ratio is not rounded before it is compared', () => {
  expect(reckonContrast('#777777', '#ffffff') >= 4.5).toBe(false);
  expect(reckonContrast('#767676', '#ffffff') >= 4.5).toBe(true);
});

/** The matrices of Machado, Oliveira & Fernandes, 2009, as culori carries them, handed linear light. */
test.each([
  ['protanopia', filterDeficiencyProt(1)],
  ['deuteranopia', filterDeficiencyDeuter(1)],
  ['tritanopia', filterDeficiencyTrit(1)],
] as const)('%s agrees with culori', (sight: Sight, filter) => {
  const linear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  const encode = (c: number) => (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
  fc.assert(
    fc.property(anyHex, (hex) => {
      const { r, g, b } = rgb(hex)!;
      const outside = filter({ mode: 'rgb', r: linear(r), g: linear(g), b: linear(b) });
      const seen = rgb(simulateSight(hex, sight))!;
      for (const channel of ['r', 'g', 'b'] as const) {
        const expected = Math.min(1, Math.max(0, encode(Math.max(0, outside[channel]))));
        expect(Math.abs(seen[channel] - expected)).toBeLessThan(0.6 / 255);
      }
    }),
  );
});
