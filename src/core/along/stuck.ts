/** Where a maker is stuck: the rows she counted, held against her own motif, as a miscount is. */
import { checkCounts, findRowsCounted, type Miscount } from '../miscount/check-counts.ts';
import { Problem } from '../base/problem.ts';
import { sum } from '../base/sum.ts';
import { planOf, type MotifSpec } from '../yarn/motif.ts';
import type { Part } from './events.ts';
import type { PartNumbers } from './numbers.ts';
import type { Own } from './own.ts';

/** The kind that a part is about, where none is named: the first that is made in it; else the first of all. */
export function kindOfPart(own: Own, part: Pick<Part, 'work'>, { motifs = [] }: PartNumbers): number {
  const made = part.work === 'motifs' && sum(motifs) > 0 ? motifs.findIndex((many) => many > 0) : 0;
  return Math.max(0, made);
}

/** What was counted; the counts end in `row`, or begin with the first where no row is said. */
export interface CountedAt {
  readonly row?: number | undefined;
  readonly counts?: readonly number[] | undefined;
}

/**
 * What her counts tell; undefined where she gave none.
 *
 * Throws Problem: no-such-row, too-many-counts.
 */
export function checkStuck(motif: MotifSpec, { row, counts }: CountedAt): Miscount | undefined {
  const plan = planOf(motif);
  const { length: rows } = plan.rows;
  if (row !== undefined && row > rows)
    throw new Problem(
      'no-such-row',
      `Your ${motif.name} ends with ${plan.called} ${rows}; there is no ${plan.called} ${row}.`,
      {
        option: 'row',
        hint: `Give a ${plan.called} from 1 to ${rows}.`,
        facts: { row, rows },
      },
    );
  if (counts === undefined) return undefined;
  const from = row === undefined ? 1 : findRowsCounted(row, counts.length).from;
  if (from < 1)
    throw new Problem(
      'too-many-counts',
      `${counts.length} counts are given, but ${plan.called} ${row ?? 1} is the last of them.`,
      {
        option: 'counts',
        hint: `Give at most ${row ?? 1}, the last of them that of ${plan.called} ${row ?? 1}.`,
        facts: { given: counts.length, most: row ?? 1 },
      },
    );
  return checkCounts(plan, counts, from);
}

/** The slip that is told of: the likeliest, at the row where it happened; undefined where every count is right. */
export function slipIn(
  found: Miscount | undefined,
): { readonly row: number; readonly slip: string } | undefined {
  const { wrong } = found ?? {};
  if (wrong === undefined) return undefined;
  const { row, causes } = wrong.elsewhere === undefined ? (wrong.slip ?? wrong) : wrong;
  const [likeliest] = causes;
  return likeliest && { row, slip: likeliest.slip };
}
