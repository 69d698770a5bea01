/** How many whole motifs does the yarn at hand make? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { count, g } from '../../src/core/base/reader.ts';
import { countFromYarn } from '../../src/core/yarn/makes.ts';

export const makes = question({
  name: 'makes',
  says: 'How many whole motifs the yarn at hand makes, from one on the scale',
  options: {
    left: opt.yarnAtHand('What the yarn at hand weighs, or how many balls of it there are', '350g'),
    each: opt.weight('What one finished motif weighs', '13g'),
    ball: opt.ball().optional(),
  },
  example: 'left:350g each:13g',
  refused: { line: 'left:"2 balls" each:13g', option: 'ball' },
  asked: {
    ways: ['?motif <weight>', '?motif left weigh', '?motif left ball', 'getting|left motif <weight>'],
    also: 'motif weigh each total yarn ball getting done need left stash how-many how-much measure',
    not: 'enough substitute join border roughly gauge swatch group claim row round colour blanket cost',
    marks: {
      left: {
        asks: 'What does the yarn at hand weigh, or how many balls is it?',
        takes: 'weight-or-balls',
        near: 'left getting yarn stash ball',
        not: 'weigh each',
        lead: 'have got from of will',
      },
      each: {
        asks: 'What does one finished motif weigh?',
        takes: 'weight',
        near: 'weigh each motif',
        not: 'left yarn',
        lead: 'takes take needs uses weighs eats one_is each_is square_is motif_is',
      },
    },
    fills: ['each', 'ball'],
    phrases: ['I have 350g of yarn and each square takes 13g, how many can I make'],
  },
  answer(asked): Answer {
    const { motifs, left, over, working } = countFromYarn(asked);
    return {
      headline:
        motifs === 0
          ? `${g(left)} make no whole motif of ${g(asked.each)}.`
          : `${g(left)} make ${count(motifs, 'motif')} of ${g(asked.each)}; ${g(over)} are left over.`,
      figures: [
        figure('motifs', 'Whole motifs', motifs),
        figure('weight_left', 'Yarn at hand', left, 'g'),
        figure('weight_over', 'Left over', over, 'g'),
      ],
      lines: gather(
        motifs > 0 && 'Weigh the yarn again after the first few: the scale rounds, and hands differ.',
      ),
      working: working.steps,
      assumptions: ['Seams and border are not in it.'],
    };
  },
});
