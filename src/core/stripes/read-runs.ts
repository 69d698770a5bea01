/** Reading stripes as people say them: `4 rows moss, 2 rows sand, three times, then 6 rows moss`. */
import { LONGEST_NAME } from '../base/limits.ts';
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';
import { count } from '../base/reader.ts';
import { cutRuns, joinRuns, countRows, SMALL, writeRuns, type ColourRun } from './colour-runs.ts';

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

/** What stands between two commas: a run, or how often the group before it is worked. */
type Piece =
  | { readonly is: 'run'; readonly colour: string; readonly rows: number | 'rest' }
  | { readonly is: 'times'; readonly times: number };

const HINT = 'Write it like: 4 rows moss, 2 rows sand, three times, then 6 rows moss.';

/** One piece of a line. Throws Problem: colour-missing, stripe-unreadable, name-too-long, no-rows. */
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
      bare ? 'colour-missing' : 'stripe-unreadable',
      bare
        ? `“${clip(text)}” names no colour.`
        : `“${clip(text)}” does not say how many rows of which colour.`,
      { hint: HINT },
    );
  }
  if (NOT_A_COLOUR.test(colour)) {
    throw new Problem('stripe-unreadable', `“${clip(text)}” says two things at once.`, {
      hint: `Put a comma between. ${HINT}`,
    });
  }
  if ([...colour].length > LONGEST_NAME) {
    throw new Problem('name-too-long', `“${clip(colour)}” is too long for the name of a colour.`, {
      hint: `Use at most ${LONGEST_NAME} characters.`,
      facts: { most: LONGEST_NAME, given: [...colour].length },
    });
  }
  if (rows === undefined) return { is: 'run', colour, rows: 'rest' };
  const whole = readWhole(rows);
  if (whole === 0) throw new Problem('no-rows', `“${clip(text)}” is no row at all.`, { hint: HINT });
  return { is: 'run', colour, rows: whole };
}

/** The groups of a line, parted by `then`, each the pieces between its commas. Throws Problem: no-rows, and those of a piece. */
function readGroups(text: string): Piece[][] {
  const groups = text
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/(?<![.,;\s])[.,;\s]+$/, '')
    .split(/[,;]?\s*\bthen\b[,:]?\s*/iu);
  return groups.map((group) => {
    const pieces = group
      .split(new RegExp(String.raw`\s*[,;]\s*(?:and\s+)?|\s+and\s+(?=${NUMBER}\s+${ROWS}\s)`, 'iu'))
      .map((piece) => piece.trim())
      .filter((piece) => piece !== '')
      .map(readPiece);
    if (pieces.length === 0)
      throw new Problem('no-rows', 'There are no rows between two commas or “then”s.', { hint: HINT });
    return pieces;
  });
}

/** A group worked so many times. Throws Problem: repeat-of-nothing, too-many-rows. */
function repeatGroup(
  group: readonly ColourRun[],
  times: number,
  { before, rows, called }: { before: number; rows: number; called: 'row' | 'round' },
): ColourRun[] {
  if (group.length === 0)
    throw new Problem('repeat-of-nothing', 'A repeat has no rows before it.', { hint: HINT });
  const hint = `The piece has ${count(rows, called)}. ${HINT}`;
  if (times === 0) throw new Problem('repeat-of-nothing', 'A repeat of no times leaves nothing.', { hint });
  if (before + countRows(group) * times > 4 * rows)
    throw new Problem('too-many-rows', `Repeated ${times} times, that is far more than ${rows} ${called}s.`, {
      hint,
      facts: { rows, given: before + countRows(group) * times },
    });
  return Array.from({ length: times }, () => group).flat();
}

/**
 * Reads stripes for a piece of `rows` rows. `then` begins a new group; `three times` repeats the group it ends; `rest
 * moss` and `moss to the end` fill what is left. The same colour is known whatever its capitals.
 *
 * Throws Problem: stripe-unreadable, colour-missing, name-too-long, no-rows, repeat-of-nothing, repeat-twice, too-many-rows,
 * rest-not-last; and rows-do-not-fit, with a line that does, where the rows do not come to `rows`.
 *
 * @example
 * readRuns('2 rows moss, 1 row sand, twice, then rest moss', 8) // → [{ colour: 'moss', rows: 2 }, { colour: 'sand', rows: 1 }, { colour: 'moss', rows: 2 }, { colour: 'sand', rows: 1 }, { colour: 'moss', rows: 2 }]
 */
export function readRuns(text: string, rows: number, called: 'row' | 'round' = 'row'): ColourRun[] {
  const spelling = new Map<string, string>();
  const spelled = (colour: string) => {
    const key = colour.toLowerCase();
    const known = spelling.get(key) ?? colour;
    spelling.set(key, known);
    return known;
  };
  const runs: ColourRun[] = [];
  let filled = false;
  for (const pieces of readGroups(text)) {
    const start = runs.length;
    let repeated = false;
    for (const piece of pieces) {
      if (filled) {
        throw new Problem('rest-not-last', 'Something follows the colour that goes to the end.', {
          hint: 'Put “rest …” or “… to the end” last.',
        });
      }
      if (piece.is === 'run') {
        runs.push({
          colour: spelled(piece.colour),
          rows: rowsOf(piece, rows - countRows(runs), { rows, called }),
        });
        filled = piece.rows === 'rest';
        continue;
      }
      if (repeated) {
        throw new Problem('repeat-twice', 'Two repeats stand in one group.', {
          hint: 'Begin the second group with “then”: 4 rows moss, 2 rows sand, twice, then 2 rows clay, 2 rows sand, twice.',
        });
      }
      repeated = true;
      const group = runs.splice(start);
      runs.push(...repeatGroup(group, piece.times, { before: countRows(runs), rows, called }));
    }
  }
  return fitting(joinRuns(runs), rows, called);
}

/** The rows of a run; all that are left, where it goes to the end. Throws Problem: no-rows. */
function rowsOf(
  run: Piece & { is: 'run' },
  left: number,
  { rows, called }: { rows: number; called: 'row' | 'round' },
): number {
  if (run.rows !== 'rest') return run.rows;
  if (left > 0) return left;
  throw new Problem('no-rows', `No ${called}s are left for ${clip(run.colour)}.`, {
    hint: `Those before it already come to ${rows - left} of ${rows}.`,
    facts: { rows, given: rows - left },
  });
}

/** The runs, where they come to so many rows. Throws Problem: rows-do-not-fit, with a line that does. */
function fitting(runs: ColourRun[], rows: number, called: 'row' | 'round'): ColourRun[] {
  const sum = countRows(runs);
  const [first] = runs;
  if (sum === rows || !first) return runs;
  const fits =
    sum < rows ? joinRuns([...runs, { colour: first.colour, rows: rows - sum }]) : cutRuns(runs, rows);
  throw new Problem(
    'rows-do-not-fit',
    `That is ${count(sum, called)}; the piece has ${rows}: ${Math.abs(rows - sum)} ${sum > rows ? 'too many' : rows - sum === 1 ? 'is missing' : 'are missing'}.`,
    { hint: `This fits: ${writeRuns(fits, called)}.`, facts: { needed: rows, given: sum } },
  );
}
