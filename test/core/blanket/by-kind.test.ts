/** Numbers by kind, as they are typed. */
import { describe, expect, it } from 'vitest';
import { findKindCalled, readByKind, readMinutes } from '../../../src/core/blanket/by-kind.ts';
import { refused } from '../../refused.ts';

const KINDS = ['moss square', 'sand square', 'plum'];

describe('a kind', () => {
  it('is called by its name, its letter, or a beginning that no other has', () => {
    const called = (typed: string, names = KINDS) => findKindCalled(typed, names);
    expect(
      ['moss square', 'SAND SQUARE', 'plum', 'a', 'C', 'pl', 'sand'].map((typed) => called(typed)),
    ).toEqual([0, 1, 2, 0, 2, 2, 1]);
    expect(['', 'd', 'z', 'square', 'p'].map((typed) => called(typed))).toEqual([-1, -1, -1, -1, -1]);
    // A kind that is named by a letter is that one, before the letter of another.
    expect(called('B', ['b', 'a'])).toBe(0);
    // Two letters are a beginning, and no letter.
    expect(called('mo')).toBe(0);
    expect(called('ab')).toBe(-1);
  });
});

describe('numbers by kind', () => {
  const read = (text: string) => readByKind(text, KINDS, { option: 'counts', hint: 'Like A 12.' });
  it.each<[string, (number | undefined)[]]>([
    ['A 12, B 8', [12, 8, undefined]],
    ['  A12 ;  C3  ', [12, undefined, 3]],
    ['moss square × 12', [12, undefined, undefined]],
    ['plum x12,sand:8', [undefined, 8, 12]],
    ['plum = 1234', [undefined, undefined, 1234]],
  ])('%s', (text, numbers) => {
    expect(read(text)).toEqual(numbers);
  });
  it.each<[string, string, object]>([
    ['A 12345', 'count-unreadable', { message: '“A 12345” is not a kind with its number.' }],
    ['A 12, ', 'count-unreadable', { message: '“” is not a kind with its number.' }],
    [' A 12 b ', 'count-unreadable', { message: '“A 12 b” is not a kind with its number.' }],
    ['A12b', 'count-unreadable', {}],
    ['-A12', 'count-unreadable', {}],
    ['A 12-', 'count-unreadable', {}],
    [
      'clay 3',
      'no-such-kind',
      {
        facts: { kind: 'clay' },
        hint: 'Its kinds are A (moss square), B (sand square), C (plum).',
      },
    ],
    ['B 3, sand 4', 'kind-twice', { facts: { kind: 'B' }, hint: 'Like A 12.' }],
  ])('not %s', (text, code, parts) => {
    expect(() => read(text)).toThrow(refused(code, { option: 'counts', ...parts }));
  });
});

describe('minutes by kind', () => {
  it.each([
    ['45', [45]],
    [' 37,5 min ', [37.5]],
    ['45 minutes', [45]],
    ['1 minute', [1]],
    ['37.125', [37.125]],
    ['10000', [10_000]],
    ['A 45, C 30', [45, undefined, 30]],
    ['sand square: 60; plum=30', [undefined, 60, 30]],
    ['b60', [undefined, 60, undefined]],
  ])('reads “%s”', (text, minutes) => {
    const read = readMinutes(text, KINDS);
    expect(KINDS.map((_, kind) => read[kind])).toEqual(KINDS.map((_, kind) => minutes[kind]));
  });

  it.each([
    ['soon', 'count-unreadable'],
    ['', 'count-unreadable'],
    ['A 45, D 30', 'no-such-kind'],
    ['A 45, a 30', 'kind-twice'],
    ['0', 'too-small'],
    ['0.5', 'too-small'],
    ['A 0', 'too-small'],
    ['10001', 'too-large'],
    ['-45', 'count-unreadable'],
  ])('refuses “%s”', (text, code) => {
    expect(() => readMinutes(text, KINDS)).toThrow(refused(code, { option: 'minutes' }));
  });

  it('says from where to where they go', () => {
    for (const [text, message, given] of [
      ['0.5', '0.5 is too small here.', 0.5],
      ['10001', '10001 is too large here.', 10_001],
    ] as const)
      expect(() => readMinutes(text, KINDS)).toThrow(
        refused(text === '0.5' ? 'too-small' : 'too-large', {
          message,
          facts: { given, min: 1, max: 10_000 },
        }),
      );
    expect(() => readMinutes('45 minutes each', KINDS)).toThrow(refused('count-unreadable'));
  });

  it('says how it is typed, kind by kind', () => {
    const hint = 'Say it kind by kind, like A 45, B 60, C 75; one number is for the first kind.';
    expect(() => readMinutes('soon', KINDS)).toThrow(expect.objectContaining({ hint }) as Error);
  });
});
