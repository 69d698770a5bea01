/**
 * The list of a document that grows, as a file of its own: a line for each change that added to it, an event or, where there were
 * more, all of them in brackets; so none is there by half. Lines are only ever added. What is there of one that a crash has torn was
 * acknowledged to nobody and is not read.
 */
import type { FileHandle } from 'node:fs/promises';
import type { Disk } from './disk.ts';
import type { DocumentFiles, Files, Hold, Note } from './document-files.ts';
import { checkedEntry, type GrowingKind } from './grown.ts';
import { takenMeanwhile } from './not-saved.ts';
import { codeOf, writeAll } from './placing.ts';

/** Files that are kept open to be added to, at most. */
const MOST_OPEN = 200;
/** Lines that are read or written in one piece, and for how long at most, ms. */
const LINES = 500;
const LOOKED_AT = 16;
const PIECE_MS = 4;

/** A file that this process wrote under this hold: nobody adds to another. */
interface Open {
  readonly handle: FileHandle;
  readonly hold: string;
  readonly inode: number;
  /** How much of it is known to be good. */
  bytes: number;
}

/** What was added by one change. */
export const lineOf = (entries: readonly unknown[]): string =>
  `${JSON.stringify(entries.length === 1 ? entries[0] : entries)}\n`;

function* linesOf(entries: readonly unknown[]): Generator<string> {
  for (let from = 0; from < entries.length; from += LINES) {
    let text = '';
    for (const entry of entries.slice(from, from + LINES)) text += lineOf([entry]);
    yield text;
  }
}

export type ReadList =
  | { readonly is: 'good'; readonly entries: readonly unknown[] }
  /** The number of the line that is wrong, counted from 1. */
  | { readonly is: 'bad'; readonly line: number };

/** No part of what is written of an entry is JSON by itself. */
function isWhole(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** The entries that a text says, in pieces; checked, where they are of this version. */
export function* readList(kind: GrowingKind, text: string, checked: boolean): Generator<void, ReadList> {
  const entries: unknown[] = [];
  let line = 0;
  let began = performance.now();
  for (let from = 0; ;) {
    const end = text.indexOf('\n', from);
    const last = text.slice(from, end < 0 ? undefined : end);
    // What comes after the last end of a line is torn, unless it is whole: whoever mends a file may leave off the end of its last line.
    if (end < 0 && !isWhole(last)) return { is: 'good', entries };
    line++;
    try {
      const said: unknown = JSON.parse(last);
      for (const entry of Array.isArray(said) ? (said as unknown[]) : [said])
        entries.push(checked ? checkedEntry(kind, entry) : entry);
    } catch {
      // Empty lines at the end are left by whoever mended it.
      return text.slice(from).trim() === '' ? { is: 'good', entries } : { is: 'bad', line };
    }
    if (end < 0) return { is: 'good', entries };
    from = end + 1;
    if (line % LOOKED_AT !== 0 || performance.now() - began < PIECE_MS) continue;
    yield;
    began = performance.now();
  }
}

export class EventFiles {
  /** By path, the longest unused first. */
  private readonly open = new Map<string, Open>();

  constructor(
    private readonly disk: Disk,
    private readonly files: DocumentFiles,
    private readonly prove: () => Promise<unknown>,
    private readonly note: Note,
  ) {}

  /** Whether a list can be added to: this process wrote it under this hold. */
  canAdd(hold: Hold, { list }: Files): boolean {
    return this.open.get(list)?.hold === hold.token;
  }

  /** How long a list is that can be added to, in bytes. */
  bytesOf({ list }: Files): number {
    return this.open.get(list)?.bytes ?? 0;
  }

  /** Writes a list whole to a new file in the place of the old one, to be added to from then on. */
  async place(hold: Hold, files: Files, entries: readonly unknown[], keepsOld: boolean): Promise<void> {
    this.close(files);
    const { list, previousList } = files;
    const parts = linesOf(entries);
    const before = keepsOld ? previousList : undefined;
    this.open.set(list, { hold: hold.token, ...(await this.files.placeOpen(hold, list, before, parts)) });
    for (const [oldest, { handle: old }] of this.open) {
      if (this.open.size <= MOST_OPEN) break;
      this.open.delete(oldest);
      void old.close().catch(() => undefined);
    }
  }

  /**
   * Adds lines: when this resolves they are on the disk, and the folder was this process's own after that. Where they cannot all be
   * written, what there is of them is cut off again. Throws NotSaved where it is not known whether they will be read.
   */
  async add(files: Files, lines: string): Promise<void> {
    const { list } = files;
    const open = this.open.get(list);
    if (!open) throw new Error(`${list} is not open`);
    const bytes = Buffer.from(lines);
    try {
      await writeAll(open.handle, bytes, open.bytes);
      await open.handle.datasync();
    } catch (error) {
      await this.cutBack(files, open, error);
      throw error;
    }
    const all = open.bytes + bytes.length;
    try {
      // Whoever took over before this proof may have read the list without these lines.
      const [there] = await Promise.all([this.disk.stat(list), this.prove()]);
      if (there.ino !== open.inode || there.size !== all)
        throw Object.assign(new Error('another file is in its place'), { code: 'ESTALE' });
    } catch (error) {
      this.close(files);
      this.note('a list was added to that may be another’s', { path: list, code: codeOf(error), error });
      throw takenMeanwhile(error);
    }
    open.bytes = all;
    this.open.delete(list);
    this.open.set(list, open);
  }

  private async cutBack(files: Files, open: Open, refused: unknown): Promise<void> {
    try {
      await open.handle.truncate(open.bytes);
      await open.handle.datasync();
    } catch (error) {
      throw this.files.isUnsure(files.list, undefined, error, refused);
    } finally {
      // Written anew before anything is added: what the disk has of this one is not to be built on.
      this.close(files);
    }
  }

  close({ list }: Files): void {
    void this.open
      .get(list)
      ?.handle.close()
      .catch(() => undefined);
    this.open.delete(list);
  }

  /** Gives up what rested on the hold. */
  drop(): void {
    for (const { handle } of this.open.values()) void handle.close().catch(() => undefined);
    this.open.clear();
  }
}
