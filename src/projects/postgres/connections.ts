/** Connections to the database: how many, how long anything may take, and what becomes of a change whose answer was lost. */
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import type { NotSaved } from '../not-saved.ts';
import { Fault, notKnownThere, notReadThere, notSavedThere, READ_ONLY } from './faults.ts';
import { connectionName, take, type Side } from './side.ts';

export type Note = (what: string, facts: Readonly<Record<string, unknown>>) => void;

/** How long things may take, in milliseconds. */
export interface Times {
  /** Until a connection is there, a free one or a new one. */
  readonly connect: number;
  /** Until the database itself gives a statement up. */
  readonly statement: number;
  /** Until it gives up waiting for somebody else's change of the same document. */
  readonly lock: number;
  /** Until nobody waits for its answer any more: longer than it may take by itself. */
  readonly answer: number;
  /** For how long what fails and may go better is tried again, from when it began to fail. */
  readonly patience: number;
}

export const TIMES: Times = { connect: 3000, statement: 4000, lock: 3000, answer: 5000, patience: 8000 };

/**
 * Connections of one process: as many as node-postgres holds where nothing is said. PostgreSQL takes 100 in all where nothing is
 * said, 3 of them for its owner, so that nine processes find room.
 */
export const CONNECTIONS = 10;

/** A machine that is gone, and says nothing of it, is given up by the database after half a minute: 15 s of silence, and three calls. */
const KEPT_ALIVE = { tcp_keepalives_idle: 15, tcp_keepalives_interval: 5, tcp_keepalives_count: 3 };

/** A statement with a name is prepared once for each connection. */
export interface Statement {
  readonly name?: string;
  readonly text: string;
  readonly values?: readonly unknown[];
}
/** Values as the database writes them. */
export type Row = Readonly<Record<string, string | null>>;
export type Ask = (statement: Statement | string) => Promise<Row[]>;

/** Waits between tries, in milliseconds: the first soon, none long. */
const waitBefore = (attempt: number) => Math.min(400, 20 * 2 ** attempt) + (process.pid % 10);

/** A refusal of one kind is noted once in so long, ms. */
const SAID_AGAIN_MS = 10_000;

const asWritten = { getTypeParser: () => (value: string) => value };

export class Connections {
  private readonly pool: pg.Pool;
  /** When each connection was made, and since when one must have been made to be trusted. */
  private readonly made = new WeakMap<pg.ClientBase, number>();
  private trustedSince = 0;
  /** Since when nothing at all got through, and since when no change was taken, though it did; unset while it is otherwise. */
  private readonly failing: { reaching?: number | undefined; changing?: number | undefined } = {};

  /** When a refusal of each code was noted last, and how many there were since. */
  private readonly said = new Map<string, { readonly at: number; more: number }>();

  constructor(
    url: string,
    private readonly note: Note,
    private readonly times: Times = TIMES,
    most = CONNECTIONS,
    side?: Side,
  ) {
    this.pool = new pg.Pool({
      connectionString: url,
      max: most,
      // One stays, so that whoever would move what is saved sees that somebody is there.
      min: side === undefined ? 0 : 1,
      connectionTimeoutMillis: times.connect,
      idleTimeoutMillis: 30_000,
      query_timeout: times.answer,
      keepAlive: true,
      pipeline: true,
      application_name: connectionName(),
      // Waited for, though it is declared as if it were not.
      onConnect: (client): unknown => this.begin(client, side),
      types: asWritten as unknown as pg.CustomTypesConfig,
    });
    // One that is cut says so by what is asked of it as well; what is said between that and its end would be nobody's otherwise.
    this.pool.on('connect', (client) => {
      this.made.set(client, performance.now());
      client.on('error', () => undefined);
    });
    // One that nobody uses was cut: the next is made when it is needed.
    this.pool.on('error', (error) => this.note('a connection to the database was cut', { error }));
  }

  /** How a connection begins: all that is set is asked for, as a pooler takes little that comes before. */
  private async begin(client: pg.ClientBase, side: Side | undefined): Promise<void> {
    const { statement, lock, answer, patience } = this.times;
    const set = Object.entries({
      statement_timeout: statement,
      lock_timeout: lock,
      idle_in_transaction_session_timeout: answer + patience,
      ...KEPT_ALIVE,
    }).map(([name, value]) => `set_config('${name}', '${value}', false)`);
    await both(client.query(`select ${set.join(', ')}`), side && take(side, client));
  }

  /** Whether what was asked last did not get through, or the last change was not taken. */
  get away(): boolean {
    return this.failing.reaching !== undefined || this.failing.changing !== undefined;
  }

  async close(): Promise<void> {
    if (!this.pool.ending) await this.pool.end();
  }

  /** Reads: asked again where that may help. Rejects with NotSaved (`not-read`). */
  reads<T>(read: (ask: Ask) => Promise<T>): Promise<T> {
    return this.tried('reading', () => this.with(read), notReadThere);
  }

  /**
   * Lets a change be made exactly once. `attempt` is handed a mark that it must write along with its change; before what makes
   * it last it says what it means to come back with. It is asked again, with another mark, where nothing of it was done for certain. Rejects with
   * NotSaved: `not-saved` where nothing was changed, `not-known` where the database was lost in the middle of it and not found again.
   */
  async changes<T>(attempt: (ask: Ask, mark: string, will: (result: T) => void) => Promise<T>): Promise<T> {
    return this.tried(
      'changing',
      async () => {
        const mark = randomUUID();
        let meant: { readonly result: T } | undefined;
        try {
          return await this.with((ask) => attempt(ask, mark, (result) => (meant = { result })));
        } catch (error) {
          if (!(error instanceof Fault && error.unsure) || meant === undefined) throw error;
          this.note('a connection to the database was lost in the middle of a change', { error });
          const written = await this.isWritten(mark, error);
          this.note('what became of that change is known now', { written });
          if (written) return meant.result;
          throw error;
        }
      },
      notSavedThere,
    );
  }

  /**
   * Whether a change with this mark is in the database. Where it is not, the mark is set there as that of nothing: if the change should
   * still be under way it cannot be written any more, as no mark is set twice.
   */
  private async isWritten(mark: string, lost: Fault): Promise<boolean> {
    const since = performance.now();
    const look = (ask: Ask) =>
      ask({
        name: 'nothing-done',
        text: 'insert into marks (mark, done) values ($1, false) on conflict do nothing',
        values: [mark],
      }).then(() => ask({ name: 'done', text: 'select done from marks where mark = $1', values: [mark] }));
    for (let attempt = 0; ; attempt++) {
      try {
        const [row] = await this.with(look);
        return row?.['done'] === 't';
      } catch (error) {
        // Worth waiting for, whatever it is that fails.
        if (!(error instanceof Fault) || performance.now() - since > this.times.patience)
          throw error instanceof Fault ? notKnownThere(lost) : error;
        await sleep(waitBefore(attempt));
      }
    }
  }

  private async tried<T>(
    what: 'reading' | 'changing',
    work: () => Promise<T>,
    refusal: (fault: Fault) => NotSaved,
  ): Promise<T> {
    const began = performance.now();
    for (let attempt = 0; ; attempt++) {
      try {
        const result = await work();
        this.failing.reaching = undefined;
        if (what === 'changing') this.failing.changing = undefined;
        return result;
      } catch (error) {
        if (!(error instanceof Fault)) throw error;
        // Where nothing has got through for long, nobody waits as long again. What two changes do to each other ends soon.
        const fails = error.code === READ_ONLY ? 'changing' : 'reaching';
        const since = error.broken ? (this.failing[fails] ??= began) : performance.now();
        // After one that was cut it is tried at least once on a connection that is made anew.
        const anew = attempt > 0 || error.code === 'UNREACHED';
        const enough = anew && performance.now() - since > this.times.patience;
        if (!error.passing || enough || this.pool.ending) {
          this.noteRefusal(error);
          throw refusal(error);
        }
        await sleep(waitBefore(attempt));
      }
    }
  }

  /** Said at most once in a while for each kind, with how many more there were: while the database is away, everybody is refused. */
  private noteRefusal({ code, cause }: Fault): void {
    const now = performance.now();
    const last = this.said.get(code);
    if (last !== undefined && now - last.at < SAID_AGAIN_MS) {
      last.more++;
      return;
    }
    this.said.set(code, { at: now, more: 0 });
    const more = last?.more ?? 0;
    this.note('the database refused something', { code, error: cause, ...(more > 0 ? { more } : {}) });
  }

  /** A connection that was made after the last one that failed: where one was cut, or led to the wrong server, so do the others. */
  private async connected(): Promise<pg.PoolClient> {
    for (;;) {
      let client: pg.PoolClient;
      try {
        client = await this.pool.connect();
      } catch (error) {
        throw new Fault(error);
      }
      if ((this.made.get(client) ?? 0) >= this.trustedSince) return client;
      client.release(true);
    }
  }

  private async with<T>(work: (ask: Ask) => Promise<T>): Promise<T> {
    const client = await this.connected();
    let broken = false;
    const ask: Ask = async (statement) => {
      try {
        const { rows } = await client.query<Row>(statement as pg.QueryConfig);
        return rows;
      } catch (error) {
        const fault = new Fault(error);
        if (fault.broken) {
          broken = true;
          this.trustedSince = performance.now();
        }
        throw fault;
      }
    };
    try {
      return await work(ask);
    } finally {
      client.release(broken);
    }
  }
}

/** Waits for both, so that nothing of either is under way any more, and throws what the first to be asked threw. */
export async function both<A, B>(first: Promise<A>, second: Promise<B> | B): Promise<[A, B]> {
  await Promise.allSettled([first, second]);
  return [await first, await second];
}

/**
 * Several statements as one: all of them or none. What need not wait for the answer before it is sent at once: whoever is last to ask
 * something sends the end of it along, by `last`.
 */
export async function together<T>(
  ask: Ask,
  work: (last: (statement: Statement) => Promise<Row[]>) => Promise<T>,
): Promise<T> {
  const sent = { over: false };
  const last = async (statement: Statement) => {
    sent.over = true;
    const [rows] = await both(ask(statement), ask('commit'));
    return rows;
  };
  try {
    const [, result] = await both(ask('begin isolation level read committed'), work(last));
    if (!sent.over) await ask('commit');
    return result;
  } catch (error) {
    // What was refused in the middle was undone by its end already.
    if (!(error instanceof Fault && error.broken) && !sent.over) await ask('rollback');
    throw error;
  }
}
