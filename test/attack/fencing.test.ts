/** A holder that slept, whose folder was moved, whose lock was taken: it never writes over what another acknowledged. */
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { realDisk, type Disk } from '../../src/projects/disk.ts';
import { FileStore, type FileStoreOptions } from '../../src/projects/file-store.ts';
import { thisMachine } from '../../src/projects/lock.ts';
import { more, newFolder, onDisk, TALLIES, tree } from '../projects/kinds.ts';
import { sleepLoop } from './sleep.ts';
import { spread } from './spread.ts';

/** Takes over soon, and is not taken for one that slept where the machine is busy. */
const TIMES = { touch: 1_000, silent: 150 };
const on = (host: string) => ({ ...thisMachine(), host });
const open = (folder: string, options: Partial<FileStoreOptions> = {}) =>
  FileStore.open({ folder, stays: true, times: TIMES, ...options });

/** A disk that stands still at one thing, as a process does that is stopped there, until it is let on. */
function standing(at: 'rename' | 'link' | 'sync') {
  const nothing = (): void => undefined;
  const state = { stands: false, reached: nothing, on: nothing };
  const reached = new Promise<void>((done) => (state.reached = done));
  const pause = async () => {
    if (!state.stands) return;
    state.stands = false;
    state.reached();
    await new Promise<void>((done) => (state.on = done));
  };
  const disk: Disk = {
    ...realDisk,
    rename: async (from, to) => {
      if (at === 'rename' && String(to).endsWith('a.json') && !String(to).includes('previous')) await pause();
      await realDisk.rename(from, to);
    },
    link: async (from, to) => {
      if (at === 'link' && String(from).endsWith('a.json')) await pause();
      await realDisk.link(from, to);
    },
    open: async (path, flags, mode) => {
      const handle = await realDisk.open(path, flags, mode);
      if (at === 'sync' && String(path).includes('writing')) await pause();
      return handle;
    },
  };
  return { disk, state, reached };
}

/** Wakes nothing by itself: a process that is stopped touches nothing. */
const STOPPED = { touch: 1_000_000, silent: 1_000_000 };

it.each(['link', 'sync', 'rename'] as const)(
  'a change that stood still at its %s while another took over arrives nowhere, and is refused in words',
  async (at) => {
    const folder = newFolder();
    const { disk, state, reached } = standing(at);
    const slept = await open(folder, { disk, times: STOPPED, machine: on('one') });
    await slept.change(TALLIES, 'a', more);
    await slept.change(TALLIES, 'a', more);
    state.stands = true;
    const late = slept.change(TALLIES, 'a', more);
    const refused = expect(late).rejects.toMatchObject({ code: 'hold-lost' });
    await reached;
    const other = await open(folder, { machine: on('two') });
    for (const n of [3, 4, 5, 6]) expect(await other.change(TALLIES, 'a', more)).toBe(n);
    state.on();
    await refused;
    expect(onDisk(folder, 'a').n).toBe(6);
    expect(await other.change(TALLIES, 'a', more)).toBe(7);
    // While the other holds it nothing is changed, and what was remembered is not shown any more.
    await expect(slept.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'in-use' });
    expect((await slept.read(TALLIES, 'a'))?.n).toBe(7);
    await other.close();
    expect(await slept.change(TALLIES, 'a', more)).toBe(8);
    await slept.close();
    expect(tree(folder)).toEqual(['tallies/a.json', 'tallies/previous/a.json']);
  },
);

it('an erasure that stood still while another took over erases nothing of the other', async () => {
  const folder = newFolder();
  const { disk, state, reached } = standing('rename');
  const slow: Disk = {
    ...disk,
    rename: async (from, to) => {
      // The document goes by way of the holder's own folder.
      if (String(from).endsWith('tallies/a.json') && state.stands) {
        state.stands = false;
        state.reached();
        await new Promise<void>((done) => (state.on = done));
      }
      await realDisk.rename(from, to);
    },
  };
  const slept = await open(folder, { disk: slow, times: STOPPED, machine: on('one') });
  await slept.change(TALLIES, 'a', more);
  state.stands = true;
  const refused = expect(slept.erase(TALLIES, 'a')).rejects.toMatchObject({ code: 'hold-lost' });
  await reached;
  const other = await open(folder, { machine: on('two') });
  await other.change(TALLIES, 'a', more);
  state.on();
  await refused;
  expect(onDisk(folder, 'a').n).toBe(2);
  await other.close();
  await slept.close();
});

it('what a process remembers is given up once it slept, even if nobody took over', async () => {
  const folder = newFolder();
  let lost = '';
  const note = (_what: string, { why }: Readonly<Record<string, unknown>>) => void (lost = String(why));
  const touch = 40;
  const store = await open(folder, { note, times: { touch, silent: 80 } });
  await store.change(TALLIES, 'a', more);
  // The thread stands still for longer than two touches; meanwhile the file says something else.
  writeFileSync(join(folder, 'tallies/a.json'), '{"version":2,"n":40}\n');
  const until = performance.now() + 3 * touch;
  while (performance.now() < until);
  expect((await store.read(TALLIES, 'a'))?.n).toBe(40);
  expect(lost).toBe('this process slept');
  expect(await store.change(TALLIES, 'a', more)).toBe(41);
  await store.close();
});

it('a lock that somebody removed is noticed before a change within a second, and taken anew', async () => {
  const folder = newFolder();
  const store = await open(folder);
  await store.change(TALLIES, 'a', more);
  rmSync(join(folder, 'lock'));
  await sleep(1_050);
  expect(await store.change(TALLIES, 'a', more)).toBe(2);
  expect(tree(folder)).toContain('lock');
  rmSync(join(folder, 'writing'), { recursive: true });
  // Without its own folder nothing can be written: refused once, in words, and then all is well.
  await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'hold-lost' });
  expect(await store.change(TALLIES, 'a', more)).toBe(3);
  await store.close();
  expect(tree(folder)).toEqual(['tallies/a.json', 'tallies/previous/a.json']);
});

it('a data folder that was moved is said to be gone, not begun anew, and used again once it is back', async () => {
  const folder = newFolder();
  const store = await open(folder);
  await store.change(TALLIES, 'a', more);
  renameSync(folder, `${folder}.moved`);
  await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'data-folder-gone' });
  await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'data-folder-gone' });
  renameSync(`${folder}.moved`, folder);
  expect(await store.change(TALLIES, 'a', more)).toBe(2);
  // Another one in its place is another's data: what was remembered of the first is not written there.
  renameSync(folder, `${folder}.moved`);
  mkdirSync(folder);
  await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'hold-lost' });
  expect(await store.change(TALLIES, 'a', more)).toBe(1);
  await store.close();
});

it('a holder that is put to sleep, overtaken and woken writes over nothing', async () => {
  const report = await sleepLoop(3, spread());
  expect(report).toMatchObject({ lost: 0, doubled: 0, broken: [] });
  expect(report.acknowledged).toBeGreaterThan(3 * 17);
  expect(report.refused).toBeGreaterThan(0);
}, 60_000);
