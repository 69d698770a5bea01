/** What the platform knows: people, places, messages, commands, interactions; and what it was asked. */
import { EventEmitter } from 'node:events';
import type { Command } from './commands.ts';
import type { AllowedMentions, Component, Embed, Modal } from './messages.ts';

export interface Person {
  readonly id: string;
  readonly username: string;
  readonly global_name: string | null;
  readonly bot: boolean;
  /** Whether the bot may write to this person first. */
  readonly dms: boolean;
}

export interface Guild {
  readonly id: string;
  readonly name: string;
  readonly locale: string;
  /** Whether the bot is a member; an app installed by a user is used where it is not. */
  readonly withBot: boolean;
  /** What the bot may do there. */
  readonly botPermissions: bigint;
}

export interface Channel {
  readonly id: string;
  /** 0 a channel of a server, 1 a direct message with the bot, 3 a private channel without it, 11 a thread in a server. */
  readonly type: 0 | 1 | 3 | 11;
  readonly name: string;
  readonly guild?: Guild;
  readonly person?: Person;
  /** The channel that a thread belongs to. */
  readonly parent?: Channel;
  /** A thread that nobody wrote in for a while: a message wakes it, an edit is refused. */
  archived?: boolean;
}

/** An event of a server, somewhere outside of its channels. */
export interface ScheduledEvent {
  readonly id: string;
  readonly guild: Guild;
  name: string;
  description: string | null;
  begins: string;
  ends: string;
  location: string;
}

export interface Attachment {
  readonly id: string;
  readonly filename: string;
  readonly description?: string;
  readonly content_type: string;
  readonly size: number;
  readonly url: string;
}

/** A message as it stands now; edits change it in place. */
export interface Message {
  readonly id: string;
  readonly channel: Channel;
  readonly author: Person;
  readonly at: number;
  content: string;
  embeds: readonly Embed[];
  components: readonly Component[];
  attachments: readonly Attachment[];
  flags: number;
  /** As given with the latest sending or edit; undefined where none was given. */
  allowedMentions: AllowedMentions | undefined;
  edits: number;
  deleted: boolean;
  pinned?: boolean;
  /** Who alone sees it. */
  readonly only?: Person;
  readonly interaction?: Interaction;
  /** The id of the message that it answers as a reply. */
  readonly repliesTo?: string;
}

export type Failure = { readonly status: number; readonly code: number };

/** One interaction, from the person's side to whatever was answered. */
export class Interaction extends EventEmitter {
  /** Type of the callback that was taken: 4 message, 5 deferred, 6 deferred edit, 7 edit, 8 offers, 9 modal. */
  ack: number | undefined;
  /** ms from the asking to the callback. */
  firstMs: number | undefined;
  /** How many callbacks arrived, taken or not. */
  callbacks = 0;
  original: Message | undefined;
  /** True while the original is a promise only. */
  loading = false;
  readonly followUps: Message[] = [];
  modal: Modal | undefined;
  /** Of the control that was used, or the form that was sent. */
  customId: string | undefined;
  choices: readonly { name: string; value: string | number }[] | undefined;
  /** What the bot was told instead of success. */
  readonly failures: Failure[] = [];
  private readonly began = performance.now();

  constructor(
    readonly id: string,
    readonly token: string,
    /** 2 command, 3 component, 4 autocompletion, 5 modal. */
    readonly type: 2 | 3 | 4 | 5,
    readonly at: number,
    readonly user: Person,
    readonly channel: Channel,
    /** Whether a user's own installation is at work where the bot is not a member. */
    readonly userInstalled: boolean,
    readonly source: Message | undefined,
    /** Type of the option that is being typed. */
    readonly focused: number | undefined,
  ) {
    super();
  }

  /** ms since the asking, by a clock that nobody moves. */
  get ms(): number {
    return performance.now() - this.began;
  }

  changed(): void {
    this.emit('changed');
  }

  /** Resolves true when `done` holds, false after `ms`. */
  until(done: () => boolean, ms: number): Promise<boolean> {
    if (done()) return Promise.resolve(true);
    return new Promise((resolve) => {
      const end = (held: boolean) => {
        clearTimeout(timer);
        this.off('changed', look);
        resolve(held);
      };
      const look = () => {
        if (done()) end(true);
      };
      const timer = setTimeout(() => end(false), ms);
      this.on('changed', look);
    });
  }
}

export interface Call {
  readonly method: string;
  readonly path: string;
  readonly status: number;
  readonly ms: number;
}

/** One request as it came: its JSON, and how many files came with it. */
export interface Heard {
  readonly method: string;
  /** Without `/api/v10`. */
  readonly path: string;
  readonly json: unknown;
  readonly files: number;
}

/** A fault to answer with, for the next requests that fit. */
export interface Mishap {
  readonly method?: string;
  readonly path: RegExp;
  /** How many requests it befalls. */
  times: number;
  /** A status, no answer at all, or the socket closed. `applied` first does what was asked and then fails. */
  readonly how: 500 | 502 | 429 | 'silence' | 'hang-up';
  readonly applied?: boolean;
  /** s, for 429 */
  readonly retryAfter?: number;
}

/** Keeps the latest so many of what is added, so that a long run needs no more memory than a short one. */
export class Latest<T> extends Map<string, T> {
  constructor(private readonly most: number) {
    super();
  }

  override set(key: string, value: T): this {
    super.set(key, value);
    if (this.size > this.most)
      for (const [oldest] of this) {
        this.delete(oldest);
        break;
      }
    return this;
  }
}

const EPOCH = 1_420_070_400_000;

export class World {
  readonly bot: Person;
  readonly applicationId: string;
  readonly people = new Map<string, Person>();
  readonly guilds = new Map<string, Guild>();
  readonly channels = new Map<string, Channel>();
  readonly messages: Latest<Message>;
  readonly events = new Map<string, ScheduledEvent>();
  /** Messages made with an enforced nonce. */
  readonly nonces: Latest<Message>;
  readonly files: Latest<{ bytes: Buffer; type: string }>;
  readonly interactions: Latest<Interaction>;
  /** By token. */
  readonly tokens: Latest<Interaction>;
  /** By id of the server, '' for the global ones. */
  readonly commands = new Map<string, Command[]>();
  /** How often commands were written. */
  registrations = 0;
  readonly calls: Call[] = [];
  readonly mishaps: Mishap[] = [];
  /** What the platform takes in silence and shows otherwise than meant. */
  readonly complaints: string[] = [];
  private counter = 0n;

  constructor(
    readonly token: string,
    /** ms; the platform's own clock. */
    readonly now: () => number,
    private readonly remember: number,
    /** Handed every request before it is looked at. */
    readonly hears: (request: Heard) => void = () => undefined,
  ) {
    this.messages = new Latest(remember);
    this.nonces = new Latest(remember);
    this.files = new Latest(remember);
    this.interactions = new Latest(remember);
    this.tokens = new Latest(remember);
    this.bot = { id: this.id(), username: 'bot', global_name: null, bot: true, dms: false };
    this.applicationId = this.bot.id;
    this.people.set(this.bot.id, this.bot);
  }

  /** An id as the platform makes them: the time in its upper bits, of 17 to 19 digits; of a shard, as many ms earlier as that takes. */
  id(shard?: readonly [number, number]): string {
    this.counter += 1n;
    const now = Math.floor(this.now()) - EPOCH;
    const [mine, all] = shard ?? [0, 1];
    const ms = now - ((((now - mine) % all) + all) % all);
    return String((BigInt(ms) << 22n) | (this.counter & 0x3fffffn));
  }

  called(call: Call): void {
    this.calls.push(call);
    if (this.calls.length > this.remember * 2) this.calls.splice(0, this.remember);
  }

  command(id: string): Command | undefined {
    for (const list of this.commands.values()) {
      const found = list.find((each) => each.id === id);
      if (found) return found;
    }
    return undefined;
  }
}

export const personJson = ({ id, username, global_name, bot }: Person) => ({
  id,
  username,
  global_name,
  discriminator: '0',
  avatar: null,
  bot,
  public_flags: 0,
});

export const channelJson = ({ id, type, name, guild, person, parent }: Channel) => ({
  id,
  type,
  ...(type === 11
    ? {
        name,
        guild_id: guild?.id,
        parent_id: parent?.id ?? null,
        thread_metadata: { archived: false, locked: false },
      }
    : {}),
  ...(type === 0
    ? { name, guild_id: guild?.id, position: 0, permission_overwrites: [], parent_id: null }
    : {}),
  ...(type === 1 && person ? { recipients: [personJson(person)] } : {}),
  last_message_id: null,
  flags: 0,
});

export const messageJson = (message: Message) => ({
  id: message.id,
  type: message.interaction?.type === 2 ? 20 : 0,
  channel_id: message.channel.id,
  author: personJson(message.author),
  content: message.content,
  timestamp: new Date(message.at).toISOString(),
  edited_timestamp: message.edits > 0 ? new Date(message.at).toISOString() : null,
  tts: false,
  mention_everyone: false,
  mentions: [] as object[],
  mention_roles: [],
  attachments: message.attachments.map((file) => ({ ...file, proxy_url: file.url })),
  embeds: message.embeds.map((embed) => ({ type: 'rich', ...embed })),
  components: message.components,
  flags: message.flags,
  pinned: message.pinned ?? false,
  webhook_id: message.interaction ? message.author.id : undefined,
  application_id: message.author.bot ? message.author.id : undefined,
});
