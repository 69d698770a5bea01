/** The same blanket at another size: its setting continued, its kinds in the same proportion, everything reckoned anew. */
import { extentOf } from './largest-blanket.ts';
import { checkSize, letter, type Laying } from './layout.ts';
import { materials, type Extent, type Materials, type Pieces } from './materials.ts';
import { Problem } from '../base/problem.ts';
import { showApportioned } from './apportion.ts';
import { resize } from '../size/resize.ts';
import { Working } from '../base/working.ts';

export interface Scaled {
  readonly before: Extent & Materials;
  readonly after: Extent & Materials;
  /** Off the wished size, in per cent, where one was wished for. */
  readonly offPercent?: number;
  /** Of the new size alone. */
  readonly working: Working;
}

/**
 * Scales a blanket to `columns` × `rows`, or to the whole number of motifs nearest to `width` × `height` cm, its border counted in.
 * A side left out stays as it is. Throws a Problem where nothing, or both ways at once, are asked.
 */
export function scale(
  pieces: Pieces,
  laying: Laying,
  to: {
    columns?: number | undefined;
    rows?: number | undefined;
    width?: number | undefined;
    height?: number | undefined;
  },
): Scaled {
  const working = new Working();
  const before = extentOf(laying, laying.columns, laying.rows);
  const counts = laying.shares ?? before.counts;
  const was = { ...before, counts, ...materials(pieces, { ...before, counts }, new Working()) };
  const { columns, rows, offPercent } = target(pieces, laying, was, to, working);
  checkSize(columns, rows);
  const free = laying.laid.arrangement === 'scattered' || laying.laid.arrangement === 'typed';
  const after = free
    ? {
        columns,
        rows,
        counts: showApportioned(
          working,
          columns * rows,
          pieces.motifs.map(({ name }, kind) => ({
            name: `${letter(kind)} (${name})`,
            share: laying.shares?.[kind] ?? 1,
          })),
        ).quotas,
      }
    : extentOf(laying, columns, rows);
  return {
    before: was,
    after: { ...after, ...materials(pieces, after, working) },
    ...(offPercent === undefined ? {} : { offPercent }),
    working,
  };
}

function target(
  pieces: Pieces,
  laying: Laying,
  was: Materials,
  to: {
    columns?: number | undefined;
    rows?: number | undefined;
    width?: number | undefined;
    height?: number | undefined;
  },
  working: Working,
): { columns: number; rows: number; offPercent?: number } {
  const counted = to.columns !== undefined || to.rows !== undefined;
  const measured = to.width !== undefined || to.height !== undefined;
  if (counted && measured) {
    throw new Problem('unsorted', 'The new size is given twice, in motifs and in length.', {
      option: to.width === undefined ? 'height' : 'width',
      hint: 'Give columns and rows, or width and height.',
    });
  }
  if (measured) {
    const found = resize({
      width: to.width ?? was.width,
      height: to.height ?? was.height,
      border: pieces.border.width,
      side: pieces.side,
    });
    working.steps.push(...found.working.steps);
    return { columns: found.best.columns, rows: found.best.rows, offPercent: found.best.offPercent };
  }
  if (!counted) {
    throw new Problem('unsorted', 'The new size is not said.', {
      option: 'columns',
      hint: 'Give columns:10 rows:12, or width:120cm height:160cm.',
    });
  }
  return { columns: to.columns ?? laying.columns, rows: to.rows ?? laying.rows };
}
