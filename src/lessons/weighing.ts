/** From the scale to metres. */
import { reckonWeighed } from '../core/yarn/weighed.ts';
import { g, m } from '../core/base/reader.ts';
import { USUAL_RESERVE } from '../standards/consumption.ts';
import { G_PER_OUNCE, M_PER_YARD } from '../standards/units.ts';
import { bandsOf } from './bands.ts';
import { lesson, pick, pickOf, pickWeight } from './lesson.ts';

interface OnScale {
  readonly motif: number;
  readonly motifs: number;
  readonly ball_length: number;
  readonly ball_weight: number;
}

const weigh = ({ motif, motifs, ball_length, ball_weight }: OnScale, reserve: number = USUAL_RESERVE) =>
  reckonWeighed({ motif, motifs, ball: { m: ball_length, g: ball_weight }, reserve });

export const weighing = lesson({
  name: 'weighing',
  title: 'Weighing, and how much yarn',
  needs: [],
  idea: `The scale knows best: weigh one finished motif, and the band of the ball turns grams into length. Times the motifs that is what they take, and a reserve of ${USUAL_RESERVE} % on top is usual, for tails, for swatches and for what is ripped.`,
  example: {
    given: { motif: 12, motifs: 80, ball_length: 170, ball_weight: 100 },
    line: 'yardage weighed motif:12g motifs:80 ball:170m/100g',
    figure: 'yarn_total',
  },
  inInches: {
    given: {
      motif: 0.4 * G_PER_OUNCE,
      motifs: 80,
      ball_length: 200 * M_PER_YARD,
      ball_weight: 3.5 * G_PER_OUNCE,
    },
    line: 'yardage weighed motif:0.4oz motifs:80 ball:200yd/3.5oz',
    figure: 'yarn_total',
  },
  practice: {
    draw(chance, own) {
      const ball = pickOf(chance, bandsOf(own));
      return {
        ball_length: ball.m,
        ball_weight: ball.g,
        motif: pickWeight(chance, own, [7, 32], [3, 12]),
        motifs: pick(chance, 20, 120, 4),
      };
    },
    says: ({ motif, motifs, ball_length, ball_weight }) =>
      `One motif weighs ${g(motif)}, you make ${motifs}, and the band says ${m(ball_length)} on ${g(ball_weight)}. How much yarn is that with a reserve of ${USUAL_RESERVE} %?`,
    asks: () => ({ kind: 'm', of: 'yarn' }),
    solve(given) {
      const { total, working } = weigh(given);
      return { value: total, working: working.steps.slice(0, 2) };
    },
    slips: [
      {
        key: 'reserve-forgotten',
        value: (given) => weigh(given, 0).total,
        says: () => `The reserve is missing. Take ${USUAL_RESERVE} % of that and add it.`,
      },
      {
        key: 'reserve-twice',
        value: (given) => weigh(given, USUAL_RESERVE).total * (1 + USUAL_RESERVE / 100),
        says: () => 'The reserve is in twice: once on the motif and once on the sum. It belongs in once.',
      },
      {
        key: 'band-turned-round',
        value: (given) =>
          weigh({ ...given, ball_length: given.ball_weight, ball_weight: given.ball_length }).total,
        says: () =>
          'The band was read the wrong way round: it says so much length on so much weight. Divide by the weight.',
      },
      {
        key: 'ounces-for-grams',
        value: (given) => weigh({ ...given, motif: given.motif * G_PER_OUNCE }).total,
        says: () => 'The motif was taken in ounces where the ball is in grams. Bring both to the same first.',
      },
      {
        key: 'one-motif',
        value: (given) => weigh({ ...given, motifs: 1 }).total,
        says: () => 'That is one motif. All of them are asked.',
      },
      {
        key: 'weight-only',
        value: ({ motif, motifs }) => motif * motifs * (1 + USUAL_RESERVE / 100),
        says: () => 'That is what they weigh. The band of the ball turns weight into length.',
      },
    ],
    first: () =>
      'How much yarn is in one motif? Its weight, times the length on the band, over the weight on the band.',
  },
});
