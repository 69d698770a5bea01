/** A group's yarn from what is known now: the plan as it was opened, what the organiser has weighed since, what was weighed at hand-in. */
import { describe, expect, it } from 'vitest';
import type { GroupEvent, Happening } from '../../../src/core/group/events.ts';
import { replay } from '../../../src/core/group/state.ts';
import { reckonGroupYarn } from '../../../src/core/group/yarn.ts';
import { groupPlan } from './plan.ts';

const BALLS = ['moss', 'sand', 'plum'].map((colour) => ({ colour, ball: { m: 170, g: 100 } }));
/** Two kinds of 12 rows and 12, nothing of them weighed. */
const plan = (yarns: { colour: string; ball?: { m: number; g: number } }[] = BALLS) => {
  const made = groupPlan({ quotas: [12, 6], columns: 3, yarns });
  return {
    ...made,
    kinds: made.kinds.map(({ weight: _, ...kind }) => ({
      ...kind,
      gauge: { stitches: 13, rows: 10, over: 10 },
    })),
  };
};
const state = (yarns = BALLS as Parameters<typeof plan>[0], ...more: Happening[]) => {
  const join = (maker: string): Happening => ({ did: 'joined', maker, name: maker, perWeek: 3, colours: [] });
  const events: Happening[] = [
    { did: 'opened', name: 'ines', plan: plan(yarns) },
    join('fern'),
    join('ash'),
    { did: 'pledged', maker: 'fern', kind: 0, motifs: 6 },
    { did: 'pledged', maker: 'ash', kind: 1, motifs: 4 },
    ...more,
  ];
  return replay(
    events.map((one, index): GroupEvent => ({
      ...one,
      by: 'maker' in one ? one.maker : 'ines',
      at: '2026-03-02T12:00:00.000Z',
      once: String(index),
    })),
  );
};
const handed = (motifs: number, weight: number): Happening => ({
  did: 'handed-in',
  maker: 'fern',
  kind: 0,
  motifs,
  weight,
});
const total = (needs: readonly { metres: number }[]) => needs.reduce((sum, { metres }) => sum + metres, 0);

describe('a group’s yarn', () => {
  it('asks each for her own colours alone, in the order of her motifs', () => {
    const { mine, makers, together_by_colour, sure, sureTogether } = reckonGroupYarn(state(), 'fern');
    expect(mine.map(({ colour }) => colour)).toEqual(['moss', 'sand']);
    expect(makers.map(({ name, needs }) => [name, needs.map(({ colour }) => colour)])).toEqual([
      ['fern', ['moss', 'sand']],
      ['ash', ['moss', 'plum']],
    ]);
    expect(together_by_colour.map(({ colour }) => colour)).toEqual(['moss', 'sand', 'plum']);
    expect(sure!.metres).toBeCloseTo(total(mine), 9);
    expect(sureTogether!.metres).toBeCloseTo(total(together_by_colour), 9);
    expect(sureTogether!.reserve).toBeLessThan(sure!.reserve);
    expect(reckonGroupYarn(state(), 'ines').sure).toBeUndefined();
  });

  it('has nothing to say of how sure it is where nothing is pledged', () => {
    const none = state(
      BALLS,
      { did: 'released', maker: 'fern', kind: 0, motifs: 6 },
      { did: 'released', maker: 'ash', kind: 1, motifs: 4 },
    );
    const yarn = reckonGroupYarn(none, 'fern');
    expect(yarn).toMatchObject({
      mine: [],
      makers: [],
      together_by_colour: [],
      metres: 0,
      each: 0,
      together: 0,
    });
    expect(yarn.sure ?? yarn.sureTogether).toBeUndefined();
  });

  it('takes what the organiser weighs after opening, of the motif that she still works in the same way', () => {
    const [kind] = plan().kinds;
    const rough = reckonGroupYarn(state(), 'ash');
    const now = { ...kind!, weight: 40, weighings: [{ weight: 200, motifs: 5, step: 1 }] };
    const known = reckonGroupYarn(state(), 'fern', [now]);
    expect(known.weighed).toMatchObject({ motifs: 5, makers: 1 });
    expect(total(known.mine)).toBeGreaterThan(1.5 * total(reckonGroupYarn(state(), 'fern').mine));
    for (const other of [
      { ...now, name: 'other' },
      { ...now, size: 11 },
      { ...now, shape: 'blocks' as const },
      { ...now, stitch: 'dc' as const },
      { ...now, otherSize: 12 },
      kind!,
    ])
      expect(total(reckonGroupYarn(state(), 'ash', [other]).mine)).toBeCloseTo(total(rough.mine), 9);
  });

  it('takes the ball that she said at the scale for a colour of which none was known', () => {
    const [kind] = plan().kinds;
    const none = [{ colour: 'moss' }, { colour: 'sand' }, { colour: 'plum' }];
    expect(reckonGroupYarn(state(none), 'fern').mine[0]!.balls).toBeUndefined();
    const now = {
      ...kind!,
      weight: 20,
      weighings: [{ weight: 20, motifs: 1, step: 1 }],
      ball: { m: 85, g: 50 },
    };
    const known = reckonGroupYarn(state(none), 'fern', [now]);
    expect(known.mine.map(({ metres }) => Math.ceil(metres / 85))).toEqual(
      known.mine.map(({ balls }) => balls),
    );
    // Plum is in no kind of hers, nor in one that she weighed.
    expect(known.each).toBeUndefined();
  });

  it('learns of a maker from what she weighed, in grams alone where no ball ties them to metres', () => {
    const rough = reckonGroupYarn(state(), 'fern');
    const each = total(rough.mine);
    const light = reckonGroupYarn(state(BALLS, handed(3, 36)), 'fern');
    const heavy = reckonGroupYarn(state(BALLS, handed(3, 90)), 'fern');
    expect(total(light.mine)).toBeLessThan(each / 2);
    expect(total(heavy.mine)).toBeGreaterThan(1.3 * total(light.mine));
    expect(heavy.sure!.band).toBeLessThan(rough.sure!.band / 2);
    // Ash has weighed nothing: a part of it is thought of her as well.
    expect(total(reckonGroupYarn(state(BALLS, handed(3, 90)), 'ash').mine)).toBeGreaterThan(
      total(reckonGroupYarn(state(BALLS, handed(3, 36)), 'ash').mine),
    );
    const none = [{ colour: 'moss' }, { colour: 'sand' }, { colour: 'plum' }];
    const [one, other] = [36, 90].map((weight) => reckonGroupYarn(state(none, handed(3, weight)), 'fern'));
    // But for the step of the scale, which is more of a light one.
    expect(total(one!.mine) / total(other!.mine)).toBeCloseTo(1, 2);
    // The estimate of its metres stays as open as it was: 15 %.
    expect(one!.sure!.band).toBeGreaterThan(15);
    expect(one!.sure!.band).toBeLessThan(rough.sure!.band);
  });

  it('compares with a flat reserve on the same', () => {
    const { sure, sureTogether, metres } = reckonGroupYarn(state(), 'fern');
    expect(sure!.flat).toBeCloseTo((sure!.metres / (1 + sure!.reserve / 100)) * 1.1, 9);
    expect(sureTogether!.flat).toBeCloseTo((metres / (1 + sureTogether!.reserve / 100)) * 1.1, 9);
  });

  it('tells the steps of the asker’s own list and of all together, not of everybody’s', () => {
    const labels = reckonGroupYarn(state(), 'fern').working.steps.map(({ label }) => label);
    expect(labels.some((label) => label.startsWith('fern, moss:'))).toBe(true);
    expect(labels.some((label) => label.startsWith('All together, plum:'))).toBe(true);
    expect(labels.some((label) => label.startsWith('ash'))).toBe(false);
  });
});
