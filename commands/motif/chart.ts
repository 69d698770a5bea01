/** What does the motif look like, drawn? */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { defined } from '../../src/core/base/defined.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { count } from '../../src/core/base/reader.ts';
import { drawChart } from '../../src/pictures/chart.ts';
import { findMotif, hexes } from '../../src/projects/motifs.ts';
import { progressOf } from '../../src/projects/progress.ts';
import { action } from '../shared/actions.ts';
import { fileName } from '../shared/file-name.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { described, rowWord } from '../shared/motif-words.ts';

export const chart = question({
  name: 'chart',
  says: 'Draws the motif: stitch by stitch while that can be read, else row by row with its counts',
  options: { name: savedMotif().optional() },
  example: 'name:"moss square"',
  refused: { line: 'name:"mos squar"', option: 'name' },
  before: [DEFINED],
  asked: {
    ways: ['chart', 'chart motif', 'chart @motif', 'chart stitch'],
    also: 'motif mine show picture stitch row',
    not: 'blanket group hook weight',
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' } },
    phrases: ['draw a chart of my square', 'show me the stitch diagram'],
  },
  async answer({ name }, { maker, projects, reader }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const motif = findMotif(doc, name, 'name');
    const plan = planOf(motif);
    const { row } = progressOf(doc, motif.name);
    const { svg, alt } = drawChart(
      plan,
      motif.runs,
      defined({ title: motif.name, reader, colours: hexes(doc), done: row > 0 ? row : undefined }),
    );
    return {
      headline: `The chart of ${motif.name}, ${described(motif)}${row > 0 ? `; ${count(row, rowWord(plan))} ${row === 1 ? 'is' : 'are'} done` : ''}.`,
      data: { motif: motif.name },
      files: [{ name: `${fileName(motif.name)}.svg`, says: alt, content: svg }],
      actions: [action('Instructions', 'motif words', { name: motif.name })],
    };
  },
});
