/** The lesson that explains what went wrong. */
import type { Action } from '../../src/chat/answer.ts';
import type { RowPlan } from '../../src/core/rows/index.ts';
import { action } from './actions.ts';

/** What a departure in that row of a plan is best practised with. */
function lessonFor({ shape, size }: Pick<RowPlan, 'shape' | 'size'>, row: number): string {
  if (shape !== 'diagonal') return 'where-wrong';
  return row <= size ? 'growing' : 'shrinking';
}

/** Leads from a miscount into its lesson. */
export const lessonAction = (plan: RowPlan, row: number): Action =>
  action('The lesson on this', 'lesson start', { lesson: lessonFor(plan, row) });
