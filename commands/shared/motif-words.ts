/** How a motif is spoken of. */
import { gather } from '../../src/chat/answer.ts';
import {
  reckonCarriedStrand,
  cutLengths,
  findOtherStripes,
  CARRY_PAST,
} from '../../src/core/stripes/carrying.ts';
import { writeRuns, type ColourRun } from '../../src/core/stripes/colour-runs.ts';
import { planOf, type MotifSpec, countByColour } from '../../src/core/yarn/motif.ts';
import { reckonRowHeight, reckonStitchWidth } from '../../src/core/size/stitch-size.ts';
import { wpiOf } from '../../src/core/yarn/thickness.ts';
import type { RowPlan, Shape } from '../../src/core/rows/index.ts';
import { listStripes } from '../../src/core/yarn/still-to-come.ts';
import { count, m, num, t } from '../../src/core/base/reader.ts';
import type { Working } from '../../src/core/base/working.ts';

export const rowWord = (plan: RowPlan) => plan.called;
export const RowWord = (plan: RowPlan) => (plan.worked === 'rounds' ? 'Round' : 'Row');
export const units = (plan: RowPlan, n: number) =>
  plan.counted === 'blocks' ? count(n, 'block') : count(n, 'stitch', 'stitches');

/** `a diagonal square of 12 rising rows in hdc` */
export function described(motif: MotifSpec): string {
  const { size, otherSize, stitch } = motif;
  const how: Readonly<Record<Shape, string>> = {
    diagonal: `a diagonal square of ${count(size, 'rising row')}`,
    blocks: `corner to corner, ${size} × ${otherSize ?? size} blocks`,
    clusters: `a square in clusters of ${count(size, 'round')}`,
    'solid-square': `a solid square of ${count(size, 'round')}`,
    circle: `a circle of ${count(size, 'round')}`,
    hexagon: `a hexagon of ${count(size, 'round')}`,
    flat: `a flat piece of ${count(size, 'stitch', 'stitches')} and ${count(otherSize ?? 1, 'row')}`,
  };
  return `${how[motif.shape]} in ${t(stitch)}`;
}

/** More stripes than this are not listed one by one: the words they were typed in say more. */
const LISTED = 24;

/** The stripes as a table, and what each colour has in all. */
export function stripeLines(plan: RowPlan, runs: readonly ColourRun[]): string[] {
  if (runs.length === 0) return [];
  const listed = listStripes(plan, runs).map(
    ({ colour, from, to, stitches }) =>
      `${RowWord(plan)}${from === to ? ` ${from}` : `s ${from}–${to}`}: ${colour}, ${units(plan, stitches)}`,
  );
  const each = [...countByColour(plan, runs)].map(([colour, n]) => `${colour} ${num(n)}`).join(', ');
  return gather(
    `Colours: ${writeRuns(runs, plan.called)}.`,
    listed.length <= LISTED
      ? listed
      : [...listed.slice(0, LISTED), `… and ${listed.slice(LISTED).length} more in the same words.`],
    runs.length > 1 && `By colour, in ${plan.counted}: ${each}.`,
  );
}

/** Which colours climb the side and which are cut, how many ends that leaves, and what other stripes would save. */
export function carryLines(motif: MotifSpec, working: Working): string[] {
  const plan = planOf(motif);
  const { runs } = motif;
  if (runs.length < 2) return [];
  const carrying = cutLengths(plan, runs);
  const row = rowWord(plan);
  const where = plan.worked === 'rounds' ? 'at the join' : 'up the side';
  const each = [...carrying.byColour].map(([colour, { lengths: many, ends, carriedOver }]) => {
    const used = runs.filter((run) => run.colour === colour).length;
    if (used === 1) return `${colour} is used once: 2 ends.`;
    const climbs = `climbs ${where} past ${count(carriedOver, row)} in all`;
    if (many === 1) return `${colour} ${climbs}, one unbroken length: 2 ends.`;
    return carriedOver > 0
      ? `${colour} ${climbs}, but is cut ${count(many - 1, 'time')}: ${ends} ends.`
      : `${colour} is cut at every change: ${ends} ends.`;
  });
  const strand =
    carrying.carriedOver === 0
      ? []
      : [
          `About ${m(reckonCarriedStrand(carrying.carriedOver, reckonRowHeight(motif, reckonStitchWidth(motif, wpiOf(undefined), working), working), working))} of yarn is carried.`,
        ];
  const [other] = findOtherStripes(plan, runs);
  return gather(
    each,
    strand,
    `${count(carrying.ends, 'end')} to weave in${carrying.endsIfCut > carrying.ends ? `; cutting at every change would leave ${carrying.endsIfCut}` : ''}.`,
    other &&
      `Other stripes would leave fewer: ${writeRuns(other.runs, plan.called)}, ${count(other.ends, 'end')}, ${other.saves} fewer.`,
  );
}

/** What is taken for granted of carrying. */
export const carryAssumption = (plan: RowPlan, runs: readonly ColourRun[]): string[] =>
  runs.length < 2
    ? []
    : [
        plan.worked === 'rounds'
          ? `A colour is carried past at most ${CARRY_PAST} rounds; joined rounds all begin at the same place (common practice).`
          : `A colour is picked up again only past an even number of rows, when the work is back at its side, and at most ${CARRY_PAST} (common practice).`,
      ];
