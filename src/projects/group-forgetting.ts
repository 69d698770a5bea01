/** Taking a maker out of the events of a group blanket: what she made and pledged stays counted, as "a maker". */
import type { GroupEvent } from '../core/group/events.ts';
import { pieceOf, type GroupState } from '../core/group/state.ts';
import { withStranger } from './forgetting.ts';
import type { GroupDoc } from './group-schema.ts';

/** The makers whom an event names. */
export const idsIn = (event: GroupEvent): string[] => [
  event.by,
  ...('maker' in event ? [event.maker] : []),
  ...('to' in event ? [event.to] : []),
];

/** The document without her id, her name, and what was written of her. */
export function withoutMaker(doc: GroupDoc, state: GroupState, maker: string): GroupDoc {
  const isOfHer = wordsOf(maker, state);
  const { events } = withStranger(doc.events, maker, idsIn, (event) =>
    isReasoned(event) && isOfHer(event) ? { ...event, reason: 'erased' } : event,
  );
  const { photos, ...rest } = doc;
  const others = photos?.filter((photo) => !isOfMaker(state, photo.pieces, maker)) ?? [];
  return {
    ...rest,
    ...(others.length === 0 ? {} : { photos: others }),
    edition: doc.edition + 1,
    events,
  };
}

/** Whether any of these motifs is hers. */
export const isOfMaker = (state: GroupState, numbers: readonly number[], maker: string) =>
  numbers.some((number) => pieceOf(state, number)?.maker === maker);

type Reasoned = Extract<GroupEvent, { reason: string }>;
const isReasoned = (event: GroupEvent): event is Reasoned => 'reason' in event;

/** Which reasons are about her or her motifs, or name her. */
function wordsOf(maker: string, { pieces, names }: GroupState) {
  const hers = new Set(pieces.filter((piece) => piece.maker === maker).map(({ piece }) => piece));
  const name = names.get(maker)?.toLowerCase();
  return (event: Reasoned) =>
    (event.did === 'returned' ? event.pieces.some((piece) => hers.has(piece)) : event.maker === maker) ||
    (name !== undefined && name !== '' && event.reason.toLowerCase().includes(name));
}
