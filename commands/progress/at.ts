/** Where she is, set by hand. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { MOST_ROWS_WORKED } from '../../src/core/base/limits.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { count } from '../../src/core/base/reader.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { progressOf, record } from '../../src/projects/progress.ts';
import { MOST_MADE } from '../../src/projects/schema.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { rowWord } from '../shared/motif-words.ts';
import { change } from './change.ts';
import { coming } from './coming.ts';

export const at = question({
  name: 'at',
  says: 'Sets where you are: the last row done, and how many motifs are made',
  options: {
    row: opt.whole('The last row that is done; 0 before the first', {
      min: 0,
      max: MOST_ROWS_WORKED,
      example: '6',
    }),
    motif: savedMotif().optional(),
    made: opt
      .whole('How many of this motif are made; as before if not given', {
        min: 0,
        max: MOST_MADE,
        example: '7',
      })
      .optional(),
  },
  example: 'row:6 motif:"moss square"',
  refused: { line: 'row:25 motif:"moss square"', option: 'row' },
  before: [DEFINED],
  changes: true,
  asked: {
    ways: [
      'i-am-on <row>',
      'i-am-on row <number>',
      'done <row>',
      'done row <number>',
      'i-am-on round <number>',
      'change <row>',
      'done motif row <number>',
    ],
    also: 'done row round motif i-am-on next mine change place getting',
    not: 'how-many how-much stitch where-am-i count mistake mean left ripped weigh group border increase evenly pattern hook',
    reports: true,
    saved: 'motif',
    marks: {
      row: { takes: 'row', nouns: 'row round', near: 'done i-am-on' },
      made: { takes: 'count', nouns: 'motif', near: 'done', only: true },
      motif: { takes: 'saved-motif' },
    },
    phrases: ['I am on row 6', 'I have made 4 squares and done 9 rows of the next'],
  },
  async answer({ row, motif: name, made }, context): Promise<Answer> {
    const tell = await change(context, name, (doc, motif) => {
      const plan = planOf(motif);
      const rows = plan.rows.length;
      if (row > rows) {
        throw new Problem(
          'no-such-row',
          `${motif.name} ends with ${rowWord(plan)} ${rows}; there is no ${rowWord(plan)} ${row}.`,
          {
            facts: { rows, row },
            option: 'row',
            hint: `Give the last one that is done, from 0 to ${rows}.`,
          },
        );
      }
      const to = { row, made: made ?? progressOf(doc, motif.name).made };
      record(doc, motif, 'set', to, context.now);
      return to;
    });
    const found = coming(tell.motif, tell);
    return {
      ...found,
      headline: `${tell.motif.name} is at ${count(tell.row, rowWord(planOf(tell.motif)))} done${made === undefined ? '' : ` and ${made} made`}; ${found.says}.`,
    };
  },
});
