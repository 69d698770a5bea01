/** The last thing that was counted, taken back. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { count } from '../../src/core/base/reader.ts';
import { undo as takeBack, type Did } from '../../src/projects/progress.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { rowWord } from '../shared/motif-words.ts';
import { change } from './change.ts';
import { coming, madeWords } from './coming.ts';

const SAID: Readonly<Record<Did, string>> = {
  row: 'the row counted last',
  back: 'the row taken back last',
  set: 'the last setting',
  finished: 'the motif finished last',
  counted: 'the last count',
};

export const undo = question({
  name: 'undo',
  says: 'Takes back the last thing that was counted of a motif',
  options: { motif: savedMotif().optional() },
  example: 'motif:"moss square"',
  refused: { line: 'motif:"mos squar"', option: 'motif' },
  before: [DEFINED, '/progress next motif:"moss square"'],
  changes: true,
  asked: {
    ways: ['undo', 'undo count', 'undo row', 'undo mistake'],
    also: 'count row mistake done motif next',
    not: 'group blanket remove restore ripped border',
    reports: true,
    undoes: 'count',
    saved: 'motif',
    marks: { motif: { takes: 'saved-motif' } },
    phrases: ['undo that', 'that was a mistake, undo my last count'],
  },
  async answer({ motif: name }, context): Promise<Answer> {
    const tell = await change(context, name, (doc, motif) => {
      const { progress, undone } = takeBack(doc, motif);
      return { row: progress.row, made: progress.made, undone };
    });
    const found = coming(tell.motif, tell);
    return {
      ...found,
      headline: `Taken back: ${SAID[tell.undone]}. ${tell.motif.name} is at ${count(tell.row, rowWord(planOf(tell.motif)))} done, ${madeWords(tell.made, undefined)}; ${found.says}.`,
    };
  },
});
