/** How much yarn is it, by a finished motif on the scale? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { count, m, num } from '../../src/core/base/reader.ts';
import { reckonWeighed } from '../../src/core/yarn/weighed.ts';
import { caution } from '../../src/standards/care.ts';
import { countMotifs, motifs, reserve } from './options.ts';

export const weighed = question({
  name: 'weighed',
  says: 'How much yarn and how many balls, from one finished motif on the scale',
  options: {
    motif: opt.weight('What one finished motif weighs', '18g'),
    ball: opt.ball(),
    motifs: motifs(),
    reserve: reserve(),
  },
  example: 'motif:18g motifs:80 ball:170m/100g',
  refused: { line: 'motif:18g ball:100g', option: 'ball' },
  asked: {
    ways: [
      '?ball|yarn <weight>',
      '?ball|yarn weigh',
      '?ball|yarn motif',
      '?ball|yarn each',
      'motif <weight> <ball>',
      'weigh yarn',
      '?yarn <ball>',
      'motif weigh <ball>',
      'how-much|how-many motif <ball>',
      'how-much <weight>',
      'ball how-many|need motif',
    ],
    also: 'motif weigh each all spare total yarn ball getting done enough need block new shopping stash blanket how-much measure',
    not: 'left substitute join border roughly gauge swatch group claim row round colour',
    marks: {
      motif: { takes: 'weight', near: 'motif each weigh block' },
      motifs: { takes: 'count', nouns: 'motif block', near: 'motif need', only: false },
    },
    fills: ['motif', 'motifs', 'ball'],
    phrases: [
      'one square weighs 12g and I need 80, 170m per 100g, how many balls',
      'how much yarn for 80 squares of 12 g',
    ],
  },
  async answer(given, context): Promise<Answer> {
    const { motifs: many, assumptions } = await countMotifs(given.motifs, context);
    const asked = { ...given, motifs: many };
    const { each, total, balls, working } = reckonWeighed(asked);
    const all = asked.motifs === 1 ? 'One motif takes' : `${count(asked.motifs, 'motif')} take`;
    const spared = asked.reserve === 0 ? 'no reserve' : `${num(asked.reserve)} % in reserve`;
    return {
      headline: `${all} ${m(total)} with ${spared}: ${count(balls, 'ball')}. Each motif takes ${m(each)}.`,
      figures: [
        figure('yarn_each', 'Yarn in one motif', each, 'm'),
        figure('yarn_total', 'Yarn in all, with the reserve', total, 'm'),
        figure('balls', 'Balls', balls),
      ],
      lines: ['With several colours, do this sum for each and round each up by itself.'],
      working: working.steps,
      assumptions: [...assumptions, 'Seams and border are not in it.'],
      cautions: [caution('dye-lot')],
    };
  },
});
