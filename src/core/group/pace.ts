/** How a group blanket comes along: what is in, what is needed, when it will be done, who has gone quiet. */
import { count, num, when } from '../ways.ts';
import { Working } from '../working.ts';
import { forecast, type Forecast } from './forecast.ts';
import { daysUntil } from './proposal.ts';
import { MS_PER_DAY } from './rules.ts';
import type { GroupState } from './state.ts';

/** After so many days without a word, a maker who holds pledges counts as quiet. */
export const QUIET_DAYS = 14;
/** Fewer hand-ins than this say little about the end. */
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
  const found = forecast({ done, days, toCome, daysLeft }, working);
  const [soonest, likely, latest] = [found.soonest, found.weeks, found.latest].map((weeks) =>
    dayAfter(now, weeks),
  );
  const quiet = [...state.members.values()].flatMap(({ maker, name }) => {
    const held = (state.pledges.get(maker) ?? []).reduce((sum, motifs) => sum + motifs, 0);
    const since = state.lastSeen.get(maker) ?? opened;
    const silent = (now.getTime() - Date.parse(since)) / MS_PER_DAY;
    return held > 0 && silent >= QUIET_DAYS ? [{ maker, name, since, held }] : [];
  });
  const sentence =
    toCome === 0
      ? `Every motif of ${state.plan.name} is handed in.`
      : done === 0
        ? `Nothing is handed in yet; ${count(toCome, 'motif')} to come${found.needed === undefined ? '' : `, ${num(found.needed, 1)} a week to be done by ${when(state.closes ?? '')}`}.`
        : `${count(done, 'motif')} in and ${num(toCome)} to come; at ${num(found.rate, 1)} a week it is done about ${likely === undefined ? 'in more than ten years' : when(likely)}${found.needed === undefined ? '' : `, and ${num(found.needed, 1)} a week ${found.needed > found.rate ? 'would be needed' : 'are enough'} for ${when(state.closes ?? '')}`}.`;
  return {
    done,
    toCome,
    forecast: found,
    soonest,
    likely,
    latest,
    quiet,
    sentence,
    lines:
      toCome === 0 || done === 0
        ? []
        : [
            `Four times in five it ends between ${when(soonest ?? '')} and ${latest === undefined ? 'some day that cannot be said yet' : when(latest)}.`,
            ...(done < FEW ? ['That is a wide spread: so few motifs say little yet.'] : []),
          ],
    assumptions: ['Hand-ins are taken to come at a steady rate since the blanket was opened.'],
    working,
  };
}
