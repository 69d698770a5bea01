/** Group blankets: opened, changed by what happens to them, found, and cleared of a maker who asks for it. */
import { createHash } from 'node:crypto';
import type { GroupEvent, GroupPlan, Happening } from '../core/group/events.ts';
import { BrokenHistory, continueState, replay, type GroupState } from '../core/group/state.ts';
import { Problem } from '../core/base/problem.ts';
import { Catalogue, makersIn, type Entry } from './catalogue.ts';
import type { Elsewhere, Forgotten } from './elsewhere.ts';
import { idsIn, mentions, withoutMaker } from './group-forgetting.ts';
import { GROUP_VERSION, GROUPS, type GroupDoc } from './group-schema.ts';
import { Unreadable } from './not-saved.ts';
import { mayHappen, mayOpen } from './quotas.ts';
import type { Store } from './store.ts';

export type { GroupDoc } from './group-schema.ts';

/** Who does something, when, and the press it came from. */
export interface Doing {
  readonly by: string;
  readonly at: Date;
  readonly once: string;
}

export interface Happened {
  readonly id: string;
  /** The document as it is on the disk then. */
  readonly doc: GroupDoc;
  readonly state: GroupState;
  /** Empty where the same press had been done before. */
  readonly happened: readonly Happening[];
  readonly again: boolean;
}

/** States that are remembered: those of the blankets that are busy just now. */
const KEPT_STATES = 200;

/** The longest part of an id that a name becomes. */
const LONGEST_SLUG = 60;

/** Thrown out of a change that names somebody whom the catalogue does not name yet. */
class Unlisted extends Error {
  constructor(
    readonly doc: GroupDoc,
    readonly makers: readonly string[],
  ) {
    super('not in the catalogue yet');
  }
}

interface Known {
  readonly doc: GroupDoc;
  readonly state: GroupState;
  readonly makers: ReadonlySet<string>;
}

/** Where group blankets are kept. */
export class Groups implements Elsewhere {
  private readonly catalogue: Catalogue;

  constructor(private readonly store: Store) {
    this.catalogue = new Catalogue(store);
  }

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
  private readonly states = new Map<string, Known>();

  /** The state of a document. Throws BrokenHistory where its events do not follow from one another. */
  stateOf(doc: GroupDoc): GroupState {
    return this.known(doc).state;
  }

  private known(doc: GroupDoc): Known {
    const { id, edition, events } = doc;
    const before = this.states.get(id);
    // A document that was never written after all may have been seen as well: every event is compared.
    const goesOn =
      before?.doc.edition === edition &&
      before.doc.events.length <= events.length &&
      before.doc.events.every((event, index) => isSame(event, events[index]));
    if (goesOn && before.doc.events.length === events.length) return before;
    const known: Known = goesOn
      ? {
          doc,
          state: continueState(before.state, before.doc.events.length, events),
          makers: new Set([...before.makers, ...events.slice(before.doc.events.length).flatMap(idsIn)]),
        }
      : { doc, state: replay(events), makers: makersIn(doc) };
    this.states.delete(id);
    this.states.set(id, known);
    for (const [oldest] of this.states) {
      if (this.states.size <= KEPT_STATES) break;
      this.states.delete(oldest);
    }
    return known;
  }

  async read(id: string): Promise<GroupDoc | undefined> {
    return this.store.read(GROUPS, id);
  }

  /** A document with its state. Throws Unreadable where its events do not follow from one another. */
  private withState(doc: GroupDoc): { doc: GroupDoc; state: GroupState } {
    try {
      return { doc, state: this.stateOf(doc) };
    } catch (error) {
      if (!(error instanceof BrokenHistory)) throw error;
      throw new Unreadable(
        'history-broken',
        'The history of this group blanket does not follow from itself. Nothing was changed.',
        'Whoever runs this has the file.',
        error,
      );
    }
  }

  /** The blanket of this name of this server (or in the terminal). Throws Unreadable where it is there and cannot be read. */
  async named(
    server: string | undefined,
    name: string,
  ): Promise<{ doc: GroupDoc; state: GroupState } | undefined> {
    const doc = await this.read(Groups.idOf(server, name));
    return doc && this.withState(doc);
  }

  /** The blankets of these ids that can be read; what cannot concerns only whom it names. */
  async these(ids: readonly string[]): Promise<{ doc: GroupDoc; state: GroupState }[]> {
    const found = await Promise.all(
      ids.map(async (id) => {
        try {
          const doc = await this.read(id);
          return doc && this.withState(doc);
        } catch (error) {
          if (error instanceof Unreadable) return undefined;
          throw error;
        }
      }),
    );
    return found.flatMap((one) => one ?? []);
  }

  /** Blankets whose one message does not show all that happened, or is not there yet though it has a channel. */
  async unshown(): Promise<string[]> {
    const behind: string[] = [];
    for (const { id, channel } of await this.catalogue.entries()) {
      if (channel === undefined) continue;
      const [found] = await this.these([id]);
      if (found && found.doc.board?.events !== found.doc.events.length) behind.push(id);
    }
    return behind;
  }

  /** Every group blanket of a server that can be read, the latest opened last. */
  async of(server: string | undefined): Promise<{ doc: GroupDoc; state: GroupState }[]> {
    const found = await this.these(await this.store.ids(GROUPS, `${server ?? 'here'}.`));
    return found.sort((a, b) => (a.doc.events[0]?.at ?? '').localeCompare(b.doc.events[0]?.at ?? ''));
  }

  /** What the group blankets of a server are called and where they belong, without reading them, the latest opened last. */
  async listed(server: string | undefined): Promise<readonly Entry[]> {
    const entries = await this.catalogue.entries(`${server ?? 'here'}.`);
    return entries.sort((a, b) => a.opened.localeCompare(b.opened));
  }

  /**
   * Opens a blanket. Throws a Problem where one of that name is there already, readable or not, and where there are too
   * many.
   */
  async open(
    place: { readonly server?: string | undefined; readonly channel?: string | undefined },
    plan: GroupPlan,
    doing: Doing & { readonly name: string },
  ): Promise<Happened> {
    const id = Groups.idOf(place.server, plan.name);
    const happening: Happening = { did: 'opened', name: doing.name, plan };
    const fresh: GroupDoc = {
      version: GROUP_VERSION,
      id,
      ...(place.server === undefined ? {} : { server: place.server }),
      ...(place.channel === undefined ? {} : { channel: place.channel }),
      edition: 0,
      events: [stamp(happening, doing)],
    };
    if (!(await this.isThere(id, plan.name))) {
      mayOpen(await this.listed(place.server), { ...doing, called: plan.name });
      await this.catalogue.note(fresh, [doing.by]);
    }
    return this.store.change<GroupDoc, Happened>(GROUPS, id, (doc) => {
      if (doc?.events[0]?.once === doing.once)
        return { keep: doc, tell: { id, doc, state: this.stateOf(doc), happened: [], again: true } };
      if (doc) throw nameTaken(nameOf(doc) ?? plan.name);
      return {
        keep: fresh,
        tell: { id, doc: fresh, state: this.stateOf(fresh), happened: [happening], again: false },
      };
    });
  }

  /** Whether a blanket is there. Throws a Problem where one is there that cannot be read: its name is not free. */
  private async isThere(id: string, name: string): Promise<boolean> {
    try {
      return (await this.read(id)) !== undefined;
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      throw nameTaken(name, error);
    }
  }

  /**
   * Lets something happen: `rule` sees the state as it is at its turn and gives the events that follow, or throws a
   * Problem; it may be asked twice. When this resolves they are on the disk. A press that arrives twice changes nothing
   * the second time.
   */
  async happen(
    id: string,
    doing: Doing,
    rule: (state: GroupState, doc: GroupDoc) => readonly Happening[],
  ): Promise<Happened> {
    for (let listed: ReadonlySet<string> = new Set((await this.catalogue.entry(id))?.makers); ;) {
      try {
        return await this.happens(id, doing, rule, listed);
      } catch (error) {
        if (!(error instanceof Unlisted)) throw error;
        listed = await this.catalogue.note(error.doc, error.makers);
      }
    }
  }

  private happens(
    id: string,
    doing: Doing,
    rule: (state: GroupState, doc: GroupDoc) => readonly Happening[],
    listed: ReadonlySet<string>,
  ): Promise<Happened> {
    return this.store.change<GroupDoc, Happened>(GROUPS, id, (doc) => {
      if (!doc) throw gone();
      const { state } = this.withState(doc);
      if (doc.events.some((event) => event.once === doing.once)) {
        return { keep: doc, tell: { id, doc, state, happened: [], again: true } };
      }
      const happened = rule(state, doc);
      if (happened.length === 0) return { keep: doc, tell: { id, doc, state, happened, again: false } };
      mayHappen(doc, state, happened, doing);
      const keep = { ...doc, events: [...doc.events, ...happened.map((one) => stamp(one, doing))] };
      const after = stands(() => this.known(keep));
      const unlisted = [...after.makers].filter((maker) => !listed.has(maker));
      if (unlisted.length > 0) throw new Unlisted(doc, unlisted);
      return { keep, tell: { id, doc: keep, state: after.state, happened, again: false } };
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

  /** Gives the board a channel; where it stood in another, its message moves there. */
  async moveBoard(id: string, channel: string): Promise<void> {
    const moved = await this.store.change<GroupDoc, GroupDoc>(GROUPS, id, (doc) => {
      if (!doc) throw gone();
      const keep = doc.channel === channel ? doc : { ...doc, channel };
      return { keep, tell: keep };
    });
    await this.catalogue.note(moved, []);
  }

  /** Notes that the channel of the board is no more, unless it moved meanwhile. */
  async loseBoard(id: string, channel: string): Promise<void> {
    const left = await this.store.change<GroupDoc, GroupDoc>(GROUPS, id, (doc) => {
      if (!doc) throw gone();
      if ((doc.channel ?? doc.board?.channel) !== channel) return { keep: doc, tell: doc };
      // Where it was to move there, it stays where it stands.
      if (doc.board !== undefined && doc.board.channel !== channel)
        return { keep: { ...doc, channel: doc.board.channel }, tell: { ...doc, channel: doc.board.channel } };
      const keep = { ...doc };
      delete keep.channel;
      delete keep.board;
      return { keep, tell: keep };
    });
    await this.catalogue.note(left, []);
  }

  async says(maker: string): Promise<readonly string[]> {
    const { found, unreadable } = await this.with(maker);
    return [
      ...found.map((doc) => partOf(doc, this.stateOf(doc).organiser === maker)),
      ...unreadable.map(({ name }) => `a part in the group blanket ${name}, which cannot be read now`),
    ];
  }

  async collect(maker: string): Promise<Readonly<Record<string, unknown>> | undefined> {
    const { found, unreadable } = await this.with(maker);
    if (found.length + unreadable.length === 0) return undefined;
    return {
      groups: [
        ...found.map((doc) => ({
          id: doc.id,
          events: doc.events.filter((event) => mentions(event, maker)),
        })),
        ...unreadable.map(({ id, problem }) => ({ id, unreadable: problem.message })),
      ],
    };
  }

  /** Her id and name leave the events; what she made and pledged stays counted, as "a maker". */
  async forget(maker: string): Promise<Forgotten> {
    const { found, unreadable } = await this.with(maker);
    const removed: string[] = [];
    for (const { id } of found) {
      const said = await this.store.change<GroupDoc, string | undefined>(GROUPS, id, (doc) => {
        if (!doc) return { keep: undefined, tell: undefined };
        const { state } = this.withState(doc);
        return {
          keep: withoutMaker(doc, state, maker),
          tell: partOf(doc, state.organiser === maker),
          forgets: true,
        };
      });
      await this.catalogue.forget(id, maker);
      if (said !== undefined) removed.push(said);
    }
    return {
      removed,
      left: unreadable.map(
        ({ name }) =>
          `a part in the group blanket ${name}, which cannot be read now; whoever runs this has the file`,
      ),
    };
  }

  /** The blankets that name a maker, and those that may and cannot be read. */
  private async with(maker: string): Promise<{
    found: GroupDoc[];
    unreadable: { id: string; name: string; problem: Unreadable }[];
  }> {
    const found: GroupDoc[] = [];
    const unreadable: { id: string; name: string; problem: Unreadable }[] = [];
    for (const { id, name } of await this.catalogue.naming(maker)) {
      try {
        const doc = await this.read(id);
        if (!doc || !this.known(this.withState(doc).doc).makers.has(maker)) continue;
        found.push(doc);
      } catch (problem) {
        if (!(problem instanceof Unreadable)) throw problem;
        unreadable.push({ id, name, problem });
      }
    }
    return { found, unreadable };
  }
}

const nameOf = ({ events: [first] }: GroupDoc): string | undefined =>
  first?.did === 'opened' ? first.plan.name : undefined;

const partOf = (doc: GroupDoc, runs: boolean): string =>
  runs
    ? `the running of the group blanket ${nameOf(doc) ?? doc.id} (hand it over first, if somebody else should run it)`
    : `a part in the group blanket ${nameOf(doc) ?? doc.id}`;

function nameTaken(name: string, unreadable?: Unreadable): Problem {
  return new Problem(
    'group-name-taken',
    `There is a group blanket called ${name} already${unreadable ? ', which cannot be read now' : ''}.`,
    { option: 'name', hint: 'Give this one another name.' },
  );
}

const gone = () =>
  new Problem('no-such-group', 'There is no such group blanket.', {
    option: 'name',
    hint: 'The list of group blankets shows those there are.',
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
function stands<T>(state: () => T): T {
  try {
    return state();
  } catch (error) {
    if (!(error instanceof BrokenHistory)) throw error;
    throw new Problem('later-stands-on-it', 'That cannot be taken back: something later stands on it.', {
      hint: 'Take back the later one first.',
    });
  }
}
