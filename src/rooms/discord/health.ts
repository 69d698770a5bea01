/** One line of the log every few minutes: how this process does, and which shards are its. */
import type { Client } from 'discord.js';
import type { Boards } from './boards.ts';
import type { PartPosts } from './part-posts.ts';
import type { DiscordRoom } from './room.ts';
import type { DiscordParts } from './run.ts';

const HEALTH_MS = 5 * 60_000;

/** Numbers that follow one another as `0-3`. */
function runsOf(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last?.[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(',');
}

/** Which shards are served here, of how many: `0-3 of 8`. Counts in a line of the log are of these alone. */
export const shardsOf = ({ ws, options }: Pick<Client, 'ws' | 'options'>) => ({
  shards: `${runsOf([...ws.shards.keys()])} of ${options.shardCount ?? ws.shards.size}`,
});

/** Says it from now on, until what is returned is called. */
export function sayHealth(
  { log, projects, queue }: Pick<DiscordParts, 'log' | 'projects' | 'queue'>,
  client: Client<true>,
  { room, boards, posts }: { room: DiscordRoom; boards: Boards; posts: PartPosts },
): () => void {
  const timer = setInterval(() => {
    const facts = {
      ...shardsOf(client),
      ...room.metrics.read(),
      servers: client.guilds.cache.size,
      ping: Math.round(client.ws.ping),
      queue: queue?.() ?? 0,
      // Documents that were asked for and cannot be read: whoever runs this should look at them.
      unreadable: projects.store.unreadable,
      boards: boards.sent,
      parts: posts.sent,
      memory: Math.round(process.memoryUsage.rss() / 1024 / 1024),
    };
    log.info(facts, 'health');
  }, HEALTH_MS);
  timer.unref();
  return () => clearInterval(timer);
}
