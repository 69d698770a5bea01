/** A maker's own numbers for a part: which rows, which motifs, how much yarn of each colour, how many hours. */
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';
import { countMotifsIn, reckonMaterials, type ColourNeed } from '../blanket/materials.ts';
import { sumCounts } from '../rows/index.ts';
import { planOf, type MotifSpec } from '../yarn/motif.ts';
import { reckonHours } from '../yarn/pace.ts';
import type { Part } from './events.ts';
import type { Own } from './own.ts';
import { countStitchesOf } from './propose.ts';
import { shareMotifs, shareRows, type RowSpan } from './share.ts';

export const SWATCH_COUNT = formula({
  label: 'For the swatch',
  formula: 'ceil(round(length * counted / over, 6))',
  given: { length: 'cm', counted: '', over: 'cm' },
  unit: '',
  source: 'derived: as many as the gauge has on that length, a whole number',
});

/** A swatch is made this wide and high, cm: the 10 cm that are counted, and edges that lie otherwise (common practice). */
export const SWATCH_SIDE = 15;
/** Stitches a minute of somebody who says no pace (common practice). */
export const USUAL_PACE = 15;

export interface PartNumbers {
  /** Rows of the first motif, both counted in, with the count of each. */
  readonly rows?: { readonly from: number; readonly to: number; readonly counts: readonly number[] };
  /** Motifs of each kind. */
  readonly motifs?: readonly number[];
  /** All of them. */
  readonly motifsInAll?: number;
  /** What is counted in the part: stitches, or those that blocks are reckoned as. */
  readonly stitches?: number;
  /** Yarn of the part by colour, with the reserve. */
  readonly colours?: readonly ColourNeed[];
  /** m of all of them. */
  readonly yarn?: number;
  /** m of each colour where no motif is made, without a reserve: of the seams, of the border. */
  readonly strands?: readonly { readonly colour: string; readonly metres: number }[];
  readonly hours?: number;
  readonly swatch?: { readonly stitches: number; readonly rows: number };
  readonly ends?: number;
  /** Those of them that the motifs have, and those that come with joining and border. */
  readonly endsIn?: { readonly motifs: number; readonly later: number };
  /** m of seam. */
  readonly seamLength?: number;
  readonly seams?: number;
  /** Rounds of the border with their stitches in all. */
  readonly border?: readonly { readonly stitches: number; readonly across: number; readonly down: number }[];
}

/** Which of the parts of the same work this is (from 0), and how many there are. */
function shareOf(parts: readonly Part[], part: Part): { at: number; of: number } {
  const same = parts.filter(({ work }) => work === part.work);
  return { at: same.findIndex(({ id }) => id === part.id), of: same.length };
}

/** Motifs of each kind that the parts of motifs share: all but the first, where that has a part of its own. */
const motifsShared = (own: Own, parts: readonly Part[]): number[] =>
  own.extent.counts.map((many, kind) =>
    kind === 0 && parts.some(({ work }) => work === 'first') ? Math.max(0, many - 1) : many,
  );

/** Motifs of each kind in a share of them. */
const countsOfShare = (own: Own, parts: readonly Part[], at: number, of: number): readonly number[] =>
  shareMotifs(motifsShared(own, parts), own.spec.kinds.map(countStitchesOf), of)[at] ?? [];

const countStitchesOfMotifs = ({ spec }: Own, counts: readonly number[]): number =>
  sum(spec.kinds.map((kind, index) => countStitchesOf(kind) * (counts[index] ?? 0)));

/** The rows of the first motif in a share of them; undefined where there are more shares than rows. */
function spanOfFirst(first: MotifSpec, at: number, of: number): RowSpan | undefined {
  const span = shareRows(
    planOf(first).rows.map(({ count }) => count),
    of,
  )[at];
  return span === undefined || span.to < span.from ? undefined : span;
}

/** The numbers of a part for one's own blanket. The steps are added to the working. */
export function reckonPart(own: Own, parts: readonly Part[], part: Part, working: Working): PartNumbers {
  const { at, of } = shareOf(parts, part);
  const [first] = own.spec.kinds;
  if (!first) throw new Error('a blanket has at least one kind');
  switch (part.work) {
    case 'swatch':
      return reckonSwatch(own, working);
    case 'first':
      return reckonFirst(own, at, of, working);
    case 'motifs':
      return reckonMotifs(own, countsOfShare(own, parts, at, of), working);
    case 'ends':
      return reckonEnds(own);
    case 'joining': {
      const { colour } = own.pieces.seam;
      const yarn = own.materials.colours.find((need) => need.colour === colour)?.seams ?? 0;
      return {
        seamLength: own.materials.seamLength,
        seams: own.materials.seams,
        yarn,
        strands: [{ colour, metres: yarn }],
      };
    }
    case 'border':
      return {
        border: own.materials.border,
        yarn: sum(own.materials.border.map(({ metres }) => metres)),
        strands: strandsOf(own),
      };
    case 'laying-out':
    case 'own':
      return {};
  }
}

function reckonEnds({ pieces, extent, materials: { ends } }: Own): PartNumbers {
  const motifs = sum(pieces.motifs.map((motif, kind) => motif.ends * (extent.counts[kind] ?? 0)));
  return { ends, endsIn: { motifs, later: ends - motifs } };
}

/** m of each colour in the border, in the order in which the rounds need them. */
function strandsOf({ pieces, materials }: Own): { colour: string; metres: number }[] {
  const colours = [...new Set(pieces.border.rounds.map(({ colour }) => colour))];
  return colours.map((colour) => ({
    colour,
    metres: sum(
      materials.border.flatMap(({ metres }, round) =>
        pieces.border.rounds[round]?.colour === colour ? [metres] : [],
      ),
    ),
  }));
}

function reckonSwatch({ spec }: Own, working: Working): PartNumbers {
  const gauge = spec.kinds[0]?.gauge;
  if (gauge === undefined) return {};
  const counted = (of: number, label: string) =>
    working.do(SWATCH_COUNT, { length: SWATCH_SIDE, counted: of, over: gauge.over }, label);
  const stitches = counted(gauge.stitches, 'Stitches for the swatch');
  return gauge.rows === undefined
    ? {}
    : { swatch: { stitches, rows: counted(gauge.rows, 'Rows for the swatch') } };
}

function reckonFirst(own: Own, at: number, of: number, working: Working): PartNumbers {
  const [first] = own.spec.kinds;
  if (!first) return {};
  const plan = planOf(first);
  const counts = plan.rows.map(({ count }) => count);
  const span = spanOfFirst(first, at, of);
  if (span === undefined) return {};
  const stitches = sumCounts(plan, span.to, span.from);
  // Yarn of the whole motif: nobody weighs out half of one.
  const { colours = [], yarn = 0 } = reckonMotifs(
    own,
    own.spec.kinds.map((_, kind) => (kind === 0 ? 1 : 0)),
    working,
  );
  return {
    colours,
    yarn,
    rows: { ...span, counts: counts.slice(span.from - 1, span.to) },
    stitches,
    hours: hoursFor(own, stitches, working),
  };
}

function reckonMotifs(own: Own, counts: readonly number[], working: Working): PartNumbers {
  const stitches = countStitchesOfMotifs(own, counts);
  const { colours, total } = reckonMaterials(
    { ...own.pieces, border: { ...own.pieces.border, rounds: [], width: 0 } },
    // One beside another that is not there: seams belong to the part of joining.
    { columns: 1, rows: 1, counts },
    working,
  );
  return {
    motifs: counts,
    motifsInAll: sum(counts),
    stitches,
    colours: colours.filter(({ motifs }) => motifs > 0),
    yarn: total,
    hours: hoursFor(own, stitches, working),
  };
}

const hoursFor = (own: Own, stitches: number, working: Working): number =>
  reckonHours(stitches, own.perMinute ?? USUAL_PACE, working, 'Hours for this part');

/** All motifs of one's own blanket. */
export const countOwnMotifs = (own: Own): number => countMotifsIn(own.extent);

/** What is counted in a part: the stitches of its rows or motifs, 0 where it has none. */
function countStitchesIn(own: Own, parts: readonly Part[], part: Part): number {
  const { at, of } = shareOf(parts, part);
  const [first] = own.spec.kinds;
  if (first === undefined) return 0;
  if (part.work === 'first') {
    const span = spanOfFirst(first, at, of);
    return span === undefined ? 0 : sumCounts(planOf(first), span.to, span.from);
  }
  return part.work === 'motifs' ? countStitchesOfMotifs(own, countsOfShare(own, parts, at, of)) : 0;
}

/** Hours of the rows and motifs in the parts that a maker is not done with. The steps are added to the working. */
export function reckonHoursLeft(
  own: Own,
  {
    parts,
    done,
  }: { readonly parts: readonly Part[]; readonly done: ReadonlyMap<number, ReadonlySet<string>> },
  maker: string,
  working: Working,
): number {
  const left = parts.filter(({ id }) => done.get(id)?.has(maker) !== true);
  const stitches = sum(left.map((part) => countStitchesIn(own, parts, part)));
  return reckonHours(stitches, own.perMinute ?? USUAL_PACE, working, 'Hours left');
}
