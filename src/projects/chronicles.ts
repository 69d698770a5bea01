/**
 * Documents that are lists of events: opened, changed by what happens to them, found, and cleared of a maker who asks for it. What a
 * group makes is such a thing, and what a class makes along with its teacher is another.
 */
import { createHash } from 'node:crypto';
import { BrokenHistory, type Stamp } from '../core/base/history.ts';
import { Problem } from '../core/base/problem.ts';
import { Catalogue, type Entry } from './catalogue.ts';
import type { Elsewhere, Forgotten } from './elsewhere.ts';
import { namesIn } from './forgetting.ts';
import { checkedEntry, entriesOf, firstOf, grown, lengthOf, type GrowingKind } from './grown.ts';
import { Live } from './live.ts';
import { Unreadable } from './not-saved.ts';
import { atOnce, inPieces } from './pieces.ts';
import type { Kind, Store } from './store.ts';

/** Who does something, when, and the press it came from. */
export interface Doing {
  readonly by: string;
  readonly at: Date;
  readonly once: string;
}

/** Such a document. */
export interface EventDoc<Event extends Stamp> {
  readonly id: string;
  /** The server it belongs to, and the channel whose default it is; unset in the terminal. */
  readonly server?: string;
  readonly channel?: string;
  /** Where the channel is a thread: of which one. */
  readonly thread?: { readonly from: string };
  /** How often somebody was forgotten: but for that, events are only ever added. */
  readonly edition: number;
  readonly events: readonly Event[];
}

/** How much happened to it before. */
export interface Past {
  readonly events: number;
  readonly eventsBy: (maker: string) => number;
  /** How long all of it would be, in characters, with what is to happen. */
  readonly characters: number;
}

export interface Happened<Doc, Happening, State> {
  readonly id: string;
  /** The document as it is on the disk then. */
  readonly doc: Doc;
  readonly state: State;
  /** Empty where the same press had been done before. */
  readonly happened: readonly Happening[];
  readonly again: boolean;
}

/** What one kind of such documents is, and by what rules its events follow from one another. */
export interface Chronicle<Doc extends EventDoc<Happening & Stamp>, Happening extends object, State> {
  readonly docs: GrowingKind<Doc>;
  readonly entries: Kind<Entry>;
  /** As people say it: `group blanket`. */
  readonly called: string;
  /** The codes of what is wrong with it are made of this: `group` makes `no-such-group`. */
  readonly code: string;
  /** What is exported of it stands under this name. */
  readonly exported: string;
  nameOf(doc: Doc): string | undefined;
  /** The makers whom an event names. */
  readonly idsIn: (event: Happening & Stamp) => readonly string[];
  /**
   * The state after more events than the `known` ones that are in `before`, which stays as it is; `undone` are the numbers of
   * those that were taken back. Throws BrokenHistory where they do not follow from one another.
   */
  goOn(
    before: State | undefined,
    known: number,
    more: readonly (Happening & Stamp)[],
    undone: ReadonlySet<number>,
  ): State;
  /** Throws a Problem where no more may be opened. */
  mayOpen(entries: readonly Entry[], who: Doing & { readonly called: string }): void;
  /** Throws a Problem where so much may not happen to it any more. */
  mayHappen(past: Past, state: State, happened: readonly Happening[], doing: Doing): void;
  /** The document without her id, her name, and what was written of her. */
  withoutMaker(doc: Doc, state: State, maker: string): Doc;
  /** What is kept of her in it beside the events, for her own export. */
  beside?(doc: Doc, state: State, maker: string): Readonly<Record<string, unknown>>;
  /** What a maker has in it, in a few words. */
  partOf(name: string, state: State, maker: string): string;
}

/** Documents of which it is remembered what their events come to: those that are busy just now. */
const KEPT_LIVE = 200;

/** What a press goes by that was looked at before its turn. */
interface Known {
  /** The edition of the document, undefined where there was none. */
  readonly edition: number | undefined;
  /** Whom the catalogue named after that. */
  readonly listed: ReadonlySet<string>;
}

/** Thrown out of a change before whose turn somebody was forgotten: the catalogue may not name her any more. */
class Forgot extends Error {}

/** The longest part of an id that a name becomes. */
const LONGEST_SLUG = 60;

/** Thrown out of a change that names somebody whom the catalogue does not name yet. */
class Unlisted<Doc> extends Error {
  constructor(
    readonly doc: Doc,
    readonly makers: readonly string[],
  ) {
    super('not in the catalogue yet');
  }
}

/** The id of a thing of this name of this server (or in the terminal). Names that differ by more than capitals and marks never share one. */
export function idOf(server: string | undefined, name: string): string {
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

/** Where documents of one kind are kept. */
export class Chronicles<
  Doc extends EventDoc<Happening & Stamp>,
  Happening extends object,
  State,
> implements Elsewhere {
  protected readonly catalogue: Catalogue<Doc>;

  constructor(
    protected readonly store: Store,
    protected readonly kind: Chronicle<Doc, Happening, State>,
  ) {
    this.catalogue = new Catalogue(store, kind);
  }

  /** What the events of the documents that are busy come to, by id, the longest unused first. */
  private readonly live = new Map<string, Live<Happening & Stamp, State>>();
  /** States of documents that somebody holds. */
  private readonly states = new WeakMap<object, State>();
  /** Documents that are being looked at, or were. */
  private readonly looking = new WeakMap<object, Promise<void>>();
  /** The makers of entries, as sets. */
  private readonly makersOf = new WeakMap<Entry, ReadonlySet<string>>();

  /** The state of a document. Throws BrokenHistory where its events do not follow from one another. */
  stateOf(doc: Doc): State {
    const known = this.states.get(doc);
    if (known !== undefined) return known;
    const state = atOnce(this.liveOf(doc).reckon(doc));
    this.states.set(doc, state);
    return state;
  }

  private liveOf(doc: Doc): Live<Happening & Stamp, State> {
    const known = this.live.get(doc.id);
    // What began otherwise, or was read anew, is looked at anew.
    const live = known?.entries === entriesOf(doc) ? known : new Live(entriesOf(doc), this.kind);
    this.live.delete(doc.id);
    this.live.set(doc.id, live);
    for (const [oldest] of this.live) {
      if (this.live.size <= KEPT_LIVE) break;
      this.live.delete(oldest);
    }
    return live;
  }

  /**
   * Reckons the state of a long history in pieces, others being heard in between, and counts what is asked of it at a press. Whoever
   * waits for the same goes on in the order of asking.
   */
  private lookedAt(doc: Doc): Promise<void> {
    const looking = this.looking.get(doc) ?? this.lookAt(doc);
    this.looking.set(doc, looking);
    return looking;
  }

  private async lookAt(doc: Doc): Promise<void> {
    const live = this.liveOf(doc);
    try {
      if (!this.states.has(doc)) this.states.set(doc, await inPieces(live.reckon(doc)));
      // Whoever looks at it while more is being added would have all of it counted anew.
      if (!live.counts(doc)) await inPieces(live.count(doc));
    } catch (error) {
      // Whoever asks for the state is told.
      if (!(error instanceof BrokenHistory)) throw error;
    }
  }

  async read(id: string): Promise<Doc | undefined> {
    return this.store.read(this.kind.docs, id);
  }

  /** A document with its state, reckoned in pieces where it is long. Throws Unreadable where it is there and cannot be read. */
  async whole(id: string): Promise<{ doc: Doc; state: State } | undefined> {
    const doc = await this.read(id);
    if (doc === undefined) return undefined;
    await this.lookedAt(doc);
    return this.withState(doc);
  }

  /** A document with its state. Throws Unreadable where its events do not follow from one another. */
  protected withState(doc: Doc): { doc: Doc; state: State } {
    try {
      return { doc, state: this.stateOf(doc) };
    } catch (error) {
      if (!(error instanceof BrokenHistory)) throw error;
      throw new Unreadable(
        'history-broken',
        `The history of this ${this.kind.called} does not follow from itself. Nothing was changed.`,
        'Whoever runs this has the file.',
        error,
      );
    }
  }

  /** The one of this name of this server (or in the terminal). Throws Unreadable where it is there and cannot be read. */
  async named(server: string | undefined, name: string): Promise<{ doc: Doc; state: State } | undefined> {
    return this.whole(idOf(server, name));
  }

  /** Those of these ids that can be read; what cannot concerns only whom it names. */
  async these(ids: readonly string[]): Promise<{ doc: Doc; state: State }[]> {
    const found = await Promise.all(
      ids.map(async (id) => {
        try {
          return await this.whole(id);
        } catch (error) {
          if (error instanceof Unreadable) return undefined;
          throw error;
        }
      }),
    );
    return found.flatMap((one) => one ?? []);
  }

  /** Every one of a server that can be read, the latest opened last. */
  async of(server: string | undefined): Promise<{ doc: Doc; state: State }[]> {
    const found = await this.these(await this.store.ids(this.kind.docs, `${server ?? 'here'}.`));
    return found.sort((a, b) => (firstOf(a.doc)?.at ?? '').localeCompare(firstOf(b.doc)?.at ?? ''));
  }

  /** What those of a server are called and where they belong, without reading them, the latest opened last. */
  async listed(server: string | undefined): Promise<readonly Entry[]> {
    const entries = await this.catalogue.entries(`${server ?? 'here'}.`);
    return entries.sort((a, b) => a.opened.localeCompare(b.opened));
  }

  /**
   * Opens one, `fresh` with its first event. Throws a Problem where one of that name is there already, readable or not, and where there are
   * too many.
   */
  protected async begin(name: string, fresh: Doc, doing: Doing): Promise<Happened<Doc, Happening, State>> {
    const { id, server } = fresh;
    const opened = firstOf(fresh);
    if (!(await this.isThere(id, name))) {
      this.kind.mayOpen(await this.listed(server), { ...doing, called: name });
      await this.catalogue.note(fresh, [doing.by]);
    }
    return this.store.change<Doc, Happened<Doc, Happening, State>>(this.kind.docs, id, (doc) => {
      if (doc && firstOf(doc)?.once === doing.once)
        return { keep: doc, tell: { id, doc, state: this.stateOf(doc), happened: [], again: true } };
      if (doc) throw this.nameTaken(this.kind.nameOf(doc) ?? name);
      return {
        keep: fresh,
        tell: {
          id,
          doc: fresh,
          state: this.stateOf(fresh),
          happened: opened === undefined ? [] : [opened],
          again: false,
        },
      };
    });
  }

  /** Whether one is there. Throws a Problem where one is there that cannot be read: its name is not free. */
  private async isThere(id: string, name: string): Promise<boolean> {
    try {
      return (await this.read(id)) !== undefined;
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      throw this.nameTaken(name, error);
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
    rule: (state: State, doc: Doc) => readonly Happening[],
  ): Promise<Happened<Doc, Happening, State>> {
    for (;;) {
      const doc = await this.read(id);
      if (doc !== undefined) await this.lookedAt(doc);
      // Looked at after the document, so that nobody who is forgotten from here on goes unnoticed.
      const entry = await this.catalogue.entry(id);
      const known: Known = { edition: doc?.edition, listed: this.makersIn(entry) };
      try {
        return await this.happensOrLists(id, doing, rule, known);
      } catch (error) {
        if (!(error instanceof Forgot)) throw error;
      }
    }
  }

  private async happensOrLists(
    id: string,
    doing: Doing,
    rule: (state: State, doc: Doc) => readonly Happening[],
    known: Known,
  ): Promise<Happened<Doc, Happening, State>> {
    for (let { listed } = known; ;) {
      try {
        return await this.happens(id, doing, rule, { ...known, listed });
      } catch (error) {
        if (!(error instanceof Unlisted)) throw error;
        listed = await this.catalogue.note((error as Unlisted<Doc>).doc, error.makers);
      }
    }
  }

  private makersIn(entry: Entry | undefined): ReadonlySet<string> {
    if (entry === undefined) return new Set();
    const known = this.makersOf.get(entry) ?? new Set(entry.makers);
    this.makersOf.set(entry, known);
    return known;
  }

  private happens(
    id: string,
    doing: Doing,
    rule: (state: State, doc: Doc) => readonly Happening[],
    { edition, listed }: Known,
  ): Promise<Happened<Doc, Happening, State>> {
    return this.store.change<Doc, Happened<Doc, Happening, State>>(this.kind.docs, id, (doc) => {
      if (!doc) throw this.gone();
      if (edition !== undefined && doc.edition !== edition) throw new Forgot();
      const { state } = this.withState(doc);
      const live = this.liveOf(doc);
      const past = atOnce(live.count(doc));
      if (past.presses.has(doing.once))
        return { keep: undefined, tell: { id, doc, state, happened: [], again: true } };
      const happened = rule(state, doc);
      if (happened.length === 0) return { keep: undefined, tell: { id, doc, state, happened, again: false } };
      const events = lengthOf(doc);
      const add = happened.map(
        (one) => checkedEntry(this.kind.docs as GrowingKind, stamp(one, doing)) as Happening & Stamp,
      );
      const before: Past = {
        events,
        eventsBy: (maker) => past.by.get(maker) ?? 0,
        characters: past.characters + JSON.stringify(add).length,
      };
      this.kind.mayHappen(before, state, happened, doing);
      const after = stands(() => live.after(doc, state, add));
      const unlisted = past.notIn(listed, add);
      if (unlisted.length > 0) throw new Unlisted(doc, unlisted);
      const next = grown(doc, add);
      // Of another list, where something was added before that came to nothing.
      this.liveOf(next).keep(events + add.length, after);
      this.states.set(next, after);
      return { keep: undefined, add, tell: { id, doc: next, state: after, happened, again: false } };
    });
  }

  /** Whether any of them names her. */
  async names(maker: string): Promise<boolean> {
    return (await this.catalogue.naming(maker)).length > 0;
  }

  /** Whether one of them names her, as far as its entry tells. */
  async mayName(id: string, maker: string): Promise<boolean> {
    return (await this.catalogue.entry(id))?.makers.includes(maker) === true;
  }

  async says(maker: string): Promise<readonly string[]> {
    const { found, unreadable } = await this.with(maker);
    return [
      ...found.map((doc) => this.partOf(doc, maker)),
      ...unreadable.map(({ name }) => `a part in the ${this.kind.called} ${name}, which cannot be read now`),
    ];
  }

  async collect(maker: string): Promise<Readonly<Record<string, unknown>> | undefined> {
    const { found, unreadable } = await this.with(maker);
    if (found.length + unreadable.length === 0) return undefined;
    return {
      [this.kind.exported]: [
        ...found.map((doc) => ({
          id: doc.id,
          events: doc.events.filter((event) => this.kind.idsIn(event).includes(maker)),
          ...this.kind.beside?.(doc, this.stateOf(doc), maker),
        })),
        ...unreadable.map(({ id, problem }) => ({ id, unreadable: problem.message })),
      ],
    };
  }

  /** Every name that she has in any of them. */
  async calls(maker: string): Promise<readonly string[]> {
    const { found } = await this.with(maker);
    return found.flatMap(({ events }) => namesIn(events, maker));
  }

  /** Her id and name leave the events; what she made and pledged stays counted, as "a maker". */
  async forget(maker: string): Promise<Forgotten> {
    const { found, unreadable } = await this.with(maker);
    const removed: string[] = [];
    for (const { id } of found) removed.push(...(await this.forgetIn(id, maker)));
    return {
      removed,
      left: unreadable.map(
        ({ name }) =>
          `a part in the ${this.kind.called} ${name}, which cannot be read now; whoever runs this has the file`,
      ),
    };
  }

  /**
   * Takes her out of one document, then out of its entry. A press that had looked at the entry before may name her in between: she is
   * taken out again then, until nobody does; whoever comes later finds another edition, and looks at the entry anew.
   */
  private async forgetIn(id: string, maker: string): Promise<string[]> {
    const change = (first: boolean) =>
      this.store.change<Doc, readonly string[] | undefined>(this.kind.docs, id, (doc) => {
        if (!doc) return { keep: undefined, tell: undefined };
        if (!first && !atOnce(this.liveOf(doc).count(doc)).makers.has(maker))
          return { keep: { ...doc, edition: doc.edition + 1 }, tell: undefined, forgets: true };
        const { state } = this.withState(doc);
        const keep = this.kind.withoutMaker(doc, state, maker);
        return { keep, tell: [this.partOf(doc, maker)], forgets: true };
      });
    let removed: readonly string[] = [];
    for (let said = await change(true); said !== undefined; said = await change(false)) {
      if (removed.length === 0) removed = said;
      await this.catalogue.forget(id, maker);
    }
    return [...removed];
  }

  /** Those that name a maker, and those that may and cannot be read. */
  private async with(maker: string): Promise<{
    found: Doc[];
    unreadable: { id: string; name: string; problem: Unreadable }[];
  }> {
    const found: Doc[] = [];
    const unreadable: { id: string; name: string; problem: Unreadable }[] = [];
    for (const { id, name } of await this.catalogue.naming(maker)) {
      try {
        const { doc } = (await this.whole(id)) ?? {};
        if (doc && atOnce(this.liveOf(doc).count(doc)).makers.has(maker)) found.push(doc);
      } catch (problem) {
        if (!(problem instanceof Unreadable)) throw problem;
        unreadable.push({ id, name, problem });
      }
    }
    return { found, unreadable };
  }

  private partOf(doc: Doc, maker: string): string {
    return this.kind.partOf(this.kind.nameOf(doc) ?? doc.id, this.stateOf(doc), maker);
  }

  private nameTaken(name: string, unreadable?: Unreadable): Problem {
    const { called, code } = this.kind;
    return new Problem(
      `${code}-name-taken`,
      `There is a ${called} called ${name} already${unreadable ? ', which cannot be read now' : ''}.`,
      { option: 'name', hint: 'Give this one another name.' },
    );
  }

  protected gone(): Problem {
    const { called, code } = this.kind;
    return new Problem(`no-such-${code}`, `There is no such ${called}.`, {
      option: 'name',
      hint: `The list of ${called}s shows those there are.`,
    });
  }
}

/** What happened, with who did it and when. */
export const stamp = <H extends object>(happening: H, { by, at, once }: Doing): H & Stamp => ({
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
