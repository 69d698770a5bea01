/** The diamond, and what it blocks to. */
import { BLOCKED_SIDE, reckonBlockedSquare } from '../core/size/blocking.ts';
import { GAUGE_OVER } from '../core/base/quantity.ts';
import { cm } from '../core/base/reader.ts';
import { Working } from '../core/base/working.ts';
import { lesson, pick, pickSize, stepsOf } from './lesson.ts';

interface Square {
  readonly size: number;
  readonly stitches: number;
  readonly rows: number;
}

function reckon({ size, stitches, rows }: Square) {
  const working = new Working();
  return { ...reckonBlockedSquare({ stitches, rows, over: GAUGE_OVER }, size, working), working };
}

export const diamond = lesson({
  name: 'diamond',
  title: 'The diamond, and blocking',
  needs: ['swatch', 'growing'],
  idea: 'A stitch is seldom as wide as a row is high, so the square comes off the hook as a diamond. Its edges keep their length while it is pinned square: each is the long side of a right-angled triangle whose other sides are half the widest row and half the way from corner to corner. Mind steam and iron: some yarns melt, and a wet wool blanket is heavy.',
  example: {
    given: { size: 12, stitches: 13, rows: 10 },
    line: 'gauge shape gauge:13x10 size:12',
    figure: 'blocked_side',
  },
  draws: 'diagonals',
  practice: {
    draw: (chance, own) => ({
      size: pickSize(chance, own),
      stitches: pick(chance, 10, 18),
      rows: pick(chance, 7, 14),
    }),
    says(given) {
      const { across, along } = reckon(given);
      return `A square of ${given.size} rising rows measures ${cm(across)} along its widest row and ${cm(along)} from corner to corner. How long is its side when it is blocked square?`;
    },
    asks: () => ({ kind: 'cm', of: 'the side' }),
    solve(given) {
      const { side, working } = reckon(given);
      return { value: side, working: stepsOf(working, BLOCKED_SIDE) };
    },
    slips: [
      {
        key: 'not-halved',
        value: (given) => 2 * reckon(given).side,
        says: () => 'The two lengths run right across. The triangle has only half of each: halve them first.',
      },
      {
        key: 'halves-added',
        value(given) {
          const { across, along } = reckon(given);
          return across / 2 + along / 2;
        },
        says: () =>
          'The two halves were added. They stand square to each other, and the side is the slanting way between their ends: draw the square with its two diagonals.',
      },
      {
        key: 'half-the-widest',
        value: (given) => reckon(given).across / 2,
        says: () =>
          'That is half the widest row. It is one side of the triangle; the other half of the way comes to it.',
      },
      {
        key: 'half-the-length',
        value: (given) => reckon(given).along / 2,
        says: () =>
          'That is half the way from corner to corner. It is one side of the triangle; half the widest row comes to it.',
      },
    ],
    first: () =>
      'Halve both lengths. Take each half times itself, add the two, and find what times itself gives that: the root.',
  },
});
