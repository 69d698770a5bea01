/** What does the motif look like, drawn? */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { defined } from '../../src/core/base/defined.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { count } from '../../src/core/base/reader.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { progressOf } from '../../src/projects/progress.ts';
import { action } from '../shared/actions.ts';
import { fileName } from '../shared/file-name.ts';
import { madeUpWords } from '../shared/look-words.ts';
import { chartOf, madeUpIn } from '../shared/motif-chart.ts';
import { described, rowWord } from '../shared/motif-words.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { readerIn, saidTo, termsEnding, termsOption } from '../shared/terms-option.ts';

export const chart = question({
  name: 'chart',
  says: 'Draws the motif: stitch by stitch while that can be read, else row by row with its counts',
  options: { name: savedMotif().optional(), terms: termsOption() },
  example: 'name:"moss square"',
  refused: { line: 'name:"mos squar"', option: 'name' },
  before: [DEFINED],
  asked: {
    ways: ['chart', 'chart motif', 'chart @motif', 'chart stitch'],
    also: 'motif mine show picture stitch row',
    not: 'blanket group hook weight',
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' }, terms: { choices: { UK: 'uk', US: 'us' } } },
    phrases: ['draw a chart of my square', 'show me the stitch diagram'],
  },
  async answer({ name, terms }, { maker, projects, reader: own }): Promise<Answer> {
    const reader = readerIn(own, terms);
    const doc = await projects.maker(maker.id, maker.name);
    const motif = findMotif(doc, name, 'name');
    const plan = planOf(motif);
    const { row } = progressOf(doc, motif.name);
    const { svg, alt } = chartOf(doc, motif, { reader, done: row > 0 ? row : undefined });
    return saidTo(
      {
        headline: `The chart of ${motif.name}, ${described(motif)}${row > 0 ? `; ${count(row, rowWord(plan))} ${row === 1 ? 'is' : 'are'} done` : ''}.`,
        data: { motif: motif.name, terms: reader.terms },
        assumptions: madeUpWords(madeUpIn(doc, motif)),
        files: [
          { name: `${fileName(motif.name)}-chart-${termsEnding(reader)}.svg`, says: alt, content: svg },
        ],
        actions: [
          action('Instructions', 'motif words', defined({ name: motif.name, terms })),
          action('To print', 'motif handout', defined({ name: motif.name, terms })),
        ],
      },
      reader,
    );
  },
});
