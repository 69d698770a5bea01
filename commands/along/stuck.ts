/** A maker is stuck: answered at once, as a miscount is, and counted, so that the teacher knows what to show next. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME, MOST_ROWS_WORKED } from '../../src/core/base/limits.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { Working } from '../../src/core/base/working.ts';
import { findKindCalled } from '../../src/core/blanket/by-kind.ts';
import type { Miscount } from '../../src/core/miscount/check-counts.ts';
import { NO_WAY, reckonOwn, type Own } from '../../src/core/along/own.ts';
import { reckonPart, type PartNumbers } from '../../src/core/along/numbers.ts';
import { mustTakePart, partMeant, stick } from '../../src/core/along/rules.ts';
import { checkStuck, kindOfPart, slipIn } from '../../src/core/along/stuck.ts';
import { checkBorder } from '../../src/core/along/stuck-border.ts';
import { planOf, type MotifSpec } from '../../src/core/yarn/motif.ts';
import { LONGEST_WORDS_OF_STUCK } from '../../src/projects/along-schema.ts';
import { causeLines, departedHeadline, rightWords } from '../shared/miscount-words.ts';
import { action } from '../shared/actions.ts';
import { RowWord, rowWord, units } from '../shared/motif-words.ts';
import { lessonAction } from '../shared/lesson-for.ts';
import { askerOf } from '../shared/which-kept.ts';
import { JOINED } from './example.ts';
import { numberOf, partName } from './words.ts';
import { ofBorder } from './stuck-border.ts';
import { byId, nameOption, onceMore, partOption, STUCK_ASKS, whichAlong } from './which.ts';

export const stuck = question({
  name: 'stuck',
  says: 'Say where you are stuck, by row and counts or in words; it is answered at once, and counted',
  options: {
    row: opt
      .whole('The row you are stuck at, or the last one counted', { max: MOST_ROWS_WORKED, example: '7' })
      .optional(),
    counts: opt.counts('What you counted, the count of that row last', '11 13 14').optional(),
    words: opt
      .text('What is wrong, in your own words', { max: LONGEST_WORDS_OF_STUCK, example: 'my edges lean' })
      .optional(),
    help: opt
      .yesno({ says: 'Whether the teacher may see, by your name, that you want help', assumed: '' })
      .default(false),
    kind: opt
      .text('Which kind of motif; the one of the part if not given', { max: LONGEST_NAME, example: 'furrow' })
      .optional(),
    part: partOption().optional(),
    name: nameOption,
  },
  example: 'part:2 row:7 counts:"11 13 14"',
  before: JOINED,
  refused: { line: 'part:2 row:90', option: 'row' },
  changes: true,
  form: { title: 'Where are you stuck?', asks: STUCK_ASKS },
  asked: {
    ways: ['stuck', 'stuck row', 'stuck <row>', 'stuck part', 'stuck along'],
    also: 'along part mine i-am-on my-part row round stitch motif count getting border corner colour left increase decrease chain mistake help hint all done yarn',
    not: 'where which who group others how-many next-week',
    reports: true,
    saved: 'along',
    marks: {
      counts: { takes: 'counts', near: 'count stitch', nouns: 'stitch' },
      words: { never: true },
      kind: { takes: 'saved-kind' },
      help: {
        choices: {
          yes: 'want_help need_help help_me wants_help teacher_to_help ask_for_help asking_for_help want_the_teacher',
        },
      },
      name: { takes: 'saved-along' },
    },
    extras: { said: { capture: /\bstuck\b\s*[,:;.–—-]+\s*(\p{L}[^]{5,250})$/iu } },
    // What has no row and no count in it is kept as she said it.
    settle: (options, { said }) =>
      said === undefined || Object.hasOwn(options, 'row') || Object.hasOwn(options, 'counts')
        ? options
        : { ...options, words: said },
    phrases: ['I’m stuck at row 7, I have 19 stitches', 'I’m stuck at row 7'],
  },
  async answer({ row, counts, words, help, kind, part: named, name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    const { id } = context.maker;
    mustTakePart(state, id);
    const part = partMeant(state, { named, maker: id, now: context.now });
    const own = reckonOwn(state.plan, state.members.get(id) ?? NO_WAY);
    await breathe();
    const numbers = reckonPart(own, state.parts, part, new Working());
    const motif = motifMeant(own, kind) ?? own.spec.kinds[kindOfPart(own, part, numbers)];
    if (!motif) throw new Error('a blanket has at least one kind');
    // What is counted while the border is worked are its rounds, unless a motif is named.
    const rounds = kind === undefined ? numbers.border : undefined;
    const inSwatch = kind === undefined && part.work === 'swatch';
    const found = rounds || inSwatch ? undefined : checkStuck(motif, { row, counts });
    const onBorder = rounds && checkBorder(rounds, { row, counts });
    const wrong = onBorder?.wrong;
    const slip = wrong ? { row: wrong.round, slip: wrong.slip } : slipIn(found);
    await context.projects.alongs.happen(doc.id, onceMore(context, doc), (now) =>
      stick(now, askerOf(context), part, {
        // A row of the swatch is none of a motif.
        row: inSwatch ? undefined : (slip?.row ?? row),
        slip: slip?.slip,
        counts,
        words,
        help,
      }),
    );
    const at = numberOf(state, part);
    const answered = rounds
      ? ofBorder(rounds, onBorder, { corner: own.spec.border.corner, row, words })
      : found
        ? ofCounts(motif, found, counts ?? [])
        : inSwatch
          ? ofSwatch(numbers, { counts, words })
          : ofRows(motif, numbers, { row, words });
    const noted = `It is counted for ${partName(state, part).replace(/^P/, 'p')}${help ? ', and the teacher sees by your name that you ask for help' : ', without your name'}.`;
    return {
      ...answered,
      lines: gather(answered.lines, noted),
      data: { ...answered.data, part: at, slip: slip?.slip ?? null },
      actions: gather(
        rounds
          ? action('The lesson on this', 'lesson start', { lesson: 'rounds' })
          : slip && lessonAction(planOf(motif), slip.row),
        !help &&
          action(
            'Ask to be helped',
            'along stuck',
            { part: at, row: slip?.row ?? row, help: true, name: state.plan.name },
            byId(part),
          ),
        action('Done after all', 'along done', { part: at, name: state.plan.name }, byId(part)),
      ),
      private: true,
    };
  },
});

/** The kind that is named; undefined where none is. Throws Problem: no-such-kind. */
function motifMeant(own: Own, kind: string | undefined): MotifSpec | undefined {
  if (kind === undefined) return undefined;
  const names = own.spec.kinds.map(({ name }) => name);
  const found = own.spec.kinds[findKindCalled(kind.trim(), names)];
  if (found) return found;
  throw new Problem('no-such-kind', 'This make-along has no such kind of motif.', {
    option: 'kind',
    hint: `Its kinds are ${names.join(', ')}.`,
  });
}

/** Where the list is to begin is no option here: the row that is named is the last that was counted. */
const withoutFromRow = (line: string): string => line.replace(/ \(from_row:\d+\)/g, '');

type Said = Pick<Answer, 'headline' | 'figures' | 'working' | 'data'> & { readonly lines: string[] };

/** What her counts tell. */
function ofCounts(motif: MotifSpec, found: Miscount, counts: readonly number[]): Said {
  const plan = planOf(motif);
  const { wrong, difference, working } = found;
  const figures = gather(
    wrong && [
      figure('first_wrong_row', `First wrong ${plan.called}`, wrong.row),
      figure('expected', 'Expected', wrong.expected),
      figure('counted', 'Counted', wrong.counted),
    ],
    figure('difference', 'Difference', difference),
  );
  if (wrong)
    return {
      headline: departedHeadline(plan, `your ${motif.name}`, found, wrong),
      figures,
      lines: causeLines(
        wrong.elsewhere === undefined ? wrong.causes : (wrong.slip?.causes ?? wrong.causes),
      ).map(withoutFromRow),
      working: working.steps,
      data: { causes: wrong.causes },
    };
  const next =
    found.next === undefined
      ? 'the motif is complete'
      : `${rowWord(plan)} ${found.lastRow + 1} has ${units(plan, found.next)}`;
  return {
    headline: `${rightWords(plan, `your ${motif.name}`, found, counts.at(-1) ?? 0)}; ${next}.`,
    figures,
    lines: ['The counts are not what holds you up: say in words what does.'],
    working: working.steps,
    data: { causes: [] },
  };
}

/** A swatch is straight: what is counted in one of its rows is counted in all. */
function ofSwatch(
  { swatch }: PartNumbers,
  {
    counts = [],
    words,
  }: { readonly counts: readonly number[] | undefined; readonly words: string | undefined },
): Said {
  const [first] = counts;
  const other = counts.find((one) => one !== first);
  return {
    headline:
      first === undefined
        ? words === undefined
          ? 'It is noted that you are stuck. Say what you counted, or in words what is wrong.'
          : 'It is noted in your words.'
        : other === undefined
          ? counts.length === 1
            ? `Your count of ${first} is right if the first row of the swatch has as many: all its rows should.`
            : `All the rows that you counted have ${first} stitches, as a swatch should.`
          : `Every row of a swatch has as many stitches as its first; yours went from ${first} to ${other}.`,
    figures: gather(swatch && figure('expected', 'Stitches of the swatch', swatch.stitches)),
    lines: gather(
      other !== undefined &&
        'Most likely: The first or the last stitch of a row was missed, or the turning chain was worked into where it does not count.',
      swatch &&
        `By the gauge about ${swatch.stitches} stitches and ${swatch.rows} rows are as wide and high as it should be: more of them on that length, and a larger hook is to be tried; fewer, a smaller one.`,
    ),
    working: [],
    data: {},
  };
}

/** What the row should have, or the rows of the part, where she gave no counts. */
function ofRows(
  motif: MotifSpec,
  { rows }: PartNumbers,
  { row, words }: { readonly row: number | undefined; readonly words: string | undefined },
): Said {
  const plan = planOf(motif);
  const called = rowWord(plan);
  const here = row === undefined ? undefined : plan.rows[row - 1];
  const before = row === undefined ? undefined : plan.rows.find((one) => one.row === row - 1);
  return {
    headline: here
      ? `${RowWord(plan)} ${here.row} of your ${motif.name} has ${units(plan, here.count)}${before === undefined ? '' : `, after ${units(plan, before.count)} in ${called} ${before.row}`}.`
      : words === undefined
        ? `It is noted that you are stuck. Say at which ${called}, and what you counted, and you are told what probably happened.`
        : 'It is noted in your words.',
    figures: gather(here && figure('expected', `Count of ${called} ${here.row}`, here.count)),
    lines: gather(
      here === undefined &&
        rows &&
        `What belongs there, from ${called} ${rows.from}: ${rows.counts.join(' ')}.`,
      `With what you counted: /along stuck row:${here?.row ?? 7} counts: and the counts up to it.`,
    ),
    working: [],
    data: {},
  };
}
