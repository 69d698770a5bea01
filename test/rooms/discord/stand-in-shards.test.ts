/** The stand-in with several clients at once, as several processes of one bot are: shards, and what is delivered twice. */
import { Client, DiscordAPIError, Events, type Interaction } from 'discord.js';
import { afterEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import { openStandIn, type StandIn, type StandInOptions } from './stand-in/index.ts';

const open: { close(): Promise<void> }[] = [];
afterEach(async () => {
  for (const one of open.splice(0).reverse()) await one.close();
});

async function opened(options: StandInOptions = {}): Promise<StandIn> {
  const platform = await openStandIn(options);
  open.push(platform);
  return platform;
}

/** A client of some shards; says its name to everything. Gives what the platform refused it. */
async function serve(platform: StandIn, name: string, shards: number[] | 'auto', all?: number) {
  const client = new Client({
    intents: ['Guilds'],
    rest: { api: platform.api },
    shards,
    ...(all === undefined ? {} : { shardCount: all }),
  });
  const refused: unknown[] = [];
  client.on(Events.InteractionCreate, (interaction: Interaction) => {
    if (interaction.isChatInputCommand())
      interaction.reply(name).catch((error: unknown) => refused.push((error as DiscordAPIError).code));
  });
  const ready = new Promise((done) => client.once(Events.ClientReady, done));
  await client.login(platform.token);
  await ready;
  open.push({ close: () => client.destroy() });
  await client.rest.put(`/applications/${platform.world.applicationId}/commands`, {
    body: [{ name: 'who', description: 'Who answers' }],
  });
  return { client, refused };
}

describe('several clients of one bot', () => {
  // Source: events/gateway.mdx, sharding: shard_id = (guild_id >> 22) % num_shards; direct messages go to shard 0.
  it('are told of their own servers alone, direct messages by the first shard', async () => {
    const platform = await opened();
    const guilds = [0, 1, 2].map((shard) => platform.guild(`Allotment ${shard}`, { shard: [shard, 3] }));
    // A client waits five seconds between two shards of its own, so each has one.
    const all = await Promise.all(
      ['one', 'two', 'three'].map((name, shard) => serve(platform, name, [shard], 3)),
    );
    expect(all.map(({ client }) => client.guilds.cache.map(({ name }) => name))).toEqual(
      [0, 1, 2].map((shard) => [`Allotment ${shard}`]),
    );
    const user = platform.person('rowan');
    const heard = [];
    for (const guild of guilds) heard.push((await platform.slash('who', {}, { user, guild })).text);
    heard.push((await platform.slash('who', {}, { user })).text);
    expect(heard).toEqual(['one', 'two', 'three', 'one']);
    for (const { callbacks } of platform.world.interactions.values()) expect(callbacks).toBe(1);
    platform.gateway.drop(1);
    expect(platform.gateway.served).toHaveLength(2);
  });

  it('of the same shard are both told, and the second answer is refused', async () => {
    const platform = await opened();
    const both = [await serve(platform, 'one', [0], 1), await serve(platform, 'two', [0], 1)];
    const seen = await platform.slash('who', {}, { user: platform.person('rowan') });
    await expect.poll(() => both.flatMap(({ refused }) => refused)).toEqual([40060]);
    expect(['one', 'two']).toContain(seen.text);
    expect(seen.interaction.callbacks).toBe(2);
    expect(seen.interaction.failures).toEqual([{ status: 400, code: 40060 }]);
  });

  it('of which one takes over are told again what the other was told', async () => {
    const platform = await opened();
    const first = await serve(platform, 'one', [0], 1);
    expect((await platform.slash('who', {}, { user: platform.person('rowan') })).text).toBe('one');
    await first.client.destroy();
    const second = await serve(platform, 'two', [0], 1);
    platform.driver.repeat();
    await expect.poll(() => second.refused).toEqual([40060]);
  });

  it('are advised of shards, and not let in faster than is told', async () => {
    let now = Date.now();
    const platform = await opened({ shards: 7, identifyGap: 5_000, now: () => now });
    const told = await fetch(`${platform.api}/v10/gateway/bot`, {
      headers: { authorization: `Bot ${platform.token}` },
    });
    expect(await told.json()).toMatchObject({ shards: 7, session_start_limit: { max_concurrency: 1 } });
    /** The first thing said after hello. */
    const identify = (shard: number) =>
      new Promise<{ op: number; t: string | null }>((done) => {
        const socket = new WebSocket(`${platform.files.replace('http', 'ws')}/gateway?v=10&encoding=json`);
        socket.on('message', (data: Buffer) => {
          const said = JSON.parse(data.toString()) as { op: number; t: string | null };
          if (said.op !== 10) done(said);
        });
        socket.on('open', () =>
          socket.send(
            JSON.stringify({
              op: 2,
              d: { token: platform.token, intents: 0, properties: {}, shard: [shard, 7] },
            }),
          ),
        );
      });
    expect(await identify(0)).toMatchObject({ op: 0, t: 'READY' });
    expect(await identify(1)).toMatchObject({ op: 9, d: false });
    now += 5_000;
    expect(await identify(1)).toMatchObject({ op: 0, t: 'READY' });
  });
});
