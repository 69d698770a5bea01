/** Group blankets through the real client: two hundred pressing at once, one board, and what a restart leaves of it. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FileStore } from '../../../src/projects/file-store.ts';
import { Groups } from '../../../src/projects/groups.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { openHarness, type Harness } from './harness.ts';
import { MANAGER, type As, type Channel, type Guild, type Message } from './stand-in/index.ts';

let folder: string;
let store: FileStore;
let harness: Harness;
let guild: Guild;
let ines: As;

/** The messages of a channel that have a board's buttons, as everybody sees them. */
const boards = (channel?: Channel) =>
  [...harness.platform.world.messages.values()].filter(
    (message) =>
      !message.deleted &&
      message.only === undefined &&
      (channel === undefined ? message.channel.guild === guild : message.channel === channel) &&
      message.components.some((row) => row.components?.some(({ label }) => label === 'What I hold')),
  );
const board = (channel?: Channel): Message => {
  const all = boards(channel);
  expect(all).toHaveLength(1);
  return all[0]!;
};
const settled = () => harness.room.boards.settled();
const said = async (line: string, as: As) => {
  const seen = await harness.line(line, as);
  expect(harness.answered(seen), `${line}: ${seen.text}`).toBe(true);
  return seen;
};
const stateOf = async (name: string) => (await harness.projects.groups.named(guild.id, name))!;

async function open(name: string, columns: number, rows: number, as: As): Promise<void> {
  await harness.line('/motif define name:furrow shape:diagonal size:12 gauge:13x10', as);
  await said(`/blanket start name:"${name}" kinds:furrow columns:${columns} rows:${rows}`, as);
  await said(`/together open blanket:"${name}" closes:2031-05-31`, as);
  await settled();
}

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'together-'));
  store = await FileStore.open({ folder, stays: true });
  harness = await openHarness({ projects: new Projects(store) });
  guild = harness.platform.guild('Allotment');
  ines = { user: harness.platform.person('ines'), guild };
});
afterAll(async () => {
  await harness.close();
  await store.close();
  await rm(folder, { recursive: true });
});

describe('what concerns somebody', () => {
  it('reaches her: once a day, by a mention of her alone, privately, or not at all, as she wishes', async () => {
    let now = new Date('2026-03-02T12:00:00Z');
    const own = await openHarness({ now: () => now });
    try {
      const server = own.platform.guild('Terrace');
      const channel = own.platform.channel(server, 'throw');
      const host = { user: own.platform.person('ines'), guild: server, channel };
      const rowan = { user: own.platform.person('rowan'), guild: server, channel };
      const say = async (line: string, as: As) => {
        const seen = await own.line(line, as);
        expect(own.answered(seen), `${line}: ${seen.text}`).toBe(true);
        return seen;
      };
      await say('/motif define name:furrow shape:diagonal size:12 gauge:13x10', host);
      await say('/blanket start name:Throw kinds:furrow columns:3 rows:3', host);
      await say('/together open blanket:Throw', host);
      const heard = (where: Channel) =>
        [...own.platform.world.messages.values()].filter(
          ({ channel: there, content }) => there === where && content.includes('/together mine'),
        );
      const backAgain = async (day: number) => {
        now = new Date(now.getTime() + day * 24 * 3_600_000);
        await say('/together handin kind:furrow confirm:yes', rowan);
        const wait = (await own.projects.groups.named(server.id, 'Throw'))!.state.pieces.length;
        const seen = await say(`/host return motifs:${wait} reason:"one corner has come loose"`, host);
        // The channel does not hear of it.
        expect(seen.ephemeral).toBe(true);
        await own.room.room.told();
      };
      await backAgain(0);
      expect(heard(channel).map(({ content, allowedMentions }) => [content, allowedMentions])).toEqual([
        [
          `<@${rowan.user.id}> There is something new about your motifs: /together mine tells you.`,
          { users: [rowan.user.id] },
        ],
      ]);
      await backAgain(0.5);
      expect(heard(channel)).toHaveLength(1);
      await say('/settings change tell:privately', rowan);
      await backAgain(1);
      expect(heard(channel)).toHaveLength(1);
      const direct = own.platform.directChannel(rowan.user);
      expect(heard(direct).map(({ content }) => content)).toEqual([
        expect.stringContaining('came back from Throw: one corner has come loose'),
      ]);
      await say('/settings change tell:not', rowan);
      await backAgain(2);
      expect([heard(channel).length, heard(direct).length]).toEqual([1, 1]);
      expect(own.faults).toEqual([]);
    } finally {
      await own.close();
    }
  });
});

describe('what waits to be accepted', () => {
  it('is chosen in a menu, once, by its organiser; what is off stands apart and is asked about', async () => {
    const meadow = harness.platform.guild('Meadow');
    const channel = harness.platform.channel(meadow, 'throw');
    const host = { user: harness.platform.person('ines'), guild: meadow, channel };
    const rowan = { user: harness.platform.person('rowan'), guild: meadow, channel };
    await harness.line('/motif define name:furrow shape:diagonal size:12 gauge:13x10', host);
    await said('/blanket start name:Meadow kinds:furrow columns:3 rows:3', host);
    await said('/together open blanket:Meadow', host);
    await said('/together handin kind:furrow motifs:2 side:15.4cm confirm:yes', rowan);
    await said('/together handin kind:furrow side:17cm confirm:yes', rowan);
    const seen = await said('/host accept', host);
    const [row] = seen.message!.components;
    const menu = row!.components![0]!;
    expect(menu.options?.map(({ value }) => value)).toEqual(['1', '2', '3']);
    expect(menu.options?.[2]?.label).toMatch(/#3 .*(over|off|large|wide|too)/);
    // What only the organiser sees, nobody else can choose in.
    await expect(harness.platform.select(seen.message!, menu.custom_id!, ['1'], rowan)).rejects.toThrow(
      'not shown',
    );
    const chosen = await harness.platform.select(seen.message!, menu.custom_id!, ['1', '3'], host);
    expect(chosen.text).toContain('off the wanted side');
    const only = await harness.platform.press(chosen.message!, 'Only the 1 that fit', host);
    expect(only.text).toContain('Accepted #1');
    const { state } = (await harness.projects.groups.named(meadow.id, 'Meadow'))!;
    expect(state.pieces.map((piece) => piece.state)).toEqual(['accepted', 'handed-in', 'handed-in']);
    expect(harness.faults).toEqual([]);
  });
});

describe('a group blanket in a server', () => {
  it('gives a hundred motifs to a hundred of two hundred who press at once, with few edits of one board', async () => {
    await open('bean rows', 10, 10, ines);
    const shown = board();
    expect(shown.content).toContain('0 of 100 motifs made, 0 pledged, 100 open');
    const before = harness.room.boards.sent;
    const seen = await Promise.all(
      Array.from({ length: 200 }, (_, n) =>
        harness.platform.press(shown, 'Pledge one', { user: harness.platform.person(`maker ${n}`), guild }),
      ),
    );
    const got = seen.filter(({ text }) => text.includes('You hold 1 pledged motif of furrow'));
    expect(got).toHaveLength(100);
    const late = seen.filter((one) => !got.includes(one));
    expect(late).toHaveLength(100);
    for (const one of late) {
      expect(one.text).toContain('Every furrow is spoken for.');
      expect(one.text).toContain('every motif is spoken for');
    }
    expect(seen.every((one) => one.ephemeral)).toBe(true);
    await settled();
    const { state, doc } = await stateOf('bean rows');
    expect(state.tally).toEqual([{ pledged: 100, handedIn: 0, accepted: 0 }]);
    expect(state.members.size).toBe(100);
    // One edit at once, then one a second: the storm is over within a few.
    const edits = harness.room.boards.sent - before;
    const longest = Math.max(...seen.map(({ ms }) => ms));
    expect(edits).toBeGreaterThan(0);
    expect(edits).toBeLessThanOrEqual(3 + Math.ceil(longest / 1000));
    expect(board().id).toBe(shown.id);
    expect(board().content).toContain('100 pledged, 0 open');
    expect(doc.board).toEqual({ channel: shown.channel.id, message: shown.id, events: doc.events.length });
    // What was answered is on the disk.
    const other = await FileStore.open({ folder, stays: false });
    expect((await new Groups(other).named(guild.id, 'bean rows'))?.state.tally).toEqual(state.tally);
    expect(harness.faults).toEqual([]);
    expect(harness.platform.world.complaints).toEqual([]);
  });

  it('lets one press pledge once, however often it is pressed, and each her own', async () => {
    const place = { ...ines, channel: harness.platform.channel(guild, 'pressing') };
    await open('press rows', 3, 3, place);
    const rowan = { user: harness.platform.person('rowan'), guild };
    const shown = board(place.channel);
    const id = shown.components[0]!.components![0]!.custom_id!;
    await Promise.all([1, 2, 3].map(() => harness.platform.press(shown, id, rowan)));
    expect((await stateOf('press rows')).state.pledges.get(rowan.user.id)).toEqual([1]);
    await settled();
    // The board has moved on, and so may she.
    await harness.platform.press(board(place.channel), 'Pledge one', rowan);
    expect((await stateOf('press rows')).state.pledges.get(rowan.user.id)).toEqual([2]);
    const mine = await harness.platform.press(board(place.channel), 'What I hold', rowan);
    expect(mine.ephemeral).toBe(true);
    expect(mine.text).toContain('you hold 2 pledges');
    // What she hands in is measured: the button asks for it. There is one kind, and nothing else need be said.
    const form = await harness.platform.press(board(place.channel), 'Hand in', rowan);
    const handed = await harness.platform.submitModal(form, {}, { ...rowan, channel: place.channel });
    expect(handed.ephemeral).toBe(true);
    expect(handed.text).toContain('1 motif of furrow handed in to press rows, #1');
    await settled();
    expect(board(place.channel).content).toContain(
      '0 of 9 motifs made, 1 waiting to be accepted, 1 pledged, 7 open',
    );
  });

  it('has one board a channel, which /together board does not double and which comes back when it is deleted', async () => {
    const channel = harness.platform.channel(guild, 'one board');
    const place = { ...ines, channel };
    await open('one rows', 2, 2, place);
    const first = board(channel);
    expect((await said('/together board', place)).ephemeral).toBe(true);
    await settled();
    expect(board(channel).id).toBe(first.id);
    first.deleted = true;
    await said('/together pledge', place);
    await settled();
    const second = board(channel);
    expect(second.id).not.toBe(first.id);
    expect(second.content).toContain('1 pledged, 3 open');
    second.deleted = true;
    // Looking for it is enough.
    await said('/together board', place);
    await settled();
    expect(board(channel).id).not.toBe(second.id);
  });

  it('shows what happened while the room was closed, and touches no board that is as it was', async () => {
    const channel = harness.platform.channel(guild, 'away');
    const place = { ...ines, channel };
    await open('away rows', 2, 2, place);
    await settled();
    const others = boards().map(({ id, edits }) => [id, edits]);
    await harness.room.close();
    const { doc } = await stateOf('away rows');
    await harness.projects.groups.happen(
      doc.id,
      { by: ines.user.id, at: new Date(), once: 'meanwhile' },
      () => [{ did: 'closed' }],
    );
    await harness.restart();
    for (let tries = 0; tries < 100 && !board(channel).content.includes('closed'); tries += 1)
      await new Promise((done) => setTimeout(done, 50));
    expect(board(channel).content).toContain('; closed.');
    await settled();
    const now = boards().map(({ id, edits }) => [id, edits]);
    expect(now.filter(([id]) => id !== board(channel).id)).toEqual(
      others.filter(([id]) => id !== board(channel).id),
    );
  });

  it('shows days and moments in the reader’s own time', async () => {
    const channel = harness.platform.channel(guild, 'time');
    const place = { ...ines, channel };
    await open('time rows', 2, 2, place);
    const noon = Date.parse('2031-05-31T12:00:00Z') / 1000;
    expect(board(channel).content).toContain(`wanted by <t:${noon}:D>`);
    expect(board(channel).content).not.toMatch(/[⟦⟧]|\\</);
    const told = await said('/together history', place);
    expect(told.text).toMatch(/<t:\d+:f>: ines opened time rows/);
    // What only looks like a moment stays text.
    const typed = await harness.line('/together board name:"<t:0:R>"', place);
    expect(typed.text).not.toMatch(/(?<!\\)<t:0/);
  });

  it('knows the organiser, the managers and whom a mention means', async () => {
    const channel = harness.platform.channel(guild, 'rights');
    const place = { ...ines, channel };
    await harness.line('/motif define name:furrow shape:diagonal size:12 gauge:13x10', place);
    await said('/blanket start name:"named rows" kinds:furrow columns:2 rows:2', place);
    await said('/together open blanket:"named rows" who:named', place);
    const fern = { user: harness.platform.person('fern'), guild, channel };
    const refused = async (line: string, as: As) => {
      const seen = await harness.line(line, as);
      expect(harness.answered(seen)).toBe(false);
      return seen.text;
    };
    expect(await refused('/together join per_week:1', fern)).toContain('Ask ines');
    const chosen = (line: string, who: As) => harness.line(line, who, () => fern.user);
    const invited = await chosen('/host invite maker:fern', place);
    expect(harness.answered(invited)).toBe(true);
    // The platform says who she is: she is called by her name, in the history too.
    expect(invited.text).toContain('fern may join named rows');
    expect((await said('/together history', place)).text).toContain('ines named fern');
    const robot = { ...harness.platform.person('robot'), bot: true };
    const refusedRobot = await harness.line('/host invite maker:robot', place, () => robot);
    expect(refusedRobot.text).toContain('robot is a bot');
    const moss = harness.platform.person('moss');
    const stranger = await harness.line('/host remind maker:moss', place, () => moss);
    expect(stranger.text).toContain('moss does not take part in named rows');
    expect(stranger.text).not.toContain(moss.id);
    await said('/together join per_week:1', fern);
    expect(await refused('/host close', fern)).toContain('Only the organiser');
    await said('/host close', { ...fern, permissions: MANAGER });
    expect(harness.answered(await chosen('/together handover maker:fern', place))).toBe(true);
    expect((await stateOf('named rows')).state.organiser).toBe(ines.user.id);
    expect(await refused('/together handover answer:yes', place)).toContain('nobody else can answer');
    await said('/together handover answer:yes', fern);
    expect((await stateOf('named rows')).state.organiser).toBe(fern.user.id);
    // Another server knows nothing of it.
    const elsewhere = { ...ines, guild: harness.platform.guild('Elsewhere') };
    expect((await said('/together list', elsewhere)).text).toContain('No group blanket');
  });
});
