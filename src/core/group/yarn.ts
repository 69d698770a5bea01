/** The yarn that pledged motifs take: for each maker, and for all together. */
import { reckonMotifYarn } from '../yarn/motif-yarn.ts';
import { sameName } from '../base/nearest-name.ts';
import { yarnOf } from '../yarn/motif.ts';
import { Working } from '../base/working.ts';
import { WHOLE_BALLS, YARN_WITH_RESERVE } from '../yarn/balls.ts';
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
export function groupYarn(state: GroupState, asker: string): GroupYarn {
  const { plan } = state;
  const working = new Working();
  const motifs = plan.kinds.map((kind) => reckonMotifYarn(kind, plan.yarns, working));

  const needsOf = (pledges: readonly number[], who: string): YarnNeed[] => {
    const byColour: { colour: string; metres: number }[] = [];
    pledges.forEach((many, kind) => {
      if (many === 0) return;
      for (const { colour, worked, tails, carried } of motifs[kind]?.colours ?? []) {
        const metres = working.do(
          YARN_WITH_RESERVE,
          { each: worked + tails + carried, motifs: many, reserve: plan.reserve },
          `${who}: ${colour} for ${many} of ${plan.kinds[kind]?.name ?? ''}`,
        );
        const known = byColour.find((one) => sameName(one.colour, colour));
        if (known) known.metres += metres;
        else byColour.push({ colour, metres });
      }
    });
    return byColour.map(({ colour, metres }) => {
      const ball = yarnOf(plan.yarns, colour)?.ball;
      return ball
        ? {
            colour,
            metres,
            balls: working.do(
              WHOLE_BALLS,
              { yarn: metres, ball_length: ball.m },
              `${who}: whole balls of ${colour}`,
            ),
          }
        : { colour, metres };
    });
  };

  const holders = [...state.pledges].filter(([, pledges]) => pledges.some((many) => many > 0));
  const makers = holders.map(([maker, pledges]) => {
    const name = state.names.get(maker) ?? '';
    return { maker, name, needs: needsOf(pledges, name) };
  });
  const together = needsOf(
    plan.kinds.map((_, kind) => state.tally[kind]?.pledged ?? 0),
    'All together',
  );
  const balls = (needs: readonly YarnNeed[]) =>
    needs.some((need) => need.balls === undefined)
      ? undefined
      : needs.reduce((sum, need) => sum + (need.balls ?? 0), 0);
  return {
    mine: makers.find(({ maker }) => maker === asker)?.needs ?? [],
    makers: makers.map(({ name, needs }) => ({ name, needs })),
    together_by_colour: together,
    metres: together.reduce((sum, { metres }) => sum + metres, 0),
    each: balls(makers.flatMap(({ needs }) => needs)),
    together: balls(together),
    assumptions: motifs.flatMap((motif) => motif.assumptions),
    working,
  };
}
