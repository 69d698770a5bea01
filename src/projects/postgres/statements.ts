/** What is asked of the database, each a statement that is prepared once. */
import type { Statement } from './connections.ts';

/** So many entries are read at once: what holds tens of thousands is read in parts, between which others are heard. */
export const PAGE = 1000;

/** What is known of a document already. */
export interface KnownOf {
  readonly folder: string;
  readonly id: string;
  readonly version: string | undefined;
  readonly list: string | undefined;
  readonly entries: number;
}

/**
 * Documents that are there, in any order, with `at`, their place among those that were asked for: what they say where it is not what is known,
 * and of their entries the first page of those that are not.
 */
export const readAll = (known: readonly KnownOf[]): Statement => ({
  name: 'read',
  text: `
    select k.at, d.version, d.list, d.entries, f.first,
      case when d.version is distinct from k.version then d.head end as head,
      case when d.version is distinct from k.version and d.entries > f.first then
        (select jsonb_agg(e.event order by e.n) from events e
          where e.folder = d.folder and e.id = d.id and e.n >= f.first and e.n < f.first + ${PAGE}) end as added
    from unnest($1::text[], $2::text[], $3::uuid[], $4::uuid[], $5::int[])
      with ordinality as k (folder, id, version, list, first, at)
    join documents d on d.folder = k.folder and d.id = k.id
    cross join lateral (select case when d.list = k.list then k.first else 0 end as first) f`,
  values: [
    known.map(({ folder }) => folder),
    known.map(({ id }) => id),
    known.map(({ version }) => version ?? null),
    known.map(({ list }) => list ?? null),
    known.map(({ entries }) => entries),
  ],
});

/** A further page of entries; null where the list was written anew meanwhile. */
export const readPage = (folder: string, id: string, list: string, first: number): Statement => ({
  name: 'page',
  text: `
    select jsonb_agg(e.event order by e.n) as added from events e
    join documents d on d.folder = e.folder and d.id = e.id
    where e.folder = $1 and e.id = $2 and d.list = $3 and e.n >= $4 and e.n < $4::int + ${PAGE}`,
  values: [folder, id, list, first],
});

export const readPrevious = (folder: string, id: string): Statement => ({
  name: 'previous',
  text: 'select previous from documents where folder = $1 and id = $2',
  values: [folder, id],
});

export const isStill = (folder: string, id: string): Statement => ({
  name: 'still',
  text: 'select version from documents where folder = $1 and id = $2',
  values: [folder, id],
});

/** Nobody else changes it until this transaction ends. */
export const hold = (folder: string, id: string): Statement => ({
  name: 'hold',
  text: 'select 1 as held from documents where folder = $1 and id = $2 for update',
  values: [folder, id],
});

/** What a change writes. */
export interface Written {
  readonly folder: string;
  readonly id: string;
  readonly mark: string;
  /** Undefined where it stays. */
  readonly head: string | undefined;
  /** What becomes of the copy before: what head was, nothing, or it stays. */
  readonly previous: 'head' | 'none' | 'stays';
  /** True where all entries are written from the beginning. */
  readonly anew: boolean;
  /** How many entries there are when it is done. */
  readonly entries: number;
  /** Those that are added, and how many of them. */
  readonly added: string | undefined;
  readonly addedCount: number;
}

const ADDED = `
  signed as (insert into marks (mark, done) select $3, true from kept),
  added as (insert into events (folder, id, n, event)
    select $1, $2, $5::int - $7::int + e.at::int - 1, e.event
    from kept, jsonb_array_elements($6::jsonb) with ordinality as e (event, at))
  select 1 as kept from kept`;

const begins = ({ folder, id, mark, entries, added, addedCount }: Written) =>
  [folder, id, mark, entries, added ?? null, addedCount] as const;

/** A first version; no row where there is one already. */
export function begin(written: Written): Statement {
  const [folder, id, mark, entries, added, count] = begins(written);
  return {
    name: 'begin',
    text: `
      with kept as (insert into documents (folder, id, version, head, list, entries)
        values ($1, $2, $3::uuid, $4::jsonb, $3::uuid, $5::int) on conflict do nothing returning 1), ${ADDED}`,
    values: [folder, id, mark, written.head ?? null, entries, added, count],
  };
}

/** Another version in the place of this one; no row where it is not there any more. */
export function replace(written: Written, version: string): Statement {
  const [folder, id, mark, entries, added, count] = begins(written);
  return {
    name: 'replace',
    text: `
      with kept as (update documents set version = $3::uuid, head = coalesce($4::jsonb, head), entries = $5::int,
          list = case when $10::boolean then $3::uuid else list end,
          previous = case $9::text when 'head' then head when 'none' then null else previous end, changed = now()
        where folder = $1 and id = $2 and version = $8::uuid returning 1), ${ADDED}`,
    values: [
      folder,
      id,
      mark,
      written.head ?? null,
      entries,
      added,
      count,
      version,
      written.previous,
      written.anew,
    ],
  };
}

/** All entries, before they are written from the beginning. */
export const dropEntries = (folder: string, id: string): Statement => ({
  name: 'drop-entries',
  text: 'delete from events where folder = $1 and id = $2',
  values: [folder, id],
});

export const dropAside = (folder: string, id: string): Statement => ({
  name: 'drop-aside',
  text: 'delete from aside where folder = $1 and id = $2',
  values: [folder, id],
});

export const moveAside = (folder: string, id: string): Statement => ({
  name: 'aside',
  text: 'insert into aside (folder, id, head) select folder, id, head from documents where folder = $1 and id = $2',
  values: [folder, id],
});

/** Everything of a document that is held. */
export const drop = (folder: string, id: string): Statement => ({
  name: 'drop',
  text: `with gone as (delete from events where folder = $1 and id = $2)
    delete from documents where folder = $1 and id = $2`,
  values: [folder, id],
});

export const sign = (mark: string): Statement => ({
  name: 'sign',
  text: 'insert into marks (mark, done) values ($1, true)',
  values: [mark],
});

/** Ids that begin so. No character of an id comes after a tilde. */
export const idsOf = (folder: string, prefix: string): Statement => ({
  name: 'ids',
  text: `select id from documents where folder = $1 and id >= $2 and id < $2 || '~' order by id`,
  values: [folder, prefix],
});

/** Whoever lost an answer has looked for its mark long ago. */
export const forgetMarks: Statement = {
  text: "delete from marks where at < now() - interval '1 hour'",
};
