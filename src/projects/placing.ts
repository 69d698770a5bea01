/**
 * One file put in the place of another so that at every moment one of the two is whole on the disk: the steps of it, whoever takes
 * them. All that is moved is begun in the hold's own folder, so that nothing is moved any more once somebody else has taken over.
 */
import { dirname } from 'node:path';
import { SharedRun } from './shared-run.ts';

/** A file that is being written. */
export interface NewFile {
  write(bytes: Buffer, from: number, length: number, at: number | null): Promise<{ bytesWritten: number }>;
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** What placing asks of a disk. */
export interface PlacingDisk<F extends NewFile = NewFile> {
  open(path: string, flags: string, mode?: number): Promise<F>;
  link(from: string, to: string): Promise<void>;
  copyFile(from: string, to: string): Promise<void>;
  rename(from: string, to: string): Promise<void>;
  rm(path: string, options: { force: true }): Promise<void>;
}

/** What is moved, and where to. */
export interface Move {
  /** Where the new file was written: in the hold's own folder. */
  readonly fresh: string;
  readonly path: string;
  /** Where the old file stays; undefined where nothing of it may. */
  readonly previous: string | undefined;
  /** Whether it may be that the old file lies there already, under both its names. */
  readonly twice: boolean;
}

export interface Placing extends Move {
  /** All that the new file says. */
  readonly text: string;
}

/** What came of it; `had`: whether there was an old file, of which `previous` is the name now. */
export type Placed =
  | { readonly is: 'placed' }
  /** The old file is where it was. */
  | { readonly is: 'refused'; readonly error: unknown }
  /** The new file is in its place and the disk would not promise to keep it there. */
  | { readonly is: 'unsure'; readonly had: boolean; readonly error: unknown };

/** Not every system can sync a folder; those that cannot say so with one of these. */
const CANNOT_SYNC_FOLDERS = ['EINVAL', 'EISDIR', 'EPERM', 'ENOTSUP', 'EBADF'];
/** The same of second names for a file. */
const CANNOT_LINK = ['EPERM', 'ENOTSUP', 'ENOSYS', 'EMLINK'];

export const codeOf = (error: unknown) => (error as NodeJS.ErrnoException).code;

/** Writes all of it: a full disk may take part of it and call that a success. `at`: where; after what was written last. */
export async function writeAll(file: Pick<NewFile, 'write'>, bytes: Buffer, at?: number): Promise<void> {
  for (let done = 0; done < bytes.length;) {
    const place = at === undefined ? null : at + done;
    const { bytesWritten } = await file.write(bytes, done, bytes.length - done, place);
    if (bytesWritten === 0) throw Object.assign(new Error('nothing was written'), { code: 'ENOSPC' });
    done += bytesWritten;
  }
}

/** Writes all of it to a new file, has the disk take it, and leaves it open. */
export async function writeNew<F extends NewFile>(
  disk: PlacingDisk<F>,
  path: string,
  parts: Iterable<string>,
): Promise<F> {
  const file = await disk.open(path, 'wx', 0o600);
  try {
    for (const part of parts) await writeAll(file, Buffer.from(part));
    await file.sync();
    return file;
  } catch (error) {
    await file.close().catch(() => undefined);
    await disk.rm(path, { force: true }).catch(() => undefined);
    throw error;
  }
}

/** A second name for a file, or a copy where the disk knows no second names; false where there is no file. */
export async function nameAgain(disk: PlacingDisk, from: string, to: string): Promise<boolean> {
  try {
    await disk.link(from, to);
    return true;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return false;
    if (!CANNOT_LINK.includes(codeOf(error) ?? '')) throw error;
    await disk.copyFile(from, to);
    return true;
  }
}

/** Has the disk keep which files are in a folder, or what is in a file. */
export async function syncFile(disk: PlacingDisk, path: string): Promise<void> {
  try {
    const file = await disk.open(path, 'r');
    try {
      await file.sync();
    } finally {
      await file.close();
    }
  } catch (error) {
    if (!CANNOT_SYNC_FOLDERS.includes(codeOf(error) ?? '')) throw error;
  }
}

/** Syncs of folders: what is written at the same time in one folder shares its sync. */
export class FolderSyncs {
  private readonly syncs = new Map<string, SharedRun<void>>();

  constructor(private readonly disk: PlacingDisk) {}

  of(folder: string): Promise<void> {
    const known = this.syncs.get(folder);
    if (known) return known.once();
    const shared = new SharedRun(() => syncFile(this.disk, folder));
    this.syncs.set(folder, shared);
    return shared.once();
  }
}

/** Moves a file that was written into its place. Where that fails, nothing of it is left in the hold's own folder. */
export async function putInPlace(
  disk: PlacingDisk,
  syncs: FolderSyncs,
  { fresh, path, previous, twice }: Move,
): Promise<Placed> {
  const copy = `${fresh}.previous`;
  const refused = async (error: unknown): Promise<Placed> => {
    for (const left of [fresh, copy]) await disk.rm(left, { force: true }).catch(() => undefined);
    return { is: 'refused', error };
  };
  let had = false;
  try {
    if (previous !== undefined && (await nameAgain(disk, path, copy))) {
      had = true;
      await disk.rename(copy, previous);
      // Where both are names of one file, which a crash can leave behind, the renaming does nothing at all.
      if (twice) await disk.rm(copy, { force: true });
    }
    await disk.rename(fresh, path);
  } catch (error) {
    return refused(error);
  }
  try {
    await syncs.of(dirname(path));
    return { is: 'placed' };
  } catch (error) {
    return { is: 'unsure', had, error };
  }
}

/** Writes a text and moves it into its place. */
export async function place(disk: PlacingDisk, syncs: FolderSyncs, placing: Placing): Promise<Placed> {
  try {
    const file = await writeNew(disk, placing.fresh, [placing.text]);
    await file.close();
  } catch (error) {
    return { is: 'refused', error };
  }
  return putInPlace(disk, syncs, placing);
}
