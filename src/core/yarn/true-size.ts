/** What a drawing of a motif is drawn true to. */
import { Working } from '../base/working.ts';
import { reckonRowHeight, reckonStitchWidth } from '../size/stitch-size.ts';
import { readMeasured } from './measured-motif.ts';
import { planOf, type MotifSpec } from './motif.ts';
import { wpiOf } from './thickness.ts';

/** In cm: the width and height of a stitch of a piece in rows, or the side of a piece in rounds. */
export type TrueSize = { readonly stitch: number; readonly row: number } | { readonly side: number };

/** As the motif's gauge gives it, or its measured side; undefined where neither is known, or stitches are counted in blocks. */
export function trueSizeOf(motif: MotifSpec): TrueSize | undefined {
  const { gauge, side } = motif;
  const plan = planOf(motif);
  if (plan.counted === 'blocks') return undefined;
  if (plan.worked === 'rows') {
    if (gauge?.rows === undefined) return undefined;
    const working = new Working();
    const stitch = reckonStitchWidth(motif, wpiOf(undefined), working);
    return { stitch, row: reckonRowHeight(motif, stitch, working) };
  }
  const known = side ?? readMeasured(motif).expected;
  return known === undefined ? undefined : { side: known };
}
