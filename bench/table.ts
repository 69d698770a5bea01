/** What a bench tells, and how it is printed. */
import type { Compared, Seen } from './measure.ts';

/** One comparison, both sides measured in the same run. */
export interface BenchRow {
  readonly what: string;
  /** What was measured of ours, with its unit. */
  readonly ours: string | number;
  /** What it is held against, and what that came to. */
  readonly reference: string | number;
  readonly ratio: string | number;
  readonly aim?: string;
  /** How it was measured, or what has to be known to read it. */
  readonly note?: string;
  /** Why it says nothing, where the machine had too much else to do: it is named below the table then, without its figures. */
  readonly disturbed?: string | undefined;
}

/** A number with three digits that count: `0.123`, `4.57`, `1,230`. */
export const digits = (value: number | string): string =>
  typeof value === 'string'
    ? value
    : value.toLocaleString('en-US', { maximumSignificantDigits: 3, maximumFractionDigits: 6 });

/** Milliseconds in a unit that reads well. */
export const time = (ms: number): string =>
  ms >= 1000 ? `${digits(ms / 1000)} s` : ms >= 1 ? `${digits(ms)} ms` : `${digits(ms * 1000)} µs`;

/** A ratio of two times, ours over the other: below 1 ours is the faster. */
export const times = (ratio: number): string => `${digits(ratio)} × the time`;

/** What was seen of one side: in the middle, at the tenth percentile, and of the processor. */
export const seen = ({ median, p10, cpu }: Seen): string =>
  `${time(median)} (p10 ${time(p10)}, processor ${time(cpu)})`;

/** The figures of a comparison, held against what `reference` says. */
export const figuresOf = (
  compared: Compared,
  reference: string,
): Pick<BenchRow, 'ours' | 'reference' | 'ratio' | 'disturbed'> => ({
  ours: seen(compared.ours),
  reference: `${seen(compared.reference)}: ${reference}`,
  ratio: times(compared.ratio),
  disturbed: compared.disturbed,
});

const cell = (text: string | number | undefined) =>
  text === undefined ? '' : digits(text).replaceAll('|', '\\|').replace(/\s+/g, ' ');

/** The rows as a Markdown table, notes beneath it by their number, and what could not be measured. */
export function table(all: readonly BenchRow[]): string {
  const rows = all.filter(({ disturbed }) => disturbed === undefined);
  const notes: string[] = [];
  const lines = rows.map(({ what, ours, reference, ratio, aim, note }) => {
    if (note !== undefined && !notes.includes(note)) notes.push(note);
    const mark = note === undefined ? '' : ` (${notes.indexOf(note) + 1})`;
    return `| ${[`${what}${mark}`, ours, reference, ratio, aim].map(cell).join(' | ')} |`;
  });
  const left = all.flatMap(({ what, disturbed }) =>
    disturbed === undefined ? [] : [`- ${what}: ${disturbed}.`],
  );
  return [
    '| What | Ours | Against | Ratio | Aim |',
    '| --- | --- | --- | --- | --- |',
    ...lines,
    ...(notes.length === 0 ? [] : ['', ...notes.map((note, index) => `${index + 1}. ${note}`)]),
    ...(left.length === 0 ? [] : ['', 'Not measured, as the machine had too much else to do:', '', ...left]),
  ].join('\n');
}
