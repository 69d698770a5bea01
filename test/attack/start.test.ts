/** Where the program is told to keep its data in places that keep nothing, and how it ends when it is told to. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { realDisk } from '../../src/projects/disk.ts';
import { makeFolder, mustBePlace } from '../../src/projects/folder.ts';

const fresh = () => mkdtempSync(join(tmpdir(), 'start-'));

/** Runs the program; how it ended, and what it said. */
async function ran(args: readonly string[], env: NodeJS.ProcessEnv, signalAt?: (said: string) => boolean) {
  const child = spawn(process.execPath, ['tools/run.cjs', ...args], {
    env: { ...process.env, FILES_DIR: join(fresh(), 'files'), ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  let signalled = false;
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (data) => {
      said += String(data);
      // Once: a second one may meet a process that has taken its handlers down already.
      if (signalled || !signalAt?.(said)) return;
      signalled = true;
      child.kill('SIGTERM');
    });
  const tooLong = setTimeout(() => child.kill('SIGKILL'), 25_000);
  const [code, signal] = (await once(child, 'close')) as [number | null, string | null];
  clearTimeout(tooLong);
  return { code, signal, said };
}

beforeAll(async () => {
  // The bundle is made once, not within the time of a test.
  await ran(['ask', '/stitches row shape:diagonal size:12 row:9'], { DATA_DIR: fresh() });
}, 60_000);

it.each(['/proc/nope', '/proc/self/fd/nope/deeper', '/sys/kernel/nope', '/dev/nope'])(
  'refuses %s in a sentence',
  async (folder) => {
    const { code, signal, said } = await ran(['ask', '/settings change units:imperial'], {
      DATA_DIR: folder,
      DISCORD_TOKEN: '',
    });
    expect(signal).toBe(null);
    expect(code).toBe(1);
    expect(said).toBe(
      `The data folder ${folder} would lie in the system itself, where nothing is kept.\n  Set DATA_DIR to a folder on a disk.\n`,
    );
  },
  40_000,
);

it('sees through a link to such a place', () => {
  const link = join(fresh(), 'link');
  symlinkSync('/proc', link);
  expect(() => mustBePlace(join(link, 'nope'))).toThrow(/in the system itself/);
  expect(() => mustBePlace('/dev/shm/data')).not.toThrow();
  expect(() => mustBePlace(join(fresh(), 'data'))).not.toThrow();
});

it('makes a folder and those above it, and ends where that cannot be', async () => {
  const folder = join(fresh(), 'a/b/c');
  await makeFolder(realDisk, folder);
  await makeFolder(realDisk, folder);
  writeFileSync(join(folder, 'file'), '');
  await expect(makeFolder(realDisk, join(folder, 'file'))).rejects.toMatchObject({ code: 'ENOTDIR' });
  await expect(makeFolder(realDisk, join(folder, 'file/deeper'))).rejects.toMatchObject({ code: 'ENOTDIR' });
  await expect(makeFolder(realDisk, '/proc/nope/deeper')).rejects.toMatchObject({ code: 'ENOENT' });
});

it('ends at SIGTERM while it waits for a folder that may be in use on another machine', async () => {
  const folder = fresh();
  mkdirSync(folder, { recursive: true });
  writeFileSync(
    join(folder, 'lock'),
    JSON.stringify({ nonce: 'n', pid: 7, host: 'elsewhere', boot: null, started: null, stays: true }),
  );
  const began = performance.now();
  const { code, signal, said } = await ran(
    ['main'],
    { DATA_DIR: folder, DISCORD_TOKEN: 'aaa.bbb.ccc', DISCORD_API: 'http://127.0.0.1:1/api' },
    (text) => text.includes('watching whether its holder moves'),
  );
  // It has done what it was asked: whoever watches over it need not start it anew.
  expect([code, signal]).toEqual([0, null]);
  expect(said).toContain('in use by process 7 on elsewhere');
  // Well before the half minute for which a silent holder is watched.
  expect(performance.now() - began).toBeLessThan(20_000);
}, 40_000);
