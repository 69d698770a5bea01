/** Is what she counted what the row should have, and what is to be done if not? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { checkCounts, findRowsCounted } from '../../src/core/miscount/check-counts.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { findRowsWith } from '../../src/core/yarn/still-to-come.ts';
import { progressOf, record } from '../../src/projects/progress.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { elsewhereWords } from '../shared/elsewhere-words.ts';
import { rowWord, RowWord, units } from '../shared/motif-words.ts';
import { action } from '../shared/actions.ts';
import { change } from './change.ts';
import { coming } from './coming.ts';

/** Rows elsewhere that have the count, named at most so many. */
const NAMED = 4;

export const counted = question({
  name: 'counted',
  says: 'Holds what you counted against the row you are at, and says what to do where it differs',
  options: {
    counts: opt.counts('The count of the last row done, or of several, the last row last', '11'),
    motif: savedMotif().optional(),
  },
  example: 'counts:"7 9 10" motif:"moss square"',
  refused: { line: 'counts:"3 5 7 9 11 13" motif:"moss square"', option: 'counts' },
  before: [DEFINED, '/progress at motif:"moss square" row:5'],
  changes: true,
  asked: {
    ways: [
      'count stitch',
      'stitch <count> row',
      'row <counts>',
      'count <count>',
      'row count',
      'stitch row getting',
    ],
    also: 'stitch row round count mistake done check where-am-i getting hook motif',
    not: 'how-many how-much border gauge group weigh ball yarn left evenly increase decrease repeat <shape>',
    reports: true,
    saved: 'motif',
    marks: {
      counts: { takes: 'counts', nouns: 'stitch', near: 'count stitch row' },
      motif: { takes: 'saved-motif' },
    },
    phrases: ['I counted 13 stitches in this row', 'my last rows came to 7 9 10'],
  },
  async answer({ counts, motif: name }, context): Promise<Answer> {
    const tell = await change(context, name, (doc, motif) => {
      const { row, made } = progressOf(doc, motif.name);
      const called = rowWord(planOf(motif));
      const { from, last } = findRowsCounted(row, counts.length);
      if (from < 1) {
        throw new Problem(
          'too-many-counts',
          `${counts.length} counts are given, but only ${row} ${called}${row === 1 ? ' is' : 's are'} done.`,
          {
            facts: { given: counts.length, done: row },
            option: 'counts',
            hint: `Give at most ${last}, or say where you are: /progress at row:${planOf(motif).rows[counts.length - 1]?.row ?? planOf(motif).rows.length}.`,
          },
        );
      }
      // Before the first row is counted as done, it is the first row that was counted.
      record(doc, motif, 'counted', { row, made }, context.now);
      return { row, made };
    });
    const { motif, row } = tell;
    const plan = planOf(motif);
    const { from, last } = findRowsCounted(row, counts.length);
    const found = checkCounts(plan, counts, from);
    const next = coming(motif, tell);
    const difference = figure('difference', 'Difference', found.difference);
    const shared = {
      working: found.working.steps,
      data: { ...next.data, causes: found.wrong?.causes ?? [] },
    };
    const which =
      counts.length === 1
        ? `${RowWord(plan)} ${last} of ${motif.name} has`
        : `${RowWord(plan)}s ${from} to ${last} of ${motif.name} have`;
    if (!found.wrong) {
      return {
        ...shared,
        headline: `${which} the right ${counts.length === 1 ? `count, ${units(plan, counts[0] ?? 0)}` : 'counts'}; ${next.says}.`,
        figures: [...next.figures, difference],
        lines: next.lines,
        actions: next.actions,
      };
    }
    const { wrong } = found;
    const off = Math.abs(found.difference);
    const other = elsewhereWords(found, rowWord(plan), (n) => units(plan, n));
    const places = (
      other?.rows ?? (counts.length === 1 ? findRowsWith(plan, wrong.counted, last) : [])
    ).slice(0, NAMED);
    const [likeliest, ...others] = wrong.slip?.causes ?? wrong.causes;
    return {
      ...shared,
      headline:
        other?.headline ??
        `${RowWord(plan)} ${wrong.row} of ${motif.name} should have ${units(plan, wrong.expected)}; you counted ${wrong.counted}, ${off} too ${found.difference < 0 ? 'few' : 'many'}.`,
      figures: [
        ...next.figures,
        figure('first_wrong_row', `First wrong ${rowWord(plan)}`, wrong.row),
        figure('expected', 'Expected', wrong.expected),
        figure('counted', 'Counted', wrong.counted),
        difference,
      ],
      lines: gather(
        other === undefined
          ? places.length > 0
            ? [`That is the count of ${rowWord(plan)} ${places.join(', or of ')}: perhaps you are there.`]
            : []
          : [`Say where you are, and go on from there: /progress at row:${other.rows[0] ?? last}.`],
        likeliest &&
          (other === undefined || wrong.slip) && [
            `Most likely: ${likeliest.cause}`,
            `Why: ${likeliest.why}`,
            `To mend it: ${likeliest.mend}`,
            `What that costs: ${likeliest.cost}`,
          ],
        others.slice(0, 2).map(({ cause }) => `Or: ${cause}`),
      ),
      actions: gather(
        places.map((place) =>
          action(`I am at ${rowWord(plan)} ${place}`, 'progress at', { motif: motif.name, row: place }),
        ),
        wrong.row > 0 &&
          other === undefined &&
          action(`Ripped back to ${rowWord(plan)} ${wrong.row - 1}`, 'progress at', {
            motif: motif.name,
            row: wrong.row - 1,
          }),
      ),
    };
  },
});
