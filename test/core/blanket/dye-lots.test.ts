import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { planDyeLots } from '../../../src/core/blanket/dye-lots.ts';
import type { ColourNeed } from '../../../src/core/blanket/materials.ts';
import { BY_HAND } from './by-hand.ts';

const need = (colour: string, parts: Partial<ColourNeed>): ColourNeed => ({
  colour,
  motifs: 0,
  tails: 0,
  carried: 0,
  seams: 0,
  border: 0,
  total: 0,
  high: 0,
  weighed: false,
  ...parts,
});
const ball = { m: 100, g: 50 };
const yarns = ['moss', 'sand', 'plum'].map((colour) => ({ colour, ball }));
const lots = (needs: readonly ColourNeed[], counts = [6, 6], known = yarns) =>
  planDyeLots({ motifs: BY_HAND.motifs, yarns: known, reserve: 10 }, counts, needs, new Working());

describe('dye lots', () => {
  it('lets what is in the border alone wait', () => {
    expect(lots([need('plum', { border: 120, total: 132, balls: 2 })])).toEqual([
      { colour: 'plum', is: 'border alone' },
    ]);
    expect(lots([need('plum', {})])).toEqual([]);
  });

  it('buys the border’s balls later where that is a ball less at first', () => {
    // 250 m in motifs and 100 m of border, each with a tenth: 275 m are 3 balls, 385 m are 4.
    expect(lots([need('moss', { motifs: 250, border: 100, total: 385, balls: 4 })])).toEqual([
      { colour: 'moss', is: 'border later', first: 3, later: 1 },
    ]);
    // 10 m of border are in the last ball anyway.
    expect(lots([need('moss', { motifs: 250, border: 10, total: 286, balls: 3 })])).toEqual([]);
    // Seams and what is carried are of the motifs' lot.
    for (const parts of [{ seams: 250 }, { carried: 250 }])
      expect(lots([need('moss', { ...parts, border: 100, total: 385, balls: 4 })])[0]!.is).toBe(
        'border later',
      );
  });

  it('keeps a second lot to the kind that has least of the colour', () => {
    // By hand: a dark square takes 4.3 m of sand, a light one 12.3 m.
    const sand = need('sand', { motifs: 100, total: 110, balls: 2 });
    expect(lots([sand])).toEqual([
      { colour: 'sand', is: 'one kind', kind: 'dark', metres: expect.closeTo(6 * 4.3, 9) },
    ]);
    expect(lots([sand], [20, 2])).toMatchObject([{ kind: 'light' }]);
    expect(lots([sand], [6, 0])).toEqual([]);
    expect(lots([{ ...sand, balls: 1 }])).toEqual([]);
  });

  it('says nothing where no ball is known', () => {
    expect(lots([need('sand', { motifs: 100, total: 110 })])).toEqual([]);
    expect(lots([need('plum', { border: 120, total: 132, balls: 2 })], [6, 6], [])).toEqual([]);
  });
});
