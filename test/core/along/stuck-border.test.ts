/** The rounds of a border as somebody counted them. */
import { describe, expect, it } from 'vitest';
import { checkBorder } from '../../../src/core/along/stuck-border.ts';
import { code } from './scene.ts';

/** 82 across and 99 down, three in each corner. */
const ROUNDS = [
  { stitches: 374, across: 82, down: 99 },
  { stitches: 382, across: 84, down: 101 },
  { stitches: 390, across: 86, down: 103 },
];

describe('the rounds of a border', () => {
  it('are right where they are', () => {
    expect(checkBorder(ROUNDS, { counts: [374, 382, 390] })).toEqual({ from: 1, last: 3 });
    expect(checkBorder(ROUNDS, { row: 3, counts: [382, 390] })).toEqual({ from: 2, last: 3 });
    expect(checkBorder(ROUNDS, { row: 2 })).toBeUndefined();
  });

  it('go wrong at the corners where every corner has as many too many or too few', () => {
    expect(checkBorder(ROUNDS, { row: 2, counts: [374, 390] })?.wrong).toEqual({
      round: 2,
      expected: 382,
      counted: 390,
      difference: 8,
      slip: 'corner-stitches',
      eachCorner: 2,
    });
    expect(checkBorder(ROUNDS, { row: 3, counts: [386] })?.wrong).toMatchObject({
      round: 3,
      difference: -4,
      eachCorner: -1,
    });
  });

  it('go wrong along a side where they do not, at the first round that departs', () => {
    const { wrong } = checkBorder(ROUNDS, { counts: [373, 382, 380] }) ?? {};
    expect(wrong).toEqual({
      round: 1,
      expected: 374,
      counted: 373,
      difference: -1,
      slip: 'along-a-side',
    });
  });

  it('are no more than there are', () => {
    expect(() => checkBorder(ROUNDS, { row: 4 })).toThrow(code('no-such-row'));
    expect(() => checkBorder(ROUNDS, { row: 1, counts: [374, 382] })).toThrow(code('too-many-counts'));
    expect(() => checkBorder(ROUNDS, { counts: [1, 2, 3, 4] })).toThrow(code('too-many-counts'));
  });
});
