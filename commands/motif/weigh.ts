/** What does a finished motif weigh and measure, and what does that say of its yarn and size? */
import { figure, gather, type Answer, type Figure } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { planOf, type MotifSpec } from '../../src/core/yarn/motif.ts';
import { cm, count, g, m, num, t, typedAs } from '../../src/core/base/reader.ts';
import { MOST_MINUTES, MOST_ON_SCALE } from '../../src/core/base/limits.ts';
import { isUnlikeEarlier, weighingsOf, type Weighed } from '../../src/core/yarn/weighings.ts';
import { sayNotSquare } from '../../src/core/yarn/motif-size.ts';
import { readMeasured, type MeasuredMotif } from '../../src/core/yarn/measured-motif.ts';
import { findMotif, measureMotif } from '../../src/projects/motifs.ts';
import type { Ball } from '../../src/core/base/quantity.ts';
import { SAMPLE_BALL, SAMPLE_SIDE, SAMPLE_WEIGHT } from '../../src/core/base/samples.ts';
import type { Motif } from '../../src/projects/schema.ts';
import { caution } from '../../src/standards/care.ts';
import { SCALE_STEP } from '../../src/standards/consumption.ts';
import { BLOCKING_MENDS, UNSEEN } from '../../src/standards/tolerances.ts';
import { hookWords, mendWords } from '../shared/hook-words.ts';
import { action, form } from '../shared/actions.ts';
import { listed } from '../shared/listed.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';

export const weigh = question({
  name: 'weigh',
  says: 'Keeps what a finished motif weighs, measures and takes in time, and what that says of yarn and size',
  options: {
    name: savedMotif().optional(),
    weight: opt
      .weight('What lies on the scale weighs: one finished motif, or several together', '18g')
      .optional(),
    motifs: opt
      .whole('How many finished motifs lie on the scale together', { max: MOST_ON_SCALE, example: '5' })
      .optional(),
    step: opt.weight('The steps that the scale shows; whole grams if not given', '1g').optional(),
    replace: opt.yesno('Forget what was weighed of it before').optional(),
    side: opt.length('How long a side of it is', '15cm').optional(),
    hook: opt.hook('The hook it was worked with').optional(),
    ball: opt.ball().optional(),
    minutes: opt
      .number('Minutes that one takes you, for the hours of a blanket', {
        min: 1,
        max: MOST_MINUTES,
        example: '45',
      })
      .optional(),
  },
  example: 'name:"moss square" weight:18g side:15.2cm ball:170m/100g',
  refused: { line: 'name:"moss square"', option: 'weight' },
  before: [DEFINED.replace('size:12', 'size:12 gauge:13x10 hook:5mm')],
  changes: true,
  form: {
    title: 'Weigh or measure a finished motif',
    asks: ['name', 'weight', 'motifs', 'side', 'ball'],
    needs: [['weight', 'side', 'ball', 'minutes']],
  },
  asked: {
    ways: [
      'weigh motif <weight>',
      'motif measure <length>',
      'motif <weight>',
      'weigh @motif',
      'weigh mine <weight>',
      'weigh measure <weight>',
      'motif weigh save',
      '@motif <weight>',
      '@motif <length>',
      'motif <length>',
    ],
    also: 'motif weigh measure mine save done each side hook ball',
    not: 'need layout how-many how-much how-big ball left group border blanket hand-in yarn',
    reports: true,
    saved: 'motif',
    marks: {
      name: { takes: 'saved-motif' },
      side: { takes: 'length', near: 'motif measure side' },
      motifs: { takes: 'count', nouns: 'motif' },
      step: { never: true },
      replace: { never: true },
      minutes: { never: true },
    },
    needs: [['weight', 'side']],
    phrases: ['my square weighs 12g', 'my motif measures 15.5 cm', '5 of my squares weigh 61g together'],
  },
  async answer(
    { name, weight, motifs, step, replace, side, hook, ball, minutes },
    { maker, projects, once },
  ): Promise<Answer> {
    if ([weight, side, ball, minutes].every((one) => one === undefined)) {
      throw new Problem('measure-missing', 'Neither weight nor side is given.', {
        option: 'weight',
        hint: `Put a finished one on the scale: ${SAMPLE_WEIGHT}; or measure it: ${SAMPLE_SIDE}.`,
      });
    }
    const onScale = motifs ?? 1;
    const weighing = weight === undefined ? undefined : { weight, motifs: onScale, step: step ?? SCALE_STEP };
    const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const found = findMotif(doc, name, 'name');
      const motif = measureMotif(doc, found, {
        weighing,
        replace: replace === true,
        side,
        hook,
        ball,
        minutes,
      });
      const kept = weighingsOf(motif).length > 1;
      const unlike = kept && weighing !== undefined && isUnlikeEarlier(weighing, weighingsOf(found));
      return { name: motif.name, kept, unlike };
    });
    const { kept, unlike } = tell;
    const motif = findMotif(doc, tell.name, 'name');
    const measured = readMeasured(motif, ball ?? motif.ball);
    const one = planOf(motif).counted === 'blocks' ? 'block' : 'stitch';
    const off = sizeLines(measured, motif);
    const notSquare = sayNotSquare(motif);
    return {
      headline: keptWords(motif.name, {
        weight,
        side,
        ball,
        minutes,
        average: kept || onScale > 1,
        measured,
        one,
      }),
      lines: gather(
        weighing !== undefined && measured.weighed && weighedLines(measured.weighed),
        unlike &&
          'That is far from what was weighed before. If one of them was a slip, say the right one with replace:yes.',
        yarnLines(measured, one),
        off.lines,
        notSquare !== undefined &&
          side !== undefined &&
          `${notSquare.message} A blanket is laid of squares. ${notSquare.hint}`,
      ),
      figures: measuredFigures(measured, motif, one),
      working: measured.working.steps,
      assumptions: gather(
        measured.perStitch !== undefined && `The weight is shared evenly over its ${planOf(motif).counted}.`,
        weight !== undefined &&
          motifs === undefined &&
          'One motif lay on the scale; say with motifs: if there were several.',
        weight !== undefined &&
          step === undefined &&
          `A scale that shows whole grams; say with step: if it shows others, like ${typedAs('step:0.1g', 'step:0.1oz')}.`,
      ),
      cautions: off.block ? [caution('heat')] : [],
      data: { motif: motif.name },
      actions: gather(
        measured.weighed &&
          measured.weighed.motifs < FEW_WEIGHED &&
          form(
            `Weigh ${num(FEW_WEIGHED)} together`,
            'motif weigh',
            { name: motif.name, motifs: FEW_WEIGHED },
            ['weight'],
          ),
        action('Where I am', 'progress show', { motif: motif.name }),
      ),
    };
  },
});

interface Kept {
  readonly weight: number | undefined;
  readonly side: number | undefined;
  readonly ball: Ball | undefined;
  readonly minutes: number | undefined;
  /** Whether its weight is that of several. */
  readonly average: boolean;
  readonly measured: MeasuredMotif;
  readonly one: string;
}

/** `Kept: one moss square weighs 18 g and measures 15.2 cm along a side, 0.0577 g a stitch.` */
function keptWords(name: string, { weight, side, ball, minutes, average, measured, one }: Kept): string {
  const { weighed, perStitch } = measured;
  const parts = gather(
    weight !== undefined && weighed && `weighs ${g(weighed.mean)}${average ? ' on average' : ''}`,
    side !== undefined && `measures ${cm(side)} along a side`,
    minutes !== undefined && `takes ${count(minutes, 'minute')}`,
    ball !== undefined && `is of ${m(ball.m)} in ${g(ball.g)}`,
  );
  const each = weight === undefined || perStitch === undefined ? '' : `, ${g(perStitch, 4)} a ${one}`;
  return `Kept: one ${name} ${listed(parts)}${each}.`;
}

const measuredFigures = (
  { weighed, perStitch, metres, expected, off }: MeasuredMotif,
  { weight, side }: Motif,
  one: string,
): Figure[] =>
  gather(
    figure('weight', 'Weight of one', weight, 'g'),
    weighed && [
      figure('weighed', 'Motifs weighed', weighed.motifs),
      figure('spread', 'From one to the next', weighed.spread, 'g'),
      figure('band', 'Right to about', weighed.band, '%'),
    ],
    figure('weight_per_stitch', `Weight of a ${one}`, perStitch, 'g'),
    figure('yarn_each', 'Yarn in one', metres, 'm'),
    figure('side', 'Side', side, 'cm'),
    figure('blocked_side', 'Side by its gauge', expected, 'cm'),
    figure('side_percent', 'Off by', off, '%'),
  );

/** What it takes in yarn, or what is wanting to tell. */
function yarnLines({ metres, yarnPerStitch, perStitch }: MeasuredMotif, one: string): string[] {
  if (metres !== undefined && yarnPerStitch !== undefined)
    return [`One takes ${m(metres)} of yarn, ${cm(yarnPerStitch)} a ${one}; its tails are in that.`];
  return perStitch === undefined
    ? []
    : [`With the length and weight from the ball band, like ${SAMPLE_BALL}, that becomes a length of yarn.`];
}

/** How well the weight is known, and what would tell more. */
const weighedLines = ({ motifs, readings, spread, band }: Weighed): string[] => [
  `${count(motifs, 'motif')} weighed${readings > 1 ? ` in ${num(readings)} readings` : ''}: right to about ${num(band, 0)} %, motifs differing by about ${g(spread)}${motifs < FEW_WEIGHED ? `. ${num(FEW_WEIGHED)} on the scale at once tell more: say motifs:${FEW_WEIGHED} and what they weigh together` : ''}.`,
];

/** Fewer than these, and more are asked for. */
const FEW_WEIGHED = 5;

function sizeLines(
  measured: MeasuredMotif,
  { side, hook }: Pick<MotifSpec, 'side' | 'hook'>,
): { lines: string[]; block: boolean } {
  const { off, expected } = measured;
  if (off === undefined || expected === undefined || side === undefined) return { lines: [], block: false };
  const by = `${num(Math.abs(off), 1)} %`;
  const where = `By its ${t('gauge')} the side should be ${cm(expected)}; measured it is ${cm(side)}`;
  if (Math.abs(off) <= UNSEEN) return { lines: [`${where}: near enough.`], block: false };
  const longer = off > 0 ? 'longer' : 'shorter';
  const blocks = off < 0 && Math.abs(off) <= BLOCKING_MENDS;
  return {
    lines: gather(
      `${where}, ${by} ${longer}.`,
      mendWords({ off, blocks }, cm(expected)),
      !blocks && `For the next one, ${hookWords({ off, hook, advice: measured.hook }, ['large', 'small'])}.`,
    ),
    block: blocks,
  };
}
