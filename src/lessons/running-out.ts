/** A ball that may not last. */
import { IN_REACH, reckonLeft, SHARE_PER_STITCH } from '../core/yarn/left.ts';
import { g } from '../core/base/reader.ts';
import { planRows } from '../core/rows/index.ts';
import { sumCounts } from '../core/rows/plan.ts';
import { G_PER_OUNCE } from '../standards/units.ts';
import { lesson, pick, pickWeight, stepsOf } from './lesson.ts';

interface AtHand {
  readonly size: number;
  readonly each: number;
  readonly left: number;
  readonly done: number;
}

const reckon = ({ size, each, left, done }: AtHand) =>
  reckonLeft({ left, each, size, doneRow: done, shape: 'diagonal', ball: { m: 170, g: 100 } });

export const runningOut = lesson({
  name: 'running-out',
  title: 'A ball that may not last',
  needs: ['weighing', 'which-row'],
  idea: 'Rows of this square are not alike: the ones in the middle take many times the yarn of those at the corners. So what is left goes by stitches, not by rows: how many stitches lie in it, and as far as which row do they reach? Keep a tail back to fasten off.',
  example: {
    given: { size: 12, each: 12, left: 5, done: 6 },
    line: 'yardage left left:5g ball:170m/100g shape:diagonal size:12 each:12g done_row:6',
    figure: 'last_row',
  },
  inInches: {
    given: { size: 12, each: 0.5 * G_PER_OUNCE, left: 0.2 * G_PER_OUNCE, done: 6 },
    line: 'yardage left left:0.2oz ball:170m/100g shape:diagonal size:12 each:0.5oz done_row:6',
    figure: 'last_row',
  },
  practice: {
    draw: (chance, own) => {
      const size = pick(chance, 9, 14);
      return {
        size,
        each: pickWeight(chance, own, [12, 24], [5, 9]),
        left: pickWeight(chance, own, [3, 7], [1, 3]),
        done: pick(chance, 4, size - 1),
      };
    },
    says: (given) =>
      `A square of ${given.size} rising rows, ${sumCounts(planRows('diagonal', given))} stitches in all, weighs ${g(given.each)} when it is done. ${given.done} rows are worked and ${g(given.left)} of yarn is left. Which is the last row that you can finish?`,
    asks: () => ({ kind: 'row', of: 'row' }),
    solve(given) {
      const { lastRow, working } = reckon(given);
      return { value: lastRow, working: stepsOf(working, SHARE_PER_STITCH, IN_REACH) };
    },
    slips: [
      {
        key: 'by-rows',
        value: ({ size, each, left, done }) => done + Math.floor((left / each) * 2 * size),
        says: () =>
          'That shares the yarn evenly over the rows. They have different lengths: share it over the stitches.',
      },
      {
        key: 'from-the-beginning',
        value: (given) => reckon({ ...given, done: 0 }).lastRow,
        says: ({ done }) =>
          `That begins again at the corner. ${done} rows are there already: count the stitches from the row after them.`,
      },
      {
        key: 'begun-row',
        value: (given) => reckon(given).lastRow + 1,
        says: () =>
          'That row you can begin, but not finish, or not with a tail left over. Go back to the last one that is whole.',
      },
      {
        key: 'rows-more',
        value: (given) => reckon(given).lastRow - given.done,
        says: () => 'That is how many rows you can still work. Asked is the number of the last of them.',
      },
    ],
    first: () =>
      'How much does one stitch weigh? The square’s weight over all its stitches. Then how many stitches are in what is left?',
  },
});
