/** How a group blanket comes along: what is in, what is needed, when it will be done, who has gone quiet. */
import { sum } from '../base/sum.ts';
import { Working } from '../base/working.ts';
import { countWork, type TakesPart } from './at-work.ts';
import { forecastEnd, type Forecast } from './forecast.ts';
import { countDaysUntil } from './proposal.ts';
import { MS_PER_DAY } from './rules.ts';
import type { GroupState } from './state.ts';
import { countPledged } from './totals.ts';

/** After so many days without a word, a maker who holds pledges counts as quiet. */
export const QUIET_DAYS = 14;
/** Fewer parcels than this say little about the end. */
export const FEW_PARCELS = 5;

export interface Quiet {
  readonly maker: string;
  readonly name: string;
  /** The moment she was last heard of, ISO. */
  readonly since: string;
  readonly held: number;
}

export interface GroupPace {
  /** Handed in or accepted. */
  readonly done: number;
  /** Those of them that are not accepted yet. */
  readonly waiting: number;
  /** Motifs of the quotas not yet handed in. */
  readonly toCome: number;
  /** Both together. */
  readonly motifs: number;
  /** Days to the closing day, below 0 once it has passed; unset without one. */
  readonly daysLeft: number | undefined;
  readonly forecast: Forecast;
  /** Motifs that came, by the day since the opening on which they did, in order: for a plot. */
  readonly arrivals: readonly { readonly day: number; readonly motifs: number }[];
  /** Days since the opening. */
  readonly days: number;
  readonly quiet: readonly Quiet[];
  readonly working: Working;
}

/** The furthest day that is said: ten years. */
const FARTHEST_DAYS = 3650;
/** Milliseconds. */
const HAIR = 0.01;

/** The day so many days after a moment, YYYY-MM-DD; undefined where it is too far to say. */
export function findDayAfter(now: Date, days: number | undefined): string | undefined {
  if (days === undefined || days > FARTHEST_DAYS) return undefined;
  // Never rounded up: the last millisecond of a day is of that day. The hair is what a machine's arithmetic loses of a day.
  return new Date(now.getTime() + Math.floor(days * MS_PER_DAY + HAIR)).toISOString().slice(0, 10);
}

const daysBetween = (from: string, to: Date) => (to.getTime() - Date.parse(from)) / MS_PER_DAY;

interface Parcel {
  readonly maker: string;
  /** The moment of its first motif, ISO. */
  readonly at: string;
  motifs: number;
}

/** What one maker handed in on one day, in order of time: its moment, and how many motifs. */
function parcelsOf(state: GroupState): Parcel[] {
  const parcels = new Map<string, Parcel>();
  for (const { maker, handedInAt, state: stands } of state.pieces) {
    if (stands !== 'handed-in' && stands !== 'accepted') continue;
    const key = `${maker} ${handedInAt.slice(0, 10)}`;
    const parcel = parcels.get(key);
    if (parcel) parcel.motifs++;
    else parcels.set(key, { maker, at: handedInAt, motifs: 1 });
  }
  return [...parcels.values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

/** Makers who hold pledges and have said nothing for long. Nobody is quiet about what she was given yesterday. */
function quietMakers(state: GroupState, opened: string, now: Date): Quiet[] {
  return [...state.members.values()].flatMap(({ maker, name }) => {
    const held = countPledged(state, maker);
    const since = state.lastSeen.get(maker) ?? opened;
    const given = state.pledgedAt.get(maker) ?? since;
    const silent = daysBetween(since > given ? since : given, now);
    return held > 0 && silent >= QUIET_DAYS ? [{ maker, name, since, held }] : [];
  });
}

/** Everybody who takes part, with her parcels; all parcels as one maker's where nobody does any more. */
function listMakers({ members }: GroupState, parcels: readonly Parcel[], now: Date): TakesPart[] {
  const all = parcels.map(({ maker, at, motifs }) => ({ maker, ago: daysBetween(at, now), motifs }));
  return members.size === 0
    ? [{ said: 1, joined: 0, parcels: all }]
    : [...members.values()].map((member) => ({
        said: member.perWeek,
        joined: daysBetween(member.since, now),
        parcels: all.filter(({ maker }) => maker === member.maker),
      }));
}

/** Reads pace and forecast off the state at a moment. */
export function reckonGroupPace(state: GroupState, now: Date): GroupPace {
  const working = new Working();
  const opened = state.standing.at(0)?.happened.at ?? now.toISOString();
  const parcels = parcelsOf(state);
  const done = sum(parcels.map(({ motifs }) => motifs));
  const toCome = sum(
    state.plan.kinds.map(({ quota }, kind) => {
      const { handedIn = 0, accepted = 0 } = state.tally[kind] ?? {};
      return Math.max(0, quota - handedIn - accepted);
    }),
  );
  const days = daysBetween(opened, now);
  const daysLeft = state.closes === undefined ? undefined : countDaysUntil(state.closes, now);
  const forecast = forecastEnd(
    {
      done,
      came: parcels.length,
      squares: sum(parcels.map(({ motifs }) => motifs ** 2)),
      days,
      ...countWork(listMakers(state, parcels, now)),
      toCome,
      daysLeft,
      said: sum([...state.members.values()].map(({ perWeek }) => perWeek)),
    },
    working,
  );
  return {
    done,
    waiting: sum(state.tally.map(({ handedIn }) => handedIn)),
    toCome,
    motifs: done + toCome,
    daysLeft,
    forecast,
    arrivals: parcels.map(({ at, motifs }) => ({ day: daysBetween(opened, new Date(at)), motifs })),
    days,
    quiet: quietMakers(state, opened, now),
    working,
  };
}
