/** The corner-out square at its widest and while it shrinks. */
import { planRows } from '../core/rows/index.ts';
import { findWidest } from '../core/rows/plan.ts';
import { lesson, pick, pickSize, solveBy } from './lesson.ts';

const planOf = ({ size }: { readonly size: number }) => planRows('diagonal', { size });
const countAt = (given: { readonly size: number }, row: number) => planOf(given).rows[row - 1]?.count;

export const shrinking = lesson({
  name: 'shrinking',
  title: 'At its widest, and shrinking',
  needs: ['growing'],
  idea: 'When all rising rows are done the square is at its widest: twice the rising rows and one more. From the next row on each end loses a stitch, so it goes down by 2 a row until a single stitch is left in the last corner. It has as many rows on the way down as on the way up.',
  example: {
    given: { size: 12, row: 15 },
    line: 'stitches row shape:diagonal size:12 row:15',
    figure: 'stitches',
  },
  draws: 'square',
  practice: {
    draw(chance, own) {
      const size = pickSize(chance, own);
      return { size, row: pick(chance, size + 3, 2 * size - 2) };
    },
    says: ({ size, row }) =>
      `Your square has ${size} rising rows and has turned. How many stitches has row ${row}, counted from the first corner?`,
    asks: () => ({ kind: 'count', of: 'stitches' }),
    solve({ size, row }) {
      const { formula, values } = planOf({ size }).countFormula(row);
      return solveBy(formula, values);
    },
    slips: [
      {
        key: 'kept-growing',
        value: ({ row }) => planRows('diagonal', { size: row }).rows[row - 1]?.count,
        says: ({ size }) =>
          `That would be so if it had gone on growing. It turned after row ${size}: from there count downwards.`,
      },
      {
        key: 'widest-twice',
        value: (given) => countAt(given, given.row - 1),
        says: () =>
          'That is one row behind, as if the widest row had been worked twice. The row after the widest already has 2 fewer.',
      },
      {
        key: 'one-row-ahead',
        value: (given) => countAt(given, given.row + 1),
        says: () =>
          'That is the count of the row after it. Mark the widest row with a thread and count the rows from there.',
      },
      {
        key: 'one-end-only',
        value: (given) => findWidest(planOf(given)).count - (given.row - given.size),
        says: () =>
          'That goes down by 1 a row, as if only one end lost a stitch. Take two together, or leave one, at both ends.',
      },
      {
        key: 'from-twice-size',
        value: (given) => (countAt(given, given.row) ?? 0) - 1,
        says: () =>
          'That starts from an even number. The widest row is odd, as it has a stitch in the middle: write that row down first.',
      },
    ],
    first: ({ size }) =>
      `Write down the widest row first: that is row ${size}. Then how many rows lie between it and the row that is asked?`,
  },
});
