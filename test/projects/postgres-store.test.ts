/** The store in PostgreSQL: what every store promises, and what it promises where several processes share it. */
import { afterEach } from 'vitest';
import { PostgresStore, type PostgresStoreOptions } from '../../src/projects/postgres/store.ts';
import type { Store } from '../../src/projects/store.ts';
import { newPlace } from '../postgres/place.ts';
import { keepsContract } from './contract.ts';

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
