/**
 * Which interactions come out of threads. Writing there is a permission of its own, and the client, which keeps no
 * channels here, hands on no kind of channel with an interaction: the platform's own event says it.
 */
import { ChannelType, Events, GatewayDispatchEvents, type BaseInteraction, type Client } from 'discord.js';
import { Recent } from './recent.ts';

const THREADS: readonly unknown[] = [
  ChannelType.PublicThread,
  ChannelType.PrivateThread,
  ChannelType.AnnouncementThread,
];
/** An interaction is asked about as soon as it comes, so few are enough. */
const REMEMBERED = 1_000;

interface Event {
  readonly t?: string | null;
  readonly d?: { readonly id?: unknown; readonly channel?: { readonly type?: unknown } } | null;
}

/** Listens from now on; says of an interaction whether it comes out of a thread. */
export function watchThreads(client: Client): (interaction: Pick<BaseInteraction, 'id'>) => boolean {
  const inThreads = new Recent(REMEMBERED);
  client.on(Events.Raw, ({ t, d }: Event) => {
    if (t !== GatewayDispatchEvents.InteractionCreate || !THREADS.includes(d?.channel?.type)) return;
    if (typeof d?.id === 'string') inThreads.add(d.id);
  });
  return ({ id }) => inThreads.has(id);
}
