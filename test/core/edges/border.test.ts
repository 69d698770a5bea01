import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countBorderRounds, FEWEST, spaceBorder, writeInRuns } from '../../../src/core/edges/border.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { expectOwnUnits } from '../../own-units.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

const sum = (counts: readonly number[]) => counts.reduce((all, one) => all + one, 0);

describe('the first round', () => {
  it('takes the nearest count that suits, of two as near the fewer', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 3000 }),
        fc.integer({ min: 5, max: 40 }),
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 40 }),
        (width, stitches, multiple, plus) => {
          const { across } = spaceBorder({
            width: width / 10,
            height: 50,
            gauge: { stitches, over: 10 },
            corner: 3,
            multiple,
            plus,
          });
          // In whole hundredths, so that a tie is a tie.
          const target = width * stitches;
          let best: number | undefined;
          for (let n = 1; n <= target / 100 + multiple; n++) {
            if ((n - plus) % multiple !== 0) continue;
            if (best === undefined || Math.abs(100 * n - target) < Math.abs(100 * best - target)) best = n;
          }
          expect(across).toBe(best);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('breaks a tie to the fewer', () => {
    const at = (width: number) =>
      spaceBorder({ width, height: 10, gauge: { stitches: 10, over: 10 }, corner: 3, multiple: 6, plus: 1 })
        .across;
    expect(at(10)).toBe(7);
    expect(at(10.1)).toBe(13);
    expect(at(1)).toBe(1);
  });

  it('counts the corners in, and shares the sides out evenly', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 300 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 25 }),
        fc.integer({ min: 1, max: 25 }),
        (side, corner, columns, rows) => {
          const found = spaceBorder({
            width: side,
            height: side + 37,
            gauge: { stitches: 13, over: 10 },
            corner,
            multiple: 1,
            plus: 0,
            columns,
            rows,
          });
          expect(found.total).toBe(2 * (found.across + found.down) + 4 * corner);
          for (const [counts, all, many] of [
            [found.perMotifAcross!, found.across, columns],
            [found.perMotifDown!, found.down, rows],
          ] as const) {
            expect(counts).toHaveLength(many);
            expect(sum(counts)).toBe(all);
            expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  it('gives every motif a stitch at least, along either side', () => {
    const share = (columns: number, rows: number) =>
      spaceBorder({
        width: 10,
        height: 20,
        gauge: { stitches: 12, over: 10 },
        corner: 3,
        multiple: 1,
        plus: 0,
        columns,
        rows,
      });
    expect(share(12, 24).perMotifAcross).toEqual(Array.from({ length: 12 }, () => 1));
    expect(() => share(13, 24)).toThrow(
      refused('too-few-stitches', { option: 'columns', facts: { needed: 13, given: 12 } }),
    );
    expect(() => share(12, 25)).toThrow(
      refused('too-few-stitches', { option: 'rows', facts: { needed: 25, given: 24 } }),
    );
  });

  it('shows a step only where it says something', () => {
    const labels = (multiple: number) =>
      spaceBorder({ width: 10, height: 20, gauge: { stitches: 12, over: 10 }, corner: 3, multiple, plus: 0 })
        .working.steps.map(({ formula }) => formula)
        .includes(FEWEST.formula);
    expect([labels(1), labels(2)]).toEqual([false, true]);
    // The first round is as it was given: one step for its total, three for each round behind it, the corner's two.
    const rounds = (many: number) =>
      countBorderRounds({ across: 9, down: 9, corner: 3, stitches: Array.from({ length: many }, () => 'sc') })
        .working.steps.length;
    expect([rounds(1), rounds(2), rounds(3)]).toEqual([3, 6, 9]);
  });

  it('names equal neighbours together', () => {
    expect(writeInRuns([21, 21, 22, 21])).toBe('2 × 21, 22, 21');
    expect(writeInRuns([])).toBe('');
  });

  it('hands the shares over as data', async () => {
    const answer = await asking().ask('/border spacing width:40cm height:60cm gauge:14 columns:3 rows:4');
    expect(answer.data).toEqual({ per_motif_across: [18, 19, 19], per_motif_down: [21, 21, 21, 21] });
    expect(answer.lines?.join()).toMatch(/3 for every two rows of hdc/);
  });
});

describe('round by round', () => {
  it('works out from a maker’s own numbers in inches', () => {
    const gauge = { stitches: 13.5, over: 10.16 };
    expectOwnUnits(
      spaceBorder({ width: 101, height: 122.5, gauge, corner: 3, multiple: 6, plus: 1 }).working,
    );
    expectOwnUnits(countBorderRounds({ across: 30, down: 40, corner: 3, stitches: ['sc', 'dc'] }).working);
  });

  it('starts as given and grows by corner − 1 a side', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 9 }),
        fc.array(fc.constantFrom(...STITCHES), { minLength: 1, maxLength: 8 }),
        (across, down, corner, stitches) => {
          const { rounds, last, stitches: inAll } = countBorderRounds({ across, down, corner, stitches });
          expect(rounds.map(({ stitch }) => stitch)).toEqual(stitches);
          expect(rounds[0]).toMatchObject({ across, down });
          rounds.forEach((round, index) => {
            expect(round.total).toBe(2 * (round.across + round.down) + 4 * corner);
            const before = rounds[index - 1];
            if (before) expect(round.total - before.total).toBe(4 * (corner - 1));
          });
          expect(last.across).toBe(across + (corner - 1) * (stitches.length - 1));
          // The rounds grow by as much each time: the first and the last, halved, as often as there are rounds.
          expect(inAll).toBe(((rounds[0]!.total + last.total) * rounds.length) / 2);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('says whether the corner suits the stitch', () => {
    const fit = (stitch: (typeof STITCHES)[number], corner: number) =>
      countBorderRounds({ across: 10, down: 10, corner, stitches: [stitch] }).corners[0]!;
    expect(fit('sc', 3).fit).toBe('flat');
    expect(fit('dc', 5).fit).toBe('flat');
    expect(fit('dc', 3)).toMatchObject({ fit: 'too few', flatGrowth: 16, growth: 8, corner: 5 });
    expect(fit('sc', 5).fit).toBe('too many');
    for (const stitch of STITCHES) expect(fit(stitch, fit(stitch, 3).corner).fit).toBe('flat');
  });

  it('warns in words', async () => {
    const answer = await asking().ask('/border rounds across:20 down:30 rounds:"dc sc"');
    expect(answer.lines?.join(' ')).toMatch(/For dc, 3 in each corner are too few.*try 5/);
    expect(answer.lines?.join(' ')).toMatch(/suit sc: the corner lies flat/);
  });
});
