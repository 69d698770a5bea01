/**
 * The files that answers wrote for somebody: she is told of them, and they go when all of hers goes. The folder may be one
 * that people keep other things in, so a list of what was written lies beside them, and nothing else is ever removed.
 */
import { appendFile, lstat, readFile, rm, rmdir } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { count } from '../../core/base/reader.ts';
import type { Elsewhere, Forgotten } from '../../projects/elsewhere.ts';
import { NOBODY_NAMED } from './room.ts';

/** The list: a name a line, each as often as it was written. */
const WRITTEN = '.written-by-loopwright';

/** Each maker has a folder of her own, so that one's export never lies over another's; nobody's files are in the folder itself. */
export const folderOf = (files: string, maker: string): string =>
  maker === NOBODY_NAMED ? files : join(files, maker);

/** Notes names of files before they are written to a folder. */
export async function noteWritten(folder: string, names: readonly string[]): Promise<void> {
  await appendFile(join(folder, WRITTEN), names.map((name) => `${name}\n`).join(''), { mode: 0o600 });
}

/** Paths of the files in a folder that answers wrote, as far as they are still there. */
async function writtenIn(folder: string): Promise<string[]> {
  const list = await readFile(join(folder, WRITTEN), 'utf8').catch(() => '');
  // A name alone: whatever else got into the list leads nowhere.
  const names = new Set(list.split('\n').filter((name) => name !== '' && basename(name) === name));
  const paths = [...names].map((name) => join(folder, name));
  const there = await Promise.all(
    paths.map((path) =>
      lstat(path).then(
        (found) => found.isFile(),
        () => false,
      ),
    ),
  );
  return paths.filter((_, index) => there[index]);
}

export class KeptFiles implements Elsewhere {
  constructor(private readonly folder: string) {}

  async says(maker: string): Promise<readonly string[]> {
    const folder = folderOf(this.folder, maker);
    const { length } = await writtenIn(folder);
    return length === 0
      ? []
      : [
          `${count(length, 'file')} in the folder ${folder} (exports too: move what you want to keep elsewhere first)`,
        ];
  }

  /** They are hers as they lie there: an export need not hold them once more. */
  collect(): Promise<undefined> {
    return Promise.resolve(undefined);
  }

  async forget(maker: string): Promise<Forgotten> {
    const folder = folderOf(this.folder, maker);
    const paths = await writtenIn(folder);
    const failed: string[] = [];
    for (const path of paths) await rm(path).catch(() => failed.push(path));
    if (failed.length === 0) {
      await rm(join(folder, WRITTEN), { force: true }).catch(() => undefined);
      // Gone where nothing else is in it.
      if (maker !== NOBODY_NAMED) await rmdir(folder).catch(() => undefined);
    }
    const gone = paths.length - failed.length;
    return {
      removed: gone === 0 ? [] : [`${count(gone, 'file')} in the folder ${folder}`],
      left: failed.map((path) => `the file ${path}, which could not be removed: remove it yourself`),
    };
  }
}
