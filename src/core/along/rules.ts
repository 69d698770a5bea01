/**
 * What may happen next to a make-along. Each rule looks at the state and either gives the events that follow or throws a Problem that
 * says what would do instead.
 */
import { defined } from '../base/defined.ts';
import { isStranger } from '../base/history.ts';
import { sameName } from '../base/nearest-name.ts';
import { Problem } from '../base/problem.ts';
import type { InList } from '../base/lists.ts';
import { count, when } from '../base/reader.ts';
import { mayOrganise, type Asker } from '../group/rules.ts';
import type { AlongEvent, Happening, Part, Way, Work } from './events.ts';
import { MOST_PARTS, mustBeNear, mustNotCrowd } from './propose.ts';
import { dayAfter, numbered, type AlongState } from './state.ts';
import { momentOf } from './zones.ts';

export type { Asker } from '../group/rules.ts';

/** The teacher, and a manager of the server; where she has gone and there is no server, whoever takes part. */
export const mayTeach = (
  { teacher, members }: Pick<AlongState, 'teacher' | 'members'>,
  asker: Asker,
): boolean => mayOrganise({ organiser: teacher, members }, asker);

/** Refuses whoever does not lead this make-along. Throws Problem: teachers-only, teacher-gone. */
export function mustTeach(state: AlongState, asker: Asker): void {
  if (mayTeach(state, asker)) return;
  const gone = isStranger(state.teacher);
  throw new Problem(
    gone ? 'teacher-gone' : 'teachers-only',
    'Only the teacher of this make-along and the server’s managers can do that.',
    {
      hint: !gone
        ? `Ask ${state.teacherName}, who leads it.`
        : asker.managed
          ? 'Its teacher has gone; a manager of the server can hand it to somebody who takes part.'
          : 'Its teacher has gone; whoever takes part can take it over.',
      facts: { teacher: state.teacherName, server: asker.managed ? 1 : 0 },
    },
  );
}

function mustBeOpen(state: AlongState): void {
  if (state.open) return;
  throw new Problem('along-closed', 'This make-along is closed.', { hint: 'The teacher can open it again.' });
}

/** Refuses whoever takes no part. Throws Problem: not-making-along. */
export function mustTakePart(state: Pick<AlongState, 'members'>, maker: string): void {
  if (state.members.has(maker)) return;
  throw new Problem('not-making-along', 'You do not take part in this make-along yet.', {
    hint: 'Join first; your gauge can come later.',
  });
}

/** A maker takes part, or says anew how she makes hers. Throws Problem: along-closed. */
export function join(state: AlongState, asker: Asker, way: Way): Happening[] {
  mustBeOpen(state);
  return [{ did: 'joined', name: asker.name, ...way }];
}

/** A maker leaves, and her part with her. Throws Problem: not-making-along, teacher-stays. */
export function leave(state: AlongState, asker: Asker): Happening[] {
  if (asker.id === state.teacher && state.members.size > (state.members.has(asker.id) ? 1 : 0))
    throw new Problem('teacher-stays', 'You lead this make-along, and others take part in it.', {
      hint: 'Hand it over to one of them first, or close it.',
      facts: { makers: state.members.size },
    });
  mustTakePart(state, asker.id);
  return [{ did: 'left' }];
}

/** The part of that number. Throws Problem: no-such-part. */
export function partNumbered(state: Pick<AlongState, 'parts'>, number: number): Part {
  const part = state.parts[number - 1];
  if (part) return part;
  throw new Problem('no-such-part', `There is no part ${number}.`, {
    option: 'part',
    hint:
      state.parts.length === 0 ? 'No part is left; add one.' : `Give a part from 1 to ${state.parts.length}.`,
    facts: { part: number, parts: state.parts.length },
  });
}

/** The moment at which a part is given out. */
export const momentOfPart = (
  { hour, zone }: Pick<AlongState, 'hour' | 'zone'>,
  { from }: Pick<Part, 'from'>,
): Date => momentOf(from, hour, zone);

/** The parts whose time has come, in order. */
export const partsBegun = (state: AlongState, now: Date): Part[] =>
  state.parts.filter((part) => momentOfPart(state, part) <= now);

/** The part that a maker has before her: the first that has begun and that she is not done with; else the next to come; else the last. */
export const findPartOf = (state: AlongState, maker: string, now: Date): Part | undefined =>
  findPartAfter(state, maker, partsBegun(state, now));

/** The same, of the parts that have begun: where many makers are looked up, those are found once. */
export function findPartAfter(state: AlongState, maker: string, begun: readonly Part[]): Part | undefined {
  const isDone = ({ id }: Part) => state.done.get(id)?.has(maker) === true;
  return (
    begun.find((part) => !isDone(part)) ?? state.parts.find((part) => !isDone(part)) ?? state.parts.at(-1)
  );
}

/** The part that comes after for her: the one she has before her now; undefined where she is done with all. */
export function nextPartOf(
  state: AlongState,
  maker: string,
  now: Date,
): { readonly part: Part; readonly begun: boolean } | undefined {
  const part = findPartOf(state, maker, now);
  if (part === undefined || state.done.get(part.id)?.has(maker) === true) return undefined;
  return { part, begun: momentOfPart(state, part) <= now };
}

/** The part as it is now, that was looked at before. Throws Problem: part-gone. */
export function partStill(state: Pick<AlongState, 'parts'>, { id, title }: Pick<Part, 'id' | 'title'>): Part {
  const part = state.parts.find((one) => one.id === id);
  if (part) return part;
  throw new Problem('part-gone', `${title} was just removed.`, {
    option: 'part',
    hint: 'Look at the parts as they are now.',
  });
}

/** The part of that number, or of that id. Throws Problem: no-such-part, part-removed. */
export function partNamed(state: Pick<AlongState, 'parts'>, named: InList): Part {
  if ('number' in named) return partNumbered(state, named.number);
  const part = state.parts.find(({ id }) => id === named.id);
  if (part) return part;
  throw new Problem('part-removed', 'That part is not in the make-along any more.', {
    option: 'part',
    hint: 'Look at the parts as they are now.',
  });
}

/** The part that is named, or the one she has before her. Throws Problem: no-such-part, part-removed, no-parts. */
export function partMeant(
  state: AlongState,
  asked: { named?: InList | undefined; maker: string; now: Date },
): Part {
  if (asked.named !== undefined) return partNamed(state, asked.named);
  const found = findPartOf(state, asked.maker, asked.now);
  if (found) return found;
  throw new Problem('no-parts', 'This make-along has no parts.', {
    option: 'part',
    hint: 'The teacher can add one.',
  });
}

/** She is done with a part; nothing where she was. Throws Problem: not-making-along, part-gone. */
export function finish(state: AlongState, asker: Asker, meant: Part): Happening[] {
  mustTakePart(state, asker.id);
  const part = partStill(state, meant);
  return state.done.get(part.id)?.has(asker.id) === true ? [] : [{ did: 'done', part: part.id }];
}

/** She is stuck at a part. Throws Problem: not-making-along, part-gone. */
export function stick(
  state: AlongState,
  asker: Asker,
  part: Part,
  said: {
    row?: number | undefined;
    slip?: string | undefined;
    counts?: readonly number[] | undefined;
    words?: string | undefined;
    help: boolean;
  },
): Happening[] {
  mustTakePart(state, asker.id);
  return [defined({ did: 'stuck', part: partStill(state, part).id, ...said })];
}

/** Throws Problem: parts-out-of-order, where the parts' days would not follow one another any more. */
function mustFollow(parts: readonly Part[], part: Part, from: string, without: boolean): void {
  const place = parts.findIndex(({ id }) => id === part.id);
  const before = parts[place - 1];
  const after = without ? undefined : parts[place + 1];
  const early = before !== undefined && from < before.from;
  const late = after !== undefined && from > after.from;
  if (!early && !late) return;
  const least = before === undefined ? '' : `not before ${when(before.from)}`;
  const most = after === undefined ? '' : `not after ${when(after.from)}`;
  throw new Problem(
    'parts-out-of-order',
    early
      ? `Part ${place} is given out on ${when(before.from)}, and part ${place + 1} would come before it.`
      : `Part ${place + 2} is given out on ${when(after?.from ?? from)}, and part ${place + 1} would come after it.`,
    {
      option: 'from',
      hint: `Give a day ${[least, most].filter((one) => one !== '').join(' and ')}${late ? ', or move those after it as well with rest:yes' : ''}.`,
      facts: defined({ from, before: before?.from, after: after?.from }),
    },
  );
}

const todayAt = (now: Date): string => now.toISOString().slice(0, 10);

/** Throws Problem: day-too-far; day-passed, where a part not given out yet would be given out on a day that is over. */
function mustCome(from: string, { now, hour, zone }: { now: Date; hour: number; zone: string }): void {
  // Until the day is over everywhere it can still be meant.
  const over = momentOf(from, 23, zone).getTime() + 3_600_000 <= now.getTime();
  if (!over) {
    mustBeNear(from, todayAt(now), 'from');
    return;
  }
  throw new Problem('day-passed', `${when(from)} has passed.`, {
    option: 'from',
    hint: 'Give a day to come.',
    facts: { from, hour },
  });
}

const DAY_MS = 86_400_000;
const daysBetween = (from: string, to: string) => Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

export interface PartChange {
  readonly title?: string | undefined;
  readonly asks?: string | undefined;
  readonly from?: string | undefined;
  /** Whether the parts after it move by as many days. */
  readonly rest?: boolean | undefined;
  /** Whether it is taken back at the same time. */
  readonly takenBack?: boolean | undefined;
}

/**
 * Changes what a part is called, what it asks, or its day; nothing where nothing differs.
 *
 * Throws Problem: teachers-only, teacher-gone, day-passed, day-too-far, parts-out-of-order, too-many-parts-a-day, given-out-already.
 */
export function changePart(
  state: AlongState,
  asker: Asker,
  part: Part,
  change: PartChange,
  now: Date,
): Happening[] {
  mustTeach(state, asker);
  const { title, asks, from, rest = false, takenBack = false } = change;
  const moved = from !== undefined && from !== part.from;
  if (moved) {
    if (!takenBack) mustNotBeOut(state, part);
    mustCome(from, { now, ...state });
    mustFollow(state.parts, part, from, rest);
  }
  const after = moved && rest ? daysBetween(part.from, from) : 0;
  if (moved) mustHold(state.parts, part, { from, after }, now);
  const differs = { title: title === part.title ? undefined : title, asks, from: moved ? from : undefined };
  if (Object.values(differs).every((one) => one === undefined)) return [];
  return [
    defined({ did: 'part-changed', part: part.id, ...differs, after: after === 0 ? undefined : after }),
  ];
}

/** Throws Problem: day-too-far, too-many-parts-a-day, where a part moved to a day, and those after it by so many, would be so. */
function mustHold(
  parts: readonly Part[],
  part: Part,
  { from, after }: { readonly from: string; readonly after: number },
  now: Date,
): void {
  const place = parts.findIndex(({ id }) => id === part.id);
  const days = parts.map((one, index) =>
    index === place ? from : index > place ? dayAfter(one.from, after) : one.from,
  );
  mustBeNear(days.at(-1) ?? from, todayAt(now), 'from');
  mustNotCrowd(
    days.map((day) => ({ from: day })),
    days.filter((day, index) => day !== parts[index]?.from),
    'from',
  );
}

/** Throws Problem: given-out-already. */
function mustNotBeOut(state: AlongState, part: Part): void {
  const posting = state.postings.get(part.id);
  if (posting?.is !== 'posted' && posting?.is !== 'claimed') return;
  const { number = 0 } = numbered(state).find((one) => one.part.id === part.id) ?? {};
  throw new Problem('given-out-already', `Part ${number} has been given out already.`, {
    option: 'from',
    hint: 'Take it back first, then give it another day; those after it can be moved without it.',
    facts: { part: number },
  });
}

/** Adds a part. Throws Problem: teachers-only, teacher-gone, too-many-parts, too-many-parts-a-day, day-passed, day-too-far. */
export function addPart(
  state: AlongState,
  asker: Asker,
  { title, asks, from, work }: { title: string; asks?: string | undefined; from: string; work: Work },
  now: Date,
): Happening[] {
  mustTeach(state, asker);
  mustCome(from, { now, ...state });
  if (state.parts.length >= MOST_PARTS)
    throw new Problem('too-many-parts', `There are ${MOST_PARTS} parts, and no more can be kept.`, {
      hint: 'Remove one first.',
      facts: { most: MOST_PARTS },
    });
  mustNotCrowd([...state.parts, { from }], [from], 'from');
  return [{ did: 'part-added', part: defined({ id: state.nextPart, title, from, work, asks }) }];
}

/** Takes a part out of the list; who was done with it or stuck is not counted any more. Throws Problem: teachers-only, teacher-gone. */
export function removePart(state: AlongState, asker: Asker, part: Part): Happening[] {
  mustTeach(state, asker);
  const posting = state.postings.get(part.id);
  return [
    // One that is being sent just now goes as soon as it is out.
    ...(posting === undefined || posting.is === 'taken-back'
      ? []
      : [{ did: 'taken-back' as const, part: part.id }]),
    { did: 'part-removed', part: part.id },
  ];
}

/** Takes a part back that was given out, or may have been. Throws Problem: teachers-only, teacher-gone, not-given-out. */
export function takeBackPart(state: AlongState, asker: Asker, part: Part): Happening[] {
  mustTeach(state, asker);
  const posting = state.postings.get(part.id);
  if (posting === undefined)
    throw new Problem('not-given-out', 'That part has not been given out yet.', {
      option: 'part',
      hint: 'Move it to another day, or remove it.',
    });
  return posting.is === 'taken-back' ? [] : [{ did: 'taken-back', part: part.id }];
}

/** Has a part given out anew, at once where its day has come. Throws Problem: teachers-only, teacher-gone. */
export function postAnew(state: AlongState, asker: Asker, part: Part): Happening[] {
  mustTeach(state, asker);
  const posting = state.postings.get(part.id);
  return posting === undefined || posting.is === 'anew' ? [] : [{ did: 'post-anew', part: part.id }];
}

/** The hour and the zone at which parts are given out. Throws Problem: teachers-only, teacher-gone. */
export function setHour(state: AlongState, asker: Asker, hour: number, zone: string): Happening[] {
  mustTeach(state, asker);
  return hour === state.hour && zone === state.zone ? [] : [{ did: 'hour-set', hour, zone }];
}

/** The parts that are to be given out now: their time has come, and nothing says that they are out. */
export const partsToPost = (state: AlongState, now: Date): Part[] =>
  state.open
    ? partsBegun(state, now).filter(({ id }) => {
        const posting = state.postings.get(id);
        return posting === undefined || posting.is === 'anew';
      })
    : [];

/** Claims a part for whoever is about to post it; nothing where another was quicker. */
export const claimPart = (state: AlongState, part: number, now: Date): Happening[] =>
  partsToPost(state, now).some(({ id }) => id === part) ? [{ did: 'claimed', part }] : [];

/** Gives out all that is due at once, where nothing can break off between: in the terminal. */
export const giveOut = (state: AlongState, now: Date): Happening[] =>
  partsToPost(state, now).map(({ id }) => ({ did: 'posted', part: id }));

/** The moment of the next part that is still to be given out; undefined where there is none. */
export function nextPosting(state: AlongState, now: Date): Date | undefined {
  if (!state.open) return undefined;
  const due = state.parts.filter(({ id }) => {
    const posting = state.postings.get(id);
    return posting === undefined || posting.is === 'anew';
  });
  const moments = due.map((part) => momentOfPart(state, part).getTime());
  return moments.length === 0 ? undefined : new Date(Math.max(now.getTime(), Math.min(...moments)));
}

/** Parts that were about to be posted when something broke off: they may be out or not. */
export const partsUnsure = (state: AlongState): Part[] =>
  state.parts.filter(({ id }) => state.postings.get(id)?.is === 'claimed');

/** Closes it: nothing more is given out, nobody joins. Throws Problem: along-closed, teachers-only, teacher-gone. */
export function close(state: AlongState, asker: Asker): Happening[] {
  mustTeach(state, asker);
  mustBeOpen(state);
  return [{ did: 'closed' }];
}

/** Opens it again. Throws Problem: along-open, teachers-only, teacher-gone. */
export function reopen(state: AlongState, asker: Asker): Happening[] {
  mustTeach(state, asker);
  if (state.open)
    throw new Problem('along-open', 'This make-along is open.', { hint: 'There is nothing to open again.' });
  return [{ did: 'reopened' }];
}

/**
 * Asks somebody to lead it; nothing changes before she says yes. Whoever may lead it and names herself leads it at once.
 *
 * Throws Problem: teacher-already, teachers-only, teacher-gone.
 */
export function offerOver(state: AlongState, asker: Asker, to: { maker: string; name: string }): Happening[] {
  mustTeach(state, asker);
  if (to.maker === state.teacher)
    throw new Problem('teacher-already', `${to.name} leads this make-along already.`, {
      option: 'maker',
      hint: 'Name somebody else who takes part.',
    });
  return [{ did: to.maker === asker.id ? 'handed-over' : 'offered-over', to: to.maker, name: to.name }];
}

/** Whoever was asked to lead it says yes. Throws Problem: not-offered. */
export function takeOver(state: AlongState, asker: Asker): Happening[] {
  if (state.offeredTo?.maker !== asker.id)
    throw new Problem('not-offered', 'You are not asked to lead this make-along.', {
      option: 'maker',
      hint: state.offeredTo
        ? `${state.offeredTo.name} is asked, and only she can answer.`
        : 'Name the one who is to lead it: the teacher asks her.',
    });
  return [{ did: 'handed-over', to: asker.id, name: asker.name }];
}

const OWN = new Set<AlongEvent['did']>(['done', 'stuck']);
const TEACHERS = new Set<AlongEvent['did']>([
  'part-added',
  'part-changed',
  'part-removed',
  'hour-set',
  'closed',
  'reopened',
  'offered-over',
]);

/**
 * Takes back what she did last herself: that she is done with a part, or stuck at one; of whoever leads it, a change of the parts as well.
 * All that came of one press goes together.
 *
 * Throws Problem: nothing-to-take-back.
 */
export function undo(state: AlongState, asker: Asker): Happening[] {
  const teaches = mayTeach(state, asker);
  const last = state.standing.findLast(
    ({ happened: { by, did } }) => by === asker.id && (OWN.has(did) || (teaches && TEACHERS.has(did))),
  );
  if (!last)
    throw new Problem('nothing-to-take-back', 'You did nothing lately that could be taken back.', {
      hint: 'That you are done with a part, or stuck at one, can be taken back; and a change of the parts by the teacher.',
    });
  return state.standing
    .filter(({ event, happened }) => event > 0 && happened.once === last.happened.once)
    .map(({ event }) => ({ did: 'undone', event }));
}

/** Her colours for the teacher's, from what she typed: in their order, or each with the one it is for. */
export function readOwnColours(
  typed: string,
  theirs: readonly string[],
): { readonly of: string; readonly hers: string }[] {
  const split = (by: RegExp) =>
    typed
      .split(by)
      .map((part) => part.trim())
      .filter((part) => part !== '');
  // “black and white” may be one colour: taken apart only where there are as many then as the pattern has.
  const apart = split(/[,;]\s*and\s|[,;]|\s(?:and|&)\s/i);
  const parts = apart.length === theirs.length ? apart : split(/[,;]/);
  const listed = `The pattern’s colours are ${theirs.join(', ')}.`;
  const pairs = parts.map((part) => /^(.+?)\s*(?:=|:|→|->)\s*(.+)$/.exec(part));
  if (pairs.every((pair) => pair === null)) {
    if (parts.length !== theirs.length)
      throw new Problem(
        'colours-differ',
        `The pattern has ${count(theirs.length, 'colour')}, and ${count(parts.length, 'colour')} ${parts.length === 1 ? 'is' : 'are'} given.`,
        {
          option: 'colours',
          hint: `${listed} Give one of yours for each, in that order, or say which is for which: ${theirs[0] ?? 'moss'}=teal.`,
          facts: { needed: theirs.length, given: parts.length },
        },
      );
    return parts.map((hers, index) => ({ of: theirs[index] ?? hers, hers }));
  }
  return pairs.map((pair, index) => {
    const [, of = '', hers = ''] = pair ?? [];
    const meant = theirs.find((one) => sameName(one, of.trim()));
    if (meant === undefined)
      throw new Problem(
        'no-such-colour',
        pair === null
          ? `Which colour ${parts[index] ?? ''} is for is not said.`
          : `The pattern has no colour ${of.trim()}.`,
        { option: 'colours', hint: listed },
      );
    return { of: meant, hers: hers.trim() };
  });
}
