/**
 * The yarn that pledged motifs take: for each maker, and for all together; from everything that is known now, bought so that it
 * runs out no more often than is said.
 */
import { LIMITS_95, ROUGH_BAND, SCALE_STEP } from '../../standards/consumption.ts';
import { defined } from '../base/defined.ts';
import { firstOfEach, sameName } from '../base/nearest-name.ts';
import { percentOff } from '../base/percent-off.ts';
import type { Ball } from '../base/quantity.ts';
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';
import { WEIGHT_OF_YARN, WHOLE_BALLS, YARN_WITH_RESERVE } from '../yarn/balls.ts';
import { yarnOf, type MotifSpec } from '../yarn/motif.ts';
import { findBall, readWeighedStitches, reckonMotifYarn, type MotifYarn } from '../yarn/motif-yarn.ts';
import { meanOf, weighingsOf } from '../yarn/weighings.ts';
import type { GroupKind } from './events.ts';
import type { GroupState } from './state.ts';
import { reckonBuying, reckonUse, type Amount, type GroupUse, type Reading, type Use } from './use.ts';

export const RESERVE = percentOff('to_buy', 'expected', {
  label: 'The reserve that this is, per cent',
  unit: 'm',
});
export const RECKONED_OPEN = formula({
  label: 'What the reckoning leaves open, per cent, as a standard deviation',
  formula: 'unsure / yarn',
  given: { unsure: 'm', yarn: 'm' },
  unit: '',
  source:
    'derived: half the band of each kind, by its share of the yarn; where one maker’s weighing is all, a quarter, as hers is one hand of many (our own choice)',
});
export const BUYING_BAND = formula({
  label: 'What it takes is right to about, per cent either way',
  formula: '100 * limits * open / expected',
  given: { limits: '', open: 'm', expected: 'm' },
  unit: '',
  source: 'derived: about 95 % of a normal distribution lie within two standard deviations',
});

export interface YarnNeed {
  readonly colour: string;
  /** To buy. */
  readonly metres: number;
  /** Whole balls; unset where the ball is not known. */
  readonly balls?: number;
}

/** What a list comes to, all its colours together. */
export interface Sureness {
  /** Metres to buy, and with the flat reserve that the blanket was opened with. */
  readonly metres: number;
  readonly flat: number;
  /** Per cent: what is bought beyond what is expected, and what it takes is right to, either way. */
  readonly reserve: number;
  readonly band: number;
}

export interface GroupYarn {
  readonly mine: readonly YarnNeed[];
  readonly makers: readonly { readonly name: string; readonly needs: readonly YarnNeed[] }[];
  readonly together_by_colour: readonly YarnNeed[];
  readonly metres: number;
  /** Whole balls if everybody buys her own, and if they buy together; unset where a ball is not known. */
  readonly each: number | undefined;
  readonly together: number | undefined;
  /** How sure that is: the asker's own list, where she holds something; everybody's bought by each; all bought together. */
  readonly sure?: Sureness;
  readonly sureTogether?: Sureness;
  /** How much was weighed, and by how many makers; by how many per cent makers and their motifs differ. */
  readonly weighed: Pick<GroupUse, 'motifs' | 'makers' | 'again' | 'differ' | 'spread'>;
  /** What the yarn of its motifs takes for granted. */
  readonly assumptions: readonly string[];
  readonly working: Working;
}

/** A kind as it is known now: its yarn, what one is reckoned to weigh, and whether balls tie its grams to its metres. */
interface Known {
  readonly yarn: MotifYarn;
  readonly grams: number | undefined;
  readonly tied: boolean;
}

/** The steps and what they are named by. */
interface Told {
  readonly who: string;
  readonly working: Working;
}

/**
 * Yarn (m) and whole balls by colour for what is pledged and not yet made; `mine` is the asker's own. `organisers` are the motifs
 * that the organiser keeps now: what she has weighed since the blanket was opened counts.
 */
export function reckonGroupYarn(
  state: GroupState,
  asker: string,
  organisers: readonly MotifSpec[] = [],
): GroupYarn {
  const { plan } = state;
  const working = new Working();
  const kinds = plan.kinds.map((kind) => weighedSince(kind, organisers));
  const known = reckonKinds(state, kinds, working);
  const makers = [...state.pledges].filter(([, pledges]) => pledges.some((pledged) => pledged > 0));
  const use = reckonUse(
    readingsOf(state, kinds, known),
    reckonedOpen(
      known,
      makers.map(([, pledges]) => pledges),
      working,
    ),
    working,
  );
  // What is told step by step is the asker's own list and that of all together.
  const quiet = new Working();
  const uses = new Map(makers.map(([maker]) => [maker, use.of(maker, maker === asker ? working : quiet)]));
  const list = (some: typeof makers, told: Told) => buy(some, { state, kinds, known, use, uses }, told);
  const own = makers.map(([maker, pledges]) => {
    const who = state.names.get(maker) ?? '';
    return {
      maker,
      name: who,
      ...list([[maker, pledges]], { who, working: maker === asker ? working : quiet }),
    };
  });
  const mine = own.find(({ maker }) => maker === asker);
  const together = list(makers, { who: 'All together', working });
  return defined({
    mine: mine?.needs ?? [],
    makers: own.map(({ name, needs }) => ({ name, needs })),
    together_by_colour: together.needs,
    metres: sum(together.needs.map(({ metres }) => metres)),
    sure: mine?.sure,
    sureTogether: together.sure,
    each: sumOfBalls(own.flatMap(({ needs }) => needs)),
    together: sumOfBalls(together.needs),
    weighed: use,
    assumptions: known.flatMap(({ yarn }) => yarn.assumptions),
    working,
  }) as GroupYarn;
}

/** A kind with what the organiser has weighed of it since, where she still works it the same way. */
function weighedSince(kind: GroupKind, organisers: readonly MotifSpec[]): GroupKind {
  const now = organisers.find(
    (motif) =>
      sameName(motif.name, kind.name) &&
      motif.shape === kind.shape &&
      motif.size === kind.size &&
      motif.otherSize === kind.otherSize &&
      motif.stitch === kind.stitch,
  );
  const weighings = now && weighingsOf(now);
  if (weighings === undefined || weighings.length === 0) return kind;
  return { ...kind, ...defined({ weight: now?.weight, weighings, ball: now?.ball ?? kind.ball }) };
}

function reckonKinds(state: GroupState, kinds: readonly GroupKind[], working: Working): Known[] {
  const { yarns } = state.plan;
  const twins = readWeighedStitches(kinds, yarns, working);
  return kinds.map((kind, index) => {
    const yarn = reckonMotifYarn(kind, yarns, working, twins);
    const grams = yarn.colours.map(({ colour, worked, tails, carried }) => {
      const ball = findBall(kind, yarns, colour);
      return (
        ball &&
        working.do(
          WEIGHT_OF_YARN,
          { yarn: worked + tails + carried, ball_weight: ball.g, ball_length: ball.m },
          `${kind.name}: weight of its ${colour}`,
        )
      );
    });
    const tied = grams.every((one) => one !== undefined);
    const handedIn = state.weighed.filter((one) => one.kind === index);
    return {
      yarn,
      tied,
      // Without a ball grams tell of grams alone: how makers differ, not how long their yarn is.
      grams: tied ? sum(grams) : (kind.weight ?? (handedIn.length > 0 ? meanOf(handedIn) : undefined)),
    };
  });
}

/** Everything that was weighed: at hand-in by each maker, and by the organiser, whose hand is one of them. */
function readingsOf(state: GroupState, kinds: readonly GroupKind[], known: readonly Known[]): Reading[] {
  const reckoned = (kind: number) => known[kind]?.grams;
  const organisers = kinds.flatMap((kind, index) =>
    weighingsOf(kind).map((weighing) => ({ ...weighing, kind: index, maker: state.organiser })),
  );
  const handedIn = state.weighed.map((one) => ({ ...one, step: SCALE_STEP }));
  return [...organisers, ...handedIn].flatMap(({ maker, kind, motifs, weight, step }) => {
    const grams = reckoned(kind);
    return grams === undefined ? [] : [{ maker, motifs, weight, step, reckoned: grams }];
  });
}

const metresIn = ({ worked, tails, carried }: MotifYarn['colours'][number]) => worked + tails + carried;
const metresOf = ({ colours }: MotifYarn) => sum(colours.map(metresIn));

/** Half a band is a standard deviation; what one maker has weighed tells of her hand, and little of all the others'. */
const openOf = ({ yarn }: Known) =>
  yarn.how === 'weighed' || yarn.how === 'as-weighed' ? ROUGH_BAND : yarn.band / LIMITS_95;

/** What the reckoning leaves open for the whole group, in per cent as a standard deviation. */
function reckonedOpen(
  known: readonly Known[],
  pledges: readonly (readonly number[])[],
  working: Working,
): number {
  const metres = known.map(({ yarn }, kind) => metresOf(yarn) * sum(pledges.map((hers) => hers[kind] ?? 0)));
  const yarn = sum(metres);
  if (yarn === 0) return ROUGH_BAND;
  return working.do(RECKONED_OPEN, {
    unsure: sum(metres.map((one, kind) => one * openOf(known[kind] as Known))),
    yarn,
  });
}

interface Basket {
  readonly state: GroupState;
  readonly kinds: readonly GroupKind[];
  readonly known: readonly Known[];
  readonly use: GroupUse;
  readonly uses: ReadonlyMap<string, Use>;
}

/** What a maker's pledges come to, of one colour or of all. */
function amountOf(
  [maker, pledges]: readonly [string, readonly number[]],
  known: readonly Known[],
  use: GroupUse,
  colour?: string,
): Amount {
  const amount = { maker, metres: 0, squares: 0, unsure: 0 };
  pledges.forEach((pledged, kind) => {
    if (pledged === 0) return;
    const { yarn, tied } = known[kind] as Known;
    const each = sum(
      yarn.colours.filter((part) => colour === undefined || sameName(part.colour, colour)).map(metresIn),
    );
    amount.metres += pledged * each;
    amount.squares += pledged * each ** 2;
    // While nothing is weighed, what the estimate leaves open is counted already.
    if (!tied && use.motifs > 0) amount.unsure += (pledged * each * yarn.band) / LIMITS_95 / 100;
  });
  return amount;
}

/** What so many makers buy together, colour by colour, and how sure that is. */
function buy(
  makers: readonly (readonly [string, readonly number[]])[],
  { state, kinds, known, use, uses }: Basket,
  { who, working }: Told,
): { needs: YarnNeed[]; sure?: Sureness } {
  const { plan } = state;
  const colours = firstOfEach(
    known.flatMap(({ yarn }, kind) =>
      makers.some(([, pledges]) => (pledges[kind] ?? 0) > 0) ? yarn.colours.map(({ colour }) => colour) : [],
    ),
  );
  const buying = (label: string, of: Working, colour?: string) =>
    reckonBuying(
      makers.map((one) => amountOf(one, known, use, colour)),
      use,
      uses,
      of,
      (step) => `${label}: ${step.replace(/^./, (first) => first.toLowerCase())}`,
    );
  const bought = colours.map((colour) => {
    const ball = yarnOf(plan.yarns, colour)?.ball ?? ballSaid(kinds, known, colour);
    const { buy: metres, expected } = buying(`${who}, ${colour}`, working, colour);
    const label = `${who}: whole balls of ${colour}`;
    const balls = ball && working.do(WHOLE_BALLS, { yarn: metres, ball_length: ball.m }, label);
    return { expected, need: defined({ colour, metres, balls }) };
  });
  const needs = bought.map(({ need }) => need);
  if (needs.length === 0) return { needs };
  const all = {
    metres: sum(needs.map((one) => one.metres)),
    expected: sum(bought.map((one) => one.expected)),
    // All colours at once: what is not known of her hand is the same in each.
    open: buying(who, new Working()).open,
  };
  return { needs, sure: reckonSureness(all, plan.reserve, { who, working }) };
}

/** How sure a list is of so many metres to buy, with so many expected and so many left open; `flat` in per cent. */
function reckonSureness(
  { metres, expected, open }: { metres: number; expected: number; open: number },
  flat: number,
  { who, working }: Told,
): Sureness {
  return {
    metres,
    flat: working.do(
      YARN_WITH_RESERVE,
      { each: expected, motifs: 1, reserve: flat },
      `${who}: what is expected, with a flat reserve`,
    ),
    reserve: working.do(RESERVE, { to_buy: metres, expected }, `${who}: the reserve that this is, per cent`),
    band: working.do(
      BUYING_BAND,
      { limits: LIMITS_95, open, expected },
      `${who}: what it takes is right to about, per cent either way`,
    ),
  };
}

/** The ball that was said at the scale for the first kind that has the colour. */
const ballSaid = (kinds: readonly GroupKind[], known: readonly Known[], colour: string): Ball | undefined =>
  kinds.find(
    (kind, index) =>
      kind.ball !== undefined &&
      known[index]?.yarn.colours.some((part) => sameName(part.colour, colour)) === true,
  )?.ball;

/** Balls of all needs together; unset where a ball is not known. */
const sumOfBalls = (needs: readonly YarnNeed[]): number | undefined =>
  needs.some((need) => need.balls === undefined)
    ? undefined
    : needs.reduce((all, need) => all + (need.balls ?? 0), 0);
