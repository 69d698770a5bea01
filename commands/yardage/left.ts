/** How far does the yarn that is left go? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { MOST_ROWS_WORKED } from '../../src/core/base/limits.ts';
import { cm, count, m, num, t } from '../../src/core/base/reader.ts';
import { reckonLeft } from '../../src/core/yarn/left.ts';
import { otherSize } from './options.ts';

export const left = question({
  name: 'left',
  says: 'How far the yarn that is left will go: the last row that can be finished',
  options: {
    left: opt.yarnAtHand('What the yarn left weighs, or how many balls of it there are', '18g'),
    ball: opt.ball(),
    shape: opt.shape(),
    size: opt.size(),
    each: opt.weight('What one finished motif weighs', '18g'),
    done_row: opt
      .whole(
        {
          says: 'The last row already finished; 0, nothing yet, if not given',
          assumed: 'Nothing is worked yet, as no done_row was given.',
        },
        { min: 0, max: MOST_ROWS_WORKED, example: '6' },
      )
      .default(0),
    other_size: otherSize(),
    stitch: opt.stitch().optional(),
  },
  example: 'left:5g ball:170m/100g shape:diagonal size:12 each:18g done_row:6',
  refused: { line: 'left:5g ball:170m/100g shape:diagonal size:12 each:18g done_row:25', option: 'done_row' },
  asked: {
    ways: [
      'how-far <weight>',
      'how-far yarn row|round',
      'left ?row|round',
      'left how-far',
      'left <weight>',
      'enough <weight>',
      'enough row|round',
      'left row|round',
      '?row|round <weight>',
      'left yarn enough',
      'enough left',
    ],
    also: 'motif row round yarn ball done weigh each enough how-far left how-many total measure i-am-on next getting all',
    not: 'claim group substitute join border blanket colour open-for repeat',
    marks: {
      left: {
        takes: 'weight-or-balls',
        near: 'left enough getting',
        not: 'weigh each done',
        lead: 'will have got',
      },
      each: {
        takes: 'weight',
        near: 'weigh each measure done',
        not: 'left',
        lead: 'takes take needs uses weighs eats one_is each_is square_is motif_is',
      },
      done_row: { takes: 'row', nouns: 'row round', near: 'done i-am-on' },
      size: { takes: 'count', nouns: 'row round block', near: 'size motif', lead: 'size', only: true },
    },
    fills: ['shape', 'size', 'each', 'ball'],
    phrases: [
      'I have 5g left, how many rows of a 12 row diagonal square can I still do',
      'will 18g get me to the end of my granny',
    ],
  },
  answer({ other_size, done_row, ...asked }): Answer {
    const found = reckonLeft({ ...asked, doneRow: done_row, otherSize: other_size });
    const { plan, lastRow, spare, more } = found;
    const row = plan.called;
    const rows = plan.rows.length;
    const tail = cm(found.tail);
    return {
      headline: headline(),
      figures: gather(
        figure('last_row', `Last ${row} that can be finished`, lastRow),
        figure('spare', 'Left after it, the tail included', spare, 'm'),
        figure('yarn_left', 'Yarn at hand', found.yarnLeft, 'm'),
        figure('yarn_each', 'Yarn in a finished motif', found.motifYarn, 'm'),
        figure('more_motifs', 'Further motifs from the rest', more),
      ),
      lines: gather(
        found.atTurn !== undefined &&
          `The turn is ${row} ${plan.size}: ${num(found.atTurn, 0)} % of a motif’s yarn is worked by then, so a turn made while half the yarn is left is always safe.`,
        lastRow < rows &&
          lastRow > done_row &&
          `Stop there, or join the next ball within ${row} ${lastRow + 1}.`,
      ),
      working: found.working.steps,
      assumptions: gather(
        asked.stitch === undefined && `Worked in ${t(plan.stitch)}, as no stitch was named.`,
        `The motif’s yarn is shared evenly over its ${plan.counted}; ${tail} are kept back for the tail.`,
      ),
    };

    function headline(): string {
      if (done_row === rows) return `This motif is finished, with ${m(spare)} left; ${rest(more ?? 0)}.`;
      if (more !== undefined) {
        return `The whole motif can be finished, to ${row} ${rows}, with ${m(spare)} left over; ${rest(more)}.`;
      }
      if (lastRow === done_row) {
        return done_row === 0
          ? `Not even the first ${row} can be finished with ${m(spare)} and a tail of ${tail}.`
          : `No further ${row} can be finished: stay at ${row} ${done_row}, with ${m(spare)} left.`;
      }
      return `The yarn reaches to the end of ${row} ${lastRow} of ${rows}, with ${m(spare)} left over, the tail included.`;
    }
  },
});

const rest = (more: number) =>
  more === 0
    ? 'that is not enough for another whole motif'
    : `the rest makes ${count(more, 'more motif', 'more motifs')}`;
