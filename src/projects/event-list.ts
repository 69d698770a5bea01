/** The schema of a list of events. */
import * as z from 'zod';
import type { Stamp } from '../core/base/history.ts';
import { SAFE_ID } from './store.ts';

export const makerId = z.string().regex(SAFE_ID);
/** What every event says beside what happened. */
export const whoAndWhen = { by: makerId, at: z.iso.datetime(), once: z.string().max(120) };

/** Events that were checked already. They are never changed, so a press need not have all those before it checked again. */
const checked = new WeakSet<object>();

/** A list of events of which each is checked once. */
export const eventList = <Event extends Stamp>(one: z.ZodType<Event>) =>
  z
    .array(z.unknown())
    .min(1)
    .transform((events, issues): Event[] => {
      const good: Event[] = [];
      for (const [index, event] of events.entries()) {
        if (typeof event === 'object' && event !== null && checked.has(event)) {
          good.push(event as Event);
          continue;
        }
        const read = one.safeParse(event);
        if (!read.success) {
          for (const { message, path } of read.error.issues)
            issues.addIssue({ code: 'custom', message, path: [index, ...path] });
          return z.NEVER;
        }
        checked.add(read.data);
        good.push(read.data);
      }
      return good;
    });
