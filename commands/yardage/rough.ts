/** How much yarn is it roughly, from stitches, hook and thickness? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { cm, count, m, num, t } from '../../src/core/base/reader.ts';
import { estimateYarn } from '../../src/core/yarn/rough.ts';
import { findUsualHook, wpiOf } from '../../src/core/yarn/thickness.ts';
import { caution } from '../../src/standards/care.ts';
import { STITCHES_A_BLOCK, USUAL_YARN } from '../../src/standards/consumption.ts';
import { usualHookWords } from '../shared/hook-words.ts';
import { countMotifs, motifs, otherSize, reserve } from './options.ts';

export const rough = question({
  name: 'rough',
  says: 'A rough guess at the yarn, from the stitches, the hook and the thickness of the yarn',
  options: {
    shape: opt.shape(),
    size: opt.size(),
    stitch: opt.stitch().optional(),
    hook: opt.hook('The hook: 5mm, or a US size like H-8; a usual one for the yarn if not given').optional(),
    gauge: opt.gauge('Your gauge, like 13x10: much surer than hook and yarn').optional(),
    yarn: opt
      .yarn('How thick: a category 0 to 7, its name, or wraps per inch like 11wpi; else read off the ball')
      .optional(),
    motifs: motifs(),
    ball: opt.ball().optional(),
    reserve: reserve(),
    other_size: otherSize(),
  },
  example: 'shape:diagonal size:12 stitch:hdc hook:5mm yarn:4 motifs:80 ball:170m/100g',
  refused: { line: 'shape:flat size:20', option: 'other_size' },
  asked: {
    ways: [
      '?yarn|ball roughly',
      '?yarn|ball <shape>',
      '?yarn|ball <yarn>',
      'yarn roughly',
      'roughly <yarn>',
      '?yarn motif hook',
      'how-much <yarn>',
      '?yarn|ball round|row',
    ],
    also: 'motif round row block stitch hook yarn ball blanket piece each total roughly how-many cluster how-far done getting across need size',
    not: 'left substitute join border weigh group gauge repeat swatch weight mean',
    marks: {
      size: { takes: 'count', nouns: 'round row block stitch', only: true },
      other_size: { takes: 'count', nouns: 'row', only: true },
      motifs: { takes: 'count', nouns: 'motif', only: true },
      balls: { never: true },
    },
    fills: [],
    phrases: [
      'roughly how much dk for 80 granny squares of 6 rounds with a 5mm hook',
      'rough estimate of yarn for a 40 block c2c blanket in aran',
    ],
  },
  async answer({ yarn: named, other_size, ...given }, context): Promise<Answer> {
    const { motifs: many, assumptions } = await countMotifs(given.motifs, context);
    const asked = { ...given, motifs: many };
    const { ball, gauge } = asked;
    const yarn = named ?? (ball ? { wpi: wpiOf(ball) } : USUAL_YARN.thickness);
    const usual = findUsualHook(yarn);
    const hook = asked.hook ?? usual.mm;
    const found = estimateYarn({ ...asked, hook, wpi: yarn.wpi, otherSize: other_size });
    const { plan, each, low, high, total, balls, ballsHigh } = found;
    const all = asked.motifs === 1 ? '' : ` ${count(asked.motifs, 'motif')}:`;
    const bought = balls === undefined ? '' : `, ${count(balls, 'ball')}`;
    return {
      headline: `About ${m(each)} a motif, somewhere between ${m(low)} and ${m(high)};${all} about ${m(total)} with the reserve${bought}.`,
      figures: gather(
        figure('yarn_each', 'Yarn in one motif', each, 'm'),
        figure('yarn_low', 'At the least', low, 'm'),
        figure('yarn_high', 'At the most', high, 'm'),
        figure('yarn_total', 'Yarn in all, with the reserve', total, 'm'),
        figure('balls', 'Balls', balls),
      ),
      lines: gather(
        'Better: weigh one finished motif and ask /yardage weighed.',
        ballsHigh !== undefined &&
          ballsHigh !== balls &&
          `At the high end of the band it would be ${count(ballsHigh, 'ball')}.`,
      ),
      working: found.working.steps,
      assumptions: gather(
        assumptions,
        !found.bySize &&
          gather(
            !named &&
              (ball
                ? `Yarn of about ${num(yarn.wpi)} wraps per inch, read off the ball.`
                : USUAL_YARN.assumed),
            asked.hook === undefined && usualHookWords(usual),
            gauge && `The ${t('gauge')} is not used: blocks lie slanting.`,
          ),
        asked.stitch === undefined && `Worked in ${t(plan.stitch)}, as no stitch was named.`,
        plan.counted === 'blocks' &&
          `A block is reckoned as ${STITCHES_A_BLOCK} of ${t(plan.stitch)}: three, and the chain that stands as one (common practice).`,
        found.bySize
          ? `Tails (${cm(15)} at each end), seams and border are not in it; chains are.`
          : `Tails (${cm(15)} at each end), foundation and turning chains, seams and border are not in it.`,
        `The band is ${num(found.band)} % either way: hands differ more than stitches do.`,
      ),
      cautions: [caution('rough-estimate')],
    };
  },
});
