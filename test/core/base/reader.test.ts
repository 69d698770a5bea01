import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cm,
  count,
  g,
  forReader,
  m,
  mm,
  num,
  ownUnit,
  plain,
  size,
  t,
  toOwn,
  type Reader,
} from '../../../src/core/base/reader.ts';

const METRIC: Reader = { units: 'metric', terms: 'US' };
const IMPERIAL: Reader = { units: 'imperial', terms: 'UK' };

describe('tokens', () => {
  it('become the reader’s own units and terms', () => {
    const text = `${size(121.92, 152.4)}, ${cm(2.54)}, ${m(9.144)}, ${g(28.349523125)}, ${mm(5)}, ${t('hdc')}, ${t('gauge')}`;
    expect(forReader(text, METRIC)).toBe('122 × 152 cm, 2.54 cm, 9.14 m, 28.3 g, 5 mm, hdc, gauge');
    expect(forReader(text, IMPERIAL)).toBe('48 × 60 in, 1 in, 10 yd, 1 oz, 5 mm, htr, tension');
  });
  it('take their own number of decimals', () => {
    expect(forReader(cm(12.345, 0), METRIC)).toBe('12 cm');
  });
  it('cannot be written by a person', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('⟦', '⟧', 'cm', '5', ' ', 'hdc') }), (typed) => {
        expect(forReader(plain(typed), IMPERIAL)).toBe(plain(typed));
      }),
    );
  });
});

describe('units', () => {
  it('of a ratio are converted above and below', () => {
    expect(ownUnit('m/g', IMPERIAL)).toBe('yd/oz');
    expect(toOwn('m/g', IMPERIAL)).toBeCloseTo(28.349523125 / 0.9144, 9);
    expect(toOwn('', IMPERIAL)).toBe(1);
    expect(toOwn('cm', METRIC)).toBe(1);
  });
});

describe('numbers', () => {
  it.each([
    [0, '0'],
    [-0.001, '0'],
    [1.239, '1.24'],
    [15.377, '15.4'],
    [152.4, '152'],
    [12_345.6, '12,346'],
  ])('%d', (value, text) => {
    expect(num(value)).toBe(text);
  });
  it('come with their word', () => {
    expect([count(1, 'row'), count(2, 'row'), count(2, 'stitch', 'stitches')]).toEqual([
      '1 row',
      '2 rows',
      '2 stitches',
    ]);
  });
});
