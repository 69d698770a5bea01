/** A motif of her own, saved. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { LONGEST_NAME, MOST_ROWS } from '../../src/core/base/limits.ts';
import { readRuns } from '../../src/core/stripes/read-runs.ts';
import { cutLengths } from '../../src/core/stripes/carrying.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { planRows, sumCounts, type RowPlan } from '../../src/core/rows/index.ts';
import { count, t } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { keepMotif, motifName } from '../../src/projects/motifs.ts';
import type { Motif } from '../../src/projects/schema.ts';
import { action, lineOf } from '../shared/actions.ts';
import { DEFINED, STRIPES } from '../shared/saved-motif.ts';
import {
  carryAssumption,
  carryLines,
  described,
  rowWord,
  RowWord,
  stripeLines,
  units,
} from '../shared/motif-words.ts';

export const define = question({
  name: 'define',
  says: 'Saves a motif of your own: its shape, size, stitch, gauge and colours',
  options: {
    name: opt.text('What you call it', { max: LONGEST_NAME, example: 'moss square' }),
    shape: opt.shape(),
    size: opt.size(),
    other_size: opt
      .whole('Blocks along the other side, or rows of a flat piece', { max: MOST_ROWS, example: '8' })
      .optional(),
    stitch: opt.stitch().optional(),
    colours: opt
      .text('The colours by row, like: 4 rows moss, 2 rows sand, three times, then 6 rows moss', {
        max: 2000,
        example: STRIPES,
      })
      .optional(),
    hook: opt.hook().optional(),
    gauge: opt.gauge().optional(),
    blocked: opt.yesno('Whether the gauge was counted on a blocked piece').optional(),
    keep: opt
      .yesno({ says: 'no only shows how it would be; it is kept if not given', assumed: 'It is kept.' }, 'no')
      .default(true),
    replace: opt.yesno('yes replaces a motif of the same name').optional(),
  },
  example: DEFINED.replace('/motif define ', ''),
  refused: {
    line: 'name:"moss square" shape:diagonal size:12 colours:"4 rows moss, 2 rows sand, twice"',
    option: 'colours',
  },
  changes: true,
  asked: {
    ways: ['save motif', 'save <shape>', 'new motif', 'save <shape> <count>'],
    also: 'motif round row block stitch gauge hook colour new rename mean saved pattern cluster done',
    not: 'weigh ball chart show instructions remove group claim blanket',
    reports: true,
    marks: {
      name: {
        capture:
          /(?:\b(?:called|named|name it|call it|calling it|as)\s+)(?:"([^"]+)"|“([^”]+)”|([\p{L}'’ -]+?)(?=\s*(?:[.,;:?!]|$|\bwith\b|\bin\b|\bof\b|\bfrom\b)))/iu,
      },
      size: { takes: 'count', nouns: 'row round block', near: 'size', lead: 'size', only: true },
      colours: { never: true },
      blocked: { never: true },
    },
    phrases: [
      'save a granny square of 5 rounds called plum',
      'define a diagonal square of 12 rows named moss',
    ],
  },
  async answer(asked, { maker, now, projects, once }): Promise<Answer> {
    const { plan, drawn } = motifAsked(asked);
    const { name, runs } = drawn;
    const kept = asked.keep
      ? (
          await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
            const { motif, ...how } = keepMotif(doc, drawn, now, asked.replace === true);
            return { name: motif.name, ...how };
          })
        ).tell
      : undefined;
    const working = new Working();
    const all = sumCounts(plan);
    const what = `${described(drawn)}: ${count(plan.rows.length, rowWord(plan))}, ${units(plan, all)}`;
    return {
      headline: kept
        ? `${kept.name} is ${kept.replaced ? 'changed' : 'kept'}, ${what}.`
        : `${name} would be ${what}; nothing is kept yet.`,
      lines: gather(
        stripeLines(plan, runs),
        carryLines(drawn, working),
        kept?.replaced &&
          (kept.weighedStill
            ? 'Its weight and side still hold, as shape, size and stitch are the same.'
            : 'The old one can be brought back for a day: /motif undo.'),
        kept?.wasAtRow !== undefined &&
          `You had done ${rowWord(plan)} ${kept.wasAtRow}; it has ${plan.rows.length} now. Say where you are: ${lineOf('progress at', { motif: kept.name, row: 1 })}`,
      ),
      figures: [
        figure('rows', `${RowWord(plan)}s`, plan.rows.length),
        figure('total', plan.counted === 'blocks' ? 'Blocks' : 'Stitches', all),
        figure('ends', 'Ends to weave in', cutLengths(plan, runs).ends),
      ],
      working: working.steps,
      assumptions: gather(
        asked.stitch === undefined && `Worked in ${t(plan.stitch)}, as no stitch was named.`,
        carryAssumption(plan, runs),
      ),
      data: { motif: name, runs, kept: kept !== undefined },
      actions: gather(
        kept && [
          action('Instructions', 'motif words', { name: kept.name }),
          action('Chart', 'motif chart', { name: kept.name }),
          action('Begin', 'progress next', { motif: kept.name, from_row: 0 }),
        ],
      ),
    };
  },
});

interface Asked extends Pick<Motif, 'name' | 'shape' | 'size'> {
  readonly other_size?: number | undefined;
  readonly stitch?: Motif['stitch'] | undefined;
  readonly hook?: number | undefined;
  readonly gauge?: Motif['gauge'] | undefined;
  readonly blocked?: boolean | undefined;
  readonly colours?: string | undefined;
}

/** The motif as it would be kept. Throws Problem: rows-missing, one-measure-only, and what names and colours are refused for. */
function motifAsked({ shape, size, other_size, stitch, hook, gauge, blocked, colours, ...asked }: Asked): {
  readonly plan: RowPlan;
  readonly drawn: Motif;
} {
  const name = motifName(asked.name);
  if (shape === 'flat' && other_size === undefined) {
    throw new Problem('rows-missing', 'A flat piece has as many rows as you say.', {
      option: 'other_size',
      hint: 'Say how many rows it has: other_size:20.',
    });
  }
  const plan = planRows(shape, { size, otherSize: other_size, stitch });
  const runs = runsAsked(plan, colours);
  return {
    plan,
    drawn: defined({
      name,
      shape,
      size,
      stitch: plan.stitch,
      runs,
      otherSize: other_size,
      hook,
      gauge,
      blocked,
    }),
  };
}

/** The colours as they were typed, held to the rows of the plan. */
function runsAsked(plan: RowPlan, colours: string | undefined): Motif['runs'] {
  try {
    return colours === undefined ? [] : readRuns(colours, plan.rows.length, plan.called);
  } catch (problem) {
    throw problem instanceof Problem ? problem.about('colours') : problem;
  }
}
