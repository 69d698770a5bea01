/** A maker's own blanket among what she has saved, so that every other question can be asked of it. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { size } from '../../src/core/base/reader.ts';
import { layOwn, NO_WAY, reckonOwn } from '../../src/core/along/own.ts';
import { countOwnMotifs } from '../../src/core/along/numbers.ts';
import { mustTakePart } from '../../src/core/along/rules.ts';
import { keepOwn } from '../../src/projects/own-blankets.ts';
import { action } from '../shared/actions.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { JOINED } from './example.ts';
import { motifsWords, ownAssumptions, wholeLines } from './words.ts';
import { nameOption, whichAlong } from './which.ts';

export const save = question({
  name: 'save',
  says: 'Keeps your own blanket of it with its motifs, so that progress, handouts, yardage work on it',
  options: {
    as: opt
      .text('What yours is to be called; as the make-along is, if not given', {
        max: LONGEST_NAME,
        example: 'My bean rows',
      })
      .optional(),
    replace: opt
      .yesno({ says: 'yes puts it in the place of a blanket of that name', assumed: '' })
      .default(false),
    name: nameOption,
  },
  example: 'as:"My bean rows"',
  before: JOINED,
  refused: { line: 'as:"Bean rows"', option: 'as' },
  changes: true,
  asked: {
    ways: ['save along', 'save my-part', 'save along blanket'],
    also: 'along mine blanket motif',
    not: 'undo open',
    saved: 'along',
    marks: { as: { never: true }, name: { takes: 'saved-along' } },
    phrases: ['save my blanket of the make-along'],
  },
  async answer({ as, replace, name }, context): Promise<Answer> {
    const { state } = await whichAlong(context, name);
    const { maker, now, once, projects } = context;
    mustTakePart(state, maker.id);
    const { plan } = state;
    const own = reckonOwn(plan, state.members.get(maker.id) ?? NO_WAY);
    await breathe();
    const layout = layOwn(plan, own);
    await breathe();
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) =>
      keepOwn(doc, { plan, own, layout, name: as ?? plan.name }, now, replace),
    );
    const { blanket, motifs, renamed, replaced } = tell;
    const [first] = motifs;
    return {
      headline:
        blanket === undefined
          ? `${first ?? 'Your motif'} is ${replaced ? 'kept anew' : 'kept'} among your motifs, with your own numbers.`
          : `${blanket} is ${replaced ? 'kept anew' : 'kept'} as your own: ${motifsWords(own, own.extent.counts)}, ${size(own.materials.width, own.materials.height)}.`,
      figures: gather(
        figure('motifs', 'Motifs', countOwnMotifs(own)),
        figure('width', 'Width', own.materials.width, 'cm'),
        figure('height', 'Height', own.materials.height, 'cm'),
        figure('yarn_total', 'Yarn with the reserve', own.materials.total, 'm'),
      ),
      lines: gather(
        renamed.map(
          ({ of, to }) => `Its ${of} is kept as ${to}, as another motif of yours is called ${of} already.`,
        ),
        wholeLines(own),
        replaced &&
          blanket !== undefined &&
          'What was there before can be brought back for a day: /blanket undo.',
        `It is yours alone from now on: what you change in it changes nothing in the make-along, and a new gauge there is taken over by asking this again with replace:yes.`,
      ),
      assumptions: ownAssumptions(own),
      cautions: unevenWords(own.pieces.uneven),
      data: { blanket: blanket ?? null, motifs },
      actions: gather(
        first !== undefined && action('Begin', 'progress next', { motif: first, from_row: 0 }),
        blanket !== undefined && action('To print', 'blanket handout', { name: blanket }),
        blanket !== undefined && action('What to buy', 'blanket materials', { name: blanket }),
      ),
    };
  },
});
