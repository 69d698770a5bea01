/** One row fewer is done. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count } from '../../src/core/base/reader.ts';
import { progressOf, record } from '../../src/projects/progress.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { rowWord } from '../shared/motif-words.ts';
import { change } from './change.ts';
import { coming, pressedBefore } from './coming.ts';
import { fromRow } from './options.ts';

export const back = question({
  name: 'back',
  says: 'One row fewer is done: it was ripped back, or counted too soon',
  options: { motif: savedMotif().optional(), from_row: fromRow().optional() },
  example: 'motif:"moss square"',
  refused: { line: 'motif:"mos squar"', option: 'motif' },
  before: [DEFINED, '/progress at motif:"moss square" row:5'],
  changes: true,
  asked: {
    ways: ['ripped row|round', 'ripped', 'undo row ripped'],
    also: 'row round undo done remove motif',
    not: 'group how-many blanket',
    reports: true,
    saved: 'motif',
    marks: { motif: { takes: 'saved-motif' }, from_row: { never: true } },
    phrases: ['I ripped back a row', 'go back one row'],
  },
  async answer({ motif: name, from_row }, context): Promise<Answer> {
    const tell = await change(context, name, (doc, motif) => {
      const { row, made } = progressOf(doc, motif.name);
      if (from_row !== undefined && from_row !== row) return { row, made, counted: false };
      if (row === 0) {
        throw new Problem('no-row-done', `No row of ${motif.name} is done that could be taken back.`, {
          option: 'motif',
          hint: 'Say where you are with /progress at row:4.',
        });
      }
      record(doc, motif, 'back', { row: row - 1, made }, context.now);
      return { row: row - 1, made, counted: true };
    });
    const { motif, row, counted } = tell;
    const found = coming(motif, tell);
    return {
      ...found,
      headline: counted
        ? `Back to ${count(row, rowWord(planOf(motif)))} done of ${motif.name}; ${found.says}.`
        : `${pressedBefore(motif, from_row ?? 0, row)}; ${found.says}.`,
      data: { ...found.data, counted },
    };
  },
});
