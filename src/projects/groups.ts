/** Group blankets as they are saved: one document each, a list of events that is only ever added to. */
import { createHash } from 'node:crypto';
import * as z from 'zod';
import { LONGEST_NAME, MOST_KINDS, MOST_PLACES } from '../core/base/limits.ts';
import {
  SOMEBODY,
  strangerId,
  type GroupEvent,
  type GroupPlan,
  type Happening,
} from '../core/group/events.ts';
import { BrokenHistory, continued, replay, type GroupState } from '../core/group/state.ts';
import { Problem } from '../core/base/problem.ts';
import type { Elsewhere } from './elsewhere.ts';
import { blanketParts, motifSchema } from './schema.ts';
import { SAFE_ID, type Kind, type Store } from './store.ts';

const makerId = z.string().regex(SAFE_ID);
const colour = z.string().trim().min(1).max(LONGEST_NAME);

const planSchema = blanketParts.omit({ setting: true }).extend({
  kinds: z
    .array(
      z.object({
        ...motifSchema.shape,
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
}) satisfies z.ZodType<GroupPlan>;

const motifs = z.int().min(1).max(MOST_PLACES);
const kind = z
  .int()
  .min(0)
  .max(MOST_KINDS - 1);
const pieces = z.array(z.int().positive()).min(1).max(MOST_PLACES);
const whoAndWhen = { by: makerId, at: z.iso.datetime(), once: z.string().max(120) };

const eventSchema = z.discriminatedUnion('did', [
  z.object({ ...whoAndWhen, did: z.literal('opened'), name: z.string().max(100), plan: planSchema }),
  z.object({ ...whoAndWhen, did: z.literal('invited'), name: z.string().max(100), maker: makerId }),
  z.object({
    ...whoAndWhen,
    did: z.literal('joined'),
    maker: makerId,
    name: z.string().max(100),
    perWeek: z.number().positive().max(1000),
    colours: z.array(colour).max(60),
  }),
  z.object({ ...whoAndWhen, did: z.literal('left'), maker: makerId }),
  z.object({ ...whoAndWhen, did: z.literal('pledged'), maker: makerId, kind, motifs }),
  z.object({ ...whoAndWhen, did: z.literal('released'), maker: makerId, kind, motifs }),
  z.object({
    ...whoAndWhen,
    did: z.literal('handed-in'),
    maker: makerId,
    kind,
    motifs,
    side: z.number().positive().exactOptional(),
  }),
  z.object({ ...whoAndWhen, did: z.literal('accepted'), pieces }),
  z.object({ ...whoAndWhen, did: z.literal('returned'), pieces, reason: z.string().max(300) }),
  z.object({ ...whoAndWhen, did: z.literal('reminded'), maker: makerId }),
  z.object({ ...whoAndWhen, did: z.literal('kept'), maker: makerId }),
  z.object({ ...whoAndWhen, did: z.literal('handed-over'), to: makerId, name: z.string().max(100) }),
  z.object({ ...whoAndWhen, did: z.literal('closed') }),
  z.object({ ...whoAndWhen, did: z.literal('reopened'), closes: z.iso.date().exactOptional() }),
  z.object({ ...whoAndWhen, did: z.literal('undone'), event: z.int().positive() }),
]) satisfies z.ZodType<GroupEvent>;

/** Events that were checked already. They are never changed, so a press need not have all those before it checked again. */
const checked = new WeakSet<object>();
const eventsSchema = z
  .array(z.unknown())
  .min(1)
  .transform((events, issues): GroupEvent[] => {
    const good: GroupEvent[] = [];
    for (const [index, event] of events.entries()) {
      if (typeof event === 'object' && event !== null && checked.has(event)) {
        good.push(event as GroupEvent);
        continue;
      }
      const read = eventSchema.safeParse(event);
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

export const GROUP_VERSION = 1;
export const groupSchema = z.object({
  version: z.literal(GROUP_VERSION),
  id: z.string().regex(SAFE_ID),
  /** The server it belongs to, and the channel whose default it is; unset in the terminal. */
  server: z.string().max(40).exactOptional(),
  channel: z.string().max(40).exactOptional(),
  /** The one message that shows the board, and how many events it showed when it was last drawn. */
  board: z
    .object({ channel: z.string().max(40), message: z.string().max(40), events: z.int().min(0) })
    .exactOptional(),
  /** How often somebody was forgotten: but for that, events are only ever added. */
  edition: z.int().min(0),
  events: eventsSchema,
});
export type GroupDoc = z.infer<typeof groupSchema>;

export const GROUPS: Kind<GroupDoc> = {
  folder: 'groups',
  version: GROUP_VERSION,
  schema: groupSchema,
  migrations: {},
  builtBeside: true,
};

/** Who does something, when, and the press it came from. */
export interface Doing {
  readonly by: string;
  readonly at: Date;
  readonly once: string;
}

export interface Happened {
  readonly id: string;
  readonly state: GroupState;
  /** Empty where the same press had been done before. */
  readonly happened: readonly Happening[];
  readonly again: boolean;
}

/** States that are remembered: those of the blankets that are busy just now. */
const KEPT_STATES = 200;

/** The longest part of an id that a name becomes. */
const LONGEST_SLUG = 60;

/** Where group blankets are kept. */
export class Groups implements Elsewhere {
  constructor(private readonly store: Store) {}

  /** The id of a blanket of this name of this server (or in the terminal). Names that differ by more than capitals and marks never share one. */
  static idOf(server: string | undefined, name: string): string {
    const simple = name.trim().toLowerCase().normalize('NFKC');
    const slug = simple.replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '');
    // A name in other letters than these gets its code points, with a dot, which the others never have.
    const safe =
      slug !== '' && /^[\x20-\x7e]*$/.test(simple) ? slug : `x.${Buffer.from(simple).toString('hex')}`;
    const short =
      safe.length <= LONGEST_SLUG
        ? safe
        : createHash('sha256').update(simple).digest('hex').slice(0, LONGEST_SLUG);
    return `${server ?? 'here'}.${short}`;
  }

  /** The latest states that were needed, so that a press replays what is new and not the whole season. */
  private readonly states = new Map<string, { readonly doc: GroupDoc; readonly state: GroupState }>();

  /** The state of a document. Throws BrokenHistory where its events do not follow from one another. */
  stateOf(doc: GroupDoc): GroupState {
    const { id, edition, events } = doc;
    const known = this.states.get(id);
    // A document that was never written after all may have been seen as well: every event is compared.
    const goesOn =
      known?.doc.edition === edition &&
      known.doc.events.length <= events.length &&
      known.doc.events.every((event, index) => isSame(event, events[index]));
    if (goesOn && known.doc.events.length === events.length) return known.state;
    const state = goesOn ? continued(known.state, known.doc.events.length, events) : replay(events);
    this.states.delete(id);
    this.states.set(id, { doc, state });
    for (const [oldest] of this.states) {
      if (this.states.size <= KEPT_STATES) break;
      this.states.delete(oldest);
    }
    return state;
  }

  async read(id: string): Promise<GroupDoc | undefined> {
    return this.store.read(GROUPS, id);
  }

  /** The blanket of this name of this server (or in the terminal). */
  async named(
    server: string | undefined,
    name: string,
  ): Promise<{ doc: GroupDoc; state: GroupState } | undefined> {
    const doc = await this.read(Groups.idOf(server, name));
    return doc && { doc, state: this.stateOf(doc) };
  }

  /** Blankets whose one message does not show all that happened, or is not there yet though it has a channel. */
  async unshown(): Promise<string[]> {
    const behind: string[] = [];
    for (const id of await this.store.ids(GROUPS)) {
      const doc = await this.read(id);
      if (doc?.channel !== undefined && doc.board?.events !== doc.events.length) behind.push(id);
    }
    return behind;
  }

  /** Every group blanket of a server, the latest opened last. */
  async of(server: string | undefined): Promise<{ doc: GroupDoc; state: GroupState }[]> {
    const ids = await this.store.ids(GROUPS, `${server ?? 'here'}.`);
    const docs = await Promise.all(ids.map((id) => this.store.read(GROUPS, id)));
    return docs
      .flatMap((doc) => (doc ? [{ doc, state: this.stateOf(doc) }] : []))
      .sort((a, b) => (a.doc.events[0]?.at ?? '').localeCompare(b.doc.events[0]?.at ?? ''));
  }

  /** Opens a blanket. Throws a Problem where one of that name is there already. */
  async open(
    place: { readonly server?: string | undefined; readonly channel?: string | undefined },
    plan: GroupPlan,
    doing: Doing & { readonly name: string },
  ): Promise<Happened> {
    const id = Groups.idOf(place.server, plan.name);
    return this.store.change<GroupDoc, Happened>(GROUPS, id, (doc) => {
      if (doc) {
        if (doc.events[0]?.once === doing.once) {
          return { keep: doc, tell: { id, state: this.stateOf(doc), happened: [], again: true } };
        }
        const [first] = doc.events;
        const called = first?.did === 'opened' ? first.plan.name : plan.name;
        throw new Problem('unsorted', `There is a group blanket called ${called} already.`, {
          option: 'name',
          hint: 'Give this one another name.',
        });
      }
      const happening: Happening = { did: 'opened', name: doing.name, plan };
      const keep: GroupDoc = {
        version: GROUP_VERSION,
        id,
        ...(place.server === undefined ? {} : { server: place.server }),
        ...(place.channel === undefined ? {} : { channel: place.channel }),
        edition: 0,
        events: [stamp(happening, doing)],
      };
      return { keep, tell: { id, state: this.stateOf(keep), happened: [happening], again: false } };
    });
  }

  /**
   * Lets something happen: `rule` sees the state as it is at its turn and gives the events that follow, or throws a
   * Problem. When this resolves they are on the disk. A press that arrives twice changes nothing the second time.
   */
  async happen(
    id: string,
    doing: Doing,
    rule: (state: GroupState, doc: GroupDoc) => readonly Happening[],
  ): Promise<Happened> {
    return this.store.change<GroupDoc, Happened>(GROUPS, id, (doc) => {
      if (!doc) throw gone();
      const state = this.stateOf(doc);
      if (doc.events.some((event) => event.once === doing.once)) {
        return { keep: doc, tell: { id, state, happened: [], again: true } };
      }
      const happened = rule(state, doc);
      if (happened.length === 0) return { keep: doc, tell: { id, state, happened, again: false } };
      const keep = { ...doc, events: [...doc.events, ...happened.map((one) => stamp(one, doing))] };
      return { keep, tell: { id, state: stands(() => this.stateOf(keep)), happened, again: false } };
    });
  }

  /** Notes where the board is shown. `before` is the message that the caller knew: where it moved meanwhile, the newer place stays. */
  async noteBoard(
    id: string,
    board: GroupDoc['board'],
    before: string | undefined,
  ): Promise<GroupDoc['board']> {
    return this.store.change(GROUPS, id, (doc) => {
      if (!doc) throw gone();
      if (doc.board?.message !== before) return { keep: doc, tell: doc.board };
      const keep = { ...doc };
      if (board) keep.board = board;
      else delete keep.board;
      return { keep, tell: board };
    });
  }

  async says(maker: string): Promise<readonly string[]> {
    const named: string[] = [];
    for (const doc of await this.with(maker)) {
      const opened = doc.events[0];
      if (opened?.did !== 'opened') continue;
      const runs = this.stateOf(doc).organiser === maker;
      named.push(
        runs
          ? `the running of the group blanket ${opened.plan.name} (hand it over first, if somebody else should run it)`
          : `a part in the group blanket ${opened.plan.name}`,
      );
    }
    return named;
  }

  async collect(maker: string): Promise<Readonly<Record<string, unknown>> | undefined> {
    const docs = await this.with(maker);
    if (docs.length === 0) return undefined;
    return {
      groups: docs.map((doc) => ({
        id: doc.id,
        events: doc.events.filter((event) => mentions(event, maker)),
      })),
    };
  }

  /** Her id and name leave the events; what she made and pledged stays counted, as "a maker". */
  async forget(maker: string): Promise<void> {
    for (const { id } of await this.with(maker)) {
      await this.store.change(GROUPS, id, (doc) => {
        if (!doc) return { keep: undefined, tell: undefined };
        const stranger = strangerIn(doc);
        const isOfHer = wordsOf(maker, this.stateOf(doc));
        return {
          keep: {
            ...doc,
            edition: doc.edition + 1,
            events: doc.events.map((event) =>
              withoutWords(forgotten(event, maker, stranger, doc.events), isOfHer),
            ),
          },
          tell: undefined,
          forgets: true,
        };
      });
    }
  }

  private async with(maker: string): Promise<GroupDoc[]> {
    const found: GroupDoc[] = [];
    for (const id of await this.store.ids(GROUPS)) {
      const doc = await this.store.read(GROUPS, id);
      if (doc?.events.some((event) => mentions(event, maker))) found.push(doc);
    }
    return found;
  }
}

const gone = () =>
  new Problem('unsorted', 'There is no such group blanket.', {
    option: 'name',
    hint: '/together list shows those there are.',
  });

/** Whether two events are one and the same: of the same press, by the same maker, at the same moment. */
const isSame = (a: GroupEvent, b: GroupEvent | undefined) =>
  a === b || (a.once === b?.once && a.at === b.at && a.by === b.by && a.did === b.did);

const stamp = (happening: Happening, { by, at, once }: Doing): GroupEvent => ({
  ...happening,
  by,
  at: at.toISOString(),
  once,
});

/** Turns a history that cannot be into a sentence: somebody undid what something later stands on. */
function stands(state: () => GroupState): GroupState {
  try {
    return state();
  } catch (error) {
    if (!(error instanceof BrokenHistory)) throw error;
    throw new Problem('unsorted', 'That cannot be taken back: something later stands on it.', {
      hint: 'Take back the later one first.',
    });
  }
}

const idsIn = (event: GroupEvent): string[] => [
  event.by,
  ...('maker' in event ? [event.maker] : []),
  ...('to' in event ? [event.to] : []),
];
const mentions = (event: GroupEvent, maker: string) => idsIn(event).includes(maker);

/** An id for somebody who is forgotten, not yet used in this document. */
function strangerIn(doc: GroupDoc): string {
  const used = new Set(doc.events.flatMap(idsIn));
  let number = 1;
  while (used.has(strangerId(number))) number++;
  return strangerId(number);
}

type Returned = Extract<GroupEvent, { did: 'returned' }>;

/** Which reasons for sending motifs back are about hers, or name her. */
function wordsOf(maker: string, { pieces, names }: GroupState) {
  const hers = new Set(pieces.flatMap((piece) => (piece.maker === maker ? [piece.piece] : [])));
  const name = names.get(maker)?.toLowerCase();
  return ({ pieces: sent, reason }: Returned) =>
    sent.some((piece) => hers.has(piece)) ||
    (name !== undefined && name !== '' && reason.toLowerCase().includes(name));
}

/** What somebody wrote of her goes with her; that a motif was sent back stays. */
const withoutWords = <E extends GroupEvent>(event: E, isOfHer: (event: Returned) => boolean): E =>
  event.did === 'returned' && isOfHer(event) ? { ...event, reason: 'erased' } : event;

function forgotten<E extends GroupEvent>(
  event: E,
  maker: string,
  stranger: string,
  all: readonly GroupEvent[],
): E {
  if (!mentions(event, maker)) return event;
  const swap = (id: string) => (id === maker ? stranger : id);
  const named = 'maker' in event ? event.maker : 'to' in event ? event.to : event.by;
  return {
    ...event,
    by: swap(event.by),
    ...('maker' in event ? { maker: swap(event.maker) } : {}),
    ...('to' in event ? { to: swap(event.to) } : {}),
    ...('name' in event && named === maker ? { name: SOMEBODY } : {}),
    // The key of a press is made from who pressed; what came of one press stays together.
    ...(event.by === maker
      ? { once: `${stranger}:${all.findIndex(({ once }) => once === event.once)}` }
      : {}),
  };
}
