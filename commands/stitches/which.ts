/** Which row has so many stitches? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { MOST_ROWS } from '../../src/core/base/limits.ts';
import { sayNoRowHas } from '../../src/core/miscount/causes.ts';
import { findRowWithCount, findRow } from '../../src/core/rows/which-row.ts';
import { count } from '../../src/core/base/reader.ts';

export const which = question({
  name: 'which',
  says: 'Which row you are on, from the stitches that you counted in it',
  options: {
    shape: opt.shape(),
    stitches: opt.whole('Stitches counted in the row, or blocks', { example: '19' }),
    size: opt
      .size('Rising rows of a diagonal square or blocks along a side; shapes in rounds need none')
      .optional(),
    other_size: opt
      .whole('Blocks along the other side of a rectangle', { max: MOST_ROWS, example: '8' })
      .optional(),
    stitch: opt.stitch().optional(),
  },
  example: 'shape:diagonal size:14 stitches:19',
  refused: { line: 'shape:diagonal stitches:19', option: 'size' },
  asked: {
    ways: [
      'where-am-i stitch <number>',
      '?row|round stitch <number>',
      '?row|round count <number>',
      '?row|round where-am-i stitch',
      'which row stitch <number>',
      'where-am-i <number> motif',
    ],
    also: 'stitch row round cluster block motif count getting where-am-i i-am-on mine which hook done pattern total',
    not: 'border gauge left enough weigh ball yarn evenly increase decrease repeat mistake <row> <counts>',
    marks: {
      stitches: {
        asks: 'How many stitches did you count?',
        takes: 'count',
        nouns: 'stitch cluster block',
        near: 'count stitch',
      },
      size: {
        takes: 'count',
        nouns: 'row round across',
        near: 'size',
        lead: 'size square granny circle hexagon',
        only: true,
      },
      other_size: { never: true },
    },
    fills: ['shape', 'size', 'other_size'],
    phrases: [
      'I have 19 stitches on my 12 row diagonal square, which row am I on',
      'which round of a granny has 60 stitches',
    ],
  },
  answer({ other_size, ...asked }): Answer {
    const found = findRow({ ...asked, otherSize: other_size });
    const { plan, rows, row, otherRow, below, above } = found;
    const [called, Called] = plan.worked === 'rounds' ? ['round', 'Round'] : ['row', 'Row'];
    const counted =
      plan.counted === 'blocks'
        ? count(asked.stitches, 'block')
        : count(asked.stitches, 'stitch', 'stitches');
    const shared = { working: found.working.steps, assumptions: found.assumptions, data: { rows } };
    if (row === undefined) {
      const near = [below, above].filter((one) => one !== undefined);
      const why = sayNoRowHas(plan, asked.stitches, above === undefined);
      return {
        ...shared,
        headline: `No ${called} of this piece has ${counted}: ${near.map((one) => findRowWithCount(plan, one)).join(', ')}.`,
        figures: gather(
          below && figure('below', 'Nearest count below', below.count),
          above && figure('above', 'Nearest count above', above.count),
        ),
        lines: gather(
          why,
          above === undefined &&
            `That is more than its widest ${called} has: another size, or another shape?`,
          'Count once more; if it stays so, /stitches check finds the slip from the counts of several rows.',
        ),
      };
    }
    const level = rows.length > (otherRow === undefined ? 1 : 2);
    return {
      ...shared,
      headline:
        otherRow === undefined
          ? level
            ? `${counted} stand in every ${called} from ${row} to ${rows.at(-1) ?? row}: count the ${called}s to know which.`
            : `With ${counted} you are on ${called} ${row} of ${plan.rows.length}.`
          : `With ${counted} you are on ${called} ${row} while it still grows, or on ${called} ${otherRow} after the turn.`,
      figures: gather(
        figure('row', otherRow === undefined ? Called : `${Called}, while it grows`, row),
        figure('other_row', `${Called}, after the turn`, otherRow),
      ),
      lines: gather(
        otherRow !== undefined &&
          `Growing, every ${called} is longer than the one before; shrinking, shorter: the edge shows which.`,
      ),
    };
  },
});
