/** Where everybody is: in numbers, by part; by name only those who wish it. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { count, when } from '../../src/core/base/reader.ts';
import { findPartAfter, partsBegun, partsUnsure } from '../../src/core/along/rules.ts';
import { countByPart } from '../../src/core/along/progress.ts';
import { numbered } from '../../src/core/along/state.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { action } from '../shared/actions.ts';
import { JOINED } from './example.ts';
import { numberOf } from './words.ts';
import { nameOption, whichAlong } from './which.ts';

/** Names told at most. */
const NAMED = 40;

export const show = question({
  name: 'show',
  says: 'Where everybody is: who is done with each part, stuck, not begun, in numbers',
  options: { name: nameOption },
  example: '',
  before: [...JOINED, '/along done part:1'],
  refused: { line: 'name:"No such class"', option: 'name' },
  asked: {
    ways: [
      'where along',
      'where group part',
      'who behind',
      'who part done',
      'how-far along',
      'how-far group along',
      'group getting along',
      'how-many done part each',
      '?part group',
    ],
    also: 'along part which show mine each how-many done measure i-am-on claim group others getting behind how-to how-far where-am-i',
    not: 'lesson row stitch yarn stuck hand-in accept this-week',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['where are we in the make-along', 'who is behind in the class'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichAlong(context, name);
    const out = partsBegun(state, context.now);
    const begun = out.length;
    const progress = countByPart(state);
    const parts = numbered(state).map(({ number, part: { id, title, from } }) => ({
      number,
      title,
      from,
      done: progress.get(id)?.done ?? 0,
      stuck: progress.get(id)?.stuck ?? 0,
      not_begun: progress.get(id)?.notBegun ?? 0,
    }));
    // Of hundreds of makers, each is looked up by herself: others are heard between.
    await breathe();
    const numbers = new Map(numbered(state).map(({ part, number }) => [part.id, number]));
    const named = [...state.members.values()].filter((member) => member.named);
    const placed = named.map(({ maker, name: called }) => {
      const at = findPartAfter(state, maker, out);
      return { name: called, part: at && numbers.get(at.id) };
    });
    const unsure = partsUnsure(state);
    return {
      headline: `${count(state.members.size, 'maker')} in ${state.plan.name}; ${begun} of ${parts.length} parts ${begun === 1 ? 'is' : 'are'} given out.`,
      figures: [
        figure('makers', 'Makers', state.members.size),
        figure('parts', 'Parts', parts.length),
        figure('given_out', 'Given out', begun),
      ],
      lines: gather(
        state.offeredTo?.maker === context.maker.id &&
          `You are asked to lead ${state.plan.name}: /along handover says yes.`,
        parts.map(
          ({ number, title, from, done, stuck, not_begun }) =>
            `${number}. ${title} (${when(from)}): ${done} done, ${stuck} stuck, ${not_begun} not begun`,
        ),
        placed.length > 0 &&
          `By name, as they wish it: ${placed
            .slice(0, NAMED)
            .map(({ name: called, part }) => `${called} at part ${part ?? 0}`)
            .join(', ')}${placed.length > NAMED ? ` and ${placed.slice(NAMED).length} more` : ''}.`,
        unsure.map(
          (part) =>
            `Whether part ${numberOf(state, part)} was posted is not known: something broke off just then, and it is not sent twice. Look in the channel; /along part part:${numberOf(state, part)} post:anew posts it.`,
        ),
      ),
      data: { parts, named: placed },
      actions: [
        action('Mine', 'along mine', { name: state.plan.name }, { forAnyone: true }),
        action('Where are we stuck?', 'along troubles', { name: state.plan.name }),
      ],
    };
  },
});
