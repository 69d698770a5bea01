/**
 * Evening up motifs of different size, so that they meet: which to leave, which to pin out, which to give an edging (its stitch,
 * its rounds, how many stitches round the motif, the yarn in it), which not to use.
 */
import type { Stitch } from '../../standards/stitches.ts';
import { BLOCKING_MENDS, SEAMS_FORGIVE } from '../../standards/tolerances.ts';
import { defined } from '../base/defined.ts';
import { isOffBy } from '../base/percent-off.ts';
import type { Gauge } from '../base/quantity.ts';
import { sum } from '../base/sum.ts';
import { formula, type Working } from '../base/working.ts';
import { reckonStitchWidth, reckonTaller } from '../size/stitch-size.ts';
import { reckonStitchMetres } from '../yarn/stitch-yarn.ts';

export const EDGED_SIDE = formula({
  label: 'Side with the edging',
  formula: 'side + 2 * rounds * height',
  given: { side: 'cm', rounds: '', height: 'cm' },
  unit: 'cm',
  source: 'derived: every round adds its height at both ends',
});
export const EDGING_STITCHES = formula({
  label: 'Stitches of the edging round one motif',
  formula: '4 * rounds * (round(side / stitch_width) + corner + (rounds - 1) * (corner - 1) / 2)',
  given: { rounds: '', side: 'cm', stitch_width: 'cm', corner: '' },
  unit: '',
  source:
    'derived: as many as lie flat along each side, and so many in each corner; published: k in a corner makes k − 1 more a side in every round (crochetspot.com, "How to crochet a square")',
});
export const EDGING_YARN = formula({
  label: 'Yarn in that edging',
  formula: 'stitches * stitch_yarn',
  given: { stitches: '', stitch_yarn: 'm' },
  unit: 'm',
  source: 'derived: stitches times the yarn in one',
});

/** Stitches in each corner of an edging. */
const CORNER = 3;
const EDGING_STITCH: readonly Stitch[] = ['sc', 'hdc', 'dc', 'tr'];
const MOST_ROUNDS = 2;

export interface Edging {
  readonly stitch: Stitch;
  readonly rounds: number;
  /** Stitches round one motif, in all rounds, and metres in them. */
  readonly stitches: number;
  readonly yarn: number;
  /** The side with it, cm. */
  readonly side: number;
}

/** What becomes of one motif. */
export interface Evened {
  /** Its place in the list that was handed in. */
  readonly index: number;
  /** cm, as it was measured. */
  readonly side: number;
  readonly edging?: Edging;
  /** Whether it is to be pinned out to the side that all meet in. */
  readonly pin: boolean;
  /** True where nothing brings it to that side. */
  readonly leave: boolean;
}

export interface Evening {
  /** The side in which they meet, cm. */
  readonly side: number;
  readonly motifs: readonly Evened[];
  /** Metres in all edgings. */
  readonly yarn: number;
  /** How many are left as they are, only pinned out, edged, and left out. */
  readonly counts: {
    readonly asTheyAre: number;
    readonly pinned: number;
    readonly edged: number;
    readonly leftOut: number;
  };
}

/** What the edge is worked with: its gauge where it is known, hook in mm, wraps per inch where it is not. */
interface Edge {
  readonly gauge?: Pick<Gauge, 'stitches' | 'over'> | undefined;
  readonly hook?: number | undefined;
  readonly wpi: number;
}

/** A stitch that an edging may be of: cm that a round of it is high, and metres in one. */
interface EdgingStitch {
  readonly stitch: Stitch;
  readonly height: number;
  readonly metres: number;
}

interface Option {
  readonly of: EdgingStitch;
  readonly rounds: number;
  /** cm that it adds to a side, and metres that it takes for every stitch of the edge. */
  readonly adds: number;
  readonly metres: number;
}

/** The side (cm) that a motif has once that is done to it. */
export const sideOnceEvened = ({ side, edging, pin }: Evened, meant: number): number =>
  pin ? meant : (edging?.side ?? side);

/** Reckoned from side (cm) to the one that is meant: near enough, pinned out, or neither. */
const meets = (side: number, meant: number): 'as it is' | 'pinned' | undefined =>
  !isOffBy(side, meant, SEAMS_FORGIVE)
    ? 'as it is'
    : side < meant && !isOffBy(side, meant, BLOCKING_MENDS)
      ? 'pinned'
      : undefined;

interface Plan {
  readonly option?: Option;
  readonly pin: boolean;
  readonly leave: boolean;
}

/** What brings one side to the one that is meant: nothing, pins, the edging that needs no pins, any edging; the least yarn first. */
function planFor(side: number, meant: number, options: readonly Option[]): Plan {
  const bare = meets(side, meant);
  if (bare !== undefined) return { pin: bare === 'pinned', leave: false };
  for (const how of ['as it is', 'pinned'] as const) {
    const option = options.find(({ adds }) => meets(side + adds, meant) === how);
    if (option) return { option, pin: how === 'pinned', leave: false };
  }
  return { pin: false, leave: true };
}

/**
 * Evens motifs up to `meant` cm, or, where that is not given, to the side of one of them in which most meet, of those the one
 * that takes the least yarn. Edgings are of one or two rounds of one stitch, three in each corner; hook in mm, `wpi` in wraps per
 * inch where no gauge of the edge is known.
 */
export function evenUp(
  sides: readonly number[],
  { meant, ...edge }: Edge & { meant?: number | undefined },
  working: Working,
): Evening {
  const { width, options } = reckonEdgings(edge, working);
  const plansFor = (target: number) => sides.map((side) => planFor(side, target, options));
  const side = meant ?? findSide(sides, plansFor);
  const motifs = plansFor(side).map(({ option, pin, leave }, index): Evened => {
    const own = sides[index] ?? 0;
    const edging = option && reckonEdging(option, width, own, working, `motif ${index + 1}`);
    return defined({ index, side: own, pin, leave, edging });
  });
  const many = (is: (one: Evened) => boolean) => motifs.filter(is).length;
  return {
    side,
    motifs,
    yarn: sum(motifs.map(({ edging }) => edging?.yarn ?? 0)),
    counts: {
      asTheyAre: many(({ edging, pin, leave }) => !edging && !pin && !leave),
      pinned: many(({ edging, pin }) => !edging && pin),
      edged: many(({ edging }) => edging !== undefined),
      leftOut: many(({ leave }) => leave),
    },
  };
}

/** The width of a stitch of the edge (cm), and every edging that may be worked there, the one with the least yarn first. */
function reckonEdgings({ gauge, hook, wpi }: Edge, working: Working): { width: number; options: Option[] } {
  // Its rows are those of the motif's own stitch.
  const edge = gauge && { stitches: gauge.stitches, over: gauge.over };
  const width = reckonStitchWidth({ stitch: 'sc', gauge: edge, hook }, wpi, working);
  const stitches = EDGING_STITCH.map((stitch) => ({
    stitch,
    height: reckonTaller(stitch, width, working),
    metres: reckonStitchMetres(working, { stitch, gauge: edge, hook, wpi }).stitch,
  }));
  const options = stitches.flatMap((of) =>
    Array.from({ length: MOST_ROUNDS }, (_, index): Option => {
      const rounds = index + 1;
      return { of, rounds, adds: 2 * rounds * of.height, metres: rounds * of.metres };
    }),
  );
  return { width, options: options.sort((a, b) => a.metres - b.metres) };
}

/** The edging of one motif with a side in cm, its stitches so wide (cm). The motif is named in the working. */
function reckonEdging(
  { of: { stitch, height, metres }, rounds }: Option,
  width: number,
  side: number,
  working: Working,
  motif: string,
): Edging {
  const label = ({ label: says }: { readonly label: string }) => `${says}, ${motif}`;
  const edged = working.do(EDGED_SIDE, { side, rounds, height }, label(EDGED_SIDE));
  const stitches = working.do(
    EDGING_STITCHES,
    { rounds, side, stitch_width: width, corner: CORNER },
    label(EDGING_STITCHES),
  );
  const yarn = working.do(EDGING_YARN, { stitches, stitch_yarn: metres }, label(EDGING_YARN));
  return { stitch, rounds, stitches, yarn, side: edged };
}

/** The side of one of them in which most meet; of those the one that takes the least edging, then the least pinning. */
function findSide(sides: readonly number[], plansFor: (side: number) => readonly Plan[]): number {
  const [first = 0, ...others] = [...new Set(sides)].sort((a, b) => a - b);
  const cost = (side: number) => {
    const plans = plansFor(side);
    return [
      plans.filter(({ leave }) => leave).length,
      sum(plans.map(({ option }, index) => (option?.metres ?? 0) * (sides[index] ?? 0))),
      plans.filter(({ pin }) => pin).length,
    ] as const;
  };
  const isLess = (one: ReturnType<typeof cost>, other: ReturnType<typeof cost>) => {
    const at = one.findIndex((value, index) => value !== other[index]);
    return at >= 0 && (one[at] ?? 0) < (other[at] ?? 0);
  };
  let best = { side: first, cost: cost(first) };
  for (const side of others) {
    const found = cost(side);
    if (isLess(found, best.cost)) best = { side, cost: found };
  }
  return best.side;
}
