/** What all chapters rest on: chance, names, lists, numbers in words, and how things are shown. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_SEED, nextSeed, seedChance, seedOf, shuffle } from '../../../src/core/base/chance.ts';
import { isStranger, strangerId } from '../../../src/core/base/history.ts';
import { readCounts, readDay, readNumbers } from '../../../src/core/base/lists.ts';
import {
  findBest,
  findMeant,
  findNamed,
  findNearest,
  firstOfEach,
  listNames,
  looksLike,
  sortByNearness,
  suggest,
} from '../../../src/core/base/nearest-name.ts';
import { clip, isBareNumber, readNumber, refuseUnclear } from '../../../src/core/base/number.ts';
import { isOffBy, percentOff } from '../../../src/core/base/percent-off.ts';
import {
  isBareGauge,
  partsOfBall,
  readBall,
  readGauge,
  readLength,
  readWeight,
} from '../../../src/core/base/quantity.ts';
import { cm, count, forReader, hours, inWords, m, num, size, when } from '../../../src/core/base/reader.ts';
import { evaluate } from '../../../src/core/base/working.ts';
import { refused } from '../../refused.ts';

describe('chance', () => {
  /** The generator once more, in whole numbers of any length. */
  function* mulberry(seed: number) {
    const u32 = (n: bigint) => BigInt.asUintN(32, n);
    let state = u32(BigInt(seed));
    for (;;) {
      state = u32(state + 0x6d2b79f5n);
      let mixed = u32((state ^ (state >> 15n)) * (state | 1n));
      mixed ^= u32(mixed + u32((mixed ^ (mixed >> 7n)) * (mixed | 61n)));
      yield Number(u32(mixed ^ (mixed >> 14n))) / 2 ** 32;
    }
  }

  it('is the same run of numbers for a seed on every machine, for good', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
        const [chance, again] = [seedChance(seed), mulberry(seed)];
        for (let n = 0; n < 20; n++) expect(chance()).toBe(again.next().value);
      }),
      { numRuns: 20 },
    );
  });

  it('is spread evenly', () => {
    const chance = seedChance(7);
    const tenths = Array.from({ length: 10 }, () => 0);
    for (let n = 0; n < 5000; n++) tenths[Math.floor(chance() * 10)]!++;
    // Four standard deviations about 500.
    for (const many of tenths) expect(Math.abs(many - 500)).toBeLessThan(4 * Math.sqrt(500 * 0.9));
  });

  it('shuffles into every order alike, nothing lost', () => {
    const chance = seedChance(3);
    const orders = new Map<string, number>();
    for (let n = 0; n < 3000; n++) {
      const order = shuffle(['a', 'b', 'c'], chance).join('');
      orders.set(order, (orders.get(order) ?? 0) + 1);
    }
    expect([...orders.keys()].sort()).toEqual(['abc', 'acb', 'bac', 'bca', 'cab', 'cba']);
    for (const many of orders.values())
      expect(Math.abs(many - 500)).toBeLessThan(4 * Math.sqrt(500 * (5 / 6)));
    const list = [1, 2, 3];
    shuffle(list, chance);
    expect(list).toEqual([1, 2, 3]);
    expect(shuffle([], chance)).toEqual([]);
  });

  it('has seeds from 1 to 9999, one from every name', () => {
    expect([nextSeed(1), nextSeed(9998), nextSeed(MOST_SEED)]).toEqual([2, 9999, 1]);
    fc.assert(
      fc.property(fc.string(), (name) => {
        // The letters as digits to the base 31 after a 7, what is beyond 32 bits cut off.
        const value = [...name.toLowerCase()].reduce(
          (all, one) => BigInt.asUintN(32, all * 31n + BigInt(one.codePointAt(0)!)),
          7n,
        );
        expect(seedOf(name)).toBe(Number(value % 9999n) + 1);
      }),
      { numRuns: 40 },
    );
    expect(seedOf('Garden')).toBe(seedOf('garden'));
  });
});

describe('names', () => {
  const things = ['moss square', 'Moss', 'sand square', 'sandal', 'b'].map((name) => ({ name }));
  it('are found whole, or by a beginning that only one has', () => {
    const meant = (typed?: string) => findMeant(things, typed)?.name;
    expect(['MOSS', ' moss ', 'moss s', 'sand s', 'B'].map(meant)).toEqual([
      'Moss',
      'Moss',
      'moss square',
      'sand square',
      'b',
    ]);
    expect(['sand', 'm', 'clay', '', undefined].map(meant)).toEqual(
      Array.from({ length: 5 }, () => undefined),
    );
    expect(findMeant([{ name: 'moss' }], 'mo')?.name).toBe('moss');
    expect(findMeant([{ name: 'moss' }], 'm')).toBeUndefined();
    expect(findNamed(things, 'moss')?.name).toBe('Moss');
    expect(findNamed(things, undefined)).toBeUndefined();
    expect(firstOfEach(['Moss', 'sand', 'moss', 'SAND', 'clay'])).toEqual(['Moss', 'sand', 'clay']);
  });

  it('look alike whatever their letters, capitals, blanks and marks that nobody sees', () => {
    const alike = [
      ['Bean row', 'Bеan-row'],
      ['MOSS', 'ΜΟSS'],
      ['moss', 'mo\u200bss'],
      ['moss row', ' Moss__Row '],
      ['moss row', 'moss - row'],
      ['moss', 'ｍｏｓｓ'],
      ['pay', 'рау'],
    ];
    for (const [one, other] of alike) expect(looksLike(one!, other!), other).toBe(true);
    for (const other of ['mass', 'mos', 'mossrow', 'мох', '']) expect(looksLike('moss', other)).toBe(false);
    expect(looksLike('mossrow', 'moss row')).toBe(false);
  });

  it('are suggested where a third of their letters, or two, are wrong at most', () => {
    expect(findNearest('mos', ['sand', 'moss'])).toBe('moss');
    expect(findNearest('mxxs', ['moss'])).toBe('moss');
    expect(findNearest('xxxs', ['moss'])).toBeUndefined();
    // Nine letters, three of them wrong; of two as near the first.
    expect(findNearest('xxxtherly', ['heatherly', 'weatherly'])).toBe('heatherly');
    expect(findNearest('xxxxherly', ['heatherly'])).toBeUndefined();
    expect(findNearest('moss', ['mass', 'moss'])).toBe('moss');
    expect(findNearest('MOSS', ['moss'])).toBe('moss');
    expect(findNearest('x'.repeat(500), ['moss'])).toBeUndefined();
    // Of what is typed no more than its beginning is compared.
    const long = 'm'.repeat(60);
    expect(findNearest(`${long}${'x'.repeat(200)}`, [long])).toBe(long);
    expect(sortByNearness('sant', ['moss', 'sand', 'sandal'])).toEqual(['sand', 'sandal', 'moss']);
    const names = (all: readonly string[]) => `There are ${all.join(', ')}.`;
    expect(suggest('sant', ['moss', 'sand'], names)).toBe('Did you mean sand?');
    // A word of one name alone; of two it might be either.
    expect(suggest('throw', ['garden throw', 'cot'], names)).toBe('Did you mean garden throw?');
    expect(suggest('throw', ['garden throw', 'club throw'], names)).toMatch(/^There are /);
    expect(suggest('heather', ['moss', 'sand'], names)).toMatch(/^There are (moss, sand|sand, moss)\.$/);
  });

  it('are listed as many as can be read', () => {
    const names = Array.from({ length: 10 }, (_, index) => `n${index}`);
    expect(listNames(names.slice(0, 8))).toBe('n0, n1, n2, n3, n4, n5, n6, n7');
    expect(listNames(names)).toBe('n0, n1, n2, n3, n4, n5, n6, n7 and 2 more');
    expect(listNames(names, 2)).toBe('n0, n1 and 8 more');
    expect(findBest(['moss', 'sand', 'moor'], (name) => name.length)).toEqual(['moss', 'sand', 'moor']);
    expect(findBest(['moss', 'sandal'], (name) => name.length)).toEqual(['sandal']);
    expect(findBest(['moss', 'sand'], () => 0)).toEqual([]);
    expect(findBest(['moss', 'sand'], () => -1)).toEqual([]);
  });
});

describe('lists', () => {
  it('of counts are whole, at most 400 of six figures', () => {
    expect(readCounts(' 3, 5; 7 & 8 and 9 / 11 sts')).toEqual([3, 5, 7, 8, 9, 11]);
    expect(readCounts('0 123456 stitches')).toEqual([0, 123456]);
    expect(readCounts(Array.from({ length: 400 }, () => '3').join(' '))).toHaveLength(400);
    expect(() => readCounts(Array.from({ length: 401 }, () => '3').join(' '))).toThrow(
      refused('too-many-counts', { facts: { most: 400, given: 401 } }),
    );
    expect(() => readCounts('sts')).toThrow(refused('no-counts'));
    expect(readCounts('3 st, 5 sts')).toEqual([3, 5]);
    for (const none of ['xsts', 'stsx', '1234567', '3x', 'x3', '-3', '3.5', 'three'])
      expect(() => readCounts(none)).toThrow(refused('not-a-count'));
  });

  it('of numbers are each told once and in order, at most a thousand', () => {
    expect(readNumbers('9, #3 and 5-7, 6')).toEqual([3, 5, 6, 7, 9]);
    expect(readNumbers('5 – 7')).toEqual([5, 6, 7]);
    for (const typed of ['5 to #7', '5- 7', '5 -7']) expect(readNumbers(typed)).toEqual([5, 6, 7]);
    expect(readNumbers('4-4')).toEqual([4]);
    expect(readNumbers('1-1000')).toHaveLength(1000);
    const tooMany = refused('too-many-numbers', { facts: { most: 1000 } });
    for (const many of ['1-1001', '1-1000 2000', '1 2-1001'])
      expect(() => readNumbers(many)).toThrow(tooMany);
    for (const none of ['7-5', '3x', 'x', '123456', '3-', '##3'])
      expect(() => readNumbers(none)).toThrow(refused('not-a-number'));
    expect(() => readNumbers(' , ')).toThrow(refused('no-numbers'));
  });

  it('of months are known by their beginnings, in every order that is clear', () => {
    const months = 'January Feb. mar April May jun July Aug Sept. October nov December'.split(' ');
    months.forEach((month, index) => {
      const day = `2031-${String(index + 1).padStart(2, '0')}-09`;
      expect(readDay(`9 ${month} 2031`)).toBe(day);
      expect(readDay(`${month} 9th, 2031`)).toBe(day);
    });
    const typed = ['1st of Jan 2031', '2nd jan 2031', '3rd Jan, 2031', 'Jan 4th 2031', ' 2031.1.5 '];
    expect(typed.map((text) => readDay(text))).toEqual(
      ['01', '02', '03', '04', '05'].map((day) => `2031-01-${day}`),
    );
    expect(readDay('29 Feb 2028')).toBe('2028-02-29');
    const none = [
      ...['29 Feb 2031', '0 May 2031', '31 Apr 2031', '2031-13-01', '2031-00-10', '5 Foo 2031', '31 May'],
      ...['x2031-05-31', 'x13/5/2031', '13/5/20312', 'x5/6/2031', '5/6/20312', '0031-05-31', '31 May 0031'],
      ...['x 31 May 2031', '31 May 20312', '2031-05-31x', 'May 2031', '13/13/2031', '31/4/2031', '0/13/2031'],
    ];
    for (const text of none) expect(() => readDay(text)).toThrow(refused('not-a-day'));
  });

  it('of numbers alone are a day where only one of them can be the month', () => {
    const typed = [
      '15.11.2031',
      '11/15/2031',
      '31-5-2031',
      '5/31/2031',
      '13/1/2031',
      '12/12/2031',
      '12/13/2031',
      '05.5.2031',
    ];
    expect(typed.map((text) => readDay(text))).toEqual([
      '2031-11-15',
      '2031-11-15',
      '2031-05-31',
      '2031-05-31',
      '2031-01-13',
      '2031-12-12',
      '2031-12-13',
      '2031-05-05',
    ]);
    for (const text of ['5/6/2031', '12/1/2031', '1.12.2031'])
      expect(() => readDay(text)).toThrow(refused('unclear-day'));
    expect(() => readDay('5/6/2031')).toThrow(
      refused('unclear-day', {
        hint: 'Write 2031-06-05 or 2031-05-06, year-month-day, or the month in words.',
      }),
    );
  });
});

describe('numbers as they are typed', () => {
  it.each([
    ['¼', 1 / 4],
    ['¾', 3 / 4],
    ['⅓', 1 / 3],
    ['1⅔', 5 / 3],
    ['⅛', 1 / 8],
    ['⅝', 5 / 8],
    ['2 ⅞', 23 / 8],
    ['1/2', 1 / 2],
    ['3 ⁄ 4', 3 / 4],
    ['10 1/16', 10 + 1 / 16],
    ['2,5½', 3],
    ['1234567', 1_234_567],
    ['0.123456', 0.123456],
    ['1,36', 1.36],
    ['1234,567', 1234.567],
    ['zero', 0],
    ['nineteen', 19],
    ['ninety', 90],
    ['ninety-nine', 99],
    ['a dozen', 12],
    ['dozen', 12],
    ['three dozen', 36],
    ['half a dozen', 6],
    ['half an dozen', 6],
    ['hundred', 100],
    ['two hundred', 200],
    ['two hundred and five', 205],
    ['two hundred five', 205],
    ['a thousand', 1000],
    ['three thousand two hundred and twelve', 3212],
    ['half', 1 / 2],
    ['a half', 1 / 2],
    ['a third', 1 / 3],
    ['two thirds', 2 / 3],
    ['a quarter', 1 / 4],
    ['three eighths', 3 / 8],
    ['one and a half', 1.5],
    ['twelve and three quarters', 12.75],
    ['a hundred and a half', 100.5],
    ['6 and 1/2', 6.5],
    ['6 and ½', 6.5],
    [' 7 ', 7],
    ['7  1/2', 7.5],
    ['1 12/16', 1.75],
    ['1,3605', 1.3605],
    // Sixty characters are the longest in words.
    [`twenty${' '.repeat(50)}four`, 24],
  ])('%s', (text, value) => {
    expect(readNumber(text)).toBeCloseTo(value, 12);
  });
  it.each([
    '12345678',
    '0.1234567',
    '1,360',
    '6 and 2',
    '6 and 1.5',
    'and a half',
    'a six',
    'six and',
    'hundred hundred',
    'two hundred and three hundred',
    'twenty zero',
    'twenty ten',
    'halves halves',
    '1/0',
    '½½',
    'one '.repeat(20),
    `twenty${' '.repeat(51)}four`,
    '12,345',
    '6 and 1',
    'six or half',
    'two half a dozen',
    'half a dozenth',
    'two dozen and five',
    'ban hundred',
    'ant hundred',
    'ban half',
    'ant half',
  ])('not %s', (text) => {
    expect(readNumber(text)).toBeUndefined();
    expect(isBareNumber(text)).toBe(false);
  });
  it('with a comma that may part thousands are refused', () => {
    for (const text of ['1,360', ' -12,500 m', '+1,000'])
      expect(() => refuseUnclear(text)).toThrow(refused('unclear-number'));
    expect(() => refuseUnclear('1,360 m')).toThrow(
      refused('unclear-number', { hint: 'Write 1360 or 1.360.' }),
    );
    for (const text of ['1,36', '1,3600', '1360', '1234,567', 'x 1,360'])
      expect(() => refuseUnclear(text)).not.toThrow();
  });
  it('are said back short', () => {
    expect(clip('m'.repeat(40))).toBe('m'.repeat(40));
    expect(clip('m'.repeat(41))).toBe(`${'m'.repeat(39)}…`);
    expect(clip('moss', 3)).toBe('mo…');
  });
});

describe('quantities', () => {
  const inch = 2.54;
  it.each([
    ['1 mm', 0.1],
    ['2 cms', 2],
    ['1 metre', 100],
    ['2 met', undefined],
    ['3 ins', 3 * inch],
    ["4''", 4 * inch],
    ["4'", 48 * inch],
    ['1 foot', 12 * inch],
    ['2 yds', 72 * inch],
    ['1 yard', 36 * inch],
    ["5'6", 66 * inch],
    ['1 m 99', 199],
    ['1 m 100', undefined],
    ['5\'11 1/2"', 71.5 * inch],
    ['5 ft, 6 in', 66 * inch],
    ['1.5 m 20', undefined],
    ['5 ft 12', undefined],
    ['3 in 2', undefined],
    ['1 yd 2 ft', 60 * inch],
    ['2 yards', 72 * inch],
    ['1 yds', 36 * inch],
    [' 5 cm ', 5],
    [' 5 ft 2 in ', 62 * inch],
    ['half of an inch', inch / 2],
    ['half of  an inch', inch / 2],
    ['3 and a half inches', 3.5 * inch],
    ['a lot of inches', undefined],
    ['ant inches', undefined],
    ['100 m', 10_000],
  ])('length %s', (text, length) => {
    if (length === undefined) expect(() => readLength(text)).toThrow(refused('not-a-length'));
    else expect(readLength(text)).toBeCloseTo(length, 9);
  });
  it.each([
    ['1 gr', 1],
    ['2 gms', 2],
    ['3 grammes', 3],
    ['1 kilo', 1000],
    ['1 ounce', 28.349523125],
    ['2 lbs', 907.18474],
    ['1 lb 8', 680.388555],
    ['1 lb 16 oz', undefined],
    ['100 kg', 100_000],
  ])('weight %s', (text, weight) => {
    if (weight === undefined) expect(() => readWeight(text)).toThrow(refused('not-a-weight'));
    else expect(readWeight(text)).toBeCloseTo(weight, 6);
  });
  it('are refused beyond this craft, and at nothing', () => {
    expect(() => readLength('100.1m')).toThrow(
      refused('too-large', { facts: { most: 10_000, given: 10_010 } }),
    );
    expect(() => readWeight('100.1kg')).toThrow(
      refused('too-large', { facts: { most: 100_000, given: 100_100 } }),
    );
    expect(() => readLength('0cm')).toThrow(
      refused('not-above-zero', { message: 'A length must be more than nothing.' }),
    );
    expect(() => readWeight('0g')).toThrow(refused('not-above-zero'));
    expect(readLength('0cm', { allowZero: true })).toBe(0);
    expect(() => readLength('1,200cm')).toThrow(refused('unclear-number'));
  });
  it('of a gauge lie between a stitch in 20 cm and 20 in one', () => {
    expect(readGauge('0.5')).toEqual({ stitches: 0.5, over: 10 });
    expect(readGauge('200x200')).toEqual({ stitches: 200, rows: 200, over: 10 });
    for (const none of ['0.4', '201', '13x0.4', '13x201', '1 over 21cm'])
      expect(() => readGauge(none)).toThrow(refused('impossible-gauge'));
    expect(() => readGauge('0.4')).toThrow(refused('impossible-gauge', { facts: { given: 0.4, over: 10 } }));
    expect(() => readGauge('13x1 over 80 in')).toThrow(
      refused('impossible-gauge', { message: '1 over 203.2 cm is no gauge that can be crocheted.' }),
    );
    expect(() => readGauge('13,10')).toThrow(
      refused('unclear-number', {
        hint: 'Write 13x10 for 13 stitches and 10 rows, or 13.10 for stitches alone.',
      }),
    );
    expect(readGauge('4 st per inch')).toEqual({ stitches: 4, over: 2.54 });
    expect(readGauge('14 sts & 10 rnds @ 4 in')).toEqual({ stitches: 14, rows: 10, over: 10.16 });
    expect(readGauge('14 s, 10 r / 10cm')).toEqual({ stitches: 14, rows: 10, over: 10 });
    // An inch, or half of one; as long as a line may be, blanks and all.
    expect(readGauge('4 sts in half an inch')).toEqual({ stitches: 4, over: 1.27 });
    expect(readGauge('4 sts every inch')).toEqual({ stitches: 4, over: 2.54 });
    expect(readGauge(`13x10${' '.repeat(75)}`)).toEqual({ stitches: 13, rows: 10, over: 10 });
    expect([' 13x10 over 4in ', ' 13x10 '].map(isBareGauge)).toEqual([false, true]);
    for (const none of [
      'soft 13,10',
      '14 rows',
      '14 rows 10 rows',
      '14 sts 10 sts',
      '14 sts x soft',
      `13x10${' '.repeat(80)}`,
    ])
      expect(() => readGauge(none)).toThrow(refused('not-a-gauge'));
  });
  it('of a ball lie between rope and cobweb', () => {
    expect(readBall('2m/100g')).toEqual({ m: 2, g: 100 });
    expect(readBall('20000m/100g')).toEqual({ m: 20_000, g: 100 });
    expect(readBall('100000m/20kg')).toEqual({ m: 100_000, g: 20_000 });
    for (const [none, facts] of [
      ['1.9m/100g', { m: 1.9, g: 100 }],
      ['20001m/100g', { m: 20_001, g: 100 }],
      ['100001m/1kg', { m: 100_001, g: 1000 }],
    ] as const)
      expect(() => readBall(none)).toThrow(refused('impossible-ball', { facts }));
  });
});

describe('a ball', () => {
  it('may be told in words, and in none that say something else', () => {
    const parts = { length: '170m', weight: '100g' };
    for (const word of [
      'per',
      'in',
      'for',
      'at',
      'weigh',
      'weighs',
      'ball',
      'balls',
      'skein',
      'skeins',
      'hank',
      'each',
    ])
      expect(partsOfBall(`170m ${word} 100g`), word).toEqual(parts);
    for (const word of ['x', 'wool', 'or', 'balled'])
      expect(partsOfBall(`170m ${word} 100g`), word).toBeUndefined();
    expect(partsOfBall('170to 100g')).toEqual({ length: '170', weight: '100g' });
    expect(partsOfBall('170x/100g')).toBeUndefined();
    // Eighty characters are the longest that is read.
    expect(partsOfBall(`170m${' '.repeat(72)}100g`)).toEqual(parts);
    expect(partsOfBall(`170m${' '.repeat(73)}100g`)).toBeUndefined();
    expect(partsOfBall(`  170m${' '.repeat(72)}100g  `)).toEqual(parts);
  });
});

describe('whoever erased herself', () => {
  it('is known by an id that no room makes', () => {
    expect([strangerId(1), strangerId(12)].map(isStranger)).toEqual([true, true]);
    for (const id of ['somebody.', 'somebody.x', 'somebodyx1', 'xsomebody.1', 'somebody.1x', 'm1', ''])
      expect(isStranger(id), id).toBe(false);
  });
});

describe('what is shown', () => {
  const metric = { units: 'metric', terms: 'US' } as const;
  const imperial = { units: 'imperial', terms: 'US' } as const;
  it.each([
    [9.994, '9.99'],
    [9.995, '10'],
    [10.04, '10'],
    [10.06, '10.1'],
    [99.94, '99.9'],
    [100.4, '100'],
    [-15.377, '-15.4'],
    [9999, '9999'],
    [9999.6, '10000'],
    [10_000, '10,000'],
    [-12_345, '-12,345'],
  ])('%d as %s', (value, text) => {
    expect(num(value)).toBe(text);
  });
  it('takes the decimals that are asked for', () => {
    expect([num(1.23456, 4), num(1.5, 0), num(152.44, 1), num(12_345.678, 2)]).toEqual([
      '1.2346',
      '2',
      '152.4',
      '12,345.68',
    ]);
    expect([count(1.5, 'row'), count(1, 'row'), count(0, 'row'), hours(1.04), hours(12.47)]).toEqual([
      '1.5 rows',
      '1 row',
      '0 rows',
      '1 hour',
      '12.5 hours',
    ]);
  });
  it('rounds both sides of a size alike, by the larger', () => {
    expect(forReader(size(91.2, 121.9), metric)).toBe('91 × 122 cm');
    expect(forReader(size(9.25, 12.34), metric)).toBe('9.3 × 12.3 cm');
    expect(forReader(size(91.26, 121.92, 1), metric)).toBe('91.3 × 121.9 cm');
    expect(forReader(`${m(1.234, 1)} ${cm(2.54)}`, imperial)).toBe('1.3 yd 1 in');
  });
  it('tells a day or a moment in words, or by the reader’s clock', () => {
    expect(inWords('2026-05-31')).toBe('31 May 2026');
    expect(inWords('2026-01-02T18:05:33.000Z')).toBe('2 January 2026, 18:05 UTC');
    expect(inWords('2026-12-09')).toBe('9 December 2026');
    expect(forReader(when('2026-05-31'), metric)).toBe('31 May 2026');
    expect(forReader(when('2026-05-31'), { ...metric, clock: (iso) => `<${iso}>` })).toBe('<2026-05-31>');
    expect(forReader('⟦nothing⟧ ⟦⟧', metric)).toBe('⟦nothing⟧ ⟦⟧');
  });
});

describe('per cent off', () => {
  it('is none where two are equal, more where the first is larger, and a hair is nothing', () => {
    const { formula, given, unit } = percentOff('is', 'should', { label: 'Off', unit: 'cm' });
    expect(
      [evaluate(formula, { is: 12, should: 10 }), evaluate(formula, { is: 9, should: 10 })].map(Math.round),
    ).toEqual([20, -10]);
    expect([given, unit]).toEqual([{ is: 'cm', should: 'cm' }, '']);
    expect([isOffBy(10.3, 10, 3), isOffBy(9.7, 10, 3), isOffBy(10, 10, 0)]).toEqual([false, false, false]);
    expect([isOffBy(10.31, 10, 3), isOffBy(9.69, 10, 3)]).toEqual([true, true]);
  });
});
