/** Presses on a disk where anything fails now and then, and keeps account of what was told and what is there in the end. */
import type { FileHandle } from 'node:fs/promises';
import { realDisk, type Disk } from '../../src/projects/disk.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { Projects } from '../../src/projects/projects.ts';
import { asking, type Json } from '../asking.ts';
import { newFolder, tree } from '../projects/kinds.ts';

export interface DiskReport {
  readonly presses: number;
  readonly acknowledged: number;
  /** Refused in words: nothing was changed. */
  readonly refused: number;
  /** Told that it is not known; looked up afterwards. */
  readonly unknown: number;
  /** Acknowledged and not there in the end. */
  readonly lost: number;
  /** There though refused, or counted twice. */
  readonly doubled: number;
  /** Faults of ours, promises that nobody waited for, files left behind. */
  readonly broken: readonly string[];
}

const CODES = ['ENOSPC', 'EDQUOT', 'EIO', 'EROFS', 'EACCES'];
const MAKERS = ['rowan', 'hazel', 'wren', 'linden'];
/** What failed presses are answered with; anything else is a fault of ours. */
const REFUSALS = ['not-saved', 'not-read', 'not-known', 'hold-lost', 'in-use', 'data-folder-gone'];

/** A disk of which each step fails with the given chance, taken from `spread`, while it is spoilt. */
function failing(chance: number, spread: () => number) {
  const state = { spoilt: false };
  const may = () => {
    if (!state.spoilt || spread() >= chance) return;
    const code = CODES[Math.floor(spread() * CODES.length)] ?? 'EIO';
    throw Object.assign(new Error(code), { code });
  };
  const spoil =
    <A extends unknown[], R>(does: (...args: A) => Promise<R>) =>
    async (...args: A): Promise<R> => {
      may();
      return does(...args);
    };
  const open: Disk['open'] = async (path, flags, mode) => {
    may();
    const handle = await realDisk.open(path, flags, mode);
    const write = handle.write.bind(handle) as (
      bytes: Buffer,
      from: number,
      length: number,
      at?: number,
    ) => Promise<unknown>;
    const sync = handle.sync.bind(handle);
    const datasync = handle.datasync.bind(handle);
    const truncate = handle.truncate.bind(handle);
    // Half of it is written before a full disk says so.
    const spoilt: Partial<FileHandle> = {
      write: (async (bytes: Buffer, from: number, length: number, at?: number) => {
        const some = state.spoilt && spread() < chance ? Math.ceil(length / 2) : length;
        may();
        return write(bytes, from, some, at);
      }) as unknown as FileHandle['write'],
      sync: async () => {
        may();
        await sync();
      },
      datasync: async () => {
        may();
        await datasync();
      },
      truncate: async (length) => {
        may();
        await truncate(length);
      },
    };
    return Object.assign(handle, spoilt);
  };
  const disk: Disk = {
    open,
    copyFile: spoil(realDisk.copyFile),
    link: spoil(realDisk.link),
    mkdir: spoil(realDisk.mkdir as (...args: unknown[]) => Promise<unknown>) as unknown as Disk['mkdir'],
    readText: spoil(realDisk.readText),
    readdir: spoil(
      realDisk.readdir as (...args: unknown[]) => Promise<unknown>,
    ) as unknown as Disk['readdir'],
    rename: spoil(realDisk.rename),
    rm: spoil(realDisk.rm),
    stat: spoil(realDisk.stat as (...args: unknown[]) => Promise<unknown>) as unknown as Disk['stat'],
    utimes: spoil(realDisk.utimes),
    writeFile: spoil(realDisk.writeFile),
  };
  return { disk, state };
}

/** `spread` hands out numbers in [0, 1): where it fails, and how. */
export async function diskLoop(presses: number, spread: () => number): Promise<DiskReport> {
  const folder = newFolder();
  const { disk, state } = failing(0.02, spread);
  const store = await FileStore.open({ folder, stays: true, disk });
  const room = asking(new Projects(store));
  const done = async (line: string) => {
    const said = await room.ask(line);
    if (!said.ok) throw new Error(`${line}: ${said.problem}`);
  };
  await done('/motif define name:furrow shape:diagonal size:400 stitch:sc');
  await done('/blanket start name:throw kinds:furrow columns:50 rows:50');
  await done('/together open blanket:throw side:15cm');
  for (const maker of MAKERS) await done(`${maker}: /motif define name:furrow shape:diagonal size:400`);

  const broken: string[] = [];
  const stray = (error: unknown) => void broken.push(`nobody waited for: ${String(error)}`);
  process.on('unhandledRejection', stray);
  const count = { acknowledged: 0, refused: 0, unknown: 0 };
  const told = new Map<string, { acknowledged: number; unknown: number }>();
  const account = (key: string, { ok, code, problem }: Json) => {
    const mine = told.get(key) ?? { acknowledged: 0, unknown: 0 };
    told.set(key, mine);
    if (ok) {
      mine.acknowledged++;
      count.acknowledged++;
    } else if (code === 'not-known') {
      mine.unknown++;
      count.unknown++;
    } else {
      count.refused++;
      if (!REFUSALS.includes(code)) broken.push(`${code}: ${problem}`);
      else if (!problem.includes('Nothing was changed')) broken.push(problem);
    }
  };
  state.spoilt = true;
  for (let press = 0; press < presses; press += 2 * MAKERS.length) {
    await Promise.all(
      MAKERS.flatMap((maker) =>
        [
          ['row', '/progress next motif:furrow'],
          ['pledge', '/together pledge kind:furrow'],
        ].map(async ([what = '', line = '']) =>
          account(`${maker} ${what}`, await room.ask(`${maker}: ${line}`)),
        ),
      ),
    );
  }
  state.spoilt = false;
  await store.close();
  process.off('unhandledRejection', stray);
  broken.push(...room.faults.map(String));

  const again = await FileStore.open({ folder, stays: true });
  const projects = new Projects(again);
  const group = (await projects.groups.named(undefined, 'throw'))?.state;
  let lost = 0;
  let doubled = 0;
  for (const maker of MAKERS) {
    const doc = await projects.maker(maker, maker);
    const kept = { row: doc.progress[0]?.row ?? 0, pledge: group?.pledges.get(maker)?.[0] ?? 0 };
    for (const what of ['row', 'pledge'] as const) {
      const { acknowledged = 0, unknown = 0 } = told.get(`${maker} ${what}`) ?? {};
      lost += Math.max(0, acknowledged - kept[what]);
      doubled += Math.max(0, kept[what] - acknowledged - unknown);
    }
  }
  await again.close();
  broken.push(...tree(folder).filter((path) => /^(lock|writing)|aside/.test(path)));
  return { presses: count.acknowledged + count.refused + count.unknown, ...count, lost, doubled, broken };
}
