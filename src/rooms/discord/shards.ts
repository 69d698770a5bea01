/** Which of the bot's shards this process serves, and so which servers: the others are another process's. */
import { ShardClientUtil, type ClientOptions } from 'discord.js';

/** Some of all shards; every one of them, as many as the platform advises, where it is not said. */
export interface Shards {
  readonly mine: readonly number[];
  readonly all: number;
}

/** The client's options for them. */
export const shardOptions = (shards: Shards | undefined): Pick<ClientOptions, 'shards' | 'shardCount'> =>
  shards === undefined ? { shards: 'auto' } : { shards: [...shards.mine], shardCount: shards.all };

/** Whether a server's events come to this process. What belongs to no server comes to the first shard. */
export function serves(shards: Shards | undefined, server: string | undefined): boolean {
  if (shards === undefined) return true;
  const shard = server === undefined ? 0 : ShardClientUtil.shardIdForGuildId(server, shards.all);
  return shards.mine.includes(shard);
}
