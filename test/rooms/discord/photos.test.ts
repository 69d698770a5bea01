/** A photo that comes with a hand-in, through the real client: posted once with its alt text, or the hand-in counts without it. */
import { PermissionFlagsBits } from 'discord.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { photoLink } from '../../../src/projects/groups.ts';
import { attachedPicture } from '../../../src/rooms/discord/files.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';
import { openHarness, type Harness } from './harness.ts';
import { MEMBER, type As, type Given, type Guild } from './stand-in/index.ts';

const ALL = ((1n << 53n) - 1n) & ~PermissionFlagsBits.Administrator;
const PNG = Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex');
const photo = (more: { bytes?: Buffer; type?: string } = {}): Given => ({
  name: 'on my table.png',
  bytes: PNG,
  type: 'image/png',
  ...more,
});

let harness: Harness;
beforeAll(async () => {
  harness = await openHarness({ boardGap: 10 });
});
afterAll(() => harness.close());

async function opened(name: string, botPermissions = ALL) {
  const guild = harness.platform.guild(name, { botPermissions });
  const channel = harness.platform.channel(guild, 'throw');
  const host: As = { user: harness.platform.person('ines'), guild, channel };
  const ada = { ...host, user: harness.platform.person('ada', { display: 'Ada' }) };
  for (const line of [
    '/motif define name:furrow shape:diagonal size:12 gauge:13x10',
    `/blanket start name:${name} kinds:furrow columns:3 rows:3`,
    `/together open blanket:${name}`,
  ])
    expect(harness.answered(await harness.line(line, host)), line).toBe(true);
  expect(harness.answered(await harness.line('/together pledge kind:furrow motifs:2', ada))).toBe(true);
  return { guild, channel, host, ada };
}
const handIn = (as: As, given: Given) =>
  harness.platform.slash('together handin', { kind: 'furrow', motifs: '2', photo: given }, as);
const photos = (guild: Guild) =>
  [...harness.platform.world.messages.values()]
    .filter((message) => message.channel.guild === guild && message.content.includes('handed in by'))
    .filter(({ attachments, interaction }) => attachments.length > 0 && interaction === undefined);
const stateOf = async (guild: Guild, name: string) => (await harness.projects.groups.named(guild.id, name))!;

describe('a photo of what is handed in', () => {
  it('stands in the group’s channel with its alt text, and its link is kept until she erases it', async () => {
    const { guild, channel, host, ada } = await opened('Shore');
    const seen = await handIn(ada, photo());
    expect(seen.text).toContain('The photo stands in the group’s channel.');
    const [posted, another] = photos(guild);
    expect(another).toBeUndefined();
    expect(posted).toMatchObject({ channel, allowedMentions: { parse: [] } });
    expect(posted!.attachments).toMatchObject([
      { description: '2 furrow motifs, handed in by Ada', filename: 'photo.png', size: PNG.length },
    ]);
    const { doc } = await stateOf(guild, 'Shore');
    expect(doc.photos).toEqual([{ pieces: [1, 2], channel: channel.id, message: posted!.id }]);
    const link = `https://discord.com/channels/${guild.id}/${channel.id}/${posted!.id}`;
    expect(photoLink(guild.id, doc.photos![0]!)).toBe(link);
    expect(JSON.stringify(await harness.projects.groups.collect(ada.user.id))).toContain(link);
    expect((await harness.line('/host accept', host)).text).toContain(posted!.id);
    await harness.projects.groups.forget(ada.user.id);
    const after = await stateOf(guild, 'Shore');
    expect(after.doc.photos).toBeUndefined();
    expect(after.state.pieces).toHaveLength(2);
    expect(harness.faults).toEqual([]);
  });

  it('that is none, or too large, or not to be shown, is refused, and nothing is handed in', async () => {
    const { guild, ada } = await opened('Ridge');
    for (const [as, given, says] of [
      [ada, photo({ type: 'application/pdf' }), 'not a picture'],
      [ada, photo({ bytes: Buffer.from('<svg></svg>') }), 'not a picture'],
      [ada, photo({ bytes: Buffer.concat([PNG, Buffer.alloc(10 * 1024 * 1024)]) }), 'too large'],
      [{ ...ada, permissions: MEMBER & ~PermissionFlagsBits.AttachFiles }, photo(), 'may not attach files'],
      [{ ...ada, channel: harness.platform.channel(guild, 'hall') }, photo(), 'where the board stands'],
    ] as const)
      expect((await handIn(as, given)).text).toContain(says);
    expect((await stateOf(guild, 'Ridge')).state.pieces).toHaveLength(0);
    expect(photos(guild)).toEqual([]);
  });

  it('that cannot be posted is said, and the hand-in counts', async () => {
    const { guild, ada } = await opened('Heath', ALL & ~PermissionFlagsBits.AttachFiles);
    const seen = await handIn(ada, photo());
    expect(seen.text).toContain('Attach Files in the group’s channel. The hand-in counts');
    const { doc, state } = await stateOf(guild, 'Heath');
    expect([state.pieces.length, doc.photos]).toEqual([2, undefined]);
  });

  it('is posted once, however often its interaction arrives', async () => {
    const { guild, ada } = await opened('Croft');
    await handIn(ada, photo());
    harness.platform.driver.repeat();
    // Whatever it might have posted comes before the answer to what is asked after it.
    await harness.line('/together board', ada);
    await harness.room.room.told();
    expect(photos(guild)).toHaveLength(1);
  });

  it('goes out of the channel when what it shows is taken back, and stays where some of it is still handed in', async () => {
    const { guild, host, ada } = await opened('Dell');
    await handIn(ada, photo());
    const [posted] = photos(guild);
    const seen = await harness.line('/together undo', ada);
    expect(seen.text).toContain('The photo is taken out of the channel as well.');
    expect(posted!.deleted).toBe(true);
    expect((await stateOf(guild, 'Dell')).doc.photos).toBeUndefined();
    // Of the next one something else is taken back: a pledge.
    await handIn(ada, photo());
    await harness.line('/together pledge kind:furrow', ada);
    expect((await harness.line('/together undo', ada)).text).not.toContain('photo');
    expect((await stateOf(guild, 'Dell')).doc.photos).toHaveLength(1);
    // Somebody took it away before: nothing is left to be done, and it is forgotten.
    photos(guild).find(({ deleted }) => !deleted)!.deleted = true;
    expect((await harness.line('/together undo', host)).text).toContain('taken out of the channel');
    expect((await stateOf(guild, 'Dell')).doc.photos).toBeUndefined();
    expect(harness.faults).toEqual([]);
  });

  it('is refused in the terminal, in words, and nothing is handed in', async () => {
    const { ask } = asking();
    for (const line of [
      '/motif define name:furrow shape:diagonal size:12 gauge:13x10',
      '/blanket start name:Throw kinds:furrow columns:3 rows:3',
      '/together open blanket:Throw',
    ])
      expect(await ask(line)).toMatchObject({ ok: true });
    expect(await ask('/together handin kind:furrow motifs:1 photo:on.png')).toMatchObject({
      ok: false,
      code: 'photo-in-server-only',
      problem: 'A photo can be shown in a server only.',
      option: 'photo',
    });
    expect(await ask('/host accept')).toMatchObject({ data: { waiting: [] } });
  });

  it('is taken from the platform’s own store alone', async () => {
    const file = { url: 'https://example.org/a.png', size: 9, name: 'a.png', contentType: 'image/png' };
    await expect(attachedPicture(file, 'photo')).rejects.toThrow(refused('file-kept-elsewhere'));
  });
});
