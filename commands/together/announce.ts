/** What the blanket has in its server beside the board: a thread of its own, an event for its closing day. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { serverOf, type Context, type Place } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { when } from '../../src/core/base/reader.ts';
import { mustOrganise } from '../../src/core/group/rules.ts';
import type { GroupState } from '../../src/core/group/state.ts';
import type { GroupDoc } from '../../src/projects/groups.ts';
import { action } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { askerOf } from '../shared/which-kept.ts';
import { nameOption, whichBlanket } from './which.ts';
import { mayHaveThread } from './words.ts';

export const announce = question({
  name: 'announce',
  says: 'Organiser: give the blanket a thread with its board pinned, or an event for its closing day',
  options: {
    thread: opt.yesno('yes makes a thread of this channel for it; no takes the board back').optional(),
    event: opt.yesno('yes puts its closing day among the server’s events; no takes it out').optional(),
    name: nameOption,
  },
  example: '',
  before: OPENED,
  refused: { line: 'thread:perhaps', option: 'thread' },
  changes: true,
  async answer({ thread, event, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    if ((thread ?? event) !== undefined) mustOrganise(state, askerOf(context));
    // All is looked at before anything is done.
    const from = thread === true && doc.thread === undefined ? channelFor(context) : undefined;
    if (event === true) mustBePossible(state, context);
    const { groups } = context.projects;
    let after = doc;
    if (from !== undefined) after = await groups.wantThread(doc.id, from);
    if (thread === false && doc.thread !== undefined) after = await groups.wantThread(doc.id, undefined);
    if (event !== undefined && event !== (doc.event?.wanted ?? false))
      after = await groups.wantEvent(doc.id, event);
    return {
      headline: `${state.plan.name} has ${hasWords(after, state)}.`,
      data: { thread: after.thread !== undefined, event: after.event?.wanted ?? false },
      lines: gather(
        (from !== undefined || (event === true && doc.event?.wanted !== true)) &&
          'It is made now; the board follows it.',
      ),
      actions: gather(
        after.thread === undefined &&
          mayHaveThread(context.place) &&
          action('Give it a thread', 'host announce', { thread: true, name: state.plan.name }),
        after.event?.wanted !== true &&
          state.closes !== undefined &&
          serverOf(context.place) !== undefined &&
          action('Make an event of its last day', 'host announce', { event: true, name: state.plan.name }),
      ),
      ...(after === doc ? {} : { board: doc.id }),
    };
  },
});

function hasWords(doc: GroupDoc, { closes }: GroupState): string {
  const thread =
    doc.thread === undefined ? 'no thread of its own' : 'a thread of its own, its board pinned in it';
  const event =
    doc.event?.wanted === true && closes !== undefined ? `an event on ${when(closes)}` : 'no event';
  return `${thread}, and ${event}`;
}

/** The channel whose thread it gets. Throws Problem: no-channel-here, thread-already, may-not-write-here, bot-lacks-permission. */
function channelFor({ place }: Context): string {
  const { channel, within, mute } = place;
  if (channel === undefined || serverOf(place) === undefined)
    throw new Problem('no-channel-here', 'There is no channel here to make a thread of.', {
      option: 'thread',
      hint: 'Ask in the channel of the server where it is to be.',
    });
  if (within !== undefined)
    throw new Problem('thread-already', 'This is a thread already, and a thread has none of its own.', {
      option: 'thread',
      hint: 'Bring the board here with /together board here:yes, or ask in the channel itself.',
    });
  if (mute === 'asker')
    throw new Problem('may-not-write-here', 'The thread would be of this channel, where you may not write.', {
      option: 'thread',
      hint: 'Ask in a channel where you may.',
    });
  mustBeAllowed('thread', [...(place.lacks ?? []), ...(place.lacksFor?.thread ?? [])]);
  return channel;
}

/** Throws Problem: no-server-here, no-closing-day, blanket-closed, bot-lacks-permission. */
function mustBePossible({ open, closes }: GroupState, { place }: { readonly place: Place }): void {
  if (serverOf(place) === undefined)
    throw new Problem('no-server-here', 'There is no server here that could have an event.', {
      option: 'event',
      hint: 'Ask in the server.',
    });
  if (!open)
    throw new Problem('blanket-closed', 'This blanket is closed.', {
      option: 'event',
      hint: 'The organiser can open it again.',
    });
  if (closes === undefined)
    throw new Problem('no-closing-day', 'It has no closing day yet.', {
      option: 'event',
      hint: 'Set one first: /host reopen closes: and a day to come.',
    });
  mustBeAllowed('event', place.lacksFor?.event ?? []);
}

function mustBeAllowed(option: 'thread' | 'event', lacks: readonly string[]): void {
  if (lacks.length === 0) return;
  throw new Problem('bot-lacks-permission', `For that, this bot lacks ${lacks.join(', ')} in this channel.`, {
    option,
    hint: `Ask again once it has ${lacks.length === 1 ? 'it' : 'them'}; a manager of the server can allow it.`,
  });
}
