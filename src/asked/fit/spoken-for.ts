/** Numbers that say something of what found its place, and need none of their own. */
import type { Piece } from '../pieces/piece.ts';
import type { Fitting } from './fitting.ts';

/** The counts that were taken as a list. */
const listOf = (fitting: Fitting): Piece | undefined =>
  fitting.pieces.find((piece) => piece.kind === 'counts' && fitting.isUsed(piece));

/** “the last three rows had 7, 9 and 10”: how many counts there are is no amount of its own. */
export function useHowMany(fitting: Fitting): void {
  const listed = listOf(fitting);
  if (!listed) return;
  for (const piece of fitting.pieces) {
    const ofRows = piece.nouns.some((noun) => noun === 'row' || noun === 'round');
    if (piece.kind === 'count' && piece.value === listed.parts?.length && ofRows) fitting.use(piece);
  }
}

/** “rows 3 to 5 came out 7 8 11”: where the counts begin, if there are as many. */
export function fillWhereCountsBegin(fitting: Fitting): void {
  const listed = listOf(fitting);
  const range = fitting.pieces.find((piece) => piece.kind === 'row' && piece.more !== undefined);
  if (!range || !listed || Number(range.more) - Number(range.text) + 1 !== listed.parts?.length) return;
  const begins = fitting.slots.find(({ name }) => name === 'from_row');
  if (!begins || fitting.isFilled(begins.name)) return;
  if (range.text !== '1') fitting.put(begins.name, range.text);
  fitting.use(range);
  fitting.score += 0.6;
}

/** “is DK the same as 8 ply”: what it is held against is seen in the answer to the first. */
export function useHeldAgainst(fitting: Fitting): void {
  if (!/\b(same( \w+)? as|equal to|equivalent to)\b/i.test(fitting.heard.phrase)) return;
  const yarns = fitting.pieces.filter(({ kind }) => kind === 'yarn');
  if (yarns.length === 2 && yarns.some((piece) => fitting.isUsed(piece)))
    for (const one of yarns) fitting.use(one);
}
