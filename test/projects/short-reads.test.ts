/** Short files on disks that are none of the best: one that gives less than there is, as some of other machines do, and a slow one. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { expect, it, onTestFinished, vi } from 'vitest';
import { DiskThread } from '../../src/projects/disk-thread.ts';
import { newFolder } from './kinds.ts';

/** How long the disk takes for each reading, and how many there were. */
const disk = vi.hoisted(() => ({ takes: 0, now: 0, read: 0 }));
vi.mock('node:fs', async (real) => {
  const fs = await real<typeof import('node:fs')>();
  const readSync = (file: number, into: Buffer, at: number, length: number, from: number) => {
    disk.now += disk.takes;
    disk.read++;
    return fs.readSync(file, into, at, Math.min(length, 100), from);
  };
  return { ...fs, readSync };
});

it('are read to their end, where less is given than there is', async () => {
  const thread = new DiskThread();
  const folder = newFolder();
  mkdirSync(folder, { recursive: true });
  const line = `${'x'.repeat(99)}\n`;
  for (const [name, text] of [
    ['a.json', `${'x'.repeat(250)}\n`],
    ['b.json', 'x'.repeat(250)],
    ['c.json', ''],
    ['d.events.jsonl', `${line}${line}`],
  ] as const) {
    writeFileSync(join(folder, name), text);
    expect(await thread.read(join(folder, name))).toBe(text);
  }
});

it('are left to the thread so long that a slow disk takes little of all time', async () => {
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => disk.now);
  onTestFinished(() => clock.mockRestore());
  const THREAD =
    "const { parentPort } = require('node:worker_threads'); parentPort.on('message', (asked) => parentPort.postMessage(asked.map(([n]) => [n, { is: 'read', text: 'there' }])))";
  const thread = new DiskThread(() => new Worker(THREAD, { eval: true }));
  onTestFinished(() => thread.close());
  const path = join(newFolder(), 'a.json');
  mkdirSync(join(path, '..'), { recursive: true });
  writeFileSync(path, 'here\n');
  disk.takes = 200;
  expect(await thread.read(path)).toBe('here\n');
  disk.takes = 0;
  const { read } = disk;
  disk.now += 9_000;
  expect(await thread.read(path)).toBe('there');
  expect(disk.read).toBe(read);
  disk.now += 2_000;
  expect(await thread.read(path)).toBe('here\n');
});
