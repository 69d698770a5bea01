/**
 * A border in words: the first round over the edge of the joined motifs, motif by motif, then round on round. Every text carries tokens
 * for terms and directions, and says the count of its round at its end.
 */
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { shareEvenly } from '../rows/spacing.ts';
import { count, handed, t } from '../base/reader.ts';
import { writeInRuns, type BorderRound } from './border.ts';
import { findWholeRate } from './row-ends.ts';

export interface WrittenBorder {
  /** What holds for all rounds. */
  readonly before: readonly string[];
  /** A text for every round, from the inside out. */
  readonly rounds: readonly string[];
  readonly after: readonly string[];
}

const ORDINAL = ['', 'first', 'second', 'third', 'fourth', 'fifth'];

/** Which stitch of a corner of so many the next corner is worked into: its middle one, or of an even number the last before the middle. */
export const cornerStitch = (corner: number): number => Math.ceil(corner / 2);

function cornerPlace(corner: number): string {
  if (corner === 1) return 'the corner stitch';
  if (corner % 2 === 1) return 'the middle stitch of the corner';
  const at = cornerStitch(corner);
  return `the ${ORDINAL[at] ?? `${at}th`} of the corner’s ${corner} stitches`;
}

/** The chain that a round begins with, and the corner that it stands in. */
function openingCorner(stitch: Stitch, corner: number, place: string): string {
  const { turningChain, chainCounts } = STITCH_FACTS[stitch];
  const chain = `${t('ch')} ${turningChain}`;
  if (!chainCounts) return `${chain} (does not count), ${corner} ${t(stitch)} in ${place}`;
  const first = `${chain} (counts as the first ${t(stitch)})`;
  return corner === 1 ? `${first} in ${place}` : `${first} and ${corner - 1} more ${t(stitch)} in ${place}`;
}

/** Width, height, width, height, each but the last with the corner behind it. */
function fourSides(
  round: BorderRound,
  corner: number,
  side: (stitches: number, called: string) => string,
  place: string,
) {
  const turn = `${corner} ${t(round.stitch)} in ${place}`;
  const [across, down] = [side(round.across, 'width'), side(round.down, 'height')];
  return [across, turn, down, turn, across, turn, down].join(', ');
}

/** How an edge takes its first round, by what lies along it (published rates stand in row-ends.ts). */
function overEdges(motif: Stitch): string {
  const { stitches, rows } = findWholeRate(motif);
  return `Over row ends, go under two strands of the edge: about ${count(stitches, 'stitch', 'stitches')} for ${rows === 1 ? 'every row' : 'every two rows'} of ${t(motif)}; into the tops of stitches, one for one; over a join, as if it were one cloth.`;
}

/**
 * The rounds of a border in words. `rounds` are as `countBorderRounds` counts them, with the colour of each where it has one; the first
 * goes over the edge, shared over the motifs of each side where that is known. `motif` is the stitch whose row ends lie along the edge.
 */
export function writeBorder(asked: {
  readonly rounds: readonly (BorderRound & { readonly colour?: string | undefined })[];
  readonly corner: number;
  readonly perMotifAcross?: readonly number[] | undefined;
  readonly perMotifDown?: readonly number[] | undefined;
  readonly motif?: Stitch | undefined;
}): WrittenBorder {
  const { rounds, corner, perMotifAcross, perMotifDown, motif } = asked;
  const place = cornerPlace(corner);
  const end = (round: BorderRound) =>
    `${t('sl st')} to the first stitch. (${round.total} ${t(round.stitch)})`;
  const texts = rounds.map((round, index) => {
    const { stitch, colour } = round;
    const before = rounds[index - 1];
    const changed = colour !== undefined && colour !== before?.colour;
    const label = `Round ${index + 1}${colour === undefined ? '' : `, in ${colour}`}`;
    if (index === 0)
      return `${label}: join at the ${handed('upper right', 'upper left')} corner, ${openingCorner(stitch, corner, 'the corner')}, ${fourSides(round, corner, (stitches, called) => `${stitches} ${t(stitch)} along the ${called}`, 'the corner')}, ${end(round)}`;
    const travel = cornerStitch(corner) - 1;
    const there = changed
      ? `join in ${place}`
      : travel === 0
        ? ''
        : `${t('sl st')} in the next ${travel === 1 ? 'stitch' : `${travel} stitches`}`;
    const begin = openingCorner(stitch, corner, changed || travel > 0 ? 'the same stitch' : place);
    return `${label}: ${there === '' ? '' : `${there}, `}${begin}, ${fourSides(round, corner, (stitches) => `1 ${t(stitch)} in each of the next ${stitches} stitches`, place)}, ${end(round)}`;
  });
  return {
    before: [
      `Work round the blanket with its right side facing you, from ${handed('right to left', 'left to right')} along the upper edge; do not turn between rounds.`,
      ...(motif === undefined ? [] : [overEdges(motif)]),
      ...(perMotifAcross === undefined
        ? []
        : [`In round 1 along each width, motif by motif: ${writeInRuns(perMotifAcross)}.`]),
      ...(perMotifDown === undefined
        ? []
        : [`In round 1 along each height, motif by motif: ${writeInRuns(perMotifDown)}.`]),
    ],
    rounds: texts,
    after: [`Fasten off and weave in the ends of the border, each in three passes.`],
  };
}

/** The border of a blanket of `columns` by `rows` motifs in words, its first round shared evenly over them. */
export const writeBlanketBorder = (
  counted: readonly {
    readonly stitch: Stitch;
    readonly colour: string;
    readonly across: number;
    readonly down: number;
    /** In the round. */
    readonly stitches: number;
  }[],
  corner: number,
  { columns, rows, motif }: { readonly columns: number; readonly rows: number; readonly motif: Stitch },
): WrittenBorder => {
  const [first] = counted;
  const share = (stitches: number | undefined, motifs: number) =>
    stitches === undefined || stitches < motifs ? undefined : shareEvenly(stitches, motifs);
  return writeBorder({
    rounds: counted.map(({ stitches, ...round }) => ({ ...round, total: stitches })),
    corner,
    perMotifAcross: share(first?.across, columns),
    perMotifDown: share(first?.down, rows),
    motif,
  });
};
