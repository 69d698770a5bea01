/**
 * Opens the room with Discord and keeps it open.
 *
 * Large installations: one process serves all shards, as many as the platform advises, or some of them where others serve the rest
 * (`SHARDS`). A data folder belongs to one process; several share a database. No answer keeps anything of a server in memory; what
 * only one process may do at a time it claims first (`claims.ts`).
 */
import { setTimeout as wait } from 'node:timers/promises';
import { Client, Events, OAuth2Scopes, Options, PermissionFlagsBits, type ClientOptions } from 'discord.js';
import type { Registry } from '../../chat/registry.ts';
import { Claims } from '../../projects/claims.ts';
import type { Projects } from '../../projects/projects.ts';
import { loadDays } from '../../asked/days.ts';
import { toPdf } from '../../paper/to-pdf.ts';
import { toPng } from '../../pictures/png.ts';
import type { Makers } from '../../chat/made-file.ts';
import { Boards } from './boards.ts';
import { menusOf } from './context-menu.ts';
import { declaration, WORK_THIS_OUT } from './declare.ts';
import { GroupBoards } from './group-boards.ts';
import { heardIn, HEARING, replyTo } from './heard.ts';
import { inTongues } from './localise.ts';
import { PartPosts } from './part-posts.ts';
import { serves, shardOptions, type Shards } from './shards.ts';
import { showPhoto } from './photos.ts';
import { refusalFacts, type Log } from './platform.ts';
import type { Pace } from './rate.ts';
import { isNothing, register } from './register.ts';
import { DiscordRoom } from './room.ts';
import { Surroundings } from './surroundings.ts';
import { tell } from './telling.ts';
import { watchThreads } from './threads.ts';
import { BOARD_PERMISSIONS } from './typed.ts';

export interface DiscordParts {
  readonly registry: Registry;
  readonly projects: Projects;
  readonly token: string;
  readonly log: Log;
  /** Notes a fault of ours with its error; returns the id to show. */
  readonly fault: (error: unknown) => string;
  /** Writes that wait for the disk, for the health line. */
  readonly queue?: () => number;
  /** Set: messages that mention the bot, and direct ones, are answered too. */
  readonly hears?: 'mentions' | undefined;
  /** Which shards are served here, where others are another process's. */
  readonly shards?: Shards | undefined;
  /** Aborted when the room is to close while it is still being opened. */
  readonly stop?: AbortSignal;

  // What stands in for the platform in tests.
  readonly api?: string;
  readonly attachmentHosts?: readonly string[];
  readonly pace?: Pace;
  readonly deferAfter?: number;
  /** ms between two edits of one board. */
  readonly boardGap?: number;
  readonly now?: () => Date;
  readonly makers?: Makers;
}

export interface OpenRoom {
  /** The address that invites the bot to a server, asking for what it uses and nothing more. */
  readonly invite: string;
  /** Resolves, with the reason, when the platform will not have this bot any more: it must be started anew, or mended. */
  readonly ended: Promise<string>;
  readonly room: DiscordRoom;
  readonly boards: Boards;
  /** Takes nothing more, lets running answers out, and leaves. */
  close(): Promise<void>;
}

const PERMISSIONS = [...BOARD_PERMISSIONS, PermissionFlagsBits.SendMessages];
const HEALTH_MS = 5 * 60_000;
const REGISTER_AGAIN_MS = 60_000;
const PATIENCE_MS = 5_000;
const LONGEST_WAIT_MS = 60_000;
const SAID_AGAIN_MS = 60_000;

const clientOptions = ({ api, hears, shards }: DiscordParts): ClientOptions => ({
  // Interactions come to every bot; no intent is asked for beside what hears messages to the bot, where that is wished.
  intents: hears === undefined ? [] : HEARING,
  ...shardOptions(shards),
  allowedMentions: { parse: [] },
  // What is sent has the platform's own names already.
  jsonTransformer: (body) => body,
  // People and messages are read from each interaction; keeping them would grow with everybody who ever asked.
  makeCache: Options.cacheWithLimits({
    ...Options.DefaultMakeCacheSettings,
    MessageManager: 0,
    GuildMemberManager: { maxSize: 0, keepOverLimit: isSelf },
    UserManager: { maxSize: 0, keepOverLimit: isSelf },
  }),
  ...(api === undefined ? {} : { rest: { api } }),
});

const isSelf = ({ id, client }: { id: string; client: Client }) => id === client.user?.id;

/** No line of a log can mend these: a wrong token, a wrong application. */
const hopeless = (error: unknown) =>
  ['TokenInvalid', 'DisallowedIntents', 'InvalidIntents'].includes(
    String((error as { code?: unknown }).code),
  );

/** Logs in, again and again while the platform is out of reach. Rejects where waiting does not help. */
async function login(parts: DiscordParts): Promise<Client<true>> {
  for (let tries = 0; ; tries += 1) {
    const client = new Client(clientOptions(parts));
    watch(client, parts);
    try {
      const ready = new Promise<Client<true>>((done) => client.once(Events.ClientReady, done));
      await client.login(parts.token);
      return await ready;
    } catch (error) {
      await client.destroy();
      if (hopeless(error) || parts.stop?.aborted) throw error;
      const pause = Math.min(1_000 * 2 ** tries, LONGEST_WAIT_MS);
      parts.log.warn({ ...refusalFacts(error), pause }, 'the platform is out of reach');
      await wait(pause, undefined, parts.stop ? { signal: parts.stop } : {});
    }
  }
}

/** True at most once a minute for each name: a line that is tried twice a second must not fill the log. */
export function seldom(now: () => number, every = SAID_AGAIN_MS): (name: string) => boolean {
  const last = new Map<string, number>();
  return (name) => {
    const said = last.get(name);
    if (said !== undefined && now() - said < every) return false;
    last.set(name, now());
    return true;
  };
}

function watch(client: Client, { log }: DiscordParts): void {
  const again = seldom(() => performance.now());
  // Without a listener an error of the client's would end the process.
  client.on(Events.Error, (error) => log.error(refusalFacts(error), 'an error of the client'));
  client.on(Events.ShardError, (error, shard) => {
    if (again(`broke ${shard}`)) log.warn({ ...refusalFacts(error), shard }, 'a line broke');
  });
  client.on(Events.ShardReconnecting, (shard) => {
    if (again(`connecting ${shard}`)) log.info({ shard }, 'connecting again');
  });
  client.on(Events.ShardResume, (shard, replayed) => log.info({ shard, replayed }, 'connected again'));
}

/** Opens the room. Rejects with a sentence in words where the token is not taken. */
export async function openDiscordRoom(parts: DiscordParts): Promise<OpenRoom> {
  const { registry, projects, log, fault, pace, deferAfter, attachmentHosts, now } = parts;
  const makers = parts.makers ?? { toPng, toPdf };
  await loadDays();
  const declared = [...registry.commands.map(declaration), WORK_THIS_OUT, ...menusOf(registry)].map((one) =>
    inTongues(one),
  );
  const client = await login(parts).catch((error: unknown) => {
    if (hopeless(error)) throw new Error('The platform does not take this DISCORD_TOKEN.');
    throw error;
  });

  const keeper = new GroupBoards(registry, projects, now);
  const around = new Surroundings({ rest: client.rest, projects, log, now });
  const posts = new PartPosts({
    rest: client.rest,
    registry,
    projects,
    log,
    fault,
    now: now ?? (() => new Date()),
    mine: ({ server }) => serves(parts.shards, server),
    wait: (ms, signal) => wait(ms, undefined, { signal, ref: false }).catch(() => undefined),
  });
  const boards = new Boards({
    rest: client.rest,
    keeper,
    tend: (board) => around.tend(board),
    claims: projects.store.inCommon === true ? new Claims(projects.store) : undefined,
    log,
    fault,
    makers,
    ...(parts.boardGap === undefined ? {} : { gap: parts.boardGap }),
  });
  let ids: ReadonlyMap<string, string> = new Map();
  const room = new DiscordRoom({
    commandId: (name) => ids.get(name),
    registry,
    projects,
    log,
    fault,
    makers,
    pace,
    deferAfter,
    attachmentHosts,
    now,
    boardChanged: (board) => boards.changed(board),
    alongChanged: (along) => posts.changed(along),
    tell: (tellings) => tell(tellings, now?.() ?? new Date(), { rest: client.rest, projects, log }),
    showPhoto: (photo, context) => showPhoto(photo, context, { rest: client.rest, projects, log, fault }),
    inThread: watchThreads(client),
  });
  client.on(Events.InteractionCreate, (interaction) => void room.take(interaction));
  if (parts.hears !== undefined) {
    // The client keeps no channels here, and hands on no message of a channel that it does not know.
    client.on(Events.Raw, (packet: Parameters<typeof heardIn>[0]) => {
      const heard = heardIn(packet, client.user.id);
      if (heard) void room.hear(heard, (message) => replyTo(client.rest, heard, message));
    });
  }

  const closed = new AbortController();
  const ended = new Promise<string>((done) => {
    client.on(Events.ShardDisconnect, ({ code }) => {
      if (!closed.signal.aborted) done(`the platform closed the line with ${code}`);
    });
    client.on(Events.Invalidated, () => done('the platform ended the session'));
  });

  const registerNow = async () => {
    try {
      const changes = await register(client.rest, client.application.id, declared, (known) => {
        ids = known;
      });
      if (isNothing(changes))
        log.info({ commands: declared.length }, 'the commands are registered as they are');
      else log.info(changes, 'commands registered');
    } catch (error) {
      // What is registered already goes on being answered meanwhile.
      log.warn(refusalFacts(error), 'the commands were not registered; tried again in a minute');
      void wait(REGISTER_AGAIN_MS, undefined, { ref: false, signal: closed.signal }).then(
        registerNow,
        () => undefined,
      );
    }
  };
  await registerNow();

  const showBoards = async () => {
    for (const board of await projects.groups.unshown((server) => serves(parts.shards, server))) {
      if (closed.signal.aborted) return;
      boards.changed(board);
      await boards.settled();
    }
  };
  void showBoards().catch(fault);
  posts.start();

  const health = setInterval(() => {
    const facts = {
      ...room.metrics.read(),
      servers: client.guilds.cache.size,
      ping: Math.round(client.ws.ping),
      queue: parts.queue?.() ?? 0,
      // Documents that were asked for and cannot be read: whoever runs this should look at them.
      unreadable: projects.store.unreadable,
      boards: boards.sent,
      parts: posts.sent,
      memory: Math.round(process.memoryUsage.rss() / 1024 / 1024),
    };
    log.info(facts, 'health');
  }, HEALTH_MS);
  health.unref();

  const invite = client.generateInvite({
    scopes: [OAuth2Scopes.Bot, OAuth2Scopes.ApplicationsCommands],
    permissions:
      parts.hears === undefined ? PERMISSIONS : [...PERMISSIONS, PermissionFlagsBits.ReadMessageHistory],
  });
  log.info({ invite, servers: client.guilds.cache.size }, 'the room is open');
  return {
    invite,
    ended,
    room,
    boards,
    close: async () => {
      closed.abort();
      clearInterval(health);
      await room.close(PATIENCE_MS);
      await posts.close();
      await boards.close();
      // Leaving looks like a broken line for a moment.
      client.removeAllListeners(Events.ShardReconnecting);
      await client.destroy();
      log.info(room.metrics.read(), 'the room is closed');
    },
  };
}
