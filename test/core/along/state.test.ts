/** The state of a make-along after each thing that can happen, and what cannot have happened. */
import { describe, expect, it } from 'vitest';
import { POSTER, type AlongEvent, type Happening } from '../../../src/core/along/events.ts';
import { NO_WAY } from '../../../src/core/along/own.ts';
import { countProgress, goOn, replay } from '../../../src/core/along/state.ts';
import { BrokenHistory } from '../../../src/core/base/history.ts';
import { history, joins, NOW, plan } from './scene.ts';

let press = 0;
const event = (by: string, happened: Happening, at = NOW.toISOString()): AlongEvent => ({
  ...happened,
  by,
  at,
  once: `state ${(press += 1)}`,
});
const after = (...more: readonly AlongEvent[]) => replay([...history(joins('rowan'), joins('ash')), ...more]);
const CLAIMED = event(POSTER, { did: 'claimed', part: 1 });
const POSTED = event(POSTER, { did: 'posted', part: 1, channel: '9', message: '8' });
const BACK = event('ines', { did: 'taken-back', part: 1 });

describe('what happened to a make-along', () => {
  it('begins with its opening, by its teacher', () => {
    const state = replay(history());
    expect(state).toMatchObject({
      teacher: 'ines',
      teacherName: 'ines',
      open: true,
      hour: 9,
      zone: 'UTC',
      nextPart: 9,
    });
    expect([...state.names]).toEqual([['ines', 'ines']]);
    expect(() => replay([])).toThrow(BrokenHistory);
    expect(() => replay([event('ines', { did: 'left' })])).toThrow(BrokenHistory);
    expect(() => replay([...history(), event('ines', { did: 'undone', event: 0 })])).toThrow(BrokenHistory);
    // That its first event was taken back is looked at where all is replayed; what goes on from a state knows better.
    expect(() =>
      goOn(state, 1, [event('rowan', { did: 'joined', name: 'rowan', ...NO_WAY })], new Set([0])),
    ).not.toThrow();
  });

  it('names who takes part, since when, and as she is called now', () => {
    const later = '2031-01-05T10:00:00.000Z';
    const state = after(event('rowan', { did: 'joined', name: 'Rowan', ...NO_WAY, hook: 4 }, later));
    expect(state.members.get('rowan')).toEqual({
      ...NO_WAY,
      hook: 4,
      name: 'Rowan',
      maker: 'rowan',
      since: NOW.toISOString(),
    });
    expect(state.names.get('rowan')).toBe('Rowan');
    const same = after();
    const again = goOn(same, 3, [event('rowan', { did: 'joined', name: 'rowan', ...NO_WAY })], new Set());
    // A name that stays costs no copy.
    expect(again.names).toBe(same.names);
  });

  it('lets her part go with her, and nobody else’s', () => {
    const state = after(
      event('rowan', { did: 'done', part: 1 }),
      event('ash', { did: 'done', part: 1 }),
      event('ash', { did: 'stuck', part: 2, help: true }),
      event('rowan', { did: 'stuck', part: 2, help: false }),
      event('rowan', { did: 'left' }),
    );
    expect([...state.members.keys()]).toEqual(['ash']);
    expect([...(state.done.get(1) ?? [])]).toEqual(['ash']);
    expect([...state.stuck].map(({ maker }) => maker)).toEqual(['ash']);
    for (const happened of [
      { did: 'left' },
      { did: 'done', part: 1 },
      { did: 'stuck', part: 1, help: false },
    ] as const)
      expect(() => after(event('fern', happened)), happened.did).toThrow(BrokenHistory);
  });

  it('keeps the parts in the order of their days, those of one day as they were added', () => {
    const add = (id: number, from: string) =>
      event('ines', { did: 'part-added', part: { id, title: `part ${id}`, from, work: 'own' } });
    const ids = (...more: AlongEvent[]) => after(...more).parts.map(({ id }) => id);
    expect(ids(add(9, '2031-01-10'))).toEqual([1, 9, 2, 3, 4, 5, 6, 7, 8]);
    expect(ids(add(9, '2030-12-01'))).toEqual([9, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(ids(add(10, '2031-01-13'), add(9, '2031-01-13'))).toEqual([1, 2, 9, 10, 3, 4, 5, 6, 7, 8]);
    expect(after(add(20, '2031-01-10'), add(12, '2031-01-11')).nextPart).toBe(21);
    // A number once given stays its own, though what it was given to was taken back.
    expect(after(add(20, '2031-01-10'), event('ines', { did: 'undone', event: 3 }))).toMatchObject({
      nextPart: 21,
    });
    expect(ids(add(20, '2031-01-10'), event('ines', { did: 'undone', event: 3 }))).not.toContain(20);
  });

  it('moves a part alone, or those after it by as many days, and those before it never', () => {
    const days = (happened: Happening) => after(event('ines', happened)).parts.map(({ from }) => from);
    expect(days({ did: 'part-changed', part: 7, from: '2031-02-18' })).toEqual([
      ...plan()
        .parts.map(({ from }) => from)
        .slice(0, 6),
      '2031-02-18',
      '2031-02-24',
    ]);
    expect(days({ did: 'part-changed', part: 7, from: '2031-02-18', after: 1 }).slice(5)).toEqual([
      '2031-02-10',
      '2031-02-18',
      '2031-02-25',
    ]);
    expect(days({ did: 'part-changed', part: 1, from: '2031-02-25' }).at(-1)).toBe('2031-02-25');
    expect(
      after(event('ines', { did: 'part-changed', part: 2, title: 'x', asks: 'y' })).parts[1],
    ).toMatchObject({ title: 'x', asks: 'y', from: '2031-01-13' });
    for (const happened of [
      { did: 'part-changed', part: 90, title: 'x' },
      { did: 'part-removed', part: 90 },
      { did: 'claimed', part: 90 },
      { did: 'taken-back', part: 90 },
      { did: 'post-anew', part: 90 },
    ] as const)
      expect(() => after(event('ines', happened)), happened.did).toThrow(BrokenHistory);
    expect(() => after(event('rowan', { did: 'done', part: 90 }))).toThrow(BrokenHistory);
    expect(() => after(event('rowan', { did: 'stuck', part: 90, help: false }))).toThrow(BrokenHistory);
  });

  it('counts nothing of a part that was removed', () => {
    const state = after(
      event('rowan', { did: 'done', part: 1 }),
      event('rowan', { did: 'stuck', part: 1, help: true }),
      event('rowan', { did: 'stuck', part: 2, help: true }),
      event('ines', { did: 'part-removed', part: 1 }),
    );
    expect(state.parts[0]?.id).toBe(2);
    expect(state.done.has(1)).toBe(false);
    expect([...state.stuck].map(({ part }) => part)).toEqual([2]);
    expect(countProgress(state, 2)).toEqual({ done: 0, stuck: 1, notBegun: 1 });
  });

  it('knows what became of a part on its day, however late the platform tells', () => {
    const posting = (...more: AlongEvent[]) => after(...more).postings.get(1);
    expect(posting(CLAIMED)).toEqual({ is: 'claimed', at: CLAIMED.at });
    expect(posting(CLAIMED, POSTED)).toEqual({ is: 'posted', at: POSTED.at, channel: '9', message: '8' });
    expect(posting(CLAIMED, POSTED, BACK)).toEqual({
      is: 'taken-back',
      at: BACK.at,
      channel: '9',
      message: '8',
    });
    // Taken back while it was on its way.
    expect(posting(CLAIMED, BACK, POSTED)).toMatchObject({ is: 'taken-back', message: '8' });
    const refused = event(POSTER, { did: 'not-posted', part: 1 });
    expect(posting(CLAIMED, refused)).toBeUndefined();
    expect(posting(CLAIMED, BACK, refused)).toMatchObject({ is: 'taken-back' });
    const anew = event('ines', { did: 'post-anew', part: 1 });
    expect(posting(CLAIMED, POSTED, anew)).toMatchObject({ is: 'anew', channel: '9', message: '8' });
    const gone = event(POSTER, { did: 'message-gone', part: 1 });
    expect(posting(CLAIMED, POSTED, BACK, gone)).toEqual({ is: 'taken-back', at: BACK.at });
    expect(posting(CLAIMED, POSTED, anew, gone)).toEqual({ is: 'anew', at: anew.at });
    expect(posting(CLAIMED, POSTED, gone)).toMatchObject({ is: 'taken-back' });
    expect(posting(gone)).toBeUndefined();
  });

  it('is led, closed and opened as it was said last', () => {
    const offered = event('ines', { did: 'offered-over', to: 'rowan', name: 'Rowan' });
    expect(after(offered)).toMatchObject({ teacher: 'ines', offeredTo: { maker: 'rowan', name: 'Rowan' } });
    const handed = after(offered, event('rowan', { did: 'handed-over', to: 'rowan', name: 'Rowan' }));
    expect(handed).toMatchObject({ teacher: 'rowan', teacherName: 'Rowan', offeredTo: undefined });
    expect(handed.names.get('rowan')).toBe('Rowan');
    const closed = event('ines', { did: 'closed' });
    expect(after(closed).open).toBe(false);
    expect(after(closed, event('ines', { did: 'reopened' })).open).toBe(true);
    expect(after(event('ines', { did: 'hour-set', hour: 18, zone: 'Europe/Berlin' }))).toMatchObject({
      hour: 18,
      zone: 'Europe/Berlin',
    });
  });

  it('counts what stands, with its numbers, on from where a state was left', () => {
    const before = history(joins('rowan'), joins('ash'));
    const more = [
      event('rowan', { did: 'done', part: 1 }),
      event('ash', { did: 'done', part: 1 }),
      event('ash', { did: 'undone', event: 4 }),
    ];
    const whole = replay([...before, ...more]);
    expect([...whole.standing].map(({ event: number }) => number)).toEqual([0, 1, 2, 3]);
    expect([...(whole.done.get(1) ?? [])]).toEqual(['rowan']);
    const step = goOn(replay(before), 3, more.slice(0, 1), new Set());
    expect([...step.standing].map(({ event: number }) => number)).toEqual([0, 1, 2, 3]);
    const shared = replay(before);
    const one = goOn(shared, 3, more.slice(0, 1), new Set());
    const two = goOn(
      one,
      4,
      [event('ash', { did: 'done', part: 1 }), event('ash', { did: 'done', part: 2 })],
      new Set(),
    );
    expect([shared, one, two].map(({ done }) => [...(done.get(1) ?? [])])).toEqual([
      [],
      ['rowan'],
      ['rowan', 'ash'],
    ]);
    expect(one.done.has(2)).toBe(false);
  });
});
