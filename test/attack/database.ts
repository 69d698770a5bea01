/** Several processes that press on one blanket in a PostgreSQL, while they, the server and the way between are killed and cut. */
import { spawn, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout as sleep } from 'node:timers/promises';
import { PostgresStore } from '../../src/projects/postgres/store.ts';
import { beginDiary, nothingCounted, wrongIn } from '../postgres/counted.ts';
import { Server } from '../postgres/server.ts';
import { Way } from '../postgres/way.ts';
import { bundled } from '../projects/children/run.ts';

export interface DatabaseReport {
  /** How often each thing was done. */
  readonly harm: Readonly<Record<(typeof HARM)[number], number>>;
  readonly acknowledged: number;
  readonly refused: number;
  readonly unknown: number;
  readonly lost: number;
  readonly doubled: number;
  readonly broken: readonly string[];
}

const PROCESSES = 4;
const MAKERS = 4;
const HARM = ['process killed', 'server killed', 'connections cut', 'answers lost', 'taken over'] as const;

/** `spread` hands out numbers in [0, 1): when each falls ill. */
export async function databaseLoop(rounds: number, spread: () => number): Promise<DatabaseReport> {
  const script = await bundled(join(import.meta.dirname, '../postgres/pressing.ts'));
  let server = await Server.begin();
  const way = await Way.to(server.port);
  const url = server.url().replace(`:${server.port}/`, `:${way.port}/`);
  const counted = nothingCounted();
  const broken: string[] = [];
  const harm = Object.fromEntries(HARM.map((what) => [what, 0])) as Record<(typeof HARM)[number], number>;
  const store = await PostgresStore.open({ url });
  await beginDiary(store);
  await store.close();

  let started = 0;
  const start = (): ChildProcess => {
    const args = [script, url, `p${started++}`, String(MAKERS), 'each', '3600'];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    createInterface({ input: child.stdout }).on('line', (line) => {
      const [kind, by] = line.split(' ');
      if (by !== undefined && (kind === 'done' || kind === 'refused' || kind === 'unknown'))
        counted[kind].add(by);
    });
    child.stderr.on('data', (data) => broken.push(String(data)));
    return child;
  };
  const children = Array.from({ length: PROCESSES }, start);
  const ended = (child: ChildProcess) =>
    child.exitCode !== null || child.signalCode !== null
      ? Promise.resolve()
      : new Promise((done) => child.once('exit', done));

  await sleep(1000);
  for (let round = 0; round < rounds; round++) {
    const what = HARM[round % HARM.length] ?? 'connections cut';
    harm[what]++;
    await sleep(50 + 250 * spread());
    if (what === 'process killed') {
      const at = Math.floor(spread() * PROCESSES);
      const child = children[at];
      child?.kill('SIGKILL');
      if (child) await ended(child);
      children[at] = start();
    } else if (what === 'server killed') {
      await server.kill();
      await server.start();
    } else if (what === 'connections cut') {
      await server.ask(
        `select pg_terminate_backend(pid) from pg_stat_activity where application_name like 'loopwright%'`,
      );
    } else if (what === 'answers lost') {
      way.mood = 'deaf';
      way.after = 'deaf';
      await sleep(100);
      way.mood = 'open';
    } else {
      way.mood = 'closed';
      way.cutAll();
      await server.kill();
      const next = await Server.begin({ copyOf: server.folder }, server.password);
      way.turn(next.port);
      way.mood = 'open';
      await server.throwAway();
      server = next;
    }
  }
  await sleep(1000);
  for (const child of children) child.kill('SIGKILL');
  await Promise.all(children.map(ended));
  // What was on its way when they were killed has ended by then.
  await sleep(500);
  const last = await PostgresStore.open({ url });
  const { lost, doubled, thereThoughRefused } = await wrongIn(last, counted);
  await last.close();
  way.close();
  await server.throwAway();
  return {
    harm,
    acknowledged: counted.done.size,
    refused: counted.refused.size,
    unknown: counted.unknown.size,
    lost: lost.length,
    doubled: doubled.length,
    broken: [...broken, ...thereThoughRefused.map((by) => `there though refused: ${by}`)],
  };
}
