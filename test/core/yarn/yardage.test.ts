import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planRows, SHAPES, sumCounts } from '../../../src/core/rows/index.ts';
import { findLastRowInReach, reckonLeft } from '../../../src/core/yarn/left.ts';
import { estimateYarn } from '../../../src/core/yarn/rough.ts';
import { swapYarn } from '../../../src/core/yarn/swap.ts';
import { reckonWeighed } from '../../../src/core/yarn/weighed.ts';
import { expectOwnUnits } from '../../own-units.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

const BALL = { m: 170, g: 100 };

describe('a weighed motif', () => {
  it('gives metres, reserve and whole balls', () => {
    const found = reckonWeighed({ motif: 12, motifs: 80, ball: BALL, reserve: 10 });
    expect(found.each).toBeCloseTo(20.4, 10);
    expect(found.total).toBeCloseTo(1795.2, 8);
    expect(found.balls).toBe(11);
  });

  it('buys no ball for the last digit of a machine', () => {
    // 10 × 5 × 1.1 is 55.00000000000001 to a machine, and one ball of 55 m to a person.
    const found = reckonWeighed({ motif: 10, motifs: 5, ball: { m: 55, g: 55 }, reserve: 10 });
    expect(found.total).toBeGreaterThan(55);
    expect(found.balls).toBe(1);
  });

  it('never buys too few nor one too many', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 400, noNaN: true }),
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 0, max: 50 }),
        (motif, motifs, reserve) => {
          const { total: all, balls } = reckonWeighed({ motif, motifs, ball: BALL, reserve });
          const hair = 1e-5 * BALL.m;
          expect(balls * BALL.m).toBeGreaterThanOrEqual(all - hair);
          expect((balls - 1) * BALL.m).toBeLessThan(all + hair);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a rough estimate', () => {
  const asked = { shape: 'diagonal', size: 12, hook: 5, wpi: 10.5, motifs: 3, reserve: 10 } as const;

  it('is the stitches of the plan times the yarn in one, with its band', () => {
    const found = estimateYarn(asked);
    const perStitch = (3.2 * 1.48 * Math.PI * (5 + 25.4 / 10.5)) / 1000;
    expect(found.each).toBeCloseTo(312 * perStitch, 10);
    expect(found.low).toBeCloseTo(0.75 * found.each, 10);
    expect(found.high).toBeCloseTo(1.25 * found.each, 10);
    expect(found.total).toBeCloseTo(3.3 * found.each, 10);
    expect(found.balls).toBeUndefined();
  });

  it('counts a block as four tall stitches', () => {
    const block = estimateYarn({ ...asked, shape: 'blocks', size: 5 });
    expect(block.stitches).toBe(25 * 4);
    const dc = estimateYarn({ ...asked, shape: 'flat', size: 10, otherSize: 10, stitch: 'dc' });
    expect(block.each).toBeCloseTo(dc.each, 10);
  });

  it('asks for the rows of a flat piece', () => {
    expect(() => estimateYarn({ ...asked, shape: 'flat' })).toThrow(
      refused('rows-missing', { option: 'other_size' }),
    );
  });
});

describe('what is left', () => {
  it('agrees with a plain walk over the rows, whatever the shape', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES),
        fc.integer({ min: 1, max: 25 }),
        // Tenths of a gram, as scales show them: everything below is whole numbers, so that a row that comes out even
        // to the tail comes out even here too.
        fc.integer({ min: 5, max: 2000 }),
        fc.integer({ min: 10, max: 1000 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (shape, size, grams, each, done) => {
          const otherSize = shape === 'flat' || shape === 'blocks' ? 7 : undefined;
          const plan = planRows(shape, { size, otherSize });
          const doneRow = Math.floor(done * plan.rows.length);
          const found = reckonLeft({
            left: grams / 10,
            ball: BALL,
            shape,
            size,
            otherSize,
            each: each / 10,
            doneRow,
          });
          // Yarn in centimetres, of 17 to a tenth of a gram, shared over all stitches; times their number.
          const all = sumCounts(plan);
          let yarn = grams * 17 * all;
          let row = doneRow;
          for (;;) {
            const next = plan.rows[row];
            if (!next || yarn - next.count * each * 17 < 15 * all) break;
            yarn -= next.count * each * 17;
            row++;
          }
          expect(found.lastRow).toBe(row);
          expect(found.spare).toBeCloseTo(yarn / all / 100, 6);
        },
      ),
      { numRuns: 80 },
    );
  });

  it('finishes a row that comes out even to the tail', () => {
    // 2 + 4 × 5 m and 15 cm more: four of ten rows of 50 stitches, exactly.
    const ball = { m: 100, g: 100 };
    const at = (grams: number) =>
      reckonLeft({ left: grams, ball, shape: 'flat', size: 50, otherSize: 10, each: 50, doneRow: 0 });
    expect(at(20.15)).toMatchObject({ lastRow: 4 });
    expect(at(20.15).spare).toBeCloseTo(0.15, 9);
    expect(at(20.149)).toMatchObject({ lastRow: 3, tail: 15 });
  });

  it('stays where it is when nothing more can be finished, and says when all can', () => {
    const asked = { ball: BALL, shape: 'diagonal', size: 12, each: 12 } as const;
    const little = reckonLeft({ ...asked, left: 0.2, doneRow: 11 });
    expect(little).toMatchObject({ lastRow: 11 });
    expect(little.spare).toBeCloseTo(0.34, 10);
    const whole = reckonLeft({ ...asked, left: 50, doneRow: 0 });
    // 85 m: one motif of 20.4 m, and three more with 15 cm for each end.
    expect(whole).toMatchObject({ lastRow: 24, more: 3 });
    expect(whole.spare).toBeCloseTo(64.6, 8);
    expect(() => reckonLeft({ ...asked, left: 50, doneRow: 25 })).toThrow(
      refused('no-such-row', { option: 'done_row', facts: { row: 25, rows: 24 } }),
    );
  });

  it('walks from the row done', () => {
    const plan = planRows('flat', { size: 10, otherSize: 5 });
    expect(findLastRowInReach(plan, 2, 9.99)).toBe(2);
    expect(findLastRowInReach(plan, 2, 20)).toBe(4);
    expect(findLastRowInReach(plan, 2, 1000)).toBe(5);
  });
});

describe('another yarn', () => {
  it('goes by length', () => {
    const found = swapYarn({ balls: 9, ball: BALL, newBall: { m: 125, g: 50 } });
    expect(found).toMatchObject({ total: 1530, balls: 13, spare: 95, weight: 900, newWeight: 650 });
    expect(found.heavierPercent).toBeCloseTo(-32, 10);
  });

  it('is the same number of balls where the length is the same, however thick', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 20, max: 400, noNaN: true }),
        (balls, g) => {
          const found = swapYarn({ balls, ball: BALL, newBall: { m: BALL.m, g } });
          expect(found.balls).toBe(balls);
          expect(found.spare).toBeCloseTo(0, 9);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('for a maker in inches and yards', () => {
  it('every step works out from her own numbers', () => {
    for (const { working } of [
      reckonWeighed({ motif: 12, motifs: 80, ball: BALL, reserve: 10 }),
      estimateYarn({ shape: 'blocks', size: 5, hook: 5, wpi: 10, motifs: 9, reserve: 10, ball: BALL }),
      reckonLeft({ left: 50, ball: BALL, shape: 'diagonal', size: 9, each: 12, doneRow: 4 }),
      reckonLeft({ left: 5, ball: BALL, shape: 'circle', size: 9, each: 12, doneRow: 0 }),
      swapYarn({ balls: 9, ball: BALL, newBall: { m: 125, g: 50 } }),
    ])
      expectOwnUnits(working);
  });
});

describe('/yardage', () => {
  it('carries the band, the advice and the dye lot with a rough answer', async () => {
    const answer = await asking().ask('/yardage rough shape:clusters size:6');
    expect(Object.keys(answer.figures)).toEqual(['yarn_each', 'yarn_low', 'yarn_high', 'yarn_total']);
    expect(answer.lines?.join()).toContain('/yardage weighed');
    expect(answer.cautions.join()).toMatch(/weigh.*dye lot/);
    expect(answer.assumptions.join()).toMatch(/Medium yarn.*hook of 5 mm/);
  });

  it('says plainly that nothing more can be finished', async () => {
    const line = '/yardage left left:1g ball:170m/100g shape:clusters size:6 each:50g done_row:5';
    const answer = await asking().ask(line);
    expect(answer.figures['last_row']?.value).toBe(5);
    expect(answer.headline).toContain('No further round can be finished');
  });
});
