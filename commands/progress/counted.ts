/** Is what she counted what the row should have, and what is to be done if not? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { checkCounts, findRowsCounted, type Miscount } from '../../src/core/miscount/check-counts.ts';
import type { RowPlan } from '../../src/core/rows/index.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { findRowsWith } from '../../src/core/yarn/still-to-come.ts';
import { progressOf, record } from '../../src/projects/progress.ts';
import type { Motif } from '../../src/projects/schema.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { elsewhereWords } from '../shared/elsewhere-words.ts';
import { lessonAction } from '../shared/lesson-for.ts';
import { causeLines, departedHeadline, rightWords } from '../shared/miscount-words.ts';
import { rowWord, units } from '../shared/motif-words.ts';
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
  form: { title: 'Check my counts', asks: ['counts', 'motif'] },
  asked: {
    changesBy: [],
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
    const { motif, ...at } = await change(context, name, (doc, motif) => {
      const { row, made } = progressOf(doc, motif.name);
      mustBeDone(planOf(motif), row, counts.length);
      // Before the first row is counted as done, it is the first row that was counted.
      record(doc, motif, 'counted', { row, made }, context.now);
      return { row, made };
    });
    const plan = planOf(motif);
    const { from, last } = findRowsCounted(at.row, counts.length);
    const found = checkCounts(plan, counts, from);
    const next = coming(motif, at);
    const difference = figure('difference', 'Difference', found.difference);
    const shared = {
      working: found.working.steps,
      data: { ...next.data, causes: found.wrong?.causes ?? [] },
    };
    if (found.wrong) {
      const departed = departedWords(motif, found, found.wrong, { counts, last });
      return { ...shared, ...departed, figures: [...next.figures, ...departed.figures, difference] };
    }
    const which = rightWords(plan, motif.name, found, counts[0] ?? 0);
    return {
      ...shared,
      headline: `${which}; ${next.says}.`,
      figures: [...next.figures, difference],
      lines: next.lines,
      actions: next.actions,
    };
  },
});

/** Throws Problem: too-many-counts, where more rows were counted than are done. */
function mustBeDone(plan: RowPlan, row: number, counts: number): void {
  const { from, last } = findRowsCounted(row, counts);
  if (from >= 1) return;
  const done = `${row} ${plan.called}${row === 1 ? ' is' : 's are'} done`;
  throw new Problem('too-many-counts', `${counts} counts are given, but only ${done}.`, {
    facts: { given: counts, done: row },
    option: 'counts',
    hint: `Give at most ${last}, or say where you are: /progress at row:${plan.rows[counts - 1]?.row ?? plan.rows.length}.`,
  });
}

/** What is said of counts that depart from the plan, and what may be pressed then. */
function departedWords(
  motif: Motif,
  found: Miscount,
  wrong: NonNullable<Miscount['wrong']>,
  { counts, last }: { readonly counts: readonly number[]; readonly last: number },
): Required<Pick<Answer, 'headline' | 'figures' | 'lines' | 'actions'>> {
  const plan = planOf(motif);
  const called = rowWord(plan);
  const other = elsewhereWords(found, called, (n) => units(plan, n));
  const places = (other?.rows ?? (counts.length === 1 ? findRowsWith(plan, wrong.counted, last) : [])).slice(
    0,
    NAMED,
  );
  return {
    headline: departedHeadline(plan, motif.name, found, wrong),
    figures: [
      figure('first_wrong_row', `First wrong ${called}`, wrong.row),
      figure('expected', 'Expected', wrong.expected),
      figure('counted', 'Counted', wrong.counted),
    ],
    lines: gather(
      other
        ? `Say where you are, and go on from there: /progress at row:${other.rows[0] ?? last}.`
        : places.length > 0 &&
            `That is the count of ${called} ${places.join(', or of ')}: perhaps you are there.`,
      causeLines(wrong.slip?.causes ?? wrong.causes, other === undefined || wrong.slip !== undefined),
    ),
    actions: gather(
      places.map((place) =>
        action(`I am at ${called} ${place}`, 'progress at', { motif: motif.name, row: place }),
      ),
      wrong.row > 0 &&
        other === undefined &&
        action(`Ripped back to ${called} ${wrong.row - 1}`, 'progress at', {
          motif: motif.name,
          row: wrong.row - 1,
        }),
      lessonAction(plan, wrong.row),
    ),
  };
}
