/** The schema of a list of events. */
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Stamp } from '../core/base/history.ts';
import { isChecked, noteChecked } from './grown.ts';
import { SAFE_ID } from './store.ts';

export const makerId = lazily(() => z.string().regex(SAFE_ID));
/** What every event says beside what happened. */
export const whoAndWhen = lazily(() => ({ by: makerId(), at: z.iso.datetime(), once: z.string().max(120) }));

/** A list of events of which each is checked once. */
export const eventList = <Event extends Stamp>(one: z.ZodType<Event>) =>
  z
    .array(z.unknown())
    .min(1)
    .transform((events, issues): Event[] => {
      const good: Event[] = [];
      for (const [index, event] of events.entries()) {
        if (isChecked(event)) {
          good.push(event as Event);
          continue;
        }
        const read = one.safeParse(event);
        if (!read.success) {
          for (const { message, path } of read.error.issues)
            issues.addIssue({ code: 'custom', message, path: [index, ...path] });
          return z.NEVER;
        }
        good.push(noteChecked(read.data));
      }
      return good;
    });
