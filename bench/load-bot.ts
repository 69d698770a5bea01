/** A bot in a process of its own, so that its processor time is its own: for `load.ts`. Ours, or one that says a fixed string. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Client, Events } from 'discord.js';
import { registry } from '../commands/index.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { Projects } from '../src/projects/projects.ts';
import { DiskThread } from '../src/projects/disk-thread.ts';
import { declaration } from '../src/rooms/discord/declare.ts';
import { openDiscordRoom } from '../src/rooms/discord/run.ts';
import type { FromBot, ToBot } from './load-process.ts';

/** Says the same to everything, in the way that the client's guide shows: what the client and the platform cost by themselves. */
async function openFixed(api: string, token: string): Promise<() => Promise<void>> {
  const client = new Client({ intents: [], rest: { api } });
  const components = [{ type: 1, components: [{ type: 2, style: 1, label: 'Again', custom_id: 'again' }] }];
  const said = { content: 'Fixed.', components, allowedMentions: { parse: [] } };
  client.on(Events.InteractionCreate, (interaction) => {
    if (interaction.isChatInputCommand()) void interaction.reply(said);
    else if (interaction.isButton()) void interaction.update(said);
  });
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(token);
  const { application } = await ready;
  await client.rest.put(`/applications/${application.id}/commands`, {
    body: registry.commands.map(declaration),
  });
  return () => client.destroy();
}

async function openOurs(api: string, token: string, folder: string): Promise<() => Promise<void>> {
  const store = await FileStore.open({ folder, stays: true, thread: new DiskThread() });
  const silent = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const room = await openDiscordRoom({
    registry,
    projects: new Projects(store),
    token,
    api,
    log: silent,
    fault: (error) => {
      throw error;
    },
    pace: { burst: 1e9, perSecond: 1e9 },
  });
  return async () => {
    await room.close();
    await store.close();
  };
}

/** MiB that are held, after a collection. */
function heap(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().heapUsed / 1024 / 1024;
}

const tell = (told: FromBot) => process.send?.(told);
let close = () => Promise.resolve();
process.on('message', (asked: ToBot) => {
  if (asked.ask === 'open') {
    const { bot, api, token, folder } = asked;
    (bot === 'ours' ? openOurs(api, token, folder) : openFixed(api, token)).then(
      (closing) => {
        close = closing;
        tell({ told: 'open' });
      },
      (error: unknown) => tell({ error: String(error) }),
    );
  } else if (asked.ask === 'heap') tell({ told: 'heap', heap: heap() });
  else {
    const { user, system } = process.cpuUsage();
    tell({ told: 'cpu', cpu: (user + system) / 1000 });
  }
});
process.on('disconnect', () => {
  void close().finally(() => process.exit(0));
});
