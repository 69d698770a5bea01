/** Names made to be read as something else: whatever a thing is called, a button about it is about it and nothing else. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Groups } from '../../src/projects/groups.ts';
import { openHarness, type Harness } from '../rooms/discord/harness.ts';
import type { As, Channel, Guild, Message, Outcome } from '../rooms/discord/stand-in/index.ts';

const NAMES = [
  'G” motifs:50 kind:“furrow',
  'G;name decoy;motifs 50',
  '/host close name:decoy',
  '"" name:decoy ""',
  'G\nname:decoy',
  'G ▸ together pledge;name decoy',
  '#0',
  '__proto__',
  '⟦toString⟧ ⟦120 cm⟧',
  '\u202ename:decoy\u200b',
  '🧶'.repeat(30),
];

let harness: Harness;
let guild: Guild;
beforeAll(async () => {
  harness = await openHarness();
});
afterAll(() => harness.close());

const REFUSED = /There is no|not in the message|another time|something went wrong/i;
const said = (seen: Outcome) => {
  expect(harness.answered(seen), seen.text).toBe(true);
  return seen;
};
const labels = (message: Message | undefined) =>
  (message?.components ?? []).flatMap(({ components = [] }) =>
    components.map(({ label = '', custom_id = '' }) => ({ label, id: custom_id })),
  );
const board = (channel: Channel) =>
  [...harness.platform.world.messages.values()].find(
    (message) => !message.deleted && message.channel === channel && message.interaction === undefined,
  )!;

/** Another member's blanket, motif and group, which nothing here is about. */
async function decoys(as: As): Promise<void> {
  const define = (name: string) => ({ name, shape: 'diagonal', size: 12, gauge: '13x10' });
  for (const name of ['furrow', 'decoy'])
    said(await harness.platform.slash('motif define', define(name), as));
  const start = { name: 'decoy', kinds: 'furrow', columns: 10, rows: 10 };
  said(await harness.filledIn('blanket start', start, as));
  said(await harness.platform.slash('together open', { blanket: 'decoy', name: 'decoy' }, as));
}
const decoyNow = async () =>
  JSON.stringify((await harness.projects.groups.read(Groups.idOf(guild.id, 'decoy')))?.events);

describe('a group blanket, a blanket and a motif', () => {
  it.each(NAMES)('called %j', async (name) => {
    guild = harness.platform.guild('Allotment');
    const channel = harness.platform.channel(guild, 'season');
    const ines: As = { user: harness.platform.person('ines'), guild: guild, channel };
    const decoyed = { ...ines, channel: harness.platform.channel(guild, 'decoys') };
    await decoys(decoyed);
    // A list of motifs is parted at these.
    const motif = /[,;]/.test(name) ? 'plain' : name;
    said(
      await harness.platform.slash(
        'motif define',
        { name: motif, shape: 'diagonal', size: 8, gauge: '13x10' },
        ines,
      ),
    );
    said(await harness.filledIn('blanket start', { name, kinds: 'furrow', columns: 2, rows: 2 }, ines));
    const opened = said(await harness.platform.slash('together open', { name }, ines));
    await harness.room.boards.settled();
    const before = await decoyNow();
    const own = JSON.stringify(
      (await harness.projects.maker(ines.user.id, '')).blankets.find((one) => one.name === 'decoy'),
    );

    // Whoever passes by presses what is offered to everybody: it is hers alone, one motif, in this blanket.
    const victim: As = { user: harness.platform.person('fern'), guild: guild, channel };
    for (const { label } of labels(board(channel))) {
      const seen = await harness.pressed(board(channel), label, victim);
      expect(seen.text, label).not.toMatch(REFUSED);
    }
    for (const { id } of labels(opened.message))
      expect((await harness.pressed(opened.message!, id, victim)).text).not.toMatch(REFUSED);
    const here = (await harness.projects.groups.of(guild.id)).find(({ doc }) => doc.channel === channel.id)!;
    const hers = here.doc.events.filter(({ by }) => by === victim.user.id);
    expect(hers.every((event) => !('motifs' in event) || event.motifs === 1)).toBe(true);
    expect(hers.length).toBeGreaterThan(0);

    // Every button under every answer about these things is answered, and leads to them.
    for (const [path, given] of [
      ['motif list', {}],
      ['motif show', { name: motif }],
      ['blanket list', {}],
      ['blanket show', { name }],
      ['blanket layout', { name }],
      ['blanket picture', { name }],
      ['together mine', { name }],
      ['together pledge', { name, kind: 'furrow' }],
      ['together board', { name }],
      ['progress show', { motif }],
    ] as const) {
      const asked = said(await harness.platform.slash(path, given, ines));
      // A press may draw the message anew: each is pressed as it was at first.
      const { components, embeds } = structuredClone({
        components: asked.message!.components,
        embeds: asked.message!.embeds,
      });
      const first = () => ({ ...asked.message!, components, embeds });
      for (const { label, id } of labels(first())) {
        if (/erase|remove|fold|working|everyone/i.test(label)) continue;
        const seen = await harness.pressed(first(), id, ines);
        expect(seen.text, `${path} → ${label}`).not.toMatch(REFUSED);
      }
    }
    expect(await decoyNow()).toBe(before);
    const after = await harness.projects.maker(ines.user.id, '');
    expect(JSON.stringify(after.blankets.find((one) => one.name === 'decoy'))).toBe(own);
    expect(harness.faults).toEqual([]);
    expect(harness.platform.world.complaints).toEqual([]);
  });
});
