/**
 * The program itself in one, two and four processes on one PostgreSQL, against one process on files: answers and presses a second through
 * the real client, and what each costs in processor time. From that, which store is right from which size on, on paper.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { launch, type Bot } from '../test/rooms/discord/process.ts';
import { Server } from '../test/postgres/server.ts';
import { mixed, PRESSED, SAVED } from './load.ts';
import { openPlatform, type Platform } from './load-process.ts';
import type { Asked, Load } from './load-platform.ts';
import { median } from './measure.ts';
import { digits, table, time, type BenchRow } from './table.ts';

const ROUNDS = 5;
const ROUND_MS = 3_000;
const IN_FLIGHT = 16;
/** So many that each presses less than once a second. */
const MAKERS = 400;
const WARM = 800;

/** Processor time of a process so far, ms; 0 where it is gone, or the system does not tell. */
function processorTime(pid: number): number {
  try {
    const [, after = ''] = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ');
    const fields = after.split(' ');
    // Ticks of a hundredth of a second, the usual of Linux (proc_pid_stat(5): utime and stime).
    return (Number(fields[11]) + Number(fields[12])) * 10;
  } catch {
    return 0;
  }
}

/** A process and its children. */
function family(pid: number): number[] {
  const children = readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      return readFileSync(`/proc/${name}/stat`, 'utf8').split(') ')[1]?.split(' ')[1] === String(pid);
    } catch {
      return false;
    }
  });
  return [pid, ...children.map(Number)];
}
const spent = (pids: readonly number[]) => pids.reduce((sum, pid) => sum + processorTime(pid), 0);

/** Bytes of all files below a folder. */
function sizeOf(folder: string): number {
  return readdirSync(folder, { recursive: true, withFileTypes: true }).reduce(
    (sum, entry) => sum + (entry.isFile() ? statSync(join(entry.parentPath, entry.name)).size : 0),
    0,
  );
}

interface Setup {
  readonly called: string;
  readonly processes: number;
  readonly database: boolean;
  readonly platform: Platform;
  readonly bots: readonly Bot[];
}

async function open(
  called: string,
  processes: number,
  set: Readonly<Record<string, string>>,
): Promise<Setup> {
  const platform = await openPlatform();
  const bots = Array.from({ length: processes }, (_, index) =>
    launch({
      DISCORD_TOKEN: platform.token,
      DISCORD_API: platform.api,
      SHARDS: String(index),
      SHARD_COUNT: String(processes),
      ...set,
    }),
  );
  for (const bot of bots)
    while (!bot.output().includes('the room is open')) {
      if (bot.child.exitCode !== null) throw new Error(`it did not start: ${bot.output()}`);
      await new Promise((done) => setTimeout(done, 20));
    }
  return { called, processes, database: 'DATABASE_URL' in set, platform, bots };
}

type Kind = Load['kind'];
/** What one round came to: answers a second, ms of processor time an answer of all processes, and of the database. */
interface Round {
  readonly rate: number;
  readonly own: number;
  readonly database: number;
}

const loadOf = (kind: Kind, questions: readonly Asked[], shards: number): Load => ({
  kind,
  questions: kind === 'questions' ? questions : PRESSED,
  before: kind === 'questions' ? [] : SAVED,
  inFlight: IN_FLIGHT,
  makers: MAKERS,
  shards,
  answers: Infinity,
  ms: ROUND_MS,
});

/** What was measured, medians; the ground of what is reckoned on paper. */
export interface Costs {
  /** ms of processor time: of the one process on files; of all processes on the database together; of the database itself. */
  readonly files: Readonly<Record<Kind, number>>;
  readonly common: Readonly<Record<Kind, number>>;
  readonly database: Readonly<Record<Kind, number>>;
  /** Bytes of one maker. */
  readonly bytes: { readonly files: number; readonly database: number };
}

async function measure(): Promise<{ rows: BenchRow[]; costs: Costs }> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-processes-'));
  const server = await Server.begin({ sure: true, settings: { shared_buffers: '128MB' } });
  const setups: Setup[] = [];
  try {
    setups.push(await open('One process on files', 1, { DATA_DIR: folder }));
    for (const processes of [1, 2, 4]) {
      await server.ask(`create database bench${processes}`);
      const called = `${processes} ${processes === 1 ? 'process' : 'processes'} on one PostgreSQL`;
      const DATABASE_URL = server.url(`bench${processes}`);
      setups.push(await open(called, processes, { DATABASE_URL, DATA_DIR: join(folder, 'none') }));
    }
    const questions = await mixed();
    const seen = new Map<string, Round[]>();
    for (const { platform, processes } of setups)
      for (const kind of ['questions', 'presses'] as const)
        await platform.load({
          ...loadOf(kind, questions, processes),
          inFlight: 4,
          answers: WARM,
          ms: Infinity,
        });
    for (let round = 0; round < ROUNDS; round++)
      for (const kind of ['questions', 'presses'] as const)
        for (const { called, platform, processes, bots } of setups) {
          const own = bots.map(({ child }) => child.pid ?? 0);
          const others = family(server.pid ?? 0);
          const before = [spent(own), spent(others)] as const;
          const { answers, seconds } = await platform.load(loadOf(kind, questions, processes));
          const key = `${called} ${kind}`;
          seen.set(key, [
            ...(seen.get(key) ?? []),
            {
              rate: answers / seconds,
              own: (spent(own) - before[0]) / answers,
              database: (spent(others) - before[1]) / answers,
            },
          ]);
        }
    const of = (called: string, kind: Kind, what: keyof Round) =>
      median((seen.get(`${called} ${kind}`) ?? []).map((round) => round[what]));
    const [files, ...common] = setups;
    if (files === undefined) throw new Error('nothing was measured');
    const rows = (['questions', 'presses'] as const).flatMap((kind) =>
      common.map(({ called }) => {
        const said = (who: string) =>
          `${digits(of(who, kind, 'rate'))} a second, ${time(of(who, kind, 'own'))} of processor time each`;
        return {
          what: `${called}: ${kind === 'questions' ? 'mixed questions' : 'presses, saved before they are answered'}`,
          ours: `${said(called)} and ${time(of(called, kind, 'database'))} of the database’s`,
          reference: `one process on files: ${said(files.called)}`,
          ratio: of(called, kind, 'rate') / of(files.called, kind, 'rate'),
          note: `The program itself through the real client and a stand-in of the platform in another process, ${MAKERS} makers, ${IN_FLIGHT} in flight, ${ROUNDS} rounds of ${ROUND_MS / 1000} s in turn. Platform, processes and database share this machine’s processors: more processes are not more processors here, so the time each takes tells more than the rate.`,
        };
      }),
    );
    const each = (what: 'own' | 'database') => {
      const mean = (kind: Kind) => median(common.map(({ called }) => of(called, kind, what)));
      return { questions: mean('questions'), presses: mean('presses') };
    };
    const [sized] = await server.ask(
      'select pg_database_size($1)::int8 - pg_database_size($2)::int8 as size',
      ['bench1', 'template1'],
    );
    const costs: Costs = {
      files: {
        questions: of(files.called, 'questions', 'own'),
        presses: of(files.called, 'presses', 'own'),
      },
      common: each('own'),
      database: each('database'),
      bytes: { files: sizeOf(folder) / MAKERS, database: Number(sized?.['size']) / MAKERS },
    };
    return { rows, costs };
  } finally {
    for (const { bots, platform } of setups) {
      await Promise.all(bots.map((bot) => bot.end('SIGTERM')));
      await platform.close();
    }
    await server.throwAway();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What is assumed of people, as nobody has counted them: said beside the table. */
const ASSUMED = {
  makersInServer: 50,
  questionsADay: 4,
  pressesADay: 8,
  /** Of a day’s, how many fall into its busiest hour. */
  busiestHour: 0.15,
  /** Within that hour, the busiest second over the mean. */
  busiestSecond: 3,
  /** How busy a process or a database may be then: half of one processor each. */
  half: 0.5,
} as const;
const SIZES = [100, 1_000, 10_000, 100_000, 300_000, 1_000_000];

/** Processors that so many questions and presses a second keep busy. */
const busy = (cost: Readonly<Record<Kind, number>>, questions: number, presses: number) =>
  (cost.questions * questions + cost.presses * presses) / 1000;

const bytes = (count: number) =>
  count >= 1e9 ? `${digits(count / 1e9)} GB` : `${digits(Math.max(count / 1e6, 0.1))} MB`;

/** Which store is right for so many makers; reckoned from what was measured. */
export function capacity({ files, common, database, bytes: sizes }: Costs): string {
  const { makersInServer, questionsADay, pressesADay, busiestHour, busiestSecond, half } = ASSUMED;
  const share = (busiestHour / 3600) * busiestSecond;
  const whole = (value: number) => Math.round(value).toLocaleString('en-US');
  const rows = SIZES.map((makers) => {
    const [questions, presses] = [makers * questionsADay * share, makers * pressesADay * share];
    const alone = busy(files, questions, presses);
    const processes = Math.max(1, Math.ceil(busy(common, questions, presses) / half));
    const base = busy(database, questions, presses);
    return [
      whole(makers),
      whole(Math.ceil(makers / makersInServer)),
      whole(makers * (questionsADay + pressesADay)),
      digits(questions + presses),
      `${digits(alone * 100)} %`,
      `${whole(processes)}; the database ${digits(base * 100)} % of one processor`,
      `${bytes(makers * sizes.files)}; ${bytes(makers * sizes.database)}`,
      alone <= half ? 'files, one process' : `PostgreSQL, ${processes} processes`,
    ];
  });
  const most = half / busy(files, questionsADay * share, pressesADay * share);
  return [
    '| makers | servers | questions and presses a day | in the busiest second | one process on files: of one processor | processes on PostgreSQL, each half busy | saved: files; PostgreSQL | right |',
    '| --: | --: | --: | --: | --: | --- | --- | --- |',
    ...rows.map((cells) => `| ${cells.join(' | ')} |`),
    '',
    `One process on files is half busy at about ${Number(most.toPrecision(2)).toLocaleString('en-US')} makers. Measured: a mixed question takes ${time(files.questions)} of processor time on files and ${time(common.questions)} on PostgreSQL, with ${time(database.questions)} of the database’s; a press that is saved ${time(files.presses)}, ${time(common.presses)} and ${time(database.presses)}. Assumed, as nobody has counted it: ${makersInServer} makers a server, ${questionsADay} questions and ${pressesADay} presses of each maker every day, ${digits(busiestHour * 100)} % of them in the busiest hour, and ${busiestSecond} times its mean in its busiest second. Where a second machine must take over when one fails, PostgreSQL is right at any size.`,
  ].join('\n');
}

/** The rows, and beneath them what they come to on paper. */
export async function measured(): Promise<string> {
  const { rows, costs } = await measure();
  return `${table(rows)}\n\n${capacity(costs)}`;
}
