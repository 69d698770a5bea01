/** Where a maker is stuck in the border: the rounds that she counted, held against those of her own blanket. */
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { findRowsCounted } from '../miscount/check-counts.ts';
import type { PartNumbers } from './numbers.ts';
import type { CountedAt } from './stuck.ts';

export type BorderRounds = NonNullable<PartNumbers['border']>;

/** What a round went wrong by: at its four corners alike, or somewhere along a side. */
export type BorderSlip = 'corner-stitches' | 'along-a-side';

export interface BorderCounted {
  readonly from: number;
  readonly last: number;
  /** The first round that departs; unset where every count is right. */
  readonly wrong?: {
    readonly round: number;
    readonly expected: number;
    readonly counted: number;
    /** counted − expected */
    readonly difference: number;
    readonly slip: BorderSlip;
    /** The stitches that every corner has too many, or too few; unset where it is no slip of corners. */
    readonly eachCorner?: number;
  };
}

const CORNERS = 4;

/**
 * What her counts tell, the last of them that of round `row`, or the first that of round 1; undefined where she gave none.
 *
 * Throws Problem: no-such-row, too-many-counts.
 */
export function checkBorder(rounds: BorderRounds, { row, counts }: CountedAt): BorderCounted | undefined {
  const { length: most } = rounds;
  if (row !== undefined && row > most)
    throw new Problem('no-such-row', `Your border ends with round ${most}; there is no round ${row}.`, {
      option: 'row',
      hint: `Give a round from 1 to ${most}.`,
      facts: { row, rows: most },
    });
  if (counts === undefined) return undefined;
  const room = row ?? most;
  if (counts.length > room)
    throw new Problem('too-many-counts', `${counts.length} counts are given for ${room} rounds.`, {
      option: 'counts',
      hint: `Give at most ${room}, one for each round.`,
      facts: { given: counts.length, most: room },
    });
  const { from, last } = findRowsCounted(row ?? counts.length, counts.length);
  const found = counts
    .map((counted, index) => {
      const expected = rounds[from + index - 1]?.stitches ?? counted;
      return { round: from + index, expected, counted, difference: counted - expected };
    })
    .find(({ difference }) => difference !== 0);
  if (found === undefined) return { from, last };
  const eachCorner = found.difference % CORNERS === 0 ? found.difference / CORNERS : undefined;
  const slip = eachCorner === undefined ? 'along-a-side' : 'corner-stitches';
  return { from, last, wrong: { ...found, slip, ...defined({ eachCorner }) } };
}
