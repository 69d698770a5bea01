/**
 * Chart symbols of the trade: chain an open oval, slip stitch a filled dot, then a plus, a T, a T with one slash, a T with
 * two (published: dailyhandmade.com/?p=2036).
 */
import type { Stitch } from '../standards/stitches.ts';
import { n } from './drawing.ts';

export type Point = readonly [x: number, y: number];

/** One stitch of a chart: where it is worked into (more than one place for stitches worked together) and where its top lies. */
export interface ChartStitch {
  readonly row: number;
  /** `chain`: the chain at the start of a row that stands as its first stitch; `join`: a slip stitch. */
  readonly kind: Stitch | 'chain' | 'join';
  readonly feet: readonly Point[];
  readonly head: Point;
  /** How many chains a chain has. */
  readonly chains?: number;
  /** Whether another stitch stands on the same place: a stem shows it. */
  readonly shared?: boolean;
}

const SLASHES: Readonly<Record<Stitch, number>> = { sc: 0, hdc: 0, dc: 1, tr: 2 };

const along = ([x0, y0]: Point, [x1, y1]: Point, share: number): Point => [
  x0 + (x1 - x0) * share,
  y0 + (y1 - y0) * share,
];

/** A line through `middle`, `half` long to each side, square to the way from one point to another, tilted by `tilt`. */
function across(middle: Point, from: Point, to: Point, half: number, tilt = 0): string {
  const angle = Math.atan2(to[1] - from[1], to[0] - from[0]) + Math.PI / 2 + tilt;
  const [dx, dy] = [half * Math.cos(angle), half * Math.sin(angle)];
  return `M${n(middle[0] - dx)} ${n(middle[1] - dy)}L${n(middle[0] + dx)} ${n(middle[1] + dy)}`;
}

/** An open oval at a place, lying along the way from one point to another. */
export function chainOval(at: Point, from: Point, to: Point, long: number, ink: string): string {
  const angle = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  return (
    `<ellipse cx="${n(at[0])}" cy="${n(at[1])}" rx="${n(long / 2)}" ry="${n(long / 3.6)}" ` +
    `transform="rotate(${n(angle)} ${n(at[0])} ${n(at[1])})" fill="none" stroke="${ink}" stroke-width="${n(Math.max(1.4, long / 9))}"/>`
  );
}

/** The symbol of one stitch. `room` is the width there is for a stitch, in pixels. */
export function symbol(stitch: ChartStitch, room: number, ink: string): string {
  const { kind, feet, head } = stitch;
  const middleFoot: Point = [
    feet.reduce((sum, [x]) => sum + x, 0) / feet.length,
    feet.reduce((sum, [, y]) => sum + y, 0) / feet.length,
  ];
  const line = Math.min(3, Math.max(1.6, room / 11));
  const stroke = `fill="none" stroke="${ink}" stroke-width="${n(line)}" stroke-linecap="round"`;
  const mark = (path: string) => `<path class="st-${kind}" d="${path}" ${stroke}/>`;
  if (kind === 'join') {
    const r = n(Math.max(2.5, room * 0.13));
    return `<circle class="st-join" cx="${n(head[0])}" cy="${n(head[1])}" r="${r}" fill="${ink}"/>`;
  }
  if (kind === 'chain') {
    const chains = stitch.chains ?? 1;
    const length = Math.hypot(head[0] - middleFoot[0], head[1] - middleFoot[1]);
    const long = Math.min(room * 0.75, (length * 0.96) / chains);
    const ovals = Array.from({ length: chains }, (_, index) =>
      chainOval(along(middleFoot, head, (index + 0.5) / chains), middleFoot, head, long, ink),
    );
    return `<g class="st-chain">${ovals.join('')}</g>`;
  }
  if (kind === 'sc') {
    const middle = along(middleFoot, head, 0.55);
    const half = Math.min(room * 0.3, Math.hypot(head[0] - middleFoot[0], head[1] - middleFoot[1]) * 0.34);
    const beyond = along(middle, head, 1);
    // A cross that leans would look like a stitch of another kind: a leg leads to where it stands.
    const legs =
      feet.length < 2 && stitch.shared !== true
        ? ''
        : feet
            .map((foot) => `M${pair(along(foot, middle, feet.length < 2 ? 0.06 : 0.25))}L${pair(middle)}`)
            .join('');
    return mark(
      `${across(middle, middleFoot, beyond, half)}${across(middle, middleFoot, beyond, half, Math.PI / 2)}${legs}`,
    );
  }
  const top = along(middleFoot, head, 0.93);
  const stems = feet.map((foot) => `M${pair(along(foot, top, 0.12))}L${pair(top)}`).join('');
  const slashes = feet.map((foot) =>
    Array.from({ length: SLASHES[kind] }, (_, index) =>
      across(along(foot, top, 0.62 - 0.17 * index), foot, top, room * 0.17, -0.5),
    ).join(''),
  );
  return mark(`${stems}${across(top, middleFoot, head, room * 0.27)}${slashes.join('')}`);
}

const pair = ([x, y]: Point) => `${n(x)} ${n(y)}`;

/** Stitches of a row, those marked that stand on one place with another. */
export function markShared(stitches: readonly ChartStitch[]): ChartStitch[] {
  const standing = new Map<string, number>();
  for (const { feet } of stitches)
    if (feet.length === 1 && feet[0]) standing.set(pair(feet[0]), (standing.get(pair(feet[0])) ?? 0) + 1);
  return stitches.map((stitch) => {
    const [foot] = stitch.feet;
    const shared = stitch.feet.length === 1 && foot && (standing.get(pair(foot)) ?? 0) > 1;
    return shared ? { ...stitch, shared: true } : stitch;
  });
}
