/** How much yarn does a blanket take, by a weighed swatch? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { count, g, m, num, size } from '../../src/core/base/reader.ts';
import { SAMPLE_BALL } from '../../src/core/base/samples.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { requireWishedSize } from '../../src/core/size/wished-size.ts';
import { reckonSwatchYarn } from '../../src/core/yarn/swatch-yarn.ts';
import { caution } from '../../src/standards/care.ts';
import { reserve } from './options.ts';

export const swatch = question({
  name: 'swatch',
  says: 'How much yarn a whole blanket takes, from a weighed swatch, before any motif is made',
  options: {
    swatch_width: opt.length('How wide the swatch is', '15cm'),
    swatch_height: opt.length('How high the swatch is', '15cm'),
    weight: opt.weight('What the swatch weighs', '14g'),
    width: opt.length('How wide the blanket is to be; or give for', '120cm').optional(),
    height: opt.length('How high the blanket is to be', '160cm').optional(),
    for: opt.blanketSize().optional(),
    ball: opt.ball().optional(),
    reserve: reserve(),
  },
  example: 'swatch_width:15cm swatch_height:15cm weight:14g width:120cm height:160cm ball:170m/100g',
  refused: { line: 'swatch_width:15cm swatch_height:15cm weight:14g', option: 'width' },
  asked: {
    ways: [
      'swatch <weight> yarn',
      'swatch weigh',
      'swatch <weight> <dims>',
      '?yarn|ball swatch',
      'swatch <weight>',
    ],
    also: 'swatch weigh yarn ball blanket how-much how-big need measure across down spare motif all total each',
    not: 'gauge hook stitch row round border join left',
    marks: {
      swatch_width: { asks: 'How wide is the swatch?', takes: 'length', near: 'swatch', only: true },
      swatch_height: { asks: 'How high is the swatch?', takes: 'length', near: 'swatch', only: true },
      weight: { asks: 'How much does the swatch weigh?', takes: 'weight', near: 'swatch weigh' },
      width: { takes: 'length', near: 'across blanket', only: true },
    },
    pairs: { dims: ['width', 'height'], other: ['swatch_width', 'swatch_height', 'swatch'] },
    settle: (options) =>
      options['for'] !== undefined && options['width'] !== undefined
        ? Object.fromEntries(Object.entries(options).filter(([name]) => name !== 'for'))
        : options,
    needs: [
      ['width', 'for'],
      ['height', 'for'],
    ],
    fills: ['ball'],
    phrases: [
      'my 10 by 10 cm swatch weighs 6g, how much yarn for a 120 x 160 cm blanket',
      'swatch of 15 x 15 cm weighs 12 g, how many balls of 170m/100g for a throw',
    ],
  },
  answer({ swatch_width: swatchWidth, swatch_height: swatchHeight, ...asked }): Answer {
    const { width, height } = requireWishedSize(asked);
    const { weight, ball, reserve: spare } = asked;
    const found = reckonSwatchYarn({
      swatchWidth,
      swatchHeight,
      weight,
      width,
      height,
      ball,
      reserve: spare,
    });
    const { yarn, balls, doubt } = found;
    const spared = spare === 0 ? 'no reserve' : `${num(spare)} % in reserve`;
    return {
      headline: `A blanket of ${size(width, height)} takes ${g(found.weight)} with ${spared}${
        yarn === undefined || balls === undefined ? '' : `, ${m(yarn)}: ${count(balls, 'ball')}`
      }.`,
      figures: gather(
        figure('weight_total', 'Weight in all, with the reserve', found.weight, 'g'),
        figure('yarn_total', 'Yarn in all, with the reserve', yarn, 'm'),
        figure('balls', 'Balls', balls),
      ),
      lines: gather(
        `A scale of whole grams leaves ${num(doubt, 0)} % open either way with this swatch: a larger one is surer.`,
        ball === undefined &&
          `With length and weight of a ball, like ${SAMPLE_BALL}, it also says the length of yarn and the balls.`,
      ),
      working: found.working.steps,
      assumptions: [
        'The blanket is worked like the swatch, all over: same stitch, hook and yarn, washed or not as the swatch was.',
        'Seams, border and tails are not in it.',
      ],
      cautions: [caution('dye-lot'), ...careFor(width, height)],
    };
  },
});
