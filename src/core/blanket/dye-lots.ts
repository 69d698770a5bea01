/**
 * Dye lots: what has to be there, of one lot, before the first ball is begun; what can be bought later; and where a second lot would
 * show least. The border stands apart from the motifs, so another lot shows least there (common practice); where a colour has no
 * part in the border, in the kind that has least of it.
 */
import { sameName } from '../base/nearest-name.ts';
import { formula, type Working } from '../base/working.ts';
import { WHOLE_BALLS } from '../yarn/balls.ts';
import { yarnOf } from '../yarn/motif.ts';
import type { ColourNeed } from './materials.ts';
import type { Pieces } from './pieces.ts';

export const BEFORE_FIRST = formula({
  label: 'Before the first ball is begun, of one lot',
  formula: 'total - border * (1 + reserve / 100)',
  given: { total: 'm', border: 'm', reserve: '' },
  unit: 'm',
  source: 'common practice: motifs and seams of one lot; the border stands apart and is worked last',
});

export type DyeLot =
  /** In the border alone: it can be bought when the motifs are joined. */
  | { readonly colour: string; readonly is: 'border alone' }
  /** So many balls at first, and so many later for the border. */
  | { readonly colour: string; readonly is: 'border later'; readonly first: number; readonly later: number }
  /** All at once; a second lot would show least in one kind, with so many metres of it before the reserve. */
  | { readonly colour: string; readonly is: 'one kind'; readonly kind: string; readonly metres: number };

/** What is to be said of the colours whose ball is known and of which more than one ball is needed; of the others there is nothing to choose. */
export function planDyeLots(
  { motifs, yarns, reserve }: Pick<Pieces, 'motifs' | 'yarns' | 'reserve'>,
  counts: readonly number[],
  needs: readonly ColourNeed[],
  working: Working,
): DyeLot[] {
  return needs.flatMap((need): DyeLot[] => {
    const { colour, total, border, balls } = need;
    const ball = yarnOf(yarns, colour)?.ball;
    if (!ball || balls === undefined) return [];
    if (need.motifs + need.carried + need.seams === 0)
      return border > 0 ? [{ colour, is: 'border alone' }] : [];
    if (border > 0) {
      const metres = working.do(
        BEFORE_FIRST,
        { total, border, reserve },
        `${colour}, before the first ball is begun`,
      );
      const first = working.do(
        WHOLE_BALLS,
        { yarn: metres, ball_length: ball.m },
        `${colour}, whole balls before the first is begun`,
      );
      return first < balls ? [{ colour, is: 'border later', first, later: balls - first }] : [];
    }
    const kinds = motifs.flatMap(({ name, colours }, kind) => {
      const part = colours.find((one) => sameName(one.colour, colour));
      const metres = part ? (part.worked + part.tails + part.carried) * (counts[kind] ?? 0) : 0;
      return metres > 0 ? [{ kind: name, metres }] : [];
    });
    const [least] = kinds.toSorted((a, b) => a.metres - b.metres);
    return least && kinds.length > 1 && balls > 1 ? [{ colour, is: 'one kind', ...least }] : [];
  });
}
