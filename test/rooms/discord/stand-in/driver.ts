/** The people's side: what their client lets them do, and what they finally see. */
import { OptionType, type Command, type CommandOption } from './commands.ts';
import type { Gateway } from './gateway.ts';
import { LIMITS } from './limits.ts';
import { Flag, walk, type Component } from './messages.ts';
import {
  channelJson,
  Interaction,
  messageJson,
  personJson,
  type Attachment,
  type Channel,
  type Guild,
  type Message,
  type Person,
  type World,
} from './world.ts';

/** Who asks, and where: in a server's channel, or, with neither named, in the direct channel with the bot. */
export interface As {
  readonly user: Person;
  readonly guild?: Guild;
  readonly channel?: Channel;
  /** Permission bits in the server. */
  readonly permissions?: bigint;
  readonly locale?: string;
}

/** A file that a person attaches. */
export interface GivenFile {
  readonly name: string;
  readonly bytes: Buffer;
  readonly type: string;
}

export type Given = string | number | boolean | Person | Channel | GivenFile;

/** What a client does not let a person do: an option missing, a button that is not there. */
export class CannotAsk extends Error {}

export interface SeenFile extends Attachment {
  readonly bytes: Buffer;
}

export interface Outcome {
  /** What came: a message (new, or the one the button stood on), a form, offers, or nothing at all. */
  readonly kind: 'message' | 'modal' | 'choices' | 'nothing' | 'silence';
  readonly interaction: Interaction;
  readonly message: Message | undefined;
  readonly ephemeral: boolean;
  readonly deferred: boolean;
  /** Every word of the message: content, embeds, texts of components. */
  readonly text: string;
  readonly files: readonly SeenFile[];
  readonly choices: readonly { name: string; value: string | number }[];
  /** ms to the first response, and to what is seen in the end. */
  readonly firstMs: number;
  readonly ms: number;
}

export interface Patience {
  /** ms to wait for the first response, 3 s if not given, as the platform does. */
  readonly first: number;
  /** ms to wait for what a deferral promised. */
  readonly settled: number;
}

const ALL = (1n << 50n) - 1n;
/** What a member may do where nothing is said: look, write, attach, use commands. */
export const MEMBER =
  (1n << 10n) | (1n << 11n) | (1n << 14n) | (1n << 15n) | (1n << 16n) | (1n << 31n) | (1n << 38n);
/** MANAGE_GUILD on top. */
export const MANAGER = MEMBER | (1n << 5n);

export class Driver {
  /** The event that was sent last, to be sent once more. */
  private latest: { payload: object; guildId: string | undefined } | undefined;
  patience: Patience = { first: LIMITS.firstResponse, settled: 15_000 };

  constructor(
    private readonly world: World,
    private readonly gateway: Gateway,
    private readonly direct: (personId: string) => Channel,
    private readonly upload: (file: GivenFile) => Attachment,
  ) {}

  private place(as: As): { channel: Channel; guild: Guild | undefined; context: 0 | 1 | 2; owned: boolean } {
    if (as.channel?.type === 3) return { channel: as.channel, guild: undefined, context: 2, owned: true };
    if (!as.guild)
      return { channel: as.channel ?? this.direct(as.user.id), guild: undefined, context: 1, owned: false };
    const channel = as.channel ?? [...this.world.channels.values()].find(({ guild }) => guild === as.guild);
    if (!channel) throw new CannotAsk('the server has no channel');
    return { channel, guild: as.guild, context: 0, owned: !as.guild.withBot };
  }

  /** The command as this person is offered it there. Throws CannotAsk where it is not. */
  private offered(name: string, type: 1 | 2 | 3, as: As): Command {
    const { guild, context, owned } = this.place(as);
    const lists = [
      ...(guild ? (this.world.commands.get(guild.id) ?? []) : []),
      ...(this.world.commands.get('') ?? []),
    ];
    const command = lists.find((each) => each.type === type && each.name === name);
    if (!command) throw new CannotAsk(`/${name} is not registered`);
    const { contexts, integration_types: kinds = [0], default_member_permissions: needed } = command;
    if (contexts && !contexts.includes(context))
      throw new CannotAsk(`/${name} is not offered in this kind of place`);
    if (!contexts && context === 2) throw new CannotAsk(`/${name} is not offered in private channels`);
    if (owned && !kinds.includes(1)) throw new CannotAsk(`/${name} cannot be installed by a user`);
    if (!owned && !kinds.includes(0) && guild)
      throw new CannotAsk(`/${name} cannot be installed in a server`);
    if (guild && needed != null && ((as.permissions ?? MEMBER) & BigInt(needed)) !== BigInt(needed))
      throw new CannotAsk(`/${name} needs other permissions`);
    return command;
  }

  private begin(
    type: 2 | 3 | 4 | 5,
    as: As,
    data: object,
    { source, focused }: { source?: Message | undefined; focused?: number } = {},
  ): { interaction: Interaction; heard: boolean } {
    const { world } = this;
    const { channel, guild, context, owned } = this.place(as);
    const id = world.id();
    const interaction = new Interaction(
      id,
      `${id}.${Buffer.from(id).toString('base64url')}`,
      type,
      world.now(),
      as.user,
      channel,
      owned,
      source,
      focused,
    );
    interaction.customId = (data as { custom_id?: string }).custom_id;
    world.interactions.set(id, interaction);
    world.tokens.set(interaction.token, interaction);
    // In German nothing is shown otherwise than to everybody.
    const locale = as.locale ?? 'de';
    const payload = {
      id,
      application_id: world.applicationId,
      type,
      data,
      token: interaction.token,
      version: 1,
      locale,
      entitlements: [],
      context,
      attachment_size_limit: LIMITS.file,
      app_permissions: String(guild ? (owned ? 0n : guild.botPermissions) : ALL),
      authorizing_integration_owners: owned ? { 1: as.user.id } : { 0: guild?.id ?? '0' },
      channel_id: channel.id,
      channel: channelJson(channel),
      ...(guild
        ? {
            guild_id: guild.id,
            guild: { id: guild.id, locale: guild.locale, features: [] },
            guild_locale: guild.locale,
            member: { ...memberJson(as, world.now()), user: personJson(as.user) },
          }
        : { user: personJson(as.user) }),
      ...(source ? { message: messageJson(source) } : {}),
    };
    this.latest = { payload, guildId: guild?.id };
    // Where the bot is not a member its gateway hears of the interaction all the same.
    const heard = this.gateway.dispatch('INTERACTION_CREATE', payload, guild?.id);
    return { interaction, heard };
  }

  /** Waits until the person sees what she will see. */
  private async see({ interaction, heard }: { interaction: Interaction; heard: boolean }): Promise<Outcome> {
    if (heard) await interaction.until(() => interaction.ack !== undefined, this.patience.first);
    const { ack } = interaction;
    if (ack === 5 || ack === 6) {
      // Where what was announced is taken back, its answer is to follow.
      const told = () =>
        interaction.followUps.length > 0 || (!interaction.loading && interaction.original?.deleted !== true);
      await interaction.until(
        told,
        ack === 5 ? this.patience.settled : Math.min(2_000, this.patience.settled),
      );
    }
    return this.outcome(interaction);
  }

  /** Sends the latest interaction once more, to whoever serves it now, as happens where a line broke and was resumed. */
  repeat(): void {
    if (this.latest) this.gateway.dispatch('INTERACTION_CREATE', this.latest.payload, this.latest.guildId);
  }

  /** What the person sees of an interaction at this moment. */
  outcome(interaction: Interaction): Outcome {
    const { ack, original, followUps, loading } = interaction;
    const gone = original?.deleted === true || (ack === 5 && loading);
    const message = gone ? followUps.at(-1) : ack === 6 && loading ? followUps.at(-1) : original;
    return {
      kind:
        ack === undefined
          ? 'silence'
          : ack === 9
            ? 'modal'
            : ack === 8
              ? 'choices'
              : message === undefined
                ? 'nothing'
                : 'message',
      interaction,
      message,
      ephemeral: message?.only !== undefined,
      deferred: ack === 5 || ack === 6,
      text: message ? textOf(message) : '',
      files: (message?.attachments ?? []).map((file) => ({
        ...file,
        bytes: this.world.files.get(file.id)?.bytes ?? Buffer.alloc(0),
      })),
      choices: interaction.choices ?? [],
      firstMs: interaction.firstMs ?? Number.NaN,
      ms: interaction.ms,
    };
  }

  /** Asks `/path words` with its options. Throws CannotAsk for what the client would not send. */
  async slash(path: string, options: Readonly<Record<string, Given>>, as: As): Promise<Outcome> {
    const [name = '', ...words] = path.replace(/^\//, '').split(' ');
    const command = this.offered(name, 1, as);
    const resolved: Resolved = {};
    const leaf = leafOf(command, words);
    const given = this.fill(leaf, options, resolved, as);
    return this.see(this.begin(2, as, { ...head(command), options: nest(command, words, given), resolved }));
  }

  /** Types in one option of a command; the others may be filled already. */
  async autocomplete(
    path: string,
    options: Readonly<Record<string, Given>>,
    focused: string,
    as: As,
  ): Promise<Outcome> {
    const [name = '', ...words] = path.replace(/^\//, '').split(' ');
    const command = this.offered(name, 1, as);
    const leaf = leafOf(command, words);
    const option = leaf.find((each) => each.name === focused);
    if (option?.autocomplete !== true) throw new CannotAsk(`${focused} does not complete`);
    const given = Object.entries(options).map(([key, value]) => {
      const declared = leaf.find((each) => each.name === key);
      if (!declared) throw new CannotAsk(`no option ${key}`);
      return { name: key, type: declared.type, value, ...(key === focused ? { focused: true } : {}) };
    });
    if (!given.some(({ name: key }) => key === focused))
      given.push({ name: focused, type: option.type, value: '', focused: true });
    const data = { ...head(command), options: nest(command, words, given) };
    return this.see(this.begin(4, as, data, { focused: option.type }));
  }

  /** A command of a message's menu. */
  async messageCommand(name: string, target: Message, as: As): Promise<Outcome> {
    const command = this.offered(name, 3, as);
    this.sees(target, as);
    const data = {
      ...head(command),
      target_id: target.id,
      resolved: { messages: { [target.id]: messageJson(target) } },
    };
    return this.see(this.begin(2, as, data));
  }

  /** A command of a person's menu. */
  async userCommand(name: string, target: Person, as: As): Promise<Outcome> {
    const command = this.offered(name, 2, as);
    const members = as.guild ? { members: { [target.id]: resolvedMember({}, this.world.now()) } } : {};
    const data = {
      ...head(command),
      target_id: target.id,
      resolved: { users: { [target.id]: personJson(target) }, ...members },
    };
    return this.see(this.begin(2, as, data));
  }

  /** Presses a button by its custom id or its label. */
  async press(message: Message, which: string, as: As): Promise<Outcome> {
    const component = this.find(
      message,
      as,
      (each) => each.type === 2 && (each.custom_id === which || each.label === which),
      which,
    );
    if (component.custom_id === undefined) throw new CannotAsk(`${which} opens a link`);
    const data = { component_type: 2, custom_id: component.custom_id };
    return this.see(this.begin(3, { ...as, ...at(message) }, data, { source: message }));
  }

  /** Chooses in a select menu, by values. */
  async select(message: Message, customId: string, values: readonly string[], as: As): Promise<Outcome> {
    const component = this.find(
      message,
      as,
      (each) => each.type === 3 && each.custom_id === customId,
      customId,
    );
    for (const value of values)
      if (component.options?.some((option) => option.value === value) !== true)
        throw new CannotAsk(`${value} is not offered`);
    if (values.length < (component.min_values ?? 1) || values.length > (component.max_values ?? 1))
      throw new CannotAsk(`${values.length} cannot be chosen`);
    const data = { component_type: 3, custom_id: customId, values };
    return this.see(this.begin(3, { ...as, ...at(message) }, data, { source: message }));
  }

  /** Fills in the form that an interaction opened, and sends it. */
  async submitModal(
    opened: Outcome,
    values: Readonly<Record<string, string | readonly string[]>>,
    as: As,
  ): Promise<Outcome> {
    const { modal } = opened.interaction;
    if (!modal) throw new CannotAsk('no form is open');
    const answers = (components: readonly Component[]): object[] =>
      components.map((component) => {
        if (component.component)
          return { type: component.type, component: answers([component.component])[0] };
        if (component.components) return { type: component.type, components: answers(component.components) };
        if (component.type === 3 && component.custom_id !== undefined)
          return { type: 3, custom_id: component.custom_id, values: chosenIn(component, values) };
        if (component.type !== 4 || component.custom_id === undefined) return { type: component.type };
        const given = values[component.custom_id] ?? component.value ?? '';
        if (typeof given !== 'string') throw new CannotAsk(`${component.custom_id} is typed`);
        const value = given;
        const least = component.min_length ?? ((component.required ?? true) ? 1 : 0);
        if (value.length < least && !(value === '' && component.required === false))
          throw new CannotAsk(`${component.custom_id} is too short`);
        if (value.length > (component.max_length ?? LIMITS.modal.input))
          throw new CannotAsk(`${component.custom_id} is too long`);
        return { type: 4, custom_id: component.custom_id, value };
      });
    const known = new Set([...walk(modal.components)].map(({ component }) => component.custom_id));
    for (const key of Object.keys(values)) if (!known.has(key)) throw new CannotAsk(`the form has no ${key}`);
    const data = { custom_id: modal.custom_id, components: answers(modal.components) };
    return this.see(this.begin(5, as, data, { source: opened.interaction.source }));
  }

  /** A person's own message, for the menus of messages. */
  say(channel: Channel, author: Person, content: string, files: readonly GivenFile[] = []): Message {
    const message: Message = {
      id: this.world.id(),
      channel,
      author,
      at: this.world.now(),
      content,
      embeds: [],
      components: [],
      attachments: files.map((file) => this.upload(file)),
      flags: 0,
      allowedMentions: undefined,
      edits: 0,
      deleted: false,
    };
    this.world.messages.set(message.id, message);
    return message;
  }

  /** Writes a message where others see it; returns it with the bot’s reply, undefined where none came in `patience` ms. */
  async write(
    content: string,
    as: As,
    patience = 3_000,
  ): Promise<{ said: Message; heard: boolean; reply: Message | undefined }> {
    const { channel, guild } = this.place(as);
    const said = this.say(channel, as.user, content);
    const { bot } = this.world;
    const mentions = content.includes(`<@${bot.id}>`);
    const payload = {
      ...messageJson(said),
      mentions: mentions ? [personJson(bot)] : [],
      ...(guild ? { guild_id: guild.id, member: memberJson(as, this.world.now()) } : {}),
    };
    const heard = this.gateway.tellMessage(
      payload,
      content,
      { direct: guild === undefined, mentions },
      guild?.id,
    );
    const find = () =>
      [...this.world.messages.values()].find(({ repliesTo, deleted }) => repliesTo === said.id && !deleted);
    const end = performance.now() + patience;
    while (heard && find() === undefined && performance.now() < end)
      await new Promise((resolve) => setTimeout(resolve, 5));
    return { said, heard, reply: find() };
  }

  private sees(message: Message, as: As): void {
    if (message.deleted) throw new CannotAsk('the message is gone');
    if (message.only && message.only !== as.user)
      throw new CannotAsk('the message is not shown to this person');
    if ((message.flags & Flag.loading) !== 0) throw new CannotAsk('the message is not there yet');
  }

  private find(message: Message, as: As, fits: (component: Component) => boolean, called: string): Component {
    this.sees(message, as);
    const found = [...walk(message.components)].find(({ component }) => fits(component))?.component;
    if (!found) throw new CannotAsk(`there is no ${called} on the message`);
    if (found.disabled === true) throw new CannotAsk(`${called} cannot be pressed`);
    return found;
  }

  private fill(
    leaf: readonly CommandOption[],
    options: Readonly<Record<string, Given>>,
    resolved: Resolved,
    as: As,
  ) {
    for (const name of Object.keys(options))
      if (!leaf.some((each) => each.name === name)) throw new CannotAsk(`there is no option ${name}`);
    for (const { name, required } of leaf)
      if (required === true && options[name] === undefined) throw new CannotAsk(`${name} is required`);
    return Object.entries(options).map(([name, value]) => {
      const option = leaf.find((each) => each.name === name);
      if (!option) throw new CannotAsk(`there is no option ${name}`);
      return { name, type: option.type, value: this.value(option, value, resolved, as) };
    });
  }

  /** application-commands.mdx:445: input is validated as it is filled in. */
  private value(option: CommandOption, value: Given, resolved: Resolved, as: As): string | number | boolean {
    const { name, type, choices } = option;
    const cannot = (why: string) => new CannotAsk(`${name}: ${why}`);
    const chosen = choices !== undefined && choices.length > 0;
    if (chosen && !choices.some((each) => each.value === value))
      throw cannot(`${JSON.stringify(value)} is not a choice`);
    switch (type) {
      case OptionType.string:
        if (typeof value !== 'string') throw cannot('text is wanted');
        if (value.length < (option.min_length ?? 0)) throw cannot('too short');
        if (value.length > (option.max_length ?? LIMITS.optionLength)) throw cannot('too long');
        return value;
      case OptionType.integer:
      case OptionType.number:
        if (typeof value !== 'number' || !Number.isFinite(value)) throw cannot('a number is wanted');
        if (type === OptionType.integer && !Number.isSafeInteger(value))
          throw cannot('a whole number is wanted');
        if (value < (option.min_value ?? -LIMITS.number)) throw cannot('too small');
        if (value > (option.max_value ?? LIMITS.number)) throw cannot('too large');
        return value;
      case OptionType.boolean:
        if (typeof value !== 'boolean') throw cannot('yes or no is wanted');
        return value;
      case OptionType.user:
        if (typeof value !== 'object' || !('username' in value)) throw cannot('a person is wanted');
        (resolved.users ??= {})[value.id] = personJson(value);
        if (!this.world.people.has(value.id)) throw cannot('nobody has this id');
        if (as.guild) (resolved.members ??= {})[value.id] = resolvedMember({}, this.world.now());
        return value.id;
      case OptionType.channel:
        if (typeof value !== 'object' || !('guild' in value || 'person' in value))
          throw cannot('a channel is wanted');
        (resolved.channels ??= {})[value.id] = { ...channelJson(value), permissions: String(ALL) };
        return value.id;
      case OptionType.attachment: {
        if (typeof value !== 'object' || !('bytes' in value)) throw cannot('a file is wanted');
        const file = this.upload(value);
        (resolved.attachments ??= {})[file.id] = { ...file, proxy_url: file.url, ephemeral: true };
        return file.id;
      }
      default:
        throw cannot('the driver does not fill this kind in');
    }
  }
}

/** What is chosen in a menu of a form: what is ticked already where nothing is said of it. */
function chosenIn(
  { custom_id: id = '', options = [], min_values: least, max_values: most, required }: Component,
  values: Readonly<Record<string, string | readonly string[]>>,
): readonly string[] {
  const given = values[id] ?? options.filter((option) => option.default === true).map(({ value }) => value);
  const chosen = typeof given === 'string' ? (given === '' ? [] : [given]) : given;
  for (const value of chosen)
    if (!options.some((option) => option.value === value))
      throw new CannotAsk(`${id}: ${value} is not offered`);
  if (chosen.length > (most ?? 1)) throw new CannotAsk(`${id}: ${chosen.length} cannot be chosen`);
  const needed = (required ?? true) ? Math.max(1, least ?? 1) : (least ?? 0);
  if (chosen.length < needed) throw new CannotAsk(`${id}: something must be chosen`);
  return chosen;
}

interface Resolved {
  users?: Record<string, object>;
  members?: Record<string, object>;
  channels?: Record<string, object>;
  attachments?: Record<string, object>;
}

const head = ({ id, name, type, guild_id }: Command) => ({
  id,
  name,
  type,
  ...(guild_id === undefined ? {} : { guild_id }),
});
const at = ({ channel }: Message) => ({ channel, ...(channel.guild ? { guild: channel.guild } : {}) });

/** A member as she comes with an option or a menu: without what stands in the user beside her. */
const resolvedMember = ({ permissions }: Pick<As, 'permissions'>, now: number) => ({
  nick: null,
  avatar: null,
  roles: [],
  joined_at: new Date(now - 86_400_000).toISOString(),
  premium_since: null,
  pending: false,
  communication_disabled_until: null,
  flags: 0,
  permissions: String(permissions ?? MEMBER),
});

const memberJson = (as: As, now: number) => ({ ...resolvedMember(as, now), deaf: false, mute: false });

/** The options of a command or of its subcommand. A base command with subcommands cannot be called. */
function leafOf(command: Command, words: readonly string[]): readonly CommandOption[] {
  let level = command.options ?? [];
  for (const word of words) {
    const next = level.find(({ name, type }) => name === word && type <= 2);
    if (!next) throw new CannotAsk(`/${command.name} has no ${words.join(' ')}`);
    level = next.options ?? [];
  }
  // interactions/application-commands.mdx:558–561
  if (level.some(({ type }) => type <= 2))
    throw new CannotAsk(`/${[command.name, ...words].join(' ')} needs one of its questions named`);
  return level;
}

function nest(command: Command, words: readonly string[], given: object[]): object[] {
  const [word, ...rest] = words;
  if (word === undefined) return given;
  const level = command.options?.find(({ name }) => name === word);
  if (!level) throw new CannotAsk(`/${command.name} has no ${word}`);
  const inner = rest.length === 0 ? given : nest({ ...command, options: level.options }, rest, given);
  return [{ name: word, type: level.type, options: inner }];
}

/** Every word of a message. */
export function textOf(message: Message): string {
  return [
    message.content,
    ...message.embeds.flatMap(({ title, description, fields, footer, author }) => [
      author?.name,
      title,
      description,
      ...(fields ?? []).flatMap(({ name, value }) => [name, value]),
      footer?.text,
    ]),
    ...[...walk(message.components)]
      .filter(({ component }) => component.type === 10)
      .map(({ component }) => component.content),
  ]
    .filter((part) => Boolean(part))
    .join('\n');
}
