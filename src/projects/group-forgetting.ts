/** Taking a maker out of the events of a group blanket: what she made and pledged stays counted, as "a maker". */
import { SOMEBODY, strangerId } from '../core/base/history.ts';
import type { GroupEvent } from '../core/group/events.ts';
import type { GroupState } from '../core/group/state.ts';
import type { GroupDoc } from './group-schema.ts';

/** The makers whom an event names. */
export const idsIn = (event: GroupEvent): string[] => [
  event.by,
  ...('maker' in event ? [event.maker] : []),
  ...('to' in event ? [event.to] : []),
];
export const mentions = (event: GroupEvent, maker: string): boolean => idsIn(event).includes(maker);

/** The document without her id, her name, and what was written of her. */
export function withoutMaker(doc: GroupDoc, state: GroupState, maker: string): GroupDoc {
  const stranger = strangerIn(doc);
  const isOfHer = wordsOf(maker, state);
  // The key of a press is made from who pressed; what came of one press stays together.
  const presses = new Map<string, number>();
  doc.events.forEach(({ once }, index) => {
    if (!presses.has(once)) presses.set(once, index);
  });
  const events = doc.events.map((event) => {
    const words = isReasoned(event) && isOfHer(event) ? { ...event, reason: 'erased' } : event;
    return mentions(words, maker)
      ? renamed(words, maker, stranger, `${stranger}:${presses.get(event.once) ?? 0}`)
      : words;
  });
  return { ...doc, edition: doc.edition + 1, events };
}

/** An id for somebody who is forgotten, not yet used in this document. */
function strangerIn(doc: GroupDoc): string {
  const used = new Set(doc.events.flatMap(idsIn));
  let number = 1;
  while (used.has(strangerId(number))) number++;
  return strangerId(number);
}

type Reasoned = Extract<GroupEvent, { reason: string }>;
const isReasoned = (event: GroupEvent): event is Reasoned => 'reason' in event;

/** Which reasons are about her or her motifs, or name her. */
function wordsOf(maker: string, { pieces, names }: GroupState) {
  const hers = new Set(pieces.flatMap((piece) => (piece.maker === maker ? [piece.piece] : [])));
  const name = names.get(maker)?.toLowerCase();
  return (event: Reasoned) =>
    (event.did === 'returned' ? event.pieces.some((piece) => hers.has(piece)) : event.maker === maker) ||
    (name !== undefined && name !== '' && event.reason.toLowerCase().includes(name));
}

function renamed<E extends GroupEvent>(event: E, maker: string, stranger: string, once: string): E {
  const swap = (id: string) => (id === maker ? stranger : id);
  const named = 'maker' in event ? event.maker : 'to' in event ? event.to : event.by;
  return {
    ...event,
    by: swap(event.by),
    ...('maker' in event ? { maker: swap(event.maker) } : {}),
    ...('to' in event ? { to: swap(event.to) } : {}),
    ...('name' in event && named === maker ? { name: SOMEBODY } : {}),
    ...(event.by === maker ? { once } : {}),
  };
}
