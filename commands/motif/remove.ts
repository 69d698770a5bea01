/** A saved motif, removed. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findMotif, removeMotif } from '../../src/projects/motifs.ts';
import { action } from '../shared/actions.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { described } from '../shared/motif-words.ts';

export const remove = question({
  name: 'remove',
  says: 'Removes a saved motif; asks first, and it can be undone for a day',
  options: {
    name: savedMotif().optional(),
    confirm: opt.yesno('yes removes it; without it you are asked').optional(),
  },
  example: 'name:"moss square" confirm:yes',
  refused: { line: 'name:"mos squar" confirm:yes', option: 'name' },
  before: [DEFINED],
  changes: true,
  asked: {
    changesBy: ['confirm'],
    ways: ['remove motif', 'remove @motif'],
    also: 'saved mine all',
    not: 'blanket border group row restore data',
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' } },
    phrases: ['delete the sand square', 'remove my motif'],
  },
  async answer({ name, confirm }, { maker, now, projects, once }): Promise<Answer> {
    if (confirm !== true) {
      const motif = findMotif(await projects.maker(maker.id, maker.name), name, 'name');
      return {
        headline: `Remove ${motif.name}, ${described(motif)}? It can be brought back for a day.`,
        data: { motif: motif.name, removed: false },
        actions: [
          action('Remove it', 'motif remove', { name: motif.name, confirm: true }),
          action('Keep it', 'motif show', { name: motif.name }),
        ],
      };
    }
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const motif = findMotif(doc, name, 'name');
      removeMotif(doc, motif, now);
      return { name: motif.name };
    });
    return {
      headline: `${tell.name} is removed. It can be brought back for a day.`,
      data: { motif: tell.name, removed: true },
      actions: [action('Bring it back', 'motif undo', { name: tell.name })],
    };
  },
});
