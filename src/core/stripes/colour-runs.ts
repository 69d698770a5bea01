/** Stripes: runs of rows in one colour, cut, joined, and written as people say them. */
import { count } from '../base/reader.ts';

/** Rows of one colour, one after the other. */
export interface ColourRun {
  readonly colour: string;
  readonly rows: number;
}

/** A run with the rows it covers, both counted in. */
export interface ColourSpan extends ColourRun {
  readonly from: number;
  readonly to: number;
}

/** Joins neighbours of the same colour: what is left has a change of colour between any two. */
export function joinRuns(runs: readonly ColourRun[]): ColourRun[] {
  const out: ColourRun[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last?.colour === run.colour) out[out.length - 1] = { colour: run.colour, rows: last.rows + run.rows };
    else out.push(run);
  }
  return out;
}

/** The rows that runs cover together. */
export const countRows = (runs: readonly ColourRun[]) => runs.reduce((sum, run) => sum + run.rows, 0);

/** The runs of the first `rows` rows. */
export function cutRuns(runs: readonly ColourRun[], rows: number): ColourRun[] {
  const out: ColourRun[] = [];
  let left = rows;
  for (const run of runs) {
    if (left <= 0) break;
    out.push({ colour: run.colour, rows: Math.min(run.rows, left) });
    left -= run.rows;
  }
  return out;
}

/** Numbers as words, as far as they are said in one. */
export const SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const spokenTimes = (times: number) => (times === 2 ? 'twice' : `${SMALL[times] ?? times} times`);

/**
 * Writes runs as they are read aloud, what repeats said once: `readRuns` reads the same runs back.
 *
 * @example
 * writeRuns([{ colour: 'moss', rows: 4 }, { colour: 'sand', rows: 1 }]) // → '4 rows moss, 1 row sand'
 */
export function writeRuns(runs: readonly ColourRun[], called: 'row' | 'round' = 'row'): string {
  const said = ({ colour, rows }: ColourRun) => `${count(rows, called)} ${colour}`;
  const same = (a: number, b: number) =>
    runs[a]?.colour === runs[b]?.colour && runs[a]?.rows === runs[b]?.rows;
  const groups: string[] = [];
  let single: string[] = [];
  const close = () => {
    if (single.length > 0) groups.push(single.join(', '));
    single = [];
  };
  for (let at = 0; at < runs.length;) {
    let best = { period: 1, times: 1 };
    for (let period = 2; at + 2 * period <= runs.length; period++) {
      let length = period;
      while (at + length < runs.length && same(at + length, at + length - period)) length++;
      const times = Math.floor(length / period);
      if (times > 1 && period * times > best.period * best.times) best = { period, times };
    }
    const group = runs.slice(at, at + best.period).map(said);
    if (best.times > 1) {
      close();
      groups.push(`${group.join(', ')}, ${spokenTimes(best.times)}`);
    } else single.push(...group);
    at += best.period * best.times;
  }
  close();
  return groups.join(', then ');
}

/** The runs with the rows each covers. */
export function listSpans(runs: readonly ColourRun[]): ColourSpan[] {
  let before = 0;
  return runs.map((run) => {
    const span = { ...run, from: before + 1, to: before + run.rows };
    before = span.to;
    return span;
  });
}

/** The colour of a row; undefined where the piece is of one unnamed colour. */
export const colourOf = (runs: readonly ColourRun[], row: number): string | undefined =>
  listSpans(runs).find(({ from, to }) => from <= row && row <= to)?.colour;

/** The colours in the order in which they first appear. */
export const coloursIn = (runs: readonly ColourRun[]): string[] => [
  ...new Set(runs.map(({ colour }) => colour)),
];
