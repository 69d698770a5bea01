/** Numbers that say something of what found its place, and need none of their own. */
import { lookUpHook } from '../../core/lookup/hook.ts';
import type { Piece } from '../pieces/piece.ts';
import type { Fitting } from './fitting.ts';
import { isHook } from './takes.ts';

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

/** “is DK the same as 8 ply”, “is a G hook 4 mm”: one is held against the other. */
const IS_HELD_AGAINST =
  /\b(same( \w+)? as|equals?|equal to|equivalent to)\b|^\W*(is|are|does|do|would|could)\b|\bis (that|it)\b/i;

const sizesOf = ({ text }: Piece) => new Set(lookUpHook(text).map(({ mm }) => mm));
/** A number alone may count anything: only a letter says that it is a hook. */
const isLettered = ({ text }: Piece) => /^[A-Z]/.test(text);
const isSameHook = (a: Piece, b: Piece) => {
  if (!isLettered(a) && !isLettered(b)) return false;
  const sizes = sizesOf(a);
  return [...sizesOf(b)].some((mm) => sizes.has(mm));
};

/** What something is held against is seen in the answer to the first; a hook may be named twice, “a G hook (4 mm)”. */
export function useHeldAgainst(fitting: Fitting): void {
  const { pieces, heard, options } = fitting;
  const held = IS_HELD_AGAINST.test(heard.phrase) && Object.keys(options).length === 1;
  const yarns = pieces.filter(({ kind }) => kind === 'yarn');
  const hooks = pieces.filter(isHook);
  for (const both of [yarns, hooks]) {
    const [one, other] = both;
    if (!one || !other || both.length > 2 || !both.some((piece) => fitting.isUsed(piece))) continue;
    if (held || (both === hooks && isSameHook(one, other))) for (const piece of both) fitting.use(piece);
  }
}
