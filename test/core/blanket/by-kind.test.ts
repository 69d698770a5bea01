/** Numbers by kind, as they are typed. */
import { describe, expect, it } from 'vitest';
import { readMinutes } from '../../../src/core/blanket/by-kind.ts';
import { refused } from '../../refused.ts';

const KINDS = ['moss square', 'sand square', 'plum'];

describe('minutes by kind', () => {
  it.each([
    ['45', [45]],
    [' 37,5 min ', [37.5]],
    ['45 minutes', [45]],
    ['1 minute', [1]],
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

  it('says how it is typed, kind by kind', () => {
    const hint = 'Say it kind by kind, like A 45, B 60, C 75; one number is for the first kind.';
    expect(() => readMinutes('soon', KINDS)).toThrow(expect.objectContaining({ hint }) as Error);
  });
});
