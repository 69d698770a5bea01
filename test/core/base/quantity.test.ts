import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Problem } from '../../../src/core/base/problem.ts';
import { readBall, readGauge, readLength, readNumber, readWeight } from '../../../src/core/base/quantity.ts';
import { readCounts } from '../../../src/core/base/lists.ts';
import { readHook, readStitch, readStitches, readYarn } from '../../../src/core/base/trade-words.ts';

const READERS = {
  readBall,
  readCounts,
  readGauge,
  readHook,
  readLength,
  readStitch,
  readStitches,
  readWeight,
  readYarn,
};

describe('numbers', () => {
  it.each([
    ['12', 12],
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['7 1/2', 7.5],
    ['7½', 7.5],
    ['½', 0.5],
    ['.5', 0.5],
  ])('%s', (text, value) => {
    expect(readNumber(text)).toBe(value);
  });
  it.each(['', 'twelve', '1e308', 'NaN', 'Infinity', '-3', '1,360', '0x10', '12 12', '3/0'])(
    'not %s',
    (text) => {
      expect(readNumber(text)).toBeUndefined();
    },
  );
});

describe('lengths and weights', () => {
  it.each([
    ['120cm', 120],
    ['1.2m', 120],
    ['48in', 121.92],
    ['48"', 121.92],
    ['4ft', 121.92],
    ['4ft 2in', 127],
    ['400 mm', 40],
    ['7 1/2 in', 19.05],
    ['1.2 metres', 120],
    ['1.2 meters', 120],
    ['120 centimetres', 120],
    ['120 Centimeters', 120],
    ['400 millimetres', 40],
    ['48in.', 121.92],
    ['48”', 121.92],
    ['48″', 121.92],
    ['4’ 2”', 127],
    ['4′2″', 127],
  ])('%s', (text, cm) => {
    expect(readLength(text)).toBeCloseTo(cm, 9);
  });
  it.each([
    ['85g', 85],
    ['3oz', 85.048569375],
    ['1lb', 453.59237],
    ['0.1 kg', 100],
    ['0.1 kilograms', 100],
    ['2 pounds', 907.18474],
    ['3 oz.', 85.048569375],
  ])('%s', (text, g) => {
    expect(readWeight(text)).toBeCloseTo(g, 9);
  });
  it('nothing at all, only where that is allowed', () => {
    expect(readLength('0cm', { allowZero: true })).toBe(0);
    expect(() => readLength('-1cm', { allowZero: true })).toThrow(Problem);
  });
  it.each(['120', '0cm', '-4cm', '12g', 'cm', '9999999m', '1e9cm', '1,200cm', '5constructor', '4.cm..'])(
    'no length: %s',
    (text) => {
      expect(() => readLength(text)).toThrow(Problem);
    },
  );
});

describe('gauges', () => {
  it.each([
    ['13x10', { stitches: 13, rows: 10, over: 10 }],
    ['13 × 10', { stitches: 13, rows: 10, over: 10 }],
    ['13x10 over 4in', { stitches: 13, rows: 10, over: 10.16 }],
    ['13.5 by 10', { stitches: 13.5, rows: 10, over: 10 }],
    ['13 sts and 10 rows per 10cm', { stitches: 13, rows: 10, over: 10 }],
    ['13', { stitches: 13, over: 10 }],
    ['13,5x10', { stitches: 13.5, rows: 10, over: 10 }],
  ])('%s', (text, gauge) => {
    expect(readGauge(text)).toEqual(gauge);
  });
  it.each([
    'x10',
    '0x10',
    '13x0',
    '13x10x9',
    '9000x10',
    '13,10',
    '13,5',
    '13, 10 over 4in',
    'soft',
    '13x10 over nothing',
  ])('not %s', (text) => {
    expect(() => readGauge(text)).toThrow(Problem);
  });
});

describe('balls, hooks, stitches, yarns, counts', () => {
  it('balls in both units', () => {
    expect(readBall('170m/100g')).toEqual({ m: 170, g: 100 });
    expect(readBall('364yd/198g').m).toBeCloseTo(332.8416, 9);
    expect(() => readBall('100g/170m')).toThrow(Problem);
    expect(() => readBall('5m/1kg')).toThrow(Problem);
  });
  it('hooks by millimetres or US letter', () => {
    expect(readHook('5mm')).toBe(5);
    expect(readHook('US 7')).toBe(4.5);
    expect(readHook('H-8')).toBe(5);
    expect(readHook('us k-10 1/2')).toBe(6.5);
    expect(() => readHook('80mm')).toThrow(Problem);
  });
  it('stitches in either terms', () => {
    expect(readStitch('dc')).toBe('dc');
    expect(readStitch('UK dc')).toBe('sc');
    expect(readStitch('UK half treble')).toBe('hdc');
    expect(readStitch('US double crochet')).toBe('dc');
    expect(readStitch('htr')).toBe('hdc');
    expect(readStitches('UK htr tr htr')).toEqual(['hdc', 'dc', 'hdc']);
    expect(readStitch('US htr')).toBe('hdc');
    expect(readStitch('UK hdc')).toBe('hdc');
    expect(readStitch('UK dtr')).toBe('tr');
    // The US dtr is taller than any counted here: it is not taken for the UK one.
    expect(() => readStitch('US dtr')).toThrow(Problem);
    expect(() => readStitch('US zz')).toThrow('“zz”');
    expect(() => readStitch('moss')).toThrow(Problem);
  });
  it('yarns by category, name or wraps', () => {
    expect(readYarn('4').category).toBe(4);
    expect(readYarn('worsted').category).toBe(4);
    expect(readYarn('11wpi')).toEqual({ wpi: 11 });
    expect(() => readYarn('baby')).toThrow(Problem);
  });
  it('counts', () => {
    expect(readCounts('3 5, 7;8')).toEqual([3, 5, 7, 8]);
    expect(() => readCounts('3 -5')).toThrow(Problem);
    expect(() => readCounts('3 5.5')).toThrow(Problem);
    expect(() => readCounts(' ')).toThrow(Problem);
  });
});

describe('whatever is typed', () => {
  it.each(Object.entries(READERS))('%s answers or says what would work', (_, read) => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ maxLength: 60 }), fc.string({ unit: 'grapheme', maxLength: 30 })),
        (text) => {
          try {
            read(text);
          } catch (error) {
            expect(error).toBeInstanceOf(Problem);
            expect((error as Problem).hint.length).toBeGreaterThan(0);
          }
        },
      ),
      { numRuns: 200 },
    );
  });
  it('takes no longer for a hostile line', () => {
    const hostile = `${'1 '.repeat(1500)}x${'9'.repeat(1500)}`;
    for (const read of Object.values(READERS)) expect(() => read(hostile)).toThrow(Problem);
  });
});
