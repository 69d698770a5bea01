/** Where every stitch of a chart stands: pieces worked in rounds, from the middle outwards, against the clock. */
import { STITCH_FACTS } from '../standards/stitches.ts';
import type { RowPlan } from '../core/rows/index.ts';
import type { ChartPlan, ChartRow } from './chart-rows.ts';
import { n, outline } from './drawing.ts';
import type { ChartStitch, Point } from './symbols.ts';

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
  const rows = plan.rows.map(({ row, count }): ChartRow => {
    const ground =
      corners === 0
        ? circle(middle, radius(row))
        : outline(
            Array.from({ length: corners }, (_, corner) =>
              placeOn(corners, corner / corners, radius(row), middle),
            ),
          );
    const start = placeOn(corners, corners === 0 ? 0 : 0.5 / corners, radius(row - 0.5), middle);
    return {
      row,
      ground,
      label: start,
      anchor: 'middle',
      middle: [middle[0], middle[1] + (ring + (row - 0.5) * high) * (corners === 6 ? stretch : 1)],
      stitches: symbols
        ? roundStitches(plan, row, count, (turn, at) =>
            placeOn(corners, ((turn % 1) + 1) % 1, radius(at), middle),
          )
        : [],
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
  };
}

const circle = ([x, y]: Point, r: number) =>
  `M${n(x - r)} ${n(y)}a${n(r)} ${n(r)} 0 1 0 ${n(2 * r)} 0a${n(r)} ${n(r)} 0 1 0 -${n(2 * r)} 0Z`;

type Place = (turn: number, round: number) => Point;

/** For every stitch of a round: its place on the round, and the place on the round before where it is worked. */
export function turnsOf(plan: RowPlan, row: number): { head: number; foot: number }[] {
  const count = plan.rows[row - 1]?.count ?? 0;
  if (plan.shape === 'clusters') return clusterTurns(row);
  const sections = plan.shape === 'circle' ? (plan.rows[0]?.count ?? 1) : cornersOf(plan);
  const each = count / sections;
  const headOf = (section: number, index: number) => (section + index / each) / sections;
  const fewer = (plan.rows[row - 2]?.count ?? 0) / sections;
  const grows = each - fewer;
  const out: { head: number; foot: number }[] = [];
  for (let section = 0; section < sections; section++) {
    for (let index = 0; index < each; index++) {
      if (row === 1) {
        const head = headOf(section, index - (each - 1) / 2);
        out.push({ head, foot: head });
        continue;
      }
      // The first grows + 1 stitches all stand on the corner stitch, the others on one stitch each.
      const on = Math.max(0, index - grows);
      const cornerOn = row === 2 ? (fewer - 1) / 2 : grows / 2;
      const first = row === 2 ? -(fewer - 1) / 2 : -grows / 2;
      const foot = (section + (first + Math.floor(cornerOn) + on) / fewer) / sections;
      out.push({ head: headOf(section, index - grows / 2), foot });
    }
  }
  return out;
}

/** Three stitches a cluster, each cluster in a space of the round before, two clusters in a corner space. */
function clusterTurns(row: number): { head: number; foot: number }[] {
  return Array.from({ length: 4 * row }, (_, cluster) => {
    const side = Math.floor(cluster / row);
    const index = cluster % row;
    const middle = (side + (index + 0.5) / row) / 4;
    const foot = row === 1 ? middle : (side + index / (row - 1)) / 4;
    return [-1, 0, 1].map((step) => ({ head: middle + (step * 0.27) / (4 * row), foot }));
  }).flat();
}

function roundStitches(plan: RowPlan, row: number, count: number, place: Place): ChartStitch[] {
  const { turningChain, chainCounts } = STITCH_FACTS[plan.stitch];
  const turns = turnsOf(plan, row);
  const stitches = turns.map(({ head, foot }, index): ChartStitch => {
    const points = { feet: [place(foot, row - 1)], head: place(head, row) };
    return chainCounts && index === 0
      ? { row, kind: 'chain', ...points, chains: turningChain }
      : { row, kind: plan.stitch, ...points };
  });
  const start = turns[0] ?? { head: 0, foot: 0 };
  const beside = start.head - 0.5 / count;
  if (!chainCounts)
    stitches.push({
      row,
      kind: 'chain',
      feet: [place(beside, row - 0.7)],
      head: place(beside, row - 0.25),
      chains: 1,
    });
  stitches.push({ row, kind: 'join', feet: [place(beside, row)], head: place(beside, row - 0.1) });
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
