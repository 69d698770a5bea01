/** Running the blanket: closing, opening again, taking back, and the list of those there are. */
import { figure, type Answer, gather } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import * as rules from '../../src/core/group/rules.ts';
import { happeningWords } from './words.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, num, when } from '../../src/core/base/reader.ts';
import { pieceOf, type GroupState } from '../../src/core/group/state.ts';
import type { GroupDoc } from '../../src/projects/groups.ts';
import { action } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { askerOf, doing } from '../shared/which-kept.ts';
import { nameOption, whichBlanket } from './which.ts';

/** Things that were taken back, told one by one at most. */
const TOLD = 5;

export const close = question({
  name: 'close',
  says: 'Organiser: close the blanket to new pledges; what is pledged can still be handed in',
  options: { name: nameOption },
  example: '',
  before: OPENED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  changes: true,
  asked: {
    ways: ['close group', 'close blanket', 'close claim'],
    also: 'group blanket claim new',
    not: 'reopen deadline when open-for how-far pace open undo',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['close the group blanket to new pledges'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    await context.projects.groups.happen(doc.id, doing(context), (now) => rules.close(now, askerOf(context)));
    return {
      headline: `${state.plan.name} is closed to new pledges.`,
      actions: [action('Open it again', 'host reopen', { name: state.plan.name })],
      board: doc.id,
    };
  },
});

export const reopen = question({
  name: 'reopen',
  says: 'Organiser: open a closed blanket again, or move its closing day',
  options: { closes: opt.day('The new closing day').optional(), name: nameOption },
  example: 'closes:2031-06-30',
  before: [...OPENED, '/host close'],
  refused: { line: 'closes:2026-02-31', option: 'closes' },
  changes: true,
  asked: {
    ways: ['reopen', 'reopen group', 'reopen deadline'],
    also: 'group blanket deadline open close next',
    not: 'row ripped',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['open the group blanket again until 30 June 2031'],
  },
  async answer({ closes, name }, context): Promise<Answer> {
    if (closes !== undefined && closes < context.now.toISOString().slice(0, 10)) {
      throw new Problem('day-passed', `${when(closes)} has passed.`, {
        option: 'closes',
        hint: 'Give a day to come.',
      });
    }
    const { doc, state } = await whichBlanket(context, name);
    const { state: after } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.reopen(now, askerOf(context), closes),
    );
    return {
      headline: `${state.plan.name} is open${after.closes === undefined ? '' : `, wanted by ${when(after.closes)}`}.`,
      board: doc.id,
    };
  },
});

/** Photos none of whose motifs is handed in any more. */
function goneWith({ id, photos = [] }: GroupDoc, state: GroupState): Pick<Answer, 'photosGone'> {
  const isBack = (number: number) => pieceOf(state, number)?.state === 'taken-back';
  const gone = photos.filter(({ pieces }) => pieces.every(isBack));
  return gone.length === 0
    ? {}
    : { photosGone: gone.map(({ channel, message }) => ({ group: id, channel, message })) };
}

export const undo = question({
  name: 'undo',
  says: 'Takes back your last pledge or hand-in; for the organiser, the latest thing that happened',
  options: { name: nameOption },
  example: '',
  before: [...OPENED, '/together pledge kind:furrow'],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  changes: true,
  asked: {
    ways: ['undo claim', 'undo group', 'undo happened', 'undo group happened'],
    also: 'group blanket happened claim',
    not: 'row count mine',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['undo the last thing in the group blanket'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc } = await whichBlanket(context, name);
    const {
      happened,
      state: after,
      doc: saved,
    } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.undo(now, askerOf(context)),
    );
    const back = happened.flatMap((one) => {
      const event = one.did === 'undone' ? saved.events[one.event] : undefined;
      return event ? [happeningWords(event, after)] : [];
    });
    const rest = back.slice(TOLD).length;
    return {
      headline:
        back.length === 0
          ? 'That was taken back already.'
          : `Taken back: ${gather(back.slice(0, TOLD), rest > 0 && `and ${num(rest)} more`).join('; ')}.`,
      lines: after.standing.length > 1 ? ['/together history shows what stands.'] : [],
      board: doc.id,
      ...goneWith(saved, after),
    };
  },
});

export const history = question({
  name: 'history',
  says: 'What happened to the blanket, the latest first',
  options: {
    last: opt.whole({ says: 'How many', assumed: '' }, { max: 100, example: '20' }).default(20),
    name: nameOption,
  },
  example: '',
  before: [...OPENED, '/together pledge kind:furrow'],
  refused: { line: 'last:0', option: 'last' },
  asked: {
    ways: ['happened', 'happened group', 'show happened', 'which happened'],
    also: 'group blanket show place',
    not: 'undo row motif baby',
    saved: 'group',
    marks: {
      last: { takes: 'count', lead: 'last latest', near: 'happened show' },
      name: { takes: 'saved-group' },
    },
    phrases: ['what happened in the group blanket lately'],
  },
  async answer({ last, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const standing = new Set(state.standing.map(({ event }) => event));
    // Whom the organiser has asked is between the two of them.
    const told = doc.events
      .map((happened, event) => ({ happened, back: !standing.has(event) && happened.did !== 'undone' }))
      .filter(({ happened }) => happened.did !== 'reminded' || rules.mayOrganise(state, askerOf(context)));
    return {
      headline: `${count(told.length, 'thing has', 'things have')} happened to ${state.plan.name} since it was opened.`,
      figures: [figure('events', 'Events', told.length)],
      lines: told
        .slice(-last)
        .reverse()
        .map(
          ({ happened, back }) =>
            `${when(happened.at)}: ${happeningWords(happened, state, doc.events)}${back ? ' (taken back)' : ''}`,
        ),
      data: { standing: state.standing.length },
      private: told.slice(-last).some(({ happened }) => happened.did === 'reminded'),
    };
  },
});

export const list = question({
  name: 'list',
  says: 'The group blankets of this server',
  options: {},
  example: '',
  before: OPENED,
  refused: { line: 'all:yes', option: 'all' },
  asked: {
    ways: ['list group', 'which group blanket', 'list group blanket', '?group blanket'],
    also: 'blanket group show which all',
    not: 'claim parcel pace happened motif yarn goes-where',
    phrases: ['which group blankets are there'],
  },
  async answer(_, context): Promise<Answer> {
    const all = await context.projects.groups.of(context.place.server);
    return {
      headline:
        all.length === 0
          ? 'No group blanket has been opened here yet.'
          : `There ${all.length === 1 ? 'is' : 'are'} ${count(all.length, 'group blanket')} here.`,
      lines: all.map(
        ({ state }) =>
          `${state.plan.name}: ${state.open ? 'open' : 'closed'}${state.closes === undefined ? '' : `, wanted by ${when(state.closes)}`}, ${count(state.members.size, 'maker')}`,
      ),
      data: { names: all.map(({ state }) => state.plan.name) },
      actions: all
        .slice(-5)
        .map(({ state }) =>
          action(state.plan.name.slice(0, 60), 'together board', { name: state.plan.name }),
        ),
    };
  },
});
