/** Random histories: whatever is pressed in whatever order, no motif is spoken for twice and the sums agree. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GroupEvent, Happening } from '../../../src/core/group/events.ts';
import { accept, handIn, join, leave, pledge, release, sendBack } from '../../../src/core/group/rules.ts';
import { BrokenHistory, openFor, replay, spokenFor, type GroupState } from '../../../src/core/group/state.ts';
import { Problem } from '../../../src/core/problem.ts';
import { groupPlan } from './plan.ts';

type Press =
  | { do: 'join' | 'leave'; who: number }
  | { do: 'pledge' | 'release' | 'hand in'; who: number; kind: number; motifs: number }
  | { do: 'accept' | 'send back'; who: number; piece: number }
  | { do: 'undo'; event: number };

const presses: fc.Arbitrary<Press[]> = fc.array(
  fc.oneof(
    fc.record({
      do: fc.constantFrom('join' as const, 'leave' as const),
      who: fc.integer({ min: 0, max: 3 }),
    }),
    fc.record({
      do: fc.constantFrom('pledge' as const, 'release' as const, 'hand in' as const),
      who: fc.integer({ min: 0, max: 3 }),
      kind: fc.integer({ min: 0, max: 1 }),
      motifs: fc.integer({ min: 1, max: 3 }),
    }),
    fc.record({
      do: fc.constantFrom('accept' as const, 'send back' as const),
      who: fc.constant(0),
      piece: fc.integer({ min: 1, max: 8 }),
    }),
    fc.record({ do: fc.constant('undo' as const), event: fc.integer({ min: 1, max: 20 }) }),
  ),
  { maxLength: 60 },
);

function rule(state: GroupState, press: Press): Happening[] {
  const asker = { id: 'who' in press ? `m${press.who}` : 'm0', name: 'Maker', manager: false };
  switch (press.do) {
    case 'join':
      return join(state, asker, { perWeek: 2, colours: [] });
    case 'leave':
      return leave(state, asker);
    case 'pledge':
      return pledge(state, asker, press.kind, press.motifs);
    case 'release':
      return release(state, asker.id, press.kind, press.motifs);
    case 'hand in':
      return handIn(state, asker, press.kind, press.motifs, 15);
    case 'accept':
      return accept(state, asker, [press.piece]);
    case 'send back':
      return sendBack(state, asker, [press.piece], 'a corner is missing');
    case 'undo':
      return [{ did: 'undone', event: press.event }];
  }
}

describe('a group blanket', () => {
  it('never promises more than quota and spares, and its sums agree, whatever happens', () => {
    fc.assert(
      fc.property(presses, fc.integer({ min: 0, max: 1 }), (pressed, spares) => {
        const plan = groupPlan({ quotas: [4, 2], spares });
        const stamp = { by: 'm0', at: '2026-03-02T12:00:00.000Z', once: 'x' };
        let events: GroupEvent[] = [{ did: 'opened', plan, ...stamp }];
        let state = replay(events);
        for (const press of pressed) {
          try {
            if (press.do === 'undo' && press.event >= events.length) continue;
            const next = [...events, ...rule(state, press).map((one) => ({ ...one, ...stamp }))];
            state = replay(next);
            events = next;
          } catch (error) {
            // Refused in words, or an undo that something later stands on: the state is as it was.
            if (!(error instanceof Problem) && !(error instanceof BrokenHistory)) throw error;
          }
          plan.kinds.forEach(({ quota }, kind) => {
            const pieces = state.pieces.filter((piece) => piece.kind === kind);
            const held = [...state.pledges.values()].reduce((sum, pledges) => sum + pledges[kind]!, 0);
            const handedIn = pieces.filter((piece) => piece.state === 'handed-in').length;
            const accepted = pieces.filter((piece) => piece.state === 'accepted').length;
            expect(state.tally[kind]).toEqual({ pledged: held, handedIn, accepted });
            expect(spokenFor(state, kind)).toBeLessThanOrEqual(quota + spares);
            expect(openFor(state, kind)).toBe(quota + spares - held - handedIn - accepted);
          });
          for (const maker of state.pledges.keys()) {
            if (!state.members.has(maker))
              expect(state.pledges.get(maker)!.every((held) => held === 0)).toBe(true);
          }
          expect(state.pieces.map(({ piece }) => piece)).toEqual(state.pieces.map((_, index) => index + 1));
        }
        expect(replay(structuredClone(events))).toEqual(state);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps the number on a motif when an earlier hand-in is taken back', () => {
    const stamp = { by: 'm0', at: '2026-03-02T12:00:00.000Z', once: 'x' };
    const happened: Happening[] = [
      { did: 'opened', plan: groupPlan() },
      { did: 'joined', maker: 'm1', name: 'One', perWeek: 1, colours: [] },
      { did: 'pledged', maker: 'm1', kind: 0, motifs: 3 },
      { did: 'handed-in', maker: 'm1', kind: 0, motifs: 2 },
      { did: 'handed-in', maker: 'm1', kind: 0, motifs: 1 },
      { did: 'undone', event: 3 },
    ];
    const state = replay(happened.map((one) => ({ ...one, ...stamp })));
    expect(state.pieces.map(({ piece, state: now }) => [piece, now])).toEqual([
      [1, 'taken-back'],
      [2, 'taken-back'],
      [3, 'handed-in'],
    ]);
    expect(state.pledges.get('m1')).toEqual([2, 0]);
  });
});
