/** Leading and leaving: the list of those there are, leaving, closing, handing over, taking back. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { count, num, when } from '../../src/core/base/reader.ts';
import * as rules from '../../src/core/along/rules.ts';
import type { AlongEvent } from '../../src/core/along/events.ts';
import type { AlongState } from '../../src/core/along/state.ts';
import { action } from '../shared/actions.ts';
import { askerOf, doing, memberNamed } from '../shared/which-kept.ts';
import { JOINED, OPENED } from './example.ts';
import { numberOf, partName } from './words.ts';
import { nameOption, whichAlong } from './which.ts';

const NOWHERE = 'name:"No such class"';

export const list = question({
  name: 'list',
  says: 'The make-alongs of this server, with how far each is',
  options: {},
  example: '',
  before: OPENED,
  refused: { line: 'every:one', option: 'every' },
  asked: {
    ways: ['?along', 'list along'],
    also: 'along which all saved show',
    not: 'part',
    saved: 'along',
    phrases: ['which make-alongs are there'],
  },
  async answer(_, context): Promise<Answer> {
    const all = await context.projects.alongs.of(context.place.server);
    const told = all.map(({ state }) => ({
      name: state.plan.name,
      teacher: state.teacherName,
      makers: state.members.size,
      parts: state.parts.length,
      given_out: rules.partsBegun(state, context.now).length,
      open: state.open,
    }));
    return {
      headline:
        told.length === 0
          ? 'No make-along has been opened here yet.'
          : `${count(told.length, 'make-along')} here.`,
      figures: [figure('alongs', 'Make-alongs', told.length)],
      lines: gather(
        told.map(
          ({ name, teacher, makers, parts, given_out, open }) =>
            `${name}: ${count(makers, 'maker')}, ${num(given_out)} of ${num(parts)} parts given out, led by ${teacher}${open ? '' : '; closed'}`,
        ),
        told.length === 0 &&
          'A teacher opens one from a saved blanket: /along open starts: and the first day.',
      ),
      data: { alongs: told },
    };
  },
});

export const leave = question({
  name: 'leave',
  says: 'Leave a make-along; your part in it goes with you',
  options: { name: nameOption },
  example: '',
  before: JOINED,
  refused: { line: NOWHERE, option: 'name' },
  changes: true,
  asked: {
    ways: ['leave along'],
    also: 'along mine',
    not: 'still',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['I want to leave the make-along'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    await context.projects.alongs.happen(doc.id, doing(context), (now) => rules.leave(now, askerOf(context)));
    return {
      headline: `You have left ${state.plan.name}; nothing of yours is counted there any more.`,
      actions: [action('Take part again', 'along join', { name: state.plan.name })],
      private: true,
    };
  },
});

export const close = question({
  name: 'close',
  says: 'Teacher: close a make-along, so that no more parts are given out, or open it again',
  options: {
    do: opt
      .choice(
        { says: 'Close it, or open it again', assumed: '' },
        [{ value: 'close' }, { value: 'reopen', label: 'open it again' }],
        'close',
      )
      .default('close'),
    name: nameOption,
  },
  example: 'do:close',
  before: OPENED,
  refused: { line: `do:close ${NOWHERE}`, option: 'name' },
  changes: true,
  asked: {
    ways: ['close along', 'reopen along'],
    also: 'along mine',
    saved: 'along',
    marks: { do: { choices: { reopen: 'reopen' } }, name: { takes: 'saved-along' } },
    phrases: ['close the make-along'],
  },
  async answer({ do: what, name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    await context.projects.alongs.happen(doc.id, doing(context), (now) =>
      what === 'close' ? rules.close(now, askerOf(context)) : rules.reopen(now, askerOf(context)),
    );
    const { name: called } = state.plan;
    return {
      headline:
        what === 'close'
          ? `${called} is closed: no more parts are given out. What everybody has can still be looked at.`
          : `${called} is open again.`,
      actions: gather(
        what === 'close' && action('Open it again', 'along close', { do: 'reopen', name: called }),
      ),
      along: doc.id,
    };
  },
});

export const handover = question({
  name: 'handover',
  says: 'Teacher: ask somebody to lead it; whoever is asked says yes by naming nobody',
  options: {
    maker: opt
      .text('Whom: mention her with @; in the terminal, her name. Left out, you say yes yourself', {
        max: 100,
        example: 'rowan',
      })
      .optional(),
    name: nameOption,
  },
  example: 'maker:rowan',
  before: [...JOINED, 'rowan: /along join'],
  refused: { line: 'maker:nobodyhere', option: 'maker' },
  changes: true,
  async answer({ maker, name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    // Before anybody is looked up: who takes part is not told to whoever asks.
    if (maker !== undefined) rules.mustTeach(state, askerOf(context));
    const who = maker === undefined ? undefined : memberNamed(state, maker, context);
    const { state: after } = await context.projects.alongs.happen(doc.id, doing(context), (now) =>
      who === undefined ? rules.takeOver(now, askerOf(context)) : rules.offerOver(now, askerOf(context), who),
    );
    const { name: called } = state.plan;
    const leads = who === undefined || after.teacher === who.maker;
    return {
      headline: leads
        ? `${after.teacherName} leads ${called} now.`
        : `${who.name} is asked to lead ${called}; until she says yes with /along handover, ${after.teacherName} leads it.`,
      tells:
        who === undefined || leads
          ? []
          : [
              {
                maker: who.maker,
                words: `${context.maker.name} asks you to lead ${called}. Say yes with /along handover.`,
                channel: doc.channel,
                about: 'along' as const,
              },
            ],
      actions: gather(!leads && action('I will', 'along handover', { name: called }, { forAnyone: true })),
    };
  },
});

const TAKEN_BACK: Readonly<Partial<Record<AlongEvent['did'], string>>> = {
  done: 'that you are done with a part',
  stuck: 'that you are stuck',
  'part-added': 'the part that you added',
  'part-changed': 'the change of a part',
  'part-removed': 'that you removed a part',
  'hour-set': 'the hour of the parts',
  closed: 'that it is closed',
  reopened: 'that it is open again',
  'offered-over': 'that you asked somebody to lead it',
};

export const undo = question({
  name: 'undo',
  says: 'Takes back what you said last: done, stuck; of the teacher, a change of the parts as well',
  options: { name: nameOption },
  example: '',
  before: [...JOINED, '/along done part:1'],
  refused: { line: NOWHERE, option: 'name' },
  changes: true,
  asked: {
    ways: ['undo along', 'undo part'],
    also: 'along part mine done stuck',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['undo that in the make-along'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    const { happened, state: after } = await context.projects.alongs.happen(doc.id, doing(context), (now) =>
      rules.undo(now, askerOf(context)),
    );
    const back = after.parts.filter(
      ({ id }) => !state.parts.some((one) => one.id === id) && after.postings.get(id)?.is === 'taken-back',
    );
    const what = happened.flatMap((one) => (one.did === 'undone' ? [doc.events[one.event]] : []));
    const [first] = what;
    return {
      headline: `Taken back in ${state.plan.name}: ${(first && TAKEN_BACK[first.did]) ?? 'what you said last'}.`,
      lines: back.map(
        (part) =>
          `${partName(after, part)} is back in the list, but not in the channel: its message is gone. /along part part:${numberOf(after, part)} post:anew posts it again.`,
      ),
      data: { undone: happened.length },
      along: doc.id,
      private: true,
    };
  },
});

/** One event as a clause: only what concerns the parts and the leading, never what a maker said of her own work. */
function happeningWords(event: AlongEvent, { names }: AlongState): string | undefined {
  const name = (maker: string) => names.get(maker) ?? 'a manager of the server';
  switch (event.did) {
    case 'opened':
      return `${event.name} opened ${event.plan.name}`;
    case 'part-added':
      return `${name(event.by)} added ${event.part.title}, ${when(event.part.from)}`;
    case 'part-changed':
      return `${name(event.by)} changed ${event.title ?? 'a part'}${event.from === undefined ? '' : `, now on ${when(event.from)}`}`;
    case 'part-removed':
      return `${name(event.by)} removed a part`;
    case 'hour-set':
      return `${name(event.by)} set the hour to ${event.hour}:00 ${event.zone}`;
    case 'posted':
      return 'a part was given out';
    case 'taken-back':
      return `${name(event.by)} took a part back`;
    case 'post-anew':
      return `${name(event.by)} had a part posted anew`;
    case 'offered-over':
      return `${name(event.by)} asked ${event.name} to lead it`;
    case 'handed-over':
      return `${event.name} leads it`;
    case 'closed':
      return `${name(event.by)} closed it`;
    case 'reopened':
      return `${name(event.by)} opened it again`;
    case 'joined':
    case 'left':
    case 'done':
    case 'stuck':
    case 'claimed':
    case 'not-posted':
    case 'message-gone':
    case 'undone':
      return undefined;
  }
}

export const history = question({
  name: 'history',
  says: 'What happened to the parts and who leads it, the latest first',
  options: {
    last: opt
      .whole(
        { says: 'How many of the latest things', assumed: 'The latest ten, as no number was given.' },
        { max: 100, example: '10' },
      )
      .default(10),
    name: nameOption,
  },
  example: 'last:5',
  before: JOINED,
  refused: { line: 'last:0', option: 'last' },
  asked: {
    ways: ['happened along'],
    also: 'along which show',
    saved: 'along',
    marks: { last: { never: true }, name: { takes: 'saved-along' } },
    phrases: ['what happened in the make-along lately'],
  },
  async answer({ last, name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    const told = doc.events.flatMap((event) => {
      const words = happeningWords(event, state);
      return words === undefined ? [] : [{ at: event.at, words }];
    });
    const latest = told.toReversed().slice(0, last);
    return {
      headline: `${state.plan.name}: the latest ${count(latest.length, 'thing')}.`,
      figures: [figure('things', 'Things that happened', told.length)],
      lines: latest.map(({ at, words }) => `${when(at)}: ${words}`),
    };
  },
});
