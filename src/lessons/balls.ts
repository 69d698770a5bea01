/** How many balls: the lot, and the reserve. */
import { Working } from '../core/base/working.ts';
import { BALLS_BY_WEIGHT, WEIGHT_OF_ALL } from '../core/yarn/balls-by-weight.ts';
import { reckonWeighed } from '../core/yarn/weighed.ts';
import { g } from '../core/base/reader.ts';
import { USUAL_RESERVE } from '../standards/consumption.ts';
import { G_PER_OUNCE } from '../standards/units.ts';
import { bandsOf } from './bands.ts';
import { lesson, pick, pickOf, pickWeight } from './lesson.ts';

interface Bought {
  readonly motif: number;
  readonly motifs: number;
  readonly ball_weight: number;
}

/** The length on a ball does not matter where motif and ball are weighed; it has to be some. */
const buy = ({ motif, motifs, ball_weight }: Bought, reserve: number = USUAL_RESERVE) =>
  reckonWeighed({ motif, motifs, ball: { m: ball_weight, g: ball_weight }, reserve });

const WHOLE = 1e-6;

export const balls = lesson({
  name: 'balls',
  title: 'Balls, lot and reserve',
  needs: ['weighing'],
  idea: 'Balls are bought whole, so the number is always rounded up, last of all, and only once. Buy all of a colour from one lot: another lot is another shade, and the one ball that is missing is not to be had later.',
  example: {
    given: { motif: 12, motifs: 80, ball_weight: 100 },
    line: 'yardage weighed motif:12g motifs:80 ball:170m/100g',
    figure: 'balls',
  },
  inInches: {
    given: { motif: 0.4 * G_PER_OUNCE, motifs: 80, ball_weight: 3.5 * G_PER_OUNCE },
    line: 'yardage weighed motif:0.4oz motifs:80 ball:200yd/3.5oz',
    figure: 'balls',
  },
  practice: {
    draw: (chance, own) => ({
      motif: pickWeight(chance, own, [9, 34], [4, 12]),
      motifs: pick(chance, 40, 160, 4),
      ball_weight: pickOf(chance, bandsOf(own)).g,
    }),
    says: ({ motif, motifs, ball_weight }) =>
      `${motifs} motifs of ${g(motif)} each, in balls of ${g(ball_weight)}, with a reserve of ${USUAL_RESERVE} %: how many balls do you buy?`,
    asks: () => ({ kind: 'count', of: 'balls' }),
    solve({ motif, motifs, ball_weight }) {
      const working = new Working();
      const weight = working.do(WEIGHT_OF_ALL, { each_weight: motif, motifs, reserve: USUAL_RESERVE });
      return { value: working.do(BALLS_BY_WEIGHT, { weight, ball_weight }), working: working.steps };
    },
    slips: [
      {
        key: 'rounded-down',
        value: (given) => {
          const { total, balls } = buy(given);
          return balls - total / given.ball_weight > WHOLE ? balls - 1 : undefined;
        },
        says: () => 'It was rounded down: the last motif would run out. A begun ball is a whole one.',
      },
      {
        key: 'reserve-forgotten',
        value: (given) => buy(given, 0).balls,
        says: () =>
          `The reserve of ${USUAL_RESERVE} % is missing. Add it to the weight before you divide by the ball.`,
      },
      {
        key: 'reserve-twice',
        value: (given) => buy({ ...given, motif: buy(given).total / given.motifs }).balls,
        says: () => 'The reserve is in twice. Add it once, to the weight of all motifs.',
      },
      {
        key: 'whole-motifs-a-ball',
        value: ({ motif, motifs, ball_weight }) =>
          buy({ motif: 1, motifs: Math.ceil(motifs / Math.floor(ball_weight / motif)), ball_weight: 1 })
            .balls,
        says: () =>
          'That counts only whole motifs from each ball. What is left of one ball is joined to the next: add up all the weight first.',
      },
    ],
    first: () =>
      'What do all motifs weigh together? Add the reserve, and only then divide by a ball and round up.',
  },
});
