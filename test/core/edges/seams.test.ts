import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countStrands, joinMotifs, SEAM_METHODS } from '../../../src/core/edges/seams.ts';
import { expectOwnUnits } from '../../own-units.ts';
import { asking } from '../../asking.ts';

const USUAL = { method: 'whip', hook: 5, wpi: 10.5 } as const;

describe('joining', () => {
  it('counts every side that two motifs share, once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }), (columns, rows) => {
        fc.pre(columns * rows > 1);
        let shared = 0;
        for (let x = 0; x < columns; x++)
          for (let y = 0; y < rows; y++) shared += Number(x + 1 < columns) + Number(y + 1 < rows);
        const found = joinMotifs({ ...USUAL, columns, rows, side: 10 });
        expect(found.seamLength).toBeCloseTo(shared / 10, 9);
        const { strips, shortSeams, shortLength, longLength } = found;
        expect((strips * shortSeams * shortLength + (strips - 1) * longLength) / 100).toBeCloseTo(
          shared / 10,
          9,
        );
        expect(found.seams).toBe(strips * shortSeams + strips - 1);
        const crocheted = joinMotifs({ ...USUAL, method: 'slip-stitch', columns, rows, side: 10 });
        expect(crocheted.straight).toBe(shortSeams + (strips - 1));
        expect([found.width, found.height]).toEqual([columns * 10, rows * 10]);
        // Two tails to every strand where it is sewn, to every seam where it is crocheted.
        expect(found.tails).toBeCloseTo((found.strands ?? found.seams) * 0.3, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('takes two and a half to three times the seam in whip stitch, at usual gauges', () => {
    for (const gauge of [undefined, ...[12.5, 13, 14].map((stitches) => ({ stitches, over: 10.16 }))]) {
      const { ratio } = joinMotifs({ ...USUAL, columns: 2, rows: 2, side: 15, gauge });
      expect(ratio).toBeGreaterThan(2.4);
      expect(ratio).toBeLessThan(3);
    }
  });

  it('takes more, the more yarn the method draws up', () => {
    const [whip, slip, single] = SEAM_METHODS.map(
      (method) => joinMotifs({ ...USUAL, method, columns: 3, rows: 4, side: 15 }).yarn,
    );
    expect(whip).toBeLessThan(slip!);
    expect(slip).toBeLessThan(single!);
  });

  it('takes more with closer stitches, and with thicker yarn', () => {
    const yarn = (stitches: number, wpi: number) =>
      joinMotifs({ ...USUAL, wpi, columns: 3, rows: 4, side: 15, gauge: { stitches, over: 10 } }).yarn;
    expect(yarn(16, 10)).toBeGreaterThan(yarn(12, 10));
    expect(yarn(12, 8)).toBeGreaterThan(yarn(12, 12));
  });

  it('is sewn in strands of a metre and a half, in that order; crocheted it comes from the ball', () => {
    const join = (columns: number, rows: number, side: number, method: 'whip' | 'slip-stitch' = 'whip') =>
      joinMotifs({ ...USUAL, method, columns, rows, side });
    const { ratio } = join(2, 1, 10);
    // 1.2 m of a strand are sewn: a seam that takes just that is one strand, a hair more is two.
    const side = 120 / ratio;
    expect(join(2, 1, side).strands).toBe(1);
    expect(join(2, 1, side * 1.01).strands).toBe(2);
    // 4 × 3: nine short seams of one strand each, two long ones of four sides each.
    expect(join(4, 3, side).strands).toBe(9 + 2 * 4);
    expect(join(1, 4, side).strands).toBe(3);
    // Straight through: three seams of three sides each, two of four.
    expect(join(4, 3, side).straight).toBe(3 * 3 + 2 * 4);
    expect(join(4, 3, side, 'slip-stitch')).not.toHaveProperty('strands');
    // By plain arithmetic it is the same, for searches.
    for (const [columns, rows, long] of [
      [4, 3, side],
      [4, 3, side * 1.01],
      [7, 1, 15],
      [1, 7, 31.3],
      [9, 12, 15.4],
    ] as const)
      expect(countStrands({ columns, rows, side: long, ratio })).toBe(join(columns, rows, long).strands);
  });

  it('tells the order: strips first, then across', async () => {
    const room = asking();
    const answer = await room.ask('/joining columns:8 rows:11 side:15cm');
    expect(answer.lines?.[0]).toMatch(/8 motifs into each of 11 strips/);
    expect(answer.lines?.[1]).toMatch(/10 long seams of 120 cm/);
    const strip = await room.ask('/joining columns:1 rows:4 side:15cm method:slip-stitch');
    expect(strip.lines?.[0]).toMatch(/^Join the strips to each other: 3 long seams of 15 cm/);
    expect(strip.figures['seams']?.value).toBe(3);
  });

  it('tells of another order in the same strands, and only where it takes fewer', async () => {
    const room = asking();
    const sewn = await room.ask('/joining columns:8 rows:11 side:15cm');
    const strands = sewn.figures['strands']!.value;
    // 7 seams of 165 cm at 2.69 times are four strands each, 10 of 120 cm three.
    expect(sewn.lines?.at(-1)).toContain(`: ${7 * 4 + 10 * 3} strands instead of ${strands}.`);
    const crocheted = await room.ask('/joining columns:8 rows:11 side:15cm method:slip-stitch');
    expect(crocheted.lines?.at(-1)).toContain(': 17 threads instead of 87.');
    // Two strands to a side, four to two sides: nothing to be saved.
    const large = await room.ask('/joining columns:2 rows:2 side:85cm');
    expect(large.lines?.join()).not.toContain('fewer ends');
  });

  it('works out from a maker’s own numbers in inches', () => {
    for (const method of SEAM_METHODS)
      for (const gauge of [undefined, { stitches: 13, over: 10 }])
        expectOwnUnits(joinMotifs({ ...USUAL, method, columns: 3, rows: 4, side: 15, gauge }).working);
  });

  it('assumes a hook only where one matters', async () => {
    const room = asking();
    const said = async (line: string) =>
      (await room.ask(`/joining columns:8 rows:11 side:15cm ${line}`)).assumptions.join();
    expect(await said('')).toMatch(/hook of 5 mm/);
    expect(await said('gauge:13 method:single-crochet')).toMatch(/hook of 5 mm/);
    expect(await said('gauge:13')).not.toMatch(/hook/);
  });
});
