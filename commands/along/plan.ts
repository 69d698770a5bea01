/** The parts: all of them with their days, or one whole, as it is given out. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { when } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import type { Part } from '../../src/core/along/events.ts';
import { NO_WAY, reckonOwn } from '../../src/core/along/own.ts';
import { reckonPart } from '../../src/core/along/numbers.ts';
import { partNamed, partsBegun } from '../../src/core/along/rules.ts';
import type { AlongState } from '../../src/core/along/state.ts';
import { action, form } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { asksWords, givenOut, numberOf, partFigures, partName } from './words.ts';
import { byId, JOIN_ASKS, nameOption, partOption, STUCK_ASKS, whichAlong } from './which.ts';

export const plan = question({
  name: 'plan',
  says: 'The parts of a make-along with their days; one of them whole, with buttons for everyone',
  options: {
    part: partOption('Which part, by its number; all of them if not given').optional(),
    name: nameOption,
  },
  example: '',
  before: OPENED,
  refused: { line: 'part:40', option: 'part' },
  asked: {
    ways: [
      '?part',
      'list part',
      'show part',
      'when part',
      'part along',
      'schedule along',
      'schedule part',
      'show all part',
      'which part <number>',
    ],
    also: 'along part which show when all each measure schedule how-many next list getting',
    not: 'mine my-part need done stuck behind group others who i-am-on where-am-i calendar deadline this-week',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['what are the parts', 'when is part 4'],
  },
  async answer({ part: named, name }, context): Promise<Answer> {
    const { state } = await whichAlong(context, name);
    return named === undefined ? allParts(state, context.now) : onePart(state, partNamed(state, named));
  },
});

function allParts(state: AlongState, now: Date): Answer {
  const own = reckonOwn(state.plan, NO_WAY);
  const parts = state.parts.map((part) => ({
    number: numberOf(state, part),
    title: part.title,
    from: part.from,
    asks: asksWords(own, part, reckonPart(own, state.parts, part, new Working())),
  }));
  const begun = partsBegun(state, now);
  const next = state.parts.find(({ id }) => !begun.some((part) => part.id === id));
  const coming = next && `; the next, part ${numberOf(state, next)}, on ${when(next.from)}`;
  return {
    headline: `${state.plan.name} has ${parts.length} parts, each given out at ${state.hour}:00 ${state.zone}${state.open ? (coming ?? '; all of them are out') : '; it is closed'}.`,
    figures: [figure('parts', 'Parts', parts.length)],
    lines: parts.map(({ number, title, from, asks }) => `${number}. ${when(from)}, ${title}: ${asks}`),
    data: { parts },
    actions: [form('Take part', 'along join', { name: state.plan.name }, JOIN_ASKS, { forAnyone: true })],
  };
}

/** One part, as it stands in the channel: everybody finds her own numbers by a button. */
function onePart(state: AlongState, part: Part): Answer {
  const own = reckonOwn(state.plan, NO_WAY);
  const working = new Working();
  const numbers = reckonPart(own, state.parts, part, working);
  const number = numberOf(state, part);
  const { name } = state.plan;
  const everybodys = { forAnyone: true, ...byId(part) };
  const asks = asksWords(own, part, numbers);
  return {
    headline: `${partName(state, part)}: ${asks}`,
    lines: gather(
      `Of ${name}, ${givenOut(state, part)}. These are the pattern’s numbers; “Mine” shows you yours.`,
    ),
    figures: partFigures(own, numbers),
    working: working.steps,
    data: { parts: [{ number, title: part.title, from: part.from, asks }] },
    actions: [
      action('Mine', 'along mine', { part: number, name }, everybodys),
      action('Done', 'along done', { part: number, name }, everybodys),
      form('Stuck', 'along stuck', { part: number, name }, STUCK_ASKS, everybodys),
    ],
  };
}
