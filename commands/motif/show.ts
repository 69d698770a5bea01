/** What is kept of a motif? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { cutLengths } from '../../src/core/stripes/carrying.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { sumCounts, findWidest } from '../../src/core/rows/index.ts';
import { cm, count, g, m, mm, num, size, t } from '../../src/core/base/reader.ts';
import { readMeasured } from '../../src/core/yarn/measured-motif.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { progressOf } from '../../src/projects/progress.ts';
import { action, form } from '../shared/actions.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import {
  carryAssumption,
  carryLines,
  described,
  rowWord,
  RowWord,
  stripeLines,
  units,
} from '../shared/motif-words.ts';

export const show = question({
  name: 'show',
  says: 'Everything that is kept of a motif: its rows, colours, ends, weight, side and time',
  options: { name: savedMotif().optional() },
  example: 'name:"moss square"',
  refused: { line: 'name:"mos squar"', option: 'name' },
  before: [DEFINED],
  asked: {
    ways: ['show motif mine', 'saved motif', 'show @motif', 'saved @motif', 'show motif saved'],
    also: 'saved mine which choose',
    not: 'chart picture instructions list remove weigh group blanket next row',
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' } },
    phrases: ['show me my motif', 'what is saved of my square'],
  },
  async answer({ name }, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const motif = findMotif(doc, name, 'name');
    const plan = planOf(motif);
    const { working, expected, weighed } = readMeasured(motif);
    const { gauge, blocked, hook, weight, side, runs, ball, minutes } = motif;
    const { row, made } = progressOf(doc, motif.name);
    const all = sumCounts(plan);
    const broadest = findWidest(plan);
    const facts = gather(
      `${count(plan.rows.length, rowWord(plan))}; the widest is ${rowWord(plan)} ${broadest.row} with ${units(plan, broadest.count)}.`,
      hook !== undefined && `Hook ${mm(hook)}.`,
      gauge !== undefined &&
        `${t('Gauge')} ${num(gauge.stitches)}${gauge.rows === undefined ? '' : ` × ${num(gauge.rows)}`} over ${cm(gauge.over)}${blocked === undefined ? '' : blocked ? ', blocked' : ', not blocked'}.`,
      side === undefined
        ? expected === undefined
          ? []
          : [`By its ${t('gauge')} it blocks to ${size(expected, expected)}.`]
        : [`Measures ${size(side, side)}.`],
      weight === undefined
        ? ['Not weighed yet: /motif weigh makes every yarn answer exact.']
        : [
            `One weighs ${g(weight)}, ${count(weighed?.motifs ?? 1, 'motif')} weighed, right to about ${num(weighed?.band ?? 0, 0)} %.`,
          ],
      ball !== undefined && `Worked from balls of ${m(ball.m)} in ${g(ball.g)}.`,
      minutes !== undefined && `One takes you ${count(minutes, 'minute')}.`,
      (row > 0 || made > 0) &&
        `${count(made, 'motif')} made${row > 0 ? `; on the hook, ${rowWord(plan)} ${row} is done` : ''}.`,
    );
    return {
      headline: `${motif.name} is ${described(motif)}, ${units(plan, all)} in all.`,
      lines: [...facts, ...stripeLines(plan, runs), ...carryLines(motif, working)],
      figures: gather(
        figure('rows', `${RowWord(plan)}s`, plan.rows.length),
        figure('total', plan.counted === 'blocks' ? 'Blocks' : 'Stitches', all),
        figure('ends', 'Ends to weave in', cutLengths(plan, runs).ends),
        figure('weight', 'Weight', weight, 'g'),
        figure('side', 'Side', side, 'cm'),
        figure('blocked_side', 'Side by its gauge', expected, 'cm'),
        figure('minutes', 'Minutes that one takes', minutes),
      ),
      working: working.steps,
      assumptions: carryAssumption(plan, runs),
      data: { motif: motif.name, runs },
      actions: [
        action('Instructions', 'motif words', { name: motif.name }),
        action('Chart', 'motif chart', { name: motif.name }),
        form('Weigh one', 'motif weigh', { name: motif.name }, ['weight']),
      ],
    };
  },
});
