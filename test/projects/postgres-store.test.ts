/** The store in PostgreSQL: what every store promises, and what it promises where several processes share it. */
import fc from 'fast-check';
import pg from 'pg';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { entriesOf } from '../../src/projects/grown.ts';
import { fromJsonb, toJsonb } from '../../src/projects/postgres/jsonb.ts';
import { PostgresStore, type PostgresStoreOptions } from '../../src/projects/postgres/store.ts';
import { frozen, type Kind, type Store } from '../../src/projects/store.ts';
import { asOwner, newPlace } from '../postgres/place.ts';
import { refused } from '../refused.ts';
import { keepsContract } from './contract.ts';

import { DIARIES, more, TALLIES, type Diary, type Tally } from './kinds.ts';

const notes: { what: string; facts: Readonly<Record<string, unknown>> }[] = [];
const opened: PostgresStore[] = [];
const places = new WeakMap<Store, string>();
const open = async (url?: string, options: Partial<PostgresStoreOptions> = {}) => {
  const place = url ?? (await newPlace());
  const note = (what: string, facts: Readonly<Record<string, unknown>>) => void notes.push({ what, facts });
  const store = await PostgresStore.open({ url: place, note, ...options });
  opened.push(store);
  places.set(store, place);
  return store;
};
/** Several that share a place, as several processes do. */
const openSeveral = async (many: number) => {
  const place = await newPlace();
  const stores = await Promise.all(Array.from({ length: many }, () => open(place)));
  return { place, stores, first: stores[0]!, second: stores[1]! };
};
afterEach(async () => {
  for (const store of opened.splice(0)) await store.close();
  notes.length = 0;
});

keepsContract(
  'PostgreSQL',
  () => open(),
  async (store) => {
    await store.close();
    return open(places.get(store));
  },
);

const begun = (events: Diary['events'] = [{ by: 'a', n: 0 }]) => ({
  keep: { version: 1 as const, title: 'first', events },
  tell: undefined,
});
const write = (by: string) => (doc: Diary | undefined) => {
  const n = doc?.events.length ?? 0;
  return { keep: undefined, add: [{ by, n }], tell: n };
};
const count = async (place: string, table: string) =>
  Number((await asOwner(place, `select count(*) as n from ${table}`))[0]!['n']);

describe('a place in PostgreSQL that several share', () => {
  it('shows each what another wrote, and what it read itself as the same thing while nobody did', async () => {
    const { first, second } = await openSeveral(2);
    expect(await first.change(TALLIES, 'a', more)).toBe(1);
    const read = await second.read(TALLIES, 'a');
    expect(read).toEqual({ version: 2, n: 1 });
    expect(await second.read(TALLIES, 'a')).toBe(read);
    expect(await second.change(TALLIES, 'a', more)).toBe(2);
    expect(await first.change(TALLIES, 'a', more)).toBe(3);
    expect((await second.read(TALLIES, 'a'))?.n).toBe(3);
    await first.erase(TALLIES, 'a');
    expect(await second.read(TALLIES, 'a')).toBeUndefined();
    expect(await first.change(TALLIES, 'a', more)).toBe(1);
    // The same version number would be one that was there before.
    expect(await second.change(TALLIES, 'a', more)).toBe(2);
  });

  it('refuses nothing by what it remembers alone', async () => {
    const { first, second } = await openSeveral(2);
    await first.change(TALLIES, 'a', more);
    const atMost = (most: number) =>
      second.change(TALLIES, 'a', (doc) => {
        if ((doc?.n ?? 0) > most) throw new Error('too many');
        return { keep: undefined, tell: doc?.n };
      });
    expect(await atMost(1)).toBe(1);
    await first.change(TALLIES, 'a', () => ({ keep: { version: 2, n: 9 }, tell: 0 }));
    await expect(atMost(1)).rejects.toThrow('too many');
    await first.change(TALLIES, 'a', () => ({ keep: { version: 2, n: 1 }, tell: 0 }));
    expect(await atMost(1)).toBe(1);
  });

  it('counts every change once, however many meet, new documents among them', async () => {
    const { stores, first, place } = await openSeveral(4);
    const each = 40;
    const told = await Promise.all(
      stores.flatMap((store) => Array.from({ length: each }, () => store.change(TALLIES, 'a', more))),
    );
    expect(told.sort((a, b) => a - b)).toEqual(Array.from({ length: 4 * each }, (_, index) => index + 1));
    const began = await Promise.all(
      stores.map((store) =>
        store.change(DIARIES, 'd', (doc) =>
          doc ? { keep: doc, tell: 'there' } : { ...begun(), tell: 'new' },
        ),
      ),
    );
    expect(began.filter((tell) => tell === 'new')).toHaveLength(1);
    const wrote = await Promise.all(
      stores.flatMap((store, by) =>
        Array.from({ length: each }, () => store.change(DIARIES, 'd', write(String(by)))),
      ),
    );
    expect(new Set(wrote).size).toBe(4 * each);
    const whole = await first.read(DIARIES, 'd');
    expect(whole?.events.map(({ n }) => n)).toEqual(
      Array.from({ length: 4 * each + 1 }, (_, index) => index),
    );
    for (const store of stores) expect(await store.read(DIARIES, 'd')).toEqual(whole);
    expect(await count(place, 'events')).toBe(4 * each + 1);
    expect(await count(place, 'marks')).toBeLessThan(8 * each);
  });

  it('hands a change the entries of others as the same list gone on', async () => {
    const { first, second } = await openSeveral(2);
    await first.change(DIARIES, 'a', () => begun());
    const before = await second.read(DIARIES, 'a');
    await first.change(DIARIES, 'a', write('b'));
    const after = await second.read(DIARIES, 'a');
    expect(after?.events).toHaveLength(2);
    expect(entriesOf(after!)).toBe(entriesOf(before!));
    await first.change(DIARIES, 'a', (doc) => ({ keep: doc && { ...doc, title: 'second' }, tell: 0 }));
    expect(entriesOf((await second.read(DIARIES, 'a'))!)).toBe(entriesOf(before!));
    await first.change(DIARIES, 'a', (doc) => ({
      keep: doc && { ...doc, events: [{ by: 'x', n: 0 }] },
      tell: 0,
      forgets: true,
    }));
    expect((await second.read(DIARIES, 'a'))?.events).toEqual([{ by: 'x', n: 0 }]);
    expect(before?.events).toHaveLength(1);
  });

  it('reads long lists in parts, whatever is added or written anew meanwhile', async () => {
    const { first, second, place } = await openSeveral(2);
    const entries = (by: string, many: number) => Array.from({ length: many }, (_, n) => ({ by, n }));
    await first.change(DIARIES, 'a', () => begun(entries('a', 2345)));
    expect((await second.read(DIARIES, 'a'))?.events).toHaveLength(2345);
    await first.change(DIARIES, 'a', () => ({ keep: undefined, add: entries('b', 1234), tell: 0 }));
    const moving = [1, 2, 3].map((times) =>
      first.change(DIARIES, 'a', (doc) => ({
        keep: doc && { ...doc, events: entries(`anew ${times}`, 3000 + times) },
        tell: 0,
        forgets: true,
      })),
    );
    const third = await open(place);
    for (const store of [second, third, second]) {
      const seen = await store.read(DIARIES, 'a');
      const last = seen!.events.at(-1)!;
      expect([3001, 3002, 3003, 3579]).toContain(seen?.events.length);
      if (last.by !== 'b') expect(new Set(seen?.events.map(({ by }) => by)).size).toBe(1);
    }
    await Promise.all(moving);
    expect((await second.read(DIARIES, 'a'))?.events).toEqual(entries('anew 3', 3003));
  });

  it('answers all that is asked at one moment with one statement', async () => {
    const { first, second } = await openSeveral(2);
    const ids = Array.from({ length: 40 }, (_, index) => `m${index}`);
    await Promise.all(ids.map((id) => first.change(TALLIES, id, more)));
    const asks = vi.spyOn(pg.Client.prototype, 'query');
    const read = await Promise.all([...ids, ...ids, 'absent'].map((id) => second.read(TALLIES, id)));
    expect(read.filter((doc) => doc?.n === 1)).toHaveLength(80);
    expect(read.at(-1)).toBeUndefined();
    expect(read[0]).toBe(read[40]);
    expect(asks).toHaveBeenCalledTimes(1);
    asks.mockClear();
    // And a change is one more, as long as nobody else was there meanwhile.
    await Promise.all([1, 2, 3].map(() => second.change(TALLIES, 'm1', more)));
    expect(asks).toHaveBeenCalledTimes(1);
    asks.mockRestore();
  });
});

describe('what cannot be read in PostgreSQL', () => {
  const put = (place: string, id: string, head: unknown, previous?: unknown) =>
    asOwner(
      place,
      `insert into documents (folder, id, version, head, previous, list, entries)
       values ('tallies', $1, gen_random_uuid(), $2, $3, gen_random_uuid(), 0)`,
      [id, JSON.stringify(head), previous === undefined ? null : JSON.stringify(previous)],
    );
  const rowOf = async (place: string, id: string) =>
    (await asOwner(place, 'select head, previous from documents where id = $1', [id]))[0];

  it('is brought up to date where it is older, and written so by its next change, with what it was beside it', async () => {
    const store = await open();
    const place = places.get(store)!;
    await put(place, 'a', { version: 1, count: 4 });
    expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 4 });
    expect(await rowOf(place, 'a')).toMatchObject({ head: { version: 1, count: 4 } });
    expect(await store.change(TALLIES, 'a', more)).toBe(5);
    expect(await rowOf(place, 'a')).toEqual({
      head: { version: 2, n: 5 },
      previous: { version: 1, count: 4 },
    });
  });

  it('is left alone where a newer program wrote it, or its migration fails, and counted until it is erased', async () => {
    const store = await open();
    const place = places.get(store)!;
    await put(place, 'new', { version: 3, n: 1 });
    await put(place, 'wrong', { version: 1, count: -4 });
    for (const [id, code] of [
      ['new', 'newer-document'],
      ['wrong', 'document-not-migrated'],
    ] as const) {
      await expect(store.read(TALLIES, id)).rejects.toThrow(refused(code));
      await expect(store.change(TALLIES, id, more)).rejects.toThrow(refused(code));
    }
    expect(store.unreadable).toBe(2);
    expect(await rowOf(place, 'new')).toMatchObject({ head: { version: 3, n: 1 } });
    expect((await store.ids(TALLIES)).sort()).toEqual(['new', 'wrong']);
    expect(notes.filter(({ what }) => what.includes('left alone'))).toHaveLength(2);
    await store.erase(TALLIES, 'new');
    expect(store.unreadable).toBe(1);
    expect(await store.change(TALLIES, 'new', more)).toBe(1);
  });

  it('gives way to the copy before it, and is kept aside until the document is erased or forgotten of', async () => {
    const store = await open();
    const place = places.get(store)!;
    for (const id of ['a', 'b']) {
      await put(place, id, { version: 2, n: 'many' }, { version: 1, count: 3 });
      expect(await store.read(TALLIES, id)).toEqual({ version: 2, n: 3 });
      expect(await store.change(TALLIES, id, more)).toBe(4);
      expect(await rowOf(place, id)).toEqual({ head: { version: 2, n: 4 }, previous: { version: 2, n: 3 } });
    }
    expect(store.unreadable).toBe(0);
    expect(await count(place, 'aside')).toBe(2);
    expect(JSON.stringify(notes)).not.toContain('many');
    await store.erase(TALLIES, 'a');
    expect(await count(place, 'aside')).toBe(1);
    await store.change(TALLIES, 'b', (doc) => ({ keep: doc, tell: 0, forgets: true }));
    expect(await count(place, 'aside')).toBe(0);
    expect(await rowOf(place, 'b')).toEqual({ head: { version: 2, n: 4 }, previous: null });
  });

  it('without a good copy says so, and so does one of whose entries one is bad or gone', async () => {
    const store = await open();
    const place = places.get(store)!;
    await put(place, 'a', { version: 2, n: 'many' });
    await expect(store.read(TALLIES, 'a')).rejects.toThrow(refused('damaged-document'));
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('damaged-document'));
    for (const [id, harm] of [
      ['bad', "update events set event = '{}' where id = 'bad' and n = 1"],
      ['gone', "delete from events where id = 'gone'"],
    ] as const) {
      await store.change(DIARIES, id, () => begun());
      await store.change(DIARIES, id, write('b'));
      await asOwner(place, harm);
      const other = await open(place);
      await expect(other.read(DIARIES, id)).rejects.toThrow(refused('damaged-document'));
      await expect(other.change(DIARIES, id, write('c'))).rejects.toThrow(refused('damaged-document'));
      expect(other.unreadable).toBe(1);
    }
    expect(notes.map(({ facts }) => facts['entry'])).toContain(1);
    await store.erase(DIARIES, 'gone');
    expect(await store.read(DIARIES, 'gone')).toBeUndefined();
  });

  it('is taken for nothing where it is made from other documents', async () => {
    const store = await open();
    const place = places.get(store)!;
    const derived: Kind<Tally> = { ...TALLIES, derived: true, builtBeside: true };
    await put(place, 'a', { version: 9 }, { version: 2, n: 3 });
    expect(await store.read(derived, 'a')).toBeUndefined();
    expect(await store.change(derived, 'a', more)).toBe(1);
    expect(await rowOf(place, 'a')).toEqual({ head: { version: 2, n: 1 }, previous: null });
  });
});

describe('what is erased or forgotten', () => {
  it('is in no table any more', async () => {
    const store = await open();
    const place = places.get(store)!;
    await store.change(DIARIES, 'a', () => begun([{ by: 'quilla', n: 0 }]));
    await store.change(DIARIES, 'a', write('quilla'));
    await store.change(DIARIES, 'a', (doc) => ({ keep: doc && { ...doc, title: 'of quilla' }, tell: 0 }));
    await store.change(DIARIES, 'a', (doc) => ({ keep: doc && { ...doc, title: 'mine' }, tell: 0 }));
    const all = async () =>
      JSON.stringify(
        await Promise.all(
          ['documents', 'events', 'aside'].map((table) => asOwner(place, `select * from ${table}`)),
        ),
      );
    expect(await all()).toMatch(/of quilla.*"by":"quilla"/);
    await store.change(DIARIES, 'a', (doc) => ({
      keep: doc && { ...doc, events: doc.events.map(({ n }) => ({ by: 'a maker', n })) },
      tell: 0,
      forgets: true,
    }));
    expect(await all()).not.toContain('quilla');
    expect((await store.read(DIARIES, 'a'))?.events).toHaveLength(2);
    await store.erase(DIARIES, 'a');
    expect(await all()).toBe('[[],[],[]]');
  });
});

describe('JSON that jsonb would refuse', () => {
  const spoken: Kind<Tally> = { ...TALLIES, folder: 'spoken' };

  it('comes back as it was: every character that a text may hold', async () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary' })), fc.string(), (list, text) => {
        const said = { list, text: `${text}\0\uD800\uE0000000\\u0000` };
        expect(fromJsonb(toJsonb(said))).toEqual(said);
        expect(toJsonb(said)).not.toMatch(/(^|[^\\])(\\\\)*\\u0000/);
      }),
      { numRuns: 50 },
    );
    const store = await open();
    for (const said of [
      'a\0b',
      '\uD800 alone',
      'alone \uDC00',
      '\uE000',
      '\uE0000041',
      '\\u0000',
      '😀',
      '"\\',
    ]) {
      await store.change(spoken, 'a', () => ({ keep: { version: 2 as const, n: 1, said }, tell: 0 }));
      const other = await open(places.get(store));
      expect((await other.read(spoken, 'a'))?.said).toBe(said);
    }
    expect(frozen({}).constructor).toBe(Object);
  });
});
