/** Spacing increases evenly. */
import { PLAIN, RUN, spreadChanges } from '../core/rows/spacing.ts';
import { lesson, pick, stepsOf } from './lesson.ts';

export const spacing = lesson({
  name: 'spacing',
  title: 'Spacing increases evenly',
  needs: ['reading'],
  idea: 'An increase is worked into one stitch and makes two of it: that stitch is no longer plain. What is left plain is shared over the stretches between the increases. In a flat row there is one stretch more than increases, as there is one before the first and one behind the last.',
  example: {
    given: { from: 44, more: 4 },
    line: 'stitches spread from:44 to:48 worked:flat',
  },
  practice: {
    draw(chance) {
      const more = pick(chance, 3, 6);
      return { more, from: more + (more + 1) * pick(chance, 2 * more, 3 * more) };
    },
    says: ({ from, more }) =>
      `A flat row of ${from} stitches is to get ${more} increases, evenly spaced, with as many plain stitches before the first and behind the last as between them. How many plain stitches lie in each stretch?`,
    asks: () => ({ kind: 'count', of: 'plain stitches' }),
    solve({ from, more }) {
      const { runs, working } = spreadChanges(from, from + more, 'flat');
      return { value: runs[0] ?? Number.NaN, working: stepsOf(working, PLAIN, RUN) };
    },
    slips: [
      {
        key: 'no-stretch-at-the-end',
        value: ({ from, more }) => spreadChanges(from, from + more, 'round').runs[0],
        says: () =>
          'That has as many stretches as increases, as in a round. A flat row has one more: behind the last increase too.',
      },
      {
        key: 'increase-counted',
        value: ({ from, more }) => (spreadChanges(from, from + more, 'flat').runs[0] ?? Number.NaN) + 1,
        says: () =>
          'The stitch that is increased in was counted as a plain one. Take one away for each increase before you share.',
      },
      {
        key: 'as-decreases',
        value: ({ from, more }) => spreadChanges(from, from - more, 'flat').runs[0],
        says: () =>
          'Two stitches were taken away for each increase, as a decrease would use them up. An increase uses up one.',
      },
      {
        key: 'between-only',
        value: ({ from, more }) => Math.floor((from - more) / (more - 1)),
        says: () =>
          'That leaves nothing before the first increase and behind the last: there are stretches at both edges too.',
      },
    ],
    first: () => 'Take one stitch away for each increase. Over how many stretches is the rest shared?',
  },
});
