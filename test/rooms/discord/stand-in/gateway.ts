/**
 * The gateway: one socket a shard, events in order, resumed where a line broke. JSON, uncompressed. Any number of processes may
 * connect; each server's events go to its shard alone, and to every session of that shard (events/gateway.mdx, sharding: a shard may
 * be identified more than once).
 */
import type { Server } from 'node:http';
import { WebSocketServer, type WebSocket } from 'ws';
import { LIMITS } from './limits.ts';
import { channelJson, personJson, type Guild, type World } from './world.ts';

const Op = {
  dispatch: 0,
  heartbeat: 1,
  identify: 2,
  presence: 3,
  voice: 4,
  resume: 6,
  reconnect: 7,
  members: 8,
  invalidSession: 9,
  hello: 10,
  ack: 11,
} as const;

interface Event {
  readonly t: string;
  readonly s: number;
  readonly d: unknown;
}

interface Session {
  readonly id: string;
  readonly shard: readonly [number, number];
  readonly intents: number;
  seq: number;
  socket: WebSocket | undefined;
  /** What can be replayed. */
  readonly events: Event[];
}

/** Events a session keeps for a resumption. */
const REPLAYED = 1_000;

export class Gateway {
  readonly sessions = new Map<string, Session>();
  /** Identifies, resumptions, and sockets closed by the rules, each with its close code. */
  readonly counts = { identifies: 0, resumes: 0, heartbeats: 0 };
  readonly refused: number[] = [];
  /** How many shards clients are advised to open. */
  readonly advised: number;
  /** ms between heartbeats asked of the client. */
  heartbeat: number;
  /** False plays dead: heartbeats go unanswered. */
  answersHeartbeats = true;
  /** ms that must lie between two identifies, whoever's they are; 0 where nobody is held to it. */
  identifyGap: number;
  private identified = -Infinity;
  /**
   * True deals events out among those who serve a shard, one to each in turn: no platform does, but it has several processes press on
   * the same thing at the same moment.
   */
  deals = false;
  private dealt = 0;
  private readonly sockets: WebSocketServer;

  constructor(
    private readonly world: World,
    server: Server,
    private readonly address: () => string,
    {
      heartbeat = 41_250,
      shards = 1,
      identifyGap = 0,
    }: { heartbeat?: number; shards?: number; identifyGap?: number } = {},
  ) {
    this.heartbeat = heartbeat;
    this.advised = shards;
    this.identifyGap = identifyGap;
    this.sockets = new WebSocketServer({ server, path: '/gateway' });
    this.sockets.on('connection', (socket) => this.greet(socket));
  }

  private greet(socket: WebSocket): void {
    let session: Session | undefined;
    let sent: number[] = [];
    const close = (code: number, reason: string) => {
      this.refused.push(code);
      socket.close(code, reason);
    };
    const send = (op: number, d: unknown) => socket.send(JSON.stringify({ op, d, s: null, t: null }));
    send(Op.hello, { heartbeat_interval: this.heartbeat });

    socket.on('message', (data) => {
      const raw = (data as Buffer).toString();
      const now = this.world.now();
      sent = [...sent.filter((at) => at > now - 60_000), now];
      // events/gateway.mdx:507, 52
      if (sent.length > LIMITS.sends) {
        close(4008, 'You are being rate limited.');
        return;
      }
      if (Buffer.byteLength(raw) > LIMITS.payload) {
        close(4002, 'Payload too large.');
        return;
      }
      let payload: { op: number; d: unknown };
      try {
        payload = JSON.parse(raw) as { op: number; d: unknown };
      } catch {
        close(4002, 'Error while decoding payload.');
        return;
      }
      switch (payload.op) {
        case Op.heartbeat:
          this.counts.heartbeats += 1;
          if (this.answersHeartbeats) send(Op.ack, null);
          return;
        case Op.identify: {
          if (session) {
            close(4005, 'Already authenticated.');
            return;
          }
          const given = payload.d as { token?: string; intents?: number; shard?: [number, number] };
          if (given.token !== this.world.token) {
            close(4004, 'Authentication failed.');
            return;
          }
          const shard = given.shard ?? [0, 1];
          if (!(shard[0] >= 0 && shard[0] < shard[1])) {
            close(4010, 'Invalid shard.');
            return;
          }
          if (typeof given.intents !== 'number') {
            close(4013, 'Invalid intent(s).');
            return;
          }
          // events/gateway.mdx, identifying: a client that exceeds its concurrency gets an invalid session
          if (now - this.identified < this.identifyGap) {
            send(Op.invalidSession, false);
            return;
          }
          this.identified = now;
          this.counts.identifies += 1;
          session = this.open(socket, given.intents, shard);
          return;
        }
        case Op.resume: {
          const { token, session_id, seq } = payload.d as { token: string; session_id: string; seq: number };
          if (token !== this.world.token) {
            close(4004, 'Authentication failed.');
            return;
          }
          const known = this.sessions.get(session_id);
          if (!known) {
            send(Op.invalidSession, false);
            return;
          }
          if (seq > known.seq) {
            close(4007, 'Invalid seq.');
            return;
          }
          this.counts.resumes += 1;
          session = known;
          known.socket = socket;
          for (const event of known.events) if (event.s > seq) this.write(socket, event);
          this.emit(known, 'RESUMED', {});
          return;
        }
        case Op.presence:
        case Op.voice:
        case Op.members:
          if (!session) close(4003, 'Not authenticated.');
          return;
        default: {
          close(4001, 'Unknown opcode.');
          return;
        }
      }
    });
    socket.on('close', (code) => {
      if (session?.socket !== socket) return;
      session.socket = undefined;
      // events/gateway.mdx, resuming: a client that says goodbye with 1000 or 1001 gives its session up.
      if (code === 1000 || code === 1001) this.sessions.delete(session.id);
    });
    socket.on('error', () => socket.terminate());
  }

  private open(socket: WebSocket, intents: number, shard: readonly [number, number]): Session {
    // A session whose line is down and that is replaced will not come back: its events are let go.
    for (const [id, old] of this.sessions)
      if (old.socket === undefined && old.shard[0] === shard[0] && old.shard[1] === shard[1])
        this.sessions.delete(id);
    const session: Session = { id: this.world.id(), shard, intents, seq: 0, socket, events: [] };
    this.sessions.set(session.id, session);
    const mine = [...this.world.guilds.values()].filter(
      (guild) => guild.withBot && shardOf(guild.id, shard[1]) === shard[0],
    );
    this.emit(session, 'READY', {
      v: 10,
      user: { ...personJson(this.world.bot), verified: true, mfa_enabled: true, email: null, flags: 0 },
      guilds: mine.map(({ id }) => ({ id, unavailable: true })),
      session_id: session.id,
      resume_gateway_url: this.address(),
      shard,
      application: { id: this.world.applicationId, flags: 0 },
    });
    // Intent 1 << 0
    if (intents & 1) for (const guild of mine) this.emit(session, 'GUILD_CREATE', this.guildJson(guild));
    return session;
  }

  private guildJson(guild: Guild) {
    const { bot, applicationId } = this.world;
    return {
      id: guild.id,
      name: guild.name,
      icon: null,
      splash: null,
      discovery_splash: null,
      owner_id: applicationId,
      afk_channel_id: null,
      afk_timeout: 300,
      verification_level: 0,
      default_message_notifications: 0,
      explicit_content_filter: 0,
      roles: [
        {
          id: guild.id,
          name: '@everyone',
          permissions: String(guild.botPermissions),
          position: 0,
          color: 0,
          hoist: false,
          managed: false,
          mentionable: false,
          flags: 0,
        },
      ],
      emojis: [],
      features: [],
      mfa_level: 0,
      application_id: null,
      system_channel_id: null,
      system_channel_flags: 0,
      rules_channel_id: null,
      vanity_url_code: null,
      description: null,
      banner: null,
      premium_tier: 0,
      premium_subscription_count: 0,
      preferred_locale: guild.locale,
      public_updates_channel_id: null,
      nsfw_level: 0,
      stickers: [],
      premium_progress_bar_enabled: false,
      joined_at: new Date(this.world.now()).toISOString(),
      large: false,
      unavailable: false,
      member_count: 1,
      voice_states: [],
      members: [
        {
          user: personJson(bot),
          roles: [],
          joined_at: new Date(this.world.now()).toISOString(),
          deaf: false,
          mute: false,
          flags: 0,
        },
      ],
      channels: [...this.world.channels.values()]
        .filter((channel) => channel.guild === guild)
        .map(channelJson),
      threads: [],
      presences: [],
      stage_instances: [],
      guild_scheduled_events: [],
      soundboard_sounds: [],
    };
  }

  private write(socket: WebSocket, { t, s, d }: Event): void {
    socket.send(JSON.stringify({ op: Op.dispatch, t, s, d }));
  }

  private emit(session: Session, t: string, d: unknown): void {
    session.seq += 1;
    const event = { t, s: session.seq, d };
    session.events.push(event);
    if (session.events.length > REPLAYED) session.events.splice(0, REPLAYED / 2);
    if (session.socket?.readyState === 1) this.write(session.socket, event);
  }

  private listening(guildId: string | undefined): Session[] {
    return [...this.sessions.values()].filter(
      ({ shard: [mine, all] }) => (guildId === undefined ? 0 : shardOf(guildId, all)) === mine,
    );
  }

  /** Sends an event to the shard that answers for a server, or for direct messages. False where nobody listens. */
  dispatch(t: string, d: unknown, guildId?: string): boolean {
    let heard = this.listening(guildId);
    if (this.deals) {
      const there = heard.filter(({ socket }) => socket !== undefined);
      heard = there.length === 0 ? heard.slice(0, 1) : there.slice(this.dealt++ % there.length).slice(0, 1);
    }
    for (const session of heard) this.emit(session, t, d);
    return heard.length > 0;
  }

  /**
   * Tells of a message: those sessions that asked for messages there (events/gateway.mdx, list of intents), with its words
   * only where it is a direct one or mentions the bot, or where the bot asked to read messages (message content intent).
   */
  tellMessage(
    d: object,
    words: string,
    { direct, mentions }: { direct: boolean; mentions: boolean },
    guildId?: string,
  ) {
    let heard = false;
    for (const session of this.listening(guildId)) {
      if ((session.intents & (direct ? 1 << 12 : 1 << 9)) === 0) continue;
      const shown = direct || mentions || (session.intents & (1 << 15)) !== 0;
      this.emit(session, 'MESSAGE_CREATE', { ...d, content: shown ? words : '' });
      heard = true;
    }
    return heard;
  }

  /** Tells of a guild that was made after the bot came. */
  join(guild: Guild): void {
    for (const session of this.sessions.values())
      if (session.intents & 1 && shardOf(guild.id, session.shard[1]) === session.shard[0])
        this.emit(session, 'GUILD_CREATE', this.guildJson(guild));
  }

  private each(what: (session: Session, socket: WebSocket) => void): void {
    for (const session of this.sessions.values()) if (session.socket) what(session, session.socket);
  }

  /** The shards that are served just now, each as often as it is. */
  get served(): (readonly [number, number])[] {
    return [...this.sessions.values()].flatMap(({ socket, shard }) => (socket ? [shard] : []));
  }

  /** Breaks the lines of a shard, or every one, without a word, as a network does; the sessions can be resumed. */
  drop(shard?: number): void {
    this.each((session, socket) => {
      if (shard !== undefined && session.shard[0] !== shard) return;
      session.socket = undefined;
      socket.terminate();
    });
  }

  /** Asks every client to reconnect and resume. */
  reconnect(): void {
    this.each((_, socket) => socket.send(JSON.stringify({ op: Op.reconnect, d: null, s: null, t: null })));
  }

  /** Declares every session invalid; the client has to identify anew, or may resume. */
  invalidate(resumable = false): void {
    this.each((session, socket) => {
      socket.send(JSON.stringify({ op: Op.invalidSession, d: resumable, s: null, t: null }));
      if (!resumable) {
        session.socket = undefined;
        this.sessions.delete(session.id);
      }
    });
  }

  get connected(): number {
    return [...this.sessions.values()].filter(({ socket }) => socket !== undefined).length;
  }

  async close(): Promise<void> {
    for (const socket of this.sockets.clients) socket.terminate();
    await new Promise<void>((resolve) => this.sockets.close(() => resolve()));
  }
}

/** events/gateway.mdx:612 */
const shardOf = (guildId: string, shards: number) => Number((BigInt(guildId) >> 22n) % BigInt(shards));
