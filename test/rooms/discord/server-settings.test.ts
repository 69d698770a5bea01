/** Who sees answers in a server: as its manager chose, and each maker for herself, through the real client. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHarness, type Harness } from './harness.ts';
import { MANAGER, MEMBER, type As, type Channel, type Guild } from './stand-in/index.ts';

let harness: Harness;
let guild: Guild;
let hooks: Channel;
let manager: As;
let fern: As;
beforeAll(async () => {
  harness = await openHarness();
  guild = harness.platform.guild('Allotment');
  hooks = harness.platform.channel(guild, 'hooks');
  manager = { user: harness.platform.person('ines'), guild, permissions: MANAGER };
  fern = { user: harness.platform.person('fern'), guild, permissions: MEMBER };
});
afterAll(() => harness.close());

const CRAFT = '/stitches row shape:diagonal size:12 row:9';
const OWN = '/progress show';
const alone = async (line: string, as: As) => (await harness.line(line, as)).ephemeral;
const set = async (line: string, as: As = manager) => {
  const seen = await harness.line(`/settings server ${line}`, as);
  expect(seen.ephemeral).toBe(true);
  return seen;
};

describe('/settings erase', () => {
  it('forgets what the room remembers of her answers too', async () => {
    const hazel: As = { user: harness.platform.person('hazel'), guild };
    await harness.line('/motif define name:furrow shape:diagonal size:12 gauge:13x10', hazel);
    const weighed = await harness.line('/motif weigh weight:24g', hazel);
    const show = () => harness.platform.press(weighed.message!, 'Show the working', hazel);
    expect(harness.platform.world.messages.get(weighed.message!.id)?.embeds).toEqual([]);
    await harness.line('/settings erase confirm:yes', hazel);
    expect((await show()).text).toContain('not at hand any more');
    // Nor after a restart, and not because of the answer that said so.
    await harness.restart();
    expect((await show()).text).toContain('not at hand any more');
    expect(await harness.projects.saysElsewhere(hazel.user.id)).toEqual([]);
  });
});

describe('/settings server', () => {
  it('is refused to whoever may not manage the server, and says who may', async () => {
    const refused = await set('craft:asker', fern);
    expect(harness.answered(refused)).toBe(false);
    expect(refused.text).toContain('Manage Server');
    expect(await alone(CRAFT, fern)).toBe(false);
    // What holds, everybody may know.
    expect((await set('', fern)).text).toContain('about the craft are seen by everyone in the channel');
  });

  it('holds in the channel it was chosen in, and in its threads, and nowhere else', async () => {
    const there = { ...fern, channel: hooks };
    expect((await set('craft:asker where:here', { ...manager, channel: hooks })).text).toContain(
      'chosen for this channel',
    );
    expect(await alone(CRAFT, there)).toBe(true);
    const thread = harness.platform.channel(guild, 'counting', 11, hooks);
    expect(await alone(CRAFT, { ...fern, channel: thread })).toBe(true);
    expect(await alone(CRAFT, fern)).toBe(false);
    expect((await set('craft:channel', { ...manager, channel: hooks })).text).toContain(
      'goes before the server',
    );
    await set('craft:usual where:here', { ...manager, channel: hooks });
    expect(await alone(CRAFT, there)).toBe(false);
  });

  it('holds in the whole server for what is hers as well, in plain words too', async () => {
    await harness.line('/motif define name:furrow shape:diagonal size:12', fern);
    await set('craft:asker own:channel');
    expect(await alone(CRAFT, fern)).toBe(true);
    expect(await alone(OWN, fern)).toBe(false);
    const words = 'how many 15 cm squares for a 120 by 160 cm blanket with a 4 cm border';
    expect((await harness.platform.slash('ask', { words }, fern)).ephemeral).toBe(true);
    expect((await harness.line('/settings show', fern)).text).toContain('chosen for this server');
  });

  it('comes behind what a maker chose for herself, and that behind one question’s own', async () => {
    await harness.line('/settings change answers:everyone', fern);
    expect(await alone(CRAFT, fern)).toBe(false);
    expect(
      (
        await harness.platform.slash(
          'stitches row',
          { shape: 'diagonal', size: 12, row: 9, seen_by: 'me' },
          fern,
        )
      ).ephemeral,
    ).toBe(true);
    await harness.line('/settings change answers:me', fern);
    expect(await alone(OWN, fern)).toBe(true);
    await harness.line('/settings change answers:usual', fern);
    expect(await alone(CRAFT, fern)).toBe(true);
    expect(await alone(OWN, fern)).toBe(false);
  });

  it('holds after a restart, and is nothing that a direct message has', async () => {
    await harness.restart();
    await harness.platform.connected();
    expect(await alone(CRAFT, fern)).toBe(true);
    const direct = await harness.line('/settings server craft:asker', { user: fern.user });
    expect(harness.answered(direct)).toBe(false);
    expect(direct.text).toContain('no server here');
    expect(harness.faults).toEqual([]);
  });
});
