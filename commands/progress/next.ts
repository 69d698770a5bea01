/** One more row is done: what is the coming one? */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { progressOf, record } from '../../src/projects/progress.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { rowWord, RowWord } from '../shared/motif-words.ts';
import { lineOf } from '../shared/actions.ts';
import { change } from './change.ts';
import { coming, pressedBefore } from './coming.ts';
import { fromRow } from './options.ts';

export const next = question({
  name: 'next',
  says: 'One more row is done: counts it, and says what the coming row is',
  options: { motif: savedMotif().optional(), from_row: fromRow().optional() },
  example: 'motif:"moss square"',
  refused: { line: 'motif:"mos squar"', option: 'motif' },
  before: [DEFINED],
  changes: true,
  asked: {
    looksLike: 'progress show',
    ways: ['next row|round', 'done row|round', 'row next', 'done row next', 'done row next which'],
    also: 'done next row round motif which mine',
    not: 'ripped where-am-i left how-many undo count <count> group',
    reports: true,
    saved: 'motif',
    marks: { motif: { takes: 'saved-motif' }, from_row: { never: true } },
    phrases: ['next row', 'I finished a row'],
  },
  async answer({ motif: name, from_row }, context): Promise<Answer> {
    const tell = await change(context, name, (doc, motif) => {
      const { row, made } = progressOf(doc, motif.name);
      if (from_row !== undefined && from_row !== row) return { row, made, counted: false };
      const plan = planOf(motif);
      if (row >= plan.rows.length) {
        throw new Problem('last-row-done', `${RowWord(plan)} ${row} is the last of ${motif.name}.`, {
          facts: { row },
          option: 'motif',
          hint: `Count it as made with ${lineOf('progress finished', { motif: motif.name })}.`,
        });
      }
      record(doc, motif, 'row', { row: row + 1, made }, context.now);
      return { row: row + 1, made, counted: true };
    });
    const { motif, row, counted } = tell;
    const found = coming(motif, tell);
    return {
      ...found,
      headline: counted
        ? `${RowWord(planOf(motif))} ${row} of ${motif.name} is done; ${found.says}.`
        : `${pressedBefore(motif, from_row ?? 0, row)}; ${found.says}.`,
      data: { ...found.data, counted },
      assumptions:
        row === 1 && planOf(motif).worked === 'rows'
          ? [`Odd ${rowWord(planOf(motif))}s show the right side (common practice).`]
          : [],
    };
  },
});
