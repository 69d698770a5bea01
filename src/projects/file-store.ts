/**
 * Documents as JSON files: DATA_DIR/<folder>/<id>.json, the good copy before it in `previous/`, what could not be read in
 * `aside/`. A change is answered when it is on the disk, and only then is it what the next one starts from.
 */
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { realDisk, type Disk } from './disk.ts';
import { FolderLock } from './lock.ts';
import { NotSaved, notRead, notSaved } from './not-saved.ts';
import { SAFE_ID, type Changed, type Kind, type Store } from './store.ts';
import { upToDate } from './versions.ts';

export interface FileStoreOptions {
  readonly folder: string;
  /** True holds the folder from the start; false takes it for the moment of each change and lets others have it between. */
  readonly stays: boolean;
  /** Told what whoever runs this should know. Never holds what a document says. */
  readonly note?: (what: string, facts: Readonly<Record<string, unknown>>) => void;
  /** How long to wait for another process to let go. */
  readonly patience?: number;
  readonly disk?: Disk;
}

interface Remembered {
  readonly text: string;
  /** What the text says, where everybody is handed the same one; made when it is first asked for. */
  doc?: unknown;
}

interface Waiting {
  readonly change: (doc: unknown) => Changed<unknown, unknown>;
  readonly resolve: (tell: unknown) => void;
  readonly reject: (error: unknown) => void;
}

/** At most so many changes are written together: nobody waits for a whole crowd. */
const MOST_TOGETHER = 64;
/** How much text of documents is remembered, in characters. */
const REMEMBERED = 32_000_000;
/** A process that does not stay lets go after so long without a change, and now and then in a long run of them. */
const IDLE_MS = 50;
const TURN_MS = 500;
/** Between a turn and the next, so that whoever waits gets one. */
const COURTESY_MS = 60;
const POLL_MS = 20;
/** Not every system can sync a folder; those that cannot say so with one of these. */
const CANNOT_SYNC_FOLDERS = ['EINVAL', 'EISDIR', 'EPERM', 'ENOTSUP', 'EBADF'];

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code;
/** The text of a document that is not there. */
const NONE = '';

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
  private readonly sweptFolders = new Set<string>();
  /** Documents that are being read for somebody, by path. */
  private readonly loading = new Map<string, Promise<string>>();
  private taking: Promise<void> | undefined;
  private leaving: Promise<void> | undefined;
  private uses = 0;
  private turnEnds = 0;
  private closed = false;

  private constructor(private readonly options: FileStoreOptions) {
    this.disk = options.disk ?? realDisk;
    this.note = options.note ?? (() => undefined);
    this.lock = new FolderLock(options.folder, this.disk, options.stays);
  }

  /** Throws NotSaved when the folder should be held from the start and cannot be. */
  static async open(options: FileStoreOptions): Promise<FileStore> {
    const store = new FileStore(options);
    if (options.stays) await store.take();
    return store;
  }

  /** Changes that wait to be written. */
  get waiting(): number {
    return [...this.queues.values()].reduce((sum, queue) => sum + queue.length, 0);
  }

  async read<T>(kind: Kind<T>, id: string): Promise<T | undefined> {
    return this.docOf(kind, this.path(kind, id), await this.text(kind, id)) as T | undefined;
  }

  change<T, R>(kind: Kind<T>, id: string, change: (doc: T | undefined) => Changed<T, R>): Promise<R> {
    const path = this.path(kind, id);
    if (this.closed)
      return Promise.reject(
        new NotSaved('closing', 'This is closing down. Nothing was changed.', 'Ask again in a moment.'),
      );
    return new Promise<R>((resolve, reject) => {
      const entry = { change, resolve, reject } as unknown as Waiting;
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

  async ids(kind: Kind<unknown>, prefix = ''): Promise<string[]> {
    const names = await this.names(join(this.options.folder, kind.folder));
    return names
      .filter((name) => name.endsWith('.json') && name.startsWith(prefix))
      .map((name) => name.slice(0, -'.json'.length));
  }

  async close(): Promise<void> {
    this.closed = true;
    while (this.running.size > 0) await Promise.all(this.running);
    await this.leaving;
    await this.letGo();
  }

  /** For a process on its way out that can wait for nothing. */
  releaseNow(): void {
    this.lock.releaseNow();
  }

  // — one document at a time —

  /** What a text says: a copy, or the one that everybody is handed. */
  private docOf(kind: Kind<unknown>, path: string, text: string): unknown {
    if (text === NONE) return undefined;
    const known = this.remembered.get(path);
    if (!kind.builtBeside || known?.text !== text) return JSON.parse(text);
    return (known.doc ??= JSON.parse(text));
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
      const together = this.queues.get(path)?.splice(0, MOST_TOGETHER) ?? [];
      if (together.length === 0) break;
      try {
        await this.hold();
        try {
          await this.apply(kind, id, path, together);
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
  private async apply(kind: Kind<unknown>, id: string, path: string, together: readonly Waiting[]) {
    const before = await this.current(kind, id, path);
    const first = this.docOf(kind, path, before);
    const textOf = (said: unknown) =>
      said === undefined ? NONE : said === first && kind.builtBeside ? before : JSON.stringify(said);
    let text = before;
    let doc = first;
    let forgetting = false;
    const answered: (() => void)[] = [];
    for (const { change, resolve, reject } of together) {
      try {
        const { keep, tell, forgets = false } = change(doc);
        // What was kept is checked before it is written, and is what the next change is handed: a copy of its own.
        if (keep === undefined) doc = undefined;
        else if (keep !== doc || !kind.builtBeside) doc = kind.schema.parse(keep);
        if (!kind.builtBeside) text = textOf(doc);
        forgetting ||= forgets;
        answered.push(() => resolve(tell));
      } catch (error) {
        if (!kind.builtBeside) doc = text === NONE ? undefined : JSON.parse(text);
        answered.push(() => reject(error));
      }
    }
    text = textOf(doc);
    try {
      if (forgetting && text !== NONE) await this.dropCopies(kind, id);
      if (text !== before)
        await (text === NONE ? this.erase(kind, id) : this.write(kind, id, text, !forgetting));
    } catch (error) {
      this.madeFolders.delete(kind.folder); // someone may have removed them
      this.note('a document could not be written', { path, code: codeOf(error), error });
      throw notSaved(error);
    }
    this.loading.delete(path);
    this.remember(path, { text, ...(kind.builtBeside ? { doc } : {}) });
    for (const answer of answered) answer();
  }

  // — the disk —

  /**
   * New text in the place of the old, so that at every moment one of the two is whole on the disk. The old one stays as
   * the copy before it, unless something in it is to be forgotten.
   */
  private async write(kind: Kind<unknown>, id: string, text: string, keepsOld: boolean): Promise<void> {
    const path = this.path(kind, id);
    const folder = join(this.options.folder, kind.folder);
    const previous = this.previous(kind, id);
    const fresh = join(folder, 'writing', `${id}.${randomUUID()}`);
    const copy = `${fresh}.previous`;
    await this.makeFolders(kind);
    try {
      await this.writeWhole(fresh, text);
      const had = keepsOld && (await this.copyTo(path, copy));
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
        if (keepsOld) await (had ? this.disk.rename(previous, path) : this.disk.rm(path, { force: true }));
        throw error;
      }
    } catch (error) {
      for (const left of [fresh, copy]) await this.disk.rm(left, { force: true }).catch(() => undefined);
      throw error;
    }
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
  private async erase(kind: Kind<unknown>, id: string): Promise<void> {
    await this.dropCopies(kind, id);
    await this.disk.rm(this.path(kind, id), { force: true });
    this.forget(this.path(kind, id));
    await this.syncFolder(join(this.options.folder, kind.folder));
  }

  /** Removes the copy before a document and whatever was moved aside of it. */
  private async dropCopies(kind: Kind<unknown>, id: string): Promise<void> {
    const aside = join(this.options.folder, kind.folder, 'aside');
    for (const name of await this.names(aside))
      if (name.startsWith(`${id}~`)) await this.disk.rm(join(aside, name), { force: true });
    await this.disk.rm(this.previous(kind, id), { force: true });
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
    for (const name of ['previous', 'writing', 'aside'])
      await this.disk.mkdir(join(folder, name), { recursive: true, mode: 0o700 });
    // Only the holder writes, so what is found half-written before its first writing was left by a process that is gone.
    if (!this.sweptFolders.has(kind)) {
      for (const name of await this.names(join(folder, 'writing')))
        await this.disk.rm(join(folder, 'writing', name), { force: true });
      this.sweptFolders.add(kind);
    }
    await this.syncFolder(this.options.folder);
  }

  // — reading —

  /** The checked text of a document in this version; NONE where there is none. */
  private text(kind: Kind<unknown>, id: string): Promise<string> {
    const path = this.path(kind, id);
    const known = this.remembered.get(path);
    if (known !== undefined) {
      this.remember(path, known);
      return Promise.resolve(known.text);
    }
    const loading = this.loading.get(path) ?? this.load(kind, id, path);
    this.loading.set(path, loading);
    return loading
      .then((text) => {
        // Written or let go of meanwhile: what was read is the past, and good for this reader only.
        if (this.loading.get(path) === loading) this.remember(path, { text });
        return text;
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

  private async load(kind: Kind<unknown>, id: string, path: string): Promise<string> {
    const { text, bad } = await this.checked(kind, id, path);
    if (bad !== undefined) {
      // Not remembered: a change must find the file bad itself, or it would write over it. Mended in the queue of
      // its document, so that no change is under way then.
      this.loading.delete(path);
      if (this.lock.held)
        void this.change(kind, id, (doc) => ({ keep: doc, tell: undefined })).catch(() => undefined);
      else this.note('a document cannot be read', { path, why: bad });
    }
    return text;
  }

  /** The text in this version, that of the copy before it where the document is bad, and what is bad about it. */
  private async checked(
    kind: Kind<unknown>,
    id: string,
    path: string,
  ): Promise<{ text: string; bad?: string }> {
    const raw = await this.raw(path);
    if (raw === undefined) return { text: NONE };
    const read = upToDate(kind, raw);
    if (read.is === 'good') return { text: JSON.stringify(read.doc) };
    if (read.is === 'newer') {
      this.note('a document of a newer version is left alone', { path, version: read.version });
      throw new NotSaved(
        'newer-document',
        'What is saved was written by a newer version of this program. Nothing was changed.',
        'Whoever runs this should bring the program up to date.',
      );
    }
    const copy = await this.raw(this.previous(kind, id));
    const before = copy === undefined ? undefined : upToDate(kind, copy);
    return { text: before?.is === 'good' ? JSON.stringify(before.doc) : NONE, bad: read.why };
  }

  /** What a change starts from: what is remembered, or what the disk says, mended first where it is bad. */
  private async current(kind: Kind<unknown>, id: string, path: string): Promise<string> {
    const known = this.remembered.get(path);
    if (known !== undefined) return known.text;
    const { text, bad } = await this.checked(kind, id, path);
    if (bad !== undefined) {
      const took = text === NONE ? 'nothing: no good copy is left' : 'the copy before it';
      this.note('a document cannot be read and is moved aside', { path, why: bad, took });
      await this.moveAside(kind, id, path, text);
    }
    return text;
  }

  /** A bad file is kept for whoever may mend it, never written over. */
  private async moveAside(kind: Kind<unknown>, id: string, path: string, good: string): Promise<void> {
    try {
      await this.makeFolders(kind);
      const folder = join(this.options.folder, kind.folder);
      const stamp = new Date().toISOString().replace(/[:.]/g, '-');
      const aside = join(folder, 'aside', `${id}~${stamp}~${randomUUID().slice(0, 8)}.json`);
      if (good === NONE) {
        await this.disk.rename(path, aside);
      } else {
        await this.copyTo(path, aside);
        // Renamed into place over the bad one; the good copy stays where it is as well.
        const fresh = join(folder, 'writing', `${id}.${randomUUID()}`);
        await this.writeWhole(fresh, good);
        await this.disk.rename(fresh, path);
      }
      await this.syncFolder(folder);
    } catch (error) {
      this.note('a bad document could not be moved aside', { path, code: codeOf(error), error });
      throw notSaved(error);
    }
  }

  private remember(path: string, what: Remembered): void {
    this.forget(path);
    if (!this.lock.held) return;
    this.remembered.set(path, what);
    this.rememberedSize += what.text.length;
    for (const oldest of this.remembered.keys()) {
      if (this.rememberedSize <= REMEMBERED) break;
      this.forget(oldest);
    }
  }

  private forget(path: string): void {
    this.rememberedSize -= this.remembered.get(path)?.text.length ?? 0;
    this.remembered.delete(path);
  }

  // — the folder —

  /** Begins a use of the folder, which lasts until `done`. */
  private async hold(): Promise<void> {
    await this.leaving;
    if (!this.lock.held) {
      this.taking ??= this.take().finally(() => (this.taking = undefined));
      await this.taking;
    }
    this.uses++;
  }

  private done(): void {
    this.uses--;
    if (this.options.stays || this.uses > 0) return;
    if (Date.now() >= this.turnEnds) {
      // A long run of changes gives others a turn.
      this.leaving = this.letGo().then(() => sleep(COURTESY_MS));
      return;
    }
    setTimeout(() => {
      if (this.uses === 0) this.leaving = this.letGo();
    }, IDLE_MS).unref();
  }

  private async take(): Promise<void> {
    const until = Date.now() + (this.options.patience ?? 8000);
    for (;;) {
      let holder;
      try {
        await this.disk.mkdir(this.options.folder, { recursive: true, mode: 0o700 });
        holder = await this.lock.take();
      } catch (error) {
        this.note('the data folder cannot be held', {
          folder: this.options.folder,
          code: codeOf(error),
          error,
        });
        throw notSaved(error);
      }
      if (!holder) break;
      if (holder.stays || Date.now() > until) {
        throw new NotSaved(
          'in-use',
          `The data folder ${this.options.folder} is in use by process ${holder.pid} on ${holder.host}. Nothing was changed.`,
          'Stop that one first, or set DATA_DIR to another folder.',
        );
      }
      await sleep(POLL_MS + (process.pid % 10));
    }
    // What was being read before may have been changed by whoever held the folder.
    this.loading.clear();
    this.turnEnds = Date.now() + TURN_MS;
  }

  private async letGo(): Promise<void> {
    if (!this.lock.held) return;
    this.remembered.clear();
    this.rememberedSize = 0;
    this.loading.clear();
    try {
      await this.lock.release();
    } catch (error) {
      this.note('the data folder could not be let go of', { code: codeOf(error), error });
    }
  }
}
