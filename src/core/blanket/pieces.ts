/** The pieces of a blanket, whatever its extent: its motifs' yarn, its seam, the rounds of its border. */
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { defined, keepDefined } from '../base/defined.ts';
import { firstOfEach } from '../base/nearest-name.ts';
import { Problem } from '../base/problem.ts';
import type { Ball } from '../base/quantity.ts';
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';
import { reckonSeamRatio, type SeamMethod } from '../edges/seams.ts';
import { runsOf, yarnOf, type MotifSpec, type Yarn } from '../yarn/motif.ts';
import { findUneven, type Sided, type Uneven } from '../size/easing.ts';
import { reckonRowHeight, reckonStitchWidth, reckonTaller } from '../size/stitch-size.ts';
import { findPinnedSide } from '../yarn/measured-motif.ts';
import { reckonSide, type Side } from '../yarn/motif-size.ts';
import {
  findTwin,
  readWeighedStitches,
  reckonMotifYarn,
  type MotifYarn,
  type WeighedStitch,
} from '../yarn/motif-yarn.ts';
import { reckonOtherStitch, reckonStitchMetres } from '../yarn/stitch-yarn.ts';
import { findUsualHook, wpiOf } from '../yarn/thickness.ts';

/** A blanket without its layout: what its pieces are, and how it is put together. */
export interface BlanketSpec {
  readonly kinds: readonly MotifSpec[];
  readonly joining: { readonly method: SeamMethod; readonly colour?: string };
  readonly border: {
    readonly rounds: readonly { readonly stitch: Stitch; readonly colour?: string }[];
    readonly corner: number;
  };
  readonly yarns: readonly Yarn[];
  /** Per cent. */
  readonly reserve: number;
}

export const HEIGHT_OF_ROUND = formula({
  label: 'Height of a round of the border',
  formula: 'row_height * height / motif_height',
  given: { row_height: 'cm', height: '', motif_height: '' },
  unit: 'cm',
  source:
    'published proportions of row ends: 1, 2 and 3 ⟦sc⟧ per ⟦sc⟧, ⟦dc⟧ and ⟦tr⟧ row; ⟦hdc⟧ from memory, 1.5',
});

export interface BorderRoundYarn {
  readonly stitch: Stitch;
  readonly colour: string;
  /** Metres in a stitch, and whether a weighed motif tells them. */
  readonly perStitch: number;
  readonly weighed: boolean;
  /** In cm. */
  readonly height: number;
}

/** Everything that does not depend on how many motifs there are. */
export interface Pieces {
  readonly motifs: readonly MotifYarn[];
  /** Side of a motif in cm. */
  readonly side: number;
  readonly sideHow: 'measured' | 'reckoned';
  /** The kind whose side differs most from the first's, where it is by more than seams forgive. */
  readonly uneven?: Uneven;
  readonly seam: {
    readonly colour: string;
    readonly ratio: number;
    /** True where it is sewn in strands, which are cut; crocheted seams are worked from the ball. */
    readonly sewn?: true;
  };
  /** True where a gauge or a weighed stitch tells of seams and border. */
  readonly gauged: boolean;
  /** True where the border’s stitches are reckoned from a weighed one. */
  readonly borderWeighed: boolean;
  readonly border: {
    readonly rounds: readonly BorderRoundYarn[];
    readonly corner: number;
    /** Stitches of the border over 10 cm, as on the first kind. */
    readonly stitchWidth: number;
    /** In cm, on every side. */
    readonly width: number;
  };
  readonly yarns: readonly Yarn[];
  /** Colours in the order in which they are told. */
  readonly colours: readonly string[];
  readonly reserve: number;
  readonly assumptions: readonly string[];
}

/** What every piece is reckoned with: the blanket, its motifs' yarn, the colour of the first, the balls. */
interface Basket {
  readonly blanket: BlanketSpec;
  readonly first: MotifSpec;
  readonly motifs: readonly MotifYarn[];
  readonly seamColour: string;
  /** The first kind's first colour. */
  readonly main: string;
  readonly weighed: readonly WeighedStitch[];
  /** The ball of a colour; of one without, that of the main colour. */
  readonly ballOf: (colour: string) => Ball | undefined;
}

/**
 * The pieces of a blanket, each with its yarn; the steps are added to the working.
 *
 * Throws Problem: motif-size-unknown, motif-not-square, not-for-a-grid.
 */
export function piecesOf(blanket: BlanketSpec, working: Working): Pieces {
  const { yarns, reserve, joining } = blanket;
  const first = blanket.kinds[0];
  if (!first) throw new Error('a blanket has at least one kind');
  const weighed = readWeighedStitches(blanket.kinds, yarns, working);
  const motifs = blanket.kinds.map((motif) => reckonMotifYarn(motif, yarns, working, weighed));
  const sides = blanket.kinds.map((motif) => reckonSide(motif, working));
  const main = motifs[0]?.colours[0]?.colour ?? first.name;
  const basket: Basket = {
    blanket,
    first,
    motifs,
    main,
    seamColour: joining.colour ?? main,
    weighed,
    ballOf: (colour) => yarnOf(yarns, colour)?.ball ?? yarnOf(yarns, main)?.ball ?? first.ball,
  };
  const { seamColour, ballOf } = basket;
  const wpi = wpiOf(ballOf(seamColour));
  const ratio = reckonSeamRatio(
    joining.method,
    {
      gauge: first.gauge,
      hook: first.hook ?? findUsualHook({ wpi }).mm,
      wpi,
      weighed: takeWeighed(basket, 'sc', seamColour, working),
    },
    working,
  );
  const border = reckonBorder(basket, working);
  return defined({
    motifs,
    ...sizeOf(blanket.kinds, sides, working),
    seam: defined({
      colour: seamColour,
      ratio,
      sewn: joining.method === 'whip' ? (true as const) : undefined,
    }),
    gauged: first.gauge !== undefined || weighed.length > 0,
    borderWeighed: border.rounds.some(({ weighed: known }) => known),
    border,
    yarns,
    colours: coloursOf(motifs, seamColour, border.rounds),
    reserve,
    assumptions: assumptionsOf(basket),
  });
}

/** The side of the first kind, and the kind whose side differs most from it, where it is by more than seams forgive. */
function sizeOf(kinds: readonly MotifSpec[], sides: readonly Side[], working: Working) {
  const { side = 0, how = 'measured' } = sides[0] ?? {};
  const named = kinds.map((kind, index) => sided(kind, sides[index]?.side ?? 0));
  return { side, sideHow: how, uneven: findUneven(named, working) };
}

const sided = (kind: MotifSpec, side: number): Sided => ({
  name: kind.name,
  side,
  pinned: findPinnedSide(kind),
});

/** The same of kinds some of which may be of unknown size: those are left out. */
export function findUnevenKinds(kinds: readonly MotifSpec[]): Uneven | undefined {
  const working = new Working();
  const known = kinds.flatMap((kind) => {
    try {
      return [sided(kind, reckonSide(kind, working).side)];
    } catch (error) {
      if (error instanceof Problem) return [];
      throw error;
    }
  });
  return findUneven(known, working);
}

/** Metres in a stitch of a colour as a weighed motif of the same yarn tells them; undefined where none does. */
function takeWeighed(
  { weighed, first, ballOf }: Basket,
  stitch: Stitch,
  colour: string,
  working: Working,
): number | undefined {
  const twin = findTwin(weighed, { stitch, hook: first.hook, wpi: wpiOf(ballOf(colour)) });
  return twin && reckonOtherStitch(twin.perStitch, twin.stitch, stitch, working);
}

/**
 * The colour of every round of a border: one without a colour of its own goes on in that before it, the first in that of the
 * seams; `main` is the first kind's first colour.
 */
export function colourBorder(
  { border, joining }: Pick<BlanketSpec, 'border' | 'joining'>,
  main: string,
): string[] {
  let colour = joining.colour ?? main;
  return border.rounds.map((round) => (colour = round.colour ?? colour));
}

/** The rounds of the border, their yarn and height, on an edge of the first kind's stitches. */
function reckonBorder(basket: Basket, working: Working): Pieces['border'] {
  const { blanket, first, main, seamColour, ballOf } = basket;
  const width = reckonStitchWidth(first, wpiOf(ballOf(main)), working);
  const height = blanket.border.rounds.length === 0 ? 0 : reckonRowHeight(first, width, working);
  const edge = first.gauge && { stitches: first.gauge.stitches, over: first.gauge.over };
  const colours = colourBorder(blanket, main);
  const rounds = blanket.border.rounds.map(({ stitch }, at): BorderRoundYarn => {
    const colour = colours[at] ?? seamColour;
    const weighed = takeWeighed(basket, stitch, colour, working);
    return {
      stitch,
      colour,
      weighed: weighed !== undefined,
      perStitch:
        weighed ??
        reckonStitchMetres(working, { stitch, gauge: edge, hook: first.hook, wpi: wpiOf(ballOf(colour)) })
          .stitch,
      height: reckonRoundHeight(first, stitch, { width, height }, working),
    };
  });
  return {
    rounds,
    corner: blanket.border.corner,
    stitchWidth: width,
    width: rounds.reduce((sum, round) => sum + round.height, 0),
  };
}

/** The height in cm of a round of the border, on an edge of a motif's stitches, `width` and `height` cm each. */
const reckonRoundHeight = (
  motif: MotifSpec,
  stitch: Stitch,
  { width, height }: { readonly width: number; readonly height: number },
  working: Working,
): number =>
  motif.gauge?.rows === undefined
    ? reckonTaller(stitch, width, working)
    : working.do(HEIGHT_OF_ROUND, {
        row_height: height,
        height: STITCH_FACTS[stitch].height,
        motif_height: STITCH_FACTS[motif.stitch].height,
      });

/** How wide the border is on every side, in cm: that of the pieces, without the yarn of anything. */
export function findBorderWidth({
  kinds,
  border,
  yarns,
}: Pick<BlanketSpec, 'kinds' | 'border' | 'yarns'>): number {
  const [first] = kinds;
  if (!first || border.rounds.length === 0) return 0;
  const working = new Working();
  const main = runsOf(first)[0]?.colour ?? first.name;
  const width = reckonStitchWidth(first, wpiOf(yarnOf(yarns, main)?.ball ?? first.ball), working);
  const height = reckonRowHeight(first, width, working);
  return sum(border.rounds.map(({ stitch }) => reckonRoundHeight(first, stitch, { width, height }, working)));
}

/** Every colour once, whatever its capitals: of the motifs, of the seams, of the border. */
function coloursOf(
  motifs: readonly MotifYarn[],
  seamColour: string,
  rounds: readonly BorderRoundYarn[],
): string[] {
  const met = [
    ...motifs.flatMap((motif) => motif.colours.map(({ colour }) => colour)),
    seamColour,
    ...rounds.map(({ colour }) => colour),
  ];
  return firstOfEach(met);
}

/** What is taken for granted of the motifs, the joining and the border. */
function assumptionsOf({ blanket, motifs, seamColour }: Basket): string[] {
  const [firstRound] = blanket.border.rounds;
  return keepDefined([
    ...motifs.flatMap((motif) => motif.assumptions),
    blanket.joining.colour === undefined ? `Joined with ${seamColour}.` : undefined,
    firstRound && firstRound.colour === undefined ? `The border begins in ${seamColour}.` : undefined,
  ]);
}
