/** Giving out what is due: in the terminal by asking; in a server a part is posted by itself. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { when } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { NO_WAY, reckonOwn } from '../../src/core/along/own.ts';
import { reckonPart } from '../../src/core/along/numbers.ts';
import type { Part } from '../../src/core/along/events.ts';
import type { AlongState } from '../../src/core/along/state.ts';
import { giveOut, nextPosting, partsToPost, partsUnsure } from '../../src/core/along/rules.ts';
import { action } from '../shared/actions.ts';
import { doing } from '../shared/which-kept.ts';
import { OPENED } from './example.ts';
import { asksWords, numberOf, partName } from './words.ts';
import { byId, nameOption, whichAlong } from './which.ts';

export const due = question({
  name: 'due',
  says: 'Gives out the parts whose time has come, each once; in a server it says what is posted when',
  options: { name: nameOption },
  example: '',
  before: OPENED,
  refused: { line: 'name:"No such class"', option: 'name' },
  changes: true,
  asked: {
    ways: ['deadline part', 'deadline along', 'give-out part', 'give-out along'],
    also: 'along part which all when',
    not: 'mine my-part',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['which part is due'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    const posts = doc.channel !== undefined;
    const out = posts
      ? undefined
      : await context.projects.alongs.happen(doc.id, doing(context), (now) => giveOut(now, context.now));
    const after = out?.state ?? state;
    const given = out
      ? after.parts.filter(({ id }) => out.happened.some((one) => one.did === 'posted' && one.part === id))
      : partsToPost(state, context.now);
    const next = nextPosting(after, context.now);
    const own = reckonOwn(after.plan, NO_WAY);
    const { name: called } = after.plan;
    return {
      headline: !after.open
        ? `${called} is closed, so no part of it is given out.`
        : given.length === 0
          ? `Nothing of ${called} is due: ${next === undefined ? 'no part is left that would be given out by itself' : `the next part comes on ${when(next.toISOString())}`}.`
          : `${givenNames(after, given)} ${given.length === 1 ? 'is' : 'are'} ${posts ? 'due, and about to be posted' : 'given out'}.`,
      figures: [figure('given_out', 'Given out now', given.length)],
      lines: gather(
        given.map(
          (part) =>
            `${numberOf(after, part)}. ${asksWords(own, part, reckonPart(own, after.parts, part, new Working()))}`,
        ),
        given.length > 0 && next !== undefined && `The next part comes on ${when(next.toISOString())}.`,
        !after.open && 'Whoever leads it can open it again: /along close do:reopen.',
        partsUnsure(after).map(
          (part) =>
            `Whether part ${numberOf(after, part)} was posted is not known: something broke off just then, and it is not sent twice. Look in the channel; /along part part:${numberOf(after, part)} post:anew posts it.`,
        ),
      ),
      data: {
        parts: given.map((part) => ({ number: numberOf(after, part), title: part.title, from: part.from })),
        next: next?.toISOString() ?? null,
      },
      actions: given.map((part) =>
        action(
          `Mine, part ${numberOf(after, part)}`,
          'along mine',
          { part: numberOf(after, part), name: called },
          { forAnyone: true, ...byId(part) },
        ),
      ),
      along: doc.id,
    };
  },
});

/** What is given out by its titles; more than two parts by their numbers, as each has its line below. */
const givenNames = (state: AlongState, given: readonly Part[]): string =>
  given.length > 2
    ? `Parts ${given.map((part) => numberOf(state, part)).join(', ')} of ${state.plan.name}`
    : given.map((part) => partName(state, part)).join('; ');
