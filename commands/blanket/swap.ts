/** Two places of the layout, changed about. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { swapPlaces, withLetter } from '../../src/core/blanket/layout.ts';
import { MOST_PLACES } from '../../src/core/base/limits.ts';
import { findBlanket, kindsOf, putBlanket } from '../../src/projects/blankets.ts';
import { SETTINGS } from '../../src/standards/settings.ts';
import { action } from '../shared/actions.ts';
import { SAVED, savedBlanket } from './options.ts';
import { layoutFacts } from './words.ts';

const place = (says: string, example: string) => opt.whole(says, { max: MOST_PLACES, example });

export const swap = question({
  name: 'swap',
  says: 'Changes two places of the layout about, by their numbers',
  options: {
    a: place('The one place; numbered row by row from the top left', '3'),
    b: place('The other place', '8'),
    name: savedBlanket().optional(),
  },
  example: 'a:3 b:8',
  refused: { line: 'a:3 b:40', option: 'b' },
  before: SAVED,
  changes: true,
  asked: {
    ways: [
      'exchange place',
      'exchange motif',
      'exchange layout',
      'exchange <counts>',
      'exchange blanket',
      'exchange <number>',
    ],
    also: 'place motif layout blanket change',
    not: 'ball yarn pattern group colour hook terms units',
    saved: 'blanket',
    marks: {
      a: { takes: 'count', nouns: 'place motif blanket layout' },
      b: { takes: 'count', nouns: 'place motif blanket layout' },
      name: { takes: 'saved-blanket' },
    },
    phrases: ['swap places 3 and 8'],
  },
  async answer({ a, b, name }, { maker, now, projects, once }): Promise<Answer> {
    const { doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const was = findBlanket(doc, name);
      putBlanket(doc, was, { ...was, layout: swapPlaces(was.layout, a, b) }, now);
      return { name: was.name };
    });
    const blanket = findBlanket(doc, name);
    const facts = layoutFacts(blanket, kindsOf(doc, blanket));
    const there = (number: number) => {
      const kind = blanket.layout[number - 1]?.kind ?? 0;
      return withLetter(kind, blanket.kinds[kind] ?? '');
    };
    return {
      headline: `Places ${a} and ${b} of ${blanket.name} are swapped: ${there(a)} lies at ${a}, ${there(b)} at ${b}.`,
      lines: gather(
        facts.laid.setting !== 'upright' &&
          `Each went with its turning, so ${SETTINGS[facts.laid.setting].name} holds everywhere but at ${a} and ${b}.`,
        facts.lines.slice(1),
      ),
      figures: facts.figures,
      assumptions: [
        ...facts.assumptions,
        'Laying the blanket anew, or at another size, does not keep what was swapped by hand.',
      ],
      data: facts.data,
      actions: [
        action('Swap them back', 'blanket swap', { a, b, name: blanket.name }),
        action('Picture', 'blanket picture', { name: blanket.name }),
      ],
    };
  },
});
