import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Problem } from '../../../src/core/base/problem.ts';
import { readNumber } from '../../../src/core/base/number.ts';
import { readBall, readGauge, readLength, readWeight } from '../../../src/core/base/quantity.ts';
import { readCounts, readDay, readNumbers } from '../../../src/core/base/lists.ts';
import {
  describeOtherHooks,
  describeOtherYarns,
  readHook,
  readStitch,
  readStitches,
  readYarn,
} from '../../../src/core/base/trade-words.ts';
import { refused } from '../../refused.ts';

const READERS = {
  readBall,
  readCounts,
  readDay,
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
    ['7-1/2', 7.5],
    ['6 ⅜', 6.375],
    ['twelve', 12],
    ['Twenty-four', 24],
    ['a hundred and twenty', 120],
    ['one thousand two hundred', 1200],
    ['two dozen', 24],
    ['half a dozen', 6],
    ['six and a half', 6.5],
    ['6 and 1/2', 6.5],
    ['three quarters', 0.75],
  ])('%s', (text, value) => {
    expect(readNumber(text)).toBe(value);
  });
  it.each([
    '',
    'a',
    'and',
    'four five',
    'twenty twelve',
    'dozen dozen',
    '1e308',
    'NaN',
    'Infinity',
    '-3',
    '1,360',
    '0x10',
    '12 12',
    '3/0',
  ])('not %s', (text) => {
    expect(readNumber(text)).toBeUndefined();
  });
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
    ['4 feet and 2 inches', 127],
    ['4 ft 2', 127],
    ['6-inch', 15.24],
    ['six inches', 15.24],
    ['half an inch', 1.27],
    ['a foot', 30.48],
    ['1 m 20', 120],
    ['1m 20cm', 120],
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
    ['half a pound', 226.796185],
    ['2 lb 3 oz', 992.233],
    ['twelve grams', 12],
  ])('%s', (text, g) => {
    expect(readWeight(text)).toBeCloseTo(g, 3);
  });
  it('nothing at all, only where that is allowed', () => {
    expect(readLength('0cm', { allowZero: true })).toBe(0);
    expect(() => readLength('-1cm', { allowZero: true })).toThrow(refused('not-a-length'));
  });
  it.each([
    ['120'],
    ['0cm', 'not-above-zero'],
    ['-4cm'],
    ['12g'],
    ['cm'],
    ['9999999m', 'too-large'],
    ['1e9cm'],
    ['1,200cm', 'unclear-number'],
    ['5constructor'],
    ['4.cm..'],
    ['4 ft 14 in'],
    ['4 ft 2 g'],
    ['an inch and'],
  ])('no length: %s', (text, code = 'not-a-length') => {
    expect(() => readLength(text)).toThrow(refused(code));
  });
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
    ['14 stitches and 10 rows to 10 cm', { stitches: 14, rows: 10, over: 10 }],
    ['14 sts x 10 rows = 4 in', { stitches: 14, rows: 10, over: 10.16 }],
    ['10 rows and 14 stitches over 4"', { stitches: 14, rows: 10, over: 10.16 }],
    ['fourteen sts, ten rows in 4 inches', { stitches: 14, rows: 10, over: 10.16 }],
    ['14 hdc by 10 rows over 10cm', { stitches: 14, rows: 10, over: 10 }],
    ['3.5 sts per inch', { stitches: 3.5, over: 2.54 }],
    ['13 10', { stitches: 13, rows: 10, over: 10 }],
  ])('%s', (text, gauge) => {
    expect(readGauge(text)).toEqual(gauge);
  });
  it.each([
    ['x10'],
    ['0x10', 'impossible-gauge'],
    ['13x0', 'impossible-gauge'],
    ['13x10x9'],
    ['9000x10', 'impossible-gauge'],
    ['13,10', 'unclear-number'],
    ['13,5', 'unclear-number'],
    ['13, 10 over 4in', 'unclear-number'],
    ['soft'],
    ['13 rows and 10 rows'],
    ['13 sts and 10 sts'],
    ['1310', 'impossible-gauge'],
    ['13x10 over nothing', 'not-a-length'],
  ])('not %s', (text, code = 'not-a-gauge') => {
    expect(() => readGauge(text)).toThrow(refused(code));
  });
});

describe('balls, hooks, stitches, yarns, counts', () => {
  it('balls in both units', () => {
    expect(readBall('170m/100g')).toEqual({ m: 170, g: 100 });
    expect(readBall('364yd/198g').m).toBeCloseTo(332.8416, 9);
    for (const text of [
      '100g/170m',
      '100g 170m',
      '100 g, 170 m',
      '170 m to 100 g',
      '170m per 100g ball',
      '100 g = 170 metres',
      'a 100 gram ball is 170 m long',
    ])
      expect(readBall(text), text).toEqual({ m: 170, g: 100 });
    expect(readBall('3 1/2 oz / 180 yd').g).toBeCloseTo(99.223, 3);
    for (const text of ['100g/170g', '170m/180m', '170m', '100g 170m 3', '100 oz of nothing', 'm/g'])
      expect(() => readBall(text), text).toThrow(refused('not-a-ball'));
    expect(() => readBall('5m/1kg')).toThrow(refused('impossible-ball'));
  });
  it('hooks by millimetres or US letter', () => {
    expect(readHook('5mm')).toBe(5);
    expect(readHook('US 7')).toBe(4.5);
    expect(readHook('H-8')).toBe(5);
    expect(readHook('us k-10 1/2')).toBe(6.5);
    // matifs.com/crochet-hooks-size-chart and the other lists of src/standards/hooks.ts.
    for (const [text, mm] of [
      ['K', 6.5],
      ['H', 5],
      ['size h', 5],
      ['H8', 5],
      ['h/8', 5],
      ['K-10.5', 6.5],
      ['K 10½', 6.5],
      ['UK 6', 5],
      ['steel 7', 1.65],
      ['6 1/2 mm', 6.5],
      ['5.5', 5.5],
      ['5 mm hook', 5],
    ] as const)
      expect(readHook(text), text).toBe(mm);
    // “a size J or a size ten ... 6 millimeters” (homequestionsanswered.com); 5.75 as J is from memory alone, and is said.
    expect(readHook('J')).toBe(6);
    expect(describeOtherHooks('J')).toContain('5.75 mm');
    expect(readHook('N')).toBe(10);
    expect(describeOtherHooks('N')).toContain('M/N-13 is');
    expect(describeOtherHooks('H')).toBeUndefined();
    expect(describeOtherHooks('7')).toContain('US 7 is');
    expect(() => readHook('Z')).toThrow(refused('not-a-hook'));
    expect(() => readHook('80mm')).toThrow(refused('no-such-hook'));
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
    expect(() => readStitch('US dtr')).toThrow(refused('not-a-stitch'));
    expect(() => readStitch('US zz')).toThrow(refused('not-a-stitch'));
    expect(() => readStitch('moss')).toThrow(refused('not-a-stitch'));
    expect(readStitch('single')).toBe('sc');
    expect(readStitch('Half Double Crochets')).toBe('hdc');
    expect(readStitch('UK half treble crochet')).toBe('hdc');
    expect(readStitch('US treble crochet')).toBe('tr');
    expect(readStitch('UK treble crochet')).toBe('dc');
    // What a reader’s own terms are put before, and what she says of it herself.
    expect(readStitch('US UK dc')).toBe('sc');
    expect(() => readStitch('slip stitch')).toThrow(refused('not-a-stitch'));
  });
  it('stitches round by round, by number and in full', () => {
    expect(readStitches('1 sc, 1 hdc, 1 sc')).toEqual(['sc', 'hdc', 'sc']);
    expect(readStitches('two rounds of single crochet then half double crochet')).toEqual([
      'sc',
      'sc',
      'hdc',
    ]);
    expect(readStitches('UK 2 dc, tr')).toEqual(['sc', 'sc', 'dc']);
    expect(() => readStitches('3')).toThrow(refused('no-stitches'));
    expect(() => readStitches('999 sc')).toThrow(refused('too-many-stitches'));
    expect(() => readStitches('sc fog')).toThrow(refused('not-a-stitch'));
  });
  it('yarns by category, name or wraps', () => {
    expect(readYarn('4').category).toBe(4);
    expect(readYarn('worsted').category).toBe(4);
    expect(readYarn('11wpi')).toEqual({ wpi: 11 });
    expect(() => readYarn('baby')).toThrow(refused('unclear-yarn'));
    for (const text of ['double knitting', 'DK', 'dk weight', 'Double-Knit', 'light worsted', '8 ply'])
      expect(readYarn(text).category, text).toBe(3);
    for (const text of ['worsted weight', 'worsted-weight yarn', '#4', 'weight 4', 'aran', '10ply'])
      expect(readYarn(text).category, text).toBe(4);
    for (const text of ['4 ply', '4ply', '4-ply']) {
      expect(readYarn(text).category, text).toBe(1);
      expect(describeOtherYarns(text), text).toContain('worsted, category 4');
    }
    expect(describeOtherYarns('worsted weight')).toBeUndefined();
  });
  it('counts', () => {
    expect(readCounts('3 5, 7;8')).toEqual([3, 5, 7, 8]);
    expect(readCounts('3, 5 and 7 sts')).toEqual([3, 5, 7]);
    expect(readNumbers('3, 5 and 7 to 9')).toEqual([3, 5, 7, 8, 9]);
    expect(() => readCounts('3 -5')).toThrow(refused('not-a-count'));
    expect(() => readCounts('3 5.5')).toThrow(refused('not-a-count'));
    expect(() => readCounts(' ')).toThrow(refused('no-counts'));
  });
});

describe('days', () => {
  it.each(['2031-05-31', '2031/5/31', '31 May 2031', '31st of May 2031', 'May 31, 2031', '31 may 2031'])(
    '%s',
    (text) => {
      expect(readDay(text)).toBe('2031-05-31');
    },
  );
  it('that may be two are not guessed, and no calendar has 31 June', () => {
    expect(() => readDay('5/6/2031')).toThrow(refused('unclear-day'));
    expect(() => readDay('31 June 2031')).toThrow(refused('not-a-day'));
    expect(() => readDay('soon')).toThrow(refused('not-a-day'));
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
