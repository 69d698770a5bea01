/** A motif and its yarn, counted row by row and weighed gram by gram on paper. */
import { describe, expect, it } from 'vitest';
import { forReader } from '../../../src/core/base/reader.ts';
import { Working } from '../../../src/core/base/working.ts';
import { planRows } from '../../../src/core/rows/index.ts';
import { readMeasured } from '../../../src/core/yarn/measured-motif.ts';
import { trueSizeOf } from '../../../src/core/yarn/true-size.ts';
import { reckonSide, sayNotSquare } from '../../../src/core/yarn/motif-size.ts';
import {
  findBall,
  findTwin,
  readWeighedStitches,
  reckonMotifYarn,
} from '../../../src/core/yarn/motif-yarn.ts';
import {
  countBesideByColour,
  countByColour,
  countStitchesByColour,
  planOf,
  runsOf,
  yarnOf,
  type MotifSpec,
} from '../../../src/core/yarn/motif.ts';
import { refused } from '../../refused.ts';

const GAUGE = { stitches: 13, rows: 10, over: 10 };
const BALL = { m: 170, g: 100 };
const square: MotifSpec = { name: 'moss square', shape: 'diagonal', size: 12, stitch: 'hdc', runs: [] };
const run = (rows: number, colour: string) => ({ colour, rows });
const halves: MotifSpec = { ...square, runs: [run(12, 'moss'), run(12, 'sand')] };
const yarn = (motif: MotifSpec, yarns: Parameters<typeof reckonMotifYarn>[1] = [], ...more: MotifSpec[]) => {
  const working = new Working();
  return reckonMotifYarn(motif, yarns, working, readWeighedStitches(more, yarns, working));
};

describe('a motif', () => {
  it('of no colours is of its own name', () => {
    expect(runsOf(square)).toEqual([run(24, 'moss square')]);
    expect(runsOf(halves)).toBe(halves.runs);
    expect(planOf({ ...square, shape: 'flat', size: 9, otherSize: 4 }).rows).toHaveLength(4);
    expect(yarnOf([{ colour: 'Moss', balls: 3 }], 'moss')).toMatchObject({ balls: 3 });
    expect(yarnOf([{ colour: 'Moss' }], 'mos')).toBeUndefined();
  });

  it('is counted colour by colour, from where the work stands', () => {
    // Rows of 3, 5, 7, 5, 3, 1.
    const plan = planRows('diagonal', { size: 3, stitch: 'dc' });
    const runs = [run(2, 'moss'), run(2, 'sand'), run(2, 'moss')];
    expect([...countByColour(plan, runs)]).toEqual([
      ['moss', 3 + 5 + 3 + 1],
      ['sand', 7 + 5],
    ]);
    expect([...countByColour(plan, runs, 3)]).toEqual([
      ['moss', 3 + 1],
      ['sand', 5],
    ]);
    expect([...countByColour(plan, runs, 6)]).toEqual([
      ['moss', 0],
      ['sand', 0],
    ]);
    // The first chain beyond the stitch; each row that loses begins with two, and works two together at either end.
    expect([...countBesideByColour(plan, runs)]).toEqual([
      ['moss', { chains: 1 + 0 + 2 + 2, together: 4 }],
      ['sand', { chains: 0 + 2, together: 2 }],
    ]);
    const blocks = planRows('blocks', { size: 2 });
    expect([...countStitchesByColour(blocks, [run(1, 'moss'), run(2, 'sand')])]).toEqual([
      ['moss', 4],
      ['sand', 12],
    ]);
    expect([...countStitchesByColour(plan, runs)]).toEqual([...countByColour(plan, runs)]);
  });
});

describe('how large it is', () => {
  const side = (changed: Partial<MotifSpec>) =>
    reckonSide({ ...square, gauge: GAUGE, ...changed }, new Working());
  it('follows its shape', () => {
    // Eight rounds of 1 cm on both sides of the middle; 26 stitches of 10/13 cm by 20 rows of 1 cm.
    expect(side({ shape: 'clusters', size: 8 })).toEqual({ side: 16, how: 'reckoned' });
    expect(side({ shape: 'flat', size: 26, otherSize: 20 }).side).toBeCloseTo(20, 9);
    const shown = new Working();
    reckonSide({ ...square, gauge: GAUGE, shape: 'flat', size: 26, otherSize: 20 }, shown);
    expect(shown.steps.map(({ label }) => label)).toEqual([
      'Height of a row',
      'Width of a stitch',
      'Width of the piece',
      'Height of the piece',
    ]);
    expect(side({ shape: 'blocks', side: 18 })).toEqual({ side: 18, how: 'measured' });
    // A row of one stitch 0.77 cm wide is 23 % off its height.
    expect(() => side({ shape: 'flat', size: 1 })).toThrow(refused('motif-not-square'));
    expect(() => side({ shape: 'flat', size: 13, otherSize: 10 })).not.toThrow();
  });
  it.each<[string, MotifSpec, string, string]>([
    ['not said', square, 'How large one moss square is, is not known.', 'gauge'],
    [
      'slanting',
      { ...square, gauge: GAUGE, shape: 'blocks' },
      'How large one moss square is, its gauge does not tell: blocks lie slanting.',
      'side',
    ],
    [
      'without rows',
      { ...square, gauge: { stitches: 13, over: 10 } },
      'The gauge of moss square has no rows, so its size is not known.',
      'rows',
    ],
  ])('is not known where it is %s', (_, motif, message, lacks) => {
    expect(() => reckonSide(motif, new Working())).toThrow(
      refused('motif-size-unknown', { message, option: 'kinds', facts: { motif: 'moss square', lacks } }),
    );
  });
  it('is no square where one way is longer than the other, whatever a side measures', () => {
    const blocks = (otherSize?: number): MotifSpec => ({
      ...square,
      shape: 'blocks',
      size: 5,
      side: 18,
      ...(otherSize === undefined ? {} : { otherSize }),
    });
    expect(reckonSide(blocks(5), new Working())).toEqual({ side: 18, how: 'measured' });
    expect([sayNotSquare(blocks()), sayNotSquare(blocks(5)), sayNotSquare(square)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    const unlike = refused('motif-not-square', {
      message: 'moss square is 5 × 4 blocks: no square.',
      hint: 'As many blocks the other way, 5 × 5, would make it one.',
      facts: { motif: 'moss square', across: 5, down: 4 },
    });
    expect(() => reckonSide(blocks(4), new Working())).toThrow(unlike);
    expect(sayNotSquare(blocks(4))).toEqual(unlike);
    const flat: MotifSpec = { ...square, shape: 'flat', size: 26, otherSize: 10, gauge: GAUGE };
    expect(() => reckonSide({ ...flat, side: 20 }, new Working())).toThrow(refused('motif-not-square'));
    expect(sayNotSquare({ ...flat, side: 20 })).toEqual(refused('motif-not-square'));
    expect(sayNotSquare({ ...flat, side: 20, otherSize: 20 })).toBeUndefined();
  });
  it('says how many rows would make it square', () => {
    // 20 cm wide, of rows half a centimetre high.
    expect(() => side({ shape: 'flat', size: 26, otherSize: 10, gauge: { ...GAUGE, rows: 20 } })).toThrow(
      refused('motif-not-square', { hint: 'About 40 rows would make it one.' }),
    );
    expect(() => side({ shape: 'flat', size: 26, otherSize: 10 })).toThrow(
      refused('motif-not-square', {
        hint: 'About 20 rows would make it one.',
        facts: { motif: 'moss square', across: 26 * (10 / 13), down: 10 },
      }),
    );
    expect(() => side({ shape: 'circle' })).toThrow(
      refused('not-for-a-grid', { facts: { motif: 'moss square', shape: 'circle' } }),
    );
  });
});

describe('drawn true to size', () => {
  const drawn = (changed: Partial<MotifSpec>) => trueSizeOf({ ...square, gauge: GAUGE, ...changed });
  it('it is as wide and high as its stitches and rows, or as its side', () => {
    // 10 cm hold 13 stitches and 10 rows.
    expect(drawn({ shape: 'flat', size: 26, otherSize: 20 })).toEqual({
      stitch: expect.closeTo(10 / 13, 12) as number,
      row: 1,
    });
    expect(drawn({ side: 15 })).toMatchObject({ row: 1 });
    // Eight rounds of 1 cm on both sides of the middle, or what was measured.
    expect(drawn({ shape: 'clusters', size: 8 })).toEqual({ side: 16 });
    expect(drawn({ shape: 'clusters', size: 8, side: 15 })).toEqual({ side: 15 });
  });
  it('it is not where that is not known', () => {
    const unknown: Partial<MotifSpec>[] = [
      { shape: 'blocks', size: 5, side: 18 },
      { gauge: { stitches: 13, over: 10 } },
      { shape: 'circle', size: 5 },
    ];
    for (const changed of unknown) expect(drawn(changed)).toBeUndefined();
    expect(trueSizeOf(square)).toBeUndefined();
  });
});

describe('measured', () => {
  const measured = (changed: Partial<MotifSpec>, ball?: typeof BALL) =>
    readMeasured({ ...square, gauge: GAUGE, ...changed }, ball);
  it('its weight is shared over its stitches, and is yarn by its ball', () => {
    // 31.2 g over 312 stitches; 1.7 m to the gram.
    const weighed = measured({ weight: 31.2 }, BALL);
    expect(weighed.total).toBe(312);
    expect(weighed.perStitch).toBeCloseTo(0.1, 12);
    expect(weighed.metres).toBeCloseTo(53.04, 9);
    expect(weighed.yarnPerStitch).toBeCloseTo(17, 9);
    const alone = measured({ weight: 31.2 });
    expect(alone.perStitch).toBeCloseTo(0.1, 12);
    for (const part of ['metres', 'yarnPerStitch']) expect(alone).not.toHaveProperty(part);
    for (const part of ['perStitch', 'weighed', 'metres'])
      expect(measured({}, BALL)).not.toHaveProperty(part);
  });
  it('its side is held to the gauge’s, and beyond what blocking mends a hook is named', () => {
    // The handbook's worked example: 12 rising rows at 13 × 10 over 10 cm block to 15.377 cm.
    const near = measured({ side: 15.6, hook: 5 });
    expect(near.expected).toBeCloseTo(15.377, 3);
    expect(near.off).toBeCloseTo(100 * (15.6 / 15.3771 - 1), 2);
    expect(near).not.toHaveProperty('hook');
    // What is too small is pinned out up to 5 %; what is too large by more than 2 % is not.
    expect(measured({ side: 14.7, hook: 5 })).not.toHaveProperty('hook');
    expect(measured({ side: 14.6, hook: 5 }).hook!.mm).toBe(5.25);
    expect(measured({ side: 16, hook: 5 }).hook!.mm).toBe(4.5);
    expect(measured({ side: 16, hook: 5 })).toHaveProperty('off');
    // 5 mm × 15.38 ÷ 17 is 4.52, and 5 × 15.38 ÷ 14 is 5.49.
    expect(measured({ side: 17, hook: 5 }).hook!.mm).toBe(4.5);
    expect(measured({ side: 14, hook: 5 }).hook!.mm).toBe(5.5);
    expect(measured({ side: 17 })).not.toHaveProperty('hook');
    expect(measured({ side: 17 }).off).toBeGreaterThan(10);
    expect(measured({})).not.toHaveProperty('off');
    expect(measured({}).expected).toBeCloseTo(15.377, 3);
    expect(measured({ shape: 'solid-square', size: 8, side: 16, stitch: 'sc' })).toMatchObject({
      expected: 16,
      off: 0,
    });
    expect(measured({ shape: 'clusters', size: 8 })).toMatchObject({ expected: 16 });
  });
  it('says nothing of a side that no gauge tells', () => {
    const flat: Partial<MotifSpec> = { shape: 'flat', size: 26, otherSize: 20 };
    const several: Partial<MotifSpec>[] = [
      { gauge: { stitches: 13, over: 10 } },
      flat,
      { shape: 'blocks', size: 5 },
      { shape: 'circle', size: 5 },
    ];
    for (const changed of several) expect(measured({ ...changed, side: 15 })).not.toHaveProperty('expected');
  });
});

describe('the yarn of a motif', () => {
  it('is by its weight where it was weighed and every ball is known, one colour’s ball standing for another’s', () => {
    const found = yarn({ ...halves, weight: 31.2 }, [{ colour: 'moss', ball: BALL }]);
    expect(found).toMatchObject({ how: 'weighed', stitches: 312, ends: 4 });
    expect(found.perStitch).toBeCloseTo(0.17, 12);
    // 168 rising and 144 falling stitches of 17 cm; its tails are in its weight.
    expect(found.colours.map(({ stitches, tails, carried }) => [stitches, tails, carried])).toEqual([
      [168, 0, 0],
      [144, 0, 0],
    ]);
    expect(found.colours[1]!.worked).toBeCloseTo(144 * 0.17, 9);
    expect(found.assumptions).toEqual([
      'moss square: sand of the same yarn as its other colours, as no ball of it is known.',
    ]);
    const both = yarn(
      { ...halves, weight: 31.2 },
      ['moss', 'sand'].map((colour) => ({ colour, ball: BALL })),
    );
    expect(both.assumptions).toEqual([]);
    expect(findBall(halves, [{ colour: 'moss', ball: BALL }], 'sand')).toEqual(BALL);
    expect(findBall({ ...halves, ball: { m: 90, g: 50 } }, [{ colour: 'moss', ball: BALL }], 'sand')).toEqual(
      { m: 90, g: 50 },
    );
    expect(findBall(halves, [], 'sand')).toBeUndefined();
  });

  it('is as another’s that was weighed, of the same yarn and hook, the same stitch first', () => {
    const of = (name: string, stitch: MotifSpec['stitch'], hook: number | undefined, wpi = 10.5) => ({
      name,
      stitch,
      hook,
      wpi,
      perStitch: 0.1,
      band: 9,
    });
    const twin = (hook: number | undefined, ...weighed: ReturnType<typeof of>[]) =>
      findTwin(weighed, { stitch: 'dc', hook, wpi: 10.5 })?.name;
    expect(twin(5, of('a', 'sc', 5), of('b', 'dc', 5))).toBe('b');
    expect(twin(5, of('a', 'sc', 5), of('b', 'hdc', 5))).toBe('a');
    expect(twin(5, of('a', 'dc', 4), of('b', 'sc', 5))).toBe('b');
    expect(twin(5, of('a', 'dc', 4))).toBeUndefined();
    expect(twin(5, of('a', 'dc', undefined))).toBe('a');
    expect(twin(undefined, of('a', 'dc', 4))).toBe('a');
    expect(twin(5, of('a', 'dc', 5, 8))).toBeUndefined();
  });

  it('taken from another stitch goes by their published ratio, and is less sure', () => {
    const yarns = [{ colour: 'moss square', ball: BALL }];
    const weighed = { ...square, name: 'moss square', weight: 31.2 };
    const same = yarn({ ...square, name: 'other', ball: BALL }, yarns, weighed);
    expect(same).toMatchObject({ how: 'as-weighed' });
    expect(same.perStitch).toBeCloseTo(0.17, 12);
    expect(same.band).toBe(yarn(weighed, yarns).band);
    expect(same.assumptions).toEqual([
      'other takes as much yarn in a stitch as moss square, which was weighed.',
    ]);
    // One maker's row of 53 in of yarn in sc, 78.5 in hdc, 102 in dc (windchilde.com/bluedepth): 1.48 and 1.92 to 1.
    const other = yarn({ ...square, name: 'other', stitch: 'dc', ball: BALL }, yarns, weighed);
    expect(other.perStitch).toBeCloseTo((0.17 * 1.92) / 1.48, 9);
    expect(other.assumptions.map((text) => forReader(text, { units: 'metric', terms: 'US' }))).toEqual([
      'other is reckoned from moss square, which was weighed: a stitch of dc takes 1.3 times the yarn of hdc.',
    ]);
    expect(other.band).toBeCloseTo(Math.hypot(same.band, 9), 9);
    expect(other.colours[0]).toMatchObject({ stitches: 312, tails: 0, carried: 0 });
  });

  it('is estimated by its gauge, or by hook and yarn, and says what is taken for granted', () => {
    const byGauge = yarn({ ...halves, gauge: GAUGE, hook: 5 }, [{ colour: 'moss', ball: BALL }]);
    expect(byGauge).toMatchObject({ how: 'by-gauge', band: 15 });
    expect(byGauge.colours.map(({ tails }) => tails)).toEqual([0.3, 0.3]);
    expect(byGauge.assumptions).toEqual([
      'moss square: its yarn is estimated from its gauge, right to about 15 %.',
      'moss square: sand of the same yarn as its other colours, as no ball of it is known.',
    ]);
    const rough = yarn(halves);
    expect(rough).toMatchObject({ how: 'rough', band: 25 });
    expect(rough.assumptions).toEqual([
      'moss square: a hook of ⟦5 mm⟧, usual for its yarn, as none was given.',
      'moss square: medium yarn, as no ball was given.',
    ]);
    expect(yarn({ ...halves, hook: 5 }).assumptions).toEqual([
      'moss square: medium yarn, as no ball was given.',
    ]);
    expect(yarn({ ...halves, hook: 5, ball: BALL }).assumptions).toEqual([]);
    expect(yarn({ ...square, weight: 12, gauge: GAUGE }).assumptions[0]).toBe(
      'moss square was weighed, but no ball of its own yarn is known: its metres are the estimate, its weight is ⟦12 g⟧ each.',
    );
    // Blocks lie slanting: their gauge tells nothing of their stitches.
    expect(yarn({ ...square, shape: 'blocks', size: 5, gauge: GAUGE }).how).toBe('rough');
    // 3.2 loops round 5 mm and a strand of 25.4 ÷ 10.5 mm, 1.48 times for hdc, in each of 312 stitches.
    const worked = ((3.2 * 1.48 * Math.PI * (5 + 25.4 / 10.5)) / 1000) * 312;
    expect(yarn({ ...square, hook: 5 }).colours[0]!.worked).toBeCloseTo(worked, 9);
  });

  it('counts what climbs up the side, by the height of its rows', () => {
    const runs = Array.from({ length: 12 }, (_, index) => run(2, index % 2 === 0 ? 'moss' : 'sand'));
    const striped = yarn({ ...square, gauge: GAUGE, hook: 5, runs });
    // Each climbs past five stripes of two rows of 1 cm; each is one length with two tails of 15 cm.
    for (const { tails, carried } of striped.colours) {
      expect(tails).toBeCloseTo(0.3, 12);
      expect(carried).toBeCloseTo(0.1, 12);
    }
    expect(striped.ends).toBe(4);
    expect(yarn({ ...halves, gauge: GAUGE, hook: 5 }).colours.map(({ carried }) => carried)).toEqual([0, 0]);
  });
});
