import { describe, expect, it } from 'vitest';
import { edgesOf, countPledged, totalKinds, pledgedOf, totalsOf } from '../../../src/core/group/totals.ts';
import { defined } from '../../../src/core/base/defined.ts';
import { Working } from '../../../src/core/base/working.ts';
import { piecesOf } from '../../../src/core/blanket/pieces.ts';
import { groupPlan } from './plan.ts';
import type { GroupState } from '../../../src/core/group/state.ts';

// An invented blanket: 6 and 4 motifs of two kinds, one spare each.
const state = {
  plan: {
    kinds: [
      { name: 'furrow', quota: 6, spares: 1 },
      { name: 'trellis', quota: 4, spares: 1 },
    ],
  },
  tally: [{ pledged: 2, handedIn: 1, accepted: 3 }],
  pledges: new Map([['rowan', [2, 1]]]),
} as unknown as GroupState;

describe('what a group blanket has and wants', () => {
  it('counts every motif once: open, pledged, waiting or accepted', () => {
    const kinds = totalKinds(state);
    expect(kinds).toEqual([
      { name: 'furrow', quota: 6, spares: 1, wanted: 7, pledged: 2, handedIn: 1, accepted: 3, open: 1 },
      { name: 'trellis', quota: 4, spares: 1, wanted: 5, pledged: 0, handedIn: 0, accepted: 0, open: 5 },
    ]);
    for (const { wanted, pledged, handedIn, accepted, open } of [...kinds, totalsOf(state)])
      expect(open + pledged + handedIn + accepted).toBe(wanted);
    expect(totalsOf(state)).toMatchObject({ quota: 10, spares: 2, wanted: 12, accepted: 3, open: 6 });
  });

  it('knows what a maker holds, nothing for a stranger', () => {
    expect([pledgedOf(state, 'rowan', 0), pledgedOf(state, 'rowan', 7), pledgedOf(state, 'ash', 0)]).toEqual([
      2, 0, 0,
    ]);
    expect([countPledged(state, 'rowan'), countPledged(state, 'ash')]).toEqual([3, 0]);
  });

  it('is as wide as its motifs side by side, and its border on both sides', () => {
    const plan = { ...groupPlan(), columns: 3, rows: 4, side: 15 };
    const bare = { ...plan, border: { rounds: [], corner: 3 } };
    expect(edgesOf(bare)).toEqual({ width: 45, height: 60 });
    // Rows of hdc 1 cm high: a round of sc is two thirds of that, of dc four thirds (published proportions 1 : 1.5 : 2).
    const kinds = plan.kinds.map((kind) => ({
      ...kind,
      stitch: 'hdc' as const,
      gauge: { stitches: 13, rows: 10, over: 10 },
    }));
    const rounds = [{ stitch: 'sc' as const }, { stitch: 'dc' as const }];
    const edged = edgesOf({ ...plan, kinds, border: { rounds, corner: 3 } });
    expect(edged.width).toBeCloseTo(45 + 4, 9);
    expect(edged.height).toBeCloseTo(60 + 4, 9);
    // It is the border of the pieces, with a gauge or without.
    for (const gauge of [{ stitches: 13, rows: 10, over: 10 }, undefined]) {
      const blanket = {
        ...plan,
        kinds: kinds.map((kind) => defined({ ...kind, gauge, side: 15 })),
        border: { rounds, corner: 3 },
      };
      expect(edgesOf(blanket as typeof plan).width).toBeCloseTo(
        45 + 2 * piecesOf(blanket, new Working()).border.width,
        9,
      );
    }
  });
});
