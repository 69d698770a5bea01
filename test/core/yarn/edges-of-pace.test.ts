/** Where pace, a rough estimate and a swatch draw their lines. */
import { describe, expect, it } from 'vitest';
import { evaluate, Working } from '../../../src/core/base/working.ts';
import { paceOf } from '../../../src/core/yarn/pace.ts';
import { MORE_MOTIFS, reckonLeft } from '../../../src/core/yarn/left.ts';
import { estimateYarn } from '../../../src/core/yarn/rough.ts';
import { reckonOtherStitch, reckonStitchMetres } from '../../../src/core/yarn/stitch-yarn.ts';
import { reckonSwatchYarn } from '../../../src/core/yarn/swatch-yarn.ts';
import { findUsualHook, wpiOf } from '../../../src/core/yarn/thickness.ts';
import { refused } from '../../refused.ts';

const BALL = { m: 170, g: 100 };
const GAUGE = { stitches: 13, rows: 10, over: 10 };

describe('pace', () => {
  const row = (stitches: number, minutes: number) => ({ stitches, minutes });
  it('takes up to sixty stitches a minute for work, and more for rows counted afterwards', () => {
    expect(paceOf([row(60, 1), row(60, 1), row(60, 1)])).toEqual({ perMinute: 60, rows: 3, minutes: 3 });
    // The faster one is joined to the row before it; alone at the beginning it is left out.
    expect(paceOf([row(20, 2), row(61, 1), row(30, 3), row(30, 3)])).toEqual({
      perMinute: 141 / 9,
      rows: 4,
      minutes: 9,
    });
    expect(paceOf([row(61, 1), row(20, 2), row(30, 3), row(30, 3)])).toEqual({
      perMinute: 10,
      rows: 3,
      minutes: 8,
    });
    expect(paceOf([row(20, 2), row(20, -1), row(30, 3), row(30, 3)])).toEqual({
      perMinute: 100 / 8,
      rows: 4,
      minutes: 8,
    });
    expect(paceOf([row(20, 2), row(20, 0), row(30, 3), row(30, 3)])!.rows).toBe(4);
  });
  it('takes less than one stitch a minute for a break', () => {
    expect(paceOf([row(5, 5), row(5, 5), row(5, 5)])!.perMinute).toBe(1);
    expect(paceOf([row(5, 5.1), row(5, 5), row(5, 5)])).toBeUndefined();
  });
  it('takes over three times her middle time for a break', () => {
    // Half of 40 stitches took no more than a tenth of a minute each; three tenths are not yet a break.
    const ten = [row(10, 1), row(10, 1), row(10, 1)];
    expect(paceOf([...ten, row(10, 3)])).toEqual({ perMinute: 40 / 6, rows: 4, minutes: 6 });
    expect(paceOf([...ten, row(10, 3.1)])).toEqual({ perMinute: 10, rows: 3, minutes: 3 });
    // The middle goes by stitches, not by rows: the long row, five times as slow, is where half of them lie.
    const uneven = [row(5, 1), row(5, 1), row(5, 1), row(100, 100)];
    expect(paceOf(uneven)!.rows).toBe(4);
    // An eighth of a minute a stitch; three eighths, to the last digit, are not yet a break.
    const eight = [row(8, 1), row(8, 1), row(8, 1)];
    expect(paceOf([...eight, row(8, 3)])!.rows).toBe(4);
  });
  it('finds the middle in whatever order the rows came', () => {
    // 0.1, 0.4, 0.1, 0.1 minutes a stitch: the slow row lies in the middle of the list, and is four times the middle time.
    const came = [row(10, 1), row(20, 8), row(10, 1), row(11, 1.1)];
    expect(paceOf(came)).toEqual({ perMinute: 31 / 3.1, rows: 3, minutes: 3.1 });
    // Exactly half of the stitches took a tenth: that is the middle, and 0.35 is beyond three times it.
    const half = [row(10, 3.5), row(10, 2.5), row(10, 1), row(10, 1)];
    expect(paceOf(half)).toEqual({ perMinute: 30 / 4.5, rows: 3, minutes: 4.5 });
  });
});

describe('a rough estimate', () => {
  const asked = {
    shape: 'diagonal',
    size: 12,
    hook: 5,
    wpi: 10.5,
    motifs: 3,
    reserve: 10,
    stitch: 'hdc',
  } as const;
  it('goes by the gauge where there is one, and is surer then', () => {
    const found = estimateYarn({ ...asked, gauge: GAUGE, ball: BALL });
    // 312 stitches of 2.32 × 10/13 + 7.52 × 1 cm, 25 chains of 5.1 × 10/13 and 24 second uprights of 7.52 cm.
    const each = (312 * ((2.32 * 10) / 13 + 7.52) + 25 * 5.1 * (10 / 13) + 24 * 7.52) / 100;
    expect(found).toMatchObject({ band: 15, bySize: true, stitches: 312 });
    expect(found.each).toBeCloseTo(each, 9);
    expect([found.low, found.high]).toEqual([expect.closeTo(each * 0.85, 9), expect.closeTo(each * 1.15, 9)]);
    // Three with a tenth in reserve.
    expect(found.total).toBeCloseTo(each * 3.3, 9);
    expect([found.balls, found.ballsHigh]).toEqual([
      Math.ceil((each * 3.3) / 170),
      Math.ceil((each * 1.15 * 3.3) / 170),
    ]);
    const blocks = estimateYarn({ ...asked, shape: 'blocks', size: 5, gauge: GAUGE });
    expect(blocks).toMatchObject({ band: 25, bySize: false });
    for (const part of ['balls', 'ballsHigh']) expect(blocks).not.toHaveProperty(part);
    // Nearly two balls at the middle are over two at the high end.
    const ball = { m: (each * 3.3) / 1.9, g: 100 };
    expect(estimateYarn({ ...asked, gauge: GAUGE, ball })).toMatchObject({ balls: 2, ballsHigh: 3 });
  });
});

describe('a stitch', () => {
  const metres = (worked: object) =>
    reckonStitchMetres(new Working(), { stitch: 'dc', wpi: 10.5, ...worked });
  it('by its size has its chain and its upright, by hook and yarn neither', () => {
    const bySize = metres({ gauge: GAUGE });
    expect(bySize.bySize).toBe(true);
    expect(bySize.upright).toBeCloseTo(0.0752, 9);
    expect(bySize.chain).toBeCloseTo((5.1 * 10) / 13 / 100, 9);
    expect(bySize.stitch).toBeCloseTo((2.32 * 10) / 13 / 100 + 0.0752, 9);
    expect(metres({ hook: 5 })).toMatchObject({ chain: 0, upright: 0, bySize: false });
    expect(metres({})).toEqual(metres({ hook: 5 }));
    expect(metres({ hook: 4 }).stitch).toBeLessThan(metres({ hook: 5 }).stitch);
  });
  it('of the same height is itself', () => {
    const working = new Working();
    expect(reckonOtherStitch(0.17, 'hdc', 'hdc', working)).toBe(0.17);
    expect(working.steps).toEqual([]);
    expect(reckonOtherStitch(0.148, 'hdc', 'sc', working)).toBeCloseTo(0.1, 12);
  });
});

describe('what is left', () => {
  const left = (grams: number, doneRow = 0, changed: object = {}) =>
    reckonLeft({ left: grams, ball: BALL, shape: 'diagonal', size: 12, each: 12, doneRow, ...changed });
  const labels = (found: ReturnType<typeof left>) => found.working.steps.map(({ label }) => label);
  it('shows the counts on both sides of the last row, and no more than there are', () => {
    // 12 g are 20.4 m for 312 stitches; 5 g are 8.5 m, 8.35 without the tail: 127.7 of them. Row 10 ends at 120, row 11 at 143.
    const found = left(5);
    expect(found).toMatchObject({ lastRow: 10, tail: 15 });
    expect(found.reach).toBeCloseTo((8.35 * 312) / 20.4, 9);
    expect(labels(found)).toEqual([
      'Yarn at hand',
      'Yarn in a finished motif',
      'All stitches of the motif',
      'Yarn in a stitch',
      'Stitches within reach, the tail kept back',
      'Stitches to row 10',
      'Stitches to row 11, which is out of reach',
      'Left over after that row, the tail included',
      'Share of the motif’s yarn worked by the end of the turn row',
    ]);
    expect(found).not.toHaveProperty('more');
    // 168 of 312 stitches.
    expect(found.atTurn).toBeCloseTo((100 * 168) / 312, 9);
    // Rows 21 to 24 have 16 stitches, 1.05 m: what is left is less than a motif and two tails; of a gram more it is not.
    expect(left(13, 20)).toMatchObject({ lastRow: 24, more: 1 });
    const all = left(12, 20);
    expect(labels(all)).toContain('Stitches done, to row 20');
    expect(labels(all).filter((label) => label.includes('out of reach'))).toEqual([]);
    expect(all).toMatchObject({ lastRow: 24, more: 0 });
    // Eleven rising rows: 3 + 5 + … + 23.
    const beyond = found.working.steps.find(({ label }) => label.includes('out of reach'));
    expect(beyond!.result).toBe(143);
  });
  it('is as many more as come out even on paper, and none for a second tail', () => {
    const more = (spare: number, motif_yarn: number) =>
      evaluate(MORE_MOTIFS.formula, { spare, tail: 0.15, motif_yarn });
    // 15 cm, and two of 3.8 m with 15 cm each, which a machine divides to 1.9999999999999998.
    expect(more(8.05, 3.8)).toBe(2);
    expect(more(8.049999999999999, 3.8)).toBe(2);
    // One centimetre short of one more and its tail, where the tail kept back is not counted twice.
    expect(more(10.29, 10)).toBe(0);
    expect(more(10.3, 10)).toBe(1);
  });
  it('counts blocks as blocks, and says nothing of a turn where there is none', () => {
    const found = left(5, 0, { shape: 'blocks', size: 5 });
    expect(labels(found)).toEqual(
      expect.arrayContaining([
        'Yarn in a block',
        'All blocks of the motif',
        'Blocks within reach, the tail kept back',
      ]),
    );
    expect(found).not.toHaveProperty('atTurn');
    expect(labels(left(5, 1, { shape: 'circle', size: 5 }))).toContain('Stitches done, to round 1');
  });
  it('may have been finished, and not beyond', () => {
    expect(left(5, 24)).toMatchObject({ lastRow: 24 });
    expect(() => left(5, 25)).toThrow(
      refused('no-such-row', {
        message: 'This motif ends with row 24; row 25 cannot be done.',
        hint: 'Give the last finished row, from 0 (nothing yet) to 24.',
      }),
    );
  });
});

describe('a swatch', () => {
  const swatch = (changed: object = {}) =>
    reckonSwatchYarn({
      swatchWidth: 10,
      swatchHeight: 10,
      weight: 8,
      width: 100,
      height: 120,
      reserve: 10,
      ...changed,
    });
  it('is weighed up to the blanket', () => {
    // 120 swatches of 8 g, and a tenth; half a gram of eight is a sixteenth.
    expect(swatch()).toMatchObject({ plain: 960, doubt: 6.25 });
    expect(swatch().weight).toBeCloseTo(1056, 9);
    for (const part of ['yarn', 'balls']) expect(swatch()).not.toHaveProperty(part);
    const bought = swatch({ ball: BALL });
    expect(bought.yarn).toBeCloseTo(1795.2, 9);
    expect(bought.balls).toBe(11);
  });
  it('is no larger than the blanket', () => {
    expect(swatch({ width: 10, height: 10 }).plain).toBe(8);
    expect(() => swatch({ width: 10, height: 9.9 })).toThrow(
      refused('swatch-too-large', { option: 'swatch_width', facts: { swatch: 100, blanket: 99 } }),
    );
  });
});

describe('a yarn', () => {
  it('has the wraps of its band, or the usual ones', () => {
    // A spinning magazine's chart (scribd.com/document/657653690): 843 yards in a pound are 10 to 11 wraps.
    expect([wpiOf(BALL), wpiOf(undefined)]).toEqual([10.5, 10.5]);
    expect(wpiOf({ m: 800, g: 50 })).toBeGreaterThan(15);
    expect(wpiOf({ m: 30, g: 100 })).toBeLessThan(8);
    // Its lines are yards in a pound; each belongs to the thinner yarn.
    const yardsInPound = (yards: number) => wpiOf({ m: yards * 0.9144, g: 453.59237 });
    expect([2401, 2400, 1901, 1201, 1200, 901, 601, 600, 401, 400].map(yardsInPound)).toEqual([
      18, 17, 17, 14.5, 12.5, 12.5, 10.5, 8.5, 8.5, 7,
    ]);
  });
  it('has a usual hook by its category, or by the wraps it is nearest to', () => {
    expect(findUsualHook({ wpi: 3, category: 4 })).toEqual(findUsualHook({ wpi: 10.5 }));
    expect(findUsualHook({ wpi: 10.5 }).name).toBe('medium');
    expect(findUsualHook({ wpi: 10.5, category: 99 }).name).toBe('medium');
    // 14 wraps lie in the middle between 12–18 and 11–15, 9 between 9–12 and 6–9: the thinner yarn, the smaller hook.
    expect([14, 9].map((wpi) => findUsualHook({ wpi }).name)).toEqual(['fine', 'medium']);
  });
});
