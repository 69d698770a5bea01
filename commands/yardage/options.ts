/** Options that the questions about yarn share. */
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { findBlanket } from '../../src/projects/blankets.ts';
import { count } from '../../src/core/base/reader.ts';
import { MOST_ROWS } from '../../src/core/base/limits.ts';
import { USUAL_RESERVE } from '../../src/standards/consumption.ts';

export const motifs = () =>
  opt
    .wholeOrAll({
      says: 'How many motifs, or all of the current blanket; one if not given',
      assumed: 'One motif, as no number was given.',
    })
    .default(1);

/** How many motifs are meant, and what is said of it where it was all of them. */
export async function countMotifs(
  asked: number | 'all',
  { projects, maker }: Pick<Context, 'projects' | 'maker'>,
): Promise<{ readonly motifs: number; readonly assumptions: readonly string[] }> {
  if (asked !== 'all') return { motifs: asked, assumptions: [] };
  const blanket = findBlanket(await projects.maker(maker.id, maker.name), undefined, 'motifs');
  const motifs = blanket.layout.length;
  return { motifs, assumptions: [`All ${count(motifs, 'motif')} of ${blanket.name}, the current blanket.`] };
}

export const reserve = () =>
  opt
    .percent({
      says: `Per cent to buy beyond the sum; ${USUAL_RESERVE} if not given`,
      assumed: `${USUAL_RESERVE} % in reserve, as is usual, as none was given.`,
    })
    .default(USUAL_RESERVE);

export const otherSize = () =>
  opt
    .whole('Blocks along the other side, or rows of a flat piece', { max: MOST_ROWS, example: '8' })
    .optional();
