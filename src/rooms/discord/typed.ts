/** From what the platform sends to what every room asks with: words and options as text. */
import {
  ApplicationCommandOptionType as Type,
  ApplicationIntegrationType,
  InteractionContextType,
  PermissionFlagsBits,
  type APIInteractionDataResolvedGuildMember,
  type BaseInteraction,
  type CommandInteractionOption,
} from 'discord.js';
import { TALK, type Maker, type Place } from '../../chat/context.ts';
import type { RawOptions } from '../../chat/line.ts';
import { inOwnUnits, isAttachment } from '../../chat/options.ts';
import { readyOptions } from '../../chat/ready-options.ts';
import type { Route } from '../../chat/registry.ts';
import { defined } from '../../core/base/defined.ts';
import { plain, type Reader } from '../../core/base/reader.ts';
import type { Asked } from './asked.ts';
import { SEEN_BY } from './declare.ts';
import type { AttachedFile } from './files.ts';
import { mentionOf, peopleAmong, type People } from './people.ts';
import type { Thread } from './threads.ts';
import { oneLine, unquoted } from './text.ts';

export interface Pressed {
  readonly words: readonly string[];
  readonly typed: Readonly<Record<string, string>>;
  /** Options that are files, still to be fetched. */
  readonly attached: readonly (readonly [option: string, attachment: AttachedFile])[];
  /** What was chosen for this one answer. */
  readonly seenBy: string | undefined;
  /** Those whom its options name. */
  readonly people: ReadonlyMap<string, Maker>;
}

/** The words of a slash command, and the options behind them. */
function takenApart(name: string, data: readonly CommandInteractionOption[]) {
  const words = [name];
  let options = data;
  for (;;) {
    const [first] = options;
    if (first?.type !== Type.Subcommand && first?.type !== Type.SubcommandGroup) return { words, options };
    words.push(first.name);
    options = first.options ?? [];
  }
}

/** The words of a slash command, and which options stand behind them. */
export function outlineOf(name: string, data: readonly CommandInteractionOption[]) {
  const { words, options } = takenApart(name, data);
  return {
    path: words.join(' '),
    has: (option: string) => options.some((one) => one.name === option),
    /** Whether a file is attached. */
    attaches: options.some(({ type }) => type === Type.Attachment),
  };
}

/** Reads a slash command: its words, its options as people would type them. Throws Problem: person-is-a-bot. */
export function readCommand(name: string, data: readonly CommandInteractionOption[]): Pressed {
  const { words, options } = takenApart(name, data);
  const typed: [string, string][] = [];
  const attached: [string, AttachedFile][] = [];
  let seenBy: string | undefined;
  let people: People = NOBODY;
  for (const { name: option, type, value, attachment, user, member } of options) {
    if (option === SEEN_BY) seenBy = String(value);
    else if (type === Type.String) typed.push([option, unquoted(String(value))]);
    else if (typeof value === 'boolean') typed.push([option, value ? 'yes' : 'no']);
    else if (type === Type.Attachment && attachment) attached.push([option, attachment]);
    else if (type === Type.User && user) {
      people = peopleAmong([{ ...makerOf({ user, member: member ?? null }), bot: user.bot }], option);
      typed.push([option, mentionOf(user.id)]);
    } else if (value !== undefined) typed.push([option, String(value)]);
  }
  return { words, typed: Object.fromEntries(typed), attached, seenBy, people };
}

const NOBODY: People = new Map();

/**
 * What asks the same again, whoever's units and terms it is read with; undefined for a question that changes something,
 * and for one whose options are files.
 */
export function askedAgain({ question, path }: Route, typed: RawOptions, reader: Reader): Asked | undefined {
  if (question.changes) return undefined;
  const options: Record<string, string> = {};
  for (const { name, meta } of readyOptions(question.options).all) {
    const text = typed[name];
    if (text === undefined || question.onceOnly?.includes(name)) continue;
    if (isAttachment(meta.kind)) return undefined;
    options[name] = inOwnUnits(meta.kind, text, reader);
  }
  return { question: path, options };
}

/** Who asks: her id is the platform's, her name what this server calls her. */
export function makerOf({
  user,
  member,
}: Pick<BaseInteraction, 'user'> & {
  readonly member: BaseInteraction['member'] | APIInteractionDataResolvedGuildMember;
}): Maker {
  const nick = member && ('displayName' in member ? member.displayName : member.nick);
  return { id: user.id, name: nameOf(nick ?? user.globalName ?? user.username) };
}

/** A name as it is kept and shown. */
export function nameOf(called: string): string {
  const name = oneLine(plain(called)).slice(0, 60);
  return name === '' ? 'a maker' : name;
}

/** A mention, or an id alone. */
const MENTION = /^<@!?(\d{5,20})>$|^(\d{15,20})$/;

/** Whom a mention means. Who she is called there is not in it. */
export function personNamed(typed: string): Maker | undefined {
  const [, mentioned, bare] = MENTION.exec(typed.trim()) ?? [];
  const id = mentioned ?? bare;
  return id === undefined ? undefined : { id, name: 'a maker' };
}

/** What a board needs of this bot, beside the permission to write; answers to questions need nothing. */
const FOR_BOARDS: ReadonlyMap<bigint, string> = new Map([
  [PermissionFlagsBits.ViewChannel, 'View Channel'],
  [PermissionFlagsBits.EmbedLinks, 'Embed Links'],
  [PermissionFlagsBits.AttachFiles, 'Attach Files'],
]);
/** What a thread with the board pinned in it needs, beside what the board needs. */
const FOR_THREADS: ReadonlyMap<bigint, string> = new Map([
  [PermissionFlagsBits.CreatePublicThreads, 'Create Public Threads'],
  [PermissionFlagsBits.SendMessagesInThreads, 'Send Messages in Threads'],
  [PermissionFlagsBits.PinMessages, 'Pin Messages'],
]);
/** What an event for the closing day needs; its own events the bot may change and remove with it. */
const FOR_EVENTS: ReadonlyMap<bigint, string> = new Map([
  [PermissionFlagsBits.CreateEvents, 'Create Events'],
]);
/** All of these. */
export const BOARD_PERMISSIONS = [FOR_BOARDS, FOR_THREADS, FOR_EVENTS].flatMap((some) => [...some.keys()]);

/** How writing is allowed in a place, what the platform calls it, and all that may be done there if nothing is lacking. */
const writingBy = (permission: bigint, name: string) => ({
  permission,
  name,
  all: BOARD_PERMISSIONS.reduce((all, one) => all | one, permission),
});
const IN_CHANNELS = writingBy(PermissionFlagsBits.SendMessages, 'Send Messages');
const IN_THREADS = writingBy(PermissionFlagsBits.SendMessagesInThreads, 'Send Messages in Threads');

const NOTHING: readonly never[] = [];

/**
 * Where she asks; the permission is what the platform says of this very interaction. A conversation outside of servers
 * is a place of its own: what people share there stays among them.
 */
export function placeOf(interaction: BaseInteraction, thread?: Thread): Place {
  const { guildId, channelId, memberPermissions, appPermissions } = interaction;
  const writing = thread === undefined ? IN_CHANNELS : IN_THREADS;
  const hasAll = guildId === null || appPermissions.has(writing.all);
  const missing = (some: Iterable<readonly [bigint, string]>) =>
    [...some].flatMap(([permission, name]) => (appPermissions.has(permission) ? [] : [name]));
  const lacks = hasAll ? NOTHING : missing([...FOR_BOARDS, [writing.permission, writing.name]]);
  const lacksFor = hasAll ? undefined : { thread: missing(FOR_THREADS), event: missing(FOR_EVENTS) };
  const mute =
    guildId === null
      ? undefined
      : memberPermissions?.has(writing.permission) !== true
        ? ('asker' as const)
        : lacks.length === 0
          ? undefined
          : ('bot' as const);
  return defined({
    server: guildId ?? (channelId === null ? undefined : `${TALK}${channelId}`),
    mute,
    lacks: lacks.length === 0 ? undefined : lacks,
    lacksFor: lacksFor && lacksFor.thread.length + lacksFor.event.length > 0 ? lacksFor : undefined,
    // Where only she installed the app, nothing of ours can stand in the channel.
    channel: channelId !== null && isMember(interaction) ? channelId : undefined,
    within: thread?.within,
    manager: guildId !== null && (memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false),
  });
}

/** Whether the bot is in this place itself, not only the installation of whoever asks. */
const isMember = (interaction: BaseInteraction) =>
  isAlone(interaction) ||
  interaction.authorizingIntegrationOwners[ApplicationIntegrationType.GuildInstall] !== undefined;

/** Whether nobody else reads along anyway. */
export const isAlone = ({ context, guildId }: Pick<BaseInteraction, 'context' | 'guildId'>) =>
  context === InteractionContextType.BotDM || (context === null && guildId === null);
