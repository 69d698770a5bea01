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
import { Registrations } from '../../projects/registrations.ts';
import { Spent } from '../../projects/spent.ts';
import { loadDays } from '../../asked/days.ts';
import { toPdf } from '../../paper/to-pdf.ts';
import { toPng } from '../../pictures/png.ts';
import type { Makers } from '../../chat/made-file.ts';
import { Boards } from './boards.ts';
import { respondBy } from './callbacks.ts';
import { Commands } from './commands.ts';
import { menusOf } from './context-menu.ts';
import { declaration, WORK_THIS_OUT } from './declare.ts';
import { GroupBoards } from './group-boards.ts';
import { sayHealth, shardsOf } from './health.ts';
import { heardIn, HEARING, replyTo } from './heard.ts';
import { inTongues } from './localise.ts';
import { PartPosts } from './part-posts.ts';
import { serves, shardOptions, type Shards } from './shards.ts';
import { hidePhoto, showPhoto } from './photos.ts';
import { refusalFacts, type Log } from './platform.ts';
import type { Pace } from './rate.ts';
import { openLines, type Lines } from './requests.ts';
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
const PATIENCE_MS = 5_000;
const LONGEST_WAIT_MS = 60_000;
const SAID_AGAIN_MS = 60_000;

const clientOptions = ({ api, hears, shards }: DiscordParts, { makeRequest }: Lines): ClientOptions => ({
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
  rest: { makeRequest, ...(api === undefined ? {} : { api }) },
});

const isSelf = ({ id, client }: { id: string; client: Client }) => id === client.user?.id;

/** No line of a log can mend these: a wrong token, a wrong application. */
const hopeless = (error: unknown) =>
  ['TokenInvalid', 'DisallowedIntents', 'InvalidIntents'].includes(
    String((error as { code?: unknown }).code),
  );

/** Logs in, again and again while the platform is out of reach. Rejects where waiting does not help. */
async function login(parts: DiscordParts, lines: Lines): Promise<Client<true>> {
  for (let tries = 0; ; tries += 1) {
    const client = new Client(clientOptions(parts, lines));
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

/** Logs in. Rejects with a sentence in words where the token is not taken. */
async function enter(parts: DiscordParts, lines: Lines): Promise<Client<true>> {
  await loadDays();
  return login(parts, lines).catch(async (error: unknown) => {
    await lines.close();
    if (hopeless(error)) throw new Error('The platform does not take this DISCORD_TOKEN.');
    throw error;
  });
}

/** What is declared to the platform: the questions, the menus, in every language that is known here. */
const declaredOf = (registry: Registry) =>
  [...registry.commands.map(declaration), WORK_THIS_OUT, ...menusOf(registry)].map((one) => inTongues(one));

/** What only one of several processes may do at a time; none where this is the only one. */
const claimsOf = ({ store }: Projects) => (store.inCommon === true ? new Claims(store) : undefined);

/** What posts by itself: boards, and the parts of make-alongs. */
function openPosts(parts: DiscordParts, { rest }: Client<true>, claims: Claims | undefined) {
  const { registry, projects, log, fault, now, shards } = parts;
  const around = new Surroundings({ rest, projects, log, now });
  const boards = new Boards({
    rest,
    keeper: new GroupBoards(registry, projects, now),
    tend: (board) => around.tend(board),
    claims,
    log,
    fault,
    makers: makersOf(parts),
    ...(parts.boardGap === undefined ? {} : { gap: parts.boardGap }),
  });
  const posts = new PartPosts({
    rest,
    registry,
    projects,
    log,
    fault,
    now: now ?? (() => new Date()),
    mine: ({ server }) => serves(shards, server),
    wait: (ms, signal) => wait(ms, undefined, { signal, ref: false }).catch(() => undefined),
  });
  return { boards, posts };
}

const makersOf = ({ makers }: DiscordParts): Makers => makers ?? { toPng, toPdf };

/** The room itself, which hears of everything that the client hears of. */
function openRoom(
  parts: DiscordParts,
  client: Client<true>,
  {
    boards,
    posts,
    commands,
    claims,
  }: { boards: Boards; posts: PartPosts; commands: Commands; claims: Claims | undefined },
): DiscordRoom {
  const { registry, projects, log, fault, pace, deferAfter, attachmentHosts, now } = parts;
  const { rest } = client;
  const room = new DiscordRoom({
    commandId: (name) => commands.id(name),
    registry,
    projects,
    log,
    fault,
    makers: makersOf(parts),
    pace,
    others: projects.store.inCommon === true ? new Spent(projects.store) : undefined,
    deferAfter,
    respond: respondBy(rest),
    attachmentHosts,
    now,
    boardChanged: (board) => boards.changed(board),
    alongChanged: (along) => posts.changed(along),
    tell: (tellings) => tell(tellings, now?.() ?? new Date(), { rest, projects, log, claims }),
    showPhoto: (photo, context) => showPhoto(photo, context, { rest, projects, log, fault }),
    hidePhoto: (photo, context) => hidePhoto(photo, context, { rest, projects, log, fault }),
    inThread: watchThreads(client),
  });
  client.on(Events.InteractionCreate, (interaction) => void room.take(interaction));
  if (parts.hears !== undefined) {
    // The client keeps no channels here, and hands on no message of a channel that it does not know.
    client.on(Events.Raw, (packet: Parameters<typeof heardIn>[0]) => {
      const heard = heardIn(packet, client.user.id);
      if (heard) void room.hear(heard, (message) => replyTo(rest, heard, message));
    });
  }
  return room;
}

/** Resolves, with the reason, when the platform will not have this bot any more; not while it is being closed. */
const endOf = (client: Client, closed: AbortSignal) =>
  new Promise<string>((done) => {
    client.on(Events.ShardDisconnect, ({ code }) => {
      if (!closed.aborted) done(`the platform closed the line with ${code}`);
    });
    client.on(Events.Invalidated, () => done('the platform ended the session'));
  });

/** Shows what changed while nobody looked, one board after the other. */
async function showUnshown({ projects, shards }: DiscordParts, boards: Boards, closed: AbortSignal) {
  for (const board of await projects.groups.unshown((server) => serves(shards, server))) {
    if (closed.aborted) return;
    boards.changed(board);
    await boards.settled();
  }
}

const inviteTo = (client: Client<true>, { hears }: DiscordParts) =>
  client.generateInvite({
    scopes: [OAuth2Scopes.Bot, OAuth2Scopes.ApplicationsCommands],
    permissions: hears === undefined ? PERMISSIONS : [...PERMISSIONS, PermissionFlagsBits.ReadMessageHistory],
  });

/** Opens the room. Rejects with a sentence in words where the token is not taken. */
export async function openDiscordRoom(parts: DiscordParts): Promise<OpenRoom> {
  const { registry, projects, log, fault } = parts;
  const declared = declaredOf(registry);
  const lines = openLines();
  const client = await enter(parts, lines);
  const claims = claimsOf(projects);
  const commands = new Commands({
    rest: client.rest,
    application: client.application.id,
    declared,
    log,
    common: claims && { claims, registrations: new Registrations(projects.store) },
  });
  const { boards, posts } = openPosts(parts, client, claims);
  const room = openRoom(parts, client, { boards, posts, commands, claims });
  const closed = new AbortController();
  const ended = endOf(client, closed.signal);
  await commands.register();
  void showUnshown(parts, boards, closed.signal).catch(fault);
  posts.start();
  const stopHealth = sayHealth(parts, client, { room, boards, posts });
  const invite = inviteTo(client, parts);
  log.info({ invite, servers: client.guilds.cache.size, ...shardsOf(client) }, 'the room is open');
  return {
    invite,
    ended,
    room,
    boards,
    close: async () => {
      closed.abort();
      stopHealth();
      commands.close();
      await room.close(PATIENCE_MS);
      await posts.close();
      await boards.close();
      // Leaving looks like a broken line for a moment.
      client.removeAllListeners(Events.ShardReconnecting);
      await client.destroy();
      await lines.close();
      log.info(room.metrics.read(), 'the room is closed');
    },
  };
}
