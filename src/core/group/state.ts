/** The state of a group blanket, replayed from its events. Pure: the same events give the same state. */
import { defined } from '../base/defined.ts';
import { BrokenHistory, takenBack } from '../base/history.ts';
import { SharedList, type ReadonlyList } from '../base/shared-list.ts';
import type { GroupEvent, GroupPlan, Member } from './events.ts';

export interface Piece {
  /** 1 for the first motif ever handed in. */
  readonly piece: number;
  readonly maker: string;
  readonly kind: number;
  /** cm, where it was measured. */
  readonly side?: number;
  readonly handedInAt: string;
  readonly state: 'handed-in' | 'accepted' | 'returned' | 'taken-back';
  readonly reason?: string;
}

export interface WeighedIn {
  readonly maker: string;
  readonly kind: number;
  readonly motifs: number;
  readonly weight: number;
}

export interface Tally {
  /** Pledged and not yet handed in. */
  readonly pledged: number;
  readonly handedIn: number;
  readonly accepted: number;
}

export interface GroupState {
  readonly plan: GroupPlan;
  readonly organiser: string;
  readonly organiserName: string;
  readonly open: boolean;
  readonly closes: string | undefined;
  /** Who takes part now, in the order of joining. */
  readonly members: ReadonlyMap<string, Member & { readonly since: string }>;
  /** Names by maker, of everyone who ever ran it, took part or was named. */
  readonly names: ReadonlyMap<string, string>;
  readonly invited: ReadonlySet<string>;
  /** Motifs pledged and not yet handed in, by maker and kind. */
  readonly pledges: ReadonlyMap<string, readonly number[]>;
  readonly pieces: ReadonlyList<Piece>;
  /** What was weighed at hand-in: grams of so many motifs together. */
  readonly weighed: ReadonlyList<WeighedIn>;
  /** By kind: how many motifs are in each state. Kept along the way, so that a press need not count them again. */
  readonly tally: readonly Tally[];
  /** When each maker was last heard of. */
  readonly lastSeen: ReadonlyMap<string, string>;
  /** When a maker was asked whether her pledges stand, until she is heard of again. */
  readonly remindedAt: ReadonlyMap<string, string>;
  /** Who is kept from taking part, with when and why she was. */
  readonly barred: ReadonlyMap<string, { readonly at: string; readonly reason: string }>;
  /** Who was asked to run it and has not answered. */
  readonly offeredTo: { readonly maker: string; readonly name: string } | undefined;
  /** When somebody else last gave free what a maker had pledged. */
  readonly clearedAt: ReadonlyMap<string, string>;
  /** When each maker was last given something to make, by herself or by the organiser. */
  readonly pledgedAt: ReadonlyMap<string, string>;
  /** The events that count, with their numbers: what was undone is left out. */
  readonly standing: ReadonlyList<{ readonly event: number; readonly happened: GroupEvent }>;
}

/**
 * A state that is being made. What it has of the state before it is shared with that and never altered: a map is copied when
 * something of it first changes (`own`), lists share what does not change, and what is small is made anew.
 */
interface Draft {
  plan: GroupPlan;
  organiser: string;
  organiserName: string;
  open: boolean;
  closes: string | undefined;
  members: Map<string, Member & { readonly since: string }>;
  names: Map<string, string>;
  invited: Set<string>;
  pledges: Map<string, readonly number[]>;
  pieces: SharedList<Piece>;
  weighed: SharedList<WeighedIn>;
  tally: readonly Tally[];
  lastSeen: Map<string, string>;
  remindedAt: Map<string, string>;
  pledgedAt: Map<string, string>;
  barred: Map<string, { readonly at: string; readonly reason: string }>;
  offeredTo: { readonly maker: string; readonly name: string } | undefined;
  clearedAt: Map<string, string>;
  standing: SharedList<{ readonly event: number; readonly happened: GroupEvent }>;
}

type Mapped =
  'members' | 'names' | 'pledges' | 'lastSeen' | 'remindedAt' | 'pledgedAt' | 'barred' | 'clearedAt';

/** What of each draft is its own by now. */
const owned = new WeakMap<Draft, Set<string>>();

function isOwned(state: Draft, what: Mapped | 'invited'): boolean {
  const own = owned.get(state) ?? new Set();
  owned.set(state, own);
  const before = own.has(what);
  own.add(what);
  return before;
}

/** A map of the draft that may be changed. */
function own<What extends Mapped>(state: Draft, what: What): Draft[What] {
  if (!isOwned(state, what)) state[what] = new Map(state[what] as Map<string, never>);
  return state[what];
}

/** The state of a group blanket that was just opened, before its first event is counted. */
function opened(first: GroupEvent | undefined): GroupState {
  if (first?.did !== 'opened') throw new BrokenHistory('a group blanket begins by being opened');
  return {
    plan: first.plan,
    organiser: first.by,
    organiserName: first.name,
    open: true,
    closes: first.plan.closes,
    members: new Map(),
    names: new Map([[first.by, first.name]]),
    invited: new Set(),
    pledges: new Map(),
    pieces: [],
    weighed: [],
    tally: first.plan.kinds.map(() => ({ pledged: 0, handedIn: 0, accepted: 0 })),
    lastSeen: new Map(),
    remindedAt: new Map(),
    pledgedAt: new Map(),
    barred: new Map(),
    offeredTo: undefined,
    clearedAt: new Map(),
    standing: [],
  };
}

/** Replays events into a state. Throws BrokenHistory where an event does not follow from those before it. */
export const replay = (events: readonly GroupEvent[]): GroupState =>
  goOn(undefined, 0, events, takenBack(events));

/**
 * The state after more events, from the state before them; the same as replaying all, at the price of the new ones. `before`
 * stays as it is; it is of the first `known` events, and undefined where these are none. `undone` are the numbers of the events
 * that were taken back; one that was taken back after `before` is not in it. Throws BrokenHistory likewise.
 */
export function goOn(
  before: GroupState | undefined,
  known: number,
  more: readonly GroupEvent[],
  undone: ReadonlySet<number>,
): GroupState {
  if (before === undefined && undone.has(0))
    throw new BrokenHistory('a group blanket begins by being opened');
  const from = before ?? opened(more[0]);
  // The maps and sets are shared until `own` copies them.
  const state = {
    ...from,
    pieces: SharedList.of(from.pieces),
    weighed: SharedList.of(from.weighed),
    standing: SharedList.of(from.standing),
  } as Draft;
  more.forEach((happened, index) => step(state, happened, known + index, undone.has(known + index)));
  return state;
}

function step(state: Draft, happened: GroupEvent, event: number, undone: boolean): void {
  if (undone || happened.did === 'undone') {
    // A number once written on a motif's label stays its own, whatever is taken back later.
    if (happened.did === 'handed-in') number(state, happened, 'taken-back');
    return;
  }
  apply(state, happened);
  checkQuotas(state);
  own(state, 'lastSeen').set(happened.by, happened.at);
  // Whatever she does is an answer.
  if (happened.did !== 'reminded' && state.remindedAt.has(happened.by))
    own(state, 'remindedAt').delete(happened.by);
  state.standing.push({ event, happened });
}

/** Counts motifs of a kind into one state, out of another with a number below 0. */
function tell(state: Draft, kind: number, where: keyof Tally, change: number): void {
  const tally = state.tally[kind];
  if (!tally) throw new BrokenHistory(`there is no kind ${kind}`);
  state.tally = state.tally.with(kind, { ...tally, [where]: tally[where] + change });
}

function pledge(state: Draft, maker: string, kind: number, change: number): void {
  const pledges = state.pledges.get(maker) ?? state.plan.kinds.map(() => 0);
  const next = (pledges[kind] ?? 0) + change;
  if (next < 0) throw new BrokenHistory(`${maker} has not pledged that many of kind ${kind}`);
  tell(state, kind, 'pledged', change);
  own(state, 'pledges').set(maker, pledges.with(kind, next));
}

/** The rule of rules, held after every event: nothing is spoken for beyond quota and spares. */
function checkQuotas(state: Draft): void {
  state.plan.kinds.forEach((_, kind) => {
    if (openFor(state, kind) < 0) throw new BrokenHistory(`more than the quota of kind ${kind}`);
  });
}

/** The motif of a number, counted from 1. */
export const pieceOf = ({ pieces }: Pick<GroupState, 'pieces'>, number: number): Piece | undefined =>
  number > 0 ? pieces.at(number - 1) : undefined;

function pieceIn(state: Draft, piece: number, wanted: Piece['state']): Piece {
  const motif = pieceOf(state, piece);
  if (motif?.state !== wanted) throw new BrokenHistory(`motif ${piece} is not ${wanted}`);
  return motif;
}

/** Numbers the motifs of a hand-in on from the last. */
function number(state: Draft, event: GroupEvent & { did: 'handed-in' }, as: Piece['state']): void {
  for (let motif = 0; motif < event.motifs; motif++) {
    state.pieces.push(
      defined({
        piece: state.pieces.length + 1,
        maker: event.maker,
        kind: event.kind,
        handedInAt: event.at,
        state: as,
        side: event.side,
      }),
    );
  }
}

/** She takes no part any more, and what she has pledged is open again. */
function drop(state: Draft, maker: string): void {
  own(state, 'members').delete(maker);
  (state.pledges.get(maker) ?? []).forEach((motifs, kind) => {
    if (motifs > 0) pledge(state, maker, kind, -motifs);
  });
}

function mustTakePart(state: Draft, maker: string): void {
  if (!state.members.has(maker)) throw new BrokenHistory(`${maker} takes no part`);
}

/** An event of one kind. */
type Did<Kind extends GroupEvent['did']> = GroupEvent & { readonly did: Kind };

/** What each kind of event does to the state; that somebody was heard of is noted for all alike. */
const APPLY: { readonly [Kind in GroupEvent['did']]: (state: Draft, event: Did<Kind>) => void } = {
  opened: () => undefined,
  invited: (state, { maker, name }) => {
    if (!isOwned(state, 'invited')) state.invited = new Set(state.invited);
    state.invited.add(maker);
    own(state, 'names').set(maker, name);
  },
  joined: (state, { maker, name, perWeek, colours, at }) => {
    const since = state.members.get(maker)?.since ?? at;
    own(state, 'members').set(maker, { maker, name, perWeek, colours, since });
    if (state.names.get(maker) !== name) own(state, 'names').set(maker, name);
  },
  left: (state, { maker }) => {
    mustTakePart(state, maker);
    drop(state, maker);
  },
  barred: (state, { maker, at, reason }) => {
    own(state, 'barred').set(maker, { at, reason });
    drop(state, maker);
  },
  readmitted: (state, { maker }) => {
    if (!own(state, 'barred').delete(maker)) throw new BrokenHistory(`${maker} is not kept out`);
  },
  pledged: (state, { maker, kind, motifs, at }) => {
    mustTakePart(state, maker);
    pledge(state, maker, kind, motifs);
    own(state, 'pledgedAt').set(maker, at);
  },
  released: (state, { maker, kind, motifs, by, at }) => {
    pledge(state, maker, kind, -motifs);
    if (by !== maker) own(state, 'clearedAt').set(maker, at);
  },
  'handed-in': (state, event) => {
    pledge(state, event.maker, event.kind, -event.motifs);
    tell(state, event.kind, 'handedIn', event.motifs);
    number(state, event, 'handed-in');
    const { maker, kind, motifs, weight } = event;
    if (weight !== undefined) state.weighed.push({ maker, kind, motifs, weight });
  },
  accepted: (state, { pieces }) => {
    for (const number of pieces) {
      const piece = pieceIn(state, number, 'handed-in');
      state.pieces.set(number - 1, { ...piece, state: 'accepted' });
      tell(state, piece.kind, 'handedIn', -1);
      tell(state, piece.kind, 'accepted', 1);
    }
  },
  returned: (state, { pieces, reason, at }) => {
    for (const number of pieces) {
      const piece = pieceIn(state, number, 'handed-in');
      state.pieces.set(number - 1, { ...piece, state: 'returned', reason });
      tell(state, piece.kind, 'handedIn', -1);
      // It is hers to make again, unless she has left: then it is open to everyone.
      if (!state.members.has(piece.maker)) continue;
      pledge(state, piece.maker, piece.kind, 1);
      own(state, 'pledgedAt').set(piece.maker, at);
    }
  },
  reminded: (state, { maker, at }) => {
    own(state, 'remindedAt').set(maker, at);
  },
  kept: () => undefined,
  'offered-over': (state, { to, name }) => {
    state.offeredTo = { maker: to, name };
    own(state, 'names').set(to, name);
  },
  declined: (state) => {
    state.offeredTo = undefined;
  },
  'handed-over': (state, { to, name }) => {
    state.organiser = to;
    state.organiserName = name;
    state.offeredTo = undefined;
    own(state, 'names').set(to, name);
  },
  closed: (state) => {
    state.open = false;
  },
  reopened: (state, { closes }) => {
    state.open = true;
    state.closes = closes ?? state.closes;
  },
  undone: () => undefined,
};

const apply = (state: Draft, event: GroupEvent): void => {
  (APPLY[event.did] as (state: Draft, event: GroupEvent) => void)(state, event);
};

/** Motifs of a kind that somebody already has: pledged, handed in or accepted. */
export function countSpokenFor(state: Pick<GroupState, 'tally'>, kind: number): number {
  const { pledged, handedIn, accepted } = state.tally[kind] ?? { pledged: 0, handedIn: 0, accepted: 0 };
  return pledged + handedIn + accepted;
}

/** Motifs of a kind that may still be pledged. */
export function openFor(state: Pick<GroupState, 'tally' | 'plan'>, kind: number): number {
  const wanted = state.plan.kinds[kind];
  return wanted === undefined ? 0 : wanted.quota + wanted.spares - countSpokenFor(state, kind);
}
