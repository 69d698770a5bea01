/** Everything that is kept of a blanket. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { countMade } from '../../src/core/blanket/made.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, g, m, num, money } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { findBlanket, kindsOf } from '../../src/projects/blankets.ts';
import { madeFor } from '../../src/projects/progress.ts';
import { action } from '../shared/actions.ts';
import { distinct } from '../shared/steps.ts';
import { piecesIfKnown } from '../shared/blanket-drawing.ts';
import { SAVED, savedBlanket } from './options.ts';
import {
  borderWords,
  extentWords,
  joiningWords,
  layoutFacts,
  makeCounts,
  sizeFigures,
  sizeWords,
} from './words.ts';

export const show = question({
  name: 'show',
  says: 'Everything that is kept of a blanket: kinds, layout, size, border, colours, how far it is',
  options: { name: savedBlanket().optional() },
  example: 'name:"garden throw"',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: SAVED,
  asked: {
    ways: [
      'show blanket mine',
      'show @blanket',
      'saved blanket',
      'saved @blanket',
      'show blanket saved',
      'show blanket',
    ],
    also: 'saved mine which motif all',
    not: 'picture layout colour cost group list kind remove chart border how-many how-much',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' } },
    phrases: ['show my blanket', 'tell me about my blanket'],
  },
  async answer({ name }, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const blanket = findBlanket(doc, name);
    const facts = layoutFacts(blanket, kindsOf(doc, blanket));
    const working = new Working();
    const pieces = piecesIfKnown(doc, blanket, working);
    const known =
      pieces instanceof Problem
        ? undefined
        : reckonMaterials(pieces, { ...blanket, counts: facts.counts }, working);
    const made = madeFor(doc, blanket);
    const finished = countMade(facts.counts, made);
    return {
      headline: `${blanket.name} is ${extentWords(blanket)}${known ? `, ${sizeWords(known)}` : ''}; ${num(finished)} of ${count(blanket.layout.length, 'motif')} made.`,
      lines: [
        `To make: ${makeCounts(blanket.kinds, facts.counts)}.`,
        ...facts.lines,
        joiningWords(blanket),
        borderWords(blanket),
        `${num(blanket.reserve)} % in reserve.`,
        ...blanket.yarns.map(
          ({ colour, ball, price, balls }) =>
            `${colour}: ${gather(ball ? `${m(ball.m)} in ${g(ball.g)}` : 'no ball known', price !== undefined && `${money(price)} a ball`, balls !== undefined && `${count(balls, 'ball')} at hand`).join(', ')}.`,
        ),
      ],
      figures: gather(facts.figures, figure('made', 'Made', finished), sizeFigures(known)),
      working: distinct(working.steps).filter(({ unit }) => unit === 'cm'),
      assumptions: gather(facts.assumptions, pieces instanceof Problem && `${pieces.message} ${pieces.hint}`),
      cautions: facts.cautions,
      data: { ...facts.data, made, yarns: blanket.yarns, joining: blanket.joining, border: blanket.border },
      actions: [
        action('Picture', 'blanket picture', { name: blanket.name }),
        action('What to buy', 'blanket materials', { name: blanket.name }),
        action('Will mine do?', 'blanket fit', { name: blanket.name }),
      ],
    };
  },
});
