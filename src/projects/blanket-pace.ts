/** A maker's pace at the kinds of a blanket. */
import { planOf } from '../core/yarn/motif.ts';
import { paceOf, type Pace } from '../core/yarn/pace.ts';
import { STITCHES_A_BLOCK } from '../standards/consumption.ts';
import type { Working } from '../core/base/working.ts';
import { kindsOf } from './blankets.ts';
import { finishedRows, progressOf } from './progress.ts';
import type { Blanket, MakerDoc } from './schema.ts';

/** Her pace in stitches a minute at the first of a blanket's kinds of which enough rows were timed; undefined where there is none. */
export function blanketPace(
  doc: MakerDoc,
  blanket: Blanket,
  working: Working,
): (Pace & { readonly kind: string }) | undefined {
  for (const motif of kindsOf(doc, blanket)) {
    const plan = planOf(motif);
    const found = paceOf(finishedRows(progressOf(doc, motif.name), plan), working);
    if (!found) continue;
    const perMinute = found.perMinute * (plan.counted === 'blocks' ? STITCHES_A_BLOCK : 1);
    return { ...found, perMinute, kind: motif.name };
  }
  return undefined;
}
