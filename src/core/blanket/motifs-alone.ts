/** How many motifs the yarn at hand makes, without seams and border. */
import { defined } from '../base/defined.ts';
import { sameName } from '../base/nearest-name.ts';
import { formula, type Working } from '../base/working.ts';
import type { Pieces } from './pieces.ts';
import { metresOf, stockOf } from './yarn-at-hand.ts';

export const WHOLE_MOTIFS = formula({
  label: 'Whole motifs',
  formula: 'floor(round(at_hand / (each * (1 + reserve / 100)), 6))',
  given: { at_hand: 'm', each: 'm', reserve: '' },
  unit: '',
  source: 'derived: whole motifs only',
});

export interface MotifsAlone {
  /** How many of each kind, if all the yarn goes to that kind; undefined where nothing limits it. */
  readonly alone: readonly (number | undefined)[];
  /** How many of every kind alike, if they share the yarn; undefined where nothing limits them. */
  readonly together?: number;
  /** The colour that stops them then. */
  readonly first?: string;
}

/**
 * Motifs alone, without seams and border: the most of each kind by itself, and the most of every kind alike. The steps are added to the
 * working.
 */
export function countMotifsAlone(pieces: Pieces, working: Working): MotifsAlone {
  const stock = stockOf(pieces);
  const { reserve } = pieces;
  const each = pieces.motifs.map((motif) =>
    pieces.colours.map((colour) =>
      motif.colours
        .filter((part) => sameName(part.colour, colour))
        .reduce((sum, part) => sum + metresOf(part), 0),
    ),
  );
  const whole = (need: readonly number[], of: string) => {
    let most: number | undefined;
    let first: string | undefined;
    need.forEach((metres, colour) => {
      const there = stock[colour];
      const name = pieces.colours[colour] ?? '';
      if (metres <= 0 || there === undefined) return;
      const many = working.do(
        WHOLE_MOTIFS,
        { at_hand: there, each: metres, reserve },
        `${of}, as far as ${name} goes`,
      );
      if (most === undefined || many < most) {
        most = many;
        first = name;
      }
    });
    return { many: most, first };
  };
  const alone = pieces.motifs.map(({ name }, kind) => whole(each[kind] ?? [], `${name} alone`).many);
  const together = whole(
    pieces.colours.map((_, colour) => each.reduce((sum, kind) => sum + (kind[colour] ?? 0), 0)),
    'One of every kind',
  );
  return defined({ alone, together: together.many, first: together.first });
}
