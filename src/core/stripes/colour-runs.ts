/**
 * Stripes as people say them: `4 rows moss, 2 rows sand, three times, then 6 rows moss`. Read into runs of rows, checked
 * against the rows there are, and written back in the same words.
 */
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';
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

export const LONGEST_COLOUR = 60;

const SMALL =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const NUMBER = String.raw`(?:\d{1,4}|an?|(?:${TENS.join('|')})(?:[- ](?:${SMALL.slice(1, 10).join('|')}))?|${SMALL.join('|')})`;
const ROWS = '(?:rows?|rounds?|rnds?)';

/** `4`, `four`, `twenty-four`, `a`: a whole number as digits or words. */
function readWhole(text: string): number {
  const typed = text.toLowerCase();
  if (/^\d+$/.test(typed)) return Number(typed);
  if (/^an?$/.test(typed)) return 1;
  const [first = '', second] = typed.split(/[- ]/);
  const tens = TENS.indexOf(first);
  if (tens >= 0) return (tens + 2) * 10 + (second === undefined ? 0 : SMALL.indexOf(second));
  return SMALL.indexOf(first);
}

const matcher = (pattern: string) => new RegExp(`^${pattern}$`, 'iu');
const TIMES = matcher(String.raw`(?:(twice)|(once)|(${NUMBER})\s*(?:times|×|x)|[x×]\s*(\d{1,4}))`);
const COUNT_FIRST = matcher(String.raw`(${NUMBER})(?:\s+${ROWS})?(?:\s+(?:of|in))*\s+(.+)`);
const COLOUR_FIRST = matcher(String.raw`(.+?)\s+(?:for\s+)?(${NUMBER})\s+${ROWS}`);
const REST = matcher(
  String.raw`(?:(?:the\s+)?rest(?:\s+(?:of|in))*\s+(.+)|all(?:\s+(?:of|in))*\s+(.+)|(.+?)\s+(?:to\s+the\s+end|throughout|for\s+the\s+rest|all\s+over))`,
);
/** Words that no colour has: where one stands, a comma was forgotten. */
const NOT_A_COLOUR = new RegExp(`(?:^|\\s)(?:${ROWS}|twice|times|[x×]\\s*\\d+|\\d+\\s*[x×])(?:\\s|$)`, 'iu');

type Piece =
  | { readonly is: 'run'; readonly colour: string; readonly rows: number | 'rest' }
  | { readonly is: 'times'; readonly times: number };

const HINT = 'Write it like: 4 rows moss, 2 rows sand, three times, then 6 rows moss.';

function readPiece(text: string): Piece {
  const times = TIMES.exec(text);
  if (times) {
    const [, twice, once, many, after] = times;
    return { is: 'times', times: twice ? 2 : once ? 1 : readWhole(many ?? after ?? '') };
  }
  const first = COUNT_FIRST.exec(text);
  const second = first ? undefined : COLOUR_FIRST.exec(text);
  const rest = first || second ? undefined : REST.exec(text);
  const colour = (first?.[2] ?? second?.[1] ?? rest?.[1] ?? rest?.[2] ?? rest?.[3] ?? '').trim();
  const rows = first?.[1] ?? second?.[2];
  if (colour === '' || matcher(ROWS).test(colour)) {
    const bare = matcher(`${NUMBER}(?:\\s+${ROWS})?`).test(text);
    throw new Problem(
      'unsorted',
      bare
        ? `“${clip(text)}” names no colour.`
        : `“${clip(text)}” does not say how many rows of which colour.`,
      { hint: HINT },
    );
  }
  if (NOT_A_COLOUR.test(colour)) {
    throw new Problem('unsorted', `“${clip(text)}” says two things at once.`, {
      hint: `Put a comma between. ${HINT}`,
    });
  }
  if ([...colour].length > LONGEST_COLOUR) {
    throw new Problem('unsorted', `“${clip(colour)}” is too long for the name of a colour.`, {
      hint: `Use at most ${LONGEST_COLOUR} characters.`,
    });
  }
  if (rows === undefined) return { is: 'run', colour, rows: 'rest' };
  const whole = readWhole(rows);
  if (whole === 0) throw new Problem('unsorted', `“${clip(text)}” is no row at all.`, { hint: HINT });
  return { is: 'run', colour, rows: whole };
}

/** Joins neighbours of the same colour: what is left has a change of colour between any two. */
export function joined(runs: readonly ColourRun[]): ColourRun[] {
  const out: ColourRun[] = [];
  for (const run of runs) {
    const last = out.at(-1);
    if (last?.colour === run.colour) out[out.length - 1] = { colour: run.colour, rows: last.rows + run.rows };
    else out.push(run);
  }
  return out;
}

/** The rows that runs cover together. */
export const rowsIn = (runs: readonly ColourRun[]) => runs.reduce((sum, run) => sum + run.rows, 0);

/**
 * Reads stripes for a piece of `rows` rows. `then` begins a new group; `three times` repeats the group it ends; `rest
 * moss` and `moss to the end` fill what is left. The same colour is known whatever its capitals. Throws a Problem when
 * it cannot be read, or when the rows do not come to `rows`, with a line that does.
 */
export function readRuns(text: string, rows: number, worked: 'rows' | 'rounds' = 'rows'): ColourRun[] {
  const spelt = new Map<string, string>();
  const spelling = (colour: string) => {
    const key = colour.toLowerCase();
    if (!spelt.has(key)) spelt.set(key, colour);
    return spelt.get(key) ?? colour;
  };
  const groups = text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/[.,;\s]+$/, '')
    .split(/[,;]?\s*\bthen\b[,:]?\s*/iu);
  const runs: ColourRun[] = [];
  let filled = false;
  for (const group of groups) {
    const pieces = group
      .split(new RegExp(String.raw`\s*[,;]\s*(?:and\s+)?|\s+and\s+(?=${NUMBER}\s+${ROWS}\s)`, 'iu'))
      .map((piece) => piece.trim())
      .filter((piece) => piece !== '')
      .map(readPiece);
    if (pieces.length === 0)
      throw new Problem('unsorted', 'There are no rows between two commas or “then”s.', { hint: HINT });
    const start = runs.length;
    let repeated = false;
    for (const piece of pieces) {
      if (filled) {
        throw new Problem('unsorted', 'Something follows the colour that goes to the end.', {
          hint: 'Put “rest …” or “… to the end” last.',
        });
      }
      if (piece.is === 'times') {
        if (runs.length === start) {
          throw new Problem('unsorted', 'A repeat has no rows before it.', { hint: HINT });
        }
        if (repeated) {
          throw new Problem('unsorted', 'Two repeats stand in one group.', {
            hint: 'Begin the second group with “then”: 4 rows moss, 2 rows sand, twice, then 2 rows clay, 2 rows sand, twice.',
          });
        }
        repeated = true;
        const repeating = runs.slice(start);
        if (rowsIn(runs) + rowsIn(repeating) * (piece.times - 1) > 4 * rows || piece.times === 0) {
          throw new Problem(
            'unsorted',
            piece.times === 0
              ? 'A repeat of no times leaves nothing.'
              : `Repeated ${piece.times} times, that is far more than ${rows} ${worked}.`,
            { hint: `The piece has ${count(rows, worked.slice(0, -1))}. ${HINT}` },
          );
        }
        for (let time = 1; time < piece.times; time++) runs.push(...repeating);
      } else {
        const left = rows - rowsIn(runs);
        if (piece.rows === 'rest') filled = true;
        if (piece.rows === 'rest' && left <= 0) {
          throw new Problem('unsorted', `No ${worked} are left for ${clip(piece.colour)}.`, {
            hint: `Those before it already come to ${rowsIn(runs)} of ${rows}.`,
          });
        }
        runs.push({
          colour: spelling(piece.colour),
          rows: piece.rows === 'rest' ? left : piece.rows,
        });
      }
    }
  }
  return fitting(joined(runs), rows, worked);
}

function fitting(runs: ColourRun[], rows: number, worked: 'rows' | 'rounds'): ColourRun[] {
  const sum = rowsIn(runs);
  const [first] = runs;
  if (sum === rows || !first) return runs;
  const works =
    sum < rows ? joined([...runs, { colour: first.colour, rows: rows - sum }]) : firstRows(runs, rows);
  throw new Problem(
    'unsorted',
    `That is ${count(sum, worked.slice(0, -1))}; the piece has ${rows}: ${Math.abs(rows - sum)} ${sum < rows ? 'are missing' : 'too many'}.`,
    { hint: `This fits: ${writeRuns(works, worked)}.` },
  );
}

/** The runs of the first `rows` rows. */
export function firstRows(runs: readonly ColourRun[], rows: number): ColourRun[] {
  const out: ColourRun[] = [];
  let left = rows;
  for (const run of runs) {
    if (left <= 0) break;
    out.push({ colour: run.colour, rows: Math.min(run.rows, left) });
    left -= run.rows;
  }
  return out;
}

const spokenTimes = (times: number) => (times === 2 ? 'twice' : `${SMALL[times] ?? times} times`);

/** Writes runs as they are read aloud, what repeats said once: `readRuns` reads the same runs back. */
export function writeRuns(runs: readonly ColourRun[], worked: 'rows' | 'rounds' = 'rows'): string {
  const said = ({ colour, rows }: ColourRun) => `${count(rows, worked.slice(0, -1))} ${colour}`;
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
export function spans(runs: readonly ColourRun[]): ColourSpan[] {
  let before = 0;
  return runs.map((run) => {
    const span = { ...run, from: before + 1, to: before + run.rows };
    before = span.to;
    return span;
  });
}

/** The colour of a row; undefined where the piece is of one unnamed colour. */
export const colourOf = (runs: readonly ColourRun[], row: number): string | undefined =>
  spans(runs).find(({ from, to }) => from <= row && row <= to)?.colour;

/** The colours in the order in which they first appear. */
export const coloursIn = (runs: readonly ColourRun[]): string[] => [
  ...new Set(runs.map(({ colour }) => colour)),
];
