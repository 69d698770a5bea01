/** A document that grows as two files: what is added is a line, and whatever happens in the middle of it, nothing is there by half. */
import { execFile } from 'node:child_process';
import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, describe, expect, it } from 'vitest';
import { realDisk, type Disk } from '../../src/projects/disk.ts';
import { FileStore, type FileStoreOptions } from '../../src/projects/file-store.ts';
import { thisMachine } from '../../src/projects/lock.ts';
import { failing } from './failing-disk.ts';
import { DIARIES, newFolder, tree, type Diary } from './kinds.ts';

const opened: FileStore[] = [];
const notes: { what: string; facts: Readonly<Record<string, unknown>> }[] = [];
const open = async (folder: string, options: Partial<FileStoreOptions> = {}) => {
  const note = (what: string, facts: Readonly<Record<string, unknown>>) => void notes.push({ what, facts });
  const store = await FileStore.open({ folder, stays: true, note, ...options });
  opened.push(store);
  return store;
};
afterEach(async () => {
  for (const store of opened.splice(0)) await store.close();
  notes.length = 0;
});

const head = (folder: string, of = '') => join(folder, 'diaries', of, 'a.json');
const list = (folder: string, of = '') => join(folder, 'diaries', of, 'a.events.jsonl');
const said = (folder: string) => readFileSync(list(folder), 'utf8');

const begin = (store: FileStore) =>
  store.change(DIARIES, 'a', () => ({
    keep: { version: 1, title: 'first', events: [{ by: 'a', n: 0 }] },
    tell: undefined,
  }));
const add = (store: FileStore, ...by: string[]) =>
  store.change(DIARIES, 'a', (doc) => {
    const n = doc?.events.length ?? 0;
    return { keep: undefined, add: by.map((one, index) => ({ by: one, n: n + index })), tell: n };
  });
const title = (store: FileStore, to: string) =>
  store.change(DIARIES, 'a', (doc) => ({ keep: doc && { ...doc, title: to }, tell: undefined }));
const forget = (store: FileStore) =>
  store.change(DIARIES, 'a', (doc) => ({
    keep: doc && { ...doc, events: doc.events.map(({ n }) => ({ by: 'nobody', n })) },
    tell: undefined,
    forgets: true,
  }));
const names = async (store: FileStore) =>
  (await store.read(DIARIES, 'a'))?.events.map(({ by }) => by).join('');

/** One that was begun and added to, and let go of. */
async function kept(...by: string[]): Promise<string> {
  const folder = newFolder();
  const store = await open(folder);
  await begin(store);
  for (const one of by) await add(store, one);
  await store.close();
  return folder;
}

describe('a document that grows', () => {
  it('is one file until something is added, and two from then on, both of them plain', async () => {
    const folder = newFolder();
    const store = await open(folder);
    await begin(store);
    expect(tree(folder)).toEqual(['diaries/a.json', 'lock']);
    await add(store, 'b');
    await add(store, 'c', 'd');
    await title(store, 'second');
    expect(JSON.parse(readFileSync(head(folder), 'utf8'))).toEqual({ version: 1, title: 'second' });
    expect(said(folder)).toBe('{"by":"a","n":0}\n{"by":"b","n":1}\n[{"by":"c","n":2},{"by":"d","n":3}]\n');
    expect(tree(folder)).toEqual([
      'diaries/a.events.jsonl',
      'diaries/a.json',
      'diaries/previous/a.json',
      'lock',
    ]);
  });

  it('costs a line and a sync of one file where something is added, and what waits together one for all', async () => {
    const { disk, state } = failing('write', '');
    const store = await open(newFolder(), { disk });
    await begin(store);
    await add(store, 'b');
    state.calls.length = 0;
    await add(store, 'c');
    expect(state.calls).toEqual(['write', 'datasync']);
    state.calls.length = 0;
    await Promise.all(Array.from({ length: 50 }, () => add(store, 'd')));
    expect(state.calls.filter((call) => call === 'datasync').length).toBeLessThanOrEqual(2);
    expect(state.calls).not.toContain('rename');
    expect(await names(store)).toBe(`abc${'d'.repeat(50)}`);
  });

  it('is written to a new file by each who holds the folder, before anything is added', async () => {
    const folder = await kept('b', 'c');
    const before = { inode: statSync(list(folder)).ino, text: said(folder) };
    const store = await open(folder);
    await add(store, 'd');
    expect(statSync(list(folder)).ino).not.toBe(before.inode);
    expect(readFileSync(list(folder, 'previous'), 'utf8')).toBe(before.text);
    const inode = statSync(list(folder)).ino;
    await add(store, 'e');
    expect(statSync(list(folder)).ino).toBe(inode);
  });

  it.each([
    ['nearly all of a line', '{"by":"x","n":9'],
    ['a piece of a line', '{"by":'],
    ['the first of two that came together', '[{"by":"x","n":9},'],
    ['zeros', '\0\0\0\0'],
  ])('with %s at its end is read without it, and it is cut off before the next is added', async (_, torn) => {
    const folder = await kept('b');
    appendFileSync(list(folder), torn);
    const store = await open(folder);
    expect(await names(store)).toBe('ab');
    await add(store, 'c');
    expect(said(folder)).toBe('{"by":"a","n":0}\n{"by":"b","n":1}\n{"by":"c","n":2}\n');
  });

  it.each([
    ['without the end of its last line', (text: string) => text.trimEnd()],
    ['with an empty line at its end', (text: string) => `${text}\n \n`],
    ['with the ends of lines of Windows', (text: string) => text.replaceAll('\n', '\r\n')],
    ['with a mark of the order of bytes', (text: string) => `\uFEFF${text}`],
  ])('that was mended by hand, %s, is read whole', async (_, mended) => {
    const folder = await kept('b', 'c');
    for (const path of [head(folder), list(folder)]) writeFileSync(path, mended(readFileSync(path, 'utf8')));
    const store = await open(folder);
    expect(await names(store)).toBe('abc');
    expect(await add(store, 'd')).toBe(3);
    expect(await names(store)).toBe('abcd');
    expect(notes).toEqual([]);
    expect(said(folder).split('\n')).toHaveLength(5);
  });

  it.each([
    ['no JSON', '{"by":"b","n"'],
    ['another thing', '{"by":"b","n":-1}'],
    ['empty', ''],
  ])(
    'with a bad line (%s) is left alone and said with the number of the line, until it is mended',
    async (_, bad) => {
      const folder = await kept('b', 'c', 'd');
      const whole = said(folder);
      const lines = whole.split('\n');
      lines[2] = bad;
      writeFileSync(list(folder), lines.join('\n'));
      const store = await open(folder);
      await expect(store.read(DIARIES, 'a')).rejects.toMatchObject({ code: 'damaged-document' });
      await expect(add(store, 'e')).rejects.toMatchObject({ code: 'damaged-document' });
      expect(store.unreadable).toBe(1);
      expect(notes.map(({ facts }) => facts['line'])).toEqual([3]);
      expect(notes[0]?.facts['file']).toBe(list(folder));
      expect(said(folder)).toBe(lines.join('\n'));
      writeFileSync(list(folder), whole);
      expect(await add(store, 'e')).toBe(4);
      expect(store.unreadable).toBe(0);
    },
  );

  it('whose head is bad is served by the copy of the head, and loses nothing of its list', async () => {
    const folder = await kept('b');
    const before = await open(folder);
    await title(before, 'second');
    await add(before, 'c');
    await before.close();
    writeFileSync(head(folder), '{"vers');
    const store = await open(folder);
    expect(await store.read(DIARIES, 'a')).toMatchObject({ title: 'first' });
    expect(await add(store, 'd')).toBe(3);
    expect(await names(store)).toBe('abcd');
    expect(tree(folder).some((path) => path.startsWith('diaries/aside/a~'))).toBe(true);
  });

  it('without its list is served by a copy that has one inside, and is damaged where there is none', async () => {
    const folder = await kept('b');
    rmSync(list(folder));
    // From before it was two files.
    const store = await open(folder);
    expect(await names(store)).toBe('a');
    expect(await add(store, 'c')).toBe(1);
    await title(store, 'second');
    await store.close();
    rmSync(list(folder));
    const again = await open(folder);
    await expect(again.read(DIARIES, 'a')).rejects.toMatchObject({ code: 'damaged-document' });
  });

  it('of an earlier version, or put there whole by hand, is read whole and becomes two files at its first change', async () => {
    const folder = newFolder();
    mkdirSync(join(folder, 'diaries'));
    const doc: Diary = {
      version: 1,
      title: 'old',
      events: [
        { by: 'a', n: 0 },
        { by: 'b', n: 1 },
      ],
    };
    const old = `${JSON.stringify(doc, undefined, 2)}\n`;
    writeFileSync(head(folder), old);
    // A list beside it is of before, and does not count.
    writeFileSync(list(folder), '{"by":"stale","n":0}\n');
    const store = await open(folder);
    expect(await store.read(DIARIES, 'a')).toEqual(doc);
    await add(store, 'c');
    expect(await names(store)).toBe('abc');
    expect(readFileSync(head(folder, 'previous'), 'utf8')).toBe(old);
    expect(existsSync(list(folder, 'previous'))).toBe(false);
    expect(
      tree(folder)
        .map((path) => readFileSync(join(folder, path), 'utf8'))
        .join(),
    ).not.toContain('stale');
  });

  it('whose program died in the middle of writing it anew is as it was meant to be, and nothing of before is left', async () => {
    const folder = await kept('b', 'c');
    // Died after the first of the two was in place.
    writeFileSync(head(folder), JSON.stringify({ version: 1, title: 'x', events: [{ by: 'nobody', n: 0 }] }));
    const store = await open(folder);
    expect(await names(store)).toBe('nobody');
    await store.close();
    expect(existsSync(list(folder))).toBe(false);
  });

  it('is erased with its list and every copy, and forgets in all of them', async () => {
    const folder = await kept('b', 'c');
    const store = await open(folder);
    await add(store, 'd');
    await title(store, 'second');
    expect(tree(folder)).toHaveLength(5);
    await forget(store);
    const everything = () =>
      tree(folder)
        .map((path) => readFileSync(join(folder, path), 'utf8'))
        .join();
    expect(everything()).not.toMatch(/"by":"[a-d]"/);
    await add(store, 'e');
    await store.close();
    const again = await open(folder);
    expect(await names(again)).toBe('nobodynobodynobodynobodye');
    await add(again, 'f');
    await again.erase(DIARIES, 'a');
    expect(tree(folder)).toEqual(['lock']);
    await begin(again);
    expect(await names(again)).toBe('a');
  });
});

describe('a disk that refuses', () => {
  it.each([
    ['half', 'ENOSPC'],
    ['nothing', 'ENOSPC'],
    ['write', 'EDQUOT'],
    ['sync', 'EIO'],
  ] as const)('%s failing with %s: what was added is gone again, and it goes on', async (what, code) => {
    const folder = newFolder();
    const { disk, state } = failing(what, code);
    const store = await open(folder, { disk });
    await begin(store);
    await add(store, 'b');
    const before = said(folder);
    state.broken = true;
    const told = await Promise.allSettled([add(store, 'c'), add(store, 'd', 'e')]);
    for (const one of told)
      expect((one as PromiseRejectedResult).reason).toMatchObject({
        // Where it cannot be synced, neither can what was cut off.
        code: what === 'sync' ? 'not-known' : 'not-saved',
      });
    expect(said(folder)).toBe(before);
    state.broken = false;
    expect(await names(store)).toBe('ab');
    expect(await add(store, 'f')).toBe(2);
    await store.close();
    expect(await names(await open(folder))).toBe('abf');
  });

  it('even to cut off what was half written: it is not known, and never half', async () => {
    const folder = newFolder();
    const { disk, state } = failing('truncate', 'EIO');
    const store = await open(folder, { disk });
    await begin(store);
    await add(store, 'b');
    state.broken = true;
    await expect(add(store, 'c')).rejects.toMatchObject({ code: 'not-known' });
    expect(said(folder)).toMatch(/\{"by":"c[^\n]*$/);
    state.broken = false;
    expect(await names(store)).toBe('ab');
    await add(store, 'd');
    expect(said(folder).trimEnd().split('\n')).toHaveLength(3);
  });

  it('the head after something was added: only what was to be written there is refused', async () => {
    const folder = newFolder();
    const { disk, state } = failing('renameLast', 'EIO');
    const store = await open(folder, { disk });
    await begin(store);
    await add(store, 'b');
    state.broken = true;
    const told = await Promise.allSettled([add(store, 'c'), title(store, 'no'), add(store, 'd')]);
    expect(told.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'rejected']);
    state.broken = false;
    expect(await store.read(DIARIES, 'a')).toMatchObject({ title: 'first' });
    expect(await names(store)).toBe('abc');
  });
});

describe('a holder who was overtaken', () => {
  const STOPPED = { touch: 1_000_000, silent: 1_000_000 };
  const on = (host: string) => ({ ...thisMachine(), host });

  /** A disk whose next write of a line stands still, before it or after it, until it is let on. */
  function standing(at: 'write' | 'datasync') {
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
      open: async (path, flags, mode) => {
        const handle = await realDisk.open(path, flags, mode);
        const does = handle[at].bind(handle) as (...args: unknown[]) => Promise<unknown>;
        return Object.assign(handle, {
          [at]: async (...args: unknown[]) => {
            await pause();
            return does(...args);
          },
        });
      },
    };
    return { disk, state, reached };
  }

  it.each([
    ['write', true],
    ['write', false],
    ['datasync', true],
    ['datasync', false],
  ] as const)(
    'while it stood still at its %s takes nothing from the other, and says that it does not know (other added: %s)',
    async (at, adds) => {
      const folder = newFolder();
      const { disk, state, reached } = standing(at);
      const slept = await open(folder, { disk, times: STOPPED, machine: on('one') });
      await begin(slept);
      await add(slept, 'b');
      state.stands = true;
      const late = expect(add(slept, 'late')).rejects.toMatchObject({ code: 'not-known' });
      await reached;
      const other = await open(folder, { machine: on('two'), times: { touch: 1000, silent: 150 } });
      const had = (await names(other)) ?? '';
      if (adds) await add(other, 'c');
      state.on();
      await late;
      if (!adds) await add(other, 'c');
      await add(other, 'd');
      expect(await names(other)).toBe(`${had}cd`);
      await other.close();
      // What the other acknowledged is there, each once.
      expect(await names(slept)).toBe(`${had}cd`);
      expect(await add(slept, 'e')).toBe(had === 'ab' ? 4 : 5);
    },
  );

  it('is told so where somebody put another file in its place', async () => {
    const folder = newFolder();
    const store = await open(folder);
    await begin(store);
    await add(store, 'b');
    const text = said(folder);
    rmSync(list(folder));
    writeFileSync(list(folder), text.replace('"b"', '"mended"'));
    await expect(add(store, 'c')).rejects.toMatchObject({ code: 'not-known' });
    expect(await names(store)).toBe('amended');
    expect(await add(store, 'd')).toBe(2);
  });
});

it('a backup that is taken while it is added to is whole, and has all that was acknowledged before', async () => {
  const folder = newFolder();
  const store = await open(folder);
  await begin(store);
  const more = { wanted: true };
  let done = 1;
  const adding = (async () => {
    while (more.wanted) {
      await Promise.all([add(store, 'x', 'y'), title(store, `t${done}`)]);
      done += 2;
      if (done % 20 === 1) await forget(store);
    }
  })();
  for (let backup = 0; backup < 6; backup++) {
    const before = done;
    const to = mkdtempSync(join(tmpdir(), 'backup-'));
    await promisify(execFile)('sh', [
      '-c',
      'tar -cf - -C "$0" diaries 2>/dev/null | tar -xf - -C "$1"',
      folder,
      to,
    ]);
    const copy = await open(to);
    const events = (await copy.read(DIARIES, 'a'))?.events ?? [];
    expect(events.length).toBeGreaterThanOrEqual(before);
    expect(events.map(({ n }) => n)).toEqual(events.map((_, index) => index));
    expect(events.length % 2).toBe(1);
  }
  more.wanted = false;
  await adding;
});
