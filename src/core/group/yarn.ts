/** The yarn that pledged motifs take: for each maker, and for all together. */
import { reckonMotifYarn, type MotifYarn } from '../yarn/motif-yarn.ts';
import { sameName } from '../base/nearest-name.ts';
import { yarnOf } from '../yarn/motif.ts';
import { Working } from '../base/working.ts';
import { WHOLE_BALLS, YARN_WITH_RESERVE } from '../yarn/balls.ts';
import type { GroupPlan } from './events.ts';
import type { GroupState } from './state.ts';

export interface YarnNeed {
  readonly colour: string;
  readonly metres: number;
  /** Whole balls; unset where the ball is not known. */
  readonly balls?: number;
}

export interface GroupYarn {
  readonly mine: readonly YarnNeed[];
  readonly makers: readonly { readonly name: string; readonly needs: readonly YarnNeed[] }[];
  readonly together_by_colour: readonly YarnNeed[];
  readonly metres: number;
  /** Whole balls if everybody buys her own, and if they buy together; unset where a ball is not known. */
  readonly each: number | undefined;
  readonly together: number | undefined;
  /** What the yarn of its motifs takes for granted. */
  readonly assumptions: readonly string[];
  readonly working: Working;
}

/** Yarn (m) and whole balls by colour for what is pledged and not yet made; `mine` is the asker's own. */
export function reckonGroupYarn(state: GroupState, asker: string): GroupYarn {
  const { plan } = state;
  const working = new Working();
  const motifs = plan.kinds.map((kind) => reckonMotifYarn(kind, plan.yarns, working));
  const needsOf = (pledges: readonly number[], who: string) =>
    reckonNeeds(plan, motifs, pledges, { who, working });
  const makers = [...state.pledges]
    .filter(([, pledges]) => pledges.some((pledged) => pledged > 0))
    .map(([maker, pledges]) => {
      const name = state.names.get(maker) ?? '';
      return { maker, name, needs: needsOf(pledges, name) };
    });
  const together = needsOf(
    plan.kinds.map((_, kind) => state.tally[kind]?.pledged ?? 0),
    'All together',
  );
  return {
    mine: makers.find(({ maker }) => maker === asker)?.needs ?? [],
    makers: makers.map(({ name, needs }) => ({ name, needs })),
    together_by_colour: together,
    metres: together.reduce((sum, { metres }) => sum + metres, 0),
    each: sumOfBalls(makers.flatMap(({ needs }) => needs)),
    together: sumOfBalls(together),
    assumptions: motifs.flatMap((motif) => motif.assumptions),
    working,
  };
}

/** What so many pledges of each kind take, colour by colour. */
function reckonNeeds(
  plan: GroupPlan,
  motifs: readonly MotifYarn[],
  pledges: readonly number[],
  { who, working }: { who: string; working: Working },
): YarnNeed[] {
  const byColour: { colour: string; metres: number }[] = [];
  pledges.forEach((pledged, kind) => {
    if (pledged === 0) return;
    for (const { colour, worked, tails, carried } of motifs[kind]?.colours ?? []) {
      const metres = working.do(
        YARN_WITH_RESERVE,
        { each: worked + tails + carried, motifs: pledged, reserve: plan.reserve },
        `${who}: ${colour} for ${pledged} of ${plan.kinds[kind]?.name ?? ''}`,
      );
      const known = byColour.find((one) => sameName(one.colour, colour));
      if (known) known.metres += metres;
      else byColour.push({ colour, metres });
    }
  });
  return byColour.map(({ colour, metres }) => {
    const ball = yarnOf(plan.yarns, colour)?.ball;
    if (!ball) return { colour, metres };
    const label = `${who}: whole balls of ${colour}`;
    return {
      colour,
      metres,
      balls: working.do(WHOLE_BALLS, { yarn: metres, ball_length: ball.m }, label),
    };
  });
}

/** Balls of all needs together; unset where a ball is not known. */
const sumOfBalls = (needs: readonly YarnNeed[]): number | undefined =>
  needs.some((need) => need.balls === undefined)
    ? undefined
    : needs.reduce((sum, need) => sum + (need.balls ?? 0), 0);
