/** The tables, and how an older state of them is brought up to date: once, however many processes start. */
import { NotSaved } from '../not-saved.ts';
import { together, type Ask } from './connections.ts';
import { Fault } from './faults.ts';

/** Step by step: the first makes version 1 of an empty database. None is ever changed; what is to be otherwise is another step. */
const STEPS: readonly string[] = [
  `
  -- One row a document: all of it but the list of what happened, where it has one that only grows.
  create table documents (
    folder text collate "C" not null,
    id text collate "C" not null,
    -- The mark of the change that wrote it last: no two changes have the same one.
    version uuid not null,
    head jsonb not null,
    -- The mark of the change that wrote its list from the beginning, and how many entries there are.
    list uuid not null,
    entries integer not null,
    -- What head was before its last change; null where that is to be forgotten.
    previous jsonb,
    changed timestamptz not null default now(),
    primary key (folder, id)
  );
  -- What happened, one entry a row; only ever added to, but for somebody who is forgotten.
  create table events (
    folder text collate "C" not null,
    id text collate "C" not null,
    n integer not null,
    event jsonb not null,
    primary key (folder, id, n)
  );
  -- Documents that could not be read, kept for whoever may mend them.
  create table aside (
    folder text collate "C" not null,
    id text collate "C" not null,
    at timestamptz not null default now(),
    head jsonb not null
  );
  create index aside_of on aside (folder, id);
  -- The marks of the latest changes: whoever has lost the answer looks here whether there is a change.
  create table marks (
    mark uuid primary key,
    done boolean not null,
    at timestamptz not null default now()
  );
  create index marks_at on marks (at);
  `,
];

/** What the role that runs needs, and all it needs. */
export const TABLES = ['documents', 'events', 'aside', 'marks'] as const;
export const VERSION = STEPS.length;

/** One number for the whole database: whoever holds it brings the tables up to date. */
const TURN = 5_667_977;

const newerTables = (version: number) =>
  new NotSaved(
    'newer-database',
    `The tables of the database are of version ${version}, and this program knows version ${VERSION}.`,
    'Bring the program up to date.',
    undefined,
    { version, known: VERSION },
  );

const mayNot = (version: number, cause: Fault) =>
  new NotSaved(
    'database-not-prepared',
    `The tables of the database ${version === 0 ? 'are not there yet' : `are of version ${version}, not ${VERSION}`}, and the role of DATABASE_URL may not make them.`,
    'Run npm run database once with the DATABASE_URL of their owner; see docs/several-machines.md.',
    cause,
  );

export interface Allowed {
  readonly superuser: boolean;
  /** Whether it may make tables of its own beside these, as everybody may in a new database before version 15. */
  readonly makes: boolean;
}

/**
 * Lets a role that runs the program do what it needs: read and write the rows, and nothing else. Throws NotSaved (`no-such-role`).
 */
export async function allow(ask: Ask, role: string): Promise<Allowed> {
  const [found] = await ask({ text: 'select rolsuper from pg_roles where rolname = $1', values: [role] });
  if (found === undefined)
    throw new NotSaved(
      'no-such-role',
      'There is no such role in the database.',
      "Its owner makes one: create role NAME login password '…'.",
    );
  const name = `"${role.replaceAll('"', '""')}"`;
  const [place] = await ask('select quote_ident(current_schema()) as schema');
  await together(ask, async () => {
    await ask(`grant usage on schema ${place?.['schema'] ?? 'public'} to ${name}`);
    for (const table of TABLES) await ask(`grant select, insert, update, delete on ${table} to ${name}`);
    await ask(`grant select on schema_version to ${name}`);
  });
  const [may] = await ask({
    text: "select has_schema_privilege($1, current_schema(), 'create') as makes",
    values: [role],
  });
  return { superuser: found['rolsuper'] === 't', makes: may?.['makes'] === 't' };
}

/** The version of the tables; 0 where there are none. */
export async function versionOf(ask: Ask): Promise<number> {
  // Asked of the catalogue itself: what a connection knows of names may be older than the turn that it waited for.
  const there = await ask(
    "select 1 as there from pg_catalog.pg_class where relname = 'schema_version' and pg_table_is_visible(oid)",
  );
  if (there.length === 0) return 0;
  const [row] = await ask('select max(version) as version from schema_version');
  return Number(row?.['version'] ?? 0);
}

/**
 * Brings the tables up to date; gives the version that was there. Throws NotSaved: `newer-database`, `database-not-prepared`. Many
 * at once wait for the first.
 */
export async function bringUpToDate(ask: Ask): Promise<number> {
  const before = await versionOf(ask);
  if (before > VERSION) throw newerTables(before);
  if (before === VERSION) return before;
  try {
    return await together(ask, async () => {
      await ask(`select pg_advisory_xact_lock(${TURN})`);
      const from = await versionOf(ask);
      if (from > VERSION) throw newerTables(from);
      if (from === 0)
        await ask(
          'create table if not exists schema_version (version integer primary key, at timestamptz not null default now())',
        );
      for (const [index, step] of STEPS.entries()) {
        if (index < from) continue;
        await ask(step);
        await ask({ text: 'insert into schema_version (version) values ($1)', values: [index + 1] });
      }
      return from;
    });
  } catch (error) {
    if (error instanceof Fault && ['42501', '3F000'].includes(error.code)) throw mayNot(before, error);
    throw error;
  }
}
