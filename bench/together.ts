/** A crowd pledging at once on a group blanket, against a plain counter in the same store; and how few edits its board gets. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as z from 'zod';
import type { GroupPlan } from '../src/core/group/events.ts';
import { handIn, pledge } from '../src/core/group/rules.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { Groups } from '../src/projects/groups.ts';
import type { Kind } from '../src/projects/store.ts';
import { Boards } from '../src/rooms/discord/boards.ts';
import { sideBySide, timed, type Seen } from './measure.ts';
import { digits, time, times, type BenchRow } from './table.ts';

/** Presses in one storm, and how many people press at the same moment. */
const PRESSES = 400;
const AT_ONCE = 200;
const ROUNDS = 3;
/** Events of a season that has gone on for months. */
const LONG_SEASON = 1_000;

const counterSchema = z.object({ version: z.literal(1), count: z.int() });
type Counter = z.infer<typeof counterSchema>;
const COUNTERS: Kind<Counter> = {
  folder: 'counters',
  called: 'That document',
  version: 1,
  schema: counterSchema,
  migrations: {},
};

function plan(name: string, quota: number): GroupPlan {
  const side = Math.ceil(Math.sqrt(quota));
  return {
    name,
    kinds: [
      {
        name: 'furrow',
        shape: 'diagonal',
        size: 12,
        stitch: 'hdc',
        runs: [{ colour: 'moss', rows: 24 }],
        quota,
        spares: 0,
      },
    ],
    columns: side,
    rows: side,
    layout: Array.from({ length: side * side }, () => ({ kind: 0, turn: 0 })),
    side: 15,
    tolerance: 3,
    joining: { method: 'whip' },
    border: { rounds: [], corner: 3 },
    yarns: [],
    reserve: 10,
    joinable: 'anyone',
  };
}

/** So many presses, no more than `AT_ONCE` of them under way; each is answered when it is on the disk. */
async function storm(press: (number: number) => Promise<unknown>): Promise<void> {
  let next = 0;
  const one = async () => {
    while (next < PRESSES) await press(next++);
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
}

async function presses(store: FileStore, season: number): Promise<BenchRow> {
  const groups = new Groups(store);
  const at = new Date('2026-03-02T12:00:00Z');
  let blankets = 0;
  const asker = (maker: string) => ({ id: maker, name: maker, manager: false, managed: true });
  const compared = await sideBySide(
    ROUNDS,
    async () => {
      const name = `season ${season} ${blankets++}`;
      const { id } = await groups.open({}, plan(name, PRESSES), {
        by: 'ines',
        name: 'ines',
        at,
        once: 'open',
      });
      if (season > 0) {
        // What came before: pledged and given back again, by sixty makers.
        await groups.happen(id, { by: 'ines', at, once: 'joining' }, () =>
          Array.from({ length: 60 }, (_, n) => ({
            did: 'joined',
            maker: `before${n}`,
            name: `before${n}`,
            perWeek: 2,
            colours: [],
          })),
        );
        await groups.happen(id, { by: 'ines', at, once: 'before' }, () =>
          Array.from({ length: season }, (_, n) => ({
            did: n % 2 === 0 ? 'pledged' : 'released',
            maker: `before${(n >> 1) % 60}`,
            kind: 0,
            motifs: 1,
          })),
        );
      }
      const took = await timed(() =>
        storm((number) => {
          const maker = `maker${number % AT_ONCE}`;
          return groups.happen(id, { by: maker, at, once: `press ${number}` }, (state) =>
            pledge(state, asker(maker), 0, 1),
          );
        }),
      );
      const doc = await groups.read(id);
      const pledged = doc ? groups.stateOf(doc).tally[0]?.pledged : 0;
      if (pledged !== PRESSES) throw new Error(`${pledged ?? 0} pledged of ${PRESSES}`);
      return took;
    },
    async () => {
      const id = `counter${season}.${blankets}`;
      const took = await timed(() =>
        storm(() =>
          store.change<Counter, undefined>(COUNTERS, id, (doc) => ({
            keep: { version: 1, count: (doc?.count ?? 0) + 1 },
            tell: undefined,
          })),
        ),
      );
      return took;
    },
  );
  const rate = ({ median, cpu }: Seen) =>
    `${digits(PRESSES / (median / 1000))} a second (${time(median)} for ${digits(PRESSES)}, processor ${time(cpu)})`;
  return {
    what: season === 0 ? 'pledges on a new blanket' : `pledges on one with ${digits(season)} events before`,
    ours: rate(compared.ours),
    reference: `a plain counter: ${rate(compared.reference)}`,
    ratio: times(compared.ratio),
    disturbed: compared.disturbed,
    note: `${AT_ONCE} people press at the same moment, each again when she is answered; both in the same file store, every answer on the disk before it is given, what waits together written together. A pledge keeps who, what and when, and checks the quotas; the counter keeps one number.`,
  };
}

/** A storm of hand-ins with its board, edited as the platform allows it: a stand-in for its two routes that answers at once. */
async function edits(store: FileStore): Promise<BenchRow> {
  const groups = new Groups(store);
  const at = new Date('2026-03-02T12:00:00Z');
  const { id } = await groups.open({ channel: '1' }, plan('edits', PRESSES), {
    by: 'ines',
    name: 'ines',
    at,
    once: 'open',
  });
  let shownEvents = 0;
  const boards = new Boards({
    rest: {
      post: () => Promise.resolve({ id: '2' }),
      patch: () => Promise.resolve({}),
      put: () => Promise.resolve(),
      delete: () => Promise.resolve({}),
    },
    keeper: {
      read: async () => {
        const doc = await groups.read(id);
        const events = doc?.events.length ?? 0;
        return {
          channel: '1',
          message: doc?.board?.message,
          version: events,
          shown: {
            headline: `${events} events`,
            figures: [],
            lines: [],
            working: [],
            assumptions: [],
            cautions: [],
            files: [],
            actions: [],
            private: false,
          },
        };
      },
      lost: () => Promise.resolve(),
      posted: async (_, message, { channel, version }) => {
        shownEvents = version;
        await groups.noteBoard(id, { channel, message, events: version }, undefined);
      },
      drawn: (_, { version }) => {
        shownEvents = version;
        return Promise.resolve();
      },
    },
    log: { info: () => undefined, warn: () => undefined, error: () => undefined },
    fault: (error) => {
      throw error;
    },
    makers: {
      toPng: () => Promise.reject(new Error('nothing is drawn here')),
      toPdf: () => Promise.reject(new Error('nothing is printed here')),
    },
  });
  boards.changed(id);
  await boards.settled();
  const before = boards.sent;
  const took = await timed(() =>
    storm(async (number) => {
      const maker = `maker${number}`;
      await groups.happen(id, { by: maker, at, once: `press ${number}` }, (state) =>
        handIn(state, { id: maker, name: maker, manager: false, managed: true }, 0, 1, { side: 15 }),
      );
      boards.changed(id);
    }),
  );
  await boards.settled();
  const events = (await groups.read(id))?.events.length ?? 0;
  if (shownEvents !== events) throw new Error(`the board shows ${shownEvents} of ${events} events`);
  const sent = boards.sent - before;
  return {
    what: 'edits of the board in a storm of hand-ins',
    ours: sent,
    reference: `${digits(PRESSES)} hand-ins in ${time(took)}`,
    ratio: `1 edit for ${digits(PRESSES / sent)} presses`,
    aim: 'at most one a second',
    note: 'The board is read anew for each edit, so the last edit shows everything; that is checked here.',
  };
}

export async function bench(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-together-'));
  const store = await FileStore.open({ folder, stays: true });
  // Boards keep no process alive; this one waits for them.
  const awake = setInterval(() => undefined, 1_000);
  try {
    return [await presses(store, 0), await presses(store, LONG_SEASON), await edits(store)];
  } finally {
    clearInterval(awake);
    await store.close();
    await rm(folder, { recursive: true });
  }
}
