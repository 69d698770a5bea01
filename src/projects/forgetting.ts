/** Taking a maker out of a list of events: somebody without a name stands in her place. */
import { SOMEBODY, strangerId, type Stamp } from '../core/base/history.ts';

/** What may name a maker in an event beside who did it. */
type Naming = Stamp & { readonly maker?: string; readonly to?: string; readonly name?: string };

/**
 * The events without her id and her name; `forget` takes out what was written of her, or by her, where an event names her. Returns who stands
 * in her place as well.
 */
export function withStranger<Event extends Stamp>(
  events: readonly Event[],
  maker: string,
  idsIn: (event: Event) => readonly string[],
  forget: (event: Event) => Event,
): { readonly events: Event[]; readonly stranger: string } {
  const stranger = strangerIn(new Set(events.flatMap(idsIn)));
  // The key of a press is made from who pressed; what came of one press stays together.
  const presses = new Map<string, number>();
  events.forEach(({ once }, index) => {
    if (!presses.has(once)) presses.set(once, index);
  });
  return {
    stranger,
    events: events.map((event) => {
      const words = forget(event);
      return idsIn(words).includes(maker)
        ? renamed(words, maker, stranger, `${stranger}:${presses.get(event.once) ?? 0}`)
        : words;
    }),
  };
}

/** Whom an event gives its name to. */
const namedIn = ({ maker, to, by }: Naming) => maker ?? to ?? by;

/** Every name that events give a maker. */
export const namesIn = (events: readonly Stamp[], maker: string): string[] => [
  ...new Set(
    events.flatMap((event: Naming) =>
      event.name !== undefined && namedIn(event) === maker ? [event.name] : [],
    ),
  ),
];

const ENDS_IN_LETTER = /[\p{L}\p{N}]$/u;
const BEGINS_WITH_LETTER = /^[\p{L}\p{N}]/u;

/** Whether a text holds words as they stand, and not as a part of others: `Ann` in “Ann’s motifs”, not in “Annual”. */
function holds(text: string, words: string): boolean {
  for (let at = text.indexOf(words); at >= 0; at = text.indexOf(words, at + 1)) {
    const end = at + words.length;
    // A letter may be two characters.
    const joins =
      ENDS_IN_LETTER.test(text.slice(Math.max(0, at - 2), at)) ||
      BEGINS_WITH_LETTER.test(text.slice(end, end + 2));
    if (!joins) return true;
  }
  return false;
}

/** Who is to be found in what is kept: by her id, and by every name under which she is saved, whichever letters are large. */
export function namesHer(maker: string, names: readonly string[]): (said: unknown) => boolean {
  const called = names.filter((name) => name.trim() !== '' && name !== SOMEBODY);
  const all = [maker, ...called].map((name) => name.toLowerCase());
  const isIn = (said: unknown): boolean => {
    if (typeof said !== 'string')
      return typeof said === 'object' && said !== null && Object.values(said).some(isIn);
    const text = said.toLowerCase();
    return all.some((words) => holds(text, words));
  };
  return isIn;
}

/** An id for somebody who is forgotten, not yet used among these. */
function strangerIn(used: ReadonlySet<string>): string {
  let number = 1;
  while (used.has(strangerId(number))) number++;
  return strangerId(number);
}

function renamed<E extends Stamp>(event: E, maker: string, stranger: string, once: string): E {
  const naming: Naming = event;
  const swap = (id: string) => (id === maker ? stranger : id);
  return {
    ...event,
    by: swap(event.by),
    ...(naming.maker === undefined ? {} : { maker: swap(naming.maker) }),
    ...(naming.to === undefined ? {} : { to: swap(naming.to) }),
    ...(naming.name !== undefined && namedIn(naming) === maker ? { name: SOMEBODY } : {}),
    ...(event.by === maker ? { once } : {}),
  };
}
