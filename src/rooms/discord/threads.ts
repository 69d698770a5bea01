/**
 * Which interactions come out of threads, and of which channel. Writing there is a permission of its own, and the client,
 * which keeps no channels here, hands on no kind of channel with an interaction: the platform's own event says it.
 */
import { ChannelType, Events, GatewayDispatchEvents, type BaseInteraction, type Client } from 'discord.js';
import { Latest } from './recent.ts';

const THREADS: readonly unknown[] = [
  ChannelType.PublicThread,
  ChannelType.PrivateThread,
  ChannelType.AnnouncementThread,
];
/** An interaction is asked about as soon as it comes, so few are enough. */
const REMEMBERED = 1_000;

interface Event {
  readonly t?: string | null;
  readonly d?: {
    readonly id?: unknown;
    readonly channel?: { readonly type?: unknown; readonly parent_id?: unknown };
  } | null;
}

/** A thread that an interaction comes out of. */
export interface Thread {
  /** The channel that it belongs to, where the platform says so. */
  readonly within?: string;
}

/** Listens from now on; says of an interaction out of which thread it comes, undefined for none. */
export function watchThreads(
  client: Client,
): (interaction: Pick<BaseInteraction, 'id'>) => Thread | undefined {
  const inThreads = new Latest<Thread>(REMEMBERED);
  client.on(Events.Raw, ({ t, d }: Event) => {
    if (t !== GatewayDispatchEvents.InteractionCreate || !THREADS.includes(d?.channel?.type)) return;
    const { id, channel } = d ?? {};
    const within = channel?.parent_id;
    if (typeof id === 'string') inThreads.put(id, typeof within === 'string' ? { within } : {});
  });
  return ({ id }) => inThreads.get(id);
}
