/** Everything that is saved, moved from a data folder into a database and back, and what is said of it. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { database } from '../src/database.ts';
import { checkEnvironment } from '../src/environment.ts';
import { move } from '../src/move.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { GROUP_ENTRIES, GROUPS } from '../src/projects/group-schema.ts';
import { MOVED } from '../src/projects/moving.ts';
import { PostgresStore } from '../src/projects/postgres/store.ts';
import { MAKERS, Projects } from '../src/projects/projects.ts';
import type { Store } from '../src/projects/store.ts';
import type { MakerDoc } from '../src/projects/schema.ts';
import { mustBeWhole } from '../src/projects/unfinished.ts';
import { groupPlan } from './core/group/plan.ts';
import { asOwner, newDatabase, newPlace } from './postgres/place.ts';
import { refused } from './refused.ts';

const at = new Date('2026-03-02T12:00:00Z');
const newFolder = () => mkdtempSync(join(tmpdir(), 'move-'));

/** What is said while something runs, and the status it ends with. */
async function said(run: () => Promise<number>): Promise<{ status: number; out: string }> {
  let out = '';
  const write = (text: string | Uint8Array) => {
    out += String(text);
    return true;
  };
  const spies = [process.stdout, process.stderr].map((to) => vi.spyOn(to, 'write').mockImplementation(write));
  try {
    return { status: await run(), out };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
const moves = (from: string, to: string, ...more: string[]) =>
  said(() => move(['--from', from, '--to', to, ...more], checkEnvironment({}), new AbortController().signal));

const press = (projects: Projects, once: string) =>
  projects.groups.happen('7.bean-row-throw', { by: 'ines', at, once }, () => [
    { did: 'joined', maker: `m-${once}`, name: `Maker ${once}`, perWeek: 2, colours: [] },
  ]);

/** Moves, and is stopped before the third part of the makers. */
async function breaksOff(from: string, to: string) {
  let asked = 0;
  const stop = Object.defineProperty(new AbortController().signal, 'aborted', { get: () => ++asked > 2 });
  return said(() => move(['--from', from, '--to', to], checkEnvironment({}), stop));
}

/** A folder with some makers and a group blanket in it. */
async function filled(makers: number): Promise<string> {
  const folder = newFolder();
  const store = await FileStore.open({ folder, stays: true });
  const projects = new Projects(store);
  for (let n = 0; n < makers; n++)
    await projects.changeMaker(
      `maker${n}`,
      `Maker ${n} \0é😀`,
      (doc) => void (doc.settings.units = 'imperial'),
    );
  await projects.groups.open({ server: '7' }, groupPlan(), { by: 'ines', name: 'Ines', at, once: 'open' });
  for (const once of ['a', 'b', 'c']) await press(projects, once);
  await projects.servers.choose({ server: '7' }, { craft: 'asker' });
  await store.close();
  return folder;
}

const stores: { close(): Promise<void> }[] = [];
const openFiles = async (folder: string) => {
  const store = await FileStore.open({ folder, stays: true });
  stores.push(store);
  return store;
};
const openDatabase = async (url: string) => {
  const store = await PostgresStore.open({ url });
  stores.push(store);
  return store;
};
afterEach(async () => {
  for (const store of stores.splice(0)) await store.close();
});

describe('moving', () => {
  it('takes everything there and back, counted and compared', async () => {
    const folder = await filled(40);
    const url = await newDatabase();
    const there = await moves(folder, url);
    expect(there.out).toContain('makers: 40, 40 moved');
    expect(there.out).toContain('groups: 1, 1 moved');
    expect(there.out).toContain('Compared one by one: 42 documents');
    expect(there.out).not.toContain(new URL(url).password);
    expect(there.status).toBe(0);
    const store = await openDatabase(url);
    expect((await store.read(GROUPS, '7.bean-row-throw'))?.events).toHaveLength(4);
    expect((await store.read(GROUP_ENTRIES, '7.bean-row-throw'))?.makers).toContain('m-c');
    await press(new Projects(store), 'd');
    await store.close();

    const back = newFolder();
    expect(await moves(url, back)).toMatchObject({ status: 0 });
    const files = await openFiles(back);
    expect((await files.read(MAKERS, 'maker7'))?.name).toBe('Maker 7 \0é😀');
    expect((await files.read(GROUPS, '7.bean-row-throw'))?.events).toHaveLength(5);
    expect((await files.ids(MAKERS)).length).toBe(40);
  });

  it('goes on where it was broken off, and brings up to date what only grew since', async () => {
    const folder = await filled(100);
    const url = await newDatabase();
    expect(await breaksOff(folder, url)).toMatchObject({
      status: 1,
      out: expect.stringContaining('It was stopped before all was moved'),
    });
    // Somebody went on here before it was asked again.
    const store = await openFiles(folder);
    await press(new Projects(store), 'later');
    await store.close();
    const again = await moves(folder, url);
    expect(again.out).toContain('makers: 100, 36 moved, 64 there already');
    expect(again.status).toBe(0);
    const third = await moves(folder, url);
    expect(third.out).toContain('makers: 100, 100 there already');
    const more = await openFiles(folder);
    await press(new Projects(more), 'last');
    await more.close();
    const fourth = await moves(folder, url);
    expect(fourth).toMatchObject({
      status: 0,
      out: expect.stringContaining('groups: 1, 1 brought up to date'),
    });
  });

  it('that was broken off leaves what nobody answers from, until it is asked again or taken as it is', async () => {
    const folder = await filled(100);
    const url = await newDatabase();
    const isWhole = async (store: Store) => mustBeWhole(store, { said: 'the database', named: 'database' });
    const notWhole = refused('move-not-ended', {
      message: expect.stringMatching(
        /^A move into the database was begun on \d{4}-\d\d-\d\d and has not ended/,
      ),
    });
    await breaksOff(folder, url);
    const half = await openDatabase(url);
    await expect(isWhole(half)).rejects.toThrow(notWhole);
    await half.close();
    // Nor is it moved on.
    const back = newFolder();
    expect(await moves(url, back)).toMatchObject({
      status: 1,
      out: expect.stringContaining('A move into the database was begun'),
    });
    expect(await moves(folder, url)).toMatchObject({ status: 0 });
    const all = await openDatabase(url);
    await isWhole(all);
    await all.close();

    await breaksOff(url, back);
    const files = await openFiles(back);
    await expect(isWhole(files)).rejects.toThrow(notWhole);
    await files.close();
    const taken = await said(() =>
      move(['--to', back, '--as-it-is'], checkEnvironment({}), new AbortController().signal),
    );
    expect(taken).toMatchObject({ status: 0, out: expect.stringContaining('is taken for all of it') });
    await isWhole(await openFiles(back));
  });

  it('takes answers as they are, and a document that is longer than one may become now', async () => {
    const folder = await filled(1);
    const store = await openFiles(folder);
    const answer = {
      path: 'motif weigh',
      shown: { working: [{ unit: 'g', label: 'One motif' }], headline: 'Weighed.' },
    };
    await new Projects(store).answers.keep('maker0', [{ key: '@a', answer }], at);
    await store.close();
    const path = join(folder, 'makers', 'maker0.json');
    const doc = JSON.parse(readFileSync(path, 'utf8')) as MakerDoc;
    const history = Array.from({ length: 500 }, () => ({
      at: at.toISOString(),
      did: 'row' as const,
      row: 1,
      made: 0,
    }));
    doc.progress = Array.from({ length: 20 }, (_, n) => ({ motif: `motif ${n}`, row: 1, made: 0, history }));
    writeFileSync(path, JSON.stringify(doc));
    const url = await newDatabase();
    const moved = await moves(folder, url);
    expect(moved.out).toContain('are the same.');
    expect(moved.status).toBe(0);
    expect(await moves(folder, url)).toMatchObject({ status: 0 });
    const back = newFolder();
    expect(await moves(url, back)).toMatchObject({ status: 0 });
    expect((await (await openFiles(back)).read(MAKERS, 'maker0'))?.progress).toHaveLength(20);
  });

  it('leaves what is another there, says which, and replaces it only when told to', async () => {
    const folder = await filled(3);
    const url = await newDatabase();
    await moves(folder, url);
    const store = await openDatabase(url);
    const projects = new Projects(store);
    await projects.changeMaker('maker1', 'M', (doc) => void (doc.settings.units = 'metric'));
    await press(projects, 'newer');
    await store.close();
    const left = await moves(folder, url);
    expect(left.status).toBe(1);
    expect(left.out).toContain('makers: 3, 2 there already, 1 left: another is there');
    expect(left.out).toContain('makers/maker1 left');
    expect(left.out).toContain('groups/7.bean-row-throw left');
    const after = await openDatabase(url);
    expect((await after.read(MAKERS, 'maker1'))?.settings.units).toBe('metric');
    await after.close();
    const replaced = await moves(folder, url, '--replace');
    expect(replaced).toMatchObject({ status: 0, out: expect.stringContaining('1 replaced') });
  });

  it('names what cannot be read, and moves the rest', async () => {
    const folder = await filled(3);
    writeFileSync(join(folder, 'makers', 'maker1.json'), '{"version":99}');
    const moved = await moves(folder, await newDatabase());
    expect(moved.status).toBe(1);
    expect(moved.out).toContain('makers: 3, 2 moved, 1 left: cannot be read');
    expect(moved.out).toContain('makers/maker1 left');
    expect(readFileSync(join(folder, 'makers', 'maker1.json'), 'utf8')).toBe('{"version":99}');
  });

  it('refuses a folder or a database that is in use, and a folder that is not there', async () => {
    const folder = await filled(1);
    const url = await newDatabase();
    const held = await openFiles(folder);
    expect(await moves(folder, url)).toMatchObject({
      status: 1,
      out: expect.stringContaining('is in use by process'),
    });
    await held.close();
    const used = await openDatabase(url);
    expect(await moves(folder, url)).toMatchObject({
      status: 1,
      out: expect.stringContaining('The database is in use'),
    });
    await used.close();
    const nowhere = join(newFolder(), 'nothing');
    expect(await moves(nowhere, url)).toMatchObject({
      status: 1,
      out: expect.stringContaining('There is no data folder'),
    });
    expect(await moves(folder, folder)).toMatchObject({
      status: 1,
      out: expect.stringContaining('Say from where'),
    });
    await expect(moves(folder, 'database')).rejects.toThrow('DATABASE_URL is not set');
  });

  it('leaves out only what is good for a moment', () => {
    const sources = readdirSync('src/projects', { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => readFileSync(join('src/projects', name), 'utf8'));
    const folders = sources.flatMap((text) =>
      [...text.matchAll(/\n {2}folder: '([a-z-]+)'|entriesIn\('([a-z-]+)'/g)].map(
        ([, one, other]) => one ?? other,
      ),
    );
    const moved = MOVED.flatMap(({ kind, entries }) => [kind.folder, ...(entries ? [entries.folder] : [])]);
    expect(folders.filter((folder) => !moved.includes(folder!)).sort()).toEqual([
      'claims',
      'declared',
      'moves',
      'spent',
    ]);
    expect(moved.filter((folder) => !folders.includes(folder))).toEqual([]);
  });
});

describe('the tables', () => {
  it('are made once by many who start at once', async () => {
    const url = await newPlace();
    await Promise.all(Array.from({ length: 6 }, () => openDatabase(url)));
    expect(await asOwner(url, 'select version from schema_version')).toEqual([{ version: 1 }]);
  });

  it('of a newer program are refused in a sentence', async () => {
    const url = await newPlace();
    await (await openDatabase(url)).close();
    await asOwner(url, 'insert into schema_version (version) values (2)');
    await expect(openDatabase(url)).rejects.toThrow(
      refused('newer-database', { facts: { version: 2, known: 1 } }),
    );
  });

  it('are prepared by their owner for a role that may do nothing else', async () => {
    const url = await newDatabase();
    const role = `run_${new URL(url).pathname.slice(1, 9)}`;
    await asOwner(url, `create role ${role} login password 'quilt'`);
    const address = new URL(url);
    address.username = role;
    address.password = 'quilt';
    const mine = address.href;
    await asOwner(url, 'revoke create on schema public from public');
    await expect(openDatabase(mine)).rejects.toThrow(refused('database-not-prepared'));
    const prepares = (...args: string[]) =>
      said(() => database(args, checkEnvironment({ DATABASE_URL: url })));
    expect(await prepares()).toMatchObject({
      status: 0,
      out: expect.stringContaining('The tables were made, of version 1'),
    });
    await expect(openDatabase(mine)).rejects.toThrow(refused('not-saved'));
    const allowed = await prepares('--for', role);
    expect(allowed).toMatchObject({ status: 0, out: expect.stringContaining(`${role} may read and write`) });
    // As it is in a new database before version 15.
    await asOwner(url, 'grant create on schema public to public');
    expect(await prepares('--for', role)).toMatchObject({
      status: 0,
      out: expect.stringContaining('make tables of its own beside them. Take that away: revoke create'),
    });
    await asOwner(url, 'revoke create on schema public from public');
    const store = await openDatabase(mine);
    const projects = new Projects(store);
    await projects.changeMaker('m', 'M', (doc) => void (doc.settings.units = 'imperial'));
    await projects.eraseMaker('m');
    for (const harm of [
      'drop table documents',
      'create table mine (n int)',
      'alter table events add column x int',
    ])
      await expect(asOwner(mine, harm)).rejects.toThrow(/permission denied|must be owner/);
    expect(await prepares('--for', 'nobody_of_that_name')).toMatchObject({ status: 1 });
    await store.close();
    await asOwner(url, `drop owned by ${role}; drop role ${role}`);
  });
});
