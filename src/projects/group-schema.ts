/** What is saved of a group blanket: one document each, a list of events that is only ever added to. */
import * as z from 'zod';
import { LONGEST_NAME, MOST_COLOURS_AT_HAND, MOST_KINDS, MOST_PLACES } from '../core/base/limits.ts';
import { lazily } from '../core/base/lazily.ts';
import type { GroupEvent, GroupPlan } from '../core/group/events.ts';
import { entriesIn } from './catalogue.ts';
import { eventList, makerId, whoAndWhen } from './event-list.ts';
import { blanketParts, motifSchema } from './schema.ts';
import type { GrowingKind } from './grown.ts';
import { SAFE_ID } from './store.ts';

const colour = lazily(() => z.string().trim().min(1).max(LONGEST_NAME));

const planSchema = lazily(
  () =>
    blanketParts()
      .omit({ setting: true })
      .extend({
        kinds: z
          .array(
            z.object({
              ...motifSchema().omit({ minutes: true }).shape,
              quota: z.int().min(0).max(MOST_PLACES),
              spares: z.int().min(0).max(MOST_PLACES),
            }),
          )
          .min(1)
          .max(MOST_KINDS),
        side: z.number().positive(),
        tolerance: z.number().min(0).max(100),
        closes: z.iso.date().exactOptional(),
        joinable: z.enum(['anyone', 'named']),
      }) satisfies z.ZodType<GroupPlan>,
);

const motifs = lazily(() => z.int().min(1).max(MOST_PLACES));
const kind = lazily(() =>
  z
    .int()
    .min(0)
    .max(MOST_KINDS - 1),
);
const pieces = lazily(() => z.array(z.int().positive()).min(1).max(MOST_PLACES));

const eventSchema = lazily(
  () =>
    z.discriminatedUnion('did', [
      z.object({ ...whoAndWhen(), did: z.literal('opened'), name: z.string().max(100), plan: planSchema() }),
      z.object({ ...whoAndWhen(), did: z.literal('invited'), name: z.string().max(100), maker: makerId() }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('joined'),
        maker: makerId(),
        name: z.string().max(100),
        perWeek: z.number().positive().max(1000),
        colours: z.array(colour()).max(MOST_COLOURS_AT_HAND),
      }),
      z.object({ ...whoAndWhen(), did: z.literal('left'), maker: makerId() }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('pledged'),
        maker: makerId(),
        kind: kind(),
        motifs: motifs(),
      }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('released'),
        maker: makerId(),
        kind: kind(),
        motifs: motifs(),
      }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('handed-in'),
        maker: makerId(),
        kind: kind(),
        motifs: motifs(),
        side: z.number().positive().exactOptional(),
        weight: z.number().positive().exactOptional(),
      }),
      z.object({ ...whoAndWhen(), did: z.literal('accepted'), pieces: pieces() }),
      z.object({
        ...whoAndWhen(),
        did: z.literal('returned'),
        pieces: pieces(),
        reason: z.string().max(300),
      }),
      z.object({ ...whoAndWhen(), did: z.literal('reminded'), maker: makerId() }),
      z.object({ ...whoAndWhen(), did: z.literal('kept'), maker: makerId() }),
      z.object({ ...whoAndWhen(), did: z.literal('barred'), maker: makerId(), reason: z.string().max(300) }),
      z.object({ ...whoAndWhen(), did: z.literal('readmitted'), maker: makerId() }),
      z.object({ ...whoAndWhen(), did: z.literal('offered-over'), to: makerId(), name: z.string().max(100) }),
      z.object({ ...whoAndWhen(), did: z.literal('declined'), maker: makerId() }),
      z.object({ ...whoAndWhen(), did: z.literal('handed-over'), to: makerId(), name: z.string().max(100) }),
      z.object({ ...whoAndWhen(), did: z.literal('closed') }),
      z.object({ ...whoAndWhen(), did: z.literal('reopened'), closes: z.iso.date().exactOptional() }),
      z.object({ ...whoAndWhen(), did: z.literal('undone'), event: z.int().positive() }),
    ]) satisfies z.ZodType<GroupEvent>,
);

const eventsSchema = lazily(() => eventList<GroupEvent>(eventSchema()));

/**
 * 2: a maker can be kept from pledging, and a hand-over waits for a yes. 3: motifs are weighed when they are handed in, and a
 * kind keeps its readings of the scale. 4: it may have a thread and an event of its server. 5: photos of what was
 * handed in stand in its channel. 6: its events may lie in a file of their own. What the earlier versions say is said in the same way.
 */
export const GROUP_VERSION = 6;
export const groupSchema = lazily(() =>
  z.object({
    version: z.literal(GROUP_VERSION),
    id: z.string().regex(SAFE_ID),
    /** The server it belongs to, and the channel whose default it is; unset in the terminal. */
    server: z.string().max(40).exactOptional(),
    channel: z.string().max(40).exactOptional(),
    /** The one message that shows the board, and how many events it showed when it was last drawn. */
    board: z
      .object({ channel: z.string().max(40), message: z.string().max(40), events: z.int().min(0) })
      .exactOptional(),
    /** How often the channel of the board was lost. */
    lost: z.int().min(1).exactOptional(),
    /** The thread that its board is to stand in: the channel it is of, and its id once it was made. */
    thread: z.object({ from: z.string().max(40), id: z.string().max(40).exactOptional() }).exactOptional(),
    /** The event of the server for its closing day: whether it is wanted, and once it was made, its id and the day it says. */
    event: z
      .object({
        wanted: z.boolean(),
        made: z.object({ id: z.string().max(40), closes: z.iso.date() }).exactOptional(),
      })
      .exactOptional(),
    /** Where photos of motifs stand: the message of each, and the numbers of the motifs on it. The pictures are not kept. */
    photos: z
      .array(z.object({ pieces: pieces(), channel: z.string().max(40), message: z.string().max(40) }))
      .exactOptional(),
    /** How often somebody was forgotten: but for that, events are only ever added. */
    edition: z.int().min(0),
    events: eventsSchema(),
  }),
);
const headSchema = lazily(() => groupSchema().omit({ events: true }));
export type GroupDoc = z.infer<ReturnType<typeof groupSchema>>;

export const GROUP_ENTRIES = entriesIn('catalogue', 'group blanket');

export const GROUPS: GrowingKind<GroupDoc> = {
  folder: 'groups',
  called: 'What is saved of this group blanket',
  version: GROUP_VERSION,
  get schema() {
    return groupSchema();
  },
  migrations: {
    1: (older) => older,
    2: (older) => older,
    3: (older) => older,
    4: (older) => older,
    5: (older) => older,
  },
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
