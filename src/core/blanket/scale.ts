/** The same blanket at another size: its setting continued, its kinds in the same proportion, everything reckoned anew. */
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { SAMPLE_SIZE } from '../base/samples.ts';
import { Working } from '../base/working.ts';
import { resize } from '../size/resize.ts';
import { showApportioned } from './apportion.ts';
import { extentOf } from './largest-blanket.ts';
import { checkSize, isFree, letter, type Laying } from './layout.ts';
import { reckonMaterials, type Extent, type Materials } from './materials.ts';
import type { Pieces } from './pieces.ts';

export interface Scaled {
  readonly before: Extent & Materials;
  readonly after: Extent & Materials;
  /** Off the wished size, in per cent, where one was wished for. */
  readonly offPercent?: number;
  /** Of the new size alone. */
  readonly working: Working;
}

/** A new size in motifs, or in cm. */
export interface NewSize {
  readonly columns?: number | undefined;
  readonly rows?: number | undefined;
  readonly width?: number | undefined;
  readonly height?: number | undefined;
}

/**
 * Scales a blanket to `columns` × `rows`, or to the whole number of motifs nearest to `width` × `height` cm, its border counted in.
 * A side left out stays as it is.
 *
 * Throws Problem: size-missing, size-given-twice, blanket-too-large, smaller-than-a-motif, border-too-wide.
 */
export function scaleBlanket(pieces: Pieces, laying: Laying, to: NewSize): Scaled {
  const working = new Working();
  const before = extentOf(laying, laying.columns, laying.rows);
  const counts = laying.shares ?? before.counts;
  const was = { ...before, counts, ...reckonMaterials(pieces, { ...before, counts }, new Working()) };
  const { columns, rows, offPercent } = target(pieces, laying, was, to, working);
  checkSize(columns, rows);
  const after = isFree(laying.laid.arrangement)
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
  return defined({
    before: was,
    after: { ...after, ...reckonMaterials(pieces, after, working) },
    offPercent,
    working,
  });
}

function target(
  pieces: Pieces,
  laying: Laying,
  was: Materials,
  to: NewSize,
  working: Working,
): { columns: number; rows: number; offPercent?: number } {
  const counted = to.columns !== undefined || to.rows !== undefined;
  const measured = to.width !== undefined || to.height !== undefined;
  if (counted && measured) {
    throw new Problem('size-given-twice', 'The new size is given twice, in motifs and in length.', {
      option: to.width === undefined ? 'height' : 'width',
      hint: 'Give columns and rows, or width and height.',
    });
  }
  if (measured) {
    const resized = resize({
      width: to.width ?? was.width,
      height: to.height ?? was.height,
      border: pieces.border.width,
      side: pieces.side,
    });
    working.steps.push(...resized.working.steps);
    const { columns, rows, offPercent } = resized.best;
    return { columns, rows, offPercent };
  }
  if (!counted) {
    throw new Problem('size-missing', 'The new size is not said.', {
      option: 'columns',
      hint: `Give columns:10 rows:12, or ${SAMPLE_SIZE}.`,
    });
  }
  return { columns: to.columns ?? laying.columns, rows: to.rows ?? laying.rows };
}
