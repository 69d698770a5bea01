/**
 * A stand-in for the platform on 127.0.0.1, for the real discord.js client. It knows nothing of the bot it serves.
 *
 *   const platform = await openStandIn();
 *   const client = new Client({ intents: [], rest: { api: platform.api } });
 *   await client.login(platform.token);
 *
 * Register commands as usual; then be a person:
 *
 *   const user = platform.person('rowan');
 *   const guild = platform.guild('Allotment');
 *   const seen = await platform.slash('stitches row', { size: 12 }, { user, guild });
 *   seen.text; seen.ephemeral; seen.files; seen.firstMs;
 *   await platform.press(seen.message, 'Show working', { user });
 *
 * The person's client is played too: `slash`, `autocomplete`, `press`, `select`, `submitModal`, `messageCommand` and
 * `userCommand` throw `CannotAsk` for what no client would send. What the bot sends is checked against the documented
 * limits (limits.ts) and refused in the platform's own shape. `befall` orders faults, `gateway` drops lines and
 * sessions, `world.calls` lists what was asked, `world.complaints` what the platform takes in silence.
 * A guild opened with `withBot: false` is one where people use the app they installed themselves. Any number of clients and
 * processes may connect: a guild opened with `shard: [1, 4]` is that shard's, and two that identify as the same shard are both
 * told of everything, of which the platform takes the first answer.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Driver, type As, type Given, type GivenFile } from './driver.ts';
import { Gateway } from './gateway.ts';
import { LIMITS } from './limits.ts';
import { Rest } from './rest.ts';
import {
  World,
  type Channel,
  type Guild,
  type Message,
  type Heard,
  type Mishap,
  type Person,
} from './world.ts';

export {
  CannotAsk,
  MANAGER,
  MEMBER,
  textOf,
  type As,
  type Given,
  type GivenFile,
  type Outcome,
} from './driver.ts';
export { LIMITS } from './limits.ts';
export type { Channel, Guild, Heard, Interaction, ScheduledEvent, Message, Mishap, Person } from './world.ts';

export interface StandInOptions {
  readonly token?: string;
  /** ms; moved by tests of expiry. The real clock if not given. */
  readonly now?: () => number;
  /** ms between heartbeats. */
  readonly heartbeat?: number;
  /** How many shards clients are advised to open; one if not given. */
  readonly shards?: number;
  /** ms that must lie between two identifies; nobody is held to it if not given. */
  readonly identifyGap?: number;
  /** How many messages, files and interactions are kept. */
  readonly remember?: number;
  /** 0 for any free port. */
  readonly port?: number;
  /** Handed every request as it came. */
  readonly hears?: (request: Heard) => void;
}

export type StandIn = Awaited<ReturnType<typeof openStandIn>>;

/** Opens the platform. Close it when done. */
export async function openStandIn({
  token = 'MTIzNDU2Nzg5MDEyMzQ1Njc4.stand-in.not-a-secret-of-anybody',
  now = () => Date.now(),
  heartbeat,
  shards,
  identifyGap,
  remember = 50_000,
  port = 0,
  hears,
}: StandInOptions = {}) {
  const world = new World(token, now, remember, hears);
  const server = createServer({ keepAliveTimeout: 60_000 });
  let origin = '';
  const host = () => `127.0.0.1:${origin}`;
  const gateway = new Gateway(world, server, () => `ws://${host()}/gateway`, {
    ...(heartbeat === undefined ? {} : { heartbeat }),
    ...(shards === undefined ? {} : { shards }),
    ...(identifyGap === undefined ? {} : { identifyGap }),
  });
  const rest = new Rest(
    world,
    () => ({ api: `http://${host()}/api`, gateway: `ws://${host()}/gateway`, files: `http://${host()}` }),
    () => ({ shards: gateway.advised, identifiesLeft: LIMITS.identifies - gateway.counts.identifies }),
  );
  server.on('request', (request, response) => void rest.handle(request, response));
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  origin = String((server.address() as AddressInfo).port);

  const upload = ({ name, bytes, type }: GivenFile) => {
    const id = rest.store(bytes, type);
    return {
      id,
      filename: name,
      content_type: type,
      size: bytes.length,
      url: `http://${host()}/attachments/${id}/${name}`,
    };
  };
  const driver = new Driver(world, gateway, (id) => rest.direct(id), upload);

  return {
    world,
    gateway,
    driver,
    token,
    /** What `rest.api` of the client is set to. */
    api: `http://${host()}/api`,
    /** Where files of a server are fetched from. */
    files: `http://${host()}`,

    person(
      name: string,
      { display = null, dms = true }: { display?: string | null; dms?: boolean } = {},
    ): Person {
      const person: Person = { id: world.id(), username: name, global_name: display, bot: false, dms };
      world.people.set(person.id, person);
      return person;
    },
    /** A server with one channel. */
    guild(
      name: string,
      {
        withBot = true,
        locale = 'en-US',
        botPermissions = (1n << 50n) - 1n,
        shard,
      }: {
        withBot?: boolean;
        locale?: string;
        botPermissions?: bigint;
        /** Which shard it is to belong to, of how many. */
        shard?: readonly [number, number];
      } = {},
    ): Guild {
      const guild: Guild = { id: world.id(shard), name, locale, withBot, botPermissions };
      world.guilds.set(guild.id, guild);
      this.channel(guild, 'general');
      if (withBot) gateway.join(guild);
      return guild;
    },
    /** A channel of a server, or a thread of one of its channels. */
    channel(guild: Guild, name: string, type: 0 | 11 = 0, parent?: Channel): Channel {
      const channel: Channel = { id: world.id(), type, name, guild, ...(parent ? { parent } : {}) };
      world.channels.set(channel.id, channel);
      return channel;
    },
    /** A private channel between people, where only an app that one of them installed can be asked. */
    privateChannel(): Channel {
      const channel: Channel = { id: world.id(), type: 3, name: '' };
      world.channels.set(channel.id, channel);
      return channel;
    },
    directChannel: (person: Person) => rest.direct(person.id),

    slash: (path: string, options: Readonly<Record<string, Given>>, as: As) =>
      driver.slash(path, options, as),
    autocomplete: (path: string, options: Readonly<Record<string, Given>>, focused: string, as: As) =>
      driver.autocomplete(path, options, focused, as),
    press: (message: Message, which: string, as: As) => driver.press(message, which, as),
    select: (message: Message, customId: string, values: readonly string[], as: As) =>
      driver.select(message, customId, values, as),
    submitModal: (...given: Parameters<Driver['submitModal']>) => driver.submitModal(...given),
    messageCommand: (name: string, target: Message, as: As) => driver.messageCommand(name, target, as),
    userCommand: (name: string, target: Person, as: As) => driver.userCommand(name, target, as),
    write: (...given: Parameters<Driver['write']>) => driver.write(...given),
    say: (...given: Parameters<Driver['say']>) => driver.say(...given),

    /** Orders a fault for the next requests that fit. */
    befall(mishap: Omit<Mishap, 'times'> & { times?: number }): Mishap {
      const ordered: Mishap = { times: 1, ...mishap };
      world.mishaps.push(ordered);
      return ordered;
    },
    /** Waits until so many shards are connected and identified. */
    async connected(shards = 1, ms = 10_000): Promise<void> {
      const end = performance.now() + ms;
      while (gateway.connected < shards) {
        if (performance.now() > end) throw new Error('the client did not connect');
        await new Promise((resolve) => setTimeout(resolve, 5));
      }
    },
    async close(): Promise<void> {
      await gateway.close();
      server.closeAllConnections();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}
