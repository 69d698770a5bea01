/** Where every stitch of a chart stands: pieces worked in rounds, from the middle outwards, against the clock. */
import { STITCH_FACTS } from '../standards/stitches.ts';
import type { RowPlan } from '../core/rows/index.ts';
import { countToCorner, growthOf } from '../core/rows/round.ts';
import type { ChartPlan, ChartRow } from './chart-rows.ts';
import { n, outline } from './drawing.ts';
import { markShared, type ChartStitch, type Point } from './symbols.ts';

/** Corners of the outline; a circle has none. */
const cornersOf = (plan: RowPlan) => (plan.shape === 'circle' ? 0 : plan.shape === 'hexagon' ? 6 : 4);

/** A place on a round: `turn` is the share of the way round from its beginning, `radius` the distance of a corner. */
export function placeOn(corners: number, turn: number, radius: number, middle: Point): Point {
  // A square stands on a side, as it will lie in the blanket.
  const from = corners === 4 ? -Math.PI * 0.75 : -Math.PI / 2;
  const spoke = (share: number): Point => [
    middle[0] + radius * Math.cos(from - 2 * Math.PI * share),
    middle[1] + radius * Math.sin(from - 2 * Math.PI * share),
  ];
  if (corners === 0) return spoke(turn);
  const side = Math.floor(turn * corners);
  const rest = turn * corners - side;
  const [a, b] = [spoke(side / corners), spoke((side + 1) / corners)];
  return [a[0] + (b[0] - a[0]) * rest, a[1] + (b[1] - a[1]) * rest];
}

/** The rounds, each `high` pixels from the one before, around a ring of `ring` pixels. */
export function chartRounds(
  plan: RowPlan,
  high: number,
  ring: number,
  side: number,
  symbols: boolean,
): ChartPlan {
  const corners = cornersOf(plan);
  // Along a side of a polygon rounds lie nearer than along a corner.
  const stretch = corners === 0 ? 1 : 1 / Math.cos(Math.PI / corners);
  const radius = (round: number) => (ring + round * high) * stretch;
  const reach = radius(plan.rows.length);
  const halfHeight = corners === 4 ? reach * Math.SQRT1_2 : reach;
  const halfWidth = corners === 4 ? reach * Math.SQRT1_2 : corners === 6 ? reach * 0.8661 : reach;
  const middle: Point = [halfWidth + side, halfHeight + 30];
  const rows = plan.rows.map(({ row }): ChartRow => {
    const ground =
      corners === 0
        ? circle(middle, radius(row))
        : outline(
            Array.from({ length: corners }, (_, corner) =>
              placeOn(corners, corner / corners, radius(row), middle),
            ),
          );
    const place: Place = (turn, at) => placeOn(corners, ((turn % 1) + 1) % 1, radius(at), middle);
    return {
      row,
      ground,
      label: symbols
        ? between(plan, row, place, middle)
        : place(corners === 0 ? 0 : 0.5 / corners, row - 0.5),
      anchor: 'middle',
      middle: [middle[0], middle[1] + (ring + (row - 0.5) * high) * (corners === 6 ? stretch : 1)],
      stitches: symbols ? markShared(roundStitches(plan, row, place)) : [],
    };
  });
  const last = plan.rows.at(-1)?.count ?? 1;
  const around = corners === 0 ? 2 * Math.PI * reach : corners * 2 * reach * Math.sin(Math.PI / corners);
  return {
    rows,
    foundation: [],
    width: 2 * middle[0],
    height: 2 * halfHeight + 60,
    room: Math.min(high, around / last),
    across: 2 * halfWidth,
  };
}

const circle = ([x, y]: Point, r: number) =>
  `M${n(x - r)} ${n(y)}a${n(r)} ${n(r)} 0 1 0 ${n(2 * r)} 0a${n(r)} ${n(r)} 0 1 0 -${n(2 * r)} 0Z`;

/** Between two stitches that stand apart, nearest to the middle of a side: a number there hides nothing. The first round's stands in the ring. */
function between(plan: RowPlan, row: number, place: Place, middle: Point): Point {
  const turns = turnsOf(plan, row);
  const spread = 1 / (2 * turns.length);
  const gaps = turns.flatMap((one, index) => {
    const other = turns[index + 1];
    return other && other.foot - one.foot > spread / 4
      ? [{ head: (one.head + other.head) / 2, foot: (one.foot + other.foot) / 2 }]
      : [];
  });
  const aim = plan.shape === 'circle' ? 0 : 0.5 / cornersOf(plan);
  const best = gaps.sort((a, b) => Math.abs(a.head - aim) - Math.abs(b.head - aim))[0];
  if (!best || row === 1) return middle;
  const [head, foot] = [place(best.head, row), place(best.foot, row - 1)];
  return [(head[0] + foot[0]) / 2, (head[1] + foot[1]) / 2];
}

type Place = (turn: number, round: number) => Point;

/**
 * For every stitch of a round, in the order in which they are worked: its place on the round, and the place on the round before where it
 * is worked. A corner stands at 0; what is worked before it has a place below 0.
 */
export function turnsOf(plan: RowPlan, row: number): Turn[] {
  return plan.shape === 'clusters' ? clusterTurns(row) : growingTurns(plan, row);
}

interface Turn {
  readonly head: number;
  readonly foot: number;
}

function growingTurns(plan: RowPlan, row: number): Turn[] {
  const { sections, grows, before } = growthOf(plan);
  const each = (plan.rows[row - 1]?.count ?? 0) / sections;
  const fewer = (plan.rows[row - 2]?.count ?? 0) / sections;
  // Half a stitch off the middle of the corner below where that has no middle stitch.
  const cornerOn = row <= 2 ? 0 : countToCorner(plan, row) - countToCorner(plan, row - 1) - grows / 2;
  const inSection = (section: number, index: number): Turn => {
    if (row === 1) {
      const head = (section + (index - before) / each) / sections;
      return { head, foot: head };
    }
    // The first grows + 1 stitches all stand on the corner stitch, the others on one stitch each.
    const on = cornerOn + Math.max(0, index - grows);
    return {
      head: (section + (index - grows / 2) / each) / sections,
      foot: (section + on / fewer) / sections,
    };
  };
  const all = Array.from({ length: sections * each }, (_, at) => inSection(Math.floor(at / each), at % each));
  // The round begins, as its words do, so many stitches before the corner; the first round does so of itself.
  return row === 1 ? all : beginEarlier(all, countToCorner(plan, row));
}

/** The last so many of a round before its first. */
const beginEarlier = (all: readonly Turn[], many: number): Turn[] => [
  ...all.slice(all.length - many).map(({ head, foot }) => ({ head: head - 1, foot: foot - 1 })),
  ...all.slice(0, all.length - many),
];

/**
 * Three stitches a cluster, each cluster in a space of the round before, two clusters in a corner space. As its words say, a round
 * begins in a corner space with the cluster before its chains.
 */
function clusterTurns(row: number): Turn[] {
  return Array.from({ length: 4 * row }, (_, nth) => {
    const cluster = nth - 1;
    const side = Math.floor(cluster / row);
    const index = cluster - side * row;
    const middle = (side + (index + 0.5) / row) / 4;
    const foot = row === 1 ? middle : (side + index / (row - 1)) / 4;
    return [-1, 0, 1].map((step) => ({ head: middle + (step * 0.27) / (4 * row), foot }));
  }).flat();
}

function roundStitches(plan: RowPlan, row: number, place: Place): ChartStitch[] {
  const { turningChain, chainCounts } = STITCH_FACTS[plan.stitch];
  const turns = turnsOf(plan, row);
  const stitches = turns.map(({ head, foot }, index): ChartStitch => {
    const points = { feet: [place(foot, row - 1)], head: place(head, row) };
    return chainCounts && index === 0
      ? { row, kind: 'chain', ...points, chains: turningChain }
      : { row, kind: plan.stitch, ...points };
  });
  const first = turns[0] ?? { head: 0, foot: 0 };
  const last = turns.at(-1) ?? first;
  // The join lies between the last stitch and the first; beside the corner's own chains in the first round of clusters.
  const beside =
    plan.shape === 'clusters' ? first.head - 0.5 / turns.length : (first.head + last.head - 1) / 2;
  const below = plan.shape === 'clusters' ? beside : (first.foot + last.foot - 1) / 2;
  const seam = (share: number): Point => {
    const [foot, head] = [place(below, row - 1), place(beside, row)];
    return [foot[0] + (head[0] - foot[0]) * share, foot[1] + (head[1] - foot[1]) * share];
  };
  if (!chainCounts)
    stitches.push({ row, kind: 'chain', feet: [seam(0.3)], head: seam(0.75), chains: turningChain });
  stitches.push({ row, kind: 'join', feet: [seam(0.9)], head: seam(0.9) });
  if (plan.shape === 'clusters') {
    for (let corner = 0; corner < 4; corner++) {
      const reach = 0.18 / (4 * row);
      stitches.push({
        row,
        kind: 'chain',
        feet: [place(corner / 4 - reach, row - 0.12)],
        head: place(corner / 4 + reach, row - 0.12),
        chains: 2,
      });
    }
  }
  return stitches;
}
