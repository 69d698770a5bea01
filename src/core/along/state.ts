/** The state of a make-along, replayed from its events. Pure: the same events give the same state. */
import { defined } from '../base/defined.ts';
import { BrokenHistory, takenBack } from '../base/history.ts';
import { SharedList, type ReadonlyList } from '../base/shared-list.ts';
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
  readonly stuck: ReadonlyList<Stuck>;
  readonly postings: ReadonlyMap<number, Posting>;
  readonly offeredTo: { readonly maker: string; readonly name: string } | undefined;
  /** The events that count, with their numbers. */
  readonly standing: ReadonlyList<{ readonly event: number; readonly happened: AlongEvent }>;
}

/** A state that is being made: what it shares with the one before it is replaced, never altered (`own`, lists that share). */
interface Draft {
  plan: AlongPlan;
  teacher: string;
  teacherName: string;
  open: boolean;
  hour: number;
  zone: string;
  parts: readonly Part[];
  nextPart: number;
  members: Map<string, Member>;
  names: Map<string, string>;
  done: Map<number, ReadonlySet<string>>;
  stuck: SharedList<Stuck>;
  postings: Map<number, Posting>;
  offeredTo: { readonly maker: string; readonly name: string } | undefined;
  standing: SharedList<{ readonly event: number; readonly happened: AlongEvent }>;
}

type Mapped = 'members' | 'names' | 'done' | 'postings';

/** What of each draft is its own by now: maps by name, and sets in them. */
const owned = new WeakMap<Draft, Set<Mapped | ReadonlySet<string>>>();

function ownOf(state: Draft): Set<Mapped | ReadonlySet<string>> {
  const own = owned.get(state) ?? new Set();
  owned.set(state, own);
  return own;
}

/** A map of the draft that may be changed. */
function own<What extends Mapped>(state: Draft, what: What): Draft[What] {
  const mine = ownOf(state);
  if (!mine.has(what)) state[what] = new Map(state[what] as Map<never, never>);
  mine.add(what);
  return state[what];
}

/** Those who are done with a part, as a set of the draft’s own. */
function ownDone(state: Draft, part: number): Set<string> {
  const mine = ownOf(state);
  const known = state.done.get(part);
  if (known && mine.has(known)) return known as Set<string>;
  const makers = new Set(known);
  mine.add(makers);
  own(state, 'done').set(part, makers);
  return makers;
}

/** The state of a make-along that was just opened, before its first event is counted. */
function opened(first: AlongEvent | undefined): AlongState {
  if (first?.did !== 'opened') throw new BrokenHistory('a make-along begins by being opened');
  const { plan } = first;
  return {
    plan,
    teacher: first.by,
    teacherName: first.name,
    open: true,
    hour: plan.hour,
    zone: plan.zone,
    parts: plan.parts,
    nextPart: Math.max(0, ...plan.parts.map(({ id }) => id)) + 1,
    members: new Map(),
    names: new Map([[first.by, first.name]]),
    done: new Map(),
    stuck: [],
    postings: new Map(),
    offeredTo: undefined,
    standing: [],
  };
}

/** Replays events into a state. Throws BrokenHistory where an event does not follow from those before it. */
export const replay = (events: readonly AlongEvent[]): AlongState =>
  goOn(undefined, 0, events, takenBack(events));

/**
 * The state after more events, from the state before them; the same as replaying all, at the price of the new ones. `before`
 * stays as it is; it is of the first `known` events, and undefined where these are none. `undone` are the numbers of the events
 * that were taken back; one that was taken back after `before` is not in it. Throws BrokenHistory likewise.
 */
export function goOn(
  before: AlongState | undefined,
  known: number,
  more: readonly AlongEvent[],
  undone: ReadonlySet<number>,
): AlongState {
  if (before === undefined && undone.has(0)) throw new BrokenHistory('a make-along begins by being opened');
  const from = before ?? opened(more[0]);
  // The maps are shared until `own` copies them.
  const state = {
    ...from,
    stuck: SharedList.of(from.stuck),
    standing: SharedList.of(from.standing),
  } as Draft;
  more.forEach((happened, index) => step(state, happened, known + index, undone.has(known + index)));
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

const inOrder = (parts: readonly Part[]) =>
  [...parts].sort((a, b) => (a.from < b.from ? -1 : a.from > b.from ? 1 : a.id - b.id));

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
  own(state, 'postings').set(part, posting);
};

type Did<Kind extends AlongEvent['did']> = AlongEvent & { readonly did: Kind };

const APPLY: { readonly [Kind in AlongEvent['did']]: (state: Draft, event: Did<Kind>) => void } = {
  opened: () => undefined,
  joined: (state, { did: _, by, at, once: __, ...way }) => {
    const since = state.members.get(by)?.since ?? at;
    own(state, 'members').set(by, { ...way, maker: by, since });
    if (state.names.get(by) !== way.name) own(state, 'names').set(by, way.name);
  },
  left: (state, { by }) => {
    mustTakePart(state, by);
    own(state, 'members').delete(by);
    for (const [part, makers] of [...state.done]) if (makers.has(by)) ownDone(state, part).delete(by);
    state.stuck = SharedList.of(state.stuck.filter(({ maker }) => maker !== by));
  },
  done: (state, { by, part }) => {
    mustTakePart(state, by);
    placeOf(state, part);
    ownDone(state, part).add(by);
  },
  stuck: (state, { by, at, part, row, slip, counts, words, help }) => {
    mustTakePart(state, by);
    placeOf(state, part);
    state.stuck.push(defined({ maker: by, part, at, row, slip, counts, words, help }));
  },
  'part-added': (state, { part }) => {
    state.parts = inOrder([...state.parts, part]);
    state.nextPart = Math.max(state.nextPart, part.id + 1);
  },
  'part-changed': (state, { part, title, asks, from, after = 0 }) => {
    const place = placeOf(state, part);
    const parts = state.parts.map((one, index) => {
      if (index === place) return { ...one, ...defined({ title, asks, from }) };
      return index > place && after !== 0 ? { ...one, from: dayAfter(one.from, after) } : one;
    });
    state.parts = inOrder(parts);
  },
  'part-removed': (state, { part }) => {
    state.parts = state.parts.toSpliced(placeOf(state, part), 1);
    own(state, 'done').delete(part);
    state.stuck = SharedList.of(state.stuck.filter((one) => one.part !== part));
  },
  'hour-set': (state, { hour, zone }) => {
    state.hour = hour;
    state.zone = zone;
  },
  claimed: (state, { part, at }) => post(state, part, { is: 'claimed', at }),
  // What the platform tells comes late: by then the part may have been taken back, or be out of the list.
  posted: (state, { part, at, channel, message }) => {
    const is = state.postings.get(part)?.is === 'taken-back' ? 'taken-back' : 'posted';
    own(state, 'postings').set(part, defined({ is, at, channel, message }));
  },
  'not-posted': (state, { part }) => {
    if (state.postings.get(part)?.is !== 'taken-back') own(state, 'postings').delete(part);
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
    own(state, 'postings').set(part, { is, at: posting.at });
  },
  'offered-over': (state, { to, name }) => {
    state.offeredTo = { maker: to, name };
    own(state, 'names').set(to, name);
  },
  'handed-over': (state, { to, name }) => {
    state.teacher = to;
    state.teacherName = name;
    own(state, 'names').set(to, name);
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
    state.stuck.filter((one) => one.part === part && !done.has(one.maker)).map(({ maker }) => maker),
  );
  return { done: done.size, stuck: stuck.size, notBegun: state.members.size - done.size - stuck.size };
}
