/**
 * Messages that are meant for the bot: those that mention it, and direct ones. The platform sends the words of these and
 * of no others as long as the bot does not ask to read messages, and it does not.
 */
import {
  GatewayDispatchEvents,
  GatewayIntentBits,
  InteractionContextType,
  MessageType,
  Routes,
  type GatewayMessageCreateDispatchData,
} from 'discord.js';
import type { Maker, Place } from '../../chat/context.ts';
import { FILE_BYTES } from './limits.ts';
import { listed, raw, type Sent } from './files.ts';
import type { Outbound } from './reply.ts';
import { nameOf } from './typed.ts';

/** What is asked for to hear them; neither is a privileged one. */
export const HEARING = [GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages];

/** A message that asks; it has what an interaction has that an answer is drawn for. */
export interface Heard {
  readonly id: string;
  readonly channel: string;
  readonly guildId: string | null;
  readonly context: InteractionContextType.Guild | InteractionContextType.BotDM;
  readonly user: { readonly id: string };
  readonly maker: Maker;
  /** Without the mention. */
  readonly words: string;
  readonly place: Place;
  readonly attachmentSizeLimit: number;
}

interface Packet {
  readonly t?: string | null;
  readonly d?: unknown;
}

const BY_PEOPLE: readonly unknown[] = [MessageType.Default, MessageType.Reply];

/** Reads an event; undefined where it is no message of a person to this bot. `self` is the bot’s own id. */
export function heardIn({ t, d }: Packet, self: string): Heard | undefined {
  if (t !== GatewayDispatchEvents.MessageCreate) return undefined;
  const { id, channel_id, guild_id, author, member, content, type, webhook_id } =
    d as GatewayMessageCreateDispatchData;
  if (author.bot === true || author.id === self || webhook_id !== undefined || !BY_PEOPLE.includes(type))
    return undefined;
  const mention = new RegExp(`<@!?${self}>`, 'g');
  // An answer to one of the bot’s messages pings it too: only who writes the mention asks.
  if (guild_id !== undefined && !mention.test(content)) return undefined;
  return {
    id,
    channel: channel_id,
    guildId: guild_id ?? null,
    context: guild_id === undefined ? InteractionContextType.BotDM : InteractionContextType.Guild,
    user: { id: author.id },
    maker: { id: author.id, name: nameOf(member?.nick ?? author.global_name ?? author.username) },
    words: content.replace(mention, ' ').replace(/\s+/g, ' ').trim(),
    // What may stand in this channel is not said with a message, so no board is put there from one.
    place:
      guild_id === undefined
        ? { server: `talk${channel_id}`, channel: channel_id, manager: false }
        : { server: guild_id, manager: false },
    attachmentSizeLimit: FILE_BYTES,
  };
}

interface Posts {
  post(route: `/${string}`, options: object): Promise<unknown>;
}

/** Answers as a reply that pings nobody. Once for each message, even where the line breaks under it. */
export async function replyTo(rest: Posts, { id, channel }: Heard, message: Outbound): Promise<void> {
  const { content, embeds, components } = message;
  const files: readonly Sent[] = message.files ?? [];
  await rest.post(Routes.channelMessages(channel), {
    body: {
      content,
      embeds,
      components,
      attachments: listed(files),
      nonce: id,
      enforce_nonce: true,
      message_reference: { message_id: id, fail_if_not_exists: false },
      allowed_mentions: { parse: [], replied_user: false },
    },
    files: raw(files),
  });
}
