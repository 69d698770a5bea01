/** Where do her counts leave the pattern, why, and how is it mended? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question, type OptionsOf } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { MOST_ROWS, MOST_ROWS_WORKED } from '../../src/core/base/limits.ts';
import { checkCounts, findLastCounted, type Miscount } from '../../src/core/miscount/check-counts.ts';
import { planRows, type RowPlan } from '../../src/core/rows/index.ts';
import { lessonAction } from '../shared/lesson-for.ts';
import { elsewhereWords } from '../shared/elsewhere-words.ts';
import { RowWord, units } from '../shared/motif-words.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { t } from '../../src/core/base/reader.ts';
import { findCountsIn } from '../../src/core/miscount/counts-in-words.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { savedMotif } from '../shared/saved-motif.ts';

/** Causes told in words; the rest stand in the data. */
const TOLD = 4;

export const check = question({
  name: 'check',
  says: 'Where your counts leave the pattern, what probably happened, and how to mend it',
  options: {
    shape: opt.shape().optional(),
    size: opt.size().optional(),
    counts: opt.counts('What you counted, row by row, like 3 5 7 8'),
    from_row: opt
      .whole(
        {
          says: 'The row of the first count; 1 if not given',
          assumed: 'The first count is that of the first row or round.',
        },
        { max: MOST_ROWS_WORKED, example: '4' },
      )
      .default(1),
    other_size: opt
      .whole('Blocks along the other side of a rectangle', { max: MOST_ROWS, example: '8' })
      .optional(),
    stitch: opt.stitch().optional(),
    motif: savedMotif('A motif you saved, instead of shape and size').optional(),
  },
  example: 'shape:diagonal size:12 counts:"3 5 7 8 10"',
  refused: { line: 'shape:diagonal size:2 counts:"3 5 3 1 1"', option: 'counts' },
  form: {
    title: 'Check these counts',
    asks: ['counts', 'from_row', 'motif', 'shape', 'size'],
    needs: [
      ['motif', 'shape'],
      ['motif', 'size'],
    ],
  },
  pointed: {
    at: 'message',
    name: 'Check these counts',
    none: 'There are no counts in that message.',
    finds: (words) => {
      const found = findCountsIn(words);
      return (
        found && {
          counts: found.counts.join(' '),
          ...(found.from === undefined ? {} : { from_row: String(found.from) }),
        }
      );
    },
  },
  asked: {
    ways: [
      'mistake <counts>',
      'count <counts>',
      'check count',
      'mistake stitch',
      'mistake count',
      'check <counts>',
      'mistake <shape>',
      '<counts> <shape>',
      'stitch <row> <count>',
      'count <row> <count>',
    ],
    also: 'stitch row round motif where why pattern done cluster count which total corner i-am-on next check getting',
    not: 'gauge border weigh ball yarn repeat evenly join hook',
    marks: {
      counts: { takes: 'counts', near: 'count stitch' },
      size: {
        takes: 'count',
        nouns: 'row round block',
        near: 'size',
        lead: 'size square granny circle hexagon',
        only: true,
      },
      other_size: { takes: 'count', nouns: 'block', only: true, lead: 'by' },
      from_row: { takes: 'row', near: '' },
      motif: { never: true },
    },
    reports: true,
    fills: ['shape', 'size', 'other_size', 'stitch'],
    needs: [
      ['shape', 'motif'],
      ['size', 'motif'],
    ],
    phrases: [
      'my counts are 3 5 7 8 10 on a 12 row diagonal square, where did I go wrong',
      'check my granny square: 12 24 35 over 5 rounds',
    ],
  },
  async answer({ counts, from_row, ...asked }, { projects, maker }): Promise<Answer> {
    const { motif: name } = asked;
    const motif =
      name === undefined ? undefined : findMotif(await projects.maker(maker.id, maker.name), name);
    const { shape, size, other_size, stitch } = motif
      ? { ...motif, other_size: motif.otherSize }
      : { ...asked, ...needed(asked) };
    const rows = other_size ?? (shape === 'flat' ? findLastCounted(from_row, counts.length) : undefined);
    const plan = planRows(shape, { size, otherSize: rows, stitch });
    const found = checkCounts(plan, counts, from_row);
    return {
      ...(found.wrong ? departed(plan, found, found.wrong) : allRight(plan, found, counts.length)),
      working: found.working.steps,
      assumptions: stitch === undefined ? [`Worked in ${t(plan.stitch)}, as no stitch was named.`] : [],
    };
  },
});

/** What is counted in, where no saved motif says it. Throws Problem: option-missing. */
function needed({ shape, size }: Partial<Pick<OptionsOf<typeof check>, 'shape' | 'size'>>) {
  const missing = (option: string, hint: string) =>
    new Problem('option-missing', `The option ${option} is missing.`, { option, hint });
  if (shape === undefined)
    throw missing('shape', 'The motif’s shape: shape:diagonal; or motif:"moss square", one that you saved.');
  if (size === undefined)
    throw missing('size', 'Rising rows of a diagonal square, blocks along a side, rounds: size:12.');
  return { shape, size };
}

const difference = (found: Miscount) => figure('difference', 'Difference', found.difference);

function allRight(plan: RowPlan, found: Miscount, counts: number): Answer {
  const { called } = plan;
  const { fromRow, lastRow } = found;
  const which =
    counts === 1
      ? `The count of ${called} ${fromRow} is`
      : `All ${counts} counts, ${called}s ${fromRow} to ${lastRow}, are`;
  const next =
    found.next === undefined
      ? 'the piece is complete'
      : `${called} ${lastRow + 1} has ${units(plan, found.next)}`;
  return { headline: `${which} right; ${next}.`, figures: [difference(found)], data: { causes: [] } };
}

/** Where the counts leave the plan, the likeliest cause whole and the others in a line each. */
function departed(plan: RowPlan, found: Miscount, wrong: NonNullable<Miscount['wrong']>): Answer {
  const { called } = plan;
  const { row, expected, counted, causes, noRowHasIt } = wrong;
  const [likeliest, ...others] = causes;
  const off = `${Math.abs(found.difference)} too ${found.difference < 0 ? 'few' : 'many'}`;
  const clause = likeliest?.cause.replace(/^./, (first) => first.toLowerCase()) ?? '';
  const other = elsewhereWords(found, called, (n) => units(plan, n));
  return {
    headline:
      other?.headline ??
      `${RowWord(plan)} ${row} is the first that departs, ${units(plan, counted)} where ${expected} belong${expected === 1 ? 's' : ''}, ${off}; most likely ${clause}`,
    figures: gather(
      figure('first_wrong_row', `First wrong ${called}`, row),
      figure('expected', 'Expected', expected),
      figure('counted', 'Counted', counted),
      difference(found),
      other !== undefined &&
        figure('likely_row', `The ${called} that the last count most likely is of`, other.rows[0] ?? row),
    ),
    lines: gather(
      likeliest !== undefined &&
        gather(
          `Why: ${likeliest.why}`,
          noRowHasIt !== undefined && noRowHasIt !== likeliest.why && noRowHasIt,
          `To mend it: ${likeliest.mend}`,
          `What that costs: ${likeliest.cost}`,
        ),
      others
        .slice(0, TOLD - 1)
        .map(({ cause, mend }) => `Or: ${cause}${mend === likeliest?.mend ? '' : ` To mend that: ${mend}`}`),
    ),
    data: { causes },
    actions: [lessonAction(plan, row)],
  };
}
