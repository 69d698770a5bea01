/** A blanket’s name, joining, border and reserve, changed. */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question, type OptionsOf } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { borderOf, findBlanket, putBlanket, readNames } from '../../src/projects/blankets.ts';
import type { Blanket } from '../../src/projects/schema.ts';
import { action } from '../shared/actions.ts';
import { edges, SAVED, savedBlanket } from './options.ts';
import { borderWords, joiningWords } from './words.ts';

export const change = question({
  name: 'change',
  says: 'Changes a blanket’s name, joining, border or reserve',
  options: {
    name: savedBlanket().optional(),
    new_name: opt.text('Another name for it', { max: LONGEST_NAME, example: 'garden throw' }).optional(),
    ...edges,
    no_border: opt.yesno('yes takes the border away').optional(),
  },
  example: 'border:"sc hdc dc" border_colours:"moss, sand, moss" joining:slip-stitch',
  refused: { line: 'border:"sc hdc dc" border_colours:"moss, sand"', option: 'border_colours' },
  before: SAVED,
  changes: true,
  form: {
    title: 'Joining and border',
    asks: ['joining', 'join_colour', 'border', 'border_colours', 'reserve'],
    needs: [
      ['new_name', 'joining', 'join_colour', 'border', 'border_colours', 'corner', 'reserve', 'no_border'],
    ],
  },
  asked: {
    ways: [
      'change border',
      'no-border blanket mine',
      'no-border blanket change',
      'change join',
      'rename blanket',
      'rename @blanket',
      'remove border',
      'join blanket',
      'change blanket border',
      'change blanket spare',
    ],
    also: 'blanket border join mine round remove substitute stitch slip-stitch whip corner',
    not: 'how-many how-much group next picture gauge',
    saved: 'blanket',
    marks: {
      name: { takes: 'saved-blanket' },
      new_name: {
        capture:
          /\b(?:rename|call|name)\b.*?\b(?:to|as|it)\s+(?:"([^"]+)"|“([^”]+)”|([\p{L}'’ -]+?)(?=\s*(?:[.,;:?!]|$)))/iu,
      },
      joining: {
        choices: { whip: 'whip', 'slip-stitch': 'slip-stitch', 'single-crochet': 'single_crochet' },
        with: 'join',
      },
      join_colour: { never: true },
      border: { takes: 'stitches', with: 'border' },
      border_colours: { never: true },
      corner: { takes: 'count', nouns: 'corner', near: 'corner', only: true },
      no_border: { choices: { yes: 'remove no-border' }, with: 'border no-border' },
    },
    needs: [['new_name', 'joining', 'border', 'corner', 'reserve', 'no_border']],
    phrases: ['change the border to sc hdc sc', 'rename my blanket to "porch blanket"'],
  },
  async answer({ name, ...asked }, { maker, now, projects, once }): Promise<Answer> {
    if (Object.values(asked).every((value) => value === undefined))
      throw new Problem('no-change', 'What to change is not said.', {
        hint: 'Give border, border_colours, corner, joining, join_colour, reserve or new_name.',
      });
    const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const was = findBlanket(doc, name);
      const blanket = changed(was, asked);
      putBlanket(doc, was, blanket, now);
      return { name: blanket.name };
    });
    const blanket = findBlanket(doc, tell.name);
    return {
      headline: `${blanket.name} is changed. ${joiningWords(blanket)} ${borderWords(blanket)}`,
      figures: [
        figure('border_rounds', 'Rounds of the border', blanket.border.rounds.length),
        figure('reserve', 'Reserve', blanket.reserve, '%'),
      ],
      data: { blanket: blanket.name, joining: blanket.joining, border: blanket.border },
      actions: [
        action('What to buy', 'blanket materials', { name: blanket.name }),
        action('Take it back', 'blanket undo', { name: blanket.name }),
      ],
    };
  },
});

/** The blanket as it is to be. Throws Problem: border-given-and-taken, no-border. */
function changed(was: Blanket, asked: Omit<OptionsOf<typeof change>, 'name'>): Blanket {
  if (asked.no_border === true && (asked.border ?? asked.border_colours) !== undefined)
    throw new Problem('border-given-and-taken', 'The border is taken away and given at once.', {
      option: 'no_border',
      hint: 'Give one of the two.',
    });
  const stitches =
    asked.no_border === true ? [] : (asked.border ?? was.border.rounds.map(({ stitch }) => stitch));
  if (asked.border_colours !== undefined && stitches.length === 0)
    throw new Problem('no-border', 'There is no border to colour.', {
      option: 'border_colours',
      hint: 'Name one stitch a round, like border:"sc hdc sc".',
    });
  const corner = asked.corner ?? was.border.corner;
  const border =
    asked.border_colours !== undefined
      ? borderOf(stitches, readNames(asked.border_colours, 'border_colours'), corner)
      : asked.border !== undefined || asked.no_border === true
        ? borderOf(stitches, [], corner)
        : { ...was.border, corner };
  return {
    ...was,
    name: asked.new_name ?? was.name,
    joining: { ...was.joining, ...defined({ method: asked.joining, colour: asked.join_colour }) },
    border,
    reserve: asked.reserve ?? was.reserve,
  };
}
