/** What the store promises of one process: nothing acknowledged is lost, nothing refused is kept, a bad file harms nobody else. */
import { execFileSync } from 'node:child_process';
import fs from 'node:fs/promises';
import { mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { Problem } from '../../src/core/base/problem.ts';
import { realDisk, type Disk } from '../../src/projects/disk.ts';
import { FileStore, type FileStoreOptions } from '../../src/projects/file-store.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { NotSaved, Unreadable } from '../../src/projects/not-saved.ts';
import type { Store } from '../../src/projects/store.ts';
import { fileOf, isMounted, more, newFolder, onDisk, TALLIES, tree, type Tally } from './kinds.ts';
import { refused } from '../refused.ts';
import { keepsContract } from './contract.ts';
import { failing } from './failing-disk.ts';

/** Refused by the disk, which gave this code. */
const notSavedBy = (code: string) => refused('not-saved', { cause: expect.objectContaining({ code }) });

const opened: Store[] = [];
const notes: { what: string; facts: Readonly<Record<string, unknown>> }[] = [];
const open = async (folder: string, options: Partial<FileStoreOptions> = {}) => {
  const note = (what: string, facts: Readonly<Record<string, unknown>>) => void notes.push({ what, facts });
  const store = await FileStore.open({ folder, stays: true, note, ...options });
  opened.push(store);
  folders.set(store, folder);
  return store;
};
const folders = new WeakMap<Store, string>();
const folderOf = (store: Store) => folders.get(store) ?? newFolder();
afterEach(async () => {
  for (const store of opened.splice(0)) await store.close();
  notes.length = 0;
});

/** All that the files of a folder say. */
const everything = (folder: string) =>
  tree(folder)
    .map((path) => readFileSync(join(folder, path), 'utf8'))
    .join('\n');

const halfWritten = (folder: string) => tree(folder).filter((path) => path.startsWith('writing/'));

keepsContract(
  'files',
  () => open(newFolder()),
  async (store) => {
    await store.close();
    return open(folderOf(store));
  },
);
keepsContract('memory', () => Promise.resolve(new MemoryStore()));

it('remembers what others ask for, however long one document is', async () => {
  const read: string[] = [];
  const disk: Disk = {
    ...realDisk,
    readText: (path) => {
      read.push(path);
      return realDisk.readText(path);
    },
  };
  const store = await open(newFolder(), { disk });
  await store.change(TALLIES, 'a', more);
  await store.change(TALLIES, 'long', () => ({
    keep: { version: 2 as const, n: 1, said: 'x'.repeat(20_000_000) },
    tell: undefined,
  }));
  read.length = 0;
  for (let time = 0; time < 3; time++) {
    expect((await store.read(TALLIES, 'long'))?.n).toBe(1);
    expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
  }
  expect(read.filter((path) => path.endsWith('a.json'))).toEqual([]);
});

it('refuses a file that is longer than a text can be, and goes on', async () => {
  const folder = newFolder();
  const store = await open(folder);
  await store.change(TALLIES, 'a', more);
  writeFileSync(fileOf(folder, 'huge'), '');
  truncateSync(fileOf(folder, 'huge'), 540_000_000);
  await expect(store.read(TALLIES, 'huge')).rejects.toThrow(refused('not-read'));
  expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
});

describe('the order of writing', () => {
  it('is: write all, sync, close, keep the copy before, rename, sync the folder', async () => {
    const { disk, state } = failing('short', '');
    const store = await open(newFolder(), { disk });
    await store.change(TALLIES, 'a', more);
    state.calls.length = 0;
    await store.change(TALLIES, 'a', more);
    const once = state.calls.filter((call, index) => call !== 'write' || state.calls[index - 1] !== 'write');
    expect(once).toEqual([
      'open',
      'write',
      'sync',
      'close',
      'link',
      'rename',
      'rename',
      'open folder',
      'sync folder',
      'close',
    ]);
    // Three bytes at a time: a short write is written on, not taken for the whole.
    expect(state.calls.filter((call) => call === 'write').length).toBeGreaterThan(5);
  });

  it('leaves the document, the good copy before it, and nothing half-written', async () => {
    const folder = newFolder();
    const store = await open(folder);
    for (let i = 0; i < 3; i++) await store.change(TALLIES, 'a', more);
    expect(tree(folder)).toEqual(['lock', 'tallies/a.json', 'tallies/previous/a.json']);
    expect(onDisk(folder, 'a').n).toBe(3);
    expect(JSON.parse(readFileSync(join(folder, 'tallies/previous/a.json'), 'utf8'))).toEqual({
      version: 2,
      n: 2,
    });
  });

  it('writes nothing where a change changes nothing', async () => {
    const { disk, state } = failing('write', '');
    const store = await open(newFolder(), { disk });
    await store.change(TALLIES, 'a', more);
    state.calls.length = 0;
    await store.change(TALLIES, 'a', (doc) => ({ keep: doc, tell: undefined }));
    expect(state.calls).toEqual([]);
  });

  it('clears away what a process that is gone left half-written', async () => {
    const folder = newFolder();
    // The second is where an earlier version began its writing.
    for (const place of ['writing/gone', 'tallies/writing']) {
      mkdirSync(join(folder, place), { recursive: true });
      writeFileSync(join(folder, place, 'a.123'), '{"ver');
    }
    const store = await open(folder);
    await store.change(TALLIES, 'a', more);
    expect(tree(folder)).toEqual(['lock', 'tallies/a.json']);
  });
});

describe('changes that wait together', () => {
  it.each([false, true])(
    'of many documents at once do not clear each other away (one failed before: %s)',
    async (failed) => {
      const { disk, state } = failing('renameLast', 'EIO');
      const store = await open(newFolder(), { disk });
      if (failed) {
        await store.change(TALLIES, 'a', more);
        state.broken = true;
        await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('not-saved'));
        state.broken = false;
      }
      const ids = Array.from({ length: 30 }, (_, index) => `maker${index}`);
      expect(await Promise.all(ids.map((id) => store.change(TALLIES, id, more)))).toEqual(ids.map(() => 1));
    },
  );

  it('are written together, in order, each answered for itself', async () => {
    const { disk, state } = failing('write', '');
    const store = await open(newFolder(), { disk });
    await store.change(TALLIES, 'a', more);
    state.calls.length = 0;
    const told = await Promise.allSettled(
      Array.from({ length: 50 }, (_, i) =>
        store.change(TALLIES, 'a', (doc) => {
          if (i % 10 === 3) {
            doc!.n = 1000; // thrown away with the rest of this change
            throw new Error(`no ${i}`);
          }
          return more(doc);
        }),
      ),
    );
    const failed = told.flatMap((one, i) => (one.status === 'rejected' ? [i] : []));
    expect(failed).toEqual([3, 13, 23, 33, 43]);
    const values = told.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    expect(values).toEqual(values.map((_, i) => i + 2));
    expect((await store.read(TALLIES, 'a'))?.n).toBe(46);
    expect(state.calls.filter((call) => call === 'sync').length).toBeLessThanOrEqual(2);
  });

  it('the last of something goes to exactly one of two hundred', async () => {
    const folder = newFolder();
    const store = await open(folder);
    const take = (doc: Tally | undefined) => {
      const n = doc?.n ?? 0;
      if (n >= 100) throw new Problem('unsorted', 'none is left', { hint: 'another' });
      return { keep: { version: 2 as const, n: n + 1 }, tell: n + 1 };
    };
    const told = await Promise.allSettled(
      Array.from({ length: 200 }, () => store.change(TALLIES, 'a', take)),
    );
    const got = told.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
    expect(new Set(got).size).toBe(100);
    expect(onDisk(folder, 'a').n).toBe(100);
  });

  it('any mixture of changes on several documents ends as one after the other would', async () => {
    const step = fc.record({
      id: fc.constantFrom('a', 'b', 'c'),
      does: fc.constantFrom('more', 'throw', 'remove'),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { maxLength: 40 }), async (steps) => {
        const folder = newFolder();
        const store = await FileStore.open({ folder, stays: true });
        const model = new Map<string, number>();
        const asked = steps.map(({ id, does }) => {
          if (does === 'more') model.set(id, (model.get(id) ?? 0) + 1);
          if (does === 'remove') model.delete(id);
          if (does === 'remove') return store.erase(TALLIES, id);
          return store.change(TALLIES, id, (doc) => {
            if (does === 'throw') throw new Error('no');
            return more(doc);
          });
        });
        await Promise.allSettled(asked);
        await store.close();
        const again = await FileStore.open({ folder, stays: true });
        for (const id of ['a', 'b', 'c']) expect((await again.read(TALLIES, id))?.n).toBe(model.get(id));
        await again.close();
      }),
      { numRuns: 25 },
    );
  });
});

describe('a disk that refuses', () => {
  it.each([
    ['write', 'ENOSPC', /the disk is full/],
    ['write', 'EDQUOT', /what its owner may keep on the disk is used up/],
    ['nothing', 'ENOSPC', /the disk is full/],
    ['sync', 'EIO', /the disk refused it \(EIO\)/],
    ['syncFolder', 'EIO', /the disk refused it/],
    ['link', 'ENOSPC', /the disk is full/],
    ['rename', 'EROFS', /cannot be written to/],
    ['renameLast', 'EACCES', /cannot be written to/],
  ] as const)(
    '%s failing with %s: said in words, nothing changed, and it goes on afterwards',
    async (what, code, words) => {
      const folder = newFolder();
      const { disk, state } = failing(what, code);
      const store = await open(folder, { disk });
      await store.change(TALLIES, 'a', more);
      await store.change(TALLIES, 'a', more);
      state.broken = true;
      const answered = await Promise.allSettled([
        store.change(TALLIES, 'a', more),
        store.change(TALLIES, 'a', more),
      ]);
      for (const one of answered) {
        const { reason } = one as PromiseRejectedResult;
        expect(reason.code).toBe('not-saved');
        expect(reason).toBeInstanceOf(NotSaved);
        expect(reason.message).toMatch(words);
        expect(reason.message).toMatch(/Nothing was changed/);
      }
      expect((await store.read(TALLIES, 'a'))?.n).toBe(2);
      expect(onDisk(folder, 'a').n).toBe(2);
      expect(halfWritten(folder)).toEqual([]);
      expect(notes.map(({ what: noted }) => noted)).toContain('a document could not be written');
      state.broken = false;
      expect(await store.change(TALLIES, 'a', more)).toBe(3);
      expect(onDisk(folder, 'a').n).toBe(3);
      // Also where both names were left for one file.
      expect(halfWritten(folder)).toEqual([]);
    },
  );

  it.each([
    ['the new one', false],
    ['the old one', true],
  ])(
    'that keeps neither the new text for certain nor gives back the old: says that it does not know, and finds out that it has %s',
    async (_which, old) => {
      const folder = newFolder();
      const { disk, state } = failing('syncFolder', 'EIO');
      let backs = 0;
      const rename: Disk['rename'] = async (from, to) => {
        // The second renaming into place is the one that would put it back.
        if (state.broken && String(to) === fileOf(folder, 'a') && ++backs === 2)
          throw Object.assign(new Error('EIO'), { code: 'EIO' });
        await fs.rename(from, to);
      };
      const store = await open(folder, { disk: { ...disk, rename } });
      await store.change(TALLIES, 'a', more);
      const before = readFileSync(fileOf(folder, 'a'));
      state.broken = true;
      await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'not-known' });
      // As long as the disk promises nothing, it is not known.
      await expect(store.read(TALLIES, 'a')).rejects.toMatchObject({ code: 'not-known' });
      await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({ code: 'not-known' });
      // As a crash of the disk might leave it.
      if (old) writeFileSync(fileOf(folder, 'a'), before);
      state.broken = false;
      expect((await store.read(TALLIES, 'a'))?.n).toBe(old ? 1 : 2);
      expect(notes.find(({ what }) => what.includes('is known now'))?.facts['kept']).toBe(
        old ? 'old' : 'new',
      );
      expect(await store.change(TALLIES, 'a', more)).toBe(old ? 2 : 3);
    },
  );

  it('a folder that cannot be made is said in a sentence', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, 'file'), '');
    await expect(FileStore.open({ folder: join(folder, 'file'), stays: true })).rejects.toThrow(NotSaved);
  });

  it('a disk that is really full, and one that is really read-only', async (context) => {
    const folder = newFolder();
    if (!isMounted(folder, 'size=256k')) return context.skip();
    try {
      const store = await open(folder);
      await store.change(TALLIES, 'a', more);
      let kept = 0;
      const fill = async () => {
        for (; kept < 1000; kept++)
          await store.change(TALLIES, `b${kept}`, () => ({
            keep: { version: 2 as const, n: kept, said: 'x'.repeat(9000) },
            tell: 0,
          }));
      };
      await expect(fill()).rejects.toThrow(notSavedBy('ENOSPC'));
      expect(kept).toBeGreaterThan(5);
      for (let i = 0; i < kept; i++) expect(onDisk(folder, `b${i}`)).toMatchObject({ n: i });
      expect(await store.read(TALLIES, `b${kept}`)).toBeUndefined();
      expect(halfWritten(folder)).toEqual([]);
      // Erasing makes room, and it goes on.
      await store.erase(TALLIES, 'b0');
      expect(await store.change(TALLIES, 'a', more)).toBe(2);
      execFileSync('mount', ['-o', 'remount,ro', folder]);
      await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(notSavedBy('EROFS'));
      expect((await store.read(TALLIES, 'a'))?.n).toBe(2);
      execFileSync('mount', ['-o', 'remount,rw', folder]);
      expect(await store.change(TALLIES, 'a', more)).toBe(3);
      await store.close();
    } finally {
      execFileSync('umount', ['-l', folder]);
    }
  });
});

describe('a bad document', () => {
  const bad = [
    '',
    '{"version":2,"n":',
    'null',
    '[]',
    '{"version":2,"n":-4}',
    '{"n":3}',
    '\0\0\0\0',
    '{"version":"x"}',
  ];

  it.each(bad)('%j is moved aside and the good copy before it is used', async (text) => {
    const folder = newFolder();
    const store = await open(folder);
    for (const id of ['a', 'a', 'a', 'b']) await store.change(TALLIES, id, more);
    await store.close();
    writeFileSync(fileOf(folder, 'a'), text);
    const again = await open(folder);
    expect((await again.read(TALLIES, 'a'))?.n).toBe(2);
    expect(await again.change(TALLIES, 'a', more)).toBe(3);
    expect((await again.read(TALLIES, 'b'))?.n).toBe(1);
    const aside = readdirSync(join(folder, 'tallies/aside'));
    expect(aside).toHaveLength(1);
    expect(aside[0]).toMatch(/^a~\d{4}-\d\d-\d\dT/);
    expect(readFileSync(join(folder, 'tallies/aside', aside[0]!), 'utf8')).toBe(text);
    const noted = notes.find(({ what }) => what.includes('moved aside'));
    expect(noted?.facts['path']).toBe(fileOf(folder, 'a'));
  });

  it('with no good copy left is said, counted and left alone until it is mended or erased; everybody else goes on', async () => {
    const folder = newFolder();
    const store = await open(folder);
    for (const id of ['a', 'a', 'b']) await store.change(TALLIES, id, more);
    await store.close();
    const whole = readFileSync(fileOf(folder, 'a'));
    const copy = join(folder, 'tallies/previous/a.json');
    for (const path of [fileOf(folder, 'a'), copy]) writeFileSync(path, '{{');
    const again = await open(folder);
    for (const ask of [() => again.read(TALLIES, 'a'), () => again.change(TALLIES, 'a', more)]) {
      await expect(ask()).rejects.toBeInstanceOf(Unreadable);
      await expect(ask()).rejects.toMatchObject({ code: 'damaged-document' });
    }
    expect(again.unreadable).toBe(1);
    expect(notes.filter(({ facts }) => facts['code'] === 'damaged-document')).toHaveLength(1);
    expect(await again.change(TALLIES, 'b', more)).toBe(2);
    expect((await again.ids(TALLIES)).sort()).toEqual(['a', 'b']);
    expect(readFileSync(fileOf(folder, 'a'), 'utf8')).toBe('{{');
    // Whoever runs it puts it right while the program runs.
    writeFileSync(fileOf(folder, 'a'), whole);
    expect(await again.change(TALLIES, 'a', more)).toBe(3);
    expect(again.unreadable).toBe(0);
    await again.close();
    for (const path of [fileOf(folder, 'a'), copy]) writeFileSync(path, '{{ her name');
    const third = await open(folder);
    await expect(third.read(TALLIES, 'a')).rejects.toBeInstanceOf(Unreadable);
    await third.erase(TALLIES, 'a');
    expect(third.unreadable).toBe(0);
    expect(await third.change(TALLIES, 'a', more)).toBe(1);
    expect(everything(folder)).not.toContain('her name');
  });

  it('that is made from others is taken for one that is not there, and no copy of it is kept', async () => {
    const folder = newFolder();
    const derived = { ...TALLIES, derived: true };
    const store = await open(folder);
    for (const id of ['a', 'a', 'a']) await store.change(derived, id, more);
    expect(tree(folder)).toEqual(['lock', 'tallies/a.json']);
    await store.close();
    writeFileSync(fileOf(folder, 'a'), '{{');
    const again = await open(folder);
    expect(await again.read(derived, 'a')).toBeUndefined();
    expect(await again.change(derived, 'a', more)).toBe(1);
    expect(again.unreadable).toBe(0);
  });

  it('longer than it may be is refused at the change that makes it longer, and can be made shorter', async () => {
    const refuse = (characters: number) => new Problem('too-long', `${characters}`, { hint: 'less' });
    const bounded = { ...TALLIES, most: { characters: 100, refuse } };
    const say = (length: number) => () => ({
      keep: { version: 2 as const, n: 1, said: 'x'.repeat(length) },
      tell: length,
    });
    const folder = newFolder();
    const before = await open(folder);
    await before.change(TALLIES, 'a', say(300));
    await before.close();
    const store = await open(folder);
    await expect(store.change(bounded, 'a', say(301))).rejects.toMatchObject({ code: 'too-long' });
    // One of several that wait together is refused by itself.
    const told = await Promise.allSettled(
      [say(290), say(400), say(20), say(90), say(50)].map((change) => store.change(bounded, 'a', change)),
    );
    expect(told.map(({ status }) => status)).toEqual([
      'fulfilled',
      'rejected',
      'fulfilled',
      'rejected',
      'fulfilled',
    ]);
    expect((await store.read(TALLIES, 'a'))?.said).toHaveLength(50);
  });

  it('is left where it is by a reader that does not hold the folder', async () => {
    const folder = newFolder();
    const store = await open(folder);
    for (const id of ['a', 'a']) await store.change(TALLIES, id, more);
    writeFileSync(fileOf(folder, 'a'), '{{');
    const reader = await open(folder, { stays: false });
    expect((await reader.read(TALLIES, 'a'))?.n).toBe(1);
    expect(readFileSync(fileOf(folder, 'a'), 'utf8')).toBe('{{');
  });

  it('is erased with the document, and so is the copy before it', async () => {
    const folder = newFolder();
    const store = await open(folder);
    for (const id of ['a', 'a', 'ab', 'ab']) await store.change(TALLIES, id, more);
    await store.close();
    writeFileSync(fileOf(folder, 'a'), '{{');
    const again = await open(folder);
    await again.change(TALLIES, 'a', more);
    await again.erase(TALLIES, 'a');
    await again.close();
    expect(tree(folder)).toEqual(['tallies/ab.json', 'tallies/previous/ab.json']);
  });

  it('is gone once a change forgets, with every copy of the document as it was', async () => {
    const folder = newFolder();
    const store = await open(folder);
    const say = (said?: string) => (doc: Tally | undefined) => ({
      keep: { version: 2 as const, n: (doc?.n ?? 0) + 1, ...(said === undefined ? {} : { said }) },
      tell: 0,
      forgets: said === undefined,
    });
    await store.change(TALLIES, 'a', say('her name'));
    await store.change(TALLIES, 'a', say('her name again'));
    await store.close();
    // A copy that was moved aside holds it as well.
    writeFileSync(fileOf(folder, 'a'), '{"said":"her name');
    const again = await open(folder);
    await again.change(TALLIES, 'a', more);
    expect(everything(folder)).toContain('her name');
    await again.change(TALLIES, 'a', say());
    expect(everything(folder)).not.toContain('her name');
    expect(onDisk(folder, 'a')).toEqual({ version: 2, n: 3 });
    await again.change(TALLIES, 'a', more);
    expect(onDisk(folder, 'a').n).toBe(4);
    await again.close();
  });

  it.each(['write', 'sync', 'renameLast', 'syncFolder'] as const)(
    'is still there, and can be forgotten later, where the disk refuses at its %s',
    async (what) => {
      const folder = newFolder();
      const { disk, state } = failing(what, 'EIO');
      const store = await open(folder, { disk });
      await store.change(TALLIES, 'a', () => ({
        keep: { version: 2 as const, n: 1, said: 'her name' },
        tell: 0,
      }));
      const forget = () =>
        store.change(TALLIES, 'a', () => ({ keep: { version: 2 as const, n: 1 }, tell: 0, forgets: true }));
      state.broken = true;
      await expect(forget()).rejects.toBeInstanceOf(NotSaved);
      expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
      state.broken = false;
      await forget();
      expect(everything(folder)).not.toContain('her name');
      expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 1 });
    },
  );
});

describe('versions', () => {
  const put = (folder: string, text: string) => {
    mkdirSync(join(folder, 'tallies'), { recursive: true });
    writeFileSync(fileOf(folder, 'a'), text);
  };

  it('an older document is brought up to date, and its file stays as it is until it changes', async () => {
    const folder = newFolder();
    put(folder, '{"version":1,"count":4}');
    const store = await open(folder);
    expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 4 });
    expect(readFileSync(fileOf(folder, 'a'), 'utf8')).toBe('{"version":1,"count":4}');
    expect(await store.change(TALLIES, 'a', more)).toBe(5);
    expect(onDisk(folder, 'a')).toEqual({ version: 2, n: 5 });
    expect(readFileSync(join(folder, 'tallies/previous/a.json'), 'utf8')).toBe('{"version":1,"count":4}');
  });

  it('a newer document is refused in words and left alone', async () => {
    const folder = newFolder();
    const text = '{"version":3,"n":4,"more":"than is known"}';
    put(folder, text);
    const store = await open(folder);
    await expect(store.read(TALLIES, 'a')).rejects.toThrow(refused('newer-document'));
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('newer-document'));
    expect(readFileSync(fileOf(folder, 'a'), 'utf8')).toBe(text);
    expect(tree(folder)).toEqual(['lock', 'tallies/a.json']);
  });

  it('a document that its migration does not bring through is left alone: the fault is ours', async () => {
    const folder = newFolder();
    put(folder, '{"version":1,"count":"four"}');
    const store = await open(folder);
    await expect(store.change(TALLIES, 'a', more)).rejects.toMatchObject({
      code: 'document-not-migrated',
      cause: { message: expect.stringContaining('migrated wrongly') as string },
    });
    expect(tree(folder)).toEqual(['lock', 'tallies/a.json']);
  });
});

it('remembers what it holds and reads anew what it does not', async () => {
  const folder = newFolder();
  const holder = await open(folder);
  await holder.change(TALLIES, 'a', more);
  const reader = await open(folder, { stays: false });
  expect((await reader.read(TALLIES, 'a'))?.n).toBe(1);
  await holder.change(TALLIES, 'a', more);
  expect((await reader.read(TALLIES, 'a'))?.n).toBe(2);
});

it('closes only when what waits is written, and takes nothing more', async () => {
  const folder = newFolder();
  const store = await open(folder);
  const waiting = Array.from({ length: 100 }, () => store.change(TALLIES, 'a', more));
  expect(store.waiting).toBeGreaterThan(0);
  await store.close();
  expect(onDisk(folder, 'a').n).toBe(100);
  await Promise.all(waiting);
  expect(tree(folder)).not.toContain('lock');
  await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('closing'));
});
