import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lay, readLaidBy, writeLaidBy, type LaidBy } from '../../../src/core/blanket/layout.ts';
import {
  readTurnedBy,
  readTurnings,
  writeTurnings,
  turnsOf,
  writeTurnedBy,
  type Turnings,
} from '../../../src/core/blanket/turnings.ts';
import { asking } from '../../asking.ts';

const turns = fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 26 });
const turnings: fc.Arbitrary<Turnings> = fc.oneof(fc.constant('random' as const), turns);

describe('turnings', () => {
  it('are read back as they were written, within what is kept of a blanket', () => {
    fc.assert(
      fc.property(turnings, fc.integer({ min: 1, max: 9999 }), (own, seed) => {
        const laid: LaidBy = { arrangement: 'scattered', setting: 'upright', turnings: own, seed };
        expect(writeLaidBy(laid).length).toBeLessThanOrEqual(40);
        const back = readLaidBy(writeLaidBy(laid));
        expect(back).toMatchObject({ arrangement: 'scattered', setting: 'upright', seed });
        const kinds = Array.from({ length: 26 }, (_, kind) => kind);
        expect(turnsOf(back.turnings!, kinds, seed)).toEqual(turnsOf(own, kinds, seed));
      }),
      { numRuns: 200 },
    );
  });

  it('by kind turn every motif of a kind alike; at random the same seed turns them the same way, and all four ways come up', () => {
    const laid: LaidBy = { arrangement: 'checked', setting: 'upright', turnings: [0, 3, 1], seed: 5 };
    for (const { kind, turn } of lay({ columns: 7, rows: 6, kinds: 3, laid }))
      expect(turn).toBe([0, 3, 1][kind]);
    const random = { ...laid, turnings: 'random' as const };
    const once = lay({ columns: 7, rows: 6, kinds: 3, laid: random });
    expect(lay({ columns: 7, rows: 6, kinds: 3, laid: random })).toEqual(once);
    expect(new Set(once.map(({ turn }) => turn)).size).toBe(4);
    expect(lay({ columns: 7, rows: 6, kinds: 3, laid: { ...random, seed: 6 } })).not.toEqual(once);
  });

  it('are typed by letter or name, in quarter turns or degrees', () => {
    const names = ['moss square', 'sand square', 'plum'];
    expect(readTurnings('A 0, B 1, C 2', names)).toEqual([0, 1, 2]);
    expect(readTurnings('plum 270; a90', names)).toEqual([1, 0, 3]);
    expect(readTurnings('Random', names)).toBe('random');
    for (const [text, code] of [
      ['B 4', 'no-quarter-turn'],
      ['B 45', 'no-quarter-turn'],
      ['D 1', 'no-such-kind'],
      ['A 1, A 2', 'kind-twice'],
      ['sideways', 'count-unreadable'],
    ])
      expect(() => readTurnings(text!, names)).toThrow(expect.objectContaining({ code, option: 'turnings' }));
  });
});

describe('/blanket layout turnings', () => {
  const started = async () => {
    const room = asking();
    await room.ask('/motif define name:moss shape:diagonal size:6 colours:"6 rows moss, 6 rows sand"');
    await room.ask('/motif define name:plum shape:diagonal size:6 colours:"6 rows plum, 6 rows sand"');
    await room.ask(
      '/blanket start name:throw kinds:"moss, plum" columns:4 rows:4 arrange:checked setting:pinwheel',
    );
    return room;
  };
  const map = async (room: Awaited<ReturnType<typeof started>>) =>
    (await room.ask('/blanket layout')).lines!.filter((line) => /^(?:[AB]\d? ?)+$/.test(line));

  it('turn by kind and stay when the blanket grows and a kind is added or dropped', async () => {
    const room = await started();
    const answer = await room.ask('/blanket layout turnings:"A 0, B 1"');
    expect(answer.lines!.join('\n')).toContain('A as it is, B a quarter turn clockwise');
    expect(await map(room)).toEqual(['A0 B1 A0 B1', 'B1 A0 B1 A0', 'A0 B1 A0 B1', 'B1 A0 B1 A0']);
    await room.ask('/blanket layout columns:2 rows:2');
    expect(await map(room)).toEqual(['A0 B1', 'B1 A0']);
    await room.ask('/motif define name:fern shape:diagonal size:6');
    await room.ask('/blanket kinds add:fern');
    await room.ask('/blanket kinds drop:moss');
    expect(await map(room)).toEqual(['A1 B0', 'B0 A1']);
  });

  it('turn at random from a seed and leave the kinds where they are', async () => {
    const room = await started();
    await room.ask('/blanket layout turnings:random seed:7');
    const first = await map(room);
    expect(first.map((row) => row.replace(/\d/g, ''))).toEqual(['A B A B', 'B A B A', 'A B A B', 'B A B A']);
    await room.ask('/blanket layout turnings:random seed:8');
    expect(await map(room)).not.toEqual(first);
    await room.ask('/blanket layout turnings:random seed:7');
    expect(await map(room)).toEqual(first);
    // A setting takes their place.
    await room.ask('/blanket layout setting:upright');
    expect(await map(room)).toEqual(['ABAB', 'BABA', 'ABAB', 'BABA']);
  });

  it('are refused beside a setting', async () => {
    const room = await started();
    expect(await room.ask('/blanket layout setting:pinwheel turnings:"A 1"')).toMatchObject({
      option: 'turnings',
    });
    expect(await room.ask('/blanket layout map:A0B1/B1A0 turnings:"A 1"')).toMatchObject({
      option: 'turnings',
    });
  });
});

describe('turnings in words', () => {
  it('say of every kind how it lies', () => {
    expect(writeTurnings([0, 1, 2, 3], 5)).toBe(
      'A as it is, B a quarter turn clockwise, C half a turn, D a quarter turn anticlockwise, E as it is',
    );
    expect(writeTurnings('random', 3)).toBe('each motif at random');
  });

  it('are kept two kinds to a digit', () => {
    expect(writeTurnedBy([1, 2, 3])).toBe('by-kind-93');
    expect(readTurnedBy('by-kind-93')).toEqual([1, 2, 3, 0]);
    expect(writeTurnedBy('random')).toBe('random');
    for (const none of [
      'pinwheel',
      'by-kind-',
      'by-kind-9g',
      'by-kind-12345678901234',
      'xby-kind-9',
      'by-kind-9 ',
    ])
      expect(readTurnedBy(none)).toBeUndefined();
    expect(readTurnedBy('by-kind-1234567890123')).toHaveLength(26);
  });

  it('take quarter turns, or degrees that are such', () => {
    const names = ['moss', 'sand'];
    expect(readTurnings('A 3, B 180', names)).toEqual([3, 2]);
    expect(readTurnings(' at random ', names)).toBe('random');
    for (const [text, turns] of [
      ['A 4', 4],
      ['A 89', 89],
      ['A 360', 360],
      ['A 100', 100],
    ] as const)
      expect(() => readTurnings(text, names)).toThrow(
        expect.objectContaining({
          code: 'no-quarter-turn',
          message: `Kind A cannot be turned by ${turns}.`,
          hint: 'Write each kind with its quarter turns clockwise, 0 to 3, like A 0, B 1; or random.',
          facts: { turns },
        }),
      );
    expect(() => readTurnings('A 4', ['moss'])).toThrow(
      expect.objectContaining({ hint: expect.stringContaining('like A 1; or random') }),
    );
  });
});
