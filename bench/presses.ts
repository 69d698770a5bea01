/**
 * What a press in a group costs, however much happened before: on the disk before it is answered. Against a bare database that
 * promises as much; the row is left out where Node brings none and none was installed by hand.
 */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { GroupEvent, GroupPlan } from '../src/core/group/events.ts';
import { giveBack, pledge } from '../src/core/group/rules.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { GROUP_VERSION } from '../src/projects/group-schema.ts';
import { Groups } from '../src/projects/groups.ts';
import { OF_GROUPS } from '../src/projects/quotas.ts';
import { median, sideBySide, timed } from './measure.ts';
import { digits, figuresOf, time, type BenchRow } from './table.ts';

const SIZES = [100, 1_000, 10_000, 50_000] as const;
const LONGEST = 50_000;
const MAKERS = 40;
/** Presses of one round: one after the other, and of a storm. */
const PRESSES = 40;
const STORM = 1_500;
const IN_FLIGHT = [16, 64, 200] as const;
const ROUNDS = 9;
const AT = new Date('2026-03-02T12:00:00Z');

const maker = (number: number) => `maker${number % MAKERS}`;
const idOf = (events: number) => `here.season-${events}`;

function plan(name: string): GroupPlan {
  const kind = {
    name: 'furrow',
    shape: 'diagonal',
    size: 12,
    stitch: 'hdc',
    runs: [{ colour: 'moss', rows: 24 }],
  } as const;
  return {
    name,
    kinds: [{ ...kind, runs: [...kind.runs], quota: 400, spares: 0 }],
    columns: 20,
    rows: 20,
    layout: Array.from({ length: 400 }, () => ({ kind: 0, turn: 0 })),
    side: 15,
    tolerance: 3,
    joining: { method: 'whip' },
    border: { rounds: [], corner: 3 },
    yarns: [],
    reserve: 10,
    joinable: 'anyone',
  };
}

/** A blanket to which so much has happened: opened, joined by all, then pledged and given back by turns. */
function history(events: number): GroupEvent[] {
  const at = AT.toISOString();
  const joined = Array.from({ length: MAKERS }, (_, number): GroupEvent => {
    const who = maker(number);
    return {
      did: 'joined',
      maker: who,
      name: who,
      perWeek: 2,
      colours: [],
      by: who,
      at,
      once: `join ${number}`,
    };
  });
  const pairs = (events - joined.length - 1) >> 1;
  const turns = Array.from({ length: 2 * pairs }, (_, number): GroupEvent => {
    const who = maker(number >> 1);
    const did = number % 2 === 0 ? 'pledged' : 'released';
    return { did, maker: who, kind: 0, motifs: 1, by: who, at, once: `press of a button ${number}` };
  });
  return [
    { did: 'opened', name: 'ines', plan: plan(`season ${events}`), by: 'ines', at, once: 'open' },
    ...joined,
    ...turns,
  ];
}

async function saved(folder: string, events: number): Promise<void> {
  const at = join(folder, 'groups');
  await mkdir(at, { recursive: true });
  const id = idOf(events);
  await writeFile(join(at, `${id}.json`), `${JSON.stringify({ version: GROUP_VERSION, id, edition: 0 })}\n`);
  const lines = history(events).map((event) => `${JSON.stringify(event)}\n`);
  await writeFile(join(at, `${id}.events.jsonl`), lines.join(''));
}

let pressed = 0;
/** A pledge, and at the next press its giving back: as many motifs are open at the end as at the beginning. */
const press = (groups: Groups, id: string) => {
  const number = pressed++;
  const who = maker(number >> 1);
  return groups.happen(id, { by: who, at: AT, once: `bench ${number}` }, (state) =>
    number % 2 === 0
      ? pledge(state, { id: who, name: who, manager: false, managed: true }, 0, 1)
      : giveBack(state, who, 0, 1),
  );
};

/** One that never runs out, however many are in flight: that her pledges stand. */
const keeps = (groups: Groups, id: string) => {
  const number = pressed++;
  const who = maker(number);
  return groups.happen(id, { by: who, at: AT, once: `bench ${number}` }, () => [{ did: 'kept', maker: who }]);
};

async function storm(inFlight: number, one: (number: number) => unknown): Promise<number> {
  let next = 0;
  return timed(() =>
    Promise.all(
      Array.from({ length: inFlight }, async () => {
        while (next < STORM) await one(next++);
      }),
    ),
  );
}

/** The longest piece of something that is done in pieces, in which nobody else is heard: ms of this process’s own time. */
async function longestPiece(does: () => Promise<unknown>): Promise<number> {
  const watch = { longest: 0, cpu: process.cpuUsage(), on: true };
  const look = () => {
    const { user, system } = process.cpuUsage(watch.cpu);
    watch.longest = Math.max(watch.longest, (user + system) / 1000);
    watch.cpu = process.cpuUsage();
    if (watch.on) setImmediate(look);
  };
  setImmediate(look);
  await does();
  watch.on = false;
  return watch.longest;
}

interface Database {
  exec(sql: string): unknown;
  prepare(sql: string): { run(...values: unknown[]): unknown };
  close(): unknown;
}

/** A database in a file, where there is one: Node's own from 22.5, or a package installed by hand. */
async function openDatabase(path: string): Promise<Database | undefined> {
  for (const [name, part] of [
    ['node:sqlite', 'DatabaseSync'],
    ['better-sqlite3', 'default'],
  ] as const) {
    try {
      const found = (await import(name)) as Record<string, new (path: string) => Database>;
      const Opened = found[part];
      if (Opened) return new Opened(path);
    } catch {
      // not here
    }
  }
  return undefined;
}

/** An event without rules, in a transaction of its own, on the disk when it returns. */
function inserting(database: Database) {
  database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;');
  database.exec('CREATE TABLE events (n INTEGER PRIMARY KEY, event TEXT NOT NULL)');
  const insert = database.prepare('INSERT INTO events (event) VALUES (?)');
  return (number: number) =>
    new Promise<void>((done) => {
      const who = maker(number);
      const event = { did: 'kept', maker: who, by: who, at: AT.toISOString(), once: `bench ${number}` };
      insert.run(JSON.stringify(event));
      // Others are heard between two of them, as they are where a bot waits for the disk.
      setImmediate(done);
    });
}

async function againstHistory(groups: Groups): Promise<BenchRow[]> {
  const one = (events: number) => async () =>
    (await timed(async () => {
      for (let round = 0; round < PRESSES; round++) await press(groups, idOf(events));
    })) / PRESSES;
  const [shortest] = SIZES;
  const rows: BenchRow[] = [];
  for (const events of SIZES.slice(1)) {
    const compared = await sideBySide(ROUNDS, one(events), one(shortest));
    rows.push({
      what: `a press on a blanket with ${digits(events)} events`,
      ...figuresOf(compared, `one with ${shortest}`),
      aim: events === LONGEST ? 'at most 1.2' : '',
      note: `${MAKERS} makers pledge and give back, one press after the other, each on the disk before it is answered; more events than one blanket may have, to see whether their number matters.`,
    });
  }
  return rows;
}

async function againstDatabase(groups: Groups, folder: string): Promise<BenchRow[]> {
  const database = await openDatabase(join(folder, 'events.db'));
  if (!database) return [];
  try {
    const insert = inserting(database);
    const rows: BenchRow[] = [];
    const rate = (ms: number) => `${digits(STORM / (ms / 1000))} a second`;
    for (const inFlight of IN_FLIGHT) {
      const { ours, reference, ratio, disturbed } = await sideBySide(
        5,
        () => storm(inFlight, () => keeps(groups, idOf(1_000))),
        () => storm(inFlight, insert),
      );
      rows.push({
        what: `presses on one blanket, ${inFlight} in flight`,
        ours: rate(ours.median),
        reference: `SQLite: ${rate(reference.median)}`,
        disturbed,
        ratio: `${digits(1 / ratio)} of the rate`,
        aim: 'at least 1',
        note: 'SQLite with a write-ahead log, synchronous FULL, one transaction for each event, no rules checked: as much is on the disk at each answer. What waits for one blanket is written together here.',
      });
    }
    return rows;
  } finally {
    database.close();
  }
}

async function coldReads(folder: string): Promise<BenchRow> {
  const pieces: number[] = [];
  const whole: number[] = [];
  for (let round = 0; round < 5; round++) {
    const store = await FileStore.open({ folder, stays: true });
    const groups = new Groups(store);
    const piece = await longestPiece(async () => {
      whole.push(await timed(() => groups.named(undefined, `season ${LONGEST}`)));
    });
    pieces.push(piece);
    await store.close();
  }
  return {
    what: `the first look at a blanket with ${digits(LONGEST)} events`,
    ours: `${time(median(pieces))} in one piece`,
    reference: `all of it: ${time(median(whole))}`,
    ratio: digits(median(pieces) / median(whole)),
    aim: 'at most 30 ms in one piece',
    note: 'Read, checked and reckoned in pieces, between which others are heard: the longest by the time of the processor, as a piece takes longer where others want it as well; the middle of five.',
  };
}

export async function bench(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-presses-'));
  try {
    for (const events of SIZES) await saved(folder, events);
    const cold = await coldReads(folder);
    const store = await FileStore.open({ folder, stays: true });
    try {
      const groups = new Groups(store, {
        ...OF_GROUPS,
        events: Infinity,
        eventsOfMaker: Infinity,
        characters: Infinity,
      });
      return [...(await againstHistory(groups)), ...(await againstDatabase(groups, folder)), cold];
    } finally {
      await store.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
