import { describe, expect, it } from 'vitest';
import { edgesOf, countPledged, totalKinds, pledgedOf, totalsOf } from '../../../src/core/group/totals.ts';
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

  it('is as wide as its motifs side by side', () => {
    expect(edgesOf({ columns: 3, rows: 4, side: 15 })).toEqual({ width: 45, height: 60 });
  });
});
