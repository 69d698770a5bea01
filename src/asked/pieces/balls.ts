/** What a ball band says: how long and how heavy a ball is, in either order. */
import { merge, wordsBetween, type Joiner } from './joining.ts';
import type { Piece } from './piece.ts';

const GLUE =
  /^(\/|per|to|for|in|=|is|are|and|of|balls?|skeins?|hanks?|weigh|weighs|weighing|each|a|an|the|at|with|has|have|that|which|it's|its|it|they|they're|come|comes|,|\(|\)|-|–|yarn|wool|on|ones|says|band|about|:|@|length|long|i|get|gives?|every|worth|long|put|up|being|holding|containing|contains|cakes?|from)$/;
const STRONG = /^(\/|per|to|=|for|in|of|\()$/;
const MOST_GLUE = 8;

/** Yarn is longer than ten metres or yards. */
const isLong = ({ kind, unit, value = 0 }: Piece) =>
  kind === 'length' && (unit === 'm' || unit === 'yd') && value >= 10;

export const balls: Joiner = {
  example: ['a 100 g ball holds 170 m, 170 m in 100 g', 'ball:170m/100g'],
  join: (found, phrase) => {
    const candidates = found.flatMap((a, index) => {
      const b = found[index + 1];
      if (!b || !((isLong(a) && b.kind === 'weight') || (a.kind === 'weight' && isLong(b)))) return [];
      const glue = wordsBetween(phrase, a, b);
      if (glue.length > MOST_GLUE || !glue.every((one) => GLUE.test(one))) return [];
      const strong = glue.some((one) => STRONG.test(one));
      return [{ a, b, cost: glue.length - (strong ? 3 : 0) + (glue.includes(',') ? 2 : 0) }];
    });
    let pieces = found;
    // What stands closest together first: of three, the middle one belongs to its nearer neighbor.
    for (const { a, b } of candidates.sort((x, y) => x.cost - y.cost)) {
      if (!pieces.includes(a) || !pieces.includes(b)) continue;
      const [length, weight] = a.kind === 'weight' ? [b, a] : [a, b];
      pieces = merge(pieces, {
        kind: 'ball',
        text: `${length.text}/${weight.text}`,
        parts: [a, b],
        from: a.from,
        to: b.to,
      });
    }
    return pieces;
  },
};
