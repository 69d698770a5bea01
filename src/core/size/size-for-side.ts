/** Which size of diagonal square comes out at a wished side, at one's own gauge. */
import { defined } from '../base/defined.ts';
import type { Gauge } from '../base/quantity.ts';
import { percentOff } from '../base/percent-off.ts';
import { Problem } from '../base/problem.ts';
import { cm } from '../base/reader.ts';
import { Working } from '../base/working.ts';
import { MOST_ROWS } from '../base/limits.ts';
import { reckonBlockedSide } from './blocking.ts';
import { computeBlockedSide } from './resize.ts';

export const OFF_WISH = percentOff('side', 'wished', {
  label: 'Larger (+) or smaller (−) than wished, per cent',
  unit: 'cm',
});

/** A size in rising rows and the side, in cm, that it blocks to. */
export interface SizeAndSide {
  readonly size: number;
  readonly side: number;
}

export interface SizeForSide extends SizeAndSide {
  /** In per cent of the wish. */
  readonly off: number;
  /** The sizes next to it, where there are any. */
  readonly smaller?: SizeAndSide;
  readonly larger?: SizeAndSide;
  /** What the pattern's own size comes to, where it was given. */
  readonly pattern?: SizeAndSide;
  readonly working: Working;
}

/**
 * The size whose blocked side is nearest to `side` (cm), of two as near the smaller. `size` is the pattern's own, to be compared.
 * Throws a Problem where the gauge has no rows or no size reaches the side.
 */
export function findSizeForSide(asked: {
  gauge: Gauge;
  side: number;
  size?: number | undefined;
}): SizeForSide {
  const { gauge, side: wished } = asked;
  const at = (size: number): SizeAndSide => ({ size, side: computeBlockedSide(gauge, size) });
  const largest = at(MOST_ROWS);
  if (wished > largest.side)
    throw new Problem(
      'beyond-largest',
      `At this gauge even ${MOST_ROWS} rising rows come to no more than ${cm(largest.side)}.`,
      {
        option: 'side',
        hint: `Give a side up to ${cm(largest.side)}.`,
        facts: { most: largest.side, given: wished },
      },
    );
  // The side grows with every row: the size is found between 1 and the largest by halving.
  let low = 1;
  let high = MOST_ROWS;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (at(middle).side >= wished) high = middle;
    else low = middle + 1;
  }
  const above = at(low);
  const below = low > 1 ? at(low - 1) : undefined;
  const best = below && wished - below.side <= above.side - wished ? below : above;
  const working = new Working();
  const side = reckonBlockedSide(gauge, best.size, working);
  const off = working.do(OFF_WISH, { side, wished });
  const pattern =
    asked.size === undefined
      ? undefined
      : asked.size === best.size
        ? { ...best, side }
        : { size: asked.size, side: reckonBlockedSide(gauge, asked.size, working) };
  return defined({
    size: best.size,
    side,
    off,
    smaller: best.size > 1 ? at(best.size - 1) : undefined,
    larger: best.size < MOST_ROWS ? at(best.size + 1) : undefined,
    pattern,
    working,
  });
}
