/** Opening a make-along from a saved blanket, or from a motif alone. */
import { Problem } from '../base/problem.ts';
import { when } from '../base/reader.ts';
import type { BlanketSpec } from '../blanket/pieces.ts';
import { DEFAULT_LAID, writeLaidBy } from '../blanket/layout.ts';
import type { MotifSpec } from '../yarn/motif.ts';
import type { AlongPlan, Part } from './events.ts';
import { mustBeNear, proposeParts } from './propose.ts';
import { readParts } from './read-parts.ts';

/** What is made along: a blanket with its extent, a motif by itself being one of a single place. */
export type Pattern = BlanketSpec & Pick<AlongPlan, 'columns' | 'rows' | 'counts' | 'setting'>;

/** Per cent that is kept in reserve where nobody says otherwise (common practice). */
const USUAL_RESERVE = 10;

/** A motif by itself as a blanket of one place. */
export const alone = (motif: MotifSpec): Pattern => ({
  kinds: [motif],
  columns: 1,
  rows: 1,
  counts: [1],
  setting: writeLaidBy(DEFAULT_LAID),
  joining: { method: 'whip' },
  border: { rounds: [], corner: 3 },
  yarns: [],
  reserve: USUAL_RESERVE,
});

export interface Opening {
  readonly pattern: Pattern;
  readonly name: string;
  /** The day of the first part, YYYY-MM-DD. */
  readonly starts: string | undefined;
  /** Days from one to the next. */
  readonly every: number;
  readonly shares: number | undefined;
  /** The teacher's own parts with their days, as typed; proposed from the work if not given. */
  readonly list: string | undefined;
  readonly hour: number;
  readonly zone: string;
  /** The day of asking, YYYY-MM-DD. */
  readonly today: string;
}

/**
 * Refuses what nobody's own size follows for: another gauge gives a square more or fewer rows, and what lies in columns and rows another
 * count; of a circle or a hexagon neither is reckoned here. Throws Problem: not-for-along.
 */
function mustBeOwn({ kinds, columns, rows }: Pattern): void {
  const odd = kinds.find(({ shape }) => shape === 'circle' || shape === 'hexagon');
  if (odd === undefined) return;
  throw new Problem(
    'not-for-along',
    `${odd.name} is a ${odd.shape}, and everybody’s own numbers are reckoned for square motifs alone.`,
    {
      option: columns * rows === 1 ? 'motif' : 'blanket',
      hint: 'Those are diagonal, blocks, clusters, solid-square, and a flat piece as high as wide; of the others no size follows from a gauge here.',
      facts: { motif: odd.name, shape: odd.shape },
    },
  );
}

/**
 * The plan of a make-along.
 *
 * Throws Problem: not-for-along, start-missing, parts-given-twice, day-passed, day-too-far, and those of a list of parts.
 */
export function planAlong(asked: Opening): AlongPlan {
  const { pattern, name, hour, zone } = asked;
  mustBeOwn(pattern);
  return { ...pattern, name, hour, zone, parts: partsOf(asked) };
}

function partsOf({ pattern, starts, every, shares, list, today }: Opening): Part[] {
  if (list !== undefined) {
    if (starts !== undefined)
      throw new Problem(
        'parts-given-twice',
        'The days are given twice, by a list and by the first of them.',
        {
          option: 'starts',
          hint: 'Give starts and every, or list, not both.',
        },
      );
    return readParts(list, today);
  }
  if (starts === undefined)
    throw new Problem('start-missing', 'The day of the first part is not said.', {
      option: 'starts',
      hint: 'Give starts:2031-01-06, or the days of all parts in list.',
    });
  if (starts < today)
    throw new Problem('day-passed', `${when(starts)} has passed.`, {
      option: 'starts',
      hint: 'Give a day to come.',
      facts: { starts },
    });
  mustBeNear(starts, today, 'starts');
  const parts = proposeParts({ blanket: pattern, ...pattern, starts, every, shares });
  mustBeNear(parts.at(-1)?.from ?? starts, today, 'every');
  return parts;
}
