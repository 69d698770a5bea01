/** A group blanket's thread and its event, through the real client: made, kept up to date, ended. */
import { PermissionFlagsBits } from 'discord.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { hoursOf } from '../../../src/rooms/discord/surroundings.ts';
import { openHarness, type Harness } from './harness.ts';
import { MEMBER, type As, type Channel, type Guild } from './stand-in/index.ts';

/** All but the one that stands for all. */
const ALL = ((1n << 53n) - 1n) & ~PermissionFlagsBits.Administrator;
let harness: Harness;
beforeAll(async () => {
  harness = await openHarness({ boardGap: 10 });
});
afterAll(() => harness.close());

const settled = () => harness.room.boards.settled();
const said = async (line: string, as: As) => {
  const seen = await harness.line(line, as);
  expect(harness.answered(seen), `${line}: ${seen.text}`).toBe(true);
  await settled();
  return seen;
};
const refused = async (line: string, as: As) => {
  const seen = await harness.line(line, as);
  expect(harness.answered(seen), `${line}: ${seen.text}`).toBe(false);
  return seen.text;
};
const standing = (channel: Channel) =>
  [...harness.platform.world.messages.values()].filter(
    (message) =>
      message.channel === channel &&
      !message.deleted &&
      message.only === undefined &&
      message.components.some((row) => row.components?.some(({ label }) => label === 'What I hold')),
  );
const threadsOf = (channel: Channel) =>
  [...harness.platform.world.channels.values()].filter(({ parent }) => parent === channel);
const eventsOf = (guild: Guild) =>
  [...harness.platform.world.events.values()].filter((event) => event.guild === guild);

/** A server with an open blanket in a channel of its own, and its organiser. */
async function opened(name: string, { permissions = ALL, closes = 'closes:2031-05-31' } = {}) {
  const guild = harness.platform.guild(name, { botPermissions: permissions });
  const channel = harness.platform.channel(guild, 'throw');
  const host: As = { user: harness.platform.person('ines'), guild, channel };
  await said('/motif define name:furrow shape:diagonal size:12 gauge:13x10', host);
  await said(`/blanket start name:"${name}" kinds:furrow columns:3 rows:3`, host);
  await said(`/together open blanket:"${name}" ${closes}`, host);
  return { guild, channel, host };
}

describe('a thread of its own', () => {
  it('has the board as its first message, pinned, and the channel has it no more', async () => {
    const { channel, host, guild } = await opened('Shore');
    expect(standing(channel)).toHaveLength(1);
    await said('/host announce thread:yes', host);
    const [thread, another] = threadsOf(channel);
    expect([thread?.name, another]).toEqual(['Shore', undefined]);
    const first = [...harness.platform.world.messages.values()].find((message) => message.channel === thread);
    expect(standing(thread!)).toEqual([first]);
    expect(first).toMatchObject({ pinned: true });
    expect(standing(channel)).toEqual([]);
    // It is meant in its thread, in the channel that it came from, and nowhere else of the server.
    const rowan = { user: harness.platform.person('rowan'), guild };
    expect((await said('/together pledge', { ...rowan, channel: thread! })).text).toContain('furrow');
    expect((await said('/together pledge', { ...rowan, channel })).text).toContain('furrow');
    expect(standing(thread!)).toEqual([first]);
    expect(first!.content).toContain('2 pledged');
    // Asked once more, it has what it has.
    await said('/host announce thread:yes', host);
    expect(threadsOf(channel)).toHaveLength(1);
    // It goes back where the organiser wants it there.
    await said('/host announce thread:no', { ...host, channel: thread! });
    expect([standing(thread!).length, standing(channel).length]).toEqual([0, 1]);
  });

  it('is asked for by the organiser, where a thread can be, and where this bot may make one', async () => {
    const { channel, host, guild } = await opened('Ridge', {
      permissions: ALL & ~PermissionFlagsBits.CreatePublicThreads & ~PermissionFlagsBits.PinMessages,
    });
    const fern = { user: harness.platform.person('fern'), guild, channel, permissions: MEMBER };
    expect(await refused('/host announce thread:yes', fern)).toContain('organiser');
    expect(await refused('/host announce thread:yes', host)).toContain('Create Public Threads, Pin Messages');
    const thread = harness.platform.channel(guild, 'talk', 11, channel);
    expect(await refused('/host announce thread:yes', { ...host, channel: thread })).toContain(
      'a thread already',
    );
    await settled();
    expect(threadsOf(channel)).toEqual([thread]);
    expect(standing(channel)).toHaveLength(1);
  });

  it('that the platform refuses after all leaves the board where it stands', async () => {
    const { channel, host } = await opened('Heath');
    harness.platform.befall({ method: 'POST', path: /threads$/, how: 500, times: 4 });
    await said('/host announce thread:yes', host);
    expect(standing(channel)).toHaveLength(1);
    // It is tried again with the next change.
    await said('/together pledge', host);
    const [thread] = threadsOf(channel);
    expect(standing(thread!)).toHaveLength(1);
    expect(harness.faults).toEqual([]);
  });

  it('is made nowhere once the board has moved on before it was there, however often it changes', async () => {
    const { channel, host, guild } = await opened('Combe');
    harness.platform.befall({ method: 'POST', path: /threads$/, how: 500, times: 4 });
    await said('/host announce thread:yes', host);
    const elsewhere = { ...host, channel: harness.platform.channel(guild, 'elsewhere') };
    await said('/together board here:yes name:Combe', elsewhere);
    for (let change = 0; change < 3; change++) await said('/together pledge name:Combe', elsewhere);
    expect(threadsOf(channel)).toEqual([]);
    expect([standing(channel).length, standing(elsewhere.channel).length]).toEqual([0, 1]);
    // A document of before, in which it is wanted still.
    const id = `${guild.id}.combe`;
    const kept = await harness.projects.groups.wantThread(id, channel.id);
    await harness.projects.groups.moveBoard(id, elsewhere.channel.id);
    expect((await harness.projects.groups.read(id))?.thread).toBeUndefined();
    expect(kept.thread).toEqual({ from: channel.id });
    expect(harness.faults).toEqual([]);
  });

  it('that was deleted takes the board along, which stands anew where it is next asked for', async () => {
    const { channel, host } = await opened('Croft');
    await said('/host announce thread:yes', host);
    const [thread] = threadsOf(channel);
    harness.platform.world.channels.delete(thread!.id);
    await said('/together pledge name:Croft', host);
    await said('/together board name:Croft', host);
    expect(standing(channel)).toHaveLength(1);
    expect(harness.faults).toEqual([]);
  });
});

describe('an event for the closing day', () => {
  it('says the day, goes with it, and ends when the blanket is closed', async () => {
    const { host, guild } = await opened('Dell');
    expect(eventsOf(guild)).toEqual([]);
    await said('/host announce event:yes', host);
    const [event] = eventsOf(guild);
    expect(event).toMatchObject({
      name: expect.stringContaining('Dell') as string,
      begins: '2031-05-31T00:00:00.000Z',
      ends: '2031-05-31T23:59:00.000Z',
    });
    await said('/host reopen closes:2031-06-30', host);
    expect(eventsOf(guild).map(({ id, begins }) => [id, begins])).toEqual([
      [event!.id, '2031-06-30T00:00:00.000Z'],
    ]);
    // What changes nothing about the day asks the platform nothing.
    const calls = () =>
      harness.platform.world.calls.filter(({ path }) => path.includes('scheduled-events')).length;
    const before = calls();
    await said('/together pledge', host);
    expect(calls()).toBe(before);
    await said('/host close', host);
    expect(eventsOf(guild)).toEqual([]);
    // Open again, it is wanted still.
    await said('/host reopen', host);
    expect(eventsOf(guild)).toHaveLength(1);
    await said('/host announce event:no', host);
    expect(eventsOf(guild)).toEqual([]);
  });

  it('needs a closing day and the permission, which is named', async () => {
    const without = await opened('Weir', { closes: '' });
    expect(await refused('/host announce event:yes', without.host)).toContain('no closing day');
    const { host, guild } = await opened('Holt', { permissions: ALL & ~PermissionFlagsBits.CreateEvents });
    expect(await refused('/host announce event:yes', host)).toContain('Create Events');
    await settled();
    expect(eventsOf(guild)).toEqual([]);
  });

  it('that somebody removed is not made again until it is asked for', async () => {
    const { host, guild } = await opened('Fold');
    await said('/host announce event:yes', host);
    harness.platform.world.events.delete(eventsOf(guild)[0]!.id);
    await said('/host reopen closes:2031-06-30', host);
    await said('/together pledge', host);
    expect(eventsOf(guild)).toEqual([]);
    await said('/host announce event:yes', host);
    expect(eventsOf(guild)).toHaveLength(1);
    expect(harness.faults).toEqual([]);
  });

  it('is of that day alone, and of what is left of it', () => {
    const at = (moment: string) => new Date(`2031-05-31T${moment}Z`);
    expect(hoursOf('2031-05-31', new Date('2031-05-01T12:00:00Z'))).toEqual({
      begins: '2031-05-31T00:00:00.000Z',
      ends: '2031-05-31T23:59:00.000Z',
    });
    expect(hoursOf('2031-05-31', at('12:00:00'))?.begins).toBe('2031-05-31T12:01:00.000Z');
    expect(hoursOf('2031-05-31', at('23:58:30'))).toBeUndefined();
    expect(hoursOf('2031-05-31', new Date('2031-06-01T00:00:00Z'))).toBeUndefined();
  });
});

describe('a board whose channel is gone', () => {
  it('is put nowhere by words that somebody else wrote', async () => {
    const { guild, channel, host } = await opened('Leat');
    const { id } = (await harness.projects.groups.named(guild.id, 'Leat'))!.doc;
    await harness.projects.groups.loseBoard(id, channel.id);
    const other = harness.platform.channel(guild, 'other');
    const fern = { user: harness.platform.person('fern'), guild, channel: other };
    const words = harness.platform.say(other, host.user, 'show the board');
    const seen = await harness.platform.messageCommand('Work this out', words, fern);
    expect(seen.text).toContain('Leat');
    await settled();
    expect(standing(other)).toEqual([]);
    expect((await harness.projects.groups.read(id))?.channel).toBeUndefined();
    // Who asks for it herself has it there.
    await said('/together board', fern);
    expect(standing(other)).toHaveLength(1);
  });
});

describe('elsewhere', () => {
  it('there is no thread and no event in a direct message, and the invitation asks for what they need', async () => {
    const host: As = { user: harness.platform.person('ines') };
    await said('/motif define name:furrow shape:diagonal size:12 gauge:13x10', host);
    await said('/blanket start name:Alone kinds:furrow columns:3 rows:3', host);
    await said('/together open blanket:Alone closes:2031-05-31', host);
    expect(await refused('/host announce thread:yes', host)).toContain('no channel here');
    expect(await refused('/host announce event:yes', host)).toContain('no server here');
    const asked = BigInt(new URL(harness.room.invite).searchParams.get('permissions')!);
    const { CreatePublicThreads, SendMessagesInThreads, PinMessages, CreateEvents } = PermissionFlagsBits;
    for (const permission of [CreatePublicThreads, SendMessagesInThreads, PinMessages, CreateEvents])
      expect(asked & permission).toBe(permission);
    expect(harness.platform.world.complaints).toEqual([]);
  });
});
