/** The corner-out square while it grows. */
import { planRows } from '../core/rows/index.ts';
import { lesson, pick, pickSize, solveBy } from './lesson.ts';

const countAt = ({ size }: { readonly size: number }, row: number) =>
  planRows('diagonal', { size }).rows[row - 1]?.count;

export const growing = lesson({
  name: 'growing',
  title: 'The square from corner to corner: growing',
  needs: ['reading'],
  idea: 'The square begins in a corner with 3 stitches. Every row has one stitch more at each of its ends, so it grows by 2 a row: 3, 5, 7, 9 … Twice the number of the row and one more is what you should count.',
  example: {
    given: { size: 12, row: 9 },
    line: 'stitches row shape:diagonal size:12 row:9',
    figure: 'stitches',
  },
  draws: 'square',
  practice: {
    draw(chance, own) {
      const size = pickSize(chance, own);
      return { size, row: pick(chance, 5, size - 1) };
    },
    says: ({ size, row }) =>
      `Your square is to have ${size} rising rows. How many stitches has row ${row} when it is done?`,
    asks: () => ({ kind: 'count', of: 'stitches' }),
    solve({ size, row }) {
      const { formula, values } = planRows('diagonal', { size }).countFormula(row);
      return solveBy(formula, values);
    },
    slips: [
      {
        key: 'one-row-ahead',
        value: (given) => countAt(given, given.row + 1),
        says: ({ row }) =>
          `That is the count of the row after it. Touch the rows one by one from the corner and say their numbers: stop at ${row}.`,
      },
      {
        key: 'one-row-behind',
        value: (given) => countAt(given, given.row - 1),
        says: () =>
          'That is the count of the row before it. The row of 3 stitches in the corner is row 1: it is counted too.',
      },
      {
        key: 'one-end-only',
        value: ({ row }) => row + 2,
        says: () =>
          'That grows by 1 a row, as if only one end had its increase. Look at both edges: each must step out by one stitch in every row.',
      },
      {
        key: 'chain-counted',
        value: (given) => (countAt(given, given.row) ?? 0) + 1,
        says: () =>
          'That is even, and every row of this square is odd: most likely a chain was counted besides the stitches. Count the Vs once more.',
      },
      {
        key: 'start-forgotten',
        value: ({ row }) => 2 * row,
        says: () =>
          'The stitch in the middle is missing: twice the number of the row is what stands left and right of it. Find the middle stitch and count it too.',
      },
    ],
    first: () =>
      'Write down the first rows: 3, 5, 7. By how much does each grow, and how many rows are there from the first?',
  },
});
