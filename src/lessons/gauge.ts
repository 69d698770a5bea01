/** One's own gauge against the pattern's. */
import { PERCENT_OFF } from '../core/size/compare-gauges.ts';
import { t } from '../core/base/reader.ts';
import { lesson, pick, solveBy } from './lesson.ts';

export const gauge = lesson({
  name: 'gauge',
  title: 'Your gauge and the pattern’s',
  needs: ['swatch'],
  idea: `Fewer stitches on the same length means that each of yours is wider, and a piece with the pattern’s counts comes out too wide. By how much? Divide the pattern’s count by yours. Before you change the numbers, try another hook: a larger one if you have too many stitches, a smaller one if too few.`,
  example: {
    given: { have: 14, want: 16 },
    line: 'gauge compare have:14x10 want:16x10',
    figure: 'width_percent',
  },
  practice: {
    draw(chance) {
      const have = pick(chance, 11, 22);
      return { have, want: have + pick(chance, 2, 5) };
    },
    says: ({ have, want }) =>
      `The pattern has ${want} stitches where you have ${have} on the same length. You work its counts all the same: by how many per cent does the piece come out too wide?`,
    asks: () => ({ kind: 'percent', of: 'per cent' }),
    solve: ({ have, want }) => solveBy(PERCENT_OFF, { have, want }),
    slips: [
      {
        key: 'of-the-pattern',
        value: ({ have, want }) => 100 * (1 - have / want),
        says: () =>
          'The difference was taken of the pattern’s count. Your stitches make the width, so it is to be taken of yours.',
      },
      {
        key: 'the-difference',
        value: ({ have, want }) => want - have,
        says: () => 'That is how many stitches they differ by. What part of your own count is that?',
      },
      {
        key: 'the-whole',
        value: ({ have, want }) => (100 * want) / have,
        says: () =>
          'That is the whole width in per cent of the pattern’s. Asked is only what is too much: take 100 away.',
      },
      {
        key: 'what-is-left',
        value: ({ have, want }) => (100 * have) / want,
        says: () =>
          `Turned round: that is your ${t('gauge')} in per cent of the pattern’s. Divide the other way.`,
      },
    ],
    first: () =>
      'Take a piece of as many stitches as the pattern has on that length. How much wider is it than the length?',
  },
});
