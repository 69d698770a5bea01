/** What managers chose for their servers: which choice holds, and that it is kept. */
import { describe, expect, it } from 'vitest';
import { FileStore } from '../../src/projects/file-store.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { MOST_CHANNELS, Servers } from '../../src/projects/servers.ts';
import { newFolder, tree } from './kinds.ts';

const server = '400000000000000001';
const usual = {
  craft: { by: 'channel', chosen: undefined },
  own: { by: 'asker', chosen: undefined },
};

describe('who sees answers', () => {
  it('is as usual where nobody chose', async () => {
    expect(await new Servers(new MemoryStore()).seen({ server, channel: '1' })).toEqual(usual);
  });

  it('is chosen for a channel before the server, for a thread before its channel', async () => {
    const servers = new Servers(new MemoryStore());
    await servers.choose({ server }, { craft: 'asker', own: 'channel' });
    await servers.choose({ server, channel: '1' }, { craft: 'channel' });
    await servers.choose({ server, channel: '11' }, { craft: 'asker' });
    const craft = async (channel?: string, within?: string) =>
      (await servers.seen({ server, channel, within })).craft;
    expect(await craft()).toEqual({ by: 'asker', chosen: 'server' });
    expect(await craft('2')).toEqual({ by: 'asker', chosen: 'server' });
    expect(await craft('1')).toEqual({ by: 'channel', chosen: 'channel' });
    // A thread is of its channel, unless something was chosen for itself.
    expect(await craft('12', '1')).toEqual({ by: 'channel', chosen: 'channel' });
    expect(await craft('11', '1')).toEqual({ by: 'asker', chosen: 'channel' });
    expect((await servers.seen({ server, channel: '1' })).own).toEqual({ by: 'channel', chosen: 'server' });
    // Another server is not touched.
    expect(await servers.seen({ server: '400000000000000002', channel: '1' })).toEqual(usual);
  });

  it('is taken back with nothing left of it', async () => {
    const store = new MemoryStore();
    const servers = new Servers(store);
    await servers.choose({ server, channel: '1' }, { craft: 'asker' });
    await servers.choose({ server }, { own: 'channel' });
    await servers.choose({ server, channel: '1' }, { craft: 'usual' });
    await servers.choose({ server }, { own: 'usual', craft: 'usual' });
    expect(await servers.seen({ server, channel: '1' })).toEqual(usual);
  });

  it('is chosen for a bounded number of channels, of which each can still be changed', async () => {
    const servers = new Servers(new MemoryStore());
    for (let channel = 0; channel < MOST_CHANNELS; channel += 1)
      await servers.choose({ server, channel: `${channel}` }, { craft: 'asker' });
    await expect(servers.choose({ server, channel: 'more' }, { craft: 'asker' })).rejects.toMatchObject({
      code: 'too-many-channels',
      facts: { most: MOST_CHANNELS },
    });
    await servers.choose({ server, channel: '7' }, { craft: 'usual' });
    await servers.choose({ server, channel: 'more' }, { craft: 'asker' });
    await servers.choose({ server }, { craft: 'asker' });
  });

  it('is kept on the disk, and a file that cannot be read chooses nothing', async () => {
    const folder = newFolder();
    const store = await FileStore.open({ folder, stays: true });
    await new Servers(store).choose({ server, channel: '1' }, { craft: 'asker' });
    await store.close();
    expect(tree(folder)).toContain(`servers/${server}.json`);
    const again = await FileStore.open({ folder, stays: true });
    expect((await new Servers(again).seen({ server, channel: '1' })).craft.by).toBe('asker');
    await again.close();
  });
});
