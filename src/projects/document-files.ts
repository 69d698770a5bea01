/**
 * The files of documents: where they are, how they are put in place, and what is done where the disk will not promise to keep that.
 * Everything comes out of the hold's own folder or goes into it, so that nothing is moved any more once somebody else has taken over.
 */
import { randomUUID } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { dirname, join, sep } from 'node:path';
import type { Disk } from './disk.ts';
import { makeFolder } from './folder.ts';
import { notKnown, notRead } from './not-saved.ts';
import {
  codeOf,
  FolderSyncs,
  nameAgain,
  place,
  putInPlace,
  syncFile,
  writeNew,
  type Move,
  type Placed,
} from './placing.ts';
import { SAFE_ID, type Kind } from './store.ts';
import type { DocumentDisk, Lost } from './disk-thread.ts';

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

export class DocumentFiles {
  /** Files of which neither what is new nor what was is on the disk for certain, with what is new, where that is known. */
  private readonly unsure = new Map<string, string | undefined>();
  /** Folders that are there, or are being made: whoever writes waits until they are. */
  private readonly made = new Map<string, Promise<void>>();
  private readonly syncs: FolderSyncs;
  /** Paths of the folders of kinds. */
  private readonly folders = new Map<string, string>();
  /** Files that were put in place under this hold. */
  private readonly put = new Set<string>();

  constructor(
    private readonly root: string,
    private readonly disk: Disk,
    /** Proves the hold; throws HoldLost. */
    private readonly prove: () => Promise<unknown>,
    private readonly note: Note,
    /** Reads, and puts texts in place; this thread does it where none is given. */
    private readonly thread?: DocumentDisk,
  ) {
    this.syncs = new FolderSyncs(disk);
  }

  /** Throws where the id could not stand in a path. */
  of(kind: Kind<unknown>, id: string): Files {
    const path = this.pathOf(kind, id);
    const folder = this.folderOf(kind);
    const before = `${folder}${sep}previous${sep}${id}`;
    return {
      folder,
      path,
      previous: `${before}.json`,
      list: `${folder}${sep}${id}.events.jsonl`,
      previousList: `${before}.events.jsonl`,
    };
  }

  /** The same of the document alone: what is asked for at every reading. */
  pathOf(kind: Kind<unknown>, id: string): string {
    if (!SAFE_ID.test(id)) throw new Error(`unsafe id ${JSON.stringify(id)}`);
    return `${this.folderOf(kind)}${sep}${id}.json`;
  }

  private folderOf(kind: Kind<unknown>): string {
    let folder = this.folders.get(kind.folder);
    if (folder === undefined) this.folders.set(kind.folder, (folder = join(this.root, kind.folder)));
    return folder;
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
    const placing = { ...this.moveOf(hold, path, previous), text: `${text}\n` };
    const placed = await (this.thread?.place(placing) ?? place(this.disk, this.syncs, placing));
    await this.settle(hold, placing, placed, text);
  }

  /** The same of a long text that comes in parts; what comes back is still open. */
  async placeOpen(
    hold: Hold,
    path: string,
    previous: string | undefined,
    parts: Iterable<string>,
  ): Promise<{ handle: FileHandle; bytes: number; inode: number }> {
    const move = this.moveOf(hold, path, previous);
    const handle = await writeNew(this.disk, move.fresh, parts);
    try {
      const { size, ino } = await handle.stat();
      await this.settle(hold, move, await putInPlace(this.disk, this.syncs, move), undefined);
      return { handle, bytes: size, inode: ino };
    } catch (error) {
      await handle.close().catch(() => undefined);
      throw error;
    }
  }

  private moveOf(hold: Hold, path: string, previous: string | undefined): Move {
    return { fresh: join(hold.writing, randomUUID()), path, previous, twice: !this.put.has(path) };
  }

  /** Throws where a file is not in its place for certain, after the old one was put back as far as the disk will. */
  private async settle(
    hold: Hold,
    { path, previous }: Move,
    placed: Placed | Lost,
    text: string | undefined,
  ): Promise<void> {
    if (placed.is === 'placed') {
      this.put.add(path);
      return;
    }
    // Some steps may have been taken: the old file may lie there under both its names.
    this.put.delete(path);
    const { error } = placed;
    if (placed.is === 'refused') throw error;
    if (placed.is === 'lost') throw this.isUnsure(path, text, error, error);
    // What was refused must not turn up after all; but nobody minds having been forgotten already.
    if (previous !== undefined)
      await this.putBack(hold, path, placed.had ? previous : undefined, text, error);
    throw error;
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
    try {
      if (previous === undefined) await this.remove(hold, path);
      else {
        await nameAgain(this.disk, previous, back);
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
      if (there !== undefined) await syncFile(this.disk, path);
      await this.syncFolder(dirname(path));
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
    await nameAgain(this.disk, path, bad);
    await this.disk.rename(bad, aside);
    const fresh = join(hold.writing, randomUUID());
    await (await writeNew(this.disk, fresh, [`${good}\n`])).close();
    await this.disk.rename(fresh, path);
    await this.syncFolder(dirname(path));
  }

  /** What is written at the same time in one folder shares its sync. */
  syncFolder(folder: string): Promise<void> {
    return this.syncs.of(folder);
  }

  /** What a file says; undefined where there is none. */
  async raw(path: string): Promise<string | undefined> {
    try {
      const text = await (this.thread?.read(path) ?? this.disk.readText(path));
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
