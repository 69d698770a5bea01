/**
 * Why a row's count may depart from its plan, most likely first, and how each cause is mended. The reasons are common
 * practice; what a count can and cannot mean is derived from the plan.
 */
import { STITCH_FACTS } from '../standards/stitches.ts';
import type { RowPlan } from './rows/index.ts';
import { CORNER_FOR } from './rows/solid-square.ts';
import { count, t } from './ways.ts';

export interface Cause {
  /** What probably happened. */
  readonly cause: string;
  /** What in the counts speaks for it. */
  readonly why: string;
  /** How to put it right. */
  readonly mend: string;
  /** What mending that way costs the shape, or the time. */
  readonly cost: string;
}

/** A run of counts that departs from its plan at `row`. */
export interface Departure {
  readonly plan: RowPlan;
  readonly counts: readonly number[];
  readonly fromRow: number;
  readonly row: number;
  readonly expected: number;
  readonly counted: number;
  readonly difference: number;
  /** What ripping back undoes, in the plan's unit. */
  readonly undone: number;
}

/** A cause with its place in the queue: the lower, the likelier. */
type Ranked = Cause & { readonly rank: number };

interface Scene extends Departure {
  readonly called: 'row' | 'round';
  readonly one: string;
  readonly many: string;
  /** The count of the row before, as planned (and as counted, where it was counted). */
  readonly before: number | undefined;
  /** How the plan changes from the row before to this one. */
  readonly step: number;
  readonly too: string;
}

const units = (scene: Scene, n: number) => count(n, scene.one, scene.many);

function sceneOf(departure: Departure): Scene {
  const { plan, row, expected, difference } = departure;
  const blocks = plan.counted === 'blocks';
  const before = plan.rows[row - 2]?.count;
  return {
    ...departure,
    called: plan.worked === 'rounds' ? 'round' : 'row',
    one: blocks ? 'block' : 'stitch',
    many: blocks ? 'blocks' : 'stitches',
    before,
    step: before === undefined ? 0 : expected - before,
    too: difference > 0 ? 'too many' : 'too few',
  };
}

/** Everything that could have happened, most likely first; never empty. */
export function causesOf(departure: Departure): Cause[] {
  const scene = sceneOf(departure);
  const found: Ranked[] = [...shifted(scene), ...byShape(scene), ...chainAndEnds(scene), ...stray(scene)];
  return found
    .sort((a, b) => a.rank - b.rank)
    .map(({ cause, why, mend, cost }) => ({ cause, why, mend, cost }));
}

// Mending. ------------------------------------------------------------------------------------------------------

function ripBack({ row, called, undone, one, many }: Scene): Pick<Cause, 'mend' | 'cost'> {
  const to = row === 1 ? 'the beginning' : `the end of ${called} ${row - 1}`;
  return {
    mend: `Rip back to ${to} and work ${called} ${row} again.`,
    cost: `${count(undone, one, many)} to work again; the shape stays true.`,
  };
}

/** A few stitches can be made up where the hook is now; more would show, so the row goes. */
function makeUp(scene: Scene): Pick<Cause, 'mend' | 'cost'> {
  const { plan, called, row, counts, fromRow } = scene;
  const last = fromRow + counts.length - 1;
  // What is out by now, which may be more than at the row where it began, or nothing any more.
  const off = (counts.at(-1) ?? 0) - (plan.rows[last - 1]?.count ?? 0);
  const few = Math.abs(off);
  const back = ripBack(scene);
  if (few === 0) {
    return {
      mend: `Nothing to mend: by ${called} ${last} the count is right again.`,
      cost: `The edge steps a little at ${called} ${row}; a seam or a border hides it.`,
    };
  }
  const ends = last === plan.rows.length && last > row;
  if (few > 2 || ends || plan.counted === 'blocks' || last - row > 3) return back;
  const once = off < 0 ? 'work 2 in one stitch' : 'work 2 stitches together';
  const does = few === 1 ? once : `${once}, twice and apart`;
  const where =
    last === row
      ? `At the end of this ${called} ${does}`
      : `In ${called} ${last + 1} ${does}, besides what belongs there`;
  const shows =
    plan.worked === 'rounds'
      ? `One side is ${units(scene, few)} out there: it ripples a little until it is blocked.`
      : `The edge steps by ${units(scene, few)} there; a seam or a border hides it.`;
  return {
    mend: `${where}, and the count is right again; or ${back.mend.replace('Rip', 'rip')}`,
    cost: `${shows} Ripping back: ${back.cost}`,
  };
}

// A row ahead or behind. ------------------------------------------------------------------------------------------

/** How many of the counts from the departure on match the plan moved by `by` rows; all of them, or it is no match. */
function matchesShifted({ plan, counts, fromRow, row }: Scene, by: number): number {
  const rest = counts.slice(row - fromRow);
  const all = rest.every((counted, index) => counted === plan.rows[row + index + by - 1]?.count);
  return all ? rest.length : 0;
}

function shifted(scene: Scene): Ranked[] {
  const { row, fromRow, called, plan } = scene;
  if (new Set(plan.rows.map((one) => one.count)).size === 1) return [];
  const found: Ranked[] = [];
  for (const by of [1, -1, 2, -2]) {
    const matching = matchesShifted(scene, by);
    if (matching === 0) continue;
    const ahead = by > 0;
    const many = count(Math.abs(by), called);
    const start = row === fromRow;
    // Two counts that fit a shifted plan are no accident; one alone may be.
    const sure = matching >= 2 || (start && fromRow > 1);
    const rank = (sure ? 5 : 35) + 10 * (Math.abs(by) - 1);
    found.push({
      rank,
      cause: ahead
        ? `You are ${many} ahead of where you think: these are the counts from ${called} ${row + by} on.`
        : start
          ? `You are ${many} behind where you think: these are the counts from ${called} ${row + by} on.`
          : `You are ${many} behind: ${called} ${row} repeats the count of ${called} ${row + by}, so it was noted twice or worked straight.`,
      why: `${matching === 1 ? 'The count matches' : `${matching === 2 ? 'Both' : `All ${matching}`} counts from here on match`} the plan of ${called} ${row + by}${matching === 1 ? '' : ' and after'}.`,
      mend: ahead
        ? start
          ? `Nothing is wrong in the work: start the list from ${called} ${row + by} (from_row:${row + by}).`
          : `A count is missing in the list: look for ${called} ${row} in the work, and call the last one ${called} ${scene.fromRow + scene.counts.length - 1 + by}.`
        : `Count the ${called}s in the work. If the work has ${many} fewer than the list, only the list is wrong: go on from there. If not, ${called} ${row} was worked without its change: ${ripBack(scene).mend.replace('Rip', 'rip')}`,
      cost: ahead
        ? 'Nothing: the shape is as planned.'
        : `Nothing if only the list is wrong. Left in, one straight ${called} makes the edge step once and the piece ${called === 'row' ? 'a row' : 'a round'} higher.`,
    });
  }
  return found;
}

// By shape. -------------------------------------------------------------------------------------------------------

function byShape(scene: Scene): Ranked[] {
  switch (scene.plan.shape) {
    case 'diagonal':
      return ends(scene);
    case 'blocks':
      return blockRows(scene);
    case 'flat':
      return flatRows(scene);
    case 'clusters':
      return clusterRounds(scene);
    case 'solid-square':
      return corners(scene);
    case 'circle':
    case 'hexagon':
      return increasingRounds(scene);
  }
}

/** The diagonal square: one more at each end while it grows, one fewer after the turn. */
function ends(scene: Scene): Ranked[] {
  const { difference: d, row, before, counted, step } = scene;
  const found: Ranked[] = [];
  if (before === undefined) {
    found.push({
      rank: 20,
      cause: `The first row began with ${units(scene, counted)} instead of 3: the skipped chains stand as one, and two go into the first chain.`,
      why: 'Everything after grows from this row.',
      ...ripBack(scene),
    });
    return found;
  }
  const rising = step > 0;
  const change = rising ? 'increase' : 'decrease';
  const short = rising ? d < 0 : d > 0;
  const away = Math.abs(d);
  if (short && away === 1)
    found.push({
      rank: 10,
      cause: `The ${change} at one end was missed, most often at the last stitch of the row.`,
      why: `One ${scene.too} is one ${change}; both ends need one.`,
      ...makeUp(scene),
    });
  if (short && away === 2)
    found.push({
      rank: 20,
      cause: `The ${change}s at both ends were missed: row ${row} was worked straight.`,
      why: `The count is that of row ${row - 1} again.`,
      ...makeUp(scene),
    });
  if (rising && d === -2)
    found.push({
      rank: 40,
      cause: 'One end was decreased instead of increased, and the other left as it was.',
      why: 'That too makes two too few, and leaves one edge leaning inwards.',
      ...ripBack(scene),
    });
  if (rising && d === -4)
    found.push({
      rank: 8,
      cause: 'Both ends were decreased instead of increased: the turn was worked too early.',
      why: `The count is 2 fewer than row ${row - 1}; it should be 2 more.`,
      mend: `${ripBack(scene).mend} Or keep the early turn, and make every motif of this size.`,
      cost: `${ripBack(scene).cost} Kept, the motif is ${count(scene.plan.size - row + 1, 'rising row')} smaller than planned.`,
    });
  if (!rising && d === 4)
    found.push({
      rank: 8,
      cause: 'The turn was missed: both ends were increased where they should be decreased.',
      why: `The count is 2 more than row ${row - 1}; after row ${scene.plan.size} it should be 2 fewer.`,
      ...ripBack(scene),
    });
  if (!rising && d === 2)
    found.push({
      rank: 40,
      cause: 'One end was increased instead of decreased, and the other left as it was.',
      why: 'That too makes two too many.',
      ...ripBack(scene),
    });
  if (!short && away === 1)
    found.push({
      rank: 14,
      cause: rising
        ? 'A stitch was worked into the turning chain and one more beside it, or an end got 3 instead of 2.'
        : 'Three were taken together at one end instead of two, or a stitch was skipped.',
      why: `Both ends did their ${change}, and one ${rising ? 'more came' : 'more went'}.`,
      ...makeUp(scene),
    });
  if (!short && away === 2)
    found.push({
      rank: 24,
      cause: rising
        ? 'Both ends got 3 instead of 2.'
        : 'Three were taken together at both ends instead of two.',
      why: `Two ${scene.too}, and the ${change}s come in pairs.`,
      ...makeUp(scene),
    });
  return found;
}

/** Corner-to-corner blocks: one more a row, level rows in a rectangle, one fewer a row. */
function blockRows(scene: Scene): Ranked[] {
  const { difference: d, step, before, row } = scene;
  if (before === undefined)
    return [
      {
        rank: 20,
        cause: 'The piece begins with one block in the corner.',
        why: 'Everything after grows from it.',
        ...ripBack(scene),
      },
    ];
  const found: Ranked[] = [];
  if (step > 0 && d === -1)
    found.push({
      rank: 10,
      cause: `The new block at the start of row ${row} was left out, or the last ${t('sl st')} and block were skipped.`,
      why: 'One block too few in a growing row is one block not begun.',
      ...ripBack(scene),
    });
  if (step > 0 && d < -1)
    found.push({
      rank: 12,
      cause: 'The row was begun as a shrinking one: the turn came too early.',
      why: `The count fell from ${before} where it should rise.`,
      ...ripBack(scene),
    });
  if (step <= 0 && d > 0)
    found.push({
      rank: 8,
      cause:
        step === 0
          ? 'A block was added at the start and the last one was not dropped.'
          : `The turn was missed: row ${row} should begin with ${t('sl st')}s over a block and end one block sooner.`,
      why: `From row ${row} on the plan ${step === 0 ? 'keeps its count' : 'loses a block a row'}.`,
      ...ripBack(scene),
    });
  if (step <= 0 && d < 0)
    found.push({
      rank: 12,
      cause: 'The row ended a block too soon.',
      why: 'A block of the row before was not worked into.',
      ...ripBack(scene),
    });
  if (step > 0 && d > 0)
    found.push({
      rank: 12,
      cause: 'Two blocks were worked into one space.',
      why: 'A growing row gains one block only, at its start.',
      ...ripBack(scene),
    });
  return found;
}

function flatRows(scene: Scene): Ranked[] {
  const { difference: d, counts, fromRow, row, expected } = scene;
  const rest = counts.slice(row - fromRow);
  const drifting =
    rest.length >= 2 &&
    rest.every(
      (counted, index) =>
        Math.sign(counted - expected) === Math.sign(d) && Math.abs(counted - expected) > index,
    );
  return [
    {
      rank: drifting ? 6 : 10,
      cause:
        d < 0
          ? 'The last stitch of the row was missed: it stands at the very edge and hides under the turning chain.'
          : 'A stitch was worked into the edge twice, at the start or at the end of the row.',
      why: drifting
        ? 'The count drifts the same way row after row, so it happens at an edge every time.'
        : `${Math.abs(d) === 1 ? 'One' : 'A few'} ${scene.too} in a straight piece mostly happens at an edge.`,
      ...makeUp(scene),
    },
  ];
}

function clusterRounds(scene: Scene): Ranked[] {
  const { difference: d, row, before, counted } = scene;
  const found: Ranked[] = [];
  if (before !== undefined && counted === before)
    found.push({
      rank: 10,
      cause: `Each corner got one cluster instead of two: round ${row} was worked without its corners.`,
      why: `The count is that of round ${row - 1} again.`,
      ...ripBack(scene),
    });
  if (d % 3 === 0)
    found.push({
      rank: 15,
      cause: `${count(Math.abs(d) / 3, 'whole cluster')} ${d < 0 ? 'missing: a space was passed over, or a corner got one cluster instead of two' : 'more: a space was worked twice, or a corner got three clusters'}.`,
      why: 'The difference is a multiple of 3, and a cluster is 3 stitches.',
      ...ripBack(scene),
    });
  else
    found.push({
      rank: 15,
      cause: `A cluster has ${d < 0 ? '2 stitches' : '4 stitches'} instead of 3, or the starting chain was ${d < 0 ? 'not counted as a stitch' : 'counted beside a whole cluster'}.`,
      why: 'The difference is no multiple of 3, so it is not a whole cluster.',
      ...ripBack(scene),
    });
  return found;
}

function corners(scene: Scene): Ranked[] {
  const { difference: d, plan, row } = scene;
  const corner = CORNER_FOR[plan.stitch];
  const whole = Math.abs(d) / (corner - 1);
  const found: Ranked[] = [];
  if (row > 1 && Number.isInteger(whole) && whole <= 4)
    found.push({
      rank: 10,
      cause:
        d < 0
          ? `${count(whole, 'corner')} missed: one stitch there instead of ${corner}.`
          : `${count(whole, 'corner')} too many: ${corner} worked where one belongs.`,
      why: `A corner makes ${corner} of one, so each is worth ${corner - 1}.`,
      ...ripBack(scene),
    });
  if (row > 1 && Math.abs(d) < corner - 1)
    found.push({
      rank: 12,
      cause: `A corner got ${corner + d} stitches instead of ${corner}.`,
      why: `${units(scene, Math.abs(d))} ${scene.too} is less than a whole corner.`,
      ...makeUp(scene),
    });
  return found;
}

function increasingRounds(scene: Scene): Ranked[] {
  const { difference: d, step, before, counted, row } = scene;
  if (before === undefined) return [];
  if (counted === before)
    return [
      {
        rank: 10,
        cause: `Round ${row} was worked without its increases.`,
        why: `The count is that of round ${row - 1} again.`,
        ...ripBack(scene),
      },
    ];
  const found: Ranked[] = [];
  if (d < 0 && -d < step)
    found.push({
      rank: 12,
      cause: `${count(-d, 'increase')} of ${step} missed.`,
      why: 'Each increase is worth one stitch.',
      ...makeUp(scene),
    });
  if (d > 0)
    found.push({
      rank: 12,
      cause: `${count(d, 'increase')} too many: the increases came too close together.`,
      why: 'Each increase is worth one stitch.',
      ...makeUp(scene),
    });
  return found;
}

// Everywhere. -----------------------------------------------------------------------------------------------------

/** The turning chain, counted as a stitch or not; the joining stitch of a round. */
function chainAndEnds(scene: Scene): Ranked[] {
  const { plan, difference: d, called } = scene;
  if (Math.abs(d) !== 1 || plan.counted === 'blocks') return [];
  const { turningChain, chainCounts } = STITCH_FACTS[plan.stitch];
  const rounds = plan.worked === 'rounds';
  // In the falling rows of the diagonal square the chain stands for nothing (common practice).
  const counts = chainCounts && !(plan.shape === 'diagonal' && scene.step < 0);
  const chain = rounds ? 'starting chain' : 'turning chain';
  return [
    {
      rank: 18,
      cause: counts
        ? d < 0
          ? `The ${chain} was not counted, or not worked into: in ${t(plan.stitch)} its ${turningChain} chains stand as the first stitch.`
          : `The ${chain} stands as the first stitch in ${t(plan.stitch)}, and a stitch was worked at its foot besides.`
        : d < 0
          ? `The first stitch was skipped as if the ${chain} stood for it; here it does not.`
          : `The ${chain} was counted as a stitch; here it is not one.`,
      why: `One ${scene.too}, and the ${chain} is the stitch most often counted wrong.`,
      mend: `Count the ${called} again with that in mind; if the stitch is really ${d < 0 ? 'missing' : 'there'}: ${makeUp(scene).mend.replace(/^./, (first) => first.toLowerCase())}`,
      cost: `Nothing if it was only the counting. ${makeUp(scene).cost}`,
    },
    ...(rounds
      ? [
          {
            rank: 22,
            cause:
              d > 0
                ? `The ${t('sl st')} that joins the round was counted, or worked into, as a stitch.`
                : `The last stitch before the joining ${t('sl st')} was missed.`,
            why: 'At the join one stitch is easily taken for another.',
            ...makeUp(scene),
          },
        ]
      : []),
  ];
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/**
 * What every count of the plan has in common (all odd; all multiples of 12) and this one has not: then it can be no
 * other row of the plan, so the rows were not miscounted, the stitches were. Undefined where the count may be a row's.
 */
export function noRowHas(plan: RowPlan, counted: number): string | undefined {
  const all = plan.rows.map((one) => one.count);
  const first = all[0] ?? 0;
  const step = all.reduce((common, one) => gcd(common, Math.abs(one - first)), 0);
  if (step < 2 || (counted - first) % step === 0) return undefined;
  if (plan.shape === 'diagonal')
    return `Every row of the diagonal square has an odd count. ${counted} is even, so a stitch was missed or added: it is never a miscounted row.`;
  const called = plan.worked === 'rounds' ? 'round' : 'row';
  return `The ${called}s of this piece go by ${step}s and none has ${counted}, so stitches were missed or added: it is never a miscounted ${called}.`;
}

function stray(scene: Scene): Ranked[] {
  const { plan, counted, difference: d, called } = scene;
  const reason = noRowHas(plan, counted);
  const where = plan.counted === 'blocks' ? 'A block' : 'A stitch';
  return [
    {
      rank: reason === undefined ? 50 : 16,
      cause:
        d < 0
          ? `${where} was skipped in the middle of the ${called}${d === -1 ? '' : ', more than once'}.`
          : `${where} was worked twice in the middle of the ${called}${d === 1 ? '' : ', more than once'}.`,
      why: reason ?? `${units(scene, Math.abs(d))} ${scene.too} could be this anywhere in the ${called}.`,
      ...makeUp(scene),
    },
  ];
}
