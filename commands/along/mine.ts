/** A maker’s own numbers for the part that she has before her. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { caution } from '../../src/standards/care.ts';
import { cm } from '../../src/core/base/reader.ts';
import { NO_WAY, reckonOwn } from '../../src/core/along/own.ts';
import { reckonPart } from '../../src/core/along/numbers.ts';
import { mustTakePart, partMeant, partsBegun } from '../../src/core/along/rules.ts';
import { Working } from '../../src/core/base/working.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { distinct } from '../shared/steps.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { action, form } from '../shared/actions.ts';
import { JOINED } from './example.ts';
import {
  asksWords,
  differsLines,
  givenOut,
  numberOf,
  ownAssumptions,
  partFigures,
  partLines,
  partName,
  wholeLines,
} from './words.ts';
import { byId, nameOption, partOption, STUCK_ASKS, whichAlong } from './which.ts';

export const mine = question({
  name: 'mine',
  says: 'Your own numbers for a part: rows, counts, side, yarn by colour, balls, hours',
  options: { part: partOption().optional(), name: nameOption },
  example: 'part:2',
  before: JOINED,
  refused: { line: 'part:40', option: 'part' },
  asked: {
    ways: [
      'my-part',
      'part this-week',
      'along this-week',
      'mine part show',
      '?part i-am-on',
      '?part where-am-i',
      'where-am-i along',
      'need part along',
      '?yarn part',
      '?motif part',
      'my-part along',
    ],
    also: 'along part mine which show need this-week i-am-on where-am-i where claim yarn motif next how-much how-many',
    not: 'done stuck behind group others pace deadline when list',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['what is my part this week', 'what are my numbers for part 3'],
  },
  async answer({ part: named, name }, context): Promise<Answer> {
    const { state } = await whichAlong(context, name);
    const { id } = context.maker;
    mustTakePart(state, id);
    const part = partMeant(state, { named, maker: id, now: context.now });
    const way = state.members.get(id) ?? NO_WAY;
    const plan = state.plan;
    const own = reckonOwn(plan, way);
    // Of blankets of many kinds each is a piece of work of its own.
    await breathe();
    const theirs = reckonOwn(plan, NO_WAY);
    await breathe();
    const working = new Working();
    const numbers = reckonPart(own, state.parts, part, working);
    const figures = partFigures(own, numbers);
    const at = numberOf(state, part);
    const begun = partsBegun(state, context.now).some((one) => one.id === part.id);
    const [first] = own.kinds;
    return {
      headline: `${partName(state, part)}: ${asksWords(own, part, numbers)}`,
      figures,
      lines: gather(
        !begun && `It is given out on ${givenOut(state, part)}.`,
        partLines(own, numbers),
        differsLines(own, theirs, way),
        part.work !== 'swatch' &&
          first !== undefined &&
          `One ${first.motif.name} is ${cm(first.side)} along a side when it is blocked.`,
        wholeLines(own),
      ),
      working: distinct([...working.steps, ...own.working.steps]),
      assumptions: ownAssumptions(own),
      cautions: gather(
        careFor(own.materials.width, own.materials.height),
        part.work === 'joining' && unevenWords(own.pieces.uneven),
        numbers.hours !== undefined && caution('hands'),
      ),
      data: {
        part: at,
        numbers: figures.map(({ key, value, unit }) => ({ key, value, unit })),
        rows: numbers.rows,
        yarn: (numbers.colours ?? own.materials.colours).map(({ colour, total, balls }) => ({
          colour,
          m: total,
          balls,
        })),
        kinds: own.kinds.map(({ motif, side }, kind) => ({
          name: motif.name,
          size: motif.size,
          side,
          motifs: numbers.motifs?.[kind],
        })),
      },
      actions: [
        action('Done', 'along done', { part: at, name: state.plan.name }, byId(part)),
        form('Stuck', 'along stuck', { part: at, name: state.plan.name }, STUCK_ASKS, byId(part)),
        action('Save my blanket', 'along save', { name: state.plan.name }),
      ],
    };
  },
});
