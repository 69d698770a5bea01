/** How many squares make a blanket. */
import { MOTIFS, resize } from '../core/size/resize.ts';
import { cm, size } from '../core/base/reader.ts';
import { CM_PER_INCH } from '../standards/units.ts';
import { lesson, pick, pickLength, stepsOf } from './lesson.ts';

interface Wished {
  readonly width: number;
  readonly height: number;
  readonly border: number;
  readonly side: number;
}

const reckon = ({ width, height, border, side }: Wished) =>
  resize({ width, height, side, border, endsAMotif: 2 });

export const howMany = lesson({
  name: 'how-many',
  title: 'How many squares, and how large',
  needs: [],
  idea: 'A border lies on both sides: take it away twice from the width and twice from the height before you divide by the side of a square. Then the squares of a row times the rows are all of them.',
  example: {
    given: { width: 124, height: 154, border: 2, side: 15 },
    line: 'resize width:124cm height:154cm border:2cm side:15cm',
    figure: 'motifs',
  },
  inInches: {
    given: {
      width: 46 * CM_PER_INCH,
      height: 58 * CM_PER_INCH,
      border: 2 * CM_PER_INCH,
      side: 6 * CM_PER_INCH,
    },
    line: 'resize width:46in height:58in border:2in side:6in',
    figure: 'motifs',
  },
  practice: {
    draw(chance, own) {
      const side = pickLength(chance, own, [9, 20], [4, 8]);
      const border = pickLength(chance, own, [5, 12], [2, 5]);
      return {
        side,
        border,
        width: side * pick(chance, 5, 9) + 2 * border,
        height: side * pick(chance, 7, 13) + 2 * border,
      };
    },
    says: ({ width, height, border, side }) =>
      `A blanket of ${size(width, height)} has a border of ${cm(border)} all round. How many squares with a side of ${cm(side)} does it take?`,
    asks: () => ({ kind: 'count', of: 'squares' }),
    solve(given) {
      const { best, working } = reckon(given);
      return { value: best.motifs, working: stepsOf(working, MOTIFS) };
    },
    slips: [
      {
        key: 'border-forgotten',
        value: ({ width, height, side }) =>
          Math.floor(width / side + 1e-9) * Math.floor(height / side + 1e-9),
        says: () => 'The border was filled with squares too. Take it away on both sides first.',
      },
      {
        key: 'border-added',
        value: ({ width, height, border, side }) =>
          Math.floor((width + 2 * border) / side + 1e-9) * Math.floor((height + 2 * border) / side + 1e-9),
        says: () => 'The border was added to the size. The size is that of the whole blanket: take it away.',
      },
      {
        key: 'along-two-edges',
        value(given) {
          const { best } = reckon(given);
          return best.columns + best.rows;
        },
        says: () => 'Those are the squares along two edges. All of them are the one times the other.',
      },
      {
        key: 'one-row-fewer',
        value(given) {
          const { best } = reckon(given);
          return best.motifs - best.columns;
        },
        says: () =>
          'One row of squares is missing. Lay the height out once more, after the border is taken away.',
      },
    ],
    first: () =>
      'What is left of the width when the border is taken away at both sides? How many sides go into that?',
  },
});
