/** A group's yarn from what is known now: the plan as it was opened, what the organiser has weighed since, what was weighed at hand-in. */
import { describe, expect, it } from 'vitest';
import type { GroupEvent, Happening } from '../../../src/core/group/events.ts';
import { Working } from '../../../src/core/base/working.ts';
import { reckonMotifYarn } from '../../../src/core/yarn/motif-yarn.ts';
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

  it('buys what is expected and 1.645 standard deviations of what hands, motifs and the reckoning leave open', () => {
    const { kinds, yarns } = plan();
    const inOne = kinds.map((kind) => {
      const { colours } = reckonMotifYarn(kind, yarns, new Working());
      return colours.map(({ worked, tails, carried }) => worked + tails + carried);
    });
    const [[moss = 0, sand = 0] = [], [other = 0, plum = 0] = []] = inOne;
    /** Hands differ by 12 %, one hand's motifs by 4; a gauge leaves 15 % open either way, half of which is a standard deviation. */
    const open = (...lists: readonly (readonly [motifs: number, metres: number])[]) =>
      Math.sqrt(
        total(lists.map(([motifs, metres]) => ({ metres: (0.12 * motifs * metres) ** 2 }))) +
          (0.075 * total(lists.map(([motifs, metres]) => ({ metres: motifs * metres })))) ** 2 +
          total(lists.map(([motifs, metres]) => ({ metres: motifs * (0.04 * metres) ** 2 }))),
      );
    const z = 1.6448536269514722;
    const { mine, together_by_colour, sure, sureTogether, each, together, metres } = reckonGroupYarn(
      state(),
      'fern',
    );
    const hers = [6 * moss + z * open([6, moss]), 6 * sand + z * open([6, sand])];
    expect(mine.map((one) => one.metres)).toEqual(hers.map((one) => expect.closeTo(one, 6) as number));
    const all = [
      6 * moss + 4 * other + z * open([6, moss], [4, other]),
      6 * sand + z * open([6, sand]),
      4 * plum + z * open([4, plum]),
    ];
    expect(together_by_colour.map((one) => one.metres)).toEqual(
      all.map((one) => expect.closeTo(one, 6) as number),
    );
    expect(metres).toBeCloseTo(all[0]! + all[1]! + all[2]!, 6);
    // Balls of 170 m: each her own, and all together.
    const ash = [4 * other + z * open([4, other]), 4 * plum + z * open([4, plum])];
    const balls = (lists: readonly number[]) => total(lists.map((one) => ({ metres: Math.ceil(one / 170) })));
    expect([each, together]).toEqual([balls([...hers, ...ash]), balls(all)]);
    expect(mine.map((one) => one.balls)).toEqual(hers.map((one) => Math.ceil(one / 170)));
    // All colours of one hand at once.
    const expected = 6 * (moss + sand);
    expect(sure!.flat).toBeCloseTo(1.1 * expected, 6);
    expect(sure!.reserve).toBeCloseTo(100 * ((hers[0]! + hers[1]!) / expected - 1), 6);
    expect(sure!.band).toBeCloseTo((100 * 2 * open([6, moss + sand])) / expected, 6);
    expect(sureTogether!.band).toBeCloseTo(
      (200 * open([6, moss + sand], [4, other + plum])) / (expected + 4 * (other + plum)),
      6,
    );
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

  it('expects of who weighs what was reckoned just that, and leaves the reckoning open by hands where one maker’s weighing is all', () => {
    const { kinds, yarns } = plan();
    const { colours } = reckonMotifYarn(kinds[0]!, yarns, new Working());
    const each = colours.reduce((sum, { worked, tails, carried }) => sum + worked + tails + carried, 0);
    // 1.7 m to the gram; three of her six are handed in.
    const as = reckonGroupYarn(state(BALLS, handed(3, (3 * each) / 1.7)), 'fern');
    expect(as.sure!.flat).toBeCloseTo(1.1 * 3 * each, 6);
    const open = (known: ReturnType<typeof reckonGroupYarn>) =>
      known.working.steps.filter(({ label }) => label.startsWith('What the reckoning leaves open'));
    expect(open(as).map(({ result }) => result)).toEqual([expect.closeTo(7.5, 9) as number]);
    // The organiser weighed a furrow, and the trellis is reckoned as it.
    const now = { ...kinds[0]!, weight: 30, weighings: [{ weight: 30, motifs: 1, step: 1 }] };
    expect(open(reckonGroupYarn(state(), 'fern', [now])).map(({ result }) => result)).toEqual([
      expect.closeTo(25, 9) as number,
    ]);
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
    expect(labels).toContain('fern, moss: what is left open of the yarn, as a standard deviation');
    const trusted = (asker: string) =>
      reckonGroupYarn(state(BALLS, handed(3, 60)), asker).working.steps.filter(
        ({ label }) => label === 'How far her own weighings are trusted',
      ).length;
    expect([trusted('fern'), trusted('ash')]).toEqual([1, 0]);
  });
});
