/** Joining in strips. */
import { SEAM_LENGTH, joinMotifs } from '../core/edges/seams.ts';
import { cm } from '../core/base/reader.ts';
import { CM_PER_INCH } from '../standards/units.ts';
import { lesson, pick, pickLength, stepsOf } from './lesson.ts';

interface Laid {
  readonly columns: number;
  readonly rows: number;
  readonly side: number;
}

const CM_PER_M = 100;
const join = (given: Laid) => joinMotifs({ ...given, method: 'whip', hook: 5, wpi: 10 });

export const joining = lesson({
  name: 'joining',
  title: 'Joining in strips',
  needs: ['how-many'],
  idea: 'Squares are joined to strips first, then the strips to each other: fewer threads, and the corners meet. Between two squares there is one seam; along the outer edges there is none. So a strip has one seam fewer than it has squares.',
  example: {
    given: { columns: 8, rows: 10, side: 15 },
    line: 'joining columns:8 rows:10 side:15cm',
    figure: 'seam_length',
  },
  inInches: {
    given: { columns: 8, rows: 10, side: 6 * CM_PER_INCH },
    line: 'joining columns:8 rows:10 side:6in',
    figure: 'seam_length',
  },
  draws: 'strips',
  practice: {
    draw: (chance, own) => ({
      columns: pick(chance, 4, 9),
      rows: pick(chance, 5, 12),
      side: pickLength(chance, own, [10, 20], [4, 8]),
    }),
    says: ({ columns, rows, side }) =>
      `${columns} × ${rows} squares with a side of ${cm(side)} are joined. How long are all seams together?`,
    asks: () => ({ kind: 'm', of: 'seam' }),
    solve(given) {
      const { seamLength, working } = join(given);
      return { value: seamLength, working: stepsOf(working, SEAM_LENGTH) };
    },
    slips: [
      {
        key: 'outer-edges-too',
        value: ({ columns, rows, side }) => (side * (columns * (rows + 1) + rows * (columns + 1))) / CM_PER_M,
        says: () => 'The outer edges are in it. They get the border, not a seam.',
      },
      {
        key: 'every-edge',
        value: ({ columns, rows, side }) => (4 * side * columns * rows) / CM_PER_M,
        says: () =>
          'That is the edges of every square. A seam takes two of them at once, and the outer ones take none.',
      },
      {
        key: 'one-way-only',
        value: ({ columns, rows, side }) => (side * columns * (rows - 1)) / CM_PER_M,
        says: () => 'Those are the seams one way. The others, square to them, come on top.',
      },
      {
        key: 'long-seams-once',
        value: ({ columns, rows, side }) => (side * (columns + rows - 2)) / CM_PER_M,
        says: () => 'Each seam was taken as long as one square. It runs through the whole blanket.',
      },
    ],
    first: ({ columns, rows, side }) =>
      `Lay it out: between ${columns} squares of a row there are how many seams, each ${cm(side)} long, and that in ${rows} rows? Then the other way.`,
  },
});
