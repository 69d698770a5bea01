/** How large are beds, cribs and blankets usually? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { lookUpSize, SIZE_NAMES } from '../../src/core/lookup/size.ts';
import { size as measures } from '../../src/core/base/reader.ts';
import { caution } from '../../src/standards/care.ts';
import { offers, unknown } from './unknown.ts';

/** Sizes of things that are given to children, or sold for them. */
const FOR_CHILDREN: readonly string[] = ['crib', 'baby', 'preemie', 'child', 'teen'];

export const size = question({
  name: 'size',
  bare: 'size',
  says: 'Sizes that beds, cribs and blankets usually have, each with who says so',
  options: {
    size: opt
      .text(
        {
          says: 'What it is for: queen, crib, lap, throw, UK king; the list of names if left out',
          suggest: offers(SIZE_NAMES),
        },
        { max: 40, example: 'queen' },
      )
      .optional(),
  },
  example: 'size:queen',
  refused: { line: 'size:elephantine', option: 'size' },
  asked: {
    ways: [
      'how-big blanket|bed',
      'how-big <for>',
      'standard how-big',
      'standard blanket',
      'how-big baby',
      'standard <for>',
      'bed size',
      'size <for>',
      '?size blanket|bed',
      '?size <for>',
    ],
    also: 'blanket bed baby standard size across down how-big list all uk us need new',
    not: 'motif border gauge hook ball weigh stash biggest yarn swatch blocked mine safe sleep',
    marks: { size: { takes: 'for', only: false } },
    phrases: ['how big is a queen size blanket', 'standard throw size'],
  },
  answer({ size: typed }): Answer {
    const none = 'No body has set a standard for blanket sizes: these are conventions.';
    if (typed === undefined)
      return {
        headline: `Sizes are known for ${SIZE_NAMES.join(', ')}.`,
        lines: [none],
        data: { names: SIZE_NAMES },
      };
    const found = lookUpSize(typed);
    const [first] = found;
    if (first === undefined) throw unknown('size', typed, SIZE_NAMES, `There are ${SIZE_NAMES.join(', ')}.`);
    return {
      headline: `${first.of.replace(/^./, (letter) => letter.toUpperCase())}: ${measures(first.width, first.height)} (${first.what})${found.length > 1 ? `, and ${found.length - 1} more` : ''}.`,
      figures: [figure('width', 'Width', first.width, 'cm'), figure('height', 'Length', first.height, 'cm')],
      lines: gather(
        found.map(({ what, width, height, source }) => `${measures(width, height)}: ${what} (${source}).`),
        none,
        found.some(({ kind }) => kind === 'mattress') &&
          'A mattress size is the top only: add the drop you want on each side.',
      ),
      cautions: gather(
        found.some(({ baby }) => baby) && caution('baby'),
        found.some(({ of }) => FOR_CHILDREN.includes(of)) && caution('selling'),
      ),
      data: {
        sizes: found.map(({ of, kind, width, height, source }) => ({ of, kind, width, height, source })),
      },
    };
  },
});
