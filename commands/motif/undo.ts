/** A motif, brought back after it was removed or replaced. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { restoreMotif } from '../../src/projects/motifs.ts';
import { action } from '../shared/actions.ts';
import { DEFINED } from '../shared/saved-motif.ts';
import { described } from '../shared/motif-words.ts';

export const undo = question({
  name: 'undo',
  says: 'Brings back a motif that was removed or replaced within the last day',
  options: {
    name: opt
      .text('Its name; the last one removed if not given', { max: LONGEST_NAME, example: 'moss square' })
      .optional(),
  },
  example: 'name:"moss square"',
  refused: { line: 'name:"clay square"', option: 'name' },
  before: [DEFINED, '/motif remove name:"moss square" confirm:yes'],
  changes: true,
  asked: {
    ways: ['restore motif', 'undo motif remove', 'restore motif remove', 'undo'],
    also: 'remove mine erase undo motif',
    not: 'blanket row group count',
    saved: 'motif',
    undoes: 'motif',
    marks: { name: { takes: 'saved-motif' } },
    phrases: ['bring back the motif I deleted'],
  },
  async answer({ name }, { maker, now, projects, once }): Promise<Answer> {
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const { motif, inPlaceOf } = restoreMotif(doc, now, name);
      return { name: motif.name, described: described(motif), inPlaceOf };
    });
    return {
      headline: `${tell.name} is back, ${tell.described}.`,
      lines: tell.inPlaceOf
        ? ['The one that stood in its place is kept for a day: asking again changes them back.']
        : [],
      data: { motif: tell.name },
      actions: [action('Show it', 'motif show', { name: tell.name })],
    };
  },
});
