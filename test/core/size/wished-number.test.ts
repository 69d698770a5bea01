import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { settings, wishedNumber } from '../../../src/core/size/wished-number.ts';
import { asking } from '../../asking.ts';
import { expectOwnUnits } from '../../own-units.ts';

const asked = { border: 0, endsAMotif: 2, sizes: [] };

describe('a wished number of motifs', () => {
  it('is set in every way there is, and in no other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2500 }), (motifs) => {
        const found = settings(motifs);
        for (const { columns, rows } of found) expect(columns * rows).toBe(motifs);
        for (let columns = 1; columns <= motifs; columns++)
          expect(found.some((one) => one.columns === columns)).toBe(motifs % columns === 0);
      }),
      { numRuns: 60 },
    );
  });

  it('keeps its number in every option, the best being nearest to a square', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 600 }),
        fc.double({ min: 2, max: 40, noNaN: true }),
        (motifs, side) => {
          const { options, best, working } = wishedNumber({ ...asked, motifs, sizes: [{ side }] });
          for (const option of options) expect(option.motifs).toBe(motifs);
          expect(best.columns).toBeLessThanOrEqual(best.rows);
          for (const { columns, rows } of settings(motifs))
            expect(Math.abs(best.rows - best.columns)).toBeLessThanOrEqual(Math.abs(rows - columns));
          expectOwnUnits(working);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('for a size finds the side that is off least', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (motifs, width, height, border, other) => {
          const { best, working } = wishedNumber({ ...asked, motifs, border, wish: { width, height } });
          const off = (side: number) =>
            100 *
            (Math.abs(best.columns * side + 2 * border - width) / width +
              Math.abs(best.rows * side + 2 * border - height) / height);
          expect(best.offPercent).toBeLessThanOrEqual(off(other) + 1e-9);
          expectOwnUnits(working);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('that only makes a strip names its neighbours that do not', () => {
    expect(wishedNumber({ ...asked, motifs: 47, sizes: [{ side: 15 }] })).toMatchObject({
      fewer: 45,
      more: 48,
    });
    expect(wishedNumber({ ...asked, motifs: 48, sizes: [{ side: 15 }] }).fewer).toBeUndefined();
  });
});

describe('/resize', () => {
  const room = asking();
  it('takes a number in place of a size, beside one, and with a size word', async () => {
    // Charity, younger child, 36 × 48 in (cthugsandkisses.org): 48 squares of 6 in set 6 × 8.
    expect((await room.ask('/resize motifs:48 side:6in')).figures).toMatchObject({
      columns: { value: 6 },
      rows: { value: 8 },
      width: { value: 36 * 2.54 },
      height: { value: 48 * 2.54 },
    });
    const sides = await room.ask('/resize motifs:48 width:36in height:48in');
    expect(sides.figures['side']!.value).toBeCloseTo(6 * 2.54, 9);
    // The common trade size of a throw, 50 × 60 in (from memory, as the answer says).
    const thrown = await room.ask('/resize for:throw side:10in');
    expect(thrown.figures).toMatchObject({ columns: { value: 5 }, rows: { value: 6 } });
    expect(thrown.assumptions.join(' ')).toContain('from memory: common trade size');
  });
  it.each([
    ['side:15cm', 'width', 'width-missing'],
    ['side:15cm width:120cm', 'height', 'height-missing'],
    ['side:15cm width:120cm for:throw', 'for', 'size-given-twice'],
    ['motifs:48', 'side', 'side-missing'],
    ['motifs:48 width:10cm height:10cm border:6cm', 'border', 'border-too-wide'],
  ])('refuses %s about %s', async (typed, option, code) => {
    expect(await room.ask(`/resize ${typed}`)).toMatchObject({ ok: false, option, code });
  });
});
