/** How a group blanket comes along and how it is shared out, counted day by day in invented histories. */
import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { forecastEnd } from '../../../src/core/group/forecast.ts';
import { findDayAfter, reckonGroupPace, QUIET_DAYS } from '../../../src/core/group/pace.ts';
import { countDaysUntil, proposeShares } from '../../../src/core/group/proposal.ts';
import { refused } from '../../refused.ts';
import { accepted, at, day, handedIn, history, joined, pledged, type Did } from './history.ts';
import { groupPlan } from './plan.ts';

const MAKERS = [joined('m1', 'Rowan', 0, 2), joined('m2', 'Ash', 0, 1)];
/** Ten furrows and five trellises. Rowan: two in the morning of day 3, one in its evening, one on day 12; Ash: two on day 10. */
const SEASON: Did[] = [
  ...MAKERS,
  pledged('m1', 0, 5),
  pledged('m2', 1, 3),
  handedIn('m1', 0, 2, 3),
  handedIn('m1', 0, 1, 3.4),
  handedIn('m2', 1, 2, 10),
  handedIn('m1', 0, 1, 12),
  accepted(1, 2),
];
const plan = (closes?: string) => groupPlan({ quotas: [10, 5], ...(closes === undefined ? {} : { closes }) });

describe('the pace of a group', () => {
  const pace = reckonGroupPace(history(SEASON, plan('2026-04-30')), day(26));

  it('counts what is in, what waits and what is to come', () => {
    expect(pace).toMatchObject({ done: 6, waiting: 4, toCome: 9, motifs: 15 });
    expect(pace.days).toBeCloseTo(26, 9);
    // From noon of 28 March to the end of 30 April: 33 days and a half.
    expect(pace.daysLeft).toBeCloseTo(33.5, 6);
    expect(reckonGroupPace(history(SEASON, plan()), day(26)).daysLeft).toBeUndefined();
  });

  it('takes for one parcel what one maker handed in on one day', () => {
    expect(pace.arrivals.map(({ day: when, motifs }) => [when, motifs])).toEqual([
      [3, 3],
      [10, 2],
      [12, 1],
    ]);
  });

  it('forecasts from parcels, from how long each maker has been at it, and from what was said', () => {
    // Rowan began on day 3 and Ash on day 10, by their first parcels; Rowan's of day 12 alone is counted. Rowan says two a week.
    const asked = {
      done: 6,
      came: 3,
      squares: 9 + 4 + 1,
      days: 26,
      counted: 1,
      saidDays: 2 * 23 + 16,
      // Days 3 to 10, to 17, to 24: Rowan's alone, then both.
      weeks: [
        { motifs: 0, saidDays: 14 },
        { motifs: 1, saidDays: 21 },
        { motifs: 0, saidDays: 21 },
      ],
      toCome: 9,
      daysLeft: countDaysUntil('2026-04-30', day(26)),
      said: 3,
    };
    const found = pace.forecast;
    const wanted = forecastEnd(asked, new Working());
    expect(found.ends?.late).toBeCloseTo(wanted.ends!.late, 6);
    expect(found).toMatchObject({ rate: wanted.rate, parcels: wanted.parcels });
    expect(found.chance).toBeCloseTo(wanted.chance!, 6);
  });

  it('is no later because most have only just begun', () => {
    // Twelve say one a week. One has brought one a week for three weeks; the others joined a week ago, or began with her.
    const others = Array.from({ length: 11 }, (_, index) => `o${index}`);
    const hers = [
      joined('m1', 'Rowan'),
      pledged('m1', 0, 20),
      ...[0, 7, 14, 21].map((on) => handedIn('m1', 0, 1, on + 1)),
    ];
    const late = history(
      [...hers, ...others.map((maker) => joined(maker, maker, 15))],
      groupPlan({ quotas: [40, 5] }),
    );
    const silent = history(
      [...hers, ...others.map((maker) => joined(maker, maker))],
      groupPlan({ quotas: [40, 5] }),
    );
    const of = (state: typeof late, days: number) => reckonGroupPace(state, day(days)).forecast.ends!;
    // Of the new ones nothing is known but what they said: the group will be about twelve times as quick as she alone.
    expect(of(late, 22).middle).toBeLessThan((41 * 7) / 6);
    // After two weeks without a word it begins to count; after eight the group is as slow as it has been.
    expect(of(silent, 22).middle).toBeGreaterThan(of(late, 22).middle);
    expect(of(silent, 70).middle).toBeGreaterThan(4 * of(late, 22).middle);
  });

  it('counts nothing that was sent back or taken back, nor more than the quota', () => {
    const back: Did[] = [
      ...SEASON,
      ['m0', 13, { did: 'returned', pieces: [4], reason: 'small' }],
      ['m0', 14, { did: 'undone', event: 8 }],
    ];
    const after = reckonGroupPace(history(back, plan()), day(26));
    expect(after).toMatchObject({ done: 4, waiting: 2, toCome: 11, motifs: 15 });
    expect(after.arrivals.map(({ motifs }) => motifs)).toEqual([3, 1]);
    const spares = history(
      [joined('m1', 'Rowan'), pledged('m1', 0, 5), handedIn('m1', 0, 5)],
      groupPlan({ quotas: [4, 2], spares: 1 }),
    );
    expect(reckonGroupPace(spares, day(5))).toMatchObject({ done: 5, toCome: 2, motifs: 7 });
  });

  it('says nothing of weeks or ends before anything came', () => {
    const empty = reckonGroupPace(history([], plan()), day(4));
    expect(empty).toMatchObject({ done: 0, waiting: 0, toCome: 15, arrivals: [], quiet: [] });
    expect(empty.forecast.ends).toBeUndefined();
  });

  it('calls quiet who holds pledges and has said nothing for fourteen days', () => {
    const quiet = (days: number, ...more: Did[]) =>
      reckonGroupPace(history([...MAKERS, pledged('m1', 0, 2, 1), ...more], plan()), day(days)).quiet;
    expect(QUIET_DAYS).toBe(14);
    expect(quiet(14.9)).toEqual([]);
    expect(quiet(15)).toEqual([{ maker: 'm1', name: 'Rowan', since: at(1), held: 2 }]);
    // Given something on day 10 by another, she has until day 24.
    const given: Did = ['m0', 10, { did: 'pledged', maker: 'm2', kind: 1, motifs: 1 }];
    expect(quiet(23.9, given).map(({ name }) => name)).toEqual(['Rowan']);
    expect(quiet(24, given).map(({ name, since }) => [name, since])).toEqual([
      ['Rowan', at(1)],
      ['Ash', at(0)],
    ]);
    // Heard of on day 5, whatever she was given on day 1.
    expect(quiet(18.9, ['m1', 5, { did: 'kept', maker: 'm1' }])).toEqual([]);
    expect(quiet(19, ['m1', 5, { did: 'kept', maker: 'm1' }])).toHaveLength(1);
    expect(quiet(30, handedIn('m1', 0, 2, 2))).toEqual([]);
  });
});

describe('days', () => {
  it('are told up to ten years', () => {
    expect([0, 0.5, 1.49, 29].map((days) => findDayAfter(day(0), days))).toEqual([
      '2026-03-02',
      '2026-03-03',
      '2026-03-03',
      '2026-03-31',
    ]);
    expect([findDayAfter(day(0), 3650), findDayAfter(day(0), 3651), findDayAfter(day(0), undefined)]).toEqual(
      ['2036-02-28', undefined, undefined],
    );
  });
  it('last to their end', () => {
    expect(countDaysUntil('2026-03-02', day(0))).toBeCloseTo(0.5, 6);
    expect(countDaysUntil('2026-03-01', day(0))).toBeCloseTo(-0.5, 6);
  });
});

describe('shares', () => {
  const propose = (happened: readonly Did[], closes?: string, withSpares = false, spares = 0, now = day(0)) =>
    proposeShares(
      history(happened, groupPlan({ quotas: [4, 2], spares, ...(closes === undefined ? {} : { closes }) })),
      now,
      withSpares,
      new Working(),
    );

  it('go by what each can make by the closing day, or in four weeks', () => {
    const usual = propose(MAKERS);
    expect(usual).toMatchObject({ usualDays: 28, unplaced: [0, 0] });
    // Two to one: four of six motifs, and two.
    expect(usual.shares.map(({ name, capacity, held }) => [name, capacity, held])).toEqual([
      ['Rowan', 8, 0],
      ['Ash', 4, 0],
    ]);
    expect(usual.shares.map(({ motifs }) => motifs.reduce((sum, one) => sum + one, 0))).toEqual([4, 2]);
    // From noon of 2 March to the end of 9 March: seven and a half days, two motifs of Rowan's and one of Ash's.
    const week = propose(MAKERS, '2026-03-09');
    expect(week).not.toHaveProperty('usualDays');
    expect(week.shares[0]!.capacity).toBeCloseTo((2 * 7.5) / 7, 6);
    expect(week.shares.map(({ motifs }) => motifs.reduce((sum, one) => sum + one, 0))).toEqual([2, 1]);
    expect(week.unplaced.reduce((sum, one) => sum + one, 0)).toBe(3);
  });

  it('count in what she holds, and leave out kinds whose colours she has not', () => {
    // Furrows are moss and sand, trellises moss and plum.
    const colours = [
      joined('m1', 'Rowan', 0, 2, ['Moss', 'Sand']),
      joined('m2', 'Ash', 0, 2, ['moss', 'plum']),
    ];
    expect(propose(colours).shares.map(({ motifs }) => motifs)).toEqual([
      [4, 0],
      [0, 2],
    ]);
    expect(propose([joined('m1', 'Rowan', 0, 2, ['moss'])]).unplaced).toEqual([4, 2]);
    const holding = propose([...MAKERS, pledged('m1', 0, 3), pledged('m1', 1, 1)]);
    expect(holding.shares.map(({ held }) => held)).toEqual([4, 0]);
    // One furrow and one trellis are left: Ash, who holds nothing, is burdened less by both.
    expect(holding.shares.map(({ motifs }) => motifs)).toEqual([
      [0, 0],
      [1, 1],
    ]);
  });

  it('are of the quota, or of the spares too', () => {
    const given = (withSpares: boolean, ...more: Did[]) =>
      propose([...MAKERS, ...more], undefined, withSpares, 1)
        .shares.flatMap(({ motifs }) => motifs)
        .reduce((sum, one) => sum + one, 0);
    expect([given(false), given(true)]).toEqual([6, 8]);
    // Where a spare is pledged already nothing of that kind is open, and less than nothing is nothing.
    expect(given(false, pledged('m1', 0, 5))).toBe(2);
  });

  it('bear a mark that differs where they do', () => {
    const mark = (...more: Did[]) => propose([...MAKERS, ...more]).mark;
    expect(mark()).toBe(mark());
    expect(mark()).not.toBe(mark(pledged('m1', 0, 1)));
    // The shares as text, its letters as digits to the base 31 after a 7, by whole-number arithmetic.
    const { shares } = propose(MAKERS);
    const text = shares.map(({ maker, motifs }) => `${maker} ${motifs.join(' ')}`).join('/');
    const value = [...text].reduce((all, one) => all * 31n + BigInt(one.codePointAt(0)!), 7n);
    expect(mark()).toBe(Number(value % 999_999_937n));
  });

  it('need somebody, and a day to come', () => {
    expect(() => propose([])).toThrow(refused('nobody-joined'));
    expect(() => propose(MAKERS, '2026-03-01')).toThrow(
      refused('closing-day-passed', { facts: { closes: '2026-03-01' } }),
    );
    expect(propose(MAKERS, '2026-03-02').shares).toHaveLength(2);
  });
});
