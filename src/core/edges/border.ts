/** A border worked round a blanket: how many stitches each side takes, and how they grow round by round. */
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { EDGES_FORGIVE } from '../../standards/tolerances.ts';
import { defined } from '../base/defined.ts';
import { isOffBy, percentOff } from '../base/percent-off.ts';
import { Problem } from '../base/problem.ts';
import type { Gauge } from '../base/quantity.ts';
import { num } from '../base/reader.ts';
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';
import { STITCHES_WANTED } from '../rows/width.ts';
import { CORNER_FOR } from '../../standards/growth.ts';
import { shareEvenly } from '../rows/spacing.ts';

export const FEWEST = formula({
  label: 'The fewest that suit the repeat',
  formula: 'mod(plus - 1, multiple) + 1',
  given: { plus: '', multiple: '' },
  unit: '',
  source: 'derived: the smallest count above nothing that leaves the same rest',
});
/** Rounded before it is halved, so that the last digit of a machine's arithmetic never decides between two counts. */
export const NEAREST_SUITING = formula({
  label: 'The nearest count that suits the repeat, of two as near the fewer',
  formula: 'max(fewest, multiple * ceil(round((exact - plus) / multiple, 6) - 1 / 2) + plus)',
  given: { fewest: '', multiple: '', exact: '', plus: '' },
  unit: '',
  source: 'common practice: the count nearest to lying flat that suits the pattern',
});
export const ROUND_TOTAL = formula({
  label: 'Stitches in the round',
  formula: '2 * (across + down) + 4 * corner',
  given: { across: '', down: '', corner: '' },
  unit: '',
  source: 'derived: two sides each way and four corners',
});
export const SIDE_AFTER = formula({
  label: 'Along a side in this round',
  formula: 'side + (corner - 1) * (round_number - 1)',
  given: { side: '', corner: '', round_number: '' },
  unit: '',
  source:
    'published: three in each corner adds 8 a round (crochetspot.com, "How to crochet a square": 4, 12, 20 … 8r − 4); ' +
    'k in each adds 4(k − 1), so k − 1 a side',
});
export const GROWTH = formula({
  label: 'Stitches more in every round',
  formula: '4 * (corner - 1)',
  given: { corner: '' },
  unit: '',
  source: 'derived: k in one corner stitch makes k − 1 more, four times',
});
export const FLAT_GROWTH = formula({
  label: 'Stitches more a round with which a corner lies flat',
  formula: '8 * height_to_width',
  given: { height_to_width: '' },
  unit: '',
  source:
    'derived: each side grows by two row heights a round; heights published as one, two and three ⟦sc⟧ per ⟦sc⟧, ⟦dc⟧ and ⟦tr⟧ row',
});

export const FROM_FLAT = percentOff('counted', 'exact', {
  label: 'From lying flat, too many (+) or too few (−), per cent',
  unit: '',
});

export interface BorderSpacing {
  /** Stitches along a side between two corners. */
  readonly across: number;
  readonly down: number;
  readonly total: number;
  /** How they are shared over the motifs of a side; unset where their number was not given. */
  readonly perMotifAcross?: readonly number[];
  readonly perMotifDown?: readonly number[];
  /** Sides that the repeat moves far from lying flat, each with how far in per cent: too many (+) or too few (−). */
  readonly strained: readonly { readonly side: 'width' | 'height'; readonly percent: number }[];
  readonly working: Working;
}

interface BorderAsked {
  readonly width: number;
  readonly height: number;
  readonly gauge: Gauge;
  readonly corner: number;
  readonly multiple: number;
  readonly plus: number;
  readonly columns?: number | undefined;
  readonly rows?: number | undefined;
}

/**
 * The first round of a border on an edge of `width` × `height` cm: the counts nearest to side × gauge among those that leave
 * `plus` over the `multiple`, ties to the fewer, at least the smallest positive one.
 *
 * Throws Problem: too-few-stitches, where a side has fewer than motifs to share them.
 */
export function spaceBorder(asked: BorderAsked): BorderSpacing {
  const { corner, multiple, plus, columns, rows } = asked;
  const working = new Working();
  // Without a repeat every count suits, and the step would say nothing.
  const fewest = multiple === 1 ? 1 : working.do(FEWEST, { plus, multiple });
  const sides = [
    spaceSide('width', asked, fewest, working),
    spaceSide('height', asked, fewest, working),
  ] as const;
  const [across, down] = [sides[0].counted, sides[1].counted];
  const total = working.do(ROUND_TOTAL, { across, down, corner });
  return defined({
    across,
    down,
    total,
    perMotifAcross: columns === undefined ? undefined : shareEvenly(across, columns),
    perMotifDown: rows === undefined ? undefined : shareEvenly(down, rows),
    strained: sides.flatMap(({ side, percent }) => (percent === undefined ? [] : [{ side, percent }])),
    working,
  });
}

/** What one side takes, and by how many per cent that is off lying flat, where it is far. Throws Problem: too-few-stitches. */
function spaceSide(side: 'width' | 'height', asked: BorderAsked, fewest: number, working: Working) {
  const { gauge, multiple, plus } = asked;
  const exact = working.do(
    STITCHES_WANTED,
    { width: asked[side], stitches: gauge.stitches, over: gauge.over },
    `Stitches that would lie flat along the ${side}`,
  );
  const counted = working.do(
    NEAREST_SUITING,
    { fewest, multiple, exact, plus },
    `Along the ${side}: the nearest count that suits, of two as near the fewer`,
  );
  const percent = isOffBy(counted, exact, EDGES_FORGIVE)
    ? working.do(FROM_FLAT, { counted, exact })
    : undefined;
  const option = side === 'width' ? 'columns' : 'rows';
  const motifs = asked[option];
  if (motifs !== undefined && motifs > counted)
    throw new Problem(
      'too-few-stitches',
      `${num(counted)} stitches along the ${side} cannot be shared by ${num(motifs)} motifs.`,
      {
        option,
        hint: `At most ${num(counted)} motifs, or a longer side.`,
        facts: { needed: motifs, given: counted },
      },
    );
  return { side, counted, percent };
}

export interface BorderRound {
  readonly stitch: Stitch;
  readonly across: number;
  readonly down: number;
  readonly total: number;
}

/** How a corner of so many stitches sits in a stitch: it lies flat, cups (too few), or ruffles (too many). */
export interface CornerFit {
  readonly stitch: Stitch;
  /** Stitches more a round that lie flat, and that this corner gives. */
  readonly flatGrowth: number;
  readonly growth: number;
  /** Stitches in each corner that would lie flat. */
  readonly corner: number;
  readonly fit: 'flat' | 'too few' | 'too many';
}

export interface BorderRounds {
  readonly rounds: readonly BorderRound[];
  readonly last: BorderRound;
  /** Stitches in all rounds together. */
  readonly stitches: number;
  /** One for each stitch that is used. */
  readonly corners: readonly CornerFit[];
  readonly working: Working;
}

/** The counts of every round, the first as given: each further round adds corner − 1 to every side. */
export function countBorderRounds(asked: {
  across: number;
  down: number;
  corner: number;
  stitches: readonly Stitch[];
}): BorderRounds {
  const { corner, stitches } = asked;
  const working = new Working();
  const rounds = stitches.map((stitch, index): BorderRound => {
    const round = index + 1;
    const side = (given: number, called: string) =>
      index === 0
        ? given
        : working.do(SIDE_AFTER, { side: given, corner, round_number: round }, `${called}, round ${round}`);
    const across = side(asked.across, 'Across');
    const down = side(asked.down, 'Down');
    const total = working.do(ROUND_TOTAL, { across, down, corner }, `Stitches in round ${round}`);
    return { stitch, across, down, total };
  });
  const last = rounds[rounds.length - 1];
  if (!last) throw new Error('a border has at least one round');
  const growth = working.do(GROWTH, { corner });
  const corners = [...new Set(stitches)].map((stitch): CornerFit => {
    const flatGrowth = working.do(
      FLAT_GROWTH,
      { height_to_width: STITCH_FACTS[stitch].height },
      `Stitches more a round with which ⟦${stitch}⟧ lies flat`,
    );
    const fit = growth === flatGrowth ? 'flat' : growth < flatGrowth ? 'too few' : 'too many';
    return { stitch, flatGrowth, growth, corner: CORNER_FOR[stitch], fit };
  });
  return { rounds, last, stitches: sum(rounds.map(({ total }) => total)), corners, working };
}

/**
 * Counts in order, the equal ones together.
 *
 * @example
 * writeInRuns([21, 21, 22, 21]) // → '2 × 21, 22, 21'
 */
export function writeInRuns(counts: readonly number[]): string {
  const runs: { count: number; times: number }[] = [];
  for (const count of counts) {
    const open = runs[runs.length - 1];
    if (open?.count === count) open.times++;
    else runs.push({ count, times: 1 });
  }
  return runs.map(({ count, times }) => (times === 1 ? `${count}` : `${times} × ${count}`)).join(', ');
}
