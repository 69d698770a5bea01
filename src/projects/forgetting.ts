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

/** An id for somebody who is forgotten, not yet used among these. */
function strangerIn(used: ReadonlySet<string>): string {
  let number = 1;
  while (used.has(strangerId(number))) number++;
  return strangerId(number);
}

function renamed<E extends Stamp>(event: E, maker: string, stranger: string, once: string): E {
  const naming: Naming = event;
  const swap = (id: string) => (id === maker ? stranger : id);
  const named = naming.maker ?? naming.to ?? naming.by;
  return {
    ...event,
    by: swap(event.by),
    ...(naming.maker === undefined ? {} : { maker: swap(naming.maker) }),
    ...(naming.to === undefined ? {} : { to: swap(naming.to) }),
    ...(naming.name !== undefined && named === maker ? { name: SOMEBODY } : {}),
    ...(event.by === maker ? { once } : {}),
  };
}
