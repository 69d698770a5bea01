/**
 * Who uses a database: any number of processes that answer from it, or one that moves what is saved into it or out of it. Each connection says on which
 * side it is, by an advisory lock that lasts as long as the connection: so nobody of the one side can read or write anything while
 * anybody of the other can, and whoever dies has let go.
 */
import { hostname } from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';
import type { ClientBase } from 'pg';
import { NotSaved } from '../not-saved.ts';

export type Side = 'answers' | 'moves';

/** What its connections are called in the database begins so. */
export const PROGRAM = 'loopwright';

/** A name is cut after so many characters by the database (PostgreSQL, NAMEDATALEN); the machine's is the end of it. */
const LONGEST_NAME = 63;

/** What a connection of this process is called there: whoever is refused because of it can be told which one it is. */
export const connectionName = (pid = process.pid, host = hostname()) =>
  `${PROGRAM} ${pid}@${host.replaceAll(/[^\w.-]/g, '_')}`.slice(0, LONGEST_NAME);

const NAME = new RegExp(`^${PROGRAM} (\\d+)@([\\w.-]+)$`);

/** One number for this program, and one for each side. */
const KEY = 5_667_977;
const NUMBER: Readonly<Record<Side, number>> = { answers: 1, moves: 2 };

/** The connections that stand in the way: those of the other side; where one moves, also another process that does. */
const inTheWay = (side: Side) => `
  select distinct a.application_name as name, case l.objid when ${NUMBER.moves} then 'moves' else 'answers' end as side
  from pg_locks l left join pg_stat_activity a on a.pid = l.pid
  where l.locktype = 'advisory' and l.database = (select oid from pg_database where datname = current_database())
    and l.classid = ${KEY} and l.objsubid = 2 and l.granted and l.pid <> pg_backend_pid()
    and ${
      side === 'answers'
        ? `l.objid = ${NUMBER.moves}`
        : `(l.objid = ${NUMBER.answers} or l.objid = ${NUMBER.moves} and a.application_name <> current_setting('application_name'))`
    }`;

/** Somebody stands in the way: `BEING_MOVED` for who would answer, `IN_USE` for who would move. */
export class InTheWay extends Error {
  readonly code: 'BEING_MOVED' | 'IN_USE';
  /** The processes, as their connections are called. */
  readonly names: readonly (string | null)[];
  /** Whether one of them moves what is saved. */
  readonly moved: boolean;

  constructor(side: Side, found: readonly { readonly name: string | null; readonly side: string }[]) {
    super(
      `${side === 'answers' ? 'what is saved is being moved' : 'the database is in use'} by ${called(found.map(({ name }) => name))}`,
    );
    this.code = side === 'answers' ? 'BEING_MOVED' : 'IN_USE';
    this.names = found.map(({ name }) => name);
    this.moved = found.some((one) => one.side === 'moves');
  }
}

/** So many processes are named. */
const NAMED = 3;

/** Processes in words, by what their connections are called. */
function called(names: readonly (string | null)[]): string {
  const processes = names.map((name) => {
    const [, pid, host] = NAME.exec(name ?? '') ?? [];
    return pid === undefined || host === undefined
      ? 'a process of this program'
      : `process ${pid} on ${host}`;
  });
  const more = processes.length - NAMED;
  const said = [...processes.slice(0, NAMED), ...(more > 0 ? [`${more} more`] : [])];
  return [said.slice(0, -1).join(', '), said.at(-1)].filter(Boolean).join(' and ');
}

/** Says in a sentence who stands in the way of beginning. */
export function notOpenedFor(found: InTheWay): NotSaved {
  const who = called(found.names);
  const facts = { processes: found.names.length };
  if (found.code === 'BEING_MOVED')
    return new NotSaved(
      'being-moved',
      `What is saved is being moved into this database or out of it, by ${who}. Nothing was changed.`,
      'Start this when that has ended. It lets go of the database by itself, also where it is broken off.',
      found,
      facts,
    );
  return new NotSaved(
    'in-use',
    found.moved
      ? `The database is in use: what is saved is being moved already, by ${who}. Nothing was changed.`
      : `The database is in use by ${who}. Nothing was changed.`,
    found.moved ? 'Wait until that has ended.' : 'Stop what answers from it first.',
    found,
    facts,
  );
}

/** Who has just ended is there for a moment yet; so often somebody who would move looks again, and so long after, in ms. */
const LOOKS = 5;
const LOOK_AGAIN_MS = 100;

/**
 * Takes a side for as long as this connection lasts. Whoever is already there is looked for first, so that one who waits is in nobody's way, and
 * again afterwards: two that come at the same moment see each other. Throws InTheWay.
 */
export async function take(side: Side, client: ClientBase): Promise<void> {
  const others = inTheWay(side);
  for (let look = 1; ; look++) {
    // Each by itself: within one transaction the list of connections stays as it was.
    const [, found] = await Promise.all([
      client.query(`select pg_advisory_lock_shared(${KEY}, ${NUMBER[side]}) where not exists (${others})`),
      client.query<{ name: string | null; side: string }>(others),
    ]);
    if (found.rows.length === 0) return;
    if (side === 'answers' || look === LOOKS) throw new InTheWay(side, found.rows);
    await client.query('select pg_advisory_unlock_all()');
    await sleep(LOOK_AGAIN_MS);
  }
}
