/**
 * Documents as JSON files: DATA_DIR/<folder>/<id>.json, the good copy before it in `previous/`, what could not be read in
 * `aside/`. A change is answered when it is on the disk, and only then is it what the next one starts from.
 */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { realDisk, type Disk } from './disk.ts';
import { isThere, makeFolder, mustBePlace } from './folder.ts';
import { changedInto, isGrowing, type GrowingKind } from './grown.ts';
import { FolderLock, HoldLost, type LockTimes, type Machine } from './lock.ts';
import {
  damaged,
  holdLost,
  newer,
  notKnown,
  notMigrated,
  notRead,
  notSaved,
  NotSaved,
  Unreadable,
} from './not-saved.ts';
import { frozen, SAFE_ID, type Changed, type Kind, type Store } from './store.ts';
import { upToDate } from './versions.ts';

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
  // What stands in for the system in tests.
  readonly disk?: Disk;
  readonly times?: LockTimes;
  readonly machine?: Machine;
}

/** One taking of the folder, from when it was proved. */
interface Hold {
  readonly token: string;
  /** Where all that is written under it begins; gone once somebody else has taken the folder. */
  readonly writing: string;
}

interface Remembered {
  readonly text: string;
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
/** Not every system can sync a folder; those that cannot say so with one of these. */
const CANNOT_SYNC_FOLDERS = ['EINVAL', 'EISDIR', 'EPERM', 'ENOTSUP', 'EBADF'];

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code;

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

/** The text of a document that is not there. */
const NONE = '';

const roomOf = ({ text, doc }: Remembered) => text.length * (doc === undefined ? 1 : ROOM_OF_DOC);

export class FileStore implements Store {
  private readonly disk: Disk;
  private readonly lock: FolderLock;
  private readonly note: NonNullable<FileStoreOptions['note']>;
  private readonly queues = new Map<string, Waiting[]>();
  private readonly running = new Set<Promise<void>>();
  /** Documents by path, the longest unused first; only while the folder is held. */
  private readonly remembered = new Map<string, Remembered>();
  private rememberedSize = 0;
  /** Folders that are there, or are being made: whoever writes waits until they are. */
  private readonly madeFolders = new Map<string, Promise<void>>();
  /** Documents that cannot be read whole, by path, with why; noted in the log once. */
  private readonly spoilt = new Map<string, string>();
  /** Documents of which neither the new text nor the old one was got to the disk for certain, with the new text. */
  private readonly unsure = new Map<string, string>();
  /** Documents that are being read for somebody, by path. */
  private readonly loading = new Map<string, Promise<Remembered>>();
  private taking: Promise<void> | undefined;
  private leaving: Promise<void> | undefined;
  private uses = 0;
  private turnEnds = 0;
  private heldBefore = false;
  private closed = false;

  private constructor(private readonly options: FileStoreOptions) {
    this.disk = options.disk ?? realDisk;
    this.note = options.note ?? (() => undefined);
    this.lock = new FolderLock(options.folder, this.disk, {
      stays: options.stays,
      ...(options.times ? { times: options.times } : {}),
      ...(options.machine ? { machine: options.machine } : {}),
      lost: (why) => this.lost(why),
    });
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
    return this.shared(this.path(kind, id), await this.known(kind, id)) as T | undefined;
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

  async ids(kind: Kind<unknown>, prefix = ''): Promise<string[]> {
    const names = await this.names(join(this.options.folder, kind.folder));
    return names
      .filter((name) => name.endsWith('.json') && name.startsWith(prefix))
      .map((name) => name.slice(0, -'.json'.length));
  }

  async close(): Promise<void> {
    this.closed = true;
    while (this.running.size > 0) await Promise.all(this.running);
    await this.taking?.catch(() => undefined);
    await this.leaving;
    await this.letGo();
  }

  /** For a process on its way out that can wait for nothing. */
  releaseNow(): void {
    this.lock.releaseNow();
  }

  // — one document at a time —

  private enqueue(kind: Kind<unknown>, id: string, change: Waiting['change']): Promise<unknown> {
    const path = this.path(kind, id);
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

  private path(kind: Kind<unknown>, id: string): string {
    if (!SAFE_ID.test(id)) throw new Error(`unsafe id ${JSON.stringify(id)}`);
    return join(this.options.folder, kind.folder, `${id}.json`);
  }

  private previous = (kind: Kind<unknown>, id: string) =>
    join(this.options.folder, kind.folder, 'previous', `${id}.json`);

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
        const hold = await this.hold();
        try {
          if (erases === 0) await this.eraseAll(hold, kind, id, path, together);
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
    const textOf = (said: unknown) =>
      said === undefined ? NONE : said === first && kind.builtBeside ? before : JSON.stringify(said);
    let text = before;
    let doc = first;
    let forgetting = false;
    const answered: (() => void)[] = [];
    for (const { change, resolve, reject } of together) {
      try {
        const changed = change?.(doc) ?? { keep: undefined, tell: undefined };
        const { keep, tell, forgets = false } = changed;
        // What was kept is checked before it is written, and is what the next change is handed: a copy of its own.
        if (isGrowing(kind))
          doc = changedInto(
            kind as GrowingKind<object>,
            doc as object | undefined,
            changed as Changed<object, unknown>,
          ).doc;
        else if (keep === undefined) {
          if (!kind.builtBeside) doc = text === NONE ? undefined : JSON.parse(text);
        } else if (keep !== doc || !kind.builtBeside) doc = kind.schema.parse(keep);
        if (!kind.builtBeside) text = within(kind, textOf(doc), text);
        forgetting ||= forgets;
        answered.push(() => resolve(tell));
      } catch (error) {
        if (!kind.builtBeside) doc = text === NONE ? undefined : JSON.parse(text);
        answered.push(() => reject(error));
      }
    }
    text = textOf(doc);
    await this.writing(kind, path, async () => {
      if (forgetting) await this.dropCopies(hold, kind, id);
      if (text !== before) await this.write(hold, kind, id, text, !forgetting && !kind.derived);
    });
    this.loading.delete(path);
    // Under another hold somebody else may have changed it since.
    // What was checked is handed to nobody else: whoever reads next gets it as it is.
    if (this.lock.token === hold.token)
      this.remember(path, text === before ? known : { text, ...(text === NONE ? {} : { doc: frozen(doc) }) });
    for (const answer of answered) answer();
  }

  private async eraseAll(
    hold: Hold,
    kind: Kind<unknown>,
    id: string,
    path: string,
    together: readonly Waiting[],
  ): Promise<void> {
    await this.writing(kind, path, () => this.erased(hold, kind, id));
    this.loading.delete(path);
    this.spoilt.delete(path);
    this.unsure.delete(path);
    for (const { resolve } of together) resolve(undefined);
  }

  /** Lets something be written; says in words, and in the log, where the disk will not have it. */
  private async writing(kind: Kind<unknown>, path: string, write: () => Promise<void>): Promise<void> {
    try {
      await write();
    } catch (error) {
      this.madeFolders.delete(kind.folder); // someone may have removed them
      this.note('a document could not be written', { path, code: codeOf(error), error });
      if (error instanceof NotSaved) throw error;
      throw (await this.isLost(error)) ? holdLost(error) : notSaved(error);
    }
  }

  // — the disk —

  /**
   * New text in the place of the old, so that at every moment one of the two is whole on the disk. The old one stays as
   * the copy before it, unless something in it is to be forgotten. Everything comes out of the hold's own folder or goes
   * into it, so that nothing is moved any more once somebody else has taken over.
   */
  private async write(
    hold: Hold,
    kind: Kind<unknown>,
    id: string,
    text: string,
    keepsOld: boolean,
  ): Promise<void> {
    const path = this.path(kind, id);
    const folder = join(this.options.folder, kind.folder);
    const previous = this.previous(kind, id);
    const fresh = join(hold.writing, randomUUID());
    const copy = `${fresh}.previous`;
    await this.makeFolders(kind);
    try {
      await this.writeWhole(fresh, text);
      const had = keepsOld && (await this.copyTo(path, copy));
      await this.lock.prove();
      if (had) {
        await this.disk.rename(copy, previous);
        // Where both are names of one file, which a crash can leave behind, the renaming does nothing at all.
        await this.disk.rm(copy, { force: true });
      }
      await this.disk.rename(fresh, path);
      try {
        await this.syncFolder(folder);
      } catch (error) {
        // What was refused must not turn up after all; but nobody minds having been forgotten already.
        this.forget(path);
        if (keepsOld) await this.putBack(hold, path, had ? previous : undefined, text, error);
        throw error;
      }
    } catch (error) {
      for (const left of [fresh, copy]) await this.disk.rm(left, { force: true }).catch(() => undefined);
      throw error;
    }
  }

  /** Undoes a renaming that the disk would not promise to keep; where it refuses that too, nothing is known, and that is said. */
  private async putBack(
    hold: Hold,
    path: string,
    previous: string | undefined,
    text: string,
    refused: unknown,
  ): Promise<void> {
    const back = join(hold.writing, randomUUID());
    try {
      if (previous === undefined) await this.removeHeld(hold, path);
      else {
        await this.copyTo(previous, back);
        await this.disk.rename(back, path);
      }
    } catch (error) {
      this.unsure.set(path, text);
      this.note('it is not known what the disk kept', { path, code: codeOf(error), error });
      throw notKnown(refused);
    }
  }

  /** Removes a file by way of the hold's own folder: once somebody else has taken over, it stays. */
  private async removeHeld(hold: Hold, path: string): Promise<void> {
    const gone = join(hold.writing, randomUUID());
    try {
      await this.disk.rename(path, gone);
    } catch (error) {
      if (codeOf(error) !== 'ENOENT') throw error;
      // Either it was not there, or the folder is not: the proof tells.
      await this.lock.prove();
      return;
    }
    await this.disk.rm(gone, { force: true });
  }

  /** Writes all of it and has the disk take it; a full disk may take part of it and call that a success. */
  private async writeWhole(path: string, text: string): Promise<void> {
    const bytes = Buffer.from(`${text}\n`);
    const file = await this.disk.open(path, 'wx', 0o600);
    try {
      for (let done = 0; done < bytes.length;) {
        const { bytesWritten } = await file.write(bytes, done, bytes.length - done);
        if (bytesWritten === 0) throw Object.assign(new Error('nothing was written'), { code: 'ENOSPC' });
        done += bytesWritten;
      }
      await file.sync();
    } finally {
      await file.close();
    }
  }

  /** A second name for a file, or a copy where the disk knows no second names; false where there is no file. */
  private async copyTo(from: string, to: string): Promise<boolean> {
    try {
      await this.disk.link(from, to);
      return true;
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return false;
      if (!['EPERM', 'ENOTSUP', 'ENOSYS', 'EMLINK'].includes(codeOf(error) ?? '')) throw error;
      await this.disk.copyFile(from, to);
      return true;
    }
  }

  private async syncFolder(folder: string): Promise<void> {
    try {
      const handle = await this.disk.open(folder, 'r');
      try {
        await handle.sync();
      } finally {
        await handle.close();
      }
    } catch (error) {
      if (!CANNOT_SYNC_FOLDERS.includes(codeOf(error) ?? '')) throw error;
    }
  }

  /** Removes a document and every copy of it: what is erased is gone. */
  private async erased(hold: Hold, kind: Kind<unknown>, id: string): Promise<void> {
    await this.lock.prove();
    await this.dropCopies(hold, kind, id);
    await this.removeHeld(hold, this.path(kind, id));
    this.forget(this.path(kind, id));
    await this.syncFolder(join(this.options.folder, kind.folder));
  }

  /** Removes the copy before a document and whatever was moved aside of it. */
  private async dropCopies(hold: Hold, kind: Kind<unknown>, id: string): Promise<void> {
    await this.makeFolders(kind);
    const aside = join(this.options.folder, kind.folder, 'aside');
    for (const name of await this.names(aside))
      if (name.startsWith(`${id}~`)) await this.removeHeld(hold, join(aside, name));
    await this.removeHeld(hold, this.previous(kind, id));
  }

  private async names(folder: string): Promise<string[]> {
    try {
      return await this.disk.readdir(folder);
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return [];
      throw notRead(error);
    }
  }

  private makeFolders({ folder }: Kind<unknown>): Promise<void> {
    const known = this.madeFolders.get(folder);
    if (known) return known;
    const making = this.makeAnew(folder);
    this.madeFolders.set(folder, making);
    making.catch(() => this.madeFolders.delete(folder));
    return making;
  }

  private async makeAnew(kind: string): Promise<void> {
    const folder = join(this.options.folder, kind);
    for (const name of [folder, join(folder, 'previous'), join(folder, 'aside')])
      await makeFolder(this.disk, name);
    // Where an earlier version began its writing: what is left there was left by a process that is gone.
    await this.disk.rm(join(folder, 'writing'), { recursive: true, force: true });
    await this.syncFolder(this.options.folder);
  }

  // — reading —

  /** A document in this version, checked; its text is NONE where there is none. */
  private known(kind: Kind<unknown>, id: string): Promise<Remembered> {
    const path = this.path(kind, id);
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

  private async raw(path: string): Promise<string | undefined> {
    try {
      return await this.disk.readFile(path, 'utf8');
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return undefined;
      this.note('a document could not be read', { path, code: codeOf(error), error });
      throw notRead(error);
    }
  }

  private async load(kind: Kind<unknown>, id: string, path: string): Promise<Remembered> {
    const { bad, ...read } = await this.checked(kind, id, path);
    if (bad !== undefined) {
      // Not remembered: a change must find the file bad itself, or it would write over it. Mended in the queue of
      // its document, so that no change is under way then.
      this.loading.delete(path);
      if (this.lock.held)
        void this.change(kind, id, (doc) => ({ keep: doc, tell: undefined })).catch(() => undefined);
      else this.note('a document cannot be read', { path, why: bad });
    }
    return read;
  }

  /** The text in this version, that of the copy before it where the document is bad, and what is bad about it. */
  private async checked(
    kind: Kind<unknown>,
    id: string,
    path: string,
  ): Promise<Remembered & { bad?: string }> {
    await this.findOut(kind, path);
    const raw = await this.raw(path);
    if (raw === undefined) return { text: NONE };
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
      const copy = await this.raw(this.previous(kind, id));
      const before = copy === undefined ? undefined : goodText(kind, copy);
      if (before === undefined) throw this.spoils(path, damaged(kind.called), { why: read.why });
      this.spoilt.delete(path);
      return { text: before, bad: read.why };
    }
    this.spoilt.delete(path);
    return { text: JSON.stringify(read.doc), doc: frozen(read.doc) };
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
      await this.makeFolders(kind);
      const folder = join(this.options.folder, kind.folder);
      const stamp = new Date().toISOString().replace(/[:.]/g, '-');
      const aside = join(folder, 'aside', `${id}~${stamp}~${randomUUID().slice(0, 8)}.json`);
      const bad = join(hold.writing, randomUUID());
      await this.copyTo(path, bad);
      await this.disk.rename(bad, aside);
      // Renamed into place over the bad one; the good copy stays where it is as well.
      const fresh = join(hold.writing, randomUUID());
      await this.writeWhole(fresh, good);
      await this.disk.rename(fresh, path);
      await this.syncFolder(folder);
    } catch (error) {
      this.note('a bad document could not be moved aside', { path, code: codeOf(error), error });
      throw (await this.isLost(error)) ? holdLost(error) : notSaved(error);
    }
  }

  /** Where the disk would neither take a change nor give back what was: looks what it kept, and has it keep that. */
  private async findOut(kind: Kind<unknown>, path: string): Promise<void> {
    const meant = this.unsure.get(path);
    if (meant === undefined) return;
    try {
      const there = await this.raw(path);
      await this.syncFolder(join(this.options.folder, kind.folder));
      this.unsure.delete(path);
      this.note('what the disk kept is known now', { path, kept: there === `${meant}\n` ? 'new' : 'old' });
    } catch (error) {
      throw notKnown(error);
    }
  }

  private remember(path: string, what: Remembered): void {
    this.forget(path);
    if (!this.lock.held) return;
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
  private async hold(): Promise<Hold> {
    for (let takes = 1; ; takes++) {
      await this.leaving;
      // Used from here on: whoever waits for its end does not let go in between.
      this.uses++;
      try {
        if (!this.lock.awake()) await this.takeOnce();
        const { self, writing } = await this.lock.prove();
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
    this.madeFolders.clear();
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
    if (await isThere(this.disk, folder)) return;
    throw new NotSaved(
      'data-folder-gone',
      `The data folder ${folder} is no longer where it was. Nothing was changed.`,
      'Whoever runs this should put it back, or start this anew to begin with an empty one.',
    );
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
