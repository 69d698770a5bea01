/** What the store in PostgreSQL promises while things go wrong: nothing acknowledged is lost or doubled, and a sentence instead of silence. */
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { TIMES } from '../../src/projects/postgres/connections.ts';
import { PostgresStore, type PostgresStoreOptions } from '../../src/projects/postgres/store.ts';
import { beginDiary, nothingCounted, pressUntil, wrongIn } from '../postgres/counted.ts';
import { asOwner, holdRows, within } from '../postgres/place.ts';
import { Server } from '../postgres/server.ts';
import { Way } from '../postgres/way.ts';
import { refused } from '../refused.ts';
import { more, TALLIES } from './kinds.ts';

/** Shorter than where people wait. */
const SHORT = { connect: 1500, statement: 600, lock: 300, answer: 800, patience: 1500 };

let server: Server;
let way: Way;
let schema: string;
let places = 0;
const opened: PostgresStore[] = [];
const notes: string[] = [];
const url = (port = way.port) => within(server.url().replace(`:${server.port}/`, `:${port}/`), schema);
const open = async (options: Partial<PostgresStoreOptions> = {}) => {
  const note = (what: string) => void notes.push(what);
  const store = await PostgresStore.open({ url: url(), times: SHORT, note, ...options });
  opened.push(store);
  return store;
};

beforeAll(async () => {
  server = await Server.begin();
});
beforeEach(async () => {
  schema = `f${places++}`;
  await asOwner(server.url(), `create schema ${schema}`);
  way = await Way.to(server.port);
});
afterEach(async () => {
  way.mood = 'open';
  for (const store of opened.splice(0)) await store.close();
  way.close();
  notes.length = 0;
});
afterAll(() => server.throwAway());

const nothingChanged = (why: string) => refused('not-saved', { message: expect.stringContaining(why) });

describe('an answer that is lost', () => {
  // What is prepared already is asked by its name alone.
  const changing = /replace/;
  it.each([
    ['was written, and is found', 'deaf', true],
    ['never arrived, and is made again', 'cut', false],
  ] as const)('of a change that %s', async (_what, mood, written) => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    let lost = 0;
    way.heard = (asked) => {
      if (lost === 0 && changing.test(asked)) {
        way.mood = mood;
        lost++;
      }
    };
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
    expect(lost).toBe(1);
    expect(notes).toContain('what became of that change is known now');
    way.heard = () => undefined;
    expect((await store.read(TALLIES, 'a'))?.n).toBe(2);
    const [marks] = await asOwner(url(), 'select count(*) filter (where not done) as n from marks');
    expect(Number(marks?.['n'])).toBe(written ? 0 : 1);
  });

  it('of a change of several statements is looked up like any other', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    for (const [mood, n] of [
      ['deaf', 2],
      ['cut', 3],
    ] as const) {
      way.heard = (asked) => {
        if (!asked.includes('commit\0')) return;
        way.mood = mood;
        way.heard = () => undefined;
      };
      expect(await store.change(TALLIES, 'a', (doc) => ({ ...more(doc), forgets: true }))).toBe(n);
      expect((await store.read(TALLIES, 'a'))?.n).toBe(n);
    }
    expect(notes.filter((note) => note.includes('known now'))).toHaveLength(2);
  });

  it('and cannot be looked up is said not to be known, and is there once or not at all', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    way.after = 'closed';
    way.heard = (asked) => {
      if (changing.test(asked)) way.mood = 'deaf';
    };
    const began = performance.now();
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('not-known'));
    expect(performance.now() - began).toBeLessThan(SHORT.patience + 2000);
    way.heard = () => undefined;
    way.mood = 'open';
    expect((await store.read(TALLIES, 'a'))?.n).toBe(2);
    expect(await store.change(TALLIES, 'a', more)).toBe(3);
  });

  it('of a change that is still under way leaves nothing of it once it was looked for', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    // Somebody else holds the row, so that what is asked waits; the connection is cut meanwhile.
    const letGo = await holdRows(url(server.port));
    const heard = new Promise<void>((done) => {
      way.heard = (said) => changing.test(said) && done();
    });
    const asked = store.change(TALLIES, 'a', more);
    await heard;
    await sleep(20);
    way.cutAll();
    await vi.waitFor(() => expect(notes).toContain('what became of that change is known now'), 3000);
    await letGo();
    expect(await asked).toBe(2);
    expect((await store.read(TALLIES, 'a'))?.n).toBe(2);
  });
});

describe('nothing acknowledged is lost or doubled', () => {
  const pressing = async (harm: () => Promise<void>) => {
    const counted = nothingCounted();
    const stores = await Promise.all([1, 2, 3].map(() => open({ times: TIMES })));
    await beginDiary(stores[0]!);
    let enough = false;
    const pressed = stores.flatMap((store, index) =>
      [1, 2, 3].map((maker) => pressUntil(store, `${index}-${maker}`, () => enough, counted)),
    );
    await harm();
    enough = true;
    await Promise.all(pressed);
    expect(await wrongIn(stores[1]!, counted)).toEqual({ lost: [], doubled: [], thereThoughRefused: [] });
    return counted;
  };

  it('while connections are cut', async () => {
    const counted = await pressing(async () => {
      for (let cut = 0; cut < 20; cut++) {
        await sleep(40);
        await asOwner(
          server.url(),
          `select pg_terminate_backend(pid) from pg_stat_activity where application_name like 'loopwright%'`,
        );
      }
    });
    expect(counted.done.size).toBeGreaterThan(20);
    expect(counted.unknown.size).toBe(0);
  });

  it('while the server is killed and started again', async () => {
    const counted = await pressing(async () => {
      for (let kill = 0; kill < 3; kill++) {
        await sleep(150);
        await server.kill();
        await server.start();
      }
      await sleep(300);
    });
    expect(counted.done.size).toBeGreaterThan(20);
  });

  it('while another server takes over with the data of the first', async () => {
    let second: Server | undefined;
    try {
      const counted = await pressing(async () => {
        await sleep(200);
        way.mood = 'closed';
        way.cutAll();
        await server.kill();
        second = await Server.begin({ copyOf: server.folder });
        way.turn(second.port);
        way.mood = 'open';
        await sleep(300);
      });
      expect(counted.done.size).toBeGreaterThan(20);
    } finally {
      for (const store of opened.splice(0)) await store.close();
      await second?.throwAway();
      await server.start();
    }
  });
});

describe('a database that', () => {
  /** Cuts the connections that nobody uses just now, and waits until that is known. */
  const cutIdle = async () => {
    notes.length = 0;
    way.cutAll();
    await vi.waitFor(() => expect(notes).toContain('a connection to the database was cut'), 3000);
  };

  it('is slow is answered for in a sentence, and nothing of it comes afterwards', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    const letGo = await holdRows(url(server.port));
    const began = performance.now();
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(nothingChanged('does not answer in time'));
    expect(performance.now() - began).toBeLessThan(SHORT.answer + 1000);
    // Whoever reads waits for nobody.
    expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
    await letGo();
    expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
  });

  it('says nothing any more keeps nobody waiting for ever', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    way.mood = 'silent';
    const began = performance.now();
    const [read, changed] = await Promise.allSettled([
      store.read(TALLIES, 'a'),
      store.change(TALLIES, 'a', more),
    ]);
    expect(performance.now() - began).toBeLessThan(SHORT.answer + SHORT.patience + 1500);
    expect(read).toMatchObject({ status: 'rejected', reason: refused('not-read') });
    // It was asked, and nobody can tell.
    expect(changed).toMatchObject({ status: 'rejected', reason: refused('not-known') });
    way.mood = 'open';
    expect([1, 2]).toContain((await store.read(TALLIES, 'a'))?.n);
  });

  it('is away is waited for a while the first time, and for nobody after that', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    way.mood = 'closed';
    await cutIdle();
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(nothingChanged('out of reach'));
    const began = performance.now();
    await expect(store.change(TALLIES, 'b', more)).rejects.toThrow(nothingChanged('out of reach'));
    expect(performance.now() - began).toBeLessThan(1000);
    await expect(store.ids(TALLIES)).rejects.toThrow(refused('not-read'));
    // Three were refused; whoever reads the log is told once.
    expect(notes.filter((note) => note === 'the database refused something')).toHaveLength(1);
    way.mood = 'open';
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
    // Away for a moment: nobody is told.
    way.mood = 'closed';
    await cutIdle();
    setTimeout(() => (way.mood = 'open'), 300);
    expect(await store.change(TALLIES, 'a', more)).toBe(3);
  });

  it('is not away any more once anything has got through', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    way.mood = 'closed';
    await cutIdle();
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(nothingChanged('out of reach'));
    expect(store.away).toBe(true);
    way.mood = 'open';
    expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
    expect(store.away).toBe(false);
    // It is waited for as it was the first time.
    way.mood = 'closed';
    await cutIdle();
    setTimeout(() => (way.mood = 'open'), 300);
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
  });

  it('takes no changes lets everybody read', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    await asOwner(server.url(), 'alter database postgres set default_transaction_read_only = on');
    try {
      await cutIdle();
      await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(nothingChanged('takes no changes'));
      expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
    } finally {
      await asOwner(
        `${server.url()}?options=${encodeURIComponent('-c default_transaction_read_only=off')}`,
        'alter database postgres reset default_transaction_read_only',
      );
    }
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
  });

  it('is full, or refuses for another reason, says so', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    // Played: the server refuses with the code of a full disk.
    await asOwner(
      url(server.port),
      `create function refuse() returns trigger language plpgsql as
         $$ begin raise exception 'could not extend file' using errcode = tg_argv[0]; end $$;
       create trigger full_disk before update on documents execute function refuse('53100')`,
    );
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(
      nothingChanged('disk of the database is full'),
    );
    await asOwner(
      url(server.port),
      `drop trigger full_disk on documents;
       create trigger other before update on documents execute function refuse('XX001')`,
    );
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(nothingChanged('refused it (XX001)'));
    await asOwner(url(server.port), 'drop trigger other on documents');
    expect((await store.read(TALLIES, 'a'))?.n).toBe(1);
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
  });

  it('two changes deadlock in, or that asks for another try, is tried again', async () => {
    const store = await open();
    await store.change(TALLIES, 'a', more);
    await asOwner(
      url(server.port),
      `create sequence tries;
       create function refuse() returns trigger language plpgsql as
         $$ begin if nextval('tries') < 3 then raise exception 'met' using errcode = tg_argv[0]; end if; return null; end $$;
       create trigger met before update on documents execute function refuse('40P01')`,
    );
    expect(await store.change(TALLIES, 'a', more)).toBe(2);
  });
});
