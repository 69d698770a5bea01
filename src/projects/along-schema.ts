/** What is saved of a make-along: one document each, a list of events that is only ever added to. */
import * as z from 'zod';
import {
  LONGEST_CM,
  LONGEST_NAME,
  MOST_COUNTS,
  MOST_KINDS,
  MOST_PLACES,
  MOST_ROWS_WORKED,
} from '../core/base/limits.ts';
import { lazily } from '../core/base/lazily.ts';
import { WORKS, type AlongEvent, type AlongPlan } from '../core/along/events.ts';
import { MOST_PARTS } from '../core/along/propose.ts';
import { entriesIn } from './catalogue.ts';
import { eventList, makerId, whoAndWhen } from './event-list.ts';
import { ballSchema, blanketParts, gaugeSchema, motifSchema, nameText } from './schema.ts';
import type { GrowingKind } from './grown.ts';
import { SAFE_ID } from './store.ts';

/** Characters of what a teacher says of a part, and of what a maker says who is stuck. */
export const LONGEST_ASKS = 500;
export const LONGEST_WORDS_OF_STUCK = 300;

const positive = lazily(() => z.number().positive());
const hour = lazily(() => z.int().min(0).max(23));
const zone = lazily(() => z.string().min(1).max(60));
const part = lazily(() => z.int().min(1).max(100_000));
const asks = lazily(() => z.string().max(LONGEST_ASKS));
const name = lazily(() => z.string().max(100));

const partSchema = lazily(() =>
  z.object({
    id: part(),
    title: nameText(),
    from: z.iso.date(),
    work: z.enum(WORKS),
    asks: asks().exactOptional(),
  }),
);

const planSchema = lazily(
  () =>
    blanketParts()
      .omit({ layout: true })
      .extend({
        kinds: z.array(z.object(motifSchema().shape)).min(1).max(MOST_KINDS),
        counts: z.array(z.int().min(0).max(MOST_PLACES)).min(1).max(MOST_KINDS),
        hour: hour(),
        zone: zone(),
        parts: z.array(partSchema()).max(MOST_PARTS),
      }) satisfies z.ZodType<AlongPlan>,
);

const way = lazily(() => ({
  gauge: gaugeSchema().exactOptional(),
  hook: positive().exactOptional(),
  ball: ballSchema().exactOptional(),
  side: positive().max(LONGEST_CM).exactOptional(),
  colours: z
    .array(z.object({ of: z.string().max(LONGEST_NAME), hers: z.string().max(LONGEST_NAME) }))
    .max(100),
  width: positive().max(LONGEST_CM).exactOptional(),
  height: positive().max(LONGEST_CM).exactOptional(),
  perMinute: positive().exactOptional(),
  named: z.boolean(),
}));

const eventSchema = lazily(
  () =>
    z.discriminatedUnion('did', [
      z.object({ ...whoAndWhen(), did: z.literal('opened'), name: name(), plan: planSchema() }),
      z.object({ ...whoAndWhen(), did: z.literal('joined'), name: name(), ...way() }),
      z.object({ ...whoAndWhen(), did: z.literal('left') }),
      z.object({ ...whoAndWhen(), did: z.literal('done'), part: part() }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('stuck'),
        part: part(),
        row: z.int().min(1).max(MOST_ROWS_WORKED).exactOptional(),
        slip: z.string().max(60).exactOptional(),
        counts: z.array(z.int()).max(MOST_COUNTS).exactOptional(),
        words: z.string().max(LONGEST_WORDS_OF_STUCK).exactOptional(),
        help: z.boolean(),
      }),
      z.object({ ...whoAndWhen(), did: z.literal('part-added'), part: partSchema() }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('part-changed'),
        part: part(),
        title: nameText().exactOptional(),
        asks: asks().exactOptional(),
        from: z.iso.date().exactOptional(),
        after: z.int().min(-40_000).max(40_000).exactOptional(),
      }),
      z.object({ ...whoAndWhen(), did: z.literal('part-removed'), part: part() }),
      z.object({ ...whoAndWhen(), did: z.literal('hour-set'), hour: hour(), zone: zone() }),
      z.object({ ...whoAndWhen(), did: z.literal('claimed'), part: part() }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('posted'),
        part: part(),
        channel: z.string().max(40).exactOptional(),
        message: z.string().max(40).exactOptional(),
      }),
      z.object({ ...whoAndWhen(), did: z.literal('not-posted'), part: part() }),
      z.object({ ...whoAndWhen(), did: z.literal('taken-back'), part: part() }),
      z.object({ ...whoAndWhen(), did: z.literal('post-anew'), part: part() }),
      z.object({ ...whoAndWhen(), did: z.literal('message-gone'), part: part() }),
      z.object({ ...whoAndWhen(), did: z.literal('offered-over'), to: makerId(), name: name() }),
      z.object({ ...whoAndWhen(), did: z.literal('handed-over'), to: makerId(), name: name() }),
      z.object({ ...whoAndWhen(), did: z.literal('closed') }),
      z.object({ ...whoAndWhen(), did: z.literal('reopened') }),
      z.object({ ...whoAndWhen(), did: z.literal('undone'), event: z.int().positive() }),
    ]) satisfies z.ZodType<AlongEvent>,
);

/** 2: its events may lie in a file of their own. */
export const ALONG_VERSION = 2;
export const alongSchema = lazily(() =>
  z.object({
    version: z.literal(ALONG_VERSION),
    id: z.string().regex(SAFE_ID),
    /** The server it belongs to, and the channel in which its parts are given out; unset in the terminal. */
    server: z.string().max(40).exactOptional(),
    channel: z.string().max(40).exactOptional(),
    /** How often somebody was forgotten: but for that, events are only ever added. */
    edition: z.int().min(0),
    events: eventList<AlongEvent>(eventSchema()),
  }),
);
const headSchema = lazily(() => alongSchema().omit({ events: true }));
export type AlongDoc = z.infer<ReturnType<typeof alongSchema>>;

export const ALONG_ENTRIES = entriesIn('along-catalogue', 'make-along');

export const ALONGS: GrowingKind<AlongDoc> = {
  folder: 'alongs',
  called: 'What is saved of this make-along',
  version: ALONG_VERSION,
  get schema() {
    return alongSchema();
  },
  migrations: { 1: (older) => older },
  builtBeside: true,
  grows: {
    list: 'events',
    get item() {
      return eventSchema();
    },
    get head() {
      return headSchema();
    },
  },
};
