import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bareNum,
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

/** The tokens as one expression finds them: what is filled in by hand is held to it. */
const found = (text: string) => [...text.matchAll(/⟦[^⟦⟧]*⟧/g)].map(([token]) => token);

it('fills in every token and nothing else, however brackets stand', () => {
  const pieces = fc.constantFrom(
    '⟦',
    '⟧',
    '⟦⟦',
    'hdc',
    '5 cm',
    '5x6~1 cm',
    'at 2031-05-31',
    'hand a|b',
    ' ',
    'moss',
  );
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 12 }), (parts) => {
      const text = parts.join('');
      const clock = (iso: string) => `<${iso}>`;
      const tokens = new Map(found(text).map((token) => [token, forReader(token, { ...IMPERIAL, clock })]));
      const wanted = text.replace(/⟦[^⟦⟧]*⟧/g, (token) => tokens.get(token) ?? token);
      expect(forReader(text, { ...IMPERIAL, clock })).toBe(wanted);
    }),
    { numRuns: 2_000 },
  );
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

  // Halves of the last decimal are where another way of rounding would show.
  const numbers = fc.oneof(
    fc.integer({ min: -300_000_000, max: 300_000_000 }).map((n) => n / 2_000),
    fc.integer({ min: -3_000_000, max: 3_000_000 }).map((n) => (n + 0.5) / 100),
    fc.double({ min: -2e6, max: 2e6, noNaN: true }),
    fc.double(),
    fc.constantFrom(1.005, 1.045, 8.345, 0.1 + 0.2, 999.5, 9_999.995, 0.05, 1e21, 5e-324),
  );
  it('are written as Intl writes them, to the last digit', () => {
    const formats = [true, false].map((useGrouping) =>
      [0, 1, 2, 3, 4, 5].map(
        (places) => new Intl.NumberFormat('en-US', { maximumFractionDigits: places, useGrouping }),
      ),
    );
    const intl = (value: number, places: number, commas: boolean) => {
      const text = formats[commas ? 0 : 1]?.[places]?.format(value) ?? '';
      return text === '-0' ? '0' : text;
    };
    fc.assert(
      fc.property(numbers, fc.integer({ min: 0, max: 5 }), (value, places) => {
        expect(num(value, places)).toBe(intl(value, places, Math.abs(value) >= 10_000));
        expect(bareNum(value, places)).toBe(intl(value, places, false));
      }),
      { numRuns: 5_000 },
    );
  });
});
