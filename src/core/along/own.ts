/**
 * A maker's own blanket, made from the teacher's: her gauge gives her motifs another size, her wish another count, her yarn other
 * colours and balls. Everything is reckoned by what reckons a blanket of one's own.
 */
import { defined } from '../base/defined.ts';
import { sameName } from '../base/nearest-name.ts';
import { Problem } from '../base/problem.ts';
import type { Gauge } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';
import { countKinds, lay, readLaidBy, type Cell } from '../blanket/layout.ts';
import { reckonMaterials, type Extent, type Materials } from '../blanket/materials.ts';
import { piecesOf, type BlanketSpec, type Pieces } from '../blanket/pieces.ts';
import { scaleBlanket } from '../blanket/scale.ts';
import { apportion } from '../blanket/apportion.ts';
import { MOST_ROWS } from '../base/limits.ts';
import { ROW_HEIGHT, STITCH_WIDTH } from '../size/blocking.ts';
import { findSizeForSide } from '../size/size-for-side.ts';
import { joinRuns, type ColourRun } from '../stripes/colour-runs.ts';
import { planOf, yarnOf, type MotifSpec } from '../yarn/motif.ts';
import { reckonSide } from '../yarn/motif-size.ts';
import { reckonSaidPace } from '../yarn/pace.ts';
import type { AlongPlan, Way } from './events.ts';
import { countStitchesOf } from './propose.ts';

export const NEAREST_NUMBER = formula({
  label: 'Nearest whole number',
  formula: 'max(1, round(wished / each))',
  given: { wished: 'cm', each: 'cm' },
  unit: '',
  source: 'derived: as many rounds, stitches or rows as come nearest to what is wished',
});
export const OWN_GAUGE = formula({
  label: 'Her gauge in this stitch',
  formula: 'pattern * hers / first',
  given: { pattern: '', hers: '', first: '' },
  unit: '',
  source: 'derived: her other stitches are taken to differ as those of the first kind do',
});

export interface OwnKind {
  readonly motif: MotifSpec;
  /** Side in cm: hers, and the teacher's. */
  readonly side: number;
  readonly patternSide: number;
  readonly pattern: MotifSpec;
}

export interface Own {
  readonly spec: BlanketSpec;
  readonly kinds: readonly OwnKind[];
  readonly extent: Extent;
  readonly pieces: Pieces;
  readonly materials: Materials;
  /** Off the size that she wishes, per cent; unset where she wishes none. */
  readonly offPercent?: number;
  readonly perMinute?: number;
  /** What could not be made her own, and why. */
  readonly notes: readonly ('no-gauge' | 'slanting' | 'no-ball' | 'no-pace')[];
  readonly working: Working;
}

/** The way of somebody who makes it just as the teacher does. */
export const NO_WAY: Way = { colours: [], named: false };

/** Stitches a minute of a maker of this way whom one of her own motifs takes so many minutes. */
export function ownPace(plan: AlongPlan, way: Way, minutes: number): number {
  const [first] = plan.kinds;
  if (first === undefined) return reckonSaidPace(0, minutes, new Working());
  const firstSide = reckonSide(first, new Working()).side;
  const hers = ownSize(first, { way, first, firstSide, patternSide: firstSide }, new Working());
  return reckonSaidPace(countStitchesOf(hers), minutes, new Working());
}

const isOwnYarn = (way: Way) =>
  way.gauge !== undefined || way.hook !== undefined || way.ball !== undefined || way.side !== undefined;

/**
 * The blanket that a maker of this way makes of the teacher's; of no way at all, the teacher's own.
 *
 * Throws Problem: motif-size-unknown, motif-not-square, not-for-a-grid, gauge-rows-missing, beyond-largest, blanket-too-large,
 * smaller-than-a-motif, border-too-wide.
 */
export function reckonOwn(plan: AlongPlan, way: Way): Own {
  if (way !== NO_WAY) return makeOwn(plan, way);
  // The teacher's own is asked for with every part, and nobody alters it.
  let own = teachers.get(plan);
  if (own === undefined) {
    own = makeOwn(plan, way);
    teachers.set(plan, own);
  }
  return own;
}

const teachers = new WeakMap<AlongPlan, Own>();

function makeOwn(plan: AlongPlan, way: Way): Own {
  const working = new Working();
  const [first] = plan.kinds;
  if (!first) throw new Error('a blanket has at least one kind');
  if (way.gauge !== undefined && way.gauge.rows === undefined)
    throw new Problem('gauge-rows-missing', 'The gauge has no rows, so the size of a motif is not known.', {
      option: 'gauge',
      hint: 'Count the rows as well and give stitches × rows, like 13x10.',
    });
  const firstSide = reckonSide(first, new Working()).side;
  const hers = coloursOf(way);
  const kinds = plan.kinds.map((pattern): OwnKind => {
    const patternSide = reckonSide(pattern, new Working()).side;
    const sized = ownSize(pattern, { way, first, firstSide, patternSide }, working);
    const motif = recoloured(sized, hers);
    return { pattern, motif, patternSide, side: reckonSide(motif, new Working()).side };
  });
  const spec = ownSpec(plan, way, kinds, hers);
  const pieces = piecesOf(spec, working);
  const asIs: Extent = { columns: plan.columns, rows: plan.rows, counts: plan.counts };
  const scaled =
    way.width === undefined && way.height === undefined
      ? undefined
      : scaleBlanket(
          pieces,
          {
            columns: plan.columns,
            rows: plan.rows,
            kinds: plan.kinds.length,
            laid: readLaidBy(plan.setting),
            shares: plan.counts,
          },
          { width: way.width, height: way.height },
        );
  if (scaled) working.steps.push(...scaled.working.steps);
  const extent = scaled?.after ?? asIs;
  return defined({
    spec,
    kinds,
    extent: { columns: extent.columns, rows: extent.rows, counts: extent.counts },
    pieces,
    materials: scaled?.after ?? reckonMaterials(pieces, extent, working),
    offPercent: scaled?.offPercent,
    perMinute: way.perMinute,
    notes: [
      ...(way.gauge === undefined && way.side === undefined ? (['no-gauge'] as const) : []),
      ...(way.gauge !== undefined && plan.kinds.some(({ shape }) => shape === 'blocks')
        ? (['slanting'] as const)
        : []),
      ...(way.ball === undefined ? (['no-ball'] as const) : []),
      ...(way.perMinute === undefined ? (['no-pace'] as const) : []),
    ],
    working,
  });
}

/** Her colour for each of the pattern's. However she spells one, it is the one that she spelt first: `Teal` and `teal` are one yarn. */
function coloursOf({ colours }: Way): (colour: string) => string {
  const spelt = new Map<string, string>();
  const known = new Map<string, string>();
  return (colour) => {
    let own = known.get(colour);
    if (own === undefined) {
      const said = colours.find(({ of }) => sameName(of, colour))?.hers ?? colour;
      own = spelt.get(said.toLowerCase()) ?? said;
      spelt.set(said.toLowerCase(), own);
      known.set(colour, own);
    }
    return own;
  };
}

interface Sizing {
  readonly way: Way;
  readonly first: MotifSpec;
  readonly firstSide: number;
  readonly patternSide: number;
}

/** A kind at her gauge: its size such that its side comes nearest to the teacher's. */
function ownSize(pattern: MotifSpec, sizing: Sizing, working: Working): MotifSpec {
  const { way, firstSide, patternSide } = sizing;
  if (!isOwnYarn(way)) return pattern;
  const { name, shape, size, otherSize, stitch, runs } = pattern;
  // What the teacher weighed and measured is of her yarn.
  const base: MotifSpec = defined({
    name,
    shape,
    size,
    otherSize,
    stitch,
    runs,
    hook: way.hook ?? pattern.hook,
  });
  if (way.side !== undefined) {
    // What she measured is what she has, and it tells of her other kinds as well.
    const side =
      patternSide === firstSide
        ? way.side
        : working.do(
            OWN_GAUGE,
            { pattern: patternSide, hers: way.side, first: firstSide },
            `Side of ${pattern.name}`,
          );
    const gauge = ownGauge(pattern, sizing, working);
    return { ...base, side, ...defined({ gauge: gauge ?? pattern.gauge }) };
  }
  const gauge = ownGauge(pattern, sizing, working);
  if (gauge === undefined || pattern.shape === 'blocks')
    return { ...base, side: patternSide, ...defined({ gauge }) };
  return { ...base, gauge, ...sizeAt(base, gauge, patternSide, working) };
}

/** Her gauge in the stitch of a kind; undefined where she gave none. */
function ownGauge(pattern: MotifSpec, { way, first }: Sizing, working: Working): Gauge | undefined {
  const { gauge } = way;
  if (gauge === undefined) return undefined;
  const { gauge: theirs } = pattern;
  const { gauge: base } = first;
  const alike =
    theirs === undefined ||
    base === undefined ||
    (theirs.stitches * base.over === base.stitches * theirs.over &&
      (theirs.rows ?? 0) * base.over === (base.rows ?? 0) * theirs.over);
  if (alike) return gauge;
  const part = (of: number | undefined, own: number | undefined, to: number | undefined, what: string) =>
    of === undefined || own === undefined || to === undefined
      ? undefined
      : working.do(
          OWN_GAUGE,
          { pattern: of / theirs.over, hers: own / gauge.over, first: to / base.over },
          `${what} a centimetre in ${pattern.name}`,
        );
  const stitches = part(theirs.stitches, gauge.stitches, base.stitches, 'Stitches') ?? gauge.stitches;
  return defined({ stitches, rows: part(theirs.rows, gauge.rows, base.rows, 'Rows'), over: 1 });
}

/** The size at a gauge whose side is nearest to `side` (cm). The stripes keep their shares of the rows. */
function sizeAt(
  motif: MotifSpec,
  gauge: Gauge,
  side: number,
  working: Working,
): Partial<Pick<MotifSpec, 'size' | 'otherSize' | 'runs'>> {
  const sized = (): Pick<MotifSpec, 'size' | 'otherSize'> => {
    if (motif.shape === 'diagonal') {
      const found = findSizeForSide({ gauge, side });
      working.steps.push(...found.working.steps);
      return { size: found.size };
    }
    const most = (n: number) => Math.min(MOST_ROWS, n);
    if (motif.shape === 'flat') {
      const width = working.do(STITCH_WIDTH, { over: gauge.over, stitches: gauge.stitches });
      const height = working.do(ROW_HEIGHT, { over: gauge.over, rows: gauge.rows ?? gauge.stitches });
      return {
        size: most(working.do(NEAREST_NUMBER, { wished: side, each: width }, `Stitches of ${motif.name}`)),
        otherSize: most(working.do(NEAREST_NUMBER, { wished: side, each: height }, `Rows of ${motif.name}`)),
      };
    }
    const { side: one } = reckonSide({ ...motif, gauge, size: 1 }, new Working());
    return { size: most(working.do(NEAREST_NUMBER, { wished: side, each: one }, `Rounds of ${motif.name}`)) };
  };
  const size = sized();
  const rows = planOf({ ...motif, ...size }).rows.length;
  return { ...size, runs: stretched(motif.runs, rows) };
}

/** Stripes over another number of rows, in the same shares. */
function stretched(runs: readonly ColourRun[], rows: number): ColourRun[] {
  const all = runs.reduce((sum, run) => sum + run.rows, 0);
  if (runs.length === 0 || all === rows) return [...runs];
  const { quotas } = apportion(
    rows,
    runs.map((run) => run.rows),
  );
  return runs.flatMap(({ colour }, index) => {
    const many = quotas[index] ?? 0;
    return many > 0 ? [{ colour, rows: many }] : [];
  });
}

function recoloured(motif: MotifSpec, hers: (colour: string) => string): MotifSpec {
  const rows = planOf(motif).rows.length;
  const runs = motif.runs.length > 0 ? motif.runs : [{ colour: motif.name, rows }];
  const own = runs.map((run) => ({ ...run, colour: hers(run.colour) }));
  const same = own.every(({ colour }, index) => colour === runs[index]?.colour);
  return same ? motif : { ...motif, runs: joinRuns(own) };
}

/** Her blanket's kinds, colours and balls; a ball that she gave is that of all her colours. */
function ownSpec(
  plan: AlongPlan,
  way: Way,
  kinds: readonly OwnKind[],
  hers: (colour: string) => string,
): BlanketSpec {
  const colourOf = (colour: string | undefined) => (colour === undefined ? {} : { colour: hers(colour) });
  const met = new Map<string, { colour: string; ball?: NonNullable<Way['ball']> }>();
  const note = (colour: string) => {
    const own = hers(colour);
    const ball = way.ball ?? yarnOf(plan.yarns, colour)?.ball;
    if (!met.has(own)) met.set(own, { colour: own, ...defined({ ball }) });
  };
  for (const { pattern } of kinds) {
    if (pattern.runs.length === 0) note(pattern.name);
    for (const { colour } of pattern.runs) note(colour);
  }
  for (const { colour } of plan.yarns) note(colour);
  return {
    kinds: kinds.map(({ motif }) => motif),
    joining: { method: plan.joining.method, ...colourOf(plan.joining.colour) },
    border: {
      corner: plan.border.corner,
      rounds: plan.border.rounds.map(({ stitch, colour }) => ({ stitch, ...colourOf(colour) })),
    },
    yarns: [...met.values()],
    reserve: plan.reserve,
  };
}

/** Where her motifs lie: as the teacher's blanket is laid, over as many places as hers has. */
export function layOwn(plan: AlongPlan, { extent: { columns, rows, counts } }: Own): Cell[] {
  const laying = { columns, rows, kinds: plan.kinds.length, laid: readLaidBy(plan.setting), shares: counts };
  // A layout that was changed by hand holds other counts than its arrangement gives: they are what matters.
  const asLaid = countKinds(laying).every((many, kind) => many === counts[kind]);
  return lay(asLaid ? laying : { ...laying, laid: { ...laying.laid, arrangement: 'typed' } });
}

/** Minutes that one of a kind takes her, where she said how fast she is. */
export const minutesOf = ({ perMinute }: Own, kind: MotifSpec): number | undefined =>
  perMinute === undefined ? undefined : Math.round(countStitchesOf(kind) / perMinute);

/** The teacher's colours, in the order in which they are told. */
export const coloursOfPlan = (plan: AlongPlan): readonly string[] => piecesOf(plan, new Working()).colours;
