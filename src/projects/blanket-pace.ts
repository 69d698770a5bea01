/** A maker's pace at the kinds of a blanket. */
import { planOf, type MotifSpec } from '../core/yarn/motif.ts';
import { paceOf, reckonSaidPace } from '../core/yarn/pace.ts';
import { sumCounts } from '../core/rows/index.ts';
import { STITCHES_A_BLOCK } from '../standards/consumption.ts';
import type { Working } from '../core/base/working.ts';
import { kindsOf } from './blankets.ts';
import { finishedRows, progressOf } from './progress.ts';
import type { Blanket, MakerDoc } from './schema.ts';

export interface KindPace {
  readonly kind: string;
  /** Stitches a minute, a block being so many of them. */
  readonly perMinute: number;
  /** Minutes that one of the kind takes at that pace. */
  readonly minutes: number;
  /** As she says now; as she said before; by her rows; stitch for stitch like another kind. */
  readonly from:
    | { readonly how: 'said' | 'kept' }
    | { readonly how: 'rows'; readonly rows: number }
    | { readonly how: 'like'; readonly kind: string };
}

const stitchesOf = (motif: MotifSpec): number => {
  const plan = planOf(motif);
  return sumCounts(plan) * (plan.counted === 'blocks' ? STITCHES_A_BLOCK : 1);
};

/**
 * Her pace at every kind: by the minutes that she says now for it (`said`, by kind), by those that she said before, by her rows,
 * or as at the first kind of which it is known. Undefined where it is known of none. The steps are added to the working.
 */
export function paceByKind(
  doc: MakerDoc,
  blanket: Blanket,
  said: readonly (number | undefined)[],
  working: Working,
): readonly KindPace[] | undefined {
  const kinds = kindsOf(doc, blanket);
  const own = kinds.map((motif, kind): Omit<KindPace, 'kind' | 'minutes'> | undefined => {
    const minutes = said[kind] ?? motif.minutes;
    if (minutes !== undefined) {
      const how = said[kind] === undefined ? 'kept' : 'said';
      return { perMinute: reckonSaidPace(stitchesOf(motif), minutes, working), from: { how } };
    }
    const plan = planOf(motif);
    const found = paceOf(finishedRows(progressOf(doc, motif.name), plan), working);
    if (!found) return undefined;
    const perMinute = found.perMinute * (plan.counted === 'blocks' ? STITCHES_A_BLOCK : 1);
    return { perMinute, from: { how: 'rows', rows: found.rows } };
  });
  const first = own.findIndex((one) => one !== undefined);
  const known = own[first];
  const like = kinds[first];
  if (!known || !like) return undefined;
  return kinds.map((motif, kind) => {
    const { perMinute, from } = own[kind] ?? {
      perMinute: known.perMinute,
      from: { how: 'like' as const, kind: like.name },
    };
    return { kind: motif.name, perMinute, minutes: stitchesOf(motif) / perMinute, from };
  });
}
