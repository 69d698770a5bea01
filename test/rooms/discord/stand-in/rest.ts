/** The HTTP side: routes as the platform has them, under /api/v10. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { checkCommand, checkCommands, withoutLanguages, type Command, type NewCommand } from './commands.ts';
import { z } from 'zod';
import { ApiError, check, invalidForm, refusals } from './errors.ts';
import { LIMITS } from './limits.ts';
import { checkChoices, checkMessage, checkModal, Flag, keptFiles } from './messages.ts';
import { readBody, type Body, type Upload } from './uploads.ts';
import {
  channelJson,
  Interaction,
  messageJson,
  personJson,
  type Attachment,
  type Channel,
  type Guild,
  type Message,
  type ScheduledEvent,
  type World,
} from './world.ts';

interface Asked {
  readonly parts: readonly string[];
  readonly query: URLSearchParams;
  readonly body: Body;
}
interface Reply {
  readonly status: number;
  readonly json?: unknown;
}
type Handler = (asked: Asked) => Reply;

/** For "some minutes" an enforced nonce is unique. resources/message.mdx, create message */
const NONCE_MS = 3 * 60_000;
/** SEND_MESSAGES */
const SEND = 1n << 11n;
const ATTACH_FILES = 1n << 15n;
const SEND_IN_THREADS = 1n << 38n;
/** Stands for every other one. topics/permissions.mdx */
const ADMINISTRATOR = 1n << 3n;
/** CREATE_PUBLIC_THREADS, PIN_MESSAGES, CREATE_EVENTS. topics/permissions.mdx */
const CREATE_THREADS = 1n << 35n;
const PIN = 1n << 51n;
const CREATE_EVENTS = 1n << 44n;

const newThread = z.object({
  name: z.string().min(1).max(LIMITS.thread.name),
  auto_archive_duration: z
    .int()
    .refine((minutes) => (LIMITS.thread.sleepsAfter as readonly number[]).includes(minutes))
    .nullish(),
  type: z.literal(11),
});
/** Only such as are somewhere outside of the channels: the platform wants a place and an end of these. */
const newEvent = z.object({
  name: z.string().min(1).max(LIMITS.event.name),
  description: z.string().max(LIMITS.event.description).nullish(),
  scheduled_start_time: z.iso.datetime(),
  scheduled_end_time: z.iso.datetime(),
  privacy_level: z.literal(2),
  entity_type: z.literal(3),
  entity_metadata: z.object({ location: z.string().min(1).max(LIMITS.event.location) }),
});
const eventJson = ({ id, guild, name, description, begins, ends, location }: ScheduledEvent) => ({
  id,
  guild_id: guild.id,
  channel_id: null,
  name,
  description,
  scheduled_start_time: begins,
  scheduled_end_time: ends,
  privacy_level: 2,
  status: 1,
  entity_type: 3,
  entity_id: null,
  entity_metadata: { location },
});

const ok = (json: unknown, status = 200): Reply => ({ status, json });
const NOTHING: Reply = { status: 204 };

export class Rest {
  private readonly routes: readonly {
    method: string;
    pattern: RegExp;
    /** Whether the bot's token must be shown. */
    open: boolean;
    handler: Handler;
  }[];
  private second = { at: 0, requests: 0 };

  constructor(
    private readonly world: World,
    private readonly address: () => { api: string; gateway: string; files: string },
    private readonly start: () => { shards: number; identifiesLeft: number },
  ) {
    const route = (method: string, path: string, handler: Handler, open = false) => ({
      method,
      pattern: new RegExp(`^${path.replaceAll(':id', '([^/]+)')}$`),
      open,
      handler,
    });
    const app = '/applications/:id';
    this.routes = [
      route('POST', '/interactions/:id/:id/callback', (asked) => this.callback(asked), true),
      route('GET', '/webhooks/:id/:id/messages/:id', (asked) => this.webhookGet(asked), true),
      route('PATCH', '/webhooks/:id/:id/messages/:id', (asked) => this.webhookEdit(asked), true),
      route('DELETE', '/webhooks/:id/:id/messages/:id', (asked) => this.webhookDelete(asked), true),
      route('POST', '/webhooks/:id/:id', (asked) => this.followUp(asked), true),
      route('GET', '/gateway/bot', () =>
        ok({
          url: this.address().gateway,
          shards: this.start().shards,
          session_start_limit: {
            total: LIMITS.identifies,
            remaining: this.start().identifiesLeft,
            reset_after: 86_400_000,
            max_concurrency: 1,
          },
        }),
      ),
      route('GET', '/gateway', () => ok({ url: this.address().gateway }), true),
      route('GET', '/users/@me', () => ok(personJson(world.bot))),
      route('GET', '/users/:id', ({ parts: [id = ''] }) => {
        const person = world.people.get(id);
        if (!person) throw refusals.unknownUser();
        return ok(personJson(person));
      }),
      route('GET', '/(?:oauth2/)?applications/@me', () =>
        ok({
          id: world.applicationId,
          name: world.bot.username,
          description: '',
          icon: null,
          flags: 0,
          bot_public: true,
        }),
      ),
      route('POST', '/users/@me/channels', ({ body }) => {
        const id = (body.json as { recipient_id?: string }).recipient_id ?? '';
        const person = world.people.get(id);
        if (!person) throw refusals.unknownUser();
        return ok(channelJson(this.direct(person.id)));
      }),

      // interactions/application-commands.mdx, get global application commands: languages only if they are asked for
      route('GET', `${app}/commands`, ({ query }) => {
        const commands = world.commands.get('') ?? [];
        return ok(query.get('with_localizations') === 'true' ? commands : commands.map(withoutLanguages));
      }),
      route('PUT', `${app}/commands`, ({ body }) => this.replaceCommands('', body)),
      route('POST', `${app}/commands`, ({ body }) => this.addCommand('', body)),
      route('PATCH', `${app}/commands/:id`, ({ parts, body }) => this.editCommand('', parts[1], body)),
      route('DELETE', `${app}/commands/:id`, ({ parts }) => this.removeCommand('', parts[1])),
      route('GET', `${app}/guilds/:id/commands`, ({ parts }) =>
        ok(world.commands.get(this.guild(parts[1])) ?? []),
      ),
      route('PUT', `${app}/guilds/:id/commands`, ({ parts, body }) =>
        this.replaceCommands(this.guild(parts[1]), body),
      ),
      route('POST', `${app}/guilds/:id/commands`, ({ parts, body }) =>
        this.addCommand(this.guild(parts[1]), body),
      ),
      route('DELETE', `${app}/guilds/:id/commands/:id`, ({ parts }) =>
        this.removeCommand(this.guild(parts[1]), parts[2]),
      ),

      route('GET', '/channels/:id', ({ parts }) => ok(channelJson(this.channel(parts[0])))),
      route('POST', '/channels/:id/messages', ({ parts, body }) => {
        const channel = this.writable(parts[0]);
        // topics/permissions.mdx: files are a permission of their own
        if (body.uploads.length > 0) this.mayDo(channel.guild, ATTACH_FILES);
        channel.archived = false;
        // resources/message.mdx, create message: an enforced nonce gives back the message that was made with it.
        const { nonce, enforce_nonce: enforced } = body.json as {
          nonce?: string | number;
          enforce_nonce?: boolean;
        };
        const key = enforced === true && nonce !== undefined ? `${channel.id} ${nonce}` : undefined;
        const before = key === undefined ? undefined : world.nonces.get(key);
        if (before && world.now() - before.at < NONCE_MS) return ok(messageJson(before));
        const message = this.send(channel, body.json, body.uploads);
        if (key !== undefined) world.nonces.set(key, message);
        return ok(messageJson(message));
      }),
      route('GET', '/channels/:id/messages/:id', ({ parts }) => ok(messageJson(this.public(parts)))),
      route('PATCH', '/channels/:id/messages/:id', ({ parts, body }) => {
        const message = this.public(parts);
        if (message.author !== world.bot) throw refusals.notTheAuthor();
        // topics/threads.mdx: only a message wakes an archived thread
        if (this.writable(parts[0]).archived) throw refusals.archivedThread();
        return ok(messageJson(this.edit(message, body.json, body.uploads)));
      }),
      route('PUT', '/channels/:id/messages/pins/:id', ({ parts }) => {
        const message = this.public(parts);
        this.mayDo(message.channel.guild, PIN);
        const pinned = [...world.messages.values()].filter(
          (one) => one.channel === message.channel && one.pinned === true && !one.deleted,
        );
        if (pinned.length >= LIMITS.pins) throw refusals.tooManyPins();
        message.pinned = true;
        return NOTHING;
      }),
      route('POST', '/channels/:id/threads', ({ parts, body }) => {
        const parent = this.channel(parts[0]);
        if (parent.type !== 0 || !parent.guild) throw refusals.wrongChannelType();
        this.mayDo(parent.guild, CREATE_THREADS);
        const { name } = check(newThread, body.json);
        const thread: Channel = { id: world.id(), type: 11, name, guild: parent.guild, parent };
        world.channels.set(thread.id, thread);
        return ok(channelJson(thread), 201);
      }),
      route('GET', '/guilds/:id/scheduled-events', ({ parts }) =>
        ok(this.eventsOf(this.guild(parts[0])).map(eventJson)),
      ),
      route('POST', '/guilds/:id/scheduled-events', ({ parts, body }) => {
        const guild = this.world.guilds.get(this.guild(parts[0]));
        this.mayDo(guild, CREATE_EVENTS);
        if (!guild) throw refusals.unknownGuild();
        if (this.eventsOf(guild.id).length >= LIMITS.event.most) throw refusals.tooManyEvents();
        const given = check(newEvent, body.json);
        const event: ScheduledEvent = { id: world.id(), guild, ...this.asEvent(given) };
        world.events.set(event.id, event);
        return ok(eventJson(event));
      }),
      route('PATCH', '/guilds/:id/scheduled-events/:id', ({ parts, body }) => {
        const event = this.event(parts);
        Object.assign(
          event,
          this.asEvent(check(newEvent, { ...eventJson(event), ...(body.json as object) })),
        );
        return ok(eventJson(event));
      }),
      route('DELETE', '/guilds/:id/scheduled-events/:id', ({ parts }) => {
        world.events.delete(this.event(parts).id);
        return NOTHING;
      }),
      route('DELETE', '/channels/:id/messages/:id', ({ parts }) => {
        this.public(parts).deleted = true;
        return NOTHING;
      }),
    ];
  }

  /** Answers one request, or does to it what was ordered. */
  async handle(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const began = performance.now();
    const url = new URL(request.url ?? '/', 'http://127.0.0.1');
    const method = request.method ?? 'GET';
    const path = url.pathname.replace(/^\/api(\/v\d+)?/, '');
    const finish = (status: number, json: unknown, headers: Record<string, string> = {}) => {
      this.world.called({ method, path, status, ms: performance.now() - began });
      if (json === undefined) response.writeHead(status, headers).end();
      else
        response
          .writeHead(status, { 'content-type': 'application/json', ...headers })
          .end(JSON.stringify(json));
    };
    if (path.startsWith('/attachments/')) {
      request.resume();
      const file = this.world.files.get(path.split('/')[2] ?? '');
      if (!file) {
        finish(404, { message: 'This content is no longer available.' });
        return;
      }
      this.world.called({ method, path, status: 200, ms: performance.now() - began });
      response.writeHead(200, { 'content-type': file.type }).end(file.bytes);
      return;
    }

    let reply: Reply;
    try {
      const body = await readBody(request);
      this.world.hears({ method, path, json: body.json, files: body.uploads.length });
      const mishap = this.mishap(method, path);
      if (mishap && mishap.applied !== true) {
        this.befall(mishap, request, finish);
        return;
      }
      reply = this.route(method, path, url.searchParams, request.headers.authorization, body);
      if (mishap) {
        this.befall(mishap, request, finish);
        return;
      }
    } catch (error) {
      if (!(error instanceof ApiError)) {
        this.world.complaints.push(`the stand-in itself failed at ${method} ${path}: ${String(error)}`);
        finish(500, { message: 'Internal Server Error', code: 0 });
        return;
      }
      finish(
        error.status,
        error.body,
        error.status === 429 ? { 'retry-after': '1', 'x-ratelimit-global': 'true' } : {},
      );
      return;
    }
    finish(reply.status, reply.json);
  }

  private mishap(method: string, path: string) {
    const found = this.world.mishaps.find(
      (each) => each.times > 0 && (each.method ?? method) === method && each.path.test(path),
    );
    if (found) found.times -= 1;
    return found;
  }

  private befall(
    { how, retryAfter = 0.2 }: { how: 500 | 502 | 429 | 'silence' | 'hang-up'; retryAfter?: number },
    request: IncomingMessage,
    finish: (status: number, json: unknown, headers?: Record<string, string>) => void,
  ): void {
    if (how === 'silence') return;
    if (how === 'hang-up') {
      request.socket.destroy();
      return;
    }
    // topics/rate-limits.mdx: the body's retry_after is in seconds, with decimals.
    if (how === 429) {
      finish(
        429,
        { message: 'You are being rate limited.', retry_after: retryAfter, global: false },
        {
          'retry-after': String(Math.ceil(retryAfter)),
          'x-ratelimit-scope': 'user',
          'x-ratelimit-reset-after': String(retryAfter),
          'x-ratelimit-limit': '5',
          'x-ratelimit-remaining': '0',
          'x-ratelimit-bucket': 'mishap',
        },
      );
      return;
    }
    finish(how, { message: `${how}: Server Error`, code: 0 });
  }

  private route(
    method: string,
    path: string,
    query: URLSearchParams,
    authorization: string | undefined,
    body: Body,
  ): Reply {
    for (const route of this.routes) {
      if (route.method !== method) continue;
      const match = route.pattern.exec(path);
      if (!match) continue;
      if (!route.open) {
        if (authorization !== `Bot ${this.world.token}`) throw refusals.unauthorized();
        this.limit();
      }
      return route.handler({ parts: match.slice(1).map(decodeURIComponent), query, body });
    }
    throw refusals.notFound();
  }

  /** topics/rate-limits.mdx:122; the interaction endpoints are exempt (receiving-and-responding.mdx:437). */
  private limit(): void {
    const second = Math.floor(this.world.now() / 1000);
    if (second !== this.second.at) this.second = { at: second, requests: 0 };
    this.second.requests += 1;
    if (this.second.requests > LIMITS.requests) throw new ApiError(429, 0, 'You are being rate limited.');
  }

  private mayDo(guild: Guild | undefined, permission: bigint): void {
    if (guild && (guild.botPermissions & (permission | ADMINISTRATOR)) === 0n)
      throw refusals.missingPermissions();
  }

  private eventsOf(guild: string): ScheduledEvent[] {
    return [...this.world.events.values()].filter(
      (event) => event.guild.id === guild && Date.parse(event.ends) > this.world.now(),
    );
  }

  private event([guild, id = '']: readonly string[]): ScheduledEvent {
    this.guild(guild);
    const event = this.world.events.get(id);
    if (!event || event.guild.id !== guild) throw refusals.unknownEvent();
    this.mayDo(event.guild, CREATE_EVENTS);
    return event;
  }

  /** resources/guild-scheduled-event.mdx: an event begins in the future and ends after that. */
  private asEvent(given: z.infer<typeof newEvent>): Omit<ScheduledEvent, 'id' | 'guild'> {
    const { name, description = null, scheduled_start_time: begins, scheduled_end_time: ends } = given;
    const fault = (path: string, code: string, message: string) =>
      invalidForm([{ path: [path], code, message }]);
    if (Date.parse(begins) <= this.world.now())
      throw fault(
        'scheduled_start_time',
        'GUILD_SCHEDULED_EVENT_SCHEDULE_PAST',
        'Cannot schedule event in the past.',
      );
    if (Date.parse(ends) <= Date.parse(begins))
      throw fault('scheduled_end_time', 'GUILD_SCHEDULED_EVENT_END_BEFORE_START', 'Ends before it begins.');
    return { name, description, begins, ends, location: given.entity_metadata.location };
  }

  private guild(id = ''): string {
    if (this.world.guilds.get(id)?.withBot !== true) throw refusals.missingAccess();
    return id;
  }

  private channel(id = ''): Channel {
    const channel = this.world.channels.get(id);
    if (!channel) throw refusals.unknownChannel();
    if (channel.type === 3 || channel.guild?.withBot === false) throw refusals.missingAccess();
    return channel;
  }

  private writable(id?: string): Channel {
    const channel = this.channel(id);
    // topics/threads.mdx: writing in a thread is a permission of its own
    const needed = channel.type === 11 ? SEND_IN_THREADS : SEND;
    if (channel.guild && (channel.guild.botPermissions & needed) === 0n) throw refusals.missingPermissions();
    if (channel.person?.dms === false) throw refusals.dmClosed();
    return channel;
  }

  /** The direct channel with a person, made where there is none. */
  direct(personId: string): Channel {
    const { world } = this;
    const person = world.people.get(personId);
    if (!person) throw refusals.unknownUser();
    for (const channel of world.channels.values())
      if (channel.type === 1 && channel.person === person) return channel;
    const channel: Channel = { id: world.id(), type: 1, name: '', person };
    world.channels.set(channel.id, channel);
    return channel;
  }

  /** A message that everyone in its channel sees. */
  private public(parts: readonly string[]): Message {
    const channel = this.channel(parts[0]);
    const message = this.world.messages.get(parts[1] ?? '');
    if (
      !message ||
      message.deleted ||
      message.only ||
      message.channel !== channel ||
      (message.flags & Flag.loading) !== 0
    )
      throw refusals.unknownMessage();
    return message;
  }

  private keep(
    uploads: readonly Upload[],
    described: readonly { id: string; filename?: string; description?: string | null }[] | null | undefined,
  ): Attachment[] {
    return uploads.map((upload) => {
      const given = described?.find(({ id }) => id === upload.index);
      const filename = (given?.filename ?? upload.filename).replace(/[^\w.-]/g, '_');
      const id = this.store(upload.bytes, upload.contentType);
      return {
        id,
        filename,
        ...(given?.description == null ? {} : { description: given.description }),
        content_type: upload.contentType,
        size: upload.bytes.length,
        url: `${this.address().files}/attachments/${id}/${filename}`,
      };
    });
  }

  /** Keeps the bytes of a file; its id stands in its address. */
  store(bytes: Buffer, type: string): string {
    const id = this.world.id();
    this.world.files.set(id, { bytes, type });
    return id;
  }

  private watch(message: Message): void {
    const names = new Set(message.attachments.map(({ filename }) => filename));
    for (const [, name] of JSON.stringify(message.embeds).matchAll(/"attachment:\/\/([^"]+)"/g))
      if (name !== undefined && !names.has(name))
        this.world.complaints.push(`an embed shows attachment://${name}, which is not attached`);
  }

  private send(
    channel: Channel,
    body: unknown,
    uploads: readonly Upload[],
    {
      interaction,
      only,
      under = [],
    }: { interaction?: Interaction; only?: Message['only']; under?: readonly string[] } = {},
  ): Message {
    const given = checkMessage(body, uploads, { under });
    const message: Message = {
      id: this.world.id(),
      channel,
      author: this.world.bot,
      at: this.world.now(),
      content: given.content ?? '',
      embeds: given.embeds ?? [],
      components: given.components ?? [],
      attachments: this.keep(uploads, given.attachments),
      flags: ((given.flags ?? 0) & ~Flag.ephemeral) | (only ? Flag.ephemeral : 0),
      allowedMentions: given.allowed_mentions ?? undefined,
      edits: 0,
      deleted: false,
      ...(only === undefined ? {} : { only }),
      ...(interaction === undefined ? {} : { interaction }),
      ...(given.message_reference ? { repliesTo: given.message_reference.message_id } : {}),
    };
    this.world.messages.set(message.id, message);
    this.watch(message);
    return message;
  }

  private edit(
    message: Message,
    body: unknown,
    uploads: readonly Upload[],
    under: readonly string[] = [],
  ): Message {
    const given = checkMessage(body, uploads, { before: message, under });
    const kept = keptFiles(given, message).map((file) => {
      const described = given.attachments?.find(({ id }) => id === file.id)?.description;
      return described == null ? file : { ...file, description: described };
    });
    if (given.content !== undefined) message.content = given.content ?? '';
    if (given.embeds !== undefined) message.embeds = given.embeds ?? [];
    if (given.components !== undefined) message.components = given.components ?? [];
    message.attachments = [...kept, ...this.keep(uploads, given.attachments)];
    message.flags = (message.flags & ~Flag.loading) | ((given.flags ?? 0) & Flag.v2);
    message.allowedMentions = given.allowed_mentions ?? undefined;
    message.edits += 1;
    this.watch(message);
    return message;
  }

  private callback({ parts: [id = '', token = ''], query, body }: Asked): Reply {
    const { world } = this;
    const interaction = world.interactions.get(id);
    if (!interaction || interaction.token !== token) throw refusals.unknownInteraction();
    interaction.callbacks += 1;
    try {
      if (interaction.ack !== undefined) throw refusals.acknowledged();
      if (world.now() - interaction.at > LIMITS.firstResponse) throw refusals.unknownInteraction();
      const { type, data = {} } = body.json as { type: number; data?: Record<string, unknown> };
      this.respond(interaction, type, data, body.uploads);
      interaction.ack = type;
      interaction.firstMs = interaction.ms;
    } catch (error) {
      if (error instanceof ApiError) {
        interaction.failures.push({ status: error.status, code: error.code });
        interaction.changed();
      }
      throw error;
    }
    interaction.changed();
    if (query.get('with_response') !== 'true') return NOTHING;
    const message = interaction.original;
    return ok({
      interaction: {
        id,
        type: interaction.type,
        response_message_id: message?.id,
        response_message_loading: interaction.loading,
        response_message_ephemeral: message?.only !== undefined,
      },
      resource: { type: interaction.ack, ...(message ? { message: messageJson(message) } : {}) },
    });
  }

  private respond(
    interaction: Interaction,
    type: number,
    data: Record<string, unknown>,
    uploads: readonly Upload[],
  ): void {
    const { type: kind, source } = interaction;
    const fits =
      kind === 4
        ? type === 8
        : type === 4 ||
          type === 5 ||
          (type === 9 && kind !== 5) ||
          ((type === 6 || type === 7) && source !== undefined);
    if (!fits)
      throw invalidForm([
        {
          path: ['type'],
          code: 'BASE_TYPE_CHOICES',
          message: `An interaction of type ${kind} is not answered by ${type}.`,
        },
      ]);
    const flags = Number(data['flags'] ?? 0);
    const only = (flags & Flag.ephemeral) !== 0 ? interaction.user : undefined;
    const within = { interaction, ...(only === undefined ? {} : { only }), under: ['data'] };
    switch (type) {
      case 4:
        interaction.original = this.send(interaction.channel, data, uploads, within);
        return;
      case 5: {
        // interactions/receiving-and-responding.mdx:304, 479
        if ((flags & ~Flag.ephemeral) !== 0)
          throw invalidForm([
            { path: ['data', 'flags'], code: 'BITFIELD_INVALID', message: 'A deferral sets EPHEMERAL only' },
          ]);
        interaction.original = this.send(interaction.channel, { content: '…' }, [], within);
        interaction.original.content = '';
        interaction.original.flags |= Flag.loading;
        interaction.loading = true;
        return;
      }
      case 6:
        interaction.original = source;
        interaction.loading = true;
        return;
      case 7:
        if (source?.deleted === true) throw refusals.unknownMessage();
        if (source) this.edit(source, data, uploads, ['data']);
        interaction.original = source;
        return;
      case 8:
        interaction.choices = checkChoices(data, interaction.focused ?? 3);
        return;
      default:
        interaction.modal = checkModal(data);
    }
  }

  /** The interaction of a webhook's token: it must have been answered, at most 15 minutes ago. */
  private answered([app, token = '']: readonly string[]): Interaction {
    const interaction = this.world.tokens.get(token);
    if (!interaction || app !== this.world.applicationId) throw refusals.invalidWebhookToken();
    if (this.world.now() - interaction.at > LIMITS.tokenLife) throw refusals.invalidWebhookToken();
    if (interaction.ack === undefined) throw refusals.unknownWebhook();
    return interaction;
  }

  private webhookMessage(parts: readonly string[]): { interaction: Interaction; message: Message } {
    const interaction = this.answered(parts);
    const message =
      parts[2] === '@original'
        ? interaction.original
        : interaction.original?.id === parts[2]
          ? interaction.original
          : interaction.followUps.find(({ id }) => id === parts[2]);
    if (!message || message.deleted) throw refusals.unknownMessage();
    return { interaction, message };
  }

  private webhookGet({ parts }: Asked): Reply {
    return ok(messageJson(this.webhookMessage(parts).message));
  }

  private webhookEdit({ parts, body }: Asked): Reply {
    const { interaction, message } = this.webhookMessage(parts);
    this.edit(message, body.json, body.uploads);
    if (message === interaction.original) interaction.loading = false;
    interaction.changed();
    return ok(messageJson(message));
  }

  private webhookDelete({ parts }: Asked): Reply {
    const { interaction, message } = this.webhookMessage(parts);
    message.deleted = true;
    if (message === interaction.original) interaction.loading = false;
    interaction.changed();
    return NOTHING;
  }

  private followUp({ parts, body }: Asked): Reply {
    const interaction = this.answered(parts);
    const { original } = interaction;
    // The first follow-up of a deferral takes the deferral's place, and who sees it (receiving-and-responding.mdx:479).
    if (interaction.ack === 5 && interaction.loading && original) {
      this.edit(original, body.json, body.uploads);
      interaction.loading = false;
      interaction.changed();
      return ok(messageJson(original));
    }
    if (interaction.userInstalled && interaction.followUps.length >= LIMITS.userInstalledFollowUps)
      throw refusals.tooManyFollowUps();
    const flags = (body.json as { flags?: number }).flags ?? 0;
    const message = this.send(interaction.channel, body.json, body.uploads, {
      interaction,
      ...((flags & Flag.ephemeral) === 0 ? {} : { only: interaction.user }),
    });
    interaction.followUps.push(message);
    interaction.changed();
    return ok(messageJson(message));
  }

  private named(command: NewCommand, scope: string, id = this.world.id()): Command {
    return {
      default_member_permissions: null,
      contexts: scope === '' ? null : undefined,
      integration_types: [0],
      ...command,
      id,
      application_id: this.world.applicationId,
      version: this.world.id(),
      ...(scope === '' ? {} : { guild_id: scope }),
    };
  }

  private replaceCommands(scope: string, { json }: Body): Reply {
    const before = this.world.commands.get(scope) ?? [];
    const commands = checkCommands(json).map((command) =>
      this.named(
        command,
        scope,
        before.find(({ type, name }) => type === command.type && name === command.name)?.id,
      ),
    );
    this.world.commands.set(scope, commands);
    this.world.registrations += 1;
    return ok(commands);
  }

  private addCommand(scope: string, { json }: Body): Reply {
    const before = this.world.commands.get(scope) ?? [];
    const command = checkCommand(json);
    const old = before.find(({ type, name }) => type === command.type && name === command.name);
    const added = this.named(command, scope, old?.id);
    const commands = [...before.filter((each) => each !== old), added];
    checkCommands(commands);
    this.world.commands.set(scope, commands);
    this.world.registrations += 1;
    return ok(added, old ? 200 : 201);
  }

  private editCommand(scope: string, id: string | undefined, { json }: Body): Reply {
    const before = this.world.commands.get(scope) ?? [];
    const old = before.find((each) => each.id === id);
    if (!old) throw refusals.unknownCommand();
    const edited = this.named(checkCommand({ ...old, ...(json as object) }), scope, old.id);
    this.world.commands.set(
      scope,
      before.map((each) => (each === old ? edited : each)),
    );
    this.world.registrations += 1;
    return ok(edited);
  }

  private removeCommand(scope: string, id: string | undefined): Reply {
    const before = this.world.commands.get(scope) ?? [];
    if (!before.some((each) => each.id === id)) throw refusals.unknownCommand();
    this.world.commands.set(
      scope,
      before.filter((each) => each.id !== id),
    );
    this.world.registrations += 1;
    return NOTHING;
  }
}
