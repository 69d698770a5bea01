/** Random histories: whatever is pressed in whatever order, no motif is spoken for twice and the sums agree. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { strangerId } from '../../../src/core/base/history.ts';
import type { GroupEvent, Happening } from '../../../src/core/group/events.ts';
import { proposeShares } from '../../../src/core/group/proposal.ts';
import {
  accept,
  answerOffer,
  bar,
  close,
  giveShares,
  handIn,
  invite,
  join,
  keep,
  leave,
  mayOrganise,
  offerAgain,
  offerOver,
  pledge,
  readmit,
  giveBack,
  remind,
  reopen,
  sendBack,
  undo,
  type Asker,
} from '../../../src/core/group/rules.ts';
import { BrokenHistory } from '../../../src/core/base/history.ts';
import { goOn, openFor, replay, countSpokenFor, type GroupState } from '../../../src/core/group/state.ts';
import { Problem } from '../../../src/core/base/problem.ts';
import { Working } from '../../../src/core/base/working.ts';
import { groupPlan } from './plan.ts';

const START = Date.parse('2026-03-02T12:00:00.000Z');
const DAY = 86_400_000;

type Rule = (state: GroupState, asker: Asker, now: Date) => Happening[];
interface Press {
  readonly who: number;
  /** Days that go by before it. */
  readonly after: number;
  readonly manager: boolean;
  readonly rule: Rule;
}

const kind = fc.integer({ min: 0, max: 1 });
const motifs = fc.integer({ min: 1, max: 3 });
const other = fc.integer({ min: 0, max: 3 }).map((who) => `m${who}`);
const piece = fc.integer({ min: 1, max: 8 });
const rules: fc.Arbitrary<Rule> = fc.oneof(
  {
    weight: 3,
    arbitrary: motifs.map(
      (perWeek): Rule =>
        (state, asker) =>
          join(state, asker, { perWeek, colours: perWeek === 1 ? ['Moss', 'sand'] : [] }),
    ),
  },
  { weight: 1, arbitrary: fc.constant<Rule>(leave) },
  {
    weight: 6,
    arbitrary: fc.tuple(kind, motifs).map(
      ([one, some]): Rule =>
        (state, asker) =>
          pledge(state, asker, one, some),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(kind, motifs).map(
      ([one, some]): Rule =>
        (state, asker) =>
          giveBack(state, asker.id, one, some),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(kind, motifs).map(
      ([one, some]): Rule =>
        (state, asker) =>
          handIn(state, asker, one, some, { side: 15, weight: 12 * some }),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.array(piece, { minLength: 1, maxLength: 3 }).map(
      (pieces): Rule =>
        (state, asker) =>
          accept(state, asker, pieces),
    ),
  },
  {
    weight: 2,
    arbitrary: piece.map(
      (one): Rule =>
        (state, asker) =>
          sendBack(state, asker, [one], 'a corner is missing'),
    ),
  },
  {
    weight: 2,
    arbitrary: fc.boolean().map(
      (spares): Rule =>
        (state, asker, now) =>
          giveShares(state, asker, proposeShares(state, now, spares, new Working()).shares),
    ),
  },
  {
    weight: 2,
    arbitrary: other.map(
      (maker): Rule =>
        (state, asker) =>
          remind(state, asker, maker),
    ),
  },
  {
    weight: 2,
    arbitrary: other.map(
      (maker): Rule =>
        (state, asker, now) =>
          offerAgain(state, asker, maker, now),
    ),
  },
  { weight: 1, arbitrary: fc.constant<Rule>(keep) },
  { weight: 1, arbitrary: fc.constant<Rule>(close) },
  { weight: 2, arbitrary: fc.constant<Rule>((state, asker) => reopen(state, asker, undefined)) },
  {
    weight: 2,
    arbitrary: other.map(
      (maker): Rule =>
        (state, asker) =>
          offerOver(state, asker, { maker, name: maker }),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.boolean().map(
      (yes): Rule =>
        (state, asker) =>
          // Whoever is asked, or where nobody is, whoever presses.
          answerOffer(state, { ...asker, id: state.offeredTo?.maker ?? asker.id }, yes),
    ),
  },
  {
    weight: 1,
    arbitrary: other.map(
      (maker): Rule =>
        (state, asker) =>
          bar(state, asker, { maker, name: maker }, 'pledges and never makes'),
    ),
  },
  {
    weight: 3,
    arbitrary: other.map((maker): Rule => (state, asker) => {
      // Mostly somebody who is kept out.
      const [out = maker] = state.barred.keys();
      return readmit(state, asker, { maker: out, name: out });
    }),
  },
  {
    weight: 1,
    arbitrary: other.map(
      (maker): Rule =>
        (state, asker) =>
          invite(state, asker, { maker, name: maker }),
    ),
  },
  { weight: 3, arbitrary: fc.constant<Rule>(undo) },
  // Not a rule of the house: any event at all taken back, as a hand in the file might.
  {
    weight: 1,
    arbitrary: fc.integer({ min: 1, max: 20 }).map(
      (event): Rule =>
        (state) =>
          state.standing.some((one) => one.event === event) ? [{ did: 'undone', event }] : [],
    ),
  },
);
const presses: fc.Arbitrary<Press[]> = fc.array(
  fc.record({
    who: fc.integer({ min: 0, max: 3 }),
    after: fc.constantFrom(0, 0, 1, 8),
    manager: fc.boolean(),
    rule: rules,
  }),
  { minLength: 5, maxLength: 60 },
);

function sumsAgree(state: GroupState): void {
  state.plan.kinds.forEach(({ quota, spares }, one) => {
    const pieces = state.pieces.filter((made) => made.kind === one);
    const held = [...state.pledges.values()].reduce((sum, pledges) => sum + pledges[one]!, 0);
    const handedIn = pieces.filter((made) => made.state === 'handed-in').length;
    const accepted = pieces.filter((made) => made.state === 'accepted').length;
    expect(state.tally[one]).toEqual({ pledged: held, handedIn, accepted });
    expect(countSpokenFor(state, one)).toBeLessThanOrEqual(quota + spares);
    expect(openFor(state, one)).toBe(quota + spares - held - handedIn - accepted);
  });
  for (const [maker, pledges] of state.pledges) {
    expect(pledges.every((held) => held >= 0)).toBe(true);
    if (!state.members.has(maker)) expect(pledges.every((held) => held === 0)).toBe(true);
    // Nobody who is kept out takes part, so nothing is pledged by her.
    if (state.barred.has(maker)) expect(state.members.has(maker)).toBe(false);
  }
  expect(state.pieces.map((made) => made.piece)).toEqual(state.pieces.map((_, index) => index + 1));
}

describe('a group blanket', () => {
  it('never promises more than quota and spares, and its sums agree, whatever happens', () => {
    const did = new Set<string>();
    fc.assert(
      fc.property(
        presses,
        fc.integer({ min: 0, max: 1 }),
        fc.constantFrom('anyone' as const, 'named' as const),
        (pressed, spares, joinable) => {
          const plan = groupPlan({ quotas: [4, 2], spares, joinable });
          let now = START;
          let events: GroupEvent[] = [
            {
              did: 'opened',
              name: 'Ines',
              plan,
              by: 'm0',
              at: new Date(now).toISOString(),
              once: 'open',
            },
          ];
          let state = replay(events);
          for (const [press, { who, after, manager, rule }] of pressed.entries()) {
            now += after * DAY;
            const stamp = { by: `m${who}`, at: new Date(now).toISOString(), once: `press ${press}` };
            try {
              const happened = rule(
                state,
                { id: `m${who}`, name: `Maker ${who}`, manager, managed: true },
                new Date(now),
              );
              for (const one of happened) did.add(one.did);
              const next = [...events, ...happened.map((one) => ({ ...one, ...stamp }))];
              state = happened.some((one) => one.did === 'undone')
                ? replay(next)
                : goOn(state, events.length, next.slice(events.length), new Set());
              events = next;
            } catch (error) {
              // Refused in words, or an undo that something later stands on: the state is as it was.
              if (!(error instanceof Problem) && !(error instanceof BrokenHistory)) throw error;
              if (error instanceof Problem) expect(error.hint).not.toBe('');
            }
            sumsAgree(state);
          }
          expect(replay(structuredClone(events))).toEqual(state);
        },
      ),
      { numRuns: 250, seed: 4 },
    );
    // The histories are worth something only where everything happens in them.
    expect([...did].sort()).toEqual([
      'accepted',
      'barred',
      'closed',
      'declined',
      'handed-in',
      'handed-over',
      'invited',
      'joined',
      'kept',
      'left',
      'offered-over',
      'pledged',
      'readmitted',
      'released',
      'reminded',
      'reopened',
      'returned',
      'undone',
    ]);
  });

  it('is as it was after a press and its undoing', () => {
    fc.assert(
      fc.property(presses, rules, (pressed, last) => {
        const asker = { id: 'm0', name: 'Maker 0', manager: true, managed: true };
        const at = new Date(START).toISOString();
        let events: GroupEvent[] = [
          { did: 'opened', name: 'Ines', plan: groupPlan({ spares: 1 }), by: 'm0', at, once: 'open' },
        ];
        const happen = (rule: Rule, once: string) => {
          try {
            const happened = rule(replay(events), asker, new Date(START));
            const next = [...events, ...happened.map((one) => ({ ...one, by: 'm0', at, once }))];
            replay(next);
            events = next;
            return happened;
          } catch (error) {
            if (!(error instanceof Problem) && !(error instanceof BrokenHistory)) throw error;
            return [];
          }
        };
        pressed.forEach(({ rule }, press) => happen(rule, `press ${press}`));
        const before = replay(events);
        const happened = happen(last, 'last');
        if (happened.length === 0 || happened.some((one) => one.did === 'undone')) return;
        expect(happen(undo, 'undo')).toHaveLength(happened.length);
        const after = replay(events);
        expect([after.tally, after.members, after.open, after.organiser]).toEqual([
          before.tally,
          before.members,
          before.open,
          before.organiser,
        ]);
      }),
      { numRuns: 200 },
    );
  });

  it('is its organiser’s; and where she has erased herself, the managers’ of its server', () => {
    const stamp = { at: '2026-03-02T12:00:00.000Z', once: 'x' };
    const state = (organiser: string) =>
      replay([
        { did: 'opened', name: 'Ines', plan: groupPlan(), by: organiser, ...stamp },
        { did: 'joined', maker: 'm1', name: 'One', perWeek: 1, colours: [], by: 'm1', ...stamp },
      ]);
    const may = (organiser: string, id: string, manager: boolean, managed: boolean) =>
      mayOrganise(state(organiser), { id, name: id, manager, managed });
    expect(may('m0', 'm0', false, true)).toBe(true);
    expect(may('m0', 'm1', false, true)).toBe(false);
    expect(may('m0', 'm1', false, false)).toBe(false);
    expect(may('m0', 'm2', true, true)).toBe(true);
    const gone = strangerId(1);
    expect(may(gone, 'm1', false, true)).toBe(false);
    expect(may(gone, 'm2', true, true)).toBe(true);
    // In the terminal there is no manager: whoever takes part, and nobody else.
    expect(may(gone, 'm1', false, false)).toBe(true);
    expect(may(gone, 'm2', false, false)).toBe(false);
  });

  it('keeps the number on a motif when an earlier hand-in is taken back', () => {
    const stamp = { by: 'm0', at: '2026-03-02T12:00:00.000Z', once: 'x' };
    const happened: Happening[] = [
      { did: 'opened', name: 'Ines', plan: groupPlan() },
      { did: 'joined', maker: 'm1', name: 'One', perWeek: 1, colours: [] },
      { did: 'pledged', maker: 'm1', kind: 0, motifs: 3 },
      { did: 'handed-in', maker: 'm1', kind: 0, motifs: 2 },
      { did: 'handed-in', maker: 'm1', kind: 0, motifs: 1 },
      { did: 'undone', event: 3 },
    ];
    const state = replay(happened.map((one) => ({ ...one, ...stamp })));
    expect(state.pieces.map(({ piece: number, state: now }) => [number, now])).toEqual([
      [1, 'taken-back'],
      [2, 'taken-back'],
      [3, 'handed-in'],
    ]);
    expect(state.pledges.get('m1')).toEqual([2, 0]);
  });
});
