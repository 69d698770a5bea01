/** Where a count went wrong. */
import { checkCounts } from '../core/miscount/check-counts.ts';
import { planRows } from '../core/rows/index.ts';
import { lesson, pick, pickOf, pickSize } from './lesson.ts';

interface Counted {
  readonly size: number;
  readonly wrong: number;
  readonly off: number;
  readonly last: number;
}

/** As they should be up to the slip, and off by it from there on: nobody noticed. */
const countsOf = ({ size, wrong, off, last }: Counted): number[] =>
  planRows('diagonal', { size })
    .rows.slice(0, last)
    .map(({ row, count }) => (row < wrong ? count : count + off));

export const whereWrong = lesson({
  name: 'where-wrong',
  title: 'Where a count went wrong',
  needs: ['growing'],
  idea: 'A slip is carried along: from the row where it happened every count is off by the same. So do not look at the last row, where you noticed it. Write down what every row should have beside what it has, and the first pair that differs is the place.',
  example: {
    given: { size: 12, wrong: 5, off: -1, last: 8 },
    line: 'stitches check shape:diagonal size:12 counts:"3 5 7 9 10 12 14 16"',
    figure: 'first_wrong_row',
  },
  practice: {
    draw(chance, own) {
      const size = pickSize(chance, own, 9);
      const last = pick(chance, 7, 9);
      return { size, last, wrong: pick(chance, 3, last - 2), off: pickOf(chance, [-1, 1, -2]) };
    },
    says: (given) =>
      `A square of ${given.size} rising rows was counted row by row: ${countsOf(given).join(', ')}. In which row did it go wrong?`,
    asks: () => ({ kind: 'row', of: 'row' }),
    solve(given) {
      const { wrong, working } = checkCounts(planRows('diagonal', given), countsOf(given));
      return { value: wrong?.row ?? Number.NaN, working: working.steps };
    },
    slips: [
      {
        key: 'where-noticed',
        value: ({ last }) => last,
        says: () =>
          'That row is off as well, but it only carries on what was wrong before. Go back along the counts until they are right.',
      },
      {
        key: 'last-right',
        value: ({ wrong }) => wrong - 1,
        says: () => 'That row is still right. The one after it is the first that is not.',
      },
      {
        key: 'one-late',
        value: ({ wrong }) => wrong + 1,
        says: () => 'A row before it is off already: compare each count with 3, 5, 7 … from the beginning.',
      },
      {
        key: 'the-count',
        value: (given) => countsOf(given)[given.wrong - 1],
        says: () => 'That is the count which is wrong. Which row has it? Number the counts from 1.',
      },
    ],
    first: () => 'Write 3, 5, 7, 9 … under the counts and put a finger on the first pair that differs.',
  },
});
