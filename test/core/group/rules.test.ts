/** Every rule of a group blanket: what follows where it holds, and what is said where it does not. */
import { describe, expect, it } from 'vitest';
import { strangerId } from '../../../src/core/base/history.ts';
import type { Happening } from '../../../src/core/group/events.ts';
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
  findKindNamed,
  leave,
  offerAgain,
  offerOver,
  pledge,
  readmit,
  giveBack,
  remind,
  reopen,
  sendBack,
  stillOpen,
  undo,
} from '../../../src/core/group/rules.ts';
import { refused } from '../../refused.ts';
import {
  accepted,
  ASH,
  asker,
  at,
  barred,
  day,
  handedIn,
  history,
  INES,
  joined,
  pledged,
  ROWAN,
  type Did,
} from './history.ts';
import { groupPlan } from './plan.ts';

/** Rowan (m1) and Ash (m2) take part; then what happened. */
const with2 = (...more: Did[]) => history([joined('m1', 'Rowan'), joined('m2', 'Ash'), ...more]);
const CLOSED: Did = ['m0', 3, { did: 'closed' }];
const SAID = { perWeek: 2, colours: [] };
const NEW = asker('m9', 'Wren');
/** A blanket whose organiser has erased herself. */
const gone = (...more: Did[]) => history([joined('m1', 'Rowan'), ...more], undefined, strangerId(1));

describe('who may organise', () => {
  const only: [string, (who: typeof ROWAN) => unknown][] = [
    ['accepts', (who) => accept(with2(), who, [1])],
    ['sends back', (who) => sendBack(with2(), who, [1], 'small')],
    ['shares out', (who) => giveShares(with2(), who, [])],
    ['keeps out', (who) => bar(with2(), who, { maker: 'm2', name: 'Ash' }, 'late')],
    ['lets in', (who) => readmit(with2(barred('m2')), who, { maker: 'm2', name: 'Ash' })],
    ['names', (who) => invite(with2(), who, { maker: 'm9', name: 'Wren' })],
    ['asks', (who) => remind(with2(), who, 'm2')],
    ['offers again', (who) => offerAgain(with2(), who, 'm2', day(9))],
    ['closes', (who) => close(with2(), who)],
    ['opens', (who) => reopen(with2(CLOSED), who, undefined)],
    ['hands over', (who) => offerOver(with2(), who, { maker: 'm2', name: 'Ash' })],
  ];
  it.each(only)('only who runs it, or a manager, %s', (_, rule) => {
    expect(() => rule(ROWAN)).toThrow(
      refused('organisers-only', { hint: 'Ask Ines, who runs it.', facts: { organiser: 'Ines', server: 1 } }),
    );
  });
  it('where the organiser has gone it is the managers’, or without a server whoever takes part', () => {
    expect(() => close(gone(), ROWAN)).toThrow(
      refused('organiser-gone', {
        hint: 'Its organiser has gone; a manager of the server can hand it to somebody who takes part.',
        facts: { organiser: 'Ines', server: 1 },
      }),
    );
    expect(() => close(gone(), asker('m9', 'Wren', { managed: false }))).toThrow(
      refused('organiser-gone', {
        hint: 'Its organiser has gone; whoever takes part can take it over.',
        facts: { organiser: 'Ines', server: 0 },
      }),
    );
    expect(close(gone(), asker('m9', 'Wren', { manager: true }))).toEqual([{ did: 'closed' }]);
    expect(close(gone(), asker('m1', 'Rowan', { managed: false }))).toEqual([{ did: 'closed' }]);
  });
});

describe('taking part', () => {
  it('is joining, with what she said', () => {
    expect(join(history(), NEW, { perWeek: 3, colours: ['moss'] })).toEqual([
      { did: 'joined', maker: 'm9', name: 'Wren', perWeek: 3, colours: ['moss'] },
    ]);
  });
  it('is for whom the organiser has named, where it is so set', () => {
    const named = (...more: Did[]) => history(more, groupPlan({ joinable: 'named' }));
    expect(() => join(named(), NEW, SAID)).toThrow(
      refused('not-named', { hint: 'Ask Ines to name you.', facts: { organiser: 'Ines' } }),
    );
    const asked: Did = ['m0', 1, { did: 'invited', maker: 'm9', name: 'Wren' }];
    for (const [state, who] of [
      [named(asked), NEW],
      [named(joined('m9', 'Wren')), NEW],
      [named(), INES],
      [named(), asker('m9', 'Wren', { manager: true })],
      [history(), NEW],
    ] as const)
      expect(join(state, who, SAID)).toHaveLength(1);
  });
  it('takes colours of sixty letters, and not one more', () => {
    const colours = (length: number) => () =>
      join(history(), NEW, { perWeek: 1, colours: ['moss', 'm'.repeat(length)] });
    expect(colours(60)).not.toThrow();
    expect(colours(61)).toThrow(
      refused('name-too-long', { option: 'colours', facts: { most: 60, given: 61 } }),
    );
  });
  it('takes sixty colours, and not one more', () => {
    const many = (colours: number) => () =>
      join(history(), NEW, { perWeek: 1, colours: Array.from({ length: colours }, (_, n) => `c${n}`) });
    expect(many(60)).not.toThrow();
    expect(many(61)).toThrow(
      refused('too-many-colours', { option: 'colours', facts: { most: 60, given: 61 } }),
    );
  });
  it('is what leaving and keeping begin with', () => {
    expect(leave(with2(), ROWAN)).toEqual([{ did: 'left', maker: 'm1' }]);
    expect(keep(with2(), ROWAN)).toEqual([{ did: 'kept', maker: 'm1' }]);
    for (const rule of [leave, keep])
      expect(() => rule(with2(), NEW)).toThrow(refused('not-taking-part', { hint: 'Join first.' }));
  });
  it.each<[string, (state: ReturnType<typeof with2>) => unknown]>([
    ['joining', (state) => join(state, ROWAN, SAID)],
    ['leaving', (state) => leave(state, ROWAN)],
    ['keeping', (state) => keep(state, ROWAN)],
    ['pledging', (state) => pledge(state, ROWAN, 0, 1)],
    ['giving back', (state) => giveBack(state, 'm1', 0, 1)],
    ['answering', (state) => answerOffer(state, ROWAN, true)],
  ])('ends for %s where she is kept out, and she is told why', (_, rule) => {
    expect(() => rule(with2(barred('m1', 'pledges and never makes')))).toThrow(
      refused('kept-out', {
        message: 'You are kept from taking part in this blanket: pledges and never makes.',
        hint: 'Ask Ines, who runs it.',
        facts: { since: at(5) },
      }),
    );
    expect(() => rule(gone(barred('m1', 'late. ')))).toThrow(
      refused('kept-out', {
        message: 'You are kept from taking part in this blanket: late.',
        hint: 'Ask a manager of the server; its organiser has gone.',
      }),
    );
  });
  it.each<[string, (state: ReturnType<typeof with2>) => unknown]>([
    ['joined', (state) => join(state, NEW, SAID)],
    ['pledged for', (state) => pledge(state, ROWAN, 0, 1)],
    ['shared out', (state) => giveShares(state, INES, [])],
    ['closed again', (state) => close(state, INES)],
    ['given more than was pledged', (state) => handIn(state, ROWAN, 0, 1, undefined)],
  ])('a closed blanket is not %s', (_, rule) => {
    expect(() => rule(with2(CLOSED))).toThrow(refused('blanket-closed'));
  });
});

describe('kinds', () => {
  it('are named by name, letter or beginning', () => {
    expect(['furrow', 'Trellis', 'b', ' b ', ' tre '].map((name) => findKindNamed(with2(), name))).toEqual([
      0, 1, 1, 1, 1,
    ]);
    expect(() => findKindNamed(with2(), 'trelliz')).toThrow(
      refused('no-such-kind', { option: 'kind', hint: 'Its kinds are B (trellis), A (furrow).' }),
    );
    expect(() => findKindNamed(with2(), 'furow')).toThrow(
      refused('no-such-kind', { hint: 'Its kinds are A (furrow), B (trellis).' }),
    );
  });
  it('that are still open are told with their numbers', () => {
    expect(stillOpen(with2())).toBe('4 furrow, 2 trellis');
    expect(stillOpen(with2(pledged('m1', 0, 4), pledged('m2', 1, 1)))).toBe('1 trellis');
    expect(stillOpen(with2(pledged('m1', 0, 4), pledged('m2', 1, 2)))).toBe(
      'nothing; every motif is spoken for',
    );
  });
});

describe('pledging', () => {
  it('takes what is open, to the last', () => {
    expect(pledge(with2(), ROWAN, 0, 4)).toEqual([{ did: 'pledged', maker: 'm1', kind: 0, motifs: 4 }]);
    expect(pledge(with2(), NEW, 1, 1)).toEqual([
      { did: 'joined', maker: 'm9', name: 'Wren', perWeek: 1, colours: [] },
      { did: 'pledged', maker: 'm9', kind: 1, motifs: 1 },
    ]);
  });
  it.each([
    [4, 1, 'Every furrow is spoken for.', 'kind', 0, '2 trellis'],
    [3, 2, 'Only 1 of furrow is still open.', 'motifs', 1, '1 furrow, 2 trellis'],
    [2, 3, 'Only 2 of furrow are still open.', 'motifs', 2, '2 furrow, 2 trellis'],
  ])('is refused whole beyond it: %i pledged, %i more', (taken, more, message, option, given, open) => {
    expect(() => pledge(with2(pledged('m2', 0, taken)), ROWAN, 0, more)).toThrow(
      refused('too-few-open', {
        message,
        option,
        hint: `Still open: ${open}.`,
        facts: { needed: more, given },
      }),
    );
  });
  it('is given back up to what she holds', () => {
    const held = with2(pledged('m1', 0, 2), pledged('m2', 0, 1));
    expect(giveBack(held, 'm1', 0, 2)).toEqual([{ did: 'released', maker: 'm1', kind: 0, motifs: 2 }]);
    expect(() => giveBack(held, 'm1', 0, 3)).toThrow(
      refused('too-few-pledged', {
        message: 'Only 2 of furrow are pledged there.',
        option: 'motifs',
        hint: 'Give back at most 2.',
        facts: { needed: 3, given: 2 },
      }),
    );
    expect(() => giveBack(held, 'm2', 0, 2)).toThrow(
      refused('too-few-pledged', {
        message: 'Only 1 of furrow is pledged there.',
        hint: 'Give back at most 1.',
      }),
    );
    expect(() => giveBack(held, 'm2', 1, 1)).toThrow(
      refused('nothing-pledged', {
        message: 'No trellis is pledged there.',
        hint: 'Look at what you hold.',
        facts: { needed: 1, given: 0 },
      }),
    );
  });
});

describe('handing in', () => {
  const HANDED = { did: 'handed-in', maker: 'm1', kind: 0 } as const;
  it('takes what was pledged, and pledges what was not while there is room', () => {
    const held = with2(pledged('m1', 0, 2));
    expect(handIn(held, ROWAN, 0, 2, { side: 15.2, weight: 24 })).toEqual([
      { ...HANDED, motifs: 2, side: 15.2, weight: 24 },
    ]);
    expect(handIn(held, ROWAN, 0, 1, undefined)).toEqual([{ ...HANDED, motifs: 1 }]);
    expect(handIn(held, ROWAN, 0, 4, undefined)).toEqual([
      { did: 'pledged', maker: 'm1', kind: 0, motifs: 2 },
      { ...HANDED, motifs: 4 },
    ]);
    expect(handIn(with2(), NEW, 0, 1, undefined).map(({ did }) => did)).toEqual([
      'joined',
      'pledged',
      'handed-in',
    ]);
  });
  it('is refused beyond what she holds and what is open', () => {
    const held = with2(pledged('m1', 0, 2), pledged('m2', 0, 1));
    expect(() => handIn(held, ROWAN, 0, 4, undefined)).toThrow(
      refused('too-few-open', {
        message: 'You hold 2 of furrow, and no more than 1 can be added.',
        option: 'motifs',
        hint: 'Hand in at most 3. Still open: 1 furrow, 2 trellis.',
        facts: { needed: 4, given: 3 },
      }),
    );
    expect(handIn(held, ROWAN, 0, 3, undefined)).toHaveLength(2);
    // Who holds nothing is told what is open, as for a pledge.
    expect(() => handIn(held, ROWAN, 1, 3, undefined)).toThrow(
      refused('too-few-open', { facts: { needed: 3, given: 2 } }),
    );
  });
  it('after it has closed takes what was pledged, and no more', () => {
    const held = with2(pledged('m1', 0, 2), CLOSED);
    expect(handIn(held, ROWAN, 0, 2, undefined)).toHaveLength(1);
    expect(() => handIn(held, ROWAN, 0, 9, undefined)).toThrow(refused('blanket-closed'));
  });
});

describe('looking them over', () => {
  const waiting = with2(pledged('m1', 0, 4), handedIn('m1', 0, 3), accepted(1));
  it('takes every motif once', () => {
    expect(accept(waiting, INES, [3, 2, 3])).toEqual([{ did: 'accepted', pieces: [3, 2] }]);
    expect(sendBack(waiting, INES, [2, 2], 'too small')).toEqual([
      { did: 'returned', pieces: [2], reason: 'too small' },
    ]);
  });
  it('sends nothing back without a reason', () => {
    for (const reason of ['', ' . '])
      expect(() => sendBack(waiting, INES, [2], reason)).toThrow(
        refused('reason-missing', { option: 'reason' }),
      );
  });
  it('refuses what does not wait, and says what does', () => {
    for (const rule of [
      (pieces: number[]) => accept(waiting, INES, pieces),
      (pieces: number[]) => sendBack(waiting, INES, pieces, 'small'),
    ]) {
      expect(() => rule([2, 1])).toThrow(
        refused('not-waiting', {
          message: 'Motif 1 was accepted already.',
          option: 'motifs',
          hint: 'Waiting: 2, 3.',
          facts: { motif: 1, state: 'accepted' },
        }),
      );
      expect(() => rule([9])).toThrow(
        refused('no-such-motif', { message: 'There is no motif 9.', facts: { motif: 9 } }),
      );
    }
    expect(() => accept(with2(), INES, [1])).toThrow(
      refused('no-such-motif', { hint: 'No motif is waiting.' }),
    );
    const many = history(
      [joined('m1', 'Rowan'), pledged('m1', 0, 40), handedIn('m1', 0, 40)],
      groupPlan({ quotas: [40, 2] }),
    );
    expect(() => accept(many, INES, [41])).toThrow(
      refused('no-such-motif', {
        hint: `Waiting: ${Array.from({ length: 30 }, (_, index) => index + 1).join(', ')}.`,
      }),
    );
  });
});

describe('sharing out', () => {
  it('pledges for each who takes part, kind by kind', () => {
    const shares = [
      { maker: 'm1', motifs: [2, 0] },
      { maker: 'm9', motifs: [1, 1] },
      { maker: 'm2', motifs: [1, 1] },
    ];
    expect(giveShares(with2(), INES, shares)).toEqual([
      { did: 'pledged', maker: 'm1', kind: 0, motifs: 2 },
      { did: 'pledged', maker: 'm2', kind: 0, motifs: 1 },
      { did: 'pledged', maker: 'm2', kind: 1, motifs: 1 },
    ]);
  });
  it('is refused where what is open has changed', () => {
    const shares = [
      { maker: 'm1', motifs: [2, 1] },
      { maker: 'm2', motifs: [2, 1] },
    ];
    expect(giveShares(with2(), INES, shares)).toHaveLength(4);
    expect(() => giveShares(with2(pledged('m1', 1, 1)), INES, shares)).toThrow(refused('shares-changed'));
    expect(() => giveShares(with2(), INES, shares, false)).toThrow(refused('shares-changed'));
  });
});

describe('keeping out', () => {
  const ash = { maker: 'm2', name: 'Ash' };
  it('says why, without the last stop', () => {
    expect(bar(with2(), INES, ash, 'pledges, and never makes. ')).toEqual([
      { did: 'barred', maker: 'm2', reason: 'pledges, and never makes' },
    ]);
    expect(() => bar(with2(), INES, ash, ' . ')).toThrow(refused('reason-missing', { option: 'reason' }));
    expect(() => bar(with2(), INES, { maker: 'm0', name: 'Ines' }, 'late')).toThrow(
      refused('organiser-kept', { option: 'maker' }),
    );
  });
  it('holds for being named, asked and kept out again', () => {
    const state = with2(barred('m2'));
    for (const rule of [
      () => bar(state, INES, ash, 'late'),
      () => invite(state, INES, ash),
      () => offerOver(state, INES, ash),
    ])
      expect(rule).toThrow(refused('maker-kept-out', { option: 'maker', facts: { maker: 'Ash' } }));
  });
  it('ends by letting in whom it holds', () => {
    expect(readmit(with2(barred('m2')), INES, ash)).toEqual([{ did: 'readmitted', maker: 'm2' }]);
    expect(() => readmit(with2(), INES, ash)).toThrow(refused('not-kept-out', { hint: 'Nobody is.' }));
    expect(() => readmit(with2(barred('m1')), INES, ash)).toThrow(
      refused('not-kept-out', { option: 'maker', hint: 'Kept out: Rowan.' }),
    );
    const makers = Array.from({ length: 16 }, (_, index) => `o${index}`);
    const many = with2(...makers.flatMap((maker) => [joined(maker, maker), barred(maker)]));
    expect(() => readmit(many, INES, ash)).toThrow(
      refused('not-kept-out', { hint: `Kept out: ${makers.slice(0, 15).join(', ')}.` }),
    );
  });
  it('names and asks whoever is not kept out', () => {
    expect(invite(with2(), INES, { maker: 'm9', name: 'Wren' })).toEqual([
      { did: 'invited', maker: 'm9', name: 'Wren' },
    ]);
    expect(remind(with2(), INES, 'm2')).toEqual([{ did: 'reminded', maker: 'm2' }]);
  });
});

describe('offering old pledges again', () => {
  const ASKED: Did = ['m0', 10, { did: 'reminded', maker: 'm1' }];
  const held = with2(pledged('m1', 0, 2), pledged('m1', 1, 1), pledged('m2', 0, 1), ASKED);
  it('waits seven days for her answer', () => {
    expect(offerAgain(held, INES, 'm1', day(17))).toEqual([
      { did: 'released', maker: 'm1', kind: 0, motifs: 2 },
      { did: 'released', maker: 'm1', kind: 1, motifs: 1 },
    ]);
  });
  it.each([
    [10.5, 'today', '7 days'],
    [11.5, '1 day ago', '6 days'],
    [16.5, '6 days ago', '1 day'],
  ])('on day %d she was asked %s', (now, asked, wait) => {
    expect(() => offerAgain(held, INES, 'm1', day(now))).toThrow(
      refused('notice-running', {
        message: `Rowan was asked ${asked}, with 7 days to answer.`,
        option: 'maker',
        hint: `Try again in ${wait}.`,
        facts: { needed: 7, given: now - 10 },
      }),
    );
  });
  it('is not for who was not asked, or has been heard of since', () => {
    const answered = with2(pledged('m1', 0, 2), ASKED, ['m1', 11, { did: 'kept', maker: 'm1' }]);
    for (const state of [with2(), answered])
      expect(() => offerAgain(state, INES, 'm1', day(30))).toThrow(
        refused('not-asked', {
          message: 'Rowan has not been asked whether the pledges still stand, or has been heard of since.',
          option: 'maker',
          hint: 'Ask with do:ask; the pledges can be offered again 7 days later.',
        }),
      );
  });
});

describe('closing, handing over and taking back', () => {
  it('opens what is closed, or moves its day', () => {
    expect(reopen(with2(CLOSED), INES, undefined)).toEqual([{ did: 'reopened' }]);
    expect(reopen(with2(), INES, '2026-06-01')).toEqual([{ did: 'reopened', closes: '2026-06-01' }]);
    expect(() => reopen(with2(), INES, undefined)).toThrow(refused('blanket-open'));
  });
  const OFFERED: Did = ['m0', 3, { did: 'offered-over', to: 'm1', name: 'Rowan' }];
  it('asks somebody to run it, who says yes or no', () => {
    expect(offerOver(with2(), INES, { maker: 'm1', name: 'Rowan' })).toEqual([
      { did: 'offered-over', to: 'm1', name: 'Rowan' },
    ]);
    expect(() => offerOver(with2(OFFERED), INES, { maker: 'm1', name: 'Rowan' })).toThrow(
      refused('offered-already', { option: 'maker' }),
    );
    expect(offerOver(with2(OFFERED), INES, { maker: 'm2', name: 'Ash' })).toHaveLength(1);
    expect(() => offerOver(with2(), INES, { maker: 'm0', name: 'Ines' })).toThrow(
      refused('organiser-already', { option: 'maker' }),
    );
    const manager = asker('m2', 'Ash', { manager: true });
    expect(offerOver(with2(), manager, { maker: 'm2', name: 'Ash' })).toEqual([
      { did: 'handed-over', to: 'm2', name: 'Ash' },
    ]);
    expect(answerOffer(with2(OFFERED), ROWAN, true)).toEqual([
      { did: 'handed-over', to: 'm1', name: 'Rowan' },
    ]);
    expect(answerOffer(with2(OFFERED), ROWAN, false)).toEqual([{ did: 'declined', maker: 'm1' }]);
    expect(() => answerOffer(with2(OFFERED), ASH, true)).toThrow(
      refused('not-offered', { option: 'answer', hint: 'Rowan is asked, and nobody else can answer.' }),
    );
    expect(() => answerOffer(with2(), ASH, true)).toThrow(
      refused('not-offered', { hint: 'Nobody is asked just now.' }),
    );
  });
  it('gives a maker back her own last pledge, while she holds it', () => {
    const RELEASED = { did: 'released', maker: 'm1', kind: 0 } as const;
    expect(undo(with2(pledged('m1', 0, 2), pledged('m2', 1, 1)), ROWAN)).toEqual([
      { did: 'undone', event: 3 },
    ]);
    // Only the last of two; and of two of which the organiser gave one free, neither.
    expect(undo(with2(pledged('m1', 0, 2), pledged('m1', 0, 1)), ROWAN)).toEqual([
      { did: 'undone', event: 4 },
    ]);
    const freed: Did = ['m0', 4, { ...RELEASED, motifs: 1 }];
    const nothing = refused('nothing-to-take-back', {
      message: 'You did nothing lately that could be taken back.',
      hint: 'A last pledge that you still hold can be, and a last hand-in until it is accepted. Ask Ines, who runs it.',
    });
    const released: Did = ['m1', 4, { ...RELEASED, motifs: 1 }];
    for (const state of [
      with2(),
      with2(pledged('m2', 0, 1)),
      with2(pledged('m1', 0, 2), freed),
      with2(pledged('m1', 0, 2), released),
      // Given to her by the organiser, it is not what she did.
      with2(['m0', 4, { did: 'pledged', maker: 'm1', kind: 0, motifs: 1 }]),
    ])
      expect(() => undo(state, ROWAN)).toThrow(nothing);
    expect(() => undo(with2(), NEW)).toThrow(refused('not-taking-part'));
    expect(() => undo(with2(barred('m1')), ROWAN)).toThrow(refused('kept-out'));
  });
  it('gives out no more numbers than the largest blanket could ever need', () => {
    const state = with2(pledged('m1', 0, 1));
    const full = { ...state, pieces: Array.from({ length: 10_000 }, () => state.pieces.at(0)!) };
    expect(() => handIn(full, ROWAN, 0, 1, {})).toThrow(
      refused('too-many-numbered', { option: 'motifs', facts: { most: 10_000, given: 1 } }),
    );
    expect(handIn({ ...full, pieces: full.pieces.slice(1) }, ROWAN, 0, 1, {})).toHaveLength(1);
  });
  it('gives her back her own last hand-in until something of it is looked over', () => {
    const handed = (...more: Did[]) =>
      with2(
        pledged('m1', 0, 3),
        pledged('m1', 1, 1),
        pledged('m2', 0, 1),
        handedIn('m1', 0, 1),
        handedIn('m1', 1, 1),
        handedIn('m2', 0, 1),
        handedIn('m1', 0, 2),
        ...more,
      );
    expect(undo(handed(), ROWAN)).toEqual([{ did: 'undone', event: 9 }]);
    expect(undo(handed(), ASH)).toEqual([{ did: 'undone', event: 8 }]);
    expect(undo(handed(accepted(1, 2, 3)), ROWAN)).toHaveLength(1);
    expect(() => undo(handed(accepted(5)), ROWAN)).toThrow(
      refused('accepted-already', { hint: 'Ask Ines, who runs it.' }),
    );
    // Her own numbers are looked at: not what Rowan handed in after her.
    expect(undo(handed(accepted(5)), ASH)).toEqual([{ did: 'undone', event: 8 }]);
    const back: Did = ['m0', 5, { did: 'returned', pieces: [5], reason: 'small' }];
    expect(() => undo(handed(back), ROWAN)).toThrow(refused('nothing-to-take-back'));
  });
  it('gives her back one hand-in after the other, and none that was handed in for her', () => {
    const twice = [pledged('m1', 0, 2), handedIn('m1', 0, 1), handedIn('m1', 0, 1)];
    expect(undo(with2(...twice, ['m1', 6, { did: 'undone', event: 5 }]), ROWAN)).toEqual([
      { did: 'undone', event: 4 },
    ]);
    // The organiser handed in a furrow of hers after her trellis, and accepted it.
    const forHer: Did = ['m0', 4, { did: 'handed-in', maker: 'm1', kind: 0, motifs: 1 }];
    expect(
      undo(with2(pledged('m1', 0, 1), pledged('m1', 1, 1), handedIn('m1', 1, 1), forHer, accepted(2)), ROWAN),
    ).toEqual([{ did: 'undone', event: 5 }]);
  });
  it('takes back the last press whole, and never the opening', () => {
    const press = (maker: string, kind: number, once: string): Did => [
      'm0',
      4,
      { did: 'pledged', maker, kind, motifs: 1 },
      once,
    ];
    const shared = with2(press('m1', 0, 'a'), press('m1', 1, 'b'), press('m2', 0, 'b'));
    expect(undo(shared, INES)).toEqual([
      { did: 'undone', event: 4 },
      { did: 'undone', event: 5 },
    ]);
    expect(() => undo(history(), INES)).toThrow(refused('nothing-to-take-back'));
    const undone: Happening = { did: 'undone', event: 3 };
    expect(undo(with2(press('m1', 0, 'a'), ['m0', 5, undone]), INES)).toEqual([{ did: 'undone', event: 2 }]);
  });
});
