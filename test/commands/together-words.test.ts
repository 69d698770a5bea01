/** How what happens to a group blanket is told: one clause a happening. The names are invented. */
import { describe, expect, it } from 'vitest';
import { happeningWords, numbered } from '../../commands/together/words.ts';
import { replay } from '../../src/core/group/state.ts';
import type { GroupEvent, Happening } from '../../src/core/group/events.ts';
import { groupPlan } from '../core/group/plan.ts';

const by = (maker: string, happened: Happening): GroupEvent => ({
  ...happened,
  by: maker,
  at: '2026-03-02T12:00:00.000Z',
  once: 'x',
});

describe('what happened, in words', () => {
  const plan = groupPlan();
  const [first] = plan.kinds.map(({ name }) => name);
  const state = replay([
    by('m0', { did: 'opened', name: 'Ines', plan }),
    by('m1', { did: 'joined', maker: 'm1', name: 'Rowan', perWeek: 1, colours: [] }),
  ]);
  const told: readonly (readonly [string, Happening, string])[] = [
    ['m0', { did: 'opened', name: 'Ines', plan }, `Ines opened ${plan.name}`],
    ['m0', { did: 'invited', maker: 'm2', name: 'Bo' }, 'Ines named Bo'],
    [
      'm1',
      { did: 'joined', maker: 'm1', name: 'Rowan', perWeek: 2.5, colours: [] },
      'Rowan joined with 2.5 motifs a week',
    ],
    ['m1', { did: 'left', maker: 'm1' }, 'Rowan left'],
    ['m1', { did: 'pledged', maker: 'm1', kind: 0, motifs: 2 }, `Rowan pledged 2 motifs of ${first}`],
    [
      'm0',
      { did: 'pledged', maker: 'm1', kind: 0, motifs: 1 },
      `Ines gave Rowan a share, 1 motif of ${first}`,
    ],
    ['m1', { did: 'released', maker: 'm1', kind: 0, motifs: 1 }, `Rowan gave back 1 motif of ${first}`],
    ['m0', { did: 'released', maker: 'm1', kind: 0, motifs: 2 }, `2 motifs of ${first} were offered again`],
    ['m1', { did: 'handed-in', maker: 'm1', kind: 0, motifs: 1 }, `Rowan handed in 1 motif of ${first}`],
    ['m0', { did: 'accepted', pieces: [1, 2, 3] }, 'Ines accepted #1-3'],
    ['m0', { did: 'returned', pieces: [4], reason: 'a loose end' }, 'Ines sent #4 back: a loose end'],
    ['m0', { did: 'reminded', maker: 'm1' }, 'Rowan was asked whether the pledges stand'],
    ['m1', { did: 'kept', maker: 'm1' }, 'Rowan said that the pledges stand'],
    ['m0', { did: 'handed-over', to: 'm1', name: 'Rowan' }, 'Rowan became the organiser'],
    ['m9', { did: 'closed' }, 'a manager of the server closed it to new pledges'],
    ['m0', { did: 'reopened' }, 'Ines opened it again'],
    ['m0', { did: 'reopened', closes: '2031-05-31' }, 'Ines set the closing day to ⟦at 2031-05-31⟧'],
    ['m0', { did: 'barred', maker: 'm1', reason: 'spam' }, 'Ines keeps Rowan from taking part: spam'],
    ['m0', { did: 'readmitted', maker: 'm1' }, 'Ines lets Rowan take part again'],
    ['m0', { did: 'offered-over', to: 'm1', name: 'Rowan' }, 'Ines asked Rowan to run it'],
    ['m1', { did: 'declined', maker: 'm1' }, 'Rowan would rather not run it'],
    ['m0', { did: 'undone', event: 1 }, 'Ines took something back'],
  ];

  it.each(told)('%s: %o', (maker, happened, words) => {
    expect(happeningWords(by(maker, happened), state)).toBe(words);
  });

  it('says what was taken back, where all that happened is at hand', () => {
    const events = [by('m0', { did: 'closed' }), by('m1', { did: 'declined', maker: 'm1' })];
    expect(happeningWords(by('m0', { did: 'undone', event: 1 }), state, events)).toBe(
      'Ines took back: Rowan would rather not run it',
    );
  });

  it('draws numbers in a row together', () => {
    expect(numbered([7, 1, 2, 3, 3, 9, 10])).toBe('#1-3 #7 #9-10');
    expect(numbered([])).toBe('');
  });
});
