/** Which counts suit a repeat, and how long is the chain to begin with? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findRepeat, type RepeatNeighbour } from '../../src/core/rows/repeat.ts';
import { cm, count, num, t } from '../../src/core/base/reader.ts';

const ordinal = (n: number) => `${n}${n === 2 ? 'nd' : n === 3 ? 'rd' : 'th'}`;

export const repeat = question({
  name: 'repeat',
  says: 'The stitch counts that suit a pattern repeat near a wish, and the chain to begin with',
  options: {
    multiple: opt.whole('Stitches in one repeat: the 8 of “multiple of 8 plus 2”', {
      max: 500,
      example: '8',
    }),
    plus: opt
      .whole(
        {
          says: 'What is added once: the 2 of “multiple of 8 plus 2”; 0 if not given',
          assumed: 'Nothing is added to the repeats.',
        },
        { min: 0, max: 500, example: '2' },
      )
      .default(0),
    near: opt.whole('The count you have in mind; or give width and gauge', { example: '100' }).optional(),
    width: opt.length('The width you have in mind, with gauge').optional(),
    gauge: opt.gauge().optional(),
    stitch: opt
      .stitch({
        says: 'The stitch of the first row',
        assumed: `The first row is worked in ${t('sc')}, as no stitch was named.`,
      })
      .default('sc'),
  },
  example: 'multiple:8 plus:10 near:106',
  refused: { line: 'multiple:8 width:120cm', option: 'gauge' },
  asked: {
    ways: [
      'repeat chain',
      '?stitch|chain repeat',
      'repeat <count>',
      '<multiple>',
      'repeat stitch',
      'repeat <length>',
    ],
    also: 'chain stitch gauge across how-many pattern roughly blanket piece standard row getting wanted new cluster how-big',
    not: 'border motif ball weigh',
    marks: {
      multiple: { takes: 'multiple' },
      plus: { takes: 'none' },
      near: {
        takes: 'count',
        nouns: 'stitch chain',
        near: 'roughly stitch chain',
        lead: 'near about around approximately approx roughly close_to nearest_to closest_to to somewhere_around ish want',
      },
      width: { takes: 'length', near: 'across blanket piece' },
    },
    needs: [
      ['near', 'width'],
      ['gauge', 'near'],
    ],
    phrases: [
      'multiple of 8 plus 2, I want about 100 stitches, what do I chain',
      'starting chain for a repeat of 6 plus 1 near 150',
    ],
  },
  answer({ multiple, plus, near, width, gauge, stitch }): Answer {
    const found = findRepeat({ multiple, plus, near, width, gauge, stitch });
    const { below, above, nearest, foundationChain, firstInto } = found;
    const wide = (one: RepeatNeighbour) => (one.width === undefined ? '' : `, ${cm(one.width)} wide`);
    const told = (one: RepeatNeighbour) =>
      `${count(one.stitches, 'stitch', 'stitches')} (${one.repeats === 0 ? 'no whole repeat' : count(one.repeats, 'repeat')}${wide(one)})`;
    const exact = below.stitches === above.stitches;
    return {
      headline: `${num(nearest.stitches, 0)} stitches suit${exact ? '' : ` (nearest to ${num(found.near, 1)})`}: ${count(nearest.repeats, 'repeat')} of ${multiple}${plus === 0 ? '' : ` plus ${plus}`}${wide(nearest)}; chain ${num(foundationChain, 0)} to begin.`,
      figures: gather(
        figure('below', 'At or below', below.stitches),
        figure('above', 'At or above', above.stitches),
        figure('nearest', 'Nearest', nearest.stitches),
        figure('repeats', 'Repeats', nearest.repeats),
        figure('foundation_chain', 'Foundation chain', foundationChain),
        figure('width', 'Width', nearest.width, 'cm'),
      ),
      lines: gather(
        !exact && `Below: ${told(below)}. Above: ${told(above)}.`,
        `The first ${t(stitch)} goes into the ${ordinal(firstInto)} chain from the hook; the loop on the hook never counts.`,
        stitch === 'hdc' &&
          `Teachers differ on ${t('hdc')}: here the skipped chains count as a stitch; where they do not, chain ${num(foundationChain + 1, 0)}.`,
        'The plus is added once, however many repeats there are.',
      ),
      assumptions: found.tied ? ['Both neighbours are equally near; the wider is taken.'] : [],
      working: found.working.steps,
      data: { neighbours: { below, above, nearest } },
    };
  },
});
