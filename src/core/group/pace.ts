/** How a group blanket comes along: what is in, what is needed, when it will be done, who has gone quiet. */
import { count, num, when } from '../base/reader.ts';
import { Working } from '../base/working.ts';
import { forecast, type Forecast } from './forecast.ts';
import { daysUntil } from './proposal.ts';
import { MS_PER_DAY } from './rules.ts';
import type { GroupState } from './state.ts';

/** After so many days without a word, a maker who holds pledges counts as quiet. */
export const QUIET_DAYS = 14;
/** Fewer parcels than this say little about the end. */
const FEW = 5;

export interface GroupPace {
  readonly done: number;
  /** Motifs of the quotas not yet handed in. */
  readonly toCome: number;
  readonly forecast: Forecast;
  /** Days as YYYY-MM-DD; unset where the pace allows no end. */
  readonly soonest: string | undefined;
  readonly likely: string | undefined;
  readonly latest: string | undefined;
  readonly quiet: readonly {
    readonly maker: string;
    readonly name: string;
    readonly since: string;
    readonly held: number;
  }[];
  readonly sentence: string;
  readonly lines: readonly string[];
  readonly assumptions: readonly string[];
  readonly working: Working;
}

/** The furthest day that is forecast: ten years. */
const FARTHEST_WEEKS = 520;

const dayAfter = (now: Date, weeks: number | undefined) =>
  weeks === undefined || weeks > FARTHEST_WEEKS
    ? undefined
    : new Date(now.getTime() + weeks * 7 * MS_PER_DAY).toISOString().slice(0, 10);

/** Reads pace and forecast off the state at a moment. */
export function groupPace(state: GroupState, now: Date): GroupPace {
  const working = new Working();
  const opened = state.standing[0]?.happened.at ?? now.toISOString();
  const inHand = state.pieces.filter((piece) => piece.state === 'handed-in' || piece.state === 'accepted');
  const done = inHand.length;
  const toCome = state.plan.kinds.reduce((sum, { quota }, kind) => {
    const { handedIn = 0, accepted = 0 } = state.tally[kind] ?? {};
    return sum + Math.max(0, quota - handedIn - accepted);
  }, 0);
  const days = (now.getTime() - Date.parse(opened)) / MS_PER_DAY;
  const daysLeft = state.closes === undefined ? undefined : daysUntil(state.closes, now);
  const parcels = new Map<string, number>();
  for (const { maker, handedInAt } of inHand) {
    const parcel = `${maker} ${handedInAt.slice(0, 10)}`;
    parcels.set(parcel, (parcels.get(parcel) ?? 0) + 1);
  }
  const squares = [...parcels.values()].reduce((sum, motifs) => sum + motifs ** 2, 0);
  const found = forecast({ done, squares, days, toCome, daysLeft }, working);
  const [soonest, likely, latest] = [found.soonest, found.weeks, found.latest].map((weeks) =>
    dayAfter(now, weeks),
  );
  const quiet = [...state.members.values()].flatMap(({ maker, name }) => {
    const held = (state.pledges.get(maker) ?? []).reduce((sum, motifs) => sum + motifs, 0);
    const since = state.lastSeen.get(maker) ?? opened;
    // Nobody is quiet about what she was given yesterday.
    const given = state.pledgedAt.get(maker) ?? since;
    const silent = (now.getTime() - Date.parse(since > given ? since : given)) / MS_PER_DAY;
    return held > 0 && silent >= QUIET_DAYS ? [{ maker, name, since, held }] : [];
  });
  const needed = found.needed === undefined ? undefined : num(found.needed, 1);
  const goal = when(state.closes ?? '');
  const lastDay = latest === undefined ? 'some day that cannot be said yet' : when(latest);
  const spread = soonest === undefined ? 'in more than ten years' : `between ${when(soonest)} and ${lastDay}`;
  const enough = (rate: number) =>
    needed === undefined || found.needed === undefined
      ? ''
      : found.needed > rate
        ? `; ${needed} a week would be needed for ${goal}`
        : `; ${needed} a week ${needed === '1' ? 'is' : 'are'} enough for ${goal}`;
  const sentence =
    toCome === 0
      ? `Every motif of ${state.plan.name} is handed in.`
      : done === 0
        ? `Nothing is handed in yet; ${count(toCome, 'motif')} to come${needed === undefined ? '' : `, ${needed} a week to be done by ${goal}`}.`
        : found.parcels < FEW
          ? `${count(done, 'motif')} in and ${num(toCome)} to come: too few yet to say more than ${spread}${enough(found.rate)}.`
          : `${count(done, 'motif')} in and ${num(toCome)} to come; at ${num(found.rate, 1)} a week it is done ${likely === undefined ? 'in more than ten years' : `about ${when(likely)}`}${enough(found.rate)}.`;
  return {
    done,
    toCome,
    forecast: found,
    soonest,
    likely,
    latest,
    quiet,
    sentence,
    lines: [
      ...(daysLeft !== undefined && daysLeft <= 0 && toCome > 0
        ? [
            `The closing day, ${when(state.closes ?? '')}, has passed; the organiser can move it with /together reopen.`,
          ]
        : []),
      ...(toCome === 0 || done === 0
        ? []
        : found.parcels < FEW
          ? ['That is what holds four times in five; with every parcel it will be known better.']
          : [`Four times in five it ends ${spread}.`]),
    ],
    assumptions: [
      'Parcels are taken to come at a steady rate since the blanket was opened; what one maker hands in on one day is one.',
    ],
    working,
  };
}
