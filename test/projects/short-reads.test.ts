/** A disk that gives less of a file than there is, and was asked for, as some of other machines do. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it, vi } from 'vitest';
import { DiskThread } from '../../src/projects/disk-thread.ts';
import { newFolder } from './kinds.ts';

vi.mock('node:fs', async (real) => {
  const fs = await real<typeof import('node:fs')>();
  const readSync = (file: number, into: Buffer, at: number, length: number, from: number) =>
    fs.readSync(file, into, at, Math.min(length, 100), from);
  return { ...fs, readSync };
});

const thread = new DiskThread();
afterAll(() => thread.close());

it('is read to the end of the file', async () => {
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
