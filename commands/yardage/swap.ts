/** How many balls of another yarn are as long? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { count, g, m, num, t } from '../../src/core/base/reader.ts';
import { swapYarn } from '../../src/core/yarn/swap.ts';
import { caution } from '../../src/standards/care.ts';

/** Per cent of difference in weight, metre for metre, within which two yarns pass for each other (common practice). */
const ALIKE = 10;

/** Less yarn than this, in metres, is none. */
const NOTHING = 0.01;

export const swap = question({
  name: 'swap',
  says: 'How many balls of another yarn, by length',
  options: {
    balls: opt.whole('Balls that the pattern asks for', { max: 1000, example: '9' }),
    ball: opt.ball('The pattern’s ball, like 170m/100g or 364yd/198g'),
    new_ball: opt.ball('The new yarn’s ball, like 125m/50g', '125m/50g'),
  },
  example: 'balls:9 ball:170m/100g new_ball:125m/50g',
  refused: { line: 'balls:0 ball:170m/100g new_ball:125m/50g', option: 'balls' },
  asked: {
    ways: [
      'substitute ball|yarn',
      '?ball|yarn substitute',
      '?ball pattern <ball>',
      '?ball wanted <ball>',
      'pattern wanted mine <ball>',
      'substitute <ball>',
      'ball rather <ball>',
    ],
    also: 'pattern wanted ball yarn getting mine how-many need stash weight new convert mean total',
    not: 'left motif weigh border gauge join row round hook colour group',
    marks: {
      balls: { takes: 'count', nouns: 'ball', near: 'ball pattern' },
      ball: {
        takes: 'ball',
        near: 'pattern wanted',
        not: 'getting',
        lead: 'instead replace replacing substitute substituting swapping swap',
      },
      new_ball: {
        takes: 'ball',
        near: 'getting substitute',
        not: 'pattern wanted',
        lead: 'use using with with_balls with_skeins into by to how_many how_many_balls how_many_skeins how_many_ball',
      },
    },
    phrases: [
      'the pattern needs 9 balls of 170m/100g, how many of 125m/50g',
      'substitute 12 skeins of 120m/50g with 100m/50g',
    ],
  },
  answer({ balls, ball, new_ball }): Answer {
    const found = swapYarn({ balls, ball, newBall: new_ball });
    const { heavierPercent: heavier } = found;
    const differ = Math.abs(heavier) > ALIKE;
    return {
      headline: `${count(found.balls, 'ball')} of the new yarn: the pattern’s ${count(balls, 'ball')} hold ${m(found.total)}, and ${found.spare < NOTHING ? 'nothing' : m(found.spare)} will be left over.`,
      figures: [
        figure('yarn_total', 'Yarn that the pattern asks for', found.total, 'm'),
        figure('new_balls', 'Balls of the new yarn', found.balls),
        figure('spare', 'Left over', found.spare, 'm'),
        figure('weight', 'Weight of the pattern’s balls', found.weight, 'g'),
        figure('new_weight', 'Weight of the new balls', found.newWeight, 'g'),
      ],
      lines: [
        differ
          ? `The new yarn is ${num(Math.abs(heavier), 0)} % ${heavier > 0 ? 'heavier' : 'lighter'}, metre for metre (${num(found.newTex, 0)} tex beside ${num(found.tex, 0)}): it may be ${heavier > 0 ? 'thicker' : 'thinner'}. Work a swatch; where the ${t('gauge')} changes, size and yarn change too.`
          : `Metre for metre the two weigh nearly the same (${num(found.newTex, 0)} tex beside ${num(found.tex, 0)}); a swatch still decides.`,
        `In weight that is ${g(found.weight)} of the pattern’s yarn or ${g(found.newWeight)} of the new one; it is the length that has to match.`,
      ],
      working: found.working.steps,
      assumptions: ['No reserve is added: the pattern’s balls are whole ones already.'],
      cautions: [caution('dye-lot')],
    };
  },
});
