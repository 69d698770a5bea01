/** The pieces of a blanket: whose colour the seam and the border have, how high a round is, what is taken for granted. */
import { describe, expect, it } from 'vitest';
import type { BlanketSpec } from '../../../src/core/blanket/pieces.ts';
import type { MotifSpec } from '../../../src/core/yarn/motif.ts';
import { pieces } from './pieces.ts';

const GAUGE = { stitches: 13, rows: 10, over: 10 };
const bare: MotifSpec = {
  name: 'halves',
  shape: 'diagonal',
  size: 12,
  stitch: 'hdc',
  hook: 5,
  runs: [
    { colour: 'moss', rows: 12 },
    { colour: 'sand', rows: 12 },
  ],
};
const halves: MotifSpec = { ...bare, gauge: GAUGE };
/** Reckoned by hook and yarn alone; its side measured. */
const loose: MotifSpec = { ...bare, side: 15 };
const BALL = { m: 170, g: 100 };

const blanket = (changed: Partial<BlanketSpec> = {}): BlanketSpec => ({
  kinds: [halves],
  joining: { method: 'whip' },
  border: { rounds: [{ stitch: 'sc' }, { stitch: 'dc', colour: 'Plum' }, { stitch: 'dc' }], corner: 3 },
  yarns: [{ colour: 'moss', ball: BALL }],
  reserve: 0,
  ...changed,
});

describe('the pieces of a blanket', () => {
  it('are joined and bordered in the first colour where nothing else is said, which is told', () => {
    const made = pieces(blanket());
    expect(made.seam.colour).toBe('moss');
    expect(made.border.rounds.map(({ colour }) => colour)).toEqual(['moss', 'Plum', 'Plum']);
    expect(made.colours).toEqual(['moss', 'sand', 'Plum']);
    expect(made.assumptions).toEqual(
      expect.arrayContaining(['Joined with moss.', 'The border begins in moss.']),
    );
  });

  it('keep to what is said of the seam, and begin the border in its colour', () => {
    const made = pieces(blanket({ joining: { method: 'whip', colour: 'SAND' } }));
    expect(made.seam.colour).toBe('SAND');
    expect(made.border.rounds[0]!.colour).toBe('SAND');
    expect(made.colours).toEqual(['moss', 'sand', 'Plum']);
    expect(made.assumptions.join()).not.toContain('Joined');
    expect(made.assumptions).toContain('The border begins in SAND.');
    const first = pieces(blanket({ border: { rounds: [{ stitch: 'sc', colour: 'clay' }], corner: 3 } }));
    expect(first.assumptions.join()).not.toContain('border');
    expect(first.colours).toEqual(['moss', 'sand', 'clay']);
    const plain = pieces(blanket({ border: { rounds: [], corner: 3 } }));
    expect(plain.assumptions.join()).not.toContain('border');
    expect(plain.border).toMatchObject({ rounds: [], width: 0 });
  });

  it('have rounds as high as their stitch beside the motif’s, from its rows or from its stitches', () => {
    // Rows of hdc 1 cm high, one and a half times sc: sc 2/3 cm, dc 4/3 cm.
    const heights = (spec: BlanketSpec) => pieces(spec).border.rounds.map(({ height }) => height);
    [2 / 3, 4 / 3, 4 / 3].forEach((height, round) =>
      expect(heights(blanket())[round]).toBeCloseTo(height, 9),
    );
    expect(pieces(blanket()).border.width).toBeCloseTo(10 / 3, 9);
    // Without rows: a stitch 10/13 cm wide, sc as high, dc twice.
    const wide = blanket({ kinds: [{ ...halves, gauge: { stitches: 13, over: 10 }, side: 15 }] });
    [10 / 13, 20 / 13, 20 / 13].forEach((height, round) =>
      expect(heights(wide)[round]).toBeCloseTo(height, 9),
    );
    expect(pieces(wide).border.stitchWidth).toBeCloseTo(10 / 13, 9);
  });

  it('know whether a gauge, a weight or neither told of seams and border', () => {
    const told = (spec: BlanketSpec) => {
      const { gauged, borderWeighed, border } = pieces(spec);
      return [gauged, borderWeighed, border.rounds.some(({ weighed }) => weighed)];
    };
    expect(told(blanket())).toEqual([true, false, false]);
    expect(told(blanket({ kinds: [{ ...halves, weight: 14 }] }))).toEqual([true, true, true]);
    expect(told(blanket({ kinds: [loose] }))).toEqual([false, false, false]);
    expect(told(blanket({ kinds: [{ ...loose, weight: 14 }] }))).toEqual([true, true, true]);
    expect(told(blanket({ kinds: [{ ...halves, weight: 14 }], border: { rounds: [], corner: 3 } }))).toEqual([
      true,
      false,
      false,
    ]);
  });

  it('take a weighed stitch of the same yarn and hook, and no other', () => {
    const per = (spec: BlanketSpec) => pieces(spec).border.rounds.map(({ perStitch }) => perStitch);
    const weighed = (weight: number) => ({ kinds: [{ ...halves, weight }] });
    // Twice as heavy a motif has twice the yarn in every stitch of the border.
    const [light, heavy] = [per(blanket(weighed(14))), per(blanket(weighed(28)))];
    light.forEach((metres, round) => expect(heavy[round]! / metres).toBeCloseTo(2, 9));
    // A round of a yarn of another thickness is estimated.
    const thick = [
      { colour: 'moss', ball: BALL },
      { colour: 'plum', ball: { m: 40, g: 100 } },
    ];
    const mixed = pieces(blanket({ ...weighed(14), yarns: thick })).border.rounds.map(
      (round) => round.weighed,
    );
    expect(mixed).toEqual([true, false, false]);
  });

  it('estimate the border from the yarn of its colour, else of the first, else as it was weighed from', () => {
    const plum = (yarns: BlanketSpec['yarns'], motif: MotifSpec = loose) =>
      pieces(blanket({ kinds: [motif], yarns })).border.rounds[1]!.perStitch;
    const thick = { m: 40, g: 100 };
    const own = plum([
      { colour: 'moss', ball: BALL },
      { colour: 'plum', ball: thick },
    ]);
    expect(own).toBeGreaterThan(plum([{ colour: 'moss', ball: BALL }]));
    expect(plum([{ colour: 'moss', ball: thick }])).toBe(own);
    expect(plum([], { ...loose, ball: thick })).toBe(own);
    expect(plum([])).toBeLessThan(own);
  });

  it('name the kind whose side is off the first one’s most, by more than seams forgive', () => {
    const sides = (...more: number[]) =>
      pieces(
        blanket({
          kinds: [15, ...more].map((side, index) => ({ ...halves, name: `kind ${index}`, side })),
        }),
      );
    expect(sides(15, 18, 12).uneven).toMatchObject({ name: 'kind 2', side: 18 });
    expect(sides(15, 12).uneven).toMatchObject({ name: 'kind 2', side: 12 });
    expect(sides(15.1)).not.toHaveProperty('uneven');
    expect(sides(15)).toMatchObject({ side: 15, sideHow: 'measured' });
    expect(pieces(blanket())).toMatchObject({ sideHow: 'reckoned' });
  });
});
