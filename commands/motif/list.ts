/** Which motifs are saved? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { count, g } from '../../src/core/base/reader.ts';
import { coloursIn } from '../../src/core/stripes/colour-runs.ts';
import { DEFINED } from '../shared/saved-motif.ts';
import { described, rowWord } from '../shared/motif-words.ts';

export const list = question({
  name: 'list',
  says: 'Your saved motifs, and which one is current',
  options: {},
  example: '',
  refused: { line: 'name:moss', option: 'name' },
  before: [DEFINED],
  asked: {
    ways: [
      'list motif mine|saved',
      'which motif saved',
      'saved motif all',
      'list motif',
      'which motif mine',
      'which motif getting',
    ],
    also: 'saved mine show which kind',
    not: 'blanket group left claim weigh colour',
    phrases: ['list my motifs', 'which motifs have I saved'],
  },
  async answer(_, { maker, projects }): Promise<Answer> {
    const { motifs, current } = await projects.maker(maker.id, maker.name);
    if (motifs.length === 0) {
      return {
        headline: 'No motif is saved yet.',
        lines: [`Save one, for example: ${DEFINED}`],
        data: { motifs: [] },
      };
    }
    return {
      headline: `${count(motifs.length, 'motif')} ${motifs.length === 1 ? 'is' : 'are'} saved${current.motif === undefined ? '' : `; the current one is ${current.motif}`}.`,
      figures: [figure('motifs', 'Saved motifs', motifs.length)],
      lines: motifs.map((motif) => {
        const plan = planOf(motif);
        const colours = coloursIn(motif.runs);
        return gather(
          `${motif.name}: ${described(motif)}, ${count(plan.rows.length, rowWord(plan))}`,
          colours.length !== 0 && colours.join(', '),
          motif.weight !== undefined && `weighs ${g(motif.weight)}`,
        ).join('; ');
      }),
      data: { motifs: motifs.map(({ name }) => name), current: current.motif ?? null },
    };
  },
});
