/** What each happening does to a group blanket, and which histories cannot be. */
import { describe, expect, it } from 'vitest';
import { isStranger, strangerId } from '../../../src/core/base/history.ts';
import type { Happening } from '../../../src/core/group/events.ts';
import { listHoldings, parcelsOf } from '../../../src/core/group/holdings.ts';
import { BrokenHistory } from '../../../src/core/base/history.ts';
import { goOn, openFor, replay, countSpokenFor } from '../../../src/core/group/state.ts';
import { accepted, at, barred, events, handedIn, history, joined, pledged, type Did } from './history.ts';
import { groupPlan } from './plan.ts';

const with2 = (...more: Did[]) => history([joined('m1', 'Rowan'), joined('m2', 'Ash'), ...more]);
const by = (who: string, days: number, happened: Happening): Did => [who, days, happened];

describe('what happens', () => {
  it('opens a blanket with nothing in it', () => {
    const state = history([], groupPlan({ closes: '2026-05-01' }));
    expect(state).toMatchObject({ organiser: 'm0', organiserName: 'Ines', open: true, closes: '2026-05-01' });
    expect([...state.names]).toEqual([['m0', 'Ines']]);
    expect(state.tally).toEqual([
      { pledged: 0, handedIn: 0, accepted: 0 },
      { pledged: 0, handedIn: 0, accepted: 0 },
    ]);
    expect([...state.lastSeen]).toEqual([['m0', at(0)]]);
    expect(state.standing).toHaveLength(1);
    expect(history()).toMatchObject({ closes: undefined });
  });

  it('joins, and keeps since when where she says it anew', () => {
    const state = history([
      by('m0', 1, { did: 'invited', maker: 'm1', name: 'R.' }),
      joined('m1', 'Rowan', 2, 1),
      joined('m1', 'Rowan W.', 5, 3, ['moss']),
    ]);
    expect(state.members.get('m1')).toEqual({
      maker: 'm1',
      name: 'Rowan W.',
      perWeek: 3,
      colours: ['moss'],
      since: at(2),
    });
    expect([state.names.get('m1'), state.invited.has('m1'), state.lastSeen.get('m1')]).toEqual([
      'Rowan W.',
      true,
      at(5),
    ]);
  });

  it('leaves, or is kept out: what she pledged is open again, what she handed in stays', () => {
    for (const gone of [by('m1', 6, { did: 'left', maker: 'm1' }), barred('m1')]) {
      const state = with2(pledged('m1', 0, 3), pledged('m1', 1, 1), handedIn('m1', 0, 1), gone);
      expect(state.members.has('m1')).toBe(false);
      expect(state.pledges.get('m1')).toEqual([0, 0]);
      expect(state.tally).toEqual([
        { pledged: 0, handedIn: 1, accepted: 0 },
        { pledged: 0, handedIn: 0, accepted: 0 },
      ]);
      expect([openFor(state, 0), countSpokenFor(state, 0), openFor(state, 1)]).toEqual([3, 1, 2]);
    }
    const out = with2(barred('m1'));
    expect(out.barred.get('m1')).toEqual({ at: at(5), reason: 'pledges and never makes' });
    const again = with2(barred('m1'), by('m0', 6, { did: 'readmitted', maker: 'm1' }));
    expect([again.barred.size, again.members.has('m1')]).toEqual([0, false]);
  });

  it('pledges and releases, noting when she was last given something, and whether somebody else took it away', () => {
    const own = with2(
      pledged('m1', 0, 3, 1),
      by('m1', 2, { did: 'released', maker: 'm1', kind: 0, motifs: 2 }),
    );
    expect([own.pledges.get('m1'), own.pledgedAt.get('m1'), own.clearedAt.size]).toEqual([[1, 0], at(1), 0]);
    const cleared = with2(
      pledged('m1', 0, 3, 1),
      by('m0', 9, { did: 'released', maker: 'm1', kind: 0, motifs: 3 }),
    );
    expect([cleared.pledges.get('m1'), cleared.clearedAt.get('m1')]).toEqual([[0, 0], at(9)]);
  });

  it('hands in, accepts and sends back motif by motif', () => {
    const state = with2(
      pledged('m1', 0, 2, 1),
      pledged('m2', 1, 1, 1),
      handedIn('m1', 0, 2, 2, 15.3),
      handedIn('m2', 1, 1, 3),
      accepted(1),
      by('m0', 6, { did: 'returned', pieces: [2, 3], reason: 'small' }),
    );
    expect([...state.pieces]).toEqual([
      { piece: 1, maker: 'm1', kind: 0, side: 15.3, handedInAt: at(2), state: 'accepted' },
      { piece: 2, maker: 'm1', kind: 0, side: 15.3, handedInAt: at(2), state: 'returned', reason: 'small' },
      { piece: 3, maker: 'm2', kind: 1, handedInAt: at(3), state: 'returned', reason: 'small' },
    ]);
    expect(state.tally).toEqual([
      { pledged: 1, handedIn: 0, accepted: 1 },
      { pledged: 1, handedIn: 0, accepted: 0 },
    ]);
    // Theirs to make again, from that day on.
    expect([state.pledges.get('m1'), state.pledges.get('m2')]).toEqual([
      [1, 0],
      [0, 1],
    ]);
    expect(state.pledgedAt.get('m2')).toBe(at(6));
    const left = with2(
      pledged('m1', 0, 1, 1),
      handedIn('m1', 0, 1),
      by('m1', 3, { did: 'left', maker: 'm1' }),
      by('m0', 6, { did: 'returned', pieces: [1], reason: 'small' }),
    );
    expect([left.tally[0], left.pledgedAt.get('m1'), openFor(left, 0)]).toEqual([
      { pledged: 0, handedIn: 0, accepted: 0 },
      at(1),
      4,
    ]);
  });

  it('is asked whether pledges stand; whatever she does then is an answer, what others do is none', () => {
    const asked = by('m0', 10, { did: 'reminded', maker: 'm1' });
    expect(with2(asked).remindedAt.get('m1')).toBe(at(10));
    expect(with2(asked, joined('m2', 'Ash', 11)).remindedAt.get('m1')).toBe(at(10));
    expect(with2(asked, by('m1', 11, { did: 'kept', maker: 'm1' })).remindedAt.size).toBe(0);
    // Even who runs it can be asked, and asking others is no answer of hers.
    const both = by('m0', 12, { did: 'reminded', maker: 'm0' });
    expect([...with2(both, asked).remindedAt.keys()]).toEqual(['m0', 'm1']);
  });

  it('changes hands, closes and opens', () => {
    const offered = by('m0', 3, { did: 'offered-over', to: 'm3', name: 'Wren' });
    expect(with2(offered)).toMatchObject({ offeredTo: { maker: 'm3', name: 'Wren' }, organiser: 'm0' });
    expect(with2(offered).names.get('m3')).toBe('Wren');
    expect(with2(offered, by('m3', 4, { did: 'declined', maker: 'm3' })).offeredTo).toBeUndefined();
    const over = with2(offered, by('m3', 4, { did: 'handed-over', to: 'm3', name: 'Wren B.' }));
    expect(over).toMatchObject({ organiser: 'm3', organiserName: 'Wren B.', offeredTo: undefined });
    expect(over.names.get('m3')).toBe('Wren B.');
    const closed = by('m0', 5, { did: 'closed' });
    const plan = groupPlan({ closes: '2026-05-01' });
    expect(history([closed], plan)).toMatchObject({ open: false, closes: '2026-05-01' });
    expect(history([closed, by('m0', 6, { did: 'reopened' })], plan)).toMatchObject({
      open: true,
      closes: '2026-05-01',
    });
    expect(history([by('m0', 6, { did: 'reopened', closes: '2026-06-01' })], plan)).toMatchObject({
      open: true,
      closes: '2026-06-01',
    });
  });

  it('is as if it had not happened where it is taken back', () => {
    const before = with2();
    const after = with2(pledged('m1', 0, 2), by('m0', 4, { did: 'undone', event: 3 }));
    expect(after.tally).toEqual(before.tally);
    expect(after.lastSeen).toEqual(before.lastSeen);
    expect(after.standing).toEqual(before.standing);
    expect(after.pledges.size).toBe(0);
  });
});

describe('a history that cannot be', () => {
  it.each<[string, Did[], string]>([
    ['who does not take part pledges', [pledged('m9', 0, 1)], 'm9 takes no part'],
    ['who does not take part leaves', [by('m9', 1, { did: 'left', maker: 'm9' })], 'm9 takes no part'],
    [
      'more is handed in than was pledged',
      [pledged('m1', 0, 1), handedIn('m1', 0, 2)],
      'm1 has not pledged that many of kind 0',
    ],
    [
      'more is released than was pledged',
      [by('m1', 1, { did: 'released', maker: 'm1', kind: 1, motifs: 1 })],
      'm1 has not pledged that many of kind 1',
    ],
    [
      'more is pledged than the quota',
      [pledged('m1', 0, 3), pledged('m2', 0, 2)],
      'more than the quota of kind 0',
    ],
    ['a kind is pledged that there is not', [pledged('m1', 2, 1)], 'there is no kind 2'],
    [
      'a motif is accepted twice',
      [pledged('m1', 0, 1), handedIn('m1', 0, 1), accepted(1), accepted(1)],
      'motif 1 is not handed-in',
    ],
    [
      'a motif is sent back that was not handed in',
      [by('m0', 2, { did: 'returned', pieces: [1], reason: 'small' })],
      'motif 1 is not handed-in',
    ],
    [
      'who is not kept out is let in',
      [by('m0', 1, { did: 'readmitted', maker: 'm1' })],
      'm1 is not kept out',
    ],
    [
      'what something rests on is taken back',
      [pledged('m1', 0, 1), handedIn('m1', 0, 1), by('m0', 3, { did: 'undone', event: 3 })],
      'm1 has not pledged',
    ],
  ])('where %s', (_, happened, message) => {
    const replaying = () => with2(...happened);
    expect(replaying).toThrow(BrokenHistory);
    expect(replaying).toThrow(message);
  });

  it('begins otherwise than by being opened, or takes that back', () => {
    const opened = 'a group blanket begins by being opened';
    expect(() => replay([])).toThrow(opened);
    expect(() => replay(events([joined('m1', 'Rowan')]).slice(1))).toThrow(opened);
    expect(() => history([by('m0', 1, { did: 'undone', event: 0 })])).toThrow(opened);
  });

  it('up to the quota and its spares it can', () => {
    const plan = groupPlan({ quotas: [4, 2], spares: 1 });
    expect(openFor(history([joined('m1', 'Rowan'), pledged('m1', 0, 5)], plan), 0)).toBe(0);
    expect(() => history([joined('m1', 'Rowan'), pledged('m1', 0, 6)], plan)).toThrow(BrokenHistory);
    expect([openFor(with2(), 7), countSpokenFor(with2(), 7)]).toEqual([0, 0]);
    const some = with2(pledged('m1', 0, 3), handedIn('m1', 0, 2), accepted(1));
    expect([countSpokenFor(some, 0), openFor(some, 0)]).toEqual([3, 1]);
  });
});

describe('going on from a state', () => {
  it('is the same as replaying all, and leaves what was before as it was', () => {
    const all = events([
      joined('m1', 'Rowan'),
      joined('m2', 'Ash'),
      pledged('m1', 0, 3),
      by('m0', 3, { did: 'reminded', maker: 'm2' }),
      handedIn('m1', 0, 2),
      accepted(1),
      barred('m2'),
      by('m0', 6, { did: 'offered-over', to: 'm1', name: 'Rowan' }),
      by('m0', 7, { did: 'released', maker: 'm1', kind: 0, motifs: 1 }),
      by('m0', 8, { did: 'invited', maker: 'm3', name: 'Wren' }),
    ]);
    for (let known = 1; known < all.length; known++) {
      const before = replay(all.slice(0, known));
      expect(goOn(before, known, all.slice(known), new Set())).toEqual(replay(all));
      expect(before).toEqual(replay(all.slice(0, known)));
    }
    // What is taken back is reckoned again from any state before it.
    const undone = [...all, { did: 'undone' as const, event: 10, by: 'm0', at: at(9), once: 'x' }];
    for (const known of [1, 5, 10])
      expect(goOn(replay(all.slice(0, known)), known, undone.slice(known), new Set([10]))).toEqual(
        replay(undone),
      );
  });
});

describe('who holds what', () => {
  const state = with2(
    pledged('m1', 0, 3),
    pledged('m1', 1, 1),
    handedIn('m1', 0, 3),
    accepted(2),
    by('m0', 6, { did: 'returned', pieces: [3], reason: 'small' }),
  );
  it('is told by kind, each motif by its number', () => {
    const [furrow, trellis] = listHoldings(state, 'm1');
    expect(furrow).toMatchObject({ kind: 'furrow', pledged: 1, handedIn: [1], accepted: [2] });
    expect(furrow!.returned.map(({ piece, reason }) => [piece, reason])).toEqual([[3, 'small']]);
    expect(trellis).toEqual({ kind: 'trellis', pledged: 1, handedIn: [], accepted: [], returned: [] });
    expect(listHoldings(state, 'm9').map(({ pledged: held }) => held)).toEqual([0, 0]);
  });
  it('is told of those who hold or have sent something', () => {
    expect(parcelsOf(state).map(({ name, held }) => [name, held.map(({ kind }) => kind)])).toEqual([
      ['Rowan', ['furrow', 'trellis']],
    ]);
    const sent = with2(pledged('m2', 1, 1), handedIn('m2', 1, 1), accepted(1));
    expect(parcelsOf(sent).map(({ name, held }) => [name, held.map(({ kind }) => kind)])).toEqual([
      ['Ash', ['trellis']],
    ]);
    // What was only sent back, and its maker has left, is nobody's parcel.
    const back = with2(
      pledged('m1', 0, 1),
      handedIn('m1', 0, 1),
      by('m1', 3, { did: 'left', maker: 'm1' }),
      by('m0', 6, { did: 'returned', pieces: [1], reason: 'small' }),
    );
    expect(parcelsOf(back)).toEqual([]);
  });
});

it('knows an id in place of one that was erased', () => {
  expect([strangerId(7), 'somebody.7', 'somebody.12'].map(isStranger)).toEqual([true, true, true]);
  expect(['somebody', 'somebody.', 'somebody.7x', 'xsomebody.7', 'somebody-7'].some(isStranger)).toBe(false);
});
