/** The disk of the database is truly full: a file system in memory, which only root may make, and only on Linux, with something on it that takes all its room. */
import { execFile } from 'node:child_process';
import {
  chmodSync,
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { Server } from '../postgres/server.ts';
import { strike, wait, type ManyReport } from './many.ts';

const run = promisify(execFile);

/** Room for a new server, for what it keeps of what it wrote, and some more. */
const SIZE = '240m';
/** How long it stays full, ms: longer than any process waits for what may go better by itself. */
const FULL_MS = 10_000;

/** Which part of what the server keeps has no room: its tables alone, which it survives, or all. */
export type FullPart = 'tables' | 'all';

/** Takes all the room there is, to the last block. */
function takeAll(file: string): void {
  const open = openSync(file, 'a');
  const block = Buffer.alloc(65_536, 1);
  for (let size = block.length; size >= 512;)
    try {
      writeSync(open, block, 0, size);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error;
      size /= 2;
    }
  closeSync(open);
}

/** Moves what the server writes ahead of its tables to where there is room. */
async function writeAheadElsewhere(server: Server, folder: string): Promise<void> {
  await server.stop();
  const here = join(server.folder, 'data', 'pg_wal');
  const there = join(folder, 'wal');
  await run('cp', ['-a', here, there]);
  renameSync(here, `${here}.gone`);
  rmSync(`${here}.gone`, { recursive: true });
  symlinkSync(there, here);
  await server.start();
}

/** Uses up what room the server has within what it has already; where it fails, that is what was wanted. */
const useUp = (server: Server, part: FullPart) =>
  server
    .ask(
      part === 'tables'
        ? 'insert into marks select gen_random_uuid(), true from generate_series(1, 2000)'
        : 'select pg_switch_wal()',
    )
    .then(() => (part === 'tables' ? [] : server.ask('insert into marks values (gen_random_uuid(), true)')))
    .catch(() => []);

/**
 * So many times, while people press in two processes, for ten seconds. Undefined where no file system can be made here. A server that ended
 * is started again once there is room, as whoever runs it would.
 */
export async function fullDisk(
  part: FullPart,
  times: number,
  people: number,
  within: () => number,
): Promise<ManyReport | undefined> {
  const folder = mkdtempSync(join(tmpdir(), 'full-'));
  const mount = join(folder, 'disk');
  try {
    await run('mkdir', [mount]);
    await run('mount', ['-t', 'tmpfs', '-o', `size=${SIZE}`, 'tmpfs', mount]);
  } catch {
    return undefined;
  }
  for (const path of [folder, mount]) chmodSync(path, 0o755);
  try {
    const own = await Server.begin({ sure: true, parent: mount });
    if (part === 'tables') await writeAheadElsewhere(own, folder);
    const ballast = join(mount, 'ballast');
    const befalls = async () => {
      const until = performance.now() + FULL_MS;
      while (performance.now() < until) {
        if (own.runs) takeAll(ballast);
        await useUp(own, part);
        await wait(200);
      }
      rmSync(ballast);
      if (!own.runs) await own.start();
    };
    return await strike(
      { processes: 2, people, blows: Array.from({ length: times }, () => befalls), own },
      within,
    );
  } finally {
    await run('umount', [mount]);
    if (existsSync(folder)) rmSync(folder, { recursive: true, force: true });
  }
}
