/** How many border stitches the edges of one motif take from its own rows, by the published rates along row ends. */
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { Problem } from '../base/problem.ts';
import { formula, type Working } from '../base/working.ts';
import type { RowPlan } from '../rows/index.ts';

export const ALONG_ROW_ENDS = formula({
  label: 'Border stitches along one edge, by the rate for its row ends',
  formula: 'round(row_ends * rate)',
  given: { row_ends: '', rate: '' },
  unit: '',
  source:
    'published: one ⟦sc⟧ for a row of ⟦sc⟧, two for ⟦dc⟧, three for ⟦tr⟧ (carol-mycrochetpage.blogspot.com, "Picot edging", 2009; ' +
    'crochetcabana.com, "Borders"); three for two rows of ⟦hdc⟧ from memory',
});
export const ALONG_STITCHES = formula({
  label: 'Border stitches along an edge of stitches, one for each',
  formula: 'stitches',
  given: { stitches: '' },
  unit: '',
  source: 'common practice: one for one into the tops of stitches',
});
export const SIDE_OF_ROUND = formula({
  label: 'Border stitches along one of the four sides of the last round, one for each stitch',
  formula: 'last_round / 4',
  given: { last_round: '' },
  unit: '',
  source:
    'common practice: one for one into the tops of stitches; a corner’s stitches shared by its two sides',
});

/**
 * Border stitches (counted as ⟦sc⟧) along row ends in whole numbers: so many for one row, or, where one row takes a half, for two.
 *
 * @example
 * findWholeRate('hdc') // → { stitches: 3, rows: 2 }
 */
export function findWholeRate(stitch: Stitch): { readonly stitches: number; readonly rows: 1 | 2 } {
  const { height } = STITCH_FACTS[stitch];
  return Number.isInteger(height) ? { stitches: height, rows: 1 } : { stitches: 2 * height, rows: 2 };
}

export interface RowEnds {
  /** Border stitches along the side that lies across the blanket, and along the one that lies down it. */
  readonly across: number;
  readonly down: number;
  /** Border stitches for one row end; unset where no edge has any. */
  readonly rate?: number;
  /** True where each edge runs slantwise over its row ends: its length is more than its rows are high. */
  readonly slanting: boolean;
}

/**
 * Border stitches (counted as ⟦sc⟧) that the edges of a motif of this plan take from its rows; the steps are added to the working.
 * Throws a Problem for shapes that have no straight sides.
 */
export function countAlongRows(plan: RowPlan, working: Working): RowEnds {
  const rate = STITCH_FACTS[plan.stitch].height;
  const along = (rows: number, label?: string) => working.do(ALONG_ROW_ENDS, { row_ends: rows, rate }, label);
  switch (plan.shape) {
    case 'diagonal': {
      // Its rows end on all four edges: as many on each as there are rising rows.
      const each = along(plan.size);
      return { across: each, down: each, rate, slanting: true };
    }
    case 'blocks': {
      const otherSide = plan.rows.length + 1 - plan.size;
      const across = along(plan.size, 'Border stitches along one edge, a block as high as one row');
      const down =
        otherSide === plan.size ? across : along(otherSide, 'The same along the other side of the rectangle');
      return { across, down, rate, slanting: false };
    }
    case 'flat':
      return {
        across: working.do(ALONG_STITCHES, { stitches: plan.size }),
        down: along(plan.rows.length),
        rate,
        slanting: false,
      };
    case 'clusters':
    case 'solid-square': {
      const side = working.do(SIDE_OF_ROUND, { last_round: plan.rows.at(-1)?.count ?? 0 });
      return { across: side, down: side, slanting: false };
    }
    case 'circle':
    case 'hexagon':
      throw new Problem('no-straight-sides', `A ${plan.shape} has no four straight sides for a border.`, {
        option: 'shape',
        hint: 'Leave shape and size out: the count by length needs neither.',
      });
  }
}
