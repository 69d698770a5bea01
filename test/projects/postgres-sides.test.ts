/** A database from which processes answer is not moved into, and nobody answers from one that is. */
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { TIMES } from '../../src/projects/postgres/connections.ts';
import { connectionName } from '../../src/projects/postgres/side.ts';
import { mayPass, PostgresStore, type PostgresStoreOptions } from '../../src/projects/postgres/store.ts';
import { asOwner, newDatabase } from '../postgres/place.ts';
import { refused } from '../refused.ts';
import { more, TALLIES } from './kinds.ts';

let url: string;
const opened: { close(): Promise<void> }[] = [];
beforeEach(async () => {
  url = await newDatabase();
});
afterEach(async () => {
  for (const one of opened.splice(0)) await one.close();
});

const open = async (options: Partial<PostgresStoreOptions> = {}) => {
  const store = await PostgresStore.open({ url, times: { ...TIMES, patience: 200 }, ...options });
  opened.push(store);
  return store;
};
const me = `process ${process.pid} on ${connectionName().split('@')[1]}`;
const saying = (what: string) => ({ message: expect.stringContaining(what) });

/** A connection as a process of another machine would have it, which moves what is saved. */
async function movesElsewhere() {
  const client = new pg.Client({ connectionString: url, application_name: connectionName(4711, 'loom-2') });
  client.on('error', () => undefined);
  await client.connect();
  await client.query('select pg_advisory_lock_shared(5667977, 2)');
  return client;
}
/** Cuts every connection of this process, as a restart of the server does, and waits until it is so. */
async function cutAll() {
  const of = `from pg_stat_activity where datname = current_database() and application_name = '${connectionName()}'`;
  await asOwner(url, `select pg_terminate_backend(pid) ${of}`);
  await expect.poll(() => asOwner(url, `select pid ${of}`), { timeout: 5000 }).toEqual([]);
}

describe('while what is saved is being moved', () => {
  it('who starts is told who does it, and starts when it has ended', async () => {
    const moving = await open({ moves: true });
    const error: unknown = await open().catch((thrown: unknown) => thrown);
    expect(error).toEqual(refused('being-moved', saying(`by ${me}. Nothing was changed.`)));
    // So a bot waits for it; what stands in the way of who would move does not go by itself.
    expect(mayPass(error)).toBe(true);
    const waits = open({ times: TIMES });
    // It stands in nobody's way meanwhile: the one that moves goes on, over further connections too.
    await Promise.all(['a', 'b', 'c', 'd'].map((id) => moving.change(TALLIES, id, more)));
    await moving.close();
    expect((await (await waits).read(TALLIES, 'd'))?.n).toBe(1);
  });

  it('who starts does so at once where that was killed', async () => {
    const client = await movesElsewhere();
    await expect(open()).rejects.toThrow(refused('being-moved', saying('by process 4711 on loom-2.')));
    (client as unknown as { connection: { stream: { destroy(): void } } }).connection.stream.destroy();
    await open({ times: TIMES });
  });

  it('who answered before, and lost its connections, reads and changes nothing until it has ended', async () => {
    const answers = await open();
    await answers.change(TALLIES, 'a', more);
    await cutAll();
    const moving = await open({ moves: true });
    const why = saying('what is saved is being moved just now');
    await expect(answers.read(TALLIES, 'a')).rejects.toThrow(refused('not-read', why));
    await expect(answers.change(TALLIES, 'a', more)).rejects.toThrow(refused('not-saved', why));
    await moving.change(TALLIES, 'a', more);
    await moving.close();
    await vi.waitFor(async () => expect((await answers.read(TALLIES, 'a'))?.n).toBe(2), 3000);
    expect(await answers.change(TALLIES, 'a', more)).toBe(3);
  });

  it('another that would move is refused, and one whose connections were cut is where somebody answers since', async () => {
    const elsewhere = await movesElsewhere();
    const already = saying('being moved already, by process 4711 on loom-2.');
    await expect(open({ moves: true })).rejects.toThrow(refused('in-use', already));
    await elsewhere.end();
    const moving = await open({ moves: true });
    await cutAll();
    const answers = await open();
    await expect(moving.change(TALLIES, 'a', more)).rejects.toThrow(
      refused('not-saved', saying('others answer from the database meanwhile')),
    );
    expect(await answers.read(TALLIES, 'a')).toBeUndefined();
  });
});

describe('while processes answer', () => {
  it('nobody moves what is saved, however long they do nothing', async () => {
    const answers = await open();
    await answers.change(TALLIES, 'a', more);
    const error: unknown = await open({ moves: true }).catch((thrown: unknown) => thrown);
    expect(error).toEqual(refused('in-use', saying(`The database is in use by ${me}.`)));
    expect(mayPass(error)).toBe(false);
    // Of its connections, one is kept though nobody uses it.
    const { pool } = (answers as unknown as { connections: { pool: pg.Pool } }).connections;
    expect(pool.options.min).toBe(1);
    await answers.close();
    await open({ moves: true });
  });
});
