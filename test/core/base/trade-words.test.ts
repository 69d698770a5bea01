/** What the trade calls its hooks, stitches and yarns, and the units things were typed in: where the lines are. */
import { describe, expect, it } from 'vitest';
import { measuresIn, unitsTyped } from '../../../src/core/base/as-typed.ts';
import { MOST_ROUNDS, MOST_ROWS, MOST_ROWS_WORKED } from '../../../src/core/base/limits.ts';
import { Problem } from '../../../src/core/base/problem.ts';
import { isBareGauge, partsOfBall, readBall } from '../../../src/core/base/quantity.ts';
import { forReader, ownUnit, plain, size, toOwn } from '../../../src/core/base/reader.ts';
import {
  describeOtherHooks,
  describeOtherYarns,
  readHook,
  readStitch,
  readStitches,
  readYarn,
} from '../../../src/core/base/trade-words.ts';
import { YARN_WEIGHTS } from '../../../src/standards/yarn-weights.ts';
import { refused } from '../../refused.ts';

describe('hooks', () => {
  it('run from 0.35 to 30 mm', () => {
    expect(['0.35mm', '30 mm', '5 millimetre', '5 millimeters', ' 5 mm  hook ', '5'].map(readHook)).toEqual([
      0.35, 30, 5, 5, 5, 5,
    ]);
    for (const [typed, given] of [
      ['0.34mm', 0.34],
      ['30.1mm', 30.1],
    ] as const)
      expect(() => readHook(typed)).toThrow(
        refused('no-such-hook', { facts: { given, least: 0.35, most: 30 } }),
      );
    // As long as the longest name, blanks and all, and no longer.
    expect(readHook(`size${' '.repeat(25)}h`)).toBe(5);
    for (const none of ['soft', 'mm', '5 mmm', '1mm/2', 'H'.repeat(31), `size${' '.repeat(26)}h`])
      expect(() => readHook(none)).toThrow(refused('not-a-hook'));
  });
  it('that share a name are told', () => {
    expect(describeOtherHooks('7')).toBe('7 is read as ⟦7 mm⟧; US 7 is ⟦4.5 mm⟧, US steel 7 is ⟦1.65 mm⟧.');
    expect(describeOtherHooks(' 7 ')).toBe(describeOtherHooks('7'));
    expect(describeOtherHooks(' J ')).toBe('J is read as ⟦6 mm⟧; US J is ⟦5.75 mm⟧.');
    expect(describeOtherHooks('N')).toBe('N is read as ⟦10 mm⟧; US M/N-13 is ⟦9 mm⟧.');
    for (const clear of ['7mm', '5.5', 'H', 'US 7', 'UK 6', 'steel 7', '6.5'])
      expect(describeOtherHooks(clear)).toBeUndefined();
  });
});

describe('stitches', () => {
  it('are read in one or many, with or without a stop or a dash', () => {
    expect(['dc', 'dcs', 'DC.', 'double-crochet', 'Double  Crochets', ' dc '].map(readStitch)).toEqual(
      Array.from({ length: 6 }, () => 'dc'),
    );
    expect(['american dc', 'British dc', 'british  UK dc'].map(readStitch)).toEqual(['dc', 'sc', 'sc']);
    expect(['  UK dc ', ' dc'].map(readStitch)).toEqual(['sc', 'dc']);
    // What is said back is the name without its terms, or the terms where there is nothing else.
    for (const [typed, name] of [
      ['UK', 'UK'],
      ['UK zz', 'zz'],
      ['d.c', 'd.c'],
      ['', ''],
    ] as const)
      expect(() => readStitch(typed)).toThrow(
        refused('not-a-stitch', { message: `“${name}” is not a stitch that is counted here.` }),
      );
  });
  it('round by round are sixty at most', () => {
    expect(readStitches(`${MOST_ROUNDS} sc`)).toHaveLength(60);
    expect(() => readStitches(`${MOST_ROUNDS + 1} sc`)).toThrow(
      refused('too-many-stitches', { facts: { most: 60 } }),
    );
    expect(readStitches('2x sc, dc + hdc / tr; sc')).toEqual(['sc', 'sc', 'dc', 'hdc', 'tr', 'sc']);
    expect(readStitches('two rounds of half double crochet, then a single crochet')).toEqual([
      'hdc',
      'hdc',
      'sc',
    ]);
    expect(readStitches('1 row of sc, 1 rnd of dc, 1 round of tr, each rnds rows rounds hdc')).toEqual([
      'sc',
      'dc',
      'tr',
      'hdc',
    ]);
    expect(readStitches('12x  sc')).toHaveLength(12);
    for (const none of ['around sc', 'roundly sc', '0 sc', '1.5 sc', '-2 sc', 'sc fog', '2 2 sc'])
      expect(() => readStitches(none)).toThrow(refused('not-a-stitch'));
    for (const none of ['', 'then', 'rounds of', '3', 'sc 2'])
      expect(() => readStitches(none)).toThrow(refused('no-stitches'));
  });
});

describe('yarns', () => {
  it('are read from one wrap to eighty', () => {
    expect(['1wpi', '80 wpi', '11 wraps', '11 wraps per inch', '11 wraps an inch'].map(readYarn)).toEqual(
      [1, 80, 11, 11, 11].map((wpi) => ({ wpi })),
    );
    for (const none of ['0.9wpi', '81wpi', 'many wpi'])
      expect(() => readYarn(none)).toThrow(
        refused('not-a-yarn', { message: `“${none}” is no count of wraps per inch.` }),
      );
  });
  it('of a category have the middle of its wraps', () => {
    for (const { category, wpi } of YARN_WEIGHTS)
      expect(readYarn(String(category))).toEqual({ wpi: (wpi[0] + wpi[1]) / 2, category });
  });
  it('are not guessed', () => {
    expect(readYarn(`worsted${' '.repeat(49)}yarn`).category).toBe(4);
    for (const none of [
      `worsted${' '.repeat(50)}yarn`,
      '11wpix',
      '',
      'soft',
      '170m/100g',
      '100 g 170 m',
      'a/b',
      'm'.repeat(61),
      '8',
    ])
      expect(() => readYarn(none)).toThrow(
        refused('not-a-yarn', { message: expect.stringContaining('how thick') }),
      );
    expect(() => readYarn('baby')).toThrow(
      refused('unclear-yarn', { hint: expect.stringMatching(/^Say which: \d \(\w[^)]*\), \d \(/) }),
    );
    expect(describeOtherYarns(' 4 ply ')).toMatch(/^“4 ply” is read as .*, category 1 \(.*\); .*\.$/);
    for (const clear of ['dk', 'nothing', '170m/100g', 'double knitting'])
      expect(describeOtherYarns(clear)).toBeUndefined();
  });
});

describe('balls', () => {
  it('may be measured in feet and yards, and lack one unit', () => {
    expect(readBall('600 ft / 100 g').m).toBeCloseTo(182.88, 9);
    expect(readBall('600 feet 100 g').m).toBeCloseTo(182.88, 9);
    expect(readBall('200 yds/100g').m).toBeCloseTo(182.88, 9);
    expect(partsOfBall('170/100')).toEqual({ length: '170', weight: '100' });
    expect(partsOfBall('100g / 170')).toEqual({ length: '170', weight: '100g' });
    expect(partsOfBall('100/170m')).toEqual({ length: '170m', weight: '100' });
    expect(partsOfBall(' one ball of 100 g weighs as much as 170 m')).toBeUndefined();
    for (const none of [
      '100g/100g',
      '170m/170m',
      '170m',
      '1 2 3',
      'x170m/100gx',
      `170m/100g${' '.repeat(3)}${'-'.repeat(80)}`,
    ])
      expect(partsOfBall(none)).toBeUndefined();
  });
});

describe('what was typed', () => {
  it('is in inches, yards and ounces, or it is metric; a bare number is neither', () => {
    const imperial = [
      '48in',
      '48 in.',
      'in',
      '1 ins',
      '1 inch',
      '2 inches',
      '4ft',
      '1 foot',
      '4 feet',
      '2yd',
      '2 yds',
      '1 yard',
      '2 yards',
      '3oz',
      '3 ozs',
      '1 ounce',
      '2 ounces',
      '1 lb',
      '2 lbs',
      '1 pound',
      '2 pounds',
      '48"',
      "4'",
    ];
    for (const typed of imperial) expect(unitsTyped(typed), typed).toBe('imperial');
    for (const typed of ['120cm', '85 g', '5 chin', 'in g', '48in x'])
      expect(unitsTyped(typed), typed).toBe('metric');
    for (const typed of ['48', '7 1/2', 'twelve']) expect(unitsTyped(typed), typed).toBeUndefined();
  });
  it('is noted measure by measure', () => {
    expect(measuresIn('weight', '100 g')).toEqual([['100 g', 'metric']]);
    expect(measuresIn('weight', '1 lb')).toEqual([['453.59237 g', 'imperial']]);
    expect(measuresIn('ball', '100g/170m')).toEqual([
      ['170 m', 'metric'],
      ['100 g', 'metric'],
    ]);
    expect(measuresIn('ball', '100 yd/50g')).toEqual([
      ['91.44 m', 'imperial'],
      ['50 g', 'metric'],
    ]);
    expect(measuresIn('gauge', '13x10')).toEqual([['10 cm', 'metric']]);
    expect(measuresIn('gauge', '13x10 over 4in')).toEqual([['10.16 cm', 'imperial']]);
    expect([isBareGauge(' 13x10 '), isBareGauge('13x10 over 4in'), isBareGauge('soft')]).toEqual([
      true,
      false,
      true,
    ]);
    for (const [kind, text] of [
      ['weight', 'heavy'],
      ['ball', '170m'],
      ['ball', '1m/100g'],
      ['gauge', 'soft'],
      ['length', '48in'],
    ] as const)
      expect(measuresIn(kind, text)).toEqual([]);
  });
});

describe('a problem', () => {
  it('is said of an option where it names none, and keeps its own', () => {
    const bare = new Problem('too-few', 'Too few.', { hint: 'Give more.', facts: { needed: 3 } });
    expect(bare.about('to')).toMatchObject({
      code: 'too-few',
      message: 'Too few.',
      option: 'to',
      hint: 'Give more.',
      facts: { needed: 3 },
    });
    const own = new Problem('too-few', 'Too few.', { option: 'from', hint: 'Give more.' });
    expect(own.about('to')).toBe(own);
    expect(own.said('None.', 'Give one.')).toMatchObject({
      code: 'too-few',
      message: 'None.',
      option: 'from',
      hint: 'Give one.',
    });
    expect(own.facts).toEqual({});
  });
});

it('a diagonal square falls as long as it rises', () => {
  expect(MOST_ROWS_WORKED).toBe(MOST_ROWS + MOST_ROWS);
});

describe('what is shown', () => {
  const metric = { units: 'metric', terms: 'US' } as const;
  const imperial = { units: 'imperial', terms: 'US' } as const;
  it('is rounded by the larger side, at ten and at a hundred too', () => {
    expect(forReader(size(10, 9.96), metric)).toBe('10 × 10 cm');
    expect(forReader(size(100, 99.6), metric)).toBe('100 × 100 cm');
    expect(forReader(size(99.96, 9.96), metric)).toBe('100 × 10 cm');
    expect(forReader(`⟦12.3456~10 cm⟧`, metric)).toBe('12.3456 cm');
    expect(plain('moss⟧ ⟦sand')).toBe('moss sand');
  });
  it('is as it was typed where that was in other units', () => {
    const typed = {
      ...imperial,
      typed: new Map([
        ['100 g', 'metric'],
        ['85 g', 'imperial'],
      ] as const),
    };
    expect(forReader('⟦100 g⟧ ⟦85 g⟧ ⟦170 m⟧', typed)).toBe('100 g 3 oz 186 yd');
  });
  it('has its own units above and below', () => {
    expect(['', 'cm', '/m', 'g/m', 'mm'].map((unit) => ownUnit(unit as never, imperial))).toEqual([
      '',
      'in',
      '/yd',
      'oz/yd',
      'mm',
    ]);
    expect(ownUnit('g/m', metric)).toBe('g/m');
    expect(toOwn('/m', imperial)).toBeCloseTo(0.9144, 12);
    expect(toOwn('g/m', imperial)).toBeCloseTo(0.9144 / 28.349523125, 12);
  });
});
