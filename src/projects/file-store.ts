/**
 * Documents as JSON files: DATA_DIR/<folder>/<id>.json, the good copy before it in `previous/`, what could not be read in
 * `aside/`; the list of one that grows as a file of lines beside it, <id>.events.jsonl. A change is answered when it is on the
 * disk, and only then is it what the next one starts from.
 */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { realDisk, type Disk } from './disk.ts';
import { DocumentFiles, type Files, type Hold } from './document-files.ts';
import { EventFiles, lineOf, readList } from './event-files.ts';
import { isThere, makeFolder, mustBePlace } from './folder.ts';
import {
  changedInto,
  checkedEntry,
  docOf,
  entriesSince,
  headIn,
  isGrowing,
  type GrowingKind,
  type Into,
} from './grown.ts';
import { FolderLock, HoldLost, type LockTimes, type Machine } from './lock.ts';
import {
  damaged,
  folderGone,
  holdLost,
  newer,
  notMigrated,
  notSaved,
  NotSaved,
  Unreadable,
} from './not-saved.ts';
import { inPieces } from './pieces.ts';
import { codeOf } from './placing.ts';
import { SharedRun } from './shared-run.ts';
import { frozen, type Changed, type Kind, type Store } from './store.ts';
import { broughtUpToDate, upToDate, type Read } from './versions.ts';
import type { DocumentDisk } from './disk-thread.ts';

export interface FileStoreOptions {
  readonly folder: string;
  /** True holds the folder from the start; false takes it for the moment of each change and lets others have it between. */
  readonly stays: boolean;
  /** Told what whoever runs this should know. Never holds what a document says. */
  readonly note?: (what: string, facts: Readonly<Record<string, unknown>>) => void;
  /** How long to wait for another process to let go. */
  readonly patience?: number;
  /** Aborted when the process is to end: nobody waits for the folder any more. */
  readonly stop?: AbortSignal;
  /** Reads documents and puts them in their places; this thread does it where none is given. The store closes it. */
  readonly thread?: DocumentDisk;
  // What stands in for the system in tests.
  readonly disk?: Disk;
  readonly times?: LockTimes;
  readonly machine?: Machine;
}

interface Remembered {
  /** What the file says; of a document that grows, its head, once the list is in a file of its own. */
  readonly text: string;
  /** Of a document that grows: whether its list is still in the file that this text is of, or about how long its own is. */
  readonly list?: 'inside' | number;
  /** A list lies beside one that has its own inside: it is of before that was written. */
  readonly stale?: boolean;
  /** The files are of an earlier version: all of it is written anew when it next changes. */
  readonly older?: boolean;
  /** What the text says, frozen: everybody who reads is handed the same one; made when it is first asked for. */
  doc?: unknown;
}

interface Waiting {
  /** Undefined erases the document. */
  readonly change: ((doc: unknown) => Changed<unknown, unknown>) | undefined;
  readonly resolve: (tell: unknown) => void;
  readonly reject: (error: unknown) => void;
}

/** At most so many changes are written together: nobody waits for a whole crowd. */
const MOST_TOGETHER = 64;
/** How much of documents is remembered, in characters of their texts. */
const REMEMBERED = 48_000_000;
/** What a text says takes so many times the room of the text. */
const ROOM_OF_DOC = 3;
/** A process that does not stay lets go after so long without a change, and now and then in a long run of them. */
const IDLE_MS = 50;
const TURN_MS = 500;
/** Between a turn and the next, so that whoever waits gets one. */
const COURTESY_MS = 60;
const POLL_MS = 20;
/** How often a change begins anew because the folder was lost before anything of it was done. */
const TAKES = 3;
/** The text, unless it is longer than it may be and than it was. Throws what the kind says of that. */
function within({ most }: Kind<unknown>, text: string, before: string): string {
  if (most && text.length > most.characters && text.length > before.length) throw most.refuse(text.length);
  return text;
}

/** A text in this version; undefined where it is not good. */
function goodText(kind: Kind<unknown>, raw: string): string | undefined {
  try {
    const read = upToDate(kind, raw);
    return read.is === 'good' ? JSON.stringify(read.doc) : undefined;
  } catch {
    return undefined;
  }
}

/** The head that a copy says, where the list lies beside it: the copy may be from before that. */
function headAlone(copy: string, list: string | undefined): string {
  if (list === undefined) return copy;
  try {
    const { events, ...head } = JSON.parse(copy) as Record<string, unknown>;
    return events === undefined ? copy : JSON.stringify(head);
  } catch {
    return copy;
  }
}

/** The text of a document that is not there. */
const NONE = '';

const roomOf = ({ text, doc, list }: Remembered) =>
  (text.length + (typeof list === 'number' ? list : 0)) * (doc === undefined ? 1 : ROOM_OF_DOC);

/**
 * A proof of the hold so old will do before a change, ms: a document comes out of the hold's own folder, which is gone once
 * somebody else has taken over, and what is added to a list is proved after it was written.
 */
const PROOF_HOLDS = 1_000;

/** Changes of a document that grows that are written by one way of writing, and answered then. */
interface Run {
  readonly from: Remembered;
  doc: object | undefined;
  is: Into<object>['is'];
  /** Lines to be added. */
  lines: string;
  forgetting: boolean;
  readonly answers: (() => void)[];
}

const runFrom = (from: Remembered): Run => ({
  from,
  doc: from.doc as object | undefined,
  is: 'same',
  lines: '',
  forgetting: false,
  answers: [],
});

export class FileStore implements Store {
  private readonly disk: Disk;
  private readonly lock: FolderLock;
  private readonly note: NonNullable<FileStoreOptions['note']>;
  private readonly queues = new Map<string, Waiting[]>();
  private readonly running = new Set<Promise<void>>();
  /** Documents by path, the longest unused first; only while the folder is held. */
  private readonly remembered = new Map<string, Remembered>();
  private rememberedSize = 0;
  /** Documents that cannot be read whole, by path, with why; noted in the log once. */
  private readonly spoilt = new Map<string, string>();
  /** Documents that are being read for somebody, by path. */
  private readonly loading = new Map<string, Promise<Remembered>>();
  private taking: Promise<void> | undefined;
  private leaving: Promise<void> | undefined;
  private uses = 0;
  private turnEnds = 0;
  private heldBefore = false;
  private closed = false;

  /** The ids of all documents of a kind, by folder, and how many were begun or erased so far; only while the folder is held. */
  private readonly listed = new Map<string, Set<string>>();
  private begunOrErased = 0;
  private readonly files: DocumentFiles;
  private readonly lines: EventFiles;
  /** What is written at the same time is proved together. */
  private readonly proofs = new SharedRun(() => this.lock.prove());

  private constructor(private readonly options: FileStoreOptions) {
    this.disk = options.disk ?? realDisk;
    this.note = options.note ?? (() => undefined);
    this.lock = new FolderLock(options.folder, this.disk, {
      stays: options.stays,
      ...(options.times ? { times: options.times } : {}),
      ...(options.machine ? { machine: options.machine } : {}),
      lost: (why) => this.lost(why),
    });
    const prove = () => this.proofs.once();
    this.files = new DocumentFiles(options.folder, this.disk, prove, this.note, options.thread);
    this.lines = new EventFiles(this.disk, this.files, prove, this.note);
  }

  /** Throws NotSaved when the folder should be held from the start and cannot be. */
  static async open(options: FileStoreOptions): Promise<FileStore> {
    mustBePlace(options.folder);
    const store = new FileStore(options);
    if (options.stays) await store.take();
    return store;
  }

  /** Changes that wait to be written. */
  get waiting(): number {
    return [...this.queues.values()].reduce((sum, queue) => sum + queue.length, 0);
  }

  async read<T>(kind: Kind<T>, id: string): Promise<T | undefined> {
    const path = this.files.pathOf(kind, id);
    return this.shared(path, await this.known(kind, id, path)) as T | undefined;
  }

  /** Documents that were asked for and cannot be read whole. */
  get unreadable(): number {
    return this.spoilt.size;
  }

  change<T, R>(kind: Kind<T>, id: string, change: (doc: T | undefined) => Changed<T, R>): Promise<R> {
    return this.enqueue(kind, id, change as NonNullable<Waiting['change']>) as Promise<R>;
  }

  async erase(kind: Kind<unknown>, id: string): Promise<void> {
    await this.enqueue(kind, id, undefined);
  }

  /** Which hold of the folder it is: nobody else writes as long as it lasts. */
  get alone(): string | undefined {
    return this.lock.awake() ? this.lock.token : undefined;
  }

  async ids(kind: Kind<unknown>, prefix = ''): Promise<string[]> {
    const ids = (this.lock.awake() ? this.listed.get(kind.folder) : undefined) ?? (await this.list(kind));
    return [...ids].filter((id) => id.startsWith(prefix));
  }

  /** Lists a folder; what is listed is remembered as long as nobody else can add to it. */
  private async list({ folder }: Kind<unknown>): Promise<ReadonlySet<string>> {
    const { token } = this.lock;
    const written = this.begunOrErased;
    const names = await this.files.names(join(this.options.folder, folder));
    const ids = new Set(
      names.filter((name) => name.endsWith('.json')).map((name) => name.slice(0, -'.json'.length)),
    );
    if (token !== undefined && token === this.lock.token && written === this.begunOrErased)
      this.listed.set(folder, ids);
    return ids;
  }

  /** Notes that a document was begun, or erased. */
  private noteId(kind: Kind<unknown>, id: string, is: 'there' | 'gone'): void {
    this.begunOrErased++;
    const ids = this.listed.get(kind.folder);
    if (is === 'there') ids?.add(id);
    else ids?.delete(id);
  }

  async close(): Promise<void> {
    this.closed = true;
    while (this.running.size > 0) await Promise.all(this.running);
    await this.taking?.catch(() => undefined);
    await this.leaving;
    await this.options.thread?.close();
    await this.letGo();
  }

  /** For a process on its way out that can wait for nothing. */
  releaseNow(): void {
    this.lock.releaseNow();
  }

  // — one document at a time —

  private enqueue(kind: Kind<unknown>, id: string, change: Waiting['change']): Promise<unknown> {
    const path = this.files.pathOf(kind, id);
    if (this.closed)
      return Promise.reject(
        new NotSaved('closing', 'This is closing down. Nothing was changed.', 'Ask again in a moment.'),
      );
    return new Promise((resolve, reject) => {
      const entry = { change, resolve, reject };
      const queue = this.queues.get(path);
      if (queue) {
        queue.push(entry);
        return;
      }
      this.queues.set(path, [entry]);
      const run = this.drain(kind, id, path).finally(() => this.running.delete(run));
      this.running.add(run);
    });
  }

  /** What everybody is handed who reads a text: the same, and nobody can alter it. */
  private shared(path: string, known: Remembered): unknown {
    if (known.text === NONE) return undefined;
    if (known.doc === undefined) {
      known.doc = frozen(JSON.parse(known.text));
      // It takes more room from here on.
      if (this.remembered.get(path) === known) this.rememberedSize += (ROOM_OF_DOC - 1) * known.text.length;
    }
    return known.doc;
  }

  /** What a change is handed: a copy of its own, or what everybody reads, where it builds beside that. */
  private startOf(kind: Kind<unknown>, path: string, known: Remembered): unknown {
    if (known.text === NONE) return undefined;
    return kind.builtBeside ? this.shared(path, known) : JSON.parse(known.text);
  }

  /** Takes what waits for a document, together, until nothing does. */
  private async drain(kind: Kind<unknown>, id: string, path: string): Promise<void> {
    for (;;) {
      const queue = this.queues.get(path) ?? [];
      const erases = queue.findIndex(({ change }) => change === undefined);
      // What is erased is erased by itself, whatever the document says.
      const many = erases === 0 ? 1 : erases < 0 ? MOST_TOGETHER : Math.min(erases, MOST_TOGETHER);
      const together = queue.splice(0, many);
      if (together.length === 0) break;
      try {
        const hold = await this.hold(erases !== 0);
        try {
          if (erases === 0) await this.eraseAll(hold, kind, id, path, together);
          else if (isGrowing(kind)) await this.applyGrowing(hold, kind, id, together);
          else await this.apply(hold, kind, id, path, together);
        } finally {
          this.done();
        }
      } catch (error) {
        for (const { reject } of together) reject(error);
      }
    }
    this.queues.delete(path);
  }

  /** Applies changes in order, each on what the one before left, writes once, and answers them all. */
  private async apply(
    hold: Hold,
    kind: Kind<unknown>,
    id: string,
    path: string,
    together: readonly Waiting[],
  ): Promise<void> {
    const known = await this.current(hold, kind, id, path);
    const before = known.text;
    const first = this.startOf(kind, path, known);
    // Where nothing that is handed out is altered, what comes of all changes is made to text once; but how long it may be is looked at each time.
    const textsLater = kind.builtBeside && !kind.most;
    let text = before;
    let doc = first;
    let forgetting = false;
    const answered: (() => void)[] = [];
    for (const { change, resolve, reject } of together) {
      try {
        const { keep, tell, forgets = false } = change?.(doc) ?? { keep: undefined, tell: undefined };
        if (keep !== undefined && !(kind.builtBeside && keep === doc)) {
          // What was kept is checked before it is written, and is what the next change is handed: a copy of its own.
          const checked = kind.schema.parse(keep);
          if (!textsLater) text = within(kind, JSON.stringify(checked), text);
          doc = checked;
        } else if (!kind.builtBeside) doc = text === NONE ? undefined : JSON.parse(text);
        forgetting ||= forgets;
        answered.push(() => resolve(tell));
      } catch (error) {
        if (!kind.builtBeside) doc = text === NONE ? undefined : JSON.parse(text);
        answered.push(() => reject(error));
      }
    }
    if (textsLater && doc !== first) text = JSON.stringify(doc);
    await this.writing(kind, path, async () => {
      if (forgetting) await this.dropCopies(hold, kind, this.files.of(kind, id));
      if (text === before) return;
      await this.files.makeFolders(kind);
      const { previous } = this.files.of(kind, id);
      await this.files.place(hold, path, forgetting || kind.derived ? undefined : previous, text);
    });
    if (before === NONE && text !== NONE) this.noteId(kind, id, 'there');
    this.loading.delete(path);
    // Under another hold somebody else may have changed it since.
    // What was checked is handed to nobody else: whoever reads next gets it as it is.
    if (this.lock.token === hold.token)
      this.remember(path, text === before ? known : { text, ...(text === NONE ? {} : { doc: frozen(doc) }) });
    for (const answer of answered) answer();
  }

  /** The same for a document that grows: what is only added is written as lines, and answered before what is written otherwise. */
  private async applyGrowing(
    hold: Hold,
    kind: GrowingKind,
    id: string,
    together: readonly Waiting[],
  ): Promise<void> {
    const files = this.files.of(kind, id);
    let run = runFrom(await this.current(hold, kind, id, files.path));
    for (const { change, resolve, reject } of together) {
      let changed: Changed<object, unknown>;
      let into: Into<object>;
      try {
        changed = (change?.(run.doc) ?? { keep: undefined, tell: undefined }) as Changed<object, unknown>;
        into = changedInto(kind as GrowingKind<object>, run.doc, changed);
      } catch (error) {
        run.answers.push(() => reject(error));
        continue;
      }
      if (into.is !== 'same' && run.is !== 'same' && into.is !== run.is)
        run = runFrom(await this.writeRun(hold, kind, id, run));
      if (into.is !== 'same') run.is = into.is;
      if (into.is === 'grown') run.lines += lineOf(into.added);
      run.doc = into.doc;
      run.forgetting ||= changed.forgets === true;
      run.answers.push(() => resolve(changed.tell));
    }
    await this.writeRun(hold, kind, id, run);
  }

  /** Writes what changes came to, and answers them; what is known of the document then. */
  private async writeRun(hold: Hold, kind: GrowingKind, id: string, run: Run): Promise<Remembered> {
    const files = this.files.of(kind, id);
    const { from } = run;
    let after = from;
    await this.writing(kind, files.path, async () => {
      if (run.forgetting) await this.dropCopies(hold, kind, files);
      if (from.stale) await this.files.remove(hold, files.list);
      if (run.doc !== undefined && run.is !== 'same')
        after = await this.writeAs(hold, kind, files, run, run.doc);
      else if (from.stale) {
        await this.files.syncFolder(files.folder);
        after = { ...from, stale: false };
      }
    });
    if (from.text === NONE && after.text !== NONE) this.noteId(kind, id, 'there');
    this.loading.delete(files.path);
    if (this.lock.token === hold.token) this.remember(files.path, after);
    for (const answer of run.answers) answer();
    return after;
  }

  private async writeAs(
    hold: Hold,
    kind: GrowingKind,
    files: Files,
    { from, is: into, lines, forgetting }: Run,
    doc: object,
  ): Promise<Remembered> {
    const is = from.older ? 'anew' : into;
    const { path, previous } = files;
    const inside = from.list === 'inside';
    const kept = forgetting ? undefined : previous;
    if (is === 'grown' && !inside && this.lines.canAdd(hold, files)) {
      await this.lines.add(files, lines);
      return { text: from.text, doc, list: this.lines.bytesOf(files) };
    }
    await this.files.makeFolders(kind);
    if (is === 'grown') {
      await this.lines.place(hold, files, entriesSince(doc, 0), !inside && !forgetting);
      const head = JSON.stringify(headIn(doc));
      // As long as the list is inside as well, that one counts.
      if (inside) await this.files.place(hold, path, kept, head);
      return { text: inside ? head : from.text, doc, list: this.lines.bytesOf(files) };
    }
    if (is === 'otherwise') {
      const text = JSON.stringify(inside ? doc : headIn(doc));
      await this.files.place(hold, path, kept, text);
      return { text, doc, list: from.list ?? 'inside' };
    }
    // All of it in one file, so that none of it is there by half; the list gets its own again when something is added.
    const text = JSON.stringify(doc);
    await this.files.place(hold, path, kept, text);
    if (typeof from.list === 'number') await this.lines.place(hold, files, entriesSince(doc, 0), false);
    return { text, doc, list: 'inside' };
  }

  private async eraseAll(
    hold: Hold,
    kind: Kind<unknown>,
    id: string,
    path: string,
    together: readonly Waiting[],
  ): Promise<void> {
    await this.writing(kind, path, () => this.erased(hold, kind, id));
    this.noteId(kind, id, 'gone');
    this.loading.delete(path);
    this.spoilt.delete(path);
    this.files.sure(path);
    this.files.sure(this.files.of(kind, id).list);
    for (const { resolve } of together) resolve(undefined);
  }

  /** Lets something be written; says in words, and in the log, where the disk will not have it. */
  private async writing(kind: Kind<unknown>, path: string, write: () => Promise<void>): Promise<void> {
    try {
      await write();
    } catch (error) {
      this.files.doubt(kind);
      this.listed.delete(kind.folder);
      this.begunOrErased++;
      // What the disk has of it is looked at anew, and what is being read may be what was refused.
      this.forget(path);
      this.loading.delete(path);
      this.note('a document could not be written', { path, code: codeOf(error), error });
      if (error instanceof NotSaved) throw error;
      throw (await this.isLost(error)) ? await this.lostOrGone(error) : notSaved(error);
    }
  }

  // — the disk —

  /** Removes a document and every copy of it: what is erased is gone. */
  private async erased(hold: Hold, kind: Kind<unknown>, id: string): Promise<void> {
    const files = this.files.of(kind, id);
    await this.proofs.once();
    await this.dropCopies(hold, kind, files);
    await this.files.remove(hold, files.path);
    if (isGrowing(kind)) {
      this.lines.close(files);
      await this.files.remove(hold, files.list);
    }
    this.forget(files.path);
    await this.files.syncFolder(files.folder);
  }

  /** Removes the copy before a document and whatever was moved aside of it. */
  private async dropCopies(hold: Hold, kind: Kind<unknown>, files: Files): Promise<void> {
    await this.files.makeFolders(kind);
    const aside = join(files.folder, 'aside');
    const id = files.path.slice(files.folder.length + 1, -'.json'.length);
    for (const name of await this.files.names(aside))
      if (name.startsWith(`${id}~`)) await this.files.remove(hold, join(aside, name));
    await this.files.remove(hold, files.previous);
    if (isGrowing(kind)) await this.files.remove(hold, files.previousList);
  }

  // — reading —

  /** A document in this version, checked; its text is NONE where there is none. */
  private known(kind: Kind<unknown>, id: string, path: string): Promise<Remembered> {
    const known = this.recall(path);
    if (known !== undefined) {
      this.remember(path, known);
      return Promise.resolve(known);
    }
    const loading = this.loading.get(path) ?? this.load(kind, id, path);
    this.loading.set(path, loading);
    return loading
      .then((read) => {
        // Written or let go of meanwhile: what was read is the past, and good for this reader only.
        if (this.loading.get(path) === loading) this.remember(path, read);
        return read;
      })
      .finally(() => {
        if (this.loading.get(path) === loading) this.loading.delete(path);
      });
  }

  private async load(kind: Kind<unknown>, id: string, path: string): Promise<Remembered> {
    const { bad, ...read } = await this.checked(kind, id, path);
    if (bad !== undefined || read.stale) {
      // Not remembered: a change must find the file bad itself, or it would write over it. Mended in the queue of
      // its document, so that no change is under way then.
      this.loading.delete(path);
      if (this.lock.held)
        void this.change(kind, id, (doc) => ({ keep: doc, tell: undefined })).catch(() => undefined);
      else if (bad !== undefined) this.note('a document cannot be read', { path, why: bad });
    }
    return read;
  }

  /** The text in this version, that of the copy before it where the document is bad, and what is bad about it. */
  private async checked(
    kind: Kind<unknown>,
    id: string,
    path: string,
  ): Promise<Remembered & { bad?: string }> {
    await this.files.findOut(path);
    const raw = await this.files.raw(path);
    if (raw === undefined) return { text: NONE };
    if (isGrowing(kind)) return this.checkedGrowing(kind, this.files.of(kind, id), raw);
    let read;
    try {
      read = upToDate(kind, raw);
    } catch (error) {
      throw this.spoils(path, notMigrated(kind.called, error), { error });
    }
    if (read.is !== 'good' && kind.derived) {
      this.note('what is made from other documents cannot be read and is made anew', { path });
      return { text: NONE };
    }
    if (read.is === 'newer') throw this.spoils(path, newer(kind.called), { version: read.version });
    if (read.is === 'bad') {
      const copy = await this.files.raw(this.files.of(kind, id).previous);
      const before = copy === undefined ? undefined : goodText(kind, copy);
      if (before === undefined) throw this.spoils(path, damaged(kind.called), { why: read.why });
      this.spoilt.delete(path);
      return { text: before, bad: read.why };
    }
    this.spoilt.delete(path);
    // Whoever changes a document that is built beside is handed what it says, not its text.
    const text = kind.builtBeside ? raw.trimEnd() : JSON.stringify(read.doc);
    return { text, doc: frozen(read.doc) };
  }

  /**
   * The same of a document that grows. Where its head is bad the copy before that serves: it says little, and that little is old.
   * A bad line is not gone round: with the copy of the list all would be lost that was added since, and without the line
   * what stands on it.
   */
  private async checkedGrowing(
    kind: GrowingKind,
    files: Files,
    raw: string,
  ): Promise<Remembered & { bad?: string }> {
    const { path, list } = files;
    await this.files.findOut(list);
    const rawList = await this.files.raw(list);
    const read = await this.readParts(kind, files, raw, rawList);
    if (read.is === 'newer') throw this.spoils(path, newer(kind.called), { version: read.version });
    if (read.is === 'good') {
      this.spoilt.delete(path);
      return read.known;
    }
    const copy = read.line === undefined ? await this.files.raw(files.previous) : undefined;
    const before =
      copy === undefined ? undefined : await this.readParts(kind, files, headAlone(copy, rawList), rawList);
    if (before?.is !== 'good')
      throw this.spoils(path, damaged(kind.called), {
        why: read.why,
        ...(read.line === undefined ? {} : { file: list, line: read.line }),
      });
    this.spoilt.delete(path);
    return { ...before.known, bad: read.why };
  }

  /** What the two files of a document that grows say; the first alone, where it still has the list inside. */
  private async readParts(
    kind: GrowingKind,
    { path }: Files,
    raw: string,
    rawList: string | undefined,
  ): Promise<
    | { readonly is: 'good'; readonly known: Remembered }
    | Extract<Read, { is: 'newer' }>
    | { readonly is: 'bad'; readonly why: string; readonly line?: number }
  > {
    let head: unknown;
    try {
      head = JSON.parse(raw);
    } catch {
      return { is: 'bad', why: 'it is not JSON' };
    }
    const { version, [kind.grows.list]: inside } = (head ?? {}) as Record<string, unknown>;
    try {
      if (inside !== undefined || typeof version !== 'number' || version > kind.version) {
        const whole = broughtUpToDate(kind, head);
        if (whole.is !== 'good') return whole;
        const said = whole.doc as Record<string, unknown>;
        const entries = (said[kind.grows.list] as readonly unknown[]).map((one) => checkedEntry(kind, one));
        const doc = docOf(kind, said, entries);
        const stale = rawList !== undefined;
        return { is: 'good', known: { text: raw.trimEnd(), doc, list: 'inside', stale } };
      }
      if (rawList === undefined) return { is: 'bad', why: 'its list is not there' };
      const isNew = version === kind.version;
      const list = await inPieces(readList(kind, rawList, isNew));
      if (list.is === 'bad') return { is: 'bad', why: 'a line of its list is bad', line: list.line };
      const whole = broughtUpToDate(
        // Of this version the entries were checked one by one.
        isNew ? { ...kind, schema: kind.grows.head } : kind,
        isNew ? head : { ...(head as Record<string, unknown>), [kind.grows.list]: list.entries },
      );
      if (whole.is !== 'good') return whole;
      const said = whole.doc as Record<string, unknown>;
      const entries = isNew
        ? list.entries
        : (said[kind.grows.list] as readonly unknown[]).map((one) => checkedEntry(kind, one));
      if (entries.length === 0) return { is: 'bad', why: 'its list is empty' };
      const doc = docOf(kind as GrowingKind<object>, said, entries);
      const text = JSON.stringify(headIn(doc));
      return { is: 'good', known: { text, doc, list: rawList.length, older: !isNew } };
    } catch (error) {
      throw this.spoils(path, notMigrated(kind.called, error), { error });
    }
  }

  /** Counts a document that cannot be read whole and says so in the log, once; it is left where it is. */
  private spoils(path: string, problem: Unreadable, facts: Readonly<Record<string, unknown>>): Unreadable {
    if (this.spoilt.get(path) !== problem.code)
      this.note('a document cannot be read and is left alone', { path, code: problem.code, ...facts });
    this.spoilt.set(path, problem.code);
    return problem;
  }

  /** What a change starts from: what is remembered, or what the disk says, mended first where it is bad. */
  private async current(hold: Hold, kind: Kind<unknown>, id: string, path: string): Promise<Remembered> {
    const known = this.recall(path);
    if (known !== undefined) return known;
    const { bad, ...read } = await this.checked(kind, id, path);
    if (bad !== undefined) {
      this.note('a document cannot be read and is moved aside; the copy before it serves', {
        path,
        why: bad,
      });
      await this.moveAside(hold, kind, id, path, read.text);
    }
    return read;
  }

  /** A bad file is kept for whoever may mend it, never written over. */
  private async moveAside(
    hold: Hold,
    kind: Kind<unknown>,
    id: string,
    path: string,
    good: string,
  ): Promise<void> {
    try {
      await this.files.makeFolders(kind);
      const files = this.files.of(kind, id);
      const stamp = new Date().toISOString().replace(/[:.]/g, '-');
      const aside = join(files.folder, 'aside', `${id}~${stamp}~${randomUUID().slice(0, 8)}.json`);
      await this.files.moveAside(hold, files, aside, good);
    } catch (error) {
      this.note('a bad document could not be moved aside', { path, code: codeOf(error), error });
      throw (await this.isLost(error)) ? await this.lostOrGone(error) : notSaved(error);
    }
  }

  private remember(path: string, what: Remembered): void {
    this.forget(path);
    // One that takes all the room by itself is read each time: all others would be.
    if (!this.lock.held || roomOf(what) > REMEMBERED / 2) return;
    this.remembered.set(path, what);
    this.rememberedSize += roomOf(what);
    for (const oldest of this.remembered.keys()) {
      if (this.rememberedSize <= REMEMBERED) break;
      this.forget(oldest);
    }
  }

  /** What is remembered of a document; nothing once this process has slept or lost the folder. */
  private recall(path: string): Remembered | undefined {
    return this.lock.awake() ? this.remembered.get(path) : undefined;
  }

  private forget(path: string): void {
    const known = this.remembered.get(path);
    if (known === undefined) return;
    this.rememberedSize -= roomOf(known);
    this.remembered.delete(path);
  }

  // — the folder —

  /** Begins a use of the folder, which lasts until `done`. What was lost before that is taken again. */
  private async hold(provesLater = false): Promise<Hold> {
    for (let takes = 1; ; takes++) {
      await this.leaving;
      // Used from here on: whoever waits for its end does not let go in between.
      this.uses++;
      try {
        if (!this.lock.awake()) await this.takeOnce();
        const { self, writing } =
          (provesLater ? this.lock.provenWithin(PROOF_HOLDS) : undefined) ?? (await this.proofs.once());
        return { token: self.nonce, writing };
      } catch (error) {
        this.uses--;
        if (!(error instanceof HoldLost)) throw error;
        if (takes === TAKES) throw holdLost(error);
      }
    }
  }

  private takeOnce(): Promise<void> {
    this.taking ??= this.take().finally(() => (this.taking = undefined));
    return this.taking;
  }

  /** Gives up all that rested on holding the folder; a process that stays takes it again as soon as it can. */
  private lost(why: string): void {
    this.drop();
    this.note('the hold on the data folder was lost', { folder: this.options.folder, why });
    if (this.options.stays && !this.closed) void this.takeOnce().catch(() => undefined);
  }

  private drop(): void {
    this.remembered.clear();
    this.rememberedSize = 0;
    this.loading.clear();
    this.listed.clear();
    this.files.drop();
    this.lines.drop();
  }

  /** Whether something failed because the folder is another's by now, or the hold's own folder was removed. */
  private async isLost(error: unknown): Promise<boolean> {
    if (error instanceof HoldLost) return true;
    if (codeOf(error) !== 'ENOENT') return false;
    try {
      const { writing } = await this.lock.prove();
      if (await isThere(this.disk, writing)) return false;
      // The lock is ours and the folder is not there: only another hold has one again.
      this.leaving = this.letGo();
      await this.leaving;
    } catch {
      // lost, or not to be told
    }
    return true;
  }

  private done(): void {
    this.uses--;
    if (this.options.stays || this.uses > 0) return;
    if (performance.now() >= this.turnEnds) {
      // A long run of changes gives others a turn.
      this.leaving = this.letGo().then(() => sleep(COURTESY_MS));
      return;
    }
    setTimeout(() => {
      if (this.uses === 0) this.leaving = this.letGo();
    }, IDLE_MS).unref();
  }

  private async take(): Promise<void> {
    const { folder, stop } = this.options;
    const until = performance.now() + (this.options.patience ?? 8000);
    for (let waited = false; ; waited = true) {
      let refused;
      try {
        await this.makeOrMiss();
        refused = await this.lock.take();
      } catch (error) {
        if (error instanceof NotSaved) throw error;
        this.note('the data folder cannot be held', { folder, code: codeOf(error), error });
        throw notSaved(error);
      }
      if (!refused) break;
      const { holder, life } = refused;
      const decided = life === 'alive' && (holder.stays || performance.now() > until);
      if (decided || stop?.aborted) {
        throw new NotSaved(
          'in-use',
          `The data folder ${folder} is in use by process ${holder.pid} on ${holder.host}. Nothing was changed.`,
          'Stop that one first, or set DATA_DIR to another folder.',
          undefined,
          { process: holder.pid, host: holder.host },
        );
      }
      if (!waited && life === 'unknown')
        this.note('the data folder may be in use on another machine; watching whether its holder moves', {
          folder,
          host: holder.host,
          pid: holder.pid,
        });
      await sleep(POLL_MS + (process.pid % 10));
    }
    this.heldBefore = true;
    // What was remembered or being read before may have been changed by whoever held the folder.
    this.drop();
    this.turnEnds = performance.now() + TURN_MS;
  }

  /** Makes the data folder, but not a second time: one that is gone took everything with it, and that is said. */
  private async makeOrMiss(): Promise<void> {
    const { folder } = this.options;
    if (!this.heldBefore) return makeFolder(this.disk, folder);
    if (!(await isThere(this.disk, folder))) throw folderGone(folder);
  }

  /** What to say where the hold was lost: the folder may have gone with it. */
  private async lostOrGone(error: unknown): Promise<NotSaved> {
    const { folder } = this.options;
    return (await isThere(this.disk, folder).catch(() => true)) ? holdLost(error) : folderGone(folder);
  }

  private async letGo(): Promise<void> {
    if (!this.lock.held) return;
    this.drop();
    try {
      await this.lock.release();
    } catch (error) {
      this.note('the data folder could not be let go of', { code: codeOf(error), error });
    }
  }
}
