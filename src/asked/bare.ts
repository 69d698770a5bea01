/** Words behind a question’s own that name no option: `/stitches row diagonal 12 row 9`. */
import type { RawOptions } from '../chat/line.ts';
import { isRequired } from '../chat/options.ts';
import type { Route } from '../chat/registry.ts';
import { fit } from './fit.ts';
import { leads } from './fit/near.ts';
import { slotsOf, type Slot } from './fit/slots.ts';
import { takes } from './fit/takes.ts';
import { hear, type Heard } from './heard.ts';
import type { KnownName, Piece } from './pieces/piece.ts';

/** Whether two options of a kind took their numbers against the order in which both are declared, and no word said so. */
function outOfOrder(
  slots: readonly Slot[],
  options: Readonly<Record<string, string>>,
  heard: Heard,
): boolean {
  const placed = slots.flatMap((slot) => {
    const text = options[slot.name];
    const piece = heard.pieces
      .flatMap((one) => [one, ...(one.parts ?? [])])
      .find((one) => one.text === text && takes(slot, one, heard) !== undefined);
    return piece && !leads(heard, piece, slot.mark.lead) ? [{ slot, piece }] : [];
  });
  return placed.some(({ slot, piece }, index) =>
    placed.slice(0, index).some((one) => one.slot.takes === slot.takes && one.piece.from > piece.from),
  );
}

/**
 * The options that such words fill, with those that are typed; undefined where a word has no place, or one could have two. What is
 * needed and of its kind the only one is taken as it comes: two balls of yarn are the pattern’s and the new one’s.
 */
export function placeBareWords(
  { question, ...route }: Route,
  words: string,
  typed: RawOptions,
  known: readonly KnownName[] = [],
): RawOptions | undefined {
  const asked = question.asked ?? { ways: [], phrases: [] };
  const heard = hear(words, known);
  const slots = slotsOf({ question, ...route }, asked).filter(({ name }) => !Object.hasOwn(typed, name));
  const leading = new Set(slots.flatMap(({ name, mark }) => [name, ...(mark.lead?.split(/[ _]/) ?? [])]));
  if (heard.strangers.some((word) => !leading.has(word))) return undefined;
  const fitted = fit(heard, asked, slots);
  if (fitted.unnamed > 0) return undefined;
  const found = new Map(Object.entries({ ...typed, ...fitted.options }));
  let left: readonly Piece[] = fitted.unplaced.flatMap((piece) =>
    piece.kind === 'counts' && piece.parts ? piece.parts : [piece],
  );
  if (outOfOrder(slots, fitted.options, heard)) return undefined;
  const needed = slots.filter(
    ({ name }) =>
      !found.has(name) && question.options[name] !== undefined && isRequired(question.options[name]),
  );
  // As many of a kind as are needed of it, in the order in which they are declared.
  for (const takesKind of new Set(needed.map((slot) => slot.takes))) {
    const open = needed.filter((slot) => slot.takes === takesKind);
    const fits = (slot: Slot, piece: Piece) => takes(slot, piece, heard);
    const pieces = left.filter((piece) => open.every((slot) => fits(slot, piece) !== undefined));
    if (pieces.length !== open.length) continue;
    open.forEach((slot, index) => {
      const text = pieces[index] && fits(slot, pieces[index])?.text;
      if (text !== undefined) found.set(slot.name, text);
    });
    left = left.filter((piece) => !pieces.includes(piece));
  }
  if (left.length > 0) return undefined;
  const placed = Object.fromEntries(found);
  return asked.settle ? asked.settle(placed, fitted.extras) : placed;
}
