/** Which motif is meant where none is named? */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { action } from '../shared/actions.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { described } from '../shared/motif-words.ts';

export const choose = question({
  name: 'choose',
  says: 'Makes a saved motif the current one, which all questions mean if none is named',
  options: { name: savedMotif('The motif’s name') },
  example: 'name:"moss square"',
  refused: { line: 'name:"mos squar"', option: 'name' },
  before: [DEFINED],
  changes: true,
  asked: {
    ways: ['choose @motif', 'choose motif', 'change @motif'],
    also: 'choose mine next new',
    not: 'row next done blanket group weigh chart instructions remove saved picture',
    reports: true,
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' } },
    phrases: ['switch to the sand square', 'I am working on the sand square now'],
  },
  async answer({ name }, { maker, projects }): Promise<Answer> {
    const chosen = await projects.changeMaker(maker.id, maker.name, (doc) => {
      const motif = findMotif(doc, name, 'name');
      doc.current.motif = motif.name;
      return motif;
    });
    return {
      headline: `${chosen.name} is the current motif, ${described(chosen)}.`,
      data: { motif: chosen.name },
      actions: [action('Where I am', 'progress show', { motif: chosen.name })],
    };
  },
});
