/** What is said of counts that belong to other rows than they were taken for: asked with and without a saved motif. */
import type { Miscount } from '../../src/core/miscount/check-counts.ts';
import { count } from '../../src/core/base/reader.ts';

export interface ElsewhereWords {
  /** A whole sentence for the headline. */
  readonly headline: string;
  /** The rows that the last count may belong to, the likeliest first. */
  readonly rows: readonly number[];
}

/** Undefined where the counts belong to the rows they were taken for. */
export function elsewhereWords(
  { wrong, fromRow, lastRow }: Miscount,
  called: string,
  unit: (n: number) => string,
): ElsewhereWords | undefined {
  const { elsewhere, slip } = wrong ?? {};
  if (wrong === undefined || elsewhere === undefined) return undefined;
  const { by, firstRow, lastRow: to, otherFirstRows, otherLastRows } = elsewhere;
  const way = `${count(Math.abs(by), called)} ${by > 0 ? 'ahead' : 'behind'}`;
  const turned = otherFirstRows.map((row) => `, or of ${called} ${row} after the turn`).join('');
  const place =
    to === firstRow
      ? `${unit(wrong.counted)} ${wrong.counted === 1 ? 'is' : 'are'} the count of ${called} ${firstRow}${turned}, not of ${called} ${fromRow}`
      : `These counts belong to ${called}s ${firstRow} to ${to}, not ${fromRow} to ${lastRow}`;
  return {
    headline:
      slip === undefined
        ? `${place}: most likely you are ${way} of where you think, and the work is right.`.replace(
            'behind of',
            'behind',
          )
        : `${place}: you are ${way}, and ${called} ${slip.row} has ${unit(slip.counted)} where ${slip.expected} belong${slip.expected === 1 ? 's' : ''}, ${Math.abs(slip.difference)} too ${slip.difference < 0 ? 'few' : 'many'}.`,
    rows: [to, ...otherLastRows],
  };
}
