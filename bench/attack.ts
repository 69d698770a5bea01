/**
 * The attacks of test/attack/ in large numbers: `npm run bench -- attack`, or some of them: `npm run bench -- attack sleep disk`.
 * Each is a section: its name, and what it does, as rows of the table "What was broken on purpose".
 */
import { databaseLoop } from '../test/attack/database.ts';
import { diskLoop } from '../test/attack/disk.ts';
import { blowsOf, Fleet, crowd, strike, type ManyReport } from '../test/attack/many.ts';
import { Server } from '../test/postgres/server.ts';
import { fullDisk } from '../test/attack/full.ts';
import { fuzz, MAKERS } from '../test/attack/fuzz.ts';
import { slowness } from '../test/attack/largest.ts';
import { sleepLoop } from '../test/attack/sleep.ts';
import { spread } from '../test/attack/spread.ts';
import { killLoop } from '../test/rooms/discord/kill-loop.ts';
import { time } from './table.ts';
import { median } from './measure.ts';

export interface AttackRow {
  readonly what: string;
  readonly often: string;
  /** Acknowledged and lost. */
  readonly lost: number;
  /** Counted or answered twice. */
  readonly doubled: number;
  /** Anything else that must not be: a reason to fail. */
  readonly broken?: readonly string[];
}

const number = (value: number) => value.toLocaleString('en-US');

const KILLS = 1_000;
const SLEEPS = 50;
const PRESSES = 2_000;
const LINES = 300_000;
const ILLS = 150;
/** How often the disk of the database is full, each way. */
const FULL = 3;
/** Processes on one database, how often one of them is killed, how often each thing befalls the database, and how many press. */
const PROCESSES = [2, 4];
const PROCESS_KILLS = 50;
const TROUBLED = 4;
const PRESSING = 12;
/** Of 200 that press for a motif, so many at the same moment: four processes that are told of each share two processors here with all else. */
const AT_ONCE = 60;

export const ATTACKS: Readonly<Record<string, () => Promise<AttackRow[]>>> = {
  async kills() {
    const people = 4;
    const report = await killLoop(KILLS, people, spread());
    const slowest = Math.max(...report.back);
    return [
      {
        what: '`kill -9` of the program with presses in flight, started again at once',
        often: `${number(report.kills)} kills; ${number(report.presses)} presses by ${people} people, ${number(report.acknowledged)} acknowledged, ${number(report.cut)} cut off and pressed again; first answer after ${time(median(report.back))} in the middle, ${time(slowest)} at the slowest`,
        lost: report.lost,
        doubled: report.twice,
        broken: report.leaks === 0 ? [] : [`${report.leaks} lines of the log with a token`],
      },
    ];
  },
  async sleep() {
    const report = await sleepLoop(SLEEPS, spread());
    return [
      {
        what: 'the holder of the data folder is stopped, another machine takes over and writes, the first is woken',
        often: `${number(report.rounds)} times; ${number(report.acknowledged)} changes acknowledged, ${number(report.refused)} refused in words`,
        lost: report.lost,
        doubled: report.doubled,
        broken: report.broken,
      },
    ];
  },
  async fuzz() {
    const over = 50 * slowness();
    const report = await fuzz(LINES, 1, over);
    const mean = `at the longest ${time(report.longest.ms)} in one piece, ${number(report.over.length)} over ${time(over)}`;
    return [
      {
        what: 'lines made from what the registry says of itself, hostile in every way that we know',
        often: `${number(report.lines)} lines by ${MAKERS.length} makers; ${number(report.answered)} answered, ${number(report.refused)} refused in words; ${mean}`,
        lost: 0,
        doubled: 0,
        broken: [
          ...report.faults.map(({ line, error }) => `a fault: ${JSON.stringify(line)}: ${error}`),
          ...report.unsound.map(({ line, what }) => `${what}: ${JSON.stringify(line)}`),
        ],
      },
    ];
  },
  async many() {
    const rows: AttackRow[] = [];
    for (const processes of PROCESSES) rows.push(...(await manyRows(processes)));
    return rows;
  },
  full: fullRows,
  async disk() {
    const report = await diskLoop(PRESSES, spread());
    return [
      {
        what: 'a disk on which any step fails one time in fifty: full, over quota, read-only, broken, half written',
        often: `${number(report.presses)} presses; ${number(report.acknowledged)} acknowledged, ${number(report.refused)} refused in words, ${number(report.unknown)} told that it is not known`,
        lost: report.lost,
        doubled: report.doubled,
        broken: report.broken,
      },
    ];
  },
  async database() {
    const report = await databaseLoop(ILLS, spread());
    const harm = Object.entries(report.harm).map(([what, times]) => `${what} ${times} times`);
    return [
      {
        what: 'a PostgreSQL and four processes that press on one blanket in it, killed, cut off and replaced by turns',
        often: `${harm.join(', ')}; ${number(report.acknowledged)} presses acknowledged, ${number(report.refused)} refused in words, ${number(report.unknown)} told that it is not known`,
        lost: report.lost,
        doubled: report.doubled,
        broken: report.broken,
      },
    ];
  },
};

/** Rows of a full disk; none where no file system can be made for it. */
async function fullRows(): Promise<AttackRow[]> {
  const within = spread();
  const rows: AttackRow[] = [];
  for (const [part, what] of [
    ['tables', 'the disk of the database has no room for its tables, for ten seconds; two processes'],
    ['all', 'the same, nor for what it writes ahead of them: it ends itself, and is started again'],
  ] as const) {
    const report = await fullDisk(part, FULL, PRESSING, within);
    if (report === undefined) {
      process.stderr.write('left out: no file system can be made here (root on Linux may)\n');
      return [];
    }
    const { lost, twice, broken } = report;
    rows.push({ what, often: told(report), lost, doubled: twice, broken });
  }
  return rows;
}

const told = ({ times, presses, acknowledged, refused, unknown, cut, savedUntold, back }: ManyReport) =>
  `${number(times)} times; ${number(presses)} presses by ${PRESSING} people, ${number(acknowledged)} acknowledged, ${number(refused)} refused in words, ${number(unknown)} told that it is not known, ${number(cut)} cut off and pressed again, of which ${number(savedUntold)} had been saved; everybody answered again after ${time(median(back))} in the middle, ${time(Math.max(...back))} at the slowest`;

/** Several processes of the program on one database. */
async function manyRows(processes: number): Promise<AttackRow[]> {
  const within = spread();
  const struck = async (blows: Parameters<typeof strike>[0]['blows']) => {
    const report = await strike({ processes, people: PRESSING, blows }, within);
    return { often: told(report), lost: report.lost, doubled: report.twice, broken: report.broken };
  };
  const rows: AttackRow[] = [
    {
      what: `${processes} processes on one PostgreSQL: \`kill -9\` of one with presses in flight, started again while the others answer`,
      ...(await struck(Array.from({ length: PROCESS_KILLS }, () => 'a process killed' as const))),
    },
    {
      what: `${processes} processes, and their PostgreSQL is killed, ended, cut off, silent, read-only, out of reach, replaced by another server with what it had`,
      ...(await struck(blowsOf(TROUBLED))),
    },
  ];
  const server = await Server.begin({ sure: true });
  try {
    for (const dealt of [true, false]) {
      const fleet = await Fleet.open(processes, server.url(), 'overlapping');
      fleet.platform.gateway.deals = dealt;
      const report = await crowd(fleet.platform, {
        motifs: 100,
        people: 200,
        url: server.url(),
        side: 10,
        atOnce: AT_ONCE,
      });
      const { got, kindly, other, refused, late, pledged, boards, shows, edits, second, refusals } = report;
      rows.push({
        what: dealt
          ? `200 makers press for 100 motifs, ${AT_ONCE} at the same moment, their presses dealt to ${processes} processes`
          : `the same, and each press arrives at all ${processes} processes`,
        often: `${number(got)} got one, ${number(kindly)} were told kindly, ${number(refused)} that it could not be read or saved just now, ${number(late)} were not answered in time; one board, ${number(edits)} edits, the newest in the end; ${number(second)} second answers, none of which the platform took`,
        lost: report.lost,
        doubled: report.twice + Math.max(0, pledged - 100),
        broken: [
          ...other,
          ...(pledged === 100 && boards === 1 && refusals === 0 && shows.includes('100 pledged, 0 open')
            ? []
            : [`${pledged} pledged, ${boards} boards, ${refusals} refusals: ${shows}`]),
          ...(await fleet.close()),
        ],
      });
    }
  } finally {
    await server.throwAway();
  }
  return rows;
}

/** Runs what is named, or all; prints the table. Returns whether nothing was found. */
export async function attack(names: readonly string[]): Promise<boolean> {
  const unknown = names.filter((name) => !Object.hasOwn(ATTACKS, name));
  if (unknown.length > 0) {
    process.stderr.write(
      `There is no attack ${unknown.join(', ')}. There are ${Object.keys(ATTACKS).join(', ')}.\n`,
    );
    return false;
  }
  const rows: AttackRow[] = [];
  for (const [name, run] of Object.entries(ATTACKS)) {
    if (names.length > 0 && !names.includes(name)) continue;
    process.stderr.write(`${name} …\n`);
    rows.push(...(await run()));
  }
  const lines = rows.map(({ what, often, lost, doubled }) => `| ${what} | ${often} | ${lost} | ${doubled} |`);
  process.stdout.write(
    `| what | how often | acknowledged and lost | counted or answered twice |\n| --- | --- | --- | --- |\n${lines.join('\n')}\n`,
  );
  const broken = rows.flatMap(({ what, broken: found = [] }) => found.map((one) => `${what}: ${one}`));
  for (const one of broken) process.stdout.write(`\n${one}\n`);
  return broken.length === 0 && rows.every(({ lost, doubled }) => lost + doubled === 0);
}
