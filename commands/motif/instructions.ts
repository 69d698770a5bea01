/** How is the motif worked, row by row? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { defined } from '../../src/core/base/defined.ts';
import { cutLengths } from '../../src/core/stripes/carrying.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { sumCounts } from '../../src/core/rows/index.ts';
import { count, forReader } from '../../src/core/base/reader.ts';
import { listLines, writeInstructions } from '../../src/core/stripes/written-rows.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { action } from '../shared/actions.ts';
import { fileName } from '../shared/file-name.ts';
import { readerIn, saidTo, termsEnding, termsOption, writtenIn } from '../shared/terms-option.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { carryAssumption, described, rowWord, RowWord, units } from '../shared/motif-words.ts';

/** Longer instructions come as a text besides, to be kept or printed. */
const LONG = 20;

export const words = question({
  name: 'words',
  says: 'The instructions row by row, in your own terms, with the count at the end of each row',
  options: { name: savedMotif().optional(), terms: termsOption() },
  example: 'name:"moss square"',
  refused: { line: 'name:"mos squar"', option: 'name' },
  before: [DEFINED],
  asked: {
    ways: [
      'instructions motif',
      'instructions',
      'instructions pattern',
      'instructions @motif',
      'pattern row motif',
    ],
    also: 'motif mine show row pattern round which stitch count',
    not: 'chart blanket group ball border',
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' }, terms: { choices: { UK: 'uk', US: 'us' } } },
    phrases: ['write out the instructions for my square', 'give me the pattern row by row'],
  },
  async answer({ name, terms }, { maker, projects, reader: own }): Promise<Answer> {
    const reader = readerIn(own, terms);
    const motif = findMotif(await projects.maker(maker.id, maker.name), name, 'name');
    const plan = planOf(motif);
    const lines = listLines(writeInstructions(plan, motif.runs));
    const all = sumCounts(plan);
    const headline = `${motif.name}, ${described(motif)}: ${count(plan.rows.length, rowWord(plan))}, ${units(plan, all)}.`;
    return saidTo(
      {
        headline,
        lines,
        figures: [
          figure('rows', `${RowWord(plan)}s`, plan.rows.length),
          figure('total', plan.counted === 'blocks' ? 'Blocks' : 'Stitches', all),
          figure('ends', 'Ends to weave in', cutLengths(plan, motif.runs).ends),
        ],
        assumptions: [
          `Numbers with commas or … between are one for each ${rowWord(plan)}, going on evenly.`,
          ...carryAssumption(plan, motif.runs),
        ],
        data: {
          motif: motif.name,
          terms: reader.terms,
          counts: plan.rows.map(({ count: stitches }) => stitches),
        },
        actions: [action('To print', 'motif handout', defined({ name: motif.name, terms }))],
        ...(lines.length > LONG
          ? {
              files: [
                {
                  name: `${fileName(motif.name)}-words-${termsEnding(reader)}.txt`,
                  says: `The instructions of ${motif.name} as a text.`,
                  content: `${[headline, writtenIn(reader), '', ...lines].map((line) => forReader(line, reader)).join('\n')}\n`,
                },
              ],
            }
          : {}),
      },
      reader,
    );
  },
});
