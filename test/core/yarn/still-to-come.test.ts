import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRuns } from '../../../src/core/stripes/read-runs.ts';
import { planRows, sumCounts } from '../../../src/core/rows/index.ts';
import { sum } from '../../../src/core/base/sum.ts';
import { reckonMaterials } from '../../../src/core/blanket/materials.ts';
import { piecesOf } from '../../../src/core/blanket/pieces.ts';
import { countByColour, type MotifSpec } from '../../../src/core/yarn/motif.ts';
import {
  reckonPercentDone,
  findRowsWith,
  isTooClose,
  reckonSpareWeight,
  listStripes,
  reckonToCome,
} from '../../../src/core/yarn/still-to-come.ts';
import { Working } from '../../../src/core/base/working.ts';
import { specs } from '../blanket/pieces.ts';

const plan = planRows('diagonal', { size: 12 });
const runs = readRuns('4 rows moss, 2 rows sand, three times, then 6 rows moss', 24);
const striped: MotifSpec = { name: 'moss square', shape: 'diagonal', size: 12, stitch: 'hdc', runs };
const BALL = { m: 170, g: 100 };
const yarns = ['moss', 'sand'].map((colour) => ({ colour, ball: BALL }));

describe('what is still to come', () => {
  it('stripes have all the stitches of the piece: 312 of them', () => {
    // Derived: 2R² + 2R = 312 for twelve rising rows.
    expect(listStripes(plan, runs).reduce((sum, { stitches }) => sum + stitches, 0)).toBe(312);
    // Rows 5, 6 (11 + 13), 11, 12 (23 + 25), 17, 18 (15 + 13) are sand.
    expect(Object.fromEntries(countByColour(plan, runs))).toEqual({ moss: 212, sand: 100 });
  });

  it('walks the rows: after row 12 of 24 less than half is left, as the widest row is the twelfth', () => {
    const come = reckonToCome(
      { motif: { ...striped, weight: 312 }, yarns, motifs: 1, row: 12 },
      new Working(),
    );
    expect(come.stitches).toBe(312 - 168);
    expect(come.weight).toBeCloseTo(144, 9);
    expect(reckonPercentDone(plan, 12, new Working())).toBeCloseTo((100 * 168) / 312, 12);
  });

  it('colours and whole agree for any number of motifs and any row', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 24 }), (motifs, row) => {
        const come = reckonToCome({ motif: { ...striped, weight: 12 }, yarns, motifs, row }, new Working());
        expect(come.colours.reduce((sum, one) => sum + one.stitches, 0)).toBe(come.stitches);
        expect(come.stitches).toBe(motifs === 0 ? 0 : motifs * 312 - sumCounts(plan, row));
        expect(come.colours.reduce((sum, one) => sum + one.weight!, 0)).toBeCloseTo(come.weight!, 9);
      }),
    );
  });

  it('is what the whole blanket takes, where nothing is begun, whatever the yarns and whatever was weighed', () => {
    fc.assert(
      fc.property(specs, fc.integer({ min: 1, max: 9 }), fc.boolean(), (spec, motifs, alike) => {
        // No seams and no border: what the motifs take stands alone.
        const plain = { ...spec, border: { ...spec.border, rounds: [] } };
        const blanket = alike ? plain : { ...plain, yarns: spec.yarns.slice(1) };
        const materials = reckonMaterials(
          piecesOf(blanket, new Working()),
          { columns: 1, rows: 1, counts: spec.kinds.map(() => motifs) },
          new Working(),
        );
        const come = blanket.kinds.map((motif) =>
          reckonToCome({ motif, beside: blanket.kinds, yarns: blanket.yarns, motifs, row: 0 }, new Working()),
        );
        for (const { colour, motifs: worked, tails, carried } of materials.colours) {
          const metres = come.flatMap(({ colours }) => colours.filter((one) => one.colour === colour));
          expect(sum(metres.map((one) => one.metres))).toBeCloseTo(worked + tails + carried, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('weighs what hangs from different balls by each its own, and all as the motif was weighed', () => {
    // 212 stitches of moss at 100 g in 170 m and 100 of sand at 50 g in 170 m: one gram is so much longer of sand.
    const unlike = [
      { colour: 'moss', ball: BALL },
      { colour: 'sand', ball: { m: 170, g: 50 } },
    ];
    const come = reckonToCome(
      { motif: { ...striped, weight: 26.2 }, yarns: unlike, motifs: 1, row: 0 },
      new Working(),
    );
    expect(come.weight).toBeCloseTo(26.2, 9);
    expect(come.colours.map(({ weight }) => weight)).toEqual([expect.closeTo(21.2, 9), expect.closeTo(5, 9)]);
    expect(come.colours[1]!.metres / come.colours[0]!.metres).toBeCloseTo(100 / 212, 9);
    expect(come.how).toBe('weighed');
  });

  it('shares grams evenly where no ball is known, its metres an estimate; unweighed it has no grams', () => {
    const alone = reckonToCome(
      { motif: { ...striped, weight: 31.2 }, yarns: [], motifs: 2, row: 12 },
      new Working(),
    );
    expect(alone.how).toBe('rough');
    expect(alone.weight).toBeCloseTo(31.2 + 14.4, 9);
    expect(alone.colours[1]!.weight).toBeCloseTo(10 + 2.8, 9);
    // Its metres are an estimate by hook and yarn; its grams are as sure as one reading of the scale.
    expect(alone.band).toBe(25);
    expect(alone.weightBand).toBeCloseTo((100 * 2 * Math.sqrt((0.04 * 31.2) ** 2 + 1 / 12)) / 31.2, 9);
    const rough = reckonToCome({ motif: striped, yarns: [], motifs: 2, row: 12 }, new Working());
    expect(rough.weight).toBeUndefined();
    expect(rough.metres).toBeCloseTo(alone.metres, 9);
    expect(rough.metres).toBeGreaterThan(0);
    expect(rough.assumptions.join(' ')).toContain('medium yarn');
  });

  it('says what is missing as a negative', () => {
    expect(reckonSpareWeight(5, 7.5, new Working())).toBe(-2.5);
  });

  it('is too close to call within what the weight to come may be off', () => {
    // A tenth of 50 g.
    expect([4.9, -4.9, 0].map((spare) => isTooClose(spare, 50, 10))).toEqual([true, true, true]);
    expect([5, -5, 12].map((spare) => isTooClose(spare, 50, 10))).toEqual([false, false, false]);
  });

  it('finds the other rows of a count, the nearest first', () => {
    expect(findRowsWith(plan, 11, 4)).toEqual([5, 19]);
    expect(findRowsWith(plan, 11, 18)).toEqual([19, 5]);
    expect(findRowsWith(plan, 11, 5)).toEqual([19]);
    expect(findRowsWith(plan, 10, 4)).toEqual([]);
  });
});
