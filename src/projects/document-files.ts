/**
 * One file put in the place of another so that at every moment one of the two is whole on the disk. Everything comes out of the
 * hold's own folder or goes into it, so that nothing is moved any more once somebody else has taken over.
 */
import { randomUUID } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { dirname, join, sep } from 'node:path';
import type { Disk } from './disk.ts';
import { makeFolder } from './folder.ts';
import { notKnown, notRead } from './not-saved.ts';
import { SharedRun } from './shared-run.ts';
import { SAFE_ID, type Kind } from './store.ts';

/** One taking of the folder, from when it was proved. */
export interface Hold {
  readonly token: string;
  /** Where all that is written under it begins; gone once somebody else has taken the folder. */
  readonly writing: string;
}

/** Where the files of a document are. */
export interface Files {
  readonly folder: string;
  /** The document; of one that grows, all but its list. */
  readonly path: string;
  readonly previous: string;
  /** The list of one that grows. */
  readonly list: string;
  readonly previousList: string;
}

export type Note = (what: string, facts: Readonly<Record<string, unknown>>) => void;

/** Not every system can sync a folder; those that cannot say so with one of these. */
const CANNOT_SYNC_FOLDERS = ['EINVAL', 'EISDIR', 'EPERM', 'ENOTSUP', 'EBADF'];

export const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code;

export class DocumentFiles {
  /** Files of which neither what is new nor what was is on the disk for certain, with what is new, where that is known. */
  private readonly unsure = new Map<string, string | undefined>();
  /** Folders that are there, or are being made: whoever writes waits until they are. */
  private readonly made = new Map<string, Promise<void>>();
  private readonly syncs = new Map<string, SharedRun<void>>();
  /** Files that were put in place under this hold. */
  private readonly put = new Set<string>();

  constructor(
    private readonly root: string,
    private readonly disk: Disk,
    /** Proves the hold; throws HoldLost. */
    private readonly prove: () => Promise<unknown>,
    private readonly note: Note,
  ) {}

  /** Throws where the id could not stand in a path. */
  of(kind: Kind<unknown>, id: string): Files {
    if (!SAFE_ID.test(id)) throw new Error(`unsafe id ${JSON.stringify(id)}`);
    const folder = join(this.root, kind.folder);
    const whole = `${folder}${sep}${id}`;
    const before = `${folder}${sep}previous${sep}${id}`;
    return {
      folder,
      path: `${whole}.json`,
      previous: `${before}.json`,
      list: `${whole}.events.jsonl`,
      previousList: `${before}.events.jsonl`,
    };
  }

  /** Gives up what rested on the hold. */
  drop(): void {
    this.made.clear();
    this.put.clear();
  }

  /** Someone may have removed the folders of a kind. */
  doubt({ folder }: Kind<unknown>): void {
    this.made.delete(folder);
  }

  /** Puts a text in the place of a file; `previous`: where the old one stays, unless something in it is to be forgotten. */
  async place(hold: Hold, path: string, previous: string | undefined, text: string): Promise<void> {
    const fresh = join(hold.writing, randomUUID());
    const handle = await this.begun(fresh, [`${text}\n`]);
    await handle.close();
    await this.move(hold, fresh, path, previous, text);
  }

  /** The same of a long text that comes in parts; what comes back is still open. */
  async placeOpen(
    hold: Hold,
    path: string,
    previous: string | undefined,
    parts: Iterable<string>,
  ): Promise<{ handle: FileHandle; bytes: number; inode: number }> {
    const fresh = join(hold.writing, randomUUID());
    const handle = await this.begun(fresh, parts);
    try {
      const { size, ino } = await handle.stat();
      await this.move(hold, fresh, path, previous, undefined);
      return { handle, bytes: size, inode: ino };
    } catch (error) {
      await handle.close().catch(() => undefined);
      throw error;
    }
  }

  private async move(
    hold: Hold,
    fresh: string,
    path: string,
    previous: string | undefined,
    text: string | undefined,
  ): Promise<void> {
    const copy = `${fresh}.previous`;
    try {
      const had = previous !== undefined && (await this.copyTo(path, copy));
      await this.prove();
      if (had) {
        await this.disk.rename(copy, previous);
        // Where both are names of one file, which a crash can leave behind, the renaming does nothing at all.
        if (!this.put.has(path)) await this.disk.rm(copy, { force: true });
      }
      await this.disk.rename(fresh, path);
      this.put.add(path);
      try {
        await this.syncFolderOf(path);
      } catch (error) {
        // What was refused must not turn up after all; but nobody minds having been forgotten already.
        if (previous !== undefined) await this.putBack(hold, path, had ? previous : undefined, text, error);
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
    text: string | undefined,
    refused: unknown,
  ): Promise<void> {
    const back = join(hold.writing, randomUUID());
    this.put.delete(path);
    try {
      if (previous === undefined) await this.remove(hold, path);
      else {
        await this.copyTo(previous, back);
        await this.disk.rename(back, path);
      }
    } catch (error) {
      throw this.isUnsure(path, text, error, refused);
    }
  }

  /** Notes that it is not known what the disk kept of a file; what to throw then. */
  isUnsure(path: string, text: string | undefined, error: unknown, refused: unknown): Error {
    this.unsure.set(path, text);
    this.note('it is not known what the disk kept', { path, code: codeOf(error), error });
    return notKnown(refused);
  }

  /** Where the disk would neither take a change nor give back what was: looks what it kept, and has it keep that. */
  async findOut(path: string): Promise<void> {
    if (!this.unsure.has(path)) return;
    const meant = this.unsure.get(path);
    try {
      const there = await this.raw(path);
      if (there !== undefined) await this.syncFile(path);
      await this.syncFolderOf(path);
      this.unsure.delete(path);
      this.note('what the disk kept is known now', {
        path,
        ...(meant === undefined ? {} : { kept: there === `${meant}\n` ? 'new' : 'old' }),
      });
    } catch (error) {
      throw notKnown(error);
    }
  }

  /** It is gone: nobody has to know any more. */
  sure(path: string): void {
    this.unsure.delete(path);
  }

  /** Removes a file by way of the hold's own folder: once somebody else has taken over, it stays. */
  async remove(hold: Hold, path: string): Promise<void> {
    const gone = join(hold.writing, randomUUID());
    try {
      await this.disk.rename(path, gone);
    } catch (error) {
      if (codeOf(error) !== 'ENOENT') throw error;
      // Either it was not there, or the folder is not: the proof tells.
      await this.prove();
      return;
    }
    await this.disk.rm(gone, { force: true });
  }

  /** Keeps a bad file for whoever may mend it; a good text comes into its place, and the good copy stays where it is as well. */
  async moveAside(hold: Hold, { path }: Files, aside: string, good: string): Promise<void> {
    const bad = join(hold.writing, randomUUID());
    await this.copyTo(path, bad);
    await this.disk.rename(bad, aside);
    const fresh = join(hold.writing, randomUUID());
    await (await this.begun(fresh, [`${good}\n`])).close();
    await this.disk.rename(fresh, path);
    await this.syncFolderOf(path);
  }

  /** Writes all of it to a new file, has the disk take it, and leaves it open. */
  private async begun(path: string, parts: Iterable<string>): Promise<FileHandle> {
    const handle = await this.disk.open(path, 'wx', 0o600);
    try {
      for (const part of parts) await this.writeAll(handle, Buffer.from(part));
      await handle.sync();
      return handle;
    } catch (error) {
      await handle.close().catch(() => undefined);
      await this.disk.rm(path, { force: true }).catch(() => undefined);
      throw error;
    }
  }

  /** Writes all of it: a full disk may take part of it and call that a success. `at`: where; after what was written last. */
  async writeAll(handle: FileHandle, bytes: Buffer, at?: number): Promise<void> {
    for (let done = 0; done < bytes.length;) {
      const place = at === undefined ? null : at + done;
      const { bytesWritten } = await handle.write(bytes, done, bytes.length - done, place);
      if (bytesWritten === 0) throw Object.assign(new Error('nothing was written'), { code: 'ENOSPC' });
      done += bytesWritten;
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

  private syncFolderOf(path: string): Promise<void> {
    return this.syncFolder(dirname(path));
  }

  /** What is written at the same time in one folder shares its sync. */
  syncFolder(folder: string): Promise<void> {
    const known = this.syncs.get(folder);
    if (known) return known.once();
    const shared = new SharedRun(() => this.syncFile(folder));
    this.syncs.set(folder, shared);
    return shared.once();
  }

  private async syncFile(path: string): Promise<void> {
    try {
      const handle = await this.disk.open(path, 'r');
      try {
        await handle.sync();
      } finally {
        await handle.close();
      }
    } catch (error) {
      if (!CANNOT_SYNC_FOLDERS.includes(codeOf(error) ?? '')) throw error;
    }
  }

  /** What a file says; undefined where there is none. */
  async raw(path: string): Promise<string | undefined> {
    try {
      const text = await this.disk.readText(path);
      // Some editors begin a file with a mark of its order of bytes.
      return text.startsWith('\uFEFF') ? text.slice(1) : text;
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return undefined;
      this.note('a document could not be read', { path, code: codeOf(error), error });
      throw notRead(error);
    }
  }

  async names(folder: string): Promise<string[]> {
    try {
      return await this.disk.readdir(folder);
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return [];
      throw notRead(error);
    }
  }

  makeFolders({ folder }: Kind<unknown>): Promise<void> {
    const known = this.made.get(folder);
    if (known) return known;
    const making = this.makeAnew(folder);
    this.made.set(folder, making);
    making.catch(() => this.made.delete(folder));
    return making;
  }

  private async makeAnew(kind: string): Promise<void> {
    const folder = join(this.root, kind);
    for (const name of [folder, join(folder, 'previous'), join(folder, 'aside')])
      await makeFolder(this.disk, name);
    // Where an earlier version began its writing: what is left there was left by a process that is gone.
    await this.disk.rm(join(folder, 'writing'), { recursive: true, force: true });
    await this.syncFolder(this.root);
  }
}
