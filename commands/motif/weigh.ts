import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { planOf } from '../../src/core/yarn/motif-yarn.ts';
import { cm, g, m, mm, num, t } from '../../src/core/base/reader.ts';
import { BLOCKABLE, UNSEEN, weighed, type Weighed } from '../../src/core/yarn/measured-motif.ts';
import { findMotif, measureMotif } from '../../src/projects/motifs.ts';
import { caution } from '../../src/standards/care.ts';
import { about, DEFINED, savedMotif } from './options.ts';

export const weigh = question({
  name: 'weigh',
  says: 'Keeps what a finished motif weighs and measures, and what that says of yarn and size',
  options: {
    name: savedMotif().optional(),
    weight: opt.weight('What one finished motif weighs', '12g').optional(),
    side: opt.length('How long a side of it is', '15cm').optional(),
    hook: opt.hook('The hook it was worked with').optional(),
    ball: opt.ball().optional(),
  },
  example: 'name:"moss square" weight:12g side:15.2cm ball:170m/100g',
  refused: { line: 'name:"moss square"', option: 'weight' },
  before: [DEFINED.replace('size:12', 'size:12 gauge:13x10 hook:5mm')],
  changes: true,
  async answer({ name, weight, side, hook, ball }, { maker, projects }) {
    if (weight === undefined && side === undefined) {
      throw new Problem('unsorted', 'Neither weight nor side is given.', {
        option: 'weight',
        hint: 'Put a finished one on the scale: weight:12g; or measure it: side:15cm.',
      });
    }
    const motif = await projects.changeMaker(maker.id, maker.name, (doc) =>
      measureMotif(doc, findMotif(doc, name, 'name'), { weight, side, hook }),
    );
    const found = weighed(motif, ball);
    const one = planOf(motif).counted === 'blocks' ? 'block' : 'stitch';
    const off = sizeLines(found, motif.side);
    return {
      headline: headline(),
      lines: [
        ...(found.metres !== undefined && found.yarnPerStitch !== undefined
          ? [
              `One takes ${m(found.metres)} of yarn, ${cm(found.yarnPerStitch)} a ${one}; its tails are in that.`,
            ]
          : found.perStitch !== undefined
            ? ['With the length and weight from the ball band, ball:170m/100g, that becomes metres.']
            : []),
        ...off.lines,
      ],
      figures: [
        ...(motif.weight === undefined
          ? []
          : [{ key: 'weight', label: 'Weight of one', value: motif.weight, unit: 'g' as const }]),
        ...(found.perStitch === undefined
          ? []
          : [
              {
                key: 'weight_per_stitch',
                label: `Weight of a ${one}`,
                value: found.perStitch,
                unit: 'g' as const,
              },
            ]),
        ...(found.metres === undefined
          ? []
          : [{ key: 'yarn_each', label: 'Yarn in one', value: found.metres, unit: 'm' as const }]),
        ...(motif.side === undefined
          ? []
          : [{ key: 'side', label: 'Side', value: motif.side, unit: 'cm' as const }]),
        ...(found.expected === undefined
          ? []
          : [
              { key: 'blocked_side', label: 'Side by its gauge', value: found.expected, unit: 'cm' as const },
            ]),
        ...(found.off === undefined
          ? []
          : [{ key: 'side_percent', label: 'Off by', value: found.off, unit: '%' as const }]),
      ],
      working: found.working.steps,
      assumptions:
        found.perStitch === undefined
          ? []
          : [`The weight is shared evenly over its ${planOf(motif).counted}.`],
      cautions: off.block ? [caution('heat')] : [],
      data: { motif: motif.name },
      actions: [{ label: 'Where I am', line: about('progress show', { motif: motif.name }) }],
    };

    function headline(): string {
      const parts = [
        ...(weight === undefined ? [] : [`weighs ${g(weight)}`]),
        ...(side === undefined ? [] : [`measures ${cm(side)} along a side`]),
      ];
      return `Kept: one ${motif.name} ${parts.join(' and ')}${weight !== undefined && found.perStitch !== undefined ? `, ${g(found.perStitch, 4)} a ${one}` : ''}.`;
    }
  },
});

function sizeLines(found: Weighed, side: number | undefined): { lines: string[]; block: boolean } {
  const { off, expected, hook } = found;
  if (off === undefined || expected === undefined || side === undefined) return { lines: [], block: false };
  const by = `${num(Math.abs(off), 1)} %`;
  const where = `By its ${t('gauge')} the side should be ${cm(expected)}; measured it is ${cm(side)}`;
  if (Math.abs(off) <= UNSEEN) return { lines: [`${where}: near enough.`], block: false };
  const longer = off > 0 ? 'longer' : 'shorter';
  if (Math.abs(off) <= BLOCKABLE)
    return { lines: [`${where}, ${by} ${longer}: blocking sets that right.`], block: true };
  return {
    lines: [
      `${where}, ${by} ${longer}: more than blocking should be asked to do.`,
      hook === undefined
        ? `A ${off > 0 ? 'smaller' : 'larger'} hook would bring it nearer.`
        : `A hook of about ${mm(hook, 1)} would bring it nearer.`,
    ],
    block: true,
  };
}
