/** A board stands only where the one who opens it may write herself: nobody speaks through the bot where she is silenced. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openHarness, type Harness } from '../rooms/discord/harness.ts';
import { MANAGER, MEMBER, type As, type Channel } from '../rooms/discord/stand-in/index.ts';

const SEND = 1n << 11n;
const SEND_IN_THREADS = 1n << 38n;

let harness: Harness;
beforeAll(async () => {
  harness = await openHarness();
});
afterAll(() => harness.close());
afterEach(() => {
  expect(harness.faults).toEqual([]);
  expect(harness.platform.world.complaints).toEqual([]);
});

/** Somebody with a blanket to open, here. */
async function opener(where: { channel: Channel; permissions: bigint }): Promise<As> {
  const as = { user: harness.platform.person('ines'), guild: where.channel.guild!, ...where };
  await harness.line('/motif define name:furrow shape:diagonal size:12 gauge:13x10', as);
  await harness.line('/blanket start name:rows kinds:furrow columns:2 rows:2', as);
  return as;
}
const posted = (channel: Channel) =>
  [...harness.platform.world.messages.values()].filter(
    (message) => message.channel === channel && message.interaction === undefined,
  );

describe('a board', () => {
  it.each([
    ['a channel', 0, MEMBER, MEMBER & ~SEND],
    ['a channel, by a manager,', 0, MANAGER & ~SEND_IN_THREADS, MANAGER & ~SEND],
    ['a thread', 11, MEMBER & ~SEND, MEMBER & ~SEND_IN_THREADS],
  ] as const)('in %s stands where she may write, and nowhere else', async (_, type, may, mayNot) => {
    const guild = harness.platform.guild('Allotment');
    const channel = harness.platform.channel(guild, 'news', type);
    const silenced = await opener({ channel, permissions: mayNot });
    const refused = await harness.line('/together open name:throw', silenced);
    expect(harness.answered(refused)).toBe(false);
    expect(refused.text).toContain('you may not write');
    await harness.room.boards.settled();
    expect(posted(channel)).toEqual([]);
    expect(await harness.projects.groups.of(guild.id)).toEqual([]);

    const seen = await harness.line('/together open name:throw', { ...silenced, permissions: may });
    expect(harness.answered(seen)).toBe(true);
    await harness.room.boards.settled();
    expect(posted(channel)).toHaveLength(1);
  });

  it('that the bot itself may not post is said so, and comes once it may', async () => {
    const guild = harness.platform.guild('Quiet', { botPermissions: (1n << 10n) | (1n << 14n) });
    const [channel] = [...harness.platform.world.channels.values()].filter((one) => one.guild === guild);
    const as = await opener({ channel: channel!, permissions: MEMBER });
    const seen = await harness.line('/together open name:throw', as);
    expect(harness.answered(seen)).toBe(true);
    expect(seen.text).toContain('Its board cannot stand here yet');
    // A refused board waits a while before it is tried again; a restart does not.
    await harness.restart();
    expect(posted(channel!)).toEqual([]);
    Object.assign(guild, { botPermissions: (1n << 50n) - 1n });
    await harness.line('/together board', as);
    await harness.room.boards.settled();
    expect(posted(channel!)).toHaveLength(1);
  });

  it('moves where its organiser wants it, one at a time, and nowhere else', async () => {
    const guild = harness.platform.guild('Meadow');
    const channel = harness.platform.channel(guild, 'news');
    const other = harness.platform.channel(guild, 'blanket');
    const ines = await opener({ channel, permissions: MEMBER });
    await harness.line('/together open name:throw', ines);
    await harness.room.boards.settled();
    const stranger = { user: harness.platform.person('ash'), guild, channel: other, permissions: MEMBER };
    const refused = await harness.line('/together board name:throw here:yes', stranger);
    expect(refused.text).toContain('Only the organiser');
    const silenced = { ...ines, channel: other, permissions: MEMBER & ~SEND };
    expect((await harness.line('/together board name:throw here:yes', silenced)).text).toContain(
      'may not write',
    );
    await harness.room.boards.settled();
    expect([posted(channel).length, posted(other).length]).toEqual([1, 0]);
    await harness.line('/together board name:throw here:yes', { ...ines, channel: other });
    await harness.room.boards.settled();
    const there = (where: Channel) => posted(where).filter(({ deleted }) => !deleted);
    expect([there(channel).length, there(other).length]).toEqual([0, 1]);
  });

  it('whose channel was deleted stands where it is next asked for', async () => {
    const guild = harness.platform.guild('Orchard');
    const channel = harness.platform.channel(guild, 'news');
    const other = harness.platform.channel(guild, 'blanket');
    const ines = await opener({ channel, permissions: MEMBER });
    await harness.line('/together open name:throw', ines);
    await harness.room.boards.settled();
    harness.platform.world.channels.delete(channel.id);
    await harness.line('/together pledge name:throw kind:furrow', { ...ines, channel: other });
    await harness.room.boards.settled();
    expect(posted(other)).toEqual([]);
    await harness.line('/together board name:throw', { ...ines, channel: other });
    await harness.room.boards.settled();
    expect(posted(other)).toHaveLength(1);
    expect(posted(other)[0]?.content).toContain('1 pledged');
  });

  it('is opened in a direct message, where everybody may write', async () => {
    const user = harness.platform.person('ines');
    for (const line of [
      '/motif define name:furrow shape:diagonal size:12 gauge:13x10',
      '/blanket start name:rows kinds:furrow columns:2 rows:2',
      '/together open name:throw',
    ])
      expect(harness.answered(await harness.line(line, { user }))).toBe(true);
    await harness.room.boards.settled();
    expect(posted(harness.platform.directChannel(user))).toHaveLength(1);
  });
});
