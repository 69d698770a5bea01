/** How long first answers are: what people see before they unfold anything. */
import { measureAnswers } from '../test/rooms/discord/lengths.ts';

import { digits, type BenchRow } from './table.ts';

const quantile = (numbers: readonly number[], part: number) =>
  numbers.toSorted((a, b) => a - b)[Math.floor((numbers.length - 1) * part)] ?? 0;

export async function bench(): Promise<BenchRow[]> {
  const all = await measureAnswers();
  const row = (name: string, of: readonly number[], aim: string): BenchRow => ({
    what: `First answers, ${name}`,
    ours: `${digits(quantile(of, 0.5))} in the middle, ${digits(quantile(of, 0.9))} at the ninth of ten, ${digits(Math.max(...of))} at the most`,
    reference: `${all.length} questions, each asked its example`,
    ratio: '',
    aim,
  });
  return [
    row(
      'lines on a desktop',
      all.map(({ desktop }) => desktop),
      '6 in the middle, 12 at the most',
    ),
    row(
      'lines on a phone',
      all.map(({ phone }) => phone),
      '',
    ),
    row(
      'characters',
      all.map(({ characters }) => characters),
      '',
    ),
  ];
}
