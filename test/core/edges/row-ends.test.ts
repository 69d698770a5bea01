/** Border stitches from a motif's own rows, by published rates. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { countAlongRows } from '../../../src/core/edges/row-ends.ts';
import { planRows, SHAPES } from '../../../src/core/rows/index.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';
import { asking } from '../../asking.ts';

const ends = (...asked: Parameters<typeof planRows>) => countAlongRows(planRows(...asked), new Working());

describe('along row ends', () => {
  // carol-mycrochetpage.blogspot.com, "Picot edging", 2009: 1 sc per sc row, 2 per dc row, 3 per tr row; crochetcabana.com,
  // "Borders": 2 per dc row end.
  it.each([
    ['sc', 1],
    ['dc', 2],
    ['tr', 3],
  ] as const)('rows of %s take %i each', (stitch, rate) => {
    expect(ends('flat', { size: 20, otherSize: 16, stitch })).toMatchObject({
      across: 20,
      down: 16 * rate,
      rate,
    });
    expect(ends('diagonal', { size: 12, stitch })).toMatchObject({ across: 12 * rate, down: 12 * rate });
  });

  // From memory (no source found): three for two rows of hdc.
  it('two rows of hdc take three', () => {
    expect(ends('diagonal', { size: 12, stitch: 'hdc' }).across).toBe(18);
  });

  it('of two counts as near, an odd number of hdc rows takes the larger', () => {
    // Half of three for each of 13 rows lies between 19 and 20.
    expect(ends('diagonal', { size: 13, stitch: 'hdc' }).across).toBe(20);
    expect(ends('flat', { size: 5, otherSize: 3, stitch: 'hdc' })).toMatchObject({ across: 5, down: 5 });
  });

  it('only the diagonal square runs slantwise over its row ends', () => {
    const slanting = SHAPES.filter((shape) => shape !== 'circle' && shape !== 'hexagon').filter(
      (shape) => ends(shape, { size: 6 }).slanting,
    );
    expect(slanting).toEqual(['diagonal']);
  });

  it('reckons the other side of a rectangle, and no side of a square twice', () => {
    const steps = (size: number, otherSize: number) => {
      const working = new Working();
      countAlongRows(planRows('blocks', { size, otherSize }), working);
      return working.steps.map(({ result }) => result);
    };
    expect([steps(7, 7), steps(7, 9)]).toEqual([[14], [14, 18]]);
  });

  it('all edges of the diagonal square have all its row ends: two to every row', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (size) => {
        const plan = planRows('diagonal', { size, stitch: 'sc' });
        const { across, down } = countAlongRows(plan, new Working());
        expect(2 * across + 2 * down).toBe(2 * plan.rows.length);
      }),
    );
  });

  it('rectangles of blocks keep their sides, squares in rounds share their last round', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 }), (size, otherSize) => {
        expect(ends('blocks', { size, otherSize })).toMatchObject({ across: 2 * size, down: 2 * otherSize });
      }),
    );
    for (const stitch of STITCHES) {
      const plan = planRows('solid-square', { size: 6, stitch });
      expect(4 * countAlongRows(plan, new Working()).across).toBe(plan.rows.at(-1)!.count);
    }
  });
});

describe('/border spacing', () => {
  const room = asking();
  const edge = 'width:120cm height:160cm gauge:14 columns:8 rows:11';
  it('says what the edges of a motif take from its rows, saved or not, beside the count by length', async () => {
    const answer = await room.ask(`/border spacing ${edge} shape:diagonal size:12`);
    expect(answer.figures).toMatchObject({ across: { value: 168 }, motif_edge: { value: 18 } });
    expect(answer.lines!.join(' ')).toContain(
      'by length it is 21 along the width and 20 or 21 along the height',
    );
    await room.ask('/motif define name:moss shape:diagonal size:12');
    expect(await room.figure(`/border spacing ${edge} motif:moss`, 'motif_edge')).toBe(18);
  });
  it.each([
    ['shape:circle size:4', 'shape', 'no-straight-sides'],
    ['shape:diagonal', 'size', 'size-missing'],
    ['shape:diagonal size:12 motif:moss', 'shape', 'motif-given-twice'],
  ])('refuses %s', async (typed, option, code) => {
    expect(await room.ask(`/border spacing ${edge} ${typed}`)).toMatchObject({ ok: false, option, code });
  });
});
