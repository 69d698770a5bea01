/** The state of a make-along, replayed from its events. Pure: the same events give the same state. */
import { defined } from '../base/defined.ts';
import { BrokenHistory } from '../base/history.ts';
import type { AlongEvent, AlongPlan, Part, Way } from './events.ts';

export interface Member extends Way {
  readonly maker: string;
  readonly name: string;
  readonly since: string;
}

/** Where a maker got stuck; she may be done since. */
export interface Stuck {
  readonly maker: string;
  readonly part: number;
  readonly at: string;
  readonly row?: number;
  readonly slip?: string;
  readonly counts?: readonly number[];
  readonly words?: string;
  readonly help: boolean;
}

/** What became of a part on its day. `claimed`: it was about to be posted, and may have gone out. */
export interface Posting {
  readonly is: 'claimed' | 'posted' | 'taken-back' | 'anew';
  readonly at: string;
  readonly channel?: string;
  readonly message?: string;
}

export interface AlongState {
  readonly plan: AlongPlan;
  readonly teacher: string;
  readonly teacherName: string;
  readonly open: boolean;
  readonly hour: number;
  readonly zone: string;
  /** In the order of their days; those of one day in the order in which they were added. */
  readonly parts: readonly Part[];
  /** The number that the next part gets. */
  readonly nextPart: number;
  readonly members: ReadonlyMap<string, Member>;
  readonly names: ReadonlyMap<string, string>;
  /** Who is done, by part; only who takes part. */
  readonly done: ReadonlyMap<number, ReadonlySet<string>>;
  /** Everything anybody was stuck at; only of who takes part. */
  readonly stuck: readonly Stuck[];
  readonly postings: ReadonlyMap<number, Posting>;
  readonly offeredTo: { readonly maker: string; readonly name: string } | undefined;
  /** The events that count, with their numbers. */
  readonly standing: readonly { readonly event: number; readonly happened: AlongEvent }[];
}

interface Draft {
  plan: AlongPlan;
  teacher: string;
  teacherName: string;
  open: boolean;
  hour: number;
  zone: string;
  parts: Part[];
  nextPart: number;
  members: Map<string, Member>;
  names: Map<string, string>;
  done: Map<number, Set<string>>;
  stuck: Stuck[];
  postings: Map<number, Posting>;
  offeredTo: { maker: string; name: string } | undefined;
  standing: { event: number; happened: AlongEvent }[];
}

/** Replays events into a state. Throws BrokenHistory where an event does not follow from those before it. */
export function replay(events: readonly AlongEvent[]): AlongState {
  const undone = new Set(events.flatMap((event) => (event.did === 'undone' ? [event.event] : [])));
  const [first] = events;
  if (first?.did !== 'opened' || undone.has(0))
    throw new BrokenHistory('a make-along begins by being opened');
  const { plan } = first;
  const state: Draft = {
    plan,
    teacher: first.by,
    teacherName: first.name,
    open: true,
    hour: plan.hour,
    zone: plan.zone,
    parts: [...plan.parts],
    nextPart: Math.max(0, ...plan.parts.map(({ id }) => id)) + 1,
    members: new Map(),
    names: new Map([[first.by, first.name]]),
    done: new Map(),
    stuck: [],
    postings: new Map(),
    offeredTo: undefined,
    standing: [],
  };
  events.forEach((happened, event) => step(state, happened, event, undone.has(event)));
  return state;
}

/**
 * The state after more events, from the state before them; the same as replaying all, at the price of the new ones. `events`
 * are all there are, the first `known` of which are in `before` already. Throws BrokenHistory likewise.
 */
export function continueState(before: AlongState, known: number, events: readonly AlongEvent[]): AlongState {
  const more = events.slice(known);
  // What is taken back may be anywhere before.
  if (more.some(({ did }) => did === 'undone')) return replay(events);
  const touched = new Set(more.flatMap((event) => (event.did === 'done' ? [event.part] : [])));
  const leaves = more.some(({ did }) => did === 'left');
  const state: Draft = {
    ...before,
    parts: [...before.parts],
    members: new Map(before.members),
    names: new Map(before.names),
    // A set that nothing is added to or taken from is shared with the state before.
    done: new Map(
      [...before.done].map(([part, makers]) => [
        part,
        leaves || touched.has(part) ? new Set(makers) : (makers as Set<string>),
      ]),
    ),
    stuck: [...before.stuck],
    postings: new Map(before.postings),
    standing: [...before.standing],
  };
  more.forEach((happened, index) => step(state, happened, known + index, false));
  return state;
}

function step(state: Draft, happened: AlongEvent, event: number, undone: boolean): void {
  if (undone || happened.did === 'undone') {
    // A number once given to a part stays its own.
    if (happened.did === 'part-added') state.nextPart = Math.max(state.nextPart, happened.part.id + 1);
    return;
  }
  apply(state, happened);
  state.standing.push({ event, happened });
}

const inOrder = (parts: Part[]) =>
  parts.sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.id - b.id));

const MS_PER_DAY = 86_400_000;

/** The day so many days after another, YYYY-MM-DD. */
export const dayAfter = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);

function placeOf(state: Draft, part: number): number {
  const place = state.parts.findIndex(({ id }) => id === part);
  if (place < 0) throw new BrokenHistory(`there is no part ${part}`);
  return place;
}

function mustTakePart(state: Draft, maker: string): void {
  if (!state.members.has(maker)) throw new BrokenHistory(`${maker} takes no part`);
}

const post = (state: Draft, part: number, posting: Posting) => {
  placeOf(state, part);
  state.postings.set(part, posting);
};

type Did<Kind extends AlongEvent['did']> = AlongEvent & { readonly did: Kind };

const APPLY: { readonly [Kind in AlongEvent['did']]: (state: Draft, event: Did<Kind>) => void } = {
  opened: () => undefined,
  joined: (state, { did: _, by, at, once: __, ...way }) => {
    const since = state.members.get(by)?.since ?? at;
    state.members.set(by, { ...way, maker: by, since });
    state.names.set(by, way.name);
  },
  left: (state, { by }) => {
    mustTakePart(state, by);
    state.members.delete(by);
    for (const makers of state.done.values()) makers.delete(by);
    state.stuck = state.stuck.filter(({ maker }) => maker !== by);
  },
  done: (state, { by, part }) => {
    mustTakePart(state, by);
    placeOf(state, part);
    const makers = state.done.get(part) ?? new Set();
    makers.add(by);
    state.done.set(part, makers);
  },
  stuck: (state, { by, at, part, row, slip, counts, words, help }) => {
    mustTakePart(state, by);
    placeOf(state, part);
    state.stuck.push(defined({ maker: by, part, at, row, slip, counts, words, help }));
  },
  'part-added': (state, { part }) => {
    state.parts.push(part);
    state.nextPart = Math.max(state.nextPart, part.id + 1);
    inOrder(state.parts);
  },
  'part-changed': (state, { part, title, asks, from, after = 0 }) => {
    const place = placeOf(state, part);
    state.parts = state.parts.map((one, index) => {
      if (index === place) return { ...one, ...defined({ title, asks, from }) };
      return index > place && after !== 0 ? { ...one, from: dayAfter(one.from, after) } : one;
    });
    inOrder(state.parts);
  },
  'part-removed': (state, { part }) => {
    state.parts.splice(placeOf(state, part), 1);
    state.done.delete(part);
    state.stuck = state.stuck.filter((one) => one.part !== part);
  },
  'hour-set': (state, { hour, zone }) => {
    state.hour = hour;
    state.zone = zone;
  },
  claimed: (state, { part, at }) => post(state, part, { is: 'claimed', at }),
  // What the platform tells comes late: by then the part may have been taken back, or be out of the list.
  posted: (state, { part, at, channel, message }) => {
    const is = state.postings.get(part)?.is === 'taken-back' ? 'taken-back' : 'posted';
    state.postings.set(part, defined({ is, at, channel, message }));
  },
  'not-posted': (state, { part }) => {
    if (state.postings.get(part)?.is !== 'taken-back') state.postings.delete(part);
  },
  'taken-back': (state, { part, at }) => {
    const { channel, message } = state.postings.get(part) ?? {};
    post(state, part, defined({ is: 'taken-back' as const, at, channel, message }));
  },
  'post-anew': (state, { part, at }) => {
    const { channel, message } = state.postings.get(part) ?? {};
    post(state, part, defined({ is: 'anew' as const, at, channel, message }));
  },
  'message-gone': (state, { part }) => {
    const posting = state.postings.get(part);
    if (!posting) return;
    // Where the taking back was undone after its message had gone, the part is not out all the same.
    const is = posting.is === 'posted' ? 'taken-back' : posting.is;
    state.postings.set(part, { is, at: posting.at });
  },
  'offered-over': (state, { to, name }) => {
    state.offeredTo = { maker: to, name };
    state.names.set(to, name);
  },
  'handed-over': (state, { to, name }) => {
    state.teacher = to;
    state.teacherName = name;
    state.names.set(to, name);
    state.offeredTo = undefined;
  },
  closed: (state) => {
    state.open = false;
  },
  reopened: (state) => {
    state.open = true;
  },
  undone: () => undefined,
};

const apply = (state: Draft, event: AlongEvent): void => {
  (APPLY[event.did] as (state: Draft, event: AlongEvent) => void)(state, event);
};

/** The parts with their numbers, as people read them: 1 for the first. */
export const numbered = (state: Pick<AlongState, 'parts'>): { number: number; part: Part }[] =>
  state.parts.map((part, index) => ({ number: index + 1, part }));

/** How many are done with a part, stuck at it now, and neither. */
export function countProgress(
  state: Pick<AlongState, 'done' | 'stuck' | 'members'>,
  part: number,
): { done: number; stuck: number; notBegun: number } {
  const done = state.done.get(part) ?? new Set();
  const stuck = new Set(
    state.stuck.flatMap((one) => (one.part === part && !done.has(one.maker) ? [one.maker] : [])),
  );
  return { done: done.size, stuck: stuck.size, notBegun: state.members.size - done.size - stuck.size };
}
