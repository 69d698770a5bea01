/** Making the folder that data are kept in, and refusing places that keep nothing. */
import { realpathSync } from 'node:fs';
import { dirname, resolve, sep } from 'node:path';
import type { Disk } from './disk.ts';
import { NotSaved } from './not-saved.ts';

/** Windows into the running system, not places for files; `/dev/shm` is one for files. */
const WINDOWS = ['/proc', '/sys', '/dev'];
const isWindow = (path: string) =>
  path !== '/dev/shm' &&
  !path.startsWith('/dev/shm/') &&
  WINDOWS.some((window) => path === window || path.startsWith(`${window}/`));

/** The path with the links of all that exists of it followed. */
function realPlace(path: string): string {
  const whole = resolve(path);
  for (let there = whole; ; there = dirname(there)) {
    try {
      return `${realpathSync(there)}${whole.slice(there.length)}`;
    } catch {
      if (there === dirname(there)) return whole;
    }
  }
}

/** Throws NotSaved where a folder for data would lie in the system itself. */
export function mustBePlace(folder: string): void {
  if (!isWindow(realPlace(folder))) return;
  throw new NotSaved(
    'no-place-for-data',
    `The data folder ${folder} would lie in the system itself, where nothing is kept.`,
    'Set DATA_DIR to a folder on a disk.',
  );
}

/**
 * Makes a folder and those above it, each tried once: what Node does for this by itself goes on for ever where the
 * system says of a folder that is there that it is not. Throws what the disk throws.
 */
export async function makeFolder(disk: Disk, folder: string): Promise<void> {
  const whole = resolve(folder);
  const above: string[] = [];
  for (let path = whole; path !== dirname(path); path = dirname(path)) above.unshift(path);
  // From below, as most of it is there; from the first that is missing downwards.
  let at = above.length - 1;
  while (at > 0 && !(await isThere(disk, above[at - 1] ?? sep))) at--;
  for (; at < above.length; at++) {
    try {
      await disk.mkdir(above[at] ?? whole, { mode: 0o700 });
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
  if (!(await disk.stat(whole)).isDirectory())
    throw Object.assign(new Error(`${whole} is not a folder`), { code: 'ENOTDIR' });
}

export async function isThere(disk: Disk, path: string): Promise<boolean> {
  try {
    await disk.stat(path);
    return true;
  } catch (error) {
    if (['ENOENT', 'ENOTDIR'].includes((error as NodeJS.ErrnoException).code ?? '')) return false;
    throw error;
  }
}
