/** How a border grows round by round. */
import { countBorderRounds, GROWTH, ROUND_TOTAL } from '../core/edges/border.ts';
import { t } from '../core/base/reader.ts';
import { formula, Working } from '../core/base/working.ts';
import { lesson, pick } from './lesson.ts';

interface Grown {
  readonly across: number;
  readonly down: number;
  readonly corner: number;
  readonly round: number;
}

export const LATER_ROUND = formula({
  label: 'Stitches in a later round',
  formula: 'first + (round_number - 1) * growth',
  given: { first: '', round_number: '', growth: '' },
  unit: '',
  source: 'derived: every round after the first has as many more as the one before it',
});

const grow = ({ across, down, corner, round }: Grown, to = round) =>
  countBorderRounds({ across, down, corner, stitches: Array.from({ length: to }, () => 'hdc') });
const totalAt = (given: Grown, round: number) => grow(given, round).rounds.at(-1)?.total ?? Number.NaN;

export const rounds = lesson({
  name: 'rounds',
  title: 'A border, round by round',
  needs: ['border'],
  idea: 'Where several stitches go into one corner stitch, that one stitch is used up: 3 into one makes 2 more, not 3. There are four corners, so such a round has 8 more than the one before, and so has every round after it.',
  example: {
    given: { across: 60, down: 75, corner: 3, round: 4 },
    line: 'border rounds across:60 down:75 corner:3 rounds:"hdc hdc hdc hdc"',
    figure: 'round_total',
  },
  draws: 'corner',
  practice: {
    draw: (chance) => ({
      across: pick(chance, 60, 160),
      down: pick(chance, 80, 200),
      corner: pick(chance, 3, 5, 2),
      round: pick(chance, 3, 6),
    }),
    says: ({ across, down, corner, round }) =>
      `The first round of a border in ${t('hdc')} has ${across} stitches along the width, ${down} along the height and ${corner} in each corner. Every round works ${corner} into the middle stitch of each corner. How many stitches has round ${round}?`,
    asks: () => ({ kind: 'count', of: 'stitches' }),
    solve({ across, down, corner, round }) {
      const working = new Working();
      const first = working.do(ROUND_TOTAL, { across, down, corner }, 'Stitches in round 1');
      const growth = working.do(GROWTH, { corner });
      const label = `Stitches in round ${round}`;
      const value = working.do(LATER_ROUND, { first, round_number: round, growth }, label);
      return { value, working: working.steps };
    },
    slips: [
      {
        key: 'middle-stitch-kept',
        value: (given) => totalAt(given, 1) + 4 * given.corner * (given.round - 1),
        says: ({ corner }) =>
          `Each corner was taken to add ${corner}. The stitch they are worked into is used up, so it adds one fewer.`,
      },
      {
        key: 'no-growth',
        value: (given) => totalAt(given, 1),
        says: () => 'That is the first round. Each round after it has more, at the four corners.',
      },
      {
        key: 'one-round-ahead',
        value: (given) => totalAt(given, given.round + 1),
        says: ({ round }) =>
          `That is the round after it. From round 1 to round ${round} it grows one time fewer.`,
      },
      {
        key: 'one-corner',
        value: (given) => totalAt(given, 1) + (given.corner - 1) * (given.round - 1),
        says: () => 'It was let grow at one corner only. There are four.',
      },
    ],
    first: () =>
      'How many stitches has round 1, corners and all? And by how many does a round grow at all four corners?',
  },
});
