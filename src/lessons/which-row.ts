/** Finding the row from its count. */
import { findRow } from '../core/rows/which-row.ts';
import { FALLING_COUNT } from '../core/rows/diagonal.ts';
import { planRows } from '../core/rows/index.ts';
import { lesson, pick, pickSize, stepsOf } from './lesson.ts';

export const whichRow = lesson({
  name: 'which-row',
  title: 'Which row am I on?',
  needs: ['shrinking'],
  idea: 'Every count but the widest stands in the square twice: once on the way up, once on the way down. So first look at the edges: do they step out or in? Then the count tells the row.',
  example: {
    given: { size: 12, stitches: 19 },
    line: 'stitches which shape:diagonal size:12 stitches:19',
    figure: 'other_row',
  },
  practice: {
    draw(chance, own) {
      const size = pickSize(chance, own);
      const row = pick(chance, size + 2, 2 * size - 2);
      return { size, stitches: planRows('diagonal', { size }).rows[row - 1]?.count ?? 1 };
    },
    says: ({ size, stitches }) =>
      `You pick up a square of ${size} rising rows. Its edges step in, and the last row has ${stitches} stitches. Which row is that, counted from the first corner?`,
    asks: () => ({ kind: 'row', of: 'row' }),
    solve({ size, stitches }) {
      const { otherRow, working } = findRow({ shape: 'diagonal', size, stitches });
      return { value: otherRow ?? Number.NaN, working: stepsOf(working, FALLING_COUNT) };
    },
    slips: [
      {
        key: 'way-up',
        value: ({ size, stitches }) => findRow({ shape: 'diagonal', size, stitches }).row,
        says: () =>
          'That row has the count too, but on the way up. The edges step in here: look for it after the widest row.',
      },
      {
        key: 'from-the-end',
        value: ({ size, stitches }) => findRow({ shape: 'diagonal', size, stitches: stitches + 2 }).otherRow,
        says: () =>
          'That is the row before it: it has 2 stitches more. The row you hold is done, so it counts itself.',
      },
      {
        key: 'row-to-come',
        value: ({ size, stitches }) => findRow({ shape: 'diagonal', size, stitches: stitches - 2 }).otherRow,
        says: () => 'That is the row you are going to work. The last one that is done is asked.',
      },
      {
        key: 'from-the-widest',
        value: ({ size, stitches }) =>
          (findRow({ shape: 'diagonal', size, stitches }).otherRow ?? Number.NaN) - size,
        says: () =>
          'That counts from the widest row. It is asked from the first corner: the rising rows come before it.',
      },
    ],
    first: ({ size }) =>
      `How many stitches has the widest row, row ${size}? Every row after it has 2 fewer: how often must you take 2 away?`,
  },
});
