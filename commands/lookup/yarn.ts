/** How thick is a yarn, and what is it worked with? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { lookUpYarn, YARN_WORDS } from '../../src/core/lookup/yarn.ts';
import { num, t } from '../../src/core/base/reader.ts';
import { YARN_WEIGHTS, type YarnWeight } from '../../src/standards/yarn-weights.ts';
import { offers, unknown } from './unknown.ts';

const EXAMPLE = 'Try yarn:4, yarn:worsted, yarn:12wpi or yarn:170m/100g.';
const SOURCE =
  'the US yarn trade’s standard yarn weight system, guidelines only, read in copies (crochetonatrain.com; a crochet magazine of October 2018); wraps also in a spinning magazine’s chart (scribd.com, 657653690)';

const called = ({ category, name }: YarnWeight) => `${category} ${name}`;
const stitch = ({ category }: YarnWeight) => (category === 0 ? '' : ` ${t('sc')}`);

function told(yarn: YarnWeight): string {
  const { types, stitchesPer4in, hookMm, hookUS, wpi, spinningWpi, knitPer4in } = yarn;
  return `${called(yarn)} (${types}): ${stitchesPer4in}${stitch(yarn)} over 4 in, hook ${hookMm} mm (US ${hookUS}), ${wpi[0]}–${wpi[1]} wraps per inch${spinningWpi === undefined ? '' : ` (a spinning magazine’s chart says ${spinningWpi})`}, knitted ${knitPer4in}.`;
}

export const yarn = question({
  name: 'yarn',
  bare: 'yarn',
  says: 'Yarn weight categories 0 to 7: stitches, hooks, wraps; by number, name, wraps or ball band',
  options: {
    yarn: opt
      .text(
        {
          says: 'A category 0 to 7, a name, wraps like 12wpi, or a ball like 170m/100g; all if left out',
          suggest: offers(YARN_WORDS),
        },
        { max: 40, example: '12wpi' },
      )
      .optional(),
  },
  example: 'yarn:12wpi',
  refused: { line: 'yarn:spaghetti', option: 'yarn' },
  asked: {
    ways: [
      '?weight <yarn|ball>',
      'weight <yarn|ball>',
      '?hook <yarn>',
      'hook <yarn>',
      '?hook yarn',
      'mean <yarn>',
      'wraps <yarn>',
      'list weight',
      'which <yarn>',
      'which weight yarn',
      '?yarn <yarn>',
      '?weight',
      '?gauge <yarn>',
      '?stitch <yarn>',
      '?how-big <yarn>',
    ],
    also: 'hook weight wraps yarn ball gauge mean size us uk convert terms list standard pattern how-many how-big saved',
    not: 'motif blanket border join left roughly substitute row round stash weigh',
    marks: { yarn: { takes: 'yarn-or-ball' } },
    // What the stitches are counted over.
    extras: { over: { takes: 'length', lead: 'per in to over', led: true } },
    phrases: ['what hook for worsted', 'what category is 12 wpi'],
  },
  answer({ yarn: typed }): Answer {
    if (typed === undefined)
      return {
        headline:
          'Eight categories, 0 Lace to 7 Jumbo; stitches and hooks are guidelines, the ball band decides.',
        lines: [...YARN_WEIGHTS.map(told), `Source: ${SOURCE}.`],
        data: { categories: YARN_WEIGHTS.map(({ category }) => category) },
      };
    const { by, yarns, wraps, working } = lookUpYarn(typed);
    const [first] = yarns;
    if (first === undefined) throw unknown('yarn', typed, YARN_WORDS, EXAMPLE);
    const several = yarns.length > 1;
    return {
      headline: several
        ? `${wraps === undefined ? `“${typed}”` : `${num(wraps)} wraps per inch`} fits ${yarns.length} categories: ${yarns.map(called).join(', ')}.`
        : `${called(first)} yarn: ${first.stitchesPer4in}${stitch(first)} over 4 in on a hook of ${first.hookMm} mm.`,
      figures: several
        ? [figure('categories', 'Categories that fit', yarns.length)]
        : [
            figure('category', 'Category', first.category),
            figure('wraps_low', 'Wraps per inch, from', first.wpi[0]),
            figure('wraps_high', 'Wraps per inch, to', first.wpi[1]),
          ],
      lines: gather(
        yarns.map(told),
        yarns.flatMap((one) => (one.note === undefined ? [] : [`${called(one)}: ${one.note}`])),
        by === 'wraps' &&
          'The ranges of wraps overlap, so wraps alone do not decide a category: a swatch does.',
        by === 'ball' &&
          'Read off the yards in a pound of a spinning magazine’s chart; fibre and twist move it, so count the wraps too.',
        `Source: ${SOURCE}.`,
      ),
      working: working.steps,
      data: { categories: yarns.map(({ category }) => category) },
    };
  },
});
