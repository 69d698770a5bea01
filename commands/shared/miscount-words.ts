/** What is said of counts that depart from the plan: asked of where she is, and of where she is stuck in a make-along. */
import { gather } from '../../src/chat/answer.ts';
import type { Cause } from '../../src/core/miscount/causes.ts';
import type { Miscount } from '../../src/core/miscount/check-counts.ts';
import type { RowPlan } from '../../src/core/rows/index.ts';
import { elsewhereWords } from './elsewhere-words.ts';
import { rowWord, RowWord, units } from './motif-words.ts';

/** `Row 5 of moss square should have 11 stitches; you counted 10, 1 too few.`, or where else these counts belong. */
export function departedHeadline(
  plan: RowPlan,
  called: string,
  found: Miscount,
  wrong: NonNullable<Miscount['wrong']>,
): string {
  const off = `${Math.abs(found.difference)} too ${found.difference < 0 ? 'few' : 'many'}`;
  return (
    elsewhereWords(found, rowWord(plan), (n) => units(plan, n))?.headline ??
    `${RowWord(plan)} ${wrong.row} of ${called} should have ${units(plan, wrong.expected)}; you counted ${wrong.counted}, ${off}.`
  );
}

/** The likeliest cause whole, if it is to be told, and two others in a line each. */
export const causeLines = ([likeliest, ...others]: readonly Cause[], whole = true): string[] =>
  gather(
    likeliest &&
      whole && [
        `Most likely: ${likeliest.cause}`,
        `Why: ${likeliest.why}`,
        `To mend it: ${likeliest.mend}`,
        `What that costs: ${likeliest.cost}`,
      ],
    others.slice(0, 2).map(({ cause }) => `Or: ${cause}`),
  );

/** What is said of counts that are right. */
export const rightWords = (
  plan: RowPlan,
  called: string,
  { fromRow, lastRow }: Miscount,
  counted: number,
): string =>
  fromRow === lastRow
    ? `${RowWord(plan)} ${lastRow} of ${called} has the right count, ${units(plan, counted)}`
    : `${RowWord(plan)}s ${fromRow} to ${lastRow} of ${called} have the right counts`;
