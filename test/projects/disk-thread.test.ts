/** Documents that a thread of its own reads and puts in their places: the same promises, whatever becomes of the thread. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { FileStore } from '../../src/projects/file-store.ts';
import type { Store } from '../../src/projects/store.ts';
import { DiskThread, type DocumentDisk } from '../../src/projects/disk-thread.ts';
import { refused } from '../refused.ts';
import { keepsContract } from './contract.ts';
import { isMounted, more, newFolder, onDisk, TALLIES, tree } from './kinds.ts';

/** One thread for all of them: starting it from its sources takes longer than what it does. */
const thread = new DiskThread();
const shared: DocumentDisk = {
  place: (placing) => thread.place(placing),
  read: (path) => thread.read(path),
  close: () => Promise.resolve(),
};
afterAll(() => thread.close());

const opened: FileStore[] = [];
const folders = new WeakMap<Store, string>();
const open = async (folder: string, beside: DocumentDisk = shared) => {
  const store = await FileStore.open({ folder, stays: true, thread: beside });
  opened.push(store);
  folders.set(store, folder);
  return store;
};
afterEach(async () => {
  for (const store of opened.splice(0)) await store.close();
});

keepsContract(
  'files that a thread puts in place',
  () => open(newFolder()),
  async (store) => {
    await store.close();
    return open(folders.get(store) ?? newFolder());
  },
);

describe('a thread at the disk', () => {
  const placing = (folder: string, text: string, twice = false) => ({
    fresh: join(folder, 'fresh'),
    path: join(folder, 'a.json'),
    previous: join(folder, 'previous.json'),
    twice,
    text,
  });

  it('puts a text in its place, the one before beside it, and leaves nothing else', async () => {
    const folder = newFolder();
    mkdirSync(folder, { recursive: true });
    for (const text of ['one', 'two', 'three']) {
      expect(await thread.place(placing(folder, text))).toEqual({ is: 'placed' });
      expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe(text);
    }
    expect(readFileSync(join(folder, 'previous.json'), 'utf8')).toBe('two');
    expect(tree(folder)).toEqual(['a.json', 'previous.json']);
    // Both names for one file, as a crash between two steps leaves them.
    rmSync(join(folder, 'previous.json'));
    execFileSync('ln', [join(folder, 'a.json'), join(folder, 'previous.json')]);
    expect(await thread.place(placing(folder, 'four', true))).toEqual({ is: 'placed' });
    expect(readFileSync(join(folder, 'previous.json'), 'utf8')).toBe('three');
    expect(tree(folder)).toEqual(['a.json', 'previous.json']);
  });

  it('tells the code of what the disk refused, and leaves what was', async () => {
    const folder = newFolder();
    mkdirSync(folder, { recursive: true });
    await thread.place(placing(folder, 'one'));
    const gone = { ...placing(folder, 'two'), fresh: join(folder, 'gone', 'fresh') };
    expect(await thread.place(gone)).toMatchObject({ is: 'refused', error: { code: 'ENOENT' } });
    writeFileSync(join(folder, 'file'), '');
    const blocked = { ...placing(folder, 'two'), previous: join(folder, 'file', 'previous.json') };
    expect(await thread.place(blocked)).toMatchObject({ is: 'refused', error: { code: 'ENOTDIR' } });
    expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe('one');
    expect(tree(folder)).toEqual(['a.json', 'file']);
  });

  it('reads what there is, tells the code where it cannot, and is started again where it died meanwhile', async () => {
    const folder = newFolder();
    mkdirSync(folder, { recursive: true });
    const texts = [
      '',
      '{"a":1}\n',
      'x'.repeat(100_000),
      'Grüße, ½, \u{1f9f6}',
      'y'.repeat(32_767),
      'y'.repeat(32_768),
      'ü'.repeat(20_000),
    ];
    const paths = texts.map((text, at) => {
      writeFileSync(join(folder, `${at}`), text);
      return join(folder, `${at}`);
    });
    expect(await Promise.all(paths.map((path) => thread.read(path)))).toEqual(texts);
    await expect(thread.read(join(folder, 'none'))).rejects.toMatchObject({ code: 'ENOENT' });
    await expect(thread.read(folder)).rejects.toMatchObject({ code: 'EISDIR' });
    let starts = 0;
    const DEAD = "require('node:worker_threads').parentPort.on('message', () => process.exit(3))";
    const ALIVE =
      "const { parentPort } = require('node:worker_threads'); parentPort.on('message', (asked) => parentPort.postMessage(asked.map(([n, path]) => [n, { is: 'read', text: path }])))";
    const once = new DiskThread(() => new Worker(starts++ === 0 ? DEAD : ALIVE, { eval: true }));
    const long = paths[2] ?? '';
    expect(await once.read(long)).toBe(long);
    expect(starts).toBe(2);
    await once.close();
    const never = new DiskThread(() => new Worker(DEAD, { eval: true }));
    await expect(never.read(long)).rejects.toThrow('the thread at the disk has ended');
    await never.close();
    const none = new DiskThread(() => {
      throw new Error('no room');
    });
    await expect(none.read(long)).rejects.toThrow('no room');
    expect(await none.place(placing(folder, 'one'))).toMatchObject({ is: 'lost' });
  });

  it('that dies in the middle of it: not known, looked up on the disk, and the next thread writes on', async () => {
    const folder = newFolder();
    const deaths: string[] = [];
    /** Does what it was told and dies before it says so, or dies at once. */
    const dying = (does: boolean) => () =>
      new Worker(
        `const { parentPort } = require('node:worker_threads'); const fs = require('node:fs');
         parentPort.on('message', (asked) => {
           for (const [, { fresh, path, text }] of asked)
             if (${does}) { fs.writeFileSync(fresh, text); fs.renameSync(fresh, path); }
           process.exit(3);
         });`,
        { eval: true },
      );
    for (const does of [true, false]) {
      let starts = 0;
      const dies = new DiskThread(() => {
        starts++;
        return dying(does)();
      });
      // Only this one change is handed to the dying thread.
      const store = await open(folder, {
        place: (one) => (starts === 0 ? dies.place(one) : thread.place(one)),
        read: (path) => thread.read(path),
        close: () => dies.close(),
      });
      const before = (await store.read(TALLIES, 'a'))?.n ?? 0;
      await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('not-known'));
      const after = (await store.read(TALLIES, 'a'))?.n ?? 0;
      expect(after).toBe(before + (does ? 1 : 0));
      expect(await store.change(TALLIES, 'a', more)).toBe(after + 1);
      expect(onDisk(folder, 'a').n).toBe(after + 1);
      deaths.push(`${starts}`);
      await store.close();
      expect(existsSync(join(folder, 'lock'))).toBe(false);
    }
    expect(deaths).toEqual(['1', '1']);
  });

  it('on a disk that is really full refuses in words, keeps what was, and goes on once there is room', async (context) => {
    const folder = newFolder();
    mkdirSync(folder, { recursive: true });
    if (!isMounted(folder, 'size=256k')) return context.skip();
    try {
      const store = await open(folder);
      let kept = 0;
      const fill = async () => {
        for (; kept < 1000; kept++)
          await store.change(TALLIES, `b${kept}`, () => ({
            keep: { version: 2 as const, n: kept, said: 'x'.repeat(9000) },
            tell: 0,
          }));
      };
      await expect(fill()).rejects.toThrow(
        refused('not-saved', { cause: expect.objectContaining({ code: 'ENOSPC' }) }),
      );
      expect(kept).toBeGreaterThan(5);
      expect(tree(folder).filter((path) => path.startsWith('writing/'))).toEqual([]);
      await store.erase(TALLIES, 'b0');
      expect(await store.change(TALLIES, 'a', more)).toBe(1);
      await store.close();
    } finally {
      execFileSync('umount', ['-l', folder]);
    }
  });
});
