/**
 * Several processes of the program on one database and one platform, while people press: processes are killed, the database is killed, held
 * still, cut off, exchanged. Account is kept of what people were told and of what is there in the end.
 */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { registry } from '../../commands/index.ts';
import { Groups } from '../../src/projects/groups.ts';
import { TIMES, type Times } from '../../src/projects/postgres/connections.ts';
import { PostgresStore } from '../../src/projects/postgres/store.ts';
import { MAKERS, Projects } from '../../src/projects/projects.ts';
import { PACE } from '../../src/rooms/discord/rate.ts';
import { openDiscordRoom } from '../../src/rooms/discord/run.ts';
import { Line } from '../postgres/line.ts';
import { Server } from '../postgres/server.ts';
import { startBot, type Bot } from '../rooms/discord/process.ts';
import {
  openStandIn,
  textOf,
  type As,
  type Interaction,
  type Message,
  type Outcome,
  type StandIn,
} from '../rooms/discord/stand-in/index.ts';

export interface ManyReport {
  readonly processes: number;
  /** How often something was broken. */
  readonly times: number;
  readonly presses: number;
  readonly acknowledged: number;
  /** Told in words that nothing was changed, or that it is not known. */
  readonly refused: number;
  readonly unknown: number;
  /** Without any answer, as the process was killed or the platform waited no longer; pressed again. */
  readonly cut: number;
  /** Of those that were not acknowledged, how many had been saved all the same; pressed again they are told so, and not counted again. */
  readonly savedUntold: number;
  readonly lost: number;
  readonly twice: number;
  /** ms until everybody was answered again, each time. */
  readonly back: readonly number[];
  readonly broken: readonly string[];
}

const MOTIF = 'moss';
/** Presses of one maker in one life of a process: fewer than she may make at once, three left over. */
const IN_A_LIFE = PACE.burst - 3;
/** ms between an answer and her next press. */
const BREATH = 15;
/** The same where no process is started anew: within her pace for as long as it takes. */
const STEADY = 1_050;
/** What an answer says that is none, as it should. */
const REFUSED = /could not be (saved|read)|just being restarted|closing down/;
const UNKNOWN = /is not known/;

export const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** What is served where: each process its own part of the shards, or every one all of them. */
export type Division = 'parted' | 'overlapping';

/** Processes of the program with what they share. */
export class Fleet {
  readonly bots: Bot[] = [];
  private readonly folder = mkdtempSync(join(tmpdir(), 'many-'));

  private constructor(
    readonly platform: StandIn,
    readonly processes: number,
    private readonly url: string,
    private readonly division: Division,
  ) {}

  static async open(processes: number, url: string, division: Division = 'parted'): Promise<Fleet> {
    const fleet = new Fleet(await openStandIn(), processes, url, division);
    await Promise.all(Array.from({ length: processes }, (_, index) => fleet.start(index)));
    return fleet;
  }

  /** Starts one of them, on the part that is its. */
  async start(index: number): Promise<void> {
    const parted = this.division === 'parted';
    this.bots[index] = await startBot(this.platform, this.folder, {
      DATABASE_URL: this.url,
      SHARDS: parted ? String(index) : '0',
      SHARD_COUNT: parted ? String(this.processes) : '1',
    });
  }

  async kill(index: number): Promise<void> {
    await this.bots[index]?.end('SIGKILL');
  }

  /** Ends them in order; what their logs held that no log may hold. */
  async close(): Promise<string[]> {
    const secrets = [this.platform.token, new URL(this.url).password, ...this.platform.world.tokens.keys()];
    const ends = await Promise.all(this.bots.map((bot) => bot.end('SIGTERM')));
    await this.platform.close();
    const leaks = this.bots.flatMap((bot) =>
      bot
        .output()
        .split('\n')
        .filter((line) => secrets.some((secret) => line.includes(secret)))
        .map(() => 'a line of a log with a secret'),
    );
    const faults = this.bots.flatMap((bot) =>
      bot
        .output()
        .split('\n')
        .filter((line) => line.includes('"fault"')),
    );
    const odd = ends.filter(({ code }) => code !== 0).map(({ code }) => `left with ${String(code)}`);
    return [...leaks, ...faults, ...odd];
  }

  /** A server of the platform for each process, so that each has somebody to answer. */
  guild(index: number) {
    const shard =
      this.division === 'parted' ? ([index % this.processes, this.processes] as const) : undefined;
    return this.platform.guild(`Allotment ${index}`, shard === undefined ? {} : { shard });
  }
}

interface Presser {
  readonly as: As;
  message: Message;
  /** The last row she was told is done. */
  row: number;
  /** How often she was told that one is. */
  told: number;
}

interface Round {
  over: boolean;
  /** Presses of each at most. */
  readonly most: number;
  readonly breath: number;
}

class Pressing {
  readonly count = {
    presses: 0,
    acknowledged: 0,
    refused: 0,
    unknown: 0,
    cut: 0,
    savedUntold: 0,
    lost: 0,
    twice: 0,
  };
  private lastSaid = 'nothing';
  /** What was not answered while she looked; it may have been since. */
  private readonly unanswered: Interaction[] = [];
  readonly back: number[] = [];
  readonly broken: string[] = [];
  readonly pressers: Presser[] = [];

  constructor(private readonly fleet: Fleet) {}

  /** So many makers, spread over the processes, each with a motif and one row done. */
  async begin(people: number): Promise<void> {
    const { platform, processes } = this.fleet;
    const guilds = Array.from({ length: processes }, (_, index) => this.fleet.guild(index));
    await Promise.all(
      Array.from({ length: people }, async (_, index) => {
        const as = { user: platform.person(`maker-${index}`), guild: guilds[index % processes]! };
        await platform.slash('motif define', { name: MOTIF, shape: 'diagonal', size: 400 }, as);
        const first = await platform.slash('progress next', { motif: MOTIF }, as);
        const row = first.message && rowIn(first.message);
        if (!first.message || row === undefined) throw new Error(`no first row: ${first.kind} ${first.text}`);
        this.pressers.push({ as, message: first.message, row, told: 0 });
      }),
    );
  }

  /** All press, until the round is over. */
  async all(round: Round): Promise<void> {
    await Promise.all(this.pressers.map((presser) => this.press(presser, round)));
  }

  private async press(presser: Presser, round: Round): Promise<void> {
    const { count } = this;
    for (let pressed = 0; !round.over && pressed < round.most; pressed++) {
      this.look(presser);
      count.presses += 1;
      const seen = await this.fleet.platform.press(
        presser.message,
        `Row ${presser.row + 1} done`,
        presser.as,
      );
      const row = seen.message && rowIn(seen.message);
      this.lastSaid = `${seen.kind}: ${seen.text}`;
      if (row !== undefined && row > presser.row) {
        if (seen.message) presser.message = seen.message;
        this.acknowledge(presser, row);
      } else if (REFUSED.test(seen.text)) count.refused += 1;
      else if (UNKNOWN.test(seen.text)) count.unknown += 1;
      else if (seen.kind === 'silence' || seen.kind === 'nothing' || row !== undefined)
        this.unanswered.push(seen.interaction);
      else this.broken.push(`${seen.kind}: ${seen.text}`);
      await wait(round.breath);
    }
  }

  /** An answer that came after she had stopped waiting stands in the message all the same. */
  private look(presser: Presser): void {
    const row = rowIn(presser.message);
    if (row !== undefined && row > presser.row) this.acknowledge(presser, row);
  }

  private acknowledge(presser: Presser, row: number): void {
    this.count.acknowledged += 1;
    presser.told += 1;
    if (row !== presser.row + 1) this.count.twice += 1;
    presser.row = row;
  }

  /** Compares what everybody was told with what is kept. `final`: nothing is under way any more, and all was acknowledged. */
  async compare(url: string, final: boolean): Promise<void> {
    const store = await PostgresStore.open({ url });
    try {
      for (const presser of this.pressers) {
        this.look(presser);
        const { as, row } = presser;
        const doc = await store.read(MAKERS, as.user.id);
        const kept = doc?.progress.find(({ motif }) => motif === MOTIF)?.row ?? 0;
        if (kept < row) this.count.lost += 1;
        if (kept > row && !final) this.count.savedUntold += 1;
        if (kept > row + 1 || (final && kept > row)) this.count.twice += 1;
      }
    } finally {
      await store.close();
    }
  }

  /** Until everybody was told of a row once more; notes how many ms after a moment that was. */
  async allAnswered(since: number): Promise<void> {
    const before = new Map(this.pressers.map((presser) => [presser, presser.told]));
    await Promise.all(
      this.pressers.map(async (presser) => {
        while (presser.told === before.get(presser)) {
          await this.press(presser, { over: false, most: 1, breath: STEADY });
          if (performance.now() - since > 60_000)
            throw new Error(`${presser.as.user.username} is not answered any more: ${this.lastSaid}`);
        }
      }),
    );
    this.back.push(performance.now() - since - STEADY);
  }

  report(times: number, more: readonly string[]): ManyReport {
    const { count, back, broken, fleet } = this;
    for (const { followUps } of this.unanswered) {
      const said = followUps.map(textOf).join();
      if (REFUSED.test(said)) count.refused += 1;
      else if (UNKNOWN.test(said)) count.unknown += 1;
      else count.cut += 1;
    }
    for (const { callbacks } of fleet.platform.world.interactions.values())
      if (callbacks > 1) count.twice += 1;
    return { processes: fleet.processes, times, ...count, back, broken: [...broken, ...more] };
  }
}

/** The row that a message says is done: its button is for the one after. */
function rowIn(message: Message): number | undefined {
  const labels = message.components.flatMap(({ components = [] }) =>
    components.map(({ label }) => label ?? ''),
  );
  const next = labels
    .map((label) => /^Row (\d+) done$/.exec(label)?.[1])
    .find((found) => found !== undefined);
  return next === undefined ? undefined : Number(next) - 1;
}

export const TROUBLES = {
  'killed and started again': async ({ server }) => {
    await server().kill();
    await wait(500);
    await server().start();
  },
  'ended and started again': async ({ server }) => {
    await server().stop();
    await server().start();
  },
  'its connections cut': async ({ line }) => {
    for (let cuts = 0; cuts < 5; cuts++) {
      line.cut();
      await wait(150);
    }
  },
  'out of reach for twelve seconds': async ({ line }) => {
    line.close();
    await wait(12_000);
    line.reopen();
  },
  'silent for two seconds': async ({ line }) => {
    line.hold(true);
    await wait(2_000);
    line.hold(false);
  },
  'read-only for three seconds': async ({ server }) => {
    await server().ask('alter system set default_transaction_read_only = on');
    await server().ask('select pg_reload_conf()');
    await wait(3_000);
    await server().ask('alter system reset default_transaction_read_only');
    await server().ask('select pg_reload_conf()');
  },
  'another server in its place, with what it had': async ({ line, server, become }) => {
    // What it still does after nobody hears of it any more is nothing that anybody was told.
    line.close();
    await server().kill();
    const next = await server().copy();
    become(next);
    line.leadTo(next.port);
    line.reopen();
  },
} satisfies Record<string, Befalls>;
type Befalls = (given: { server: () => Server; line: Line; become: (next: Server) => void }) => Promise<void>;
export type Trouble = keyof typeof TROUBLES;
/** Each of them so many times, in turn. */
export const blowsOf = (times: number): Trouble[] =>
  Array.from({ length: times }, () => Object.keys(TROUBLES) as Trouble[]).flat();

/** What befalls: a process, which is killed and started again, or the database. */
export type Blow = 'a process killed' | Trouble | Befalls;

/** One blow after the other while people press, on a database of its own, which is thrown away, where no address is given. */
export async function strike(
  {
    processes,
    people,
    blows,
    url,
    own,
  }: { processes: number; people: number; blows: readonly Blow[]; url?: string; own?: Server },
  within: () => number,
): Promise<ManyReport> {
  const servers = url === undefined ? [own ?? (await Server.begin({ sure: true }))] : [];
  const server = () => servers.at(-1)!;
  const address = () => url ?? server().url();
  const line = await Line.to(Number(new URL(address()).port));
  const fleet = await Fleet.open(processes, line.through(address()));
  const pressing = new Pressing(fleet);
  const round = { over: false, most: 0, breath: 0 };
  /** Lets it happen while all press; ms until everybody is answered again after it. */
  const during = async (
    pace: { most: number; breath: number },
    before: number,
    what: () => Promise<void>,
  ) => {
    Object.assign(round, pace, { over: false });
    const all = pressing.all(round);
    all.catch(() => undefined);
    await wait(before);
    await what();
    round.over = true;
    return all;
  };
  try {
    await pressing.begin(people);
    for (const blow of blows) {
      let began = 0;
      if (blow === 'a process killed') {
        const index = Math.floor(within() * processes);
        await during({ most: IN_A_LIFE, breath: BREATH }, 20 + 400 * within(), async () => {
          await fleet.kill(index);
          // Nobody waits long for what was killed.
          fleet.platform.driver.patience = { first: 150, settled: 150 };
        });
        await pressing.compare(address(), false);
        fleet.platform.driver.patience = { first: 3_000, settled: 15_000 };
        began = performance.now();
        await fleet.start(index);
      } else
        await during({ most: Infinity, breath: STEADY }, 500 + 1_000 * within(), async () => {
          const befalls = typeof blow === 'string' ? TROUBLES[blow] : blow;
          await befalls({ server, line, become: (next) => void servers.push(next) });
          began = performance.now();
        });
      await pressing.allAnswered(began);
      await pressing.compare(address(), true);
    }
    return pressing.report(blows.length, await fleet.close());
  } finally {
    round.over = true;
    for (const bot of fleet.bots) bot.child.kill('SIGKILL');
    await line.end();
    for (const one of servers) await one.throwAway();
  }
}

export interface CrowdReport {
  readonly pressed: number;
  /** Told that they hold one; told kindly that there is none left; anything else that was said. */
  readonly got: number;
  readonly kindly: number;
  readonly other: readonly string[];
  /** Told in words that it could not be read or saved; not answered in the platform's three seconds. */
  readonly refused: number;
  readonly late: number;
  /** What the blanket says in the end. */
  readonly pledged: number;
  /** Told that they hold one and do not; counted more than once. */
  readonly lost: number;
  readonly twice: number;
  /** Its boards, what the one shows, and how often it was edited while they pressed. */
  readonly boards: number;
  readonly shows: string;
  readonly edits: number;
  /** Refusals of the platform: of a second answer (40060); others, but for what came too late (10062). */
  readonly second: number;
  readonly refusals: number;
}

/** Everybody presses the button of one board, so many at once. */
export async function crowd(
  platform: StandIn,
  {
    motifs,
    people,
    url,
    side,
    atOnce = people,
  }: { motifs: number; people: number; url: string; side: number; atOnce?: number },
): Promise<CrowdReport> {
  const guild = platform.guild('Allotment');
  const channel = [...platform.world.channels.values()].find((one) => one.guild === guild);
  const ines = { user: platform.person('ines'), guild };
  const name = `throw ${people}`;
  const furrow = { name: 'furrow', shape: 'diagonal', size: 12, gauge: '13x10' };
  await platform.slash('motif define', furrow, ines);
  const form = await platform.slash('blanket start', { name, columns: side, rows: motifs / side }, ines);
  await platform.submitModal(form, { kinds: 'furrow' }, ines);
  await platform.slash('together open', { blanket: name, closes: '2031-05-31' }, ines);
  const boards = () =>
    [...platform.world.messages.values()].filter(
      (message) =>
        !message.deleted &&
        message.channel === channel &&
        message.only === undefined &&
        message.components.some((row) => row.components?.some(({ label }) => label === 'What I hold')),
    );
  await until(() => boards().length > 0);
  const [board] = boards();
  if (board === undefined) throw new Error('no board');
  const before = board.edits;
  const seen: (Outcome & { readonly who: string })[] = [];
  let next = 0;
  const some = async () => {
    while (next < people) {
      const user = platform.person(`presser ${next++}`);
      seen.push({ ...(await platform.press(board, 'Pledge one', { user, guild })), who: user.id });
    }
  };
  await Promise.all(Array.from({ length: atOnce }, some));
  await until(() => textOf(board).includes(`${motifs} pledged, 0 open`));
  const got = seen.filter(({ text }) => /you hold 1 pledged motif of furrow/i.test(text));
  const kindly = seen.filter(({ text }) =>
    /Every furrow is spoken for\.|There is nothing to pledge now\./.test(text),
  );
  const refused = seen.filter(({ text }) => REFUSED.test(text));
  const late = seen.filter(({ kind }) => kind === 'silence');
  const store = await PostgresStore.open({ url });
  const { state } = (await new Groups(store).named(guild.id, name)) ?? {};
  await store.close();
  const held = (who: string) => state?.pledges.get(who)?.[0];
  const failures = [...platform.world.interactions.values()].flatMap((one) => one.failures);
  return {
    pressed: people,
    got: got.length,
    kindly: kindly.length,
    other: seen
      .filter((one) => ![got, kindly, refused, late].some((all) => all.includes(one)))
      .map(({ kind, text }) => `${kind}: ${text}`),
    refused: refused.length,
    late: late.length,
    pledged: state?.tally[0]?.pledged ?? -1,
    lost: got.filter(({ who }) => (held(who) ?? 0) < 1).length,
    twice: seen.filter(({ who }) => (held(who) ?? 0) > 1).length,
    boards: boards().length,
    shows: textOf(board),
    edits: board.edits - before,
    second: failures.filter(({ code }) => code === 40060).length,
    refusals: failures.filter(({ code }) => code !== 40060 && code !== 10062).length,
  };
}

/** The rooms of several processes, all in this one, each with a store and a client of its own; all of them serve the first shard. */
export async function openRooms(
  platform: StandIn,
  {
    rooms,
    url,
    urls = [],
    times = TIMES,
    now,
  }: { rooms: number; url: string; urls?: readonly string[]; times?: Times; now?: () => Date },
): Promise<{ readonly faults: readonly unknown[]; close(): Promise<void> }> {
  const faults: unknown[] = [];
  const nothing = () => undefined;
  const opened = await Promise.all(
    Array.from({ length: rooms }, async (_, index) => {
      const store = await PostgresStore.open({ url: urls[index] ?? url, connections: 3, times });
      const room = await openDiscordRoom({
        registry,
        projects: new Projects(store),
        token: platform.token,
        api: platform.api,
        shards: { mine: [0], all: 1 },
        log: { info: nothing, warn: nothing, error: nothing },
        fault: (error) => `fault-${faults.push(error)}`,
        boardGap: 250,
        ...(now ? { now } : {}),
      });
      return { room, store };
    }),
  );
  return {
    faults,
    close: async () => {
      for (const { room, store } of opened) {
        await room.close();
        await store.close();
      }
    },
  };
}

/** Until it is so, for twenty seconds. */
async function until(done: () => boolean): Promise<void> {
  for (let tries = 0; tries < 400 && !done(); tries++) await wait(50);
}
