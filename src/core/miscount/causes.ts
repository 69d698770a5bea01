/**
 * Why a row's count may depart from its plan, most likely first, and how each cause is mended. The reasons are common
 * practice; what a count can and cannot mean is derived from the plan.
 */
import { STITCH_FACTS } from '../../standards/stitches.ts';
import type { RowPlan } from '../rows/index.ts';
import { count, t } from '../base/reader.ts';
import {
  describeDeparture,
  makeUp,
  ripBack,
  sceneOf,
  units,
  type Cause,
  type Departure,
  type Ranked,
  type Scene,
} from './mending.ts';
import { listCausesByShape } from './causes-by-shape.ts';
import { findElsewhere } from './elsewhere.ts';

export type { Cause } from './mending.ts';

/** Everything that could have happened, most likely first; never empty. */
export function causesOf(departure: Departure): Cause[] {
  const scene = sceneOf(departure);
  const elsewhere = shifted(scene);
  const far =
    isFarOff(departure) ||
    (elsewhere.length > 0 &&
      departure.row === departure.fromRow &&
      Math.abs(departure.difference) > FEW_SLIPS);
  const found: Ranked[] = far
    ? [...elsewhere, notThisRow(scene)]
    : [...elsewhere, ...listCausesByShape(scene), ...chainAndEnds(scene), ...stray(scene)];
  return found
    .sort((a, b) => a.rank - b.rank)
    .map(({ slip, cause, why, mend, cost }) => ({ slip, cause, why, mend, cost }));
}

/** Where the counts fit other rows, no more stitches than these are taken for slips besides (common practice: two ends, twice). */
const FEW_SLIPS = 4;

/** Stitches (or blocks) that go wrong in one row at the very most, where neither its change nor its length is large. */
const SLIPS_AT_MOST = 16;

/** Whether a count is further from the plan than slips in one row reach (common practice): then it is another's. */
export function isFarOff({ plan, row, expected, difference }: Departure): boolean {
  const step = expected - (plan.rows[row - 2]?.count ?? expected);
  return Math.abs(difference) > Math.max(SLIPS_AT_MOST, 2 * Math.abs(step), expected / 4);
}

function notThisRow(scene: Scene): Ranked {
  const { called, row, counted, expected } = scene;
  return {
    rank: 20,
    slip: 'count-of-other-work',
    cause: `The count of ${called} ${row} was written down wrongly, or the work is of another size or shape than the one given.`,
    why: `${units(scene, counted)} where ${expected} belong${expected === 1 ? 's' : ''} is further off than one ${called} goes wrong by.`,
    mend: `Count ${called} ${row} again; if it really has ${counted}, ask again with the size and shape that the work has.`,
    cost: 'Nothing if only the list is wrong.',
  };
}

/** How many of the counts from the departure on match the plan moved by `by` rows; all of them, or it is no match. */
function matchesShifted({ plan, counts, fromRow, row }: Scene, by: number): number {
  const rest = counts.slice(row - fromRow);
  const all = rest.every((counted, index) => counted === plan.rows[row + index + by - 1]?.count);
  return all ? rest.length : 0;
}

/** Rows noted twice or left out in the middle of a list: what follows fits the plan moved by one or two rows. */
function shifted(scene: Scene): Ranked[] {
  const { row, fromRow, counts, called, plan } = scene;
  if (row === fromRow) return begunElsewhere(scene);
  if (new Set(plan.rows.map((one) => one.count)).size === 1) return [];
  const fits = (by: number) => matchesShifted(scene, by) > 0;
  // Only rows that the list holds can have been noted twice.
  const [ahead, behind] = [[1, 2].find(fits), [1, 2].find((by) => row - by >= fromRow && fits(-by))];
  const shift = (by: number): Pick<Ranked, 'rank' | 'why'> => {
    const matching = matchesShifted(scene, by);
    return {
      // Two counts that fit a shifted plan are no accident; one alone may be.
      rank: (matching >= 2 ? 5 : 35) + 10 * (Math.abs(by) - 1),
      why: `${matching === 1 ? 'The count matches' : `${matching === 2 ? 'Both' : `All ${matching}`} counts from here on match`} the plan of ${called} ${row + by}${matching === 1 ? '' : ' and after'}.`,
    };
  };
  const found: Ranked[] = [];
  if (ahead !== undefined)
    found.push({
      ...shift(ahead),
      slip: 'row-ahead',
      cause: `You are ${count(ahead, called)} ahead of where you think: these are the counts from ${called} ${row + ahead} on.`,
      mend: `${ahead === 1 ? 'A count is' : 'Counts are'} missing in the list: look for ${called} ${row} in the work, and call the last one ${called} ${fromRow + counts.length - 1 + ahead}.`,
      cost: 'Nothing: the shape is as planned.',
    });
  if (behind === 1)
    found.push({
      ...shift(-1),
      slip: 'row-twice',
      cause: `You are 1 ${called} behind: ${called} ${row} repeats the count of ${called} ${row - 1}, so it was noted twice or worked straight.`,
      ...fewerRows(scene, 1),
    });
  else if (behind !== undefined)
    found.push({
      ...shift(-behind),
      slip: 'row-twice',
      cause: `You are ${count(behind, called)} behind: from ${called} ${row} on the counts are those from ${called} ${row - behind} on again, so ${behind} were noted twice.`,
      ...fewerRows(scene, behind),
    });
  return found;
}

/** Where the list may be ahead of the work by so many rows: one may also have been worked straight, more hardly. */
function fewerRows(scene: Scene, by: number): Pick<Cause, 'mend' | 'cost'> {
  const { called, row } = scene;
  const back = ripBack(scene);
  const list = `Count the ${called}s in the work. If the work has ${count(by, called)} fewer than the list, only the list is wrong: go on from there.`;
  return by === 1
    ? {
        mend: `${list} If not, ${called} ${row} was worked without its change: ${back.mend.replace('Rip', 'rip')}`,
        cost: `Nothing if only the list is wrong. Left in, one straight ${called} makes the edge step once and the piece a ${called} higher.`,
      }
    : {
        mend: `${list} If not: ${back.mend.replace('Rip', 'rip')}`,
        cost: `Nothing if only the list is wrong. If not: ${back.cost}`,
      };
}

/** A list whose very first count is that of another row: where it begins is what is wrong, whatever the distance. */
function begunElsewhere(scene: Scene): Ranked[] {
  const { plan, counts, fromRow, called } = scene;
  const found = findElsewhere(plan, counts, fromRow);
  if (found === undefined) return [];
  const { by, firstRow, slipAt } = found;
  const many = count(Math.abs(by), called);
  const ahead = by > 0;
  const lone = counts.length === 1;
  const turned = found.otherFirstRows.map((other) => `, or of ${called} ${other} after the turn`).join('');
  const from = `${lone ? `this is the count of ${called} ${firstRow}` : `these are the counts from ${called} ${firstRow} on`}${turned}`;
  const slipped = slipAt === undefined ? undefined : slipOf(scene, firstRow, slipAt);
  const where = `You are ${many} ${ahead ? 'ahead of' : 'behind'} where you think: ${from}`;
  return [
    {
      // Before every slip: a list that begins at another row is the commonest of all (common practice).
      rank: 1,
      slip: ahead ? 'row-ahead' : 'row-behind',
      cause: slipped === undefined ? `${where}.` : `${where}, and ${slipped.says}.`,
      why:
        slipAt === undefined
          ? `${lone ? 'The count matches' : `${counts.length === 2 ? 'Both' : `All ${counts.length}`} counts match`} the plan of ${called} ${firstRow}${lone ? '' : ' and after'}.`
          : `The first ${slipAt} counts match the plan of ${called} ${firstRow} and after; only then one ${called} goes wrong.`,
      ...(slipped !== undefined
        ? {
            mend: `Start the list from ${called} ${firstRow} (from_row:${firstRow}). Then: ${slipped.mend.replace(/^./, (first) => first.toLowerCase())}`,
            cost: slipped.cost,
          }
        : ahead
          ? {
              mend: `Nothing is wrong in the work: start the list from ${called} ${firstRow} (from_row:${firstRow}).`,
              cost: 'Nothing: the shape is as planned.',
            }
          : fewerRows(scene, -by)),
    },
  ];
}

/** The one row that still went wrong once the list begins where it belongs, and what mends that. */
function slipOf(scene: Scene, firstRow: number, slipAt: number) {
  const slip = describeDeparture(scene.plan, scene.counts, firstRow, slipAt);
  const [likeliest] = causesOf(slip);
  if (likeliest === undefined) throw new Error('a departure has a cause');
  const { row, counted, expected, difference } = slip;
  return {
    ...likeliest,
    says: `${scene.called} ${row} has ${counted} where ${expected} belong${expected === 1 ? 's' : ''}, ${Math.abs(difference)} too ${difference < 0 ? 'few' : 'many'}`,
  };
}

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
      slip: 'turning-chain',
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
            slip: 'joining-stitch',
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
export function sayNoRowHas(plan: RowPlan, counted: number, farOff: boolean): string | undefined {
  const all = plan.rows.map((one) => one.count);
  const first = all[0] ?? 0;
  const step = all.reduce((common, one) => gcd(common, Math.abs(one - first)), 0);
  if (step < 2 || (counted - first) % step === 0) return undefined;
  if (plan.shape === 'diagonal')
    return `Every row of the diagonal square has an odd count. ${counted} is even, ${farOff ? 'and no row of any size has it' : 'so a stitch was missed or added, in the work or in the counting; a slip in counting the rows cannot be it'}.`;
  const { called } = plan;
  return `The ${called}s of this piece go by ${step}s and none has ${counted}${farOff ? '' : `, so stitches were missed or added, in the work or in the counting; a slip in counting the ${called}s cannot be it`}.`;
}

function stray(scene: Scene): Ranked[] {
  const { plan, counted, difference: d, called } = scene;
  const reason = sayNoRowHas(plan, counted, false);
  const where = plan.counted === 'blocks' ? 'A block' : 'A stitch';
  return [
    {
      rank: reason === undefined ? 50 : 16,
      slip: d < 0 ? 'stitch-skipped' : 'stitch-twice',
      cause:
        d < 0
          ? `${where} was skipped in the middle of the ${called}${d === -1 ? '' : ', more than once'}.`
          : `${where} was worked twice in the middle of the ${called}${d === 1 ? '' : ', more than once'}.`,
      why: reason ?? `${units(scene, Math.abs(d))} ${scene.too} could be this anywhere in the ${called}.`,
      ...makeUp(scene),
    },
  ];
}
