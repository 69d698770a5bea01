/** A make-along through the real client: parts in their channel, each once, and their buttons under everybody's fingers. */
import { PermissionFlagsBits } from 'discord.js';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { writeButton } from '../../../src/rooms/discord/buttons.ts';
import { NEWS } from '../../../src/rooms/discord/telling.ts';
import { fieldsOf, openHarness, type Harness } from './harness.ts';
import { MANAGER, MEMBER, type As, type Channel, type Message, type Outcome } from './stand-in/index.ts';

let harness: Harness;
let now = new Date('2031-03-01T12:00:00Z');
beforeAll(async () => {
  harness = await openHarness({ now: () => now });
});
afterAll(() => harness.close());

const said = async (line: string, as: As) => {
  const seen = await harness.line(line, as);
  expect(harness.answered(seen), `${line}: ${seen.text}`).toBe(true);
  return seen;
};

/** Messages of the bot that stand in a channel for all. */
const standing = ({ id }: Channel): Message[] =>
  [...harness.platform.world.messages.values()].filter(
    ({ channel, author, deleted, only, interaction }) =>
      channel.id === id && author.bot && !deleted && only === undefined && interaction === undefined,
  );
const titles = (channel: Channel) =>
  standing(channel).map(({ content }) => /Part \d+, [^:]*/.exec(content)?.[0]);

/** The clock goes on, and whoever leads looks at what is due: the room looks as well. */
const at = (moment: string) => {
  now = new Date(moment);
};
const due = async (host: As, many: number) => {
  await said('/along due', host);
  await vi.waitFor(() => expect(standing(host.channel!)).toHaveLength(many), { timeout: 10_000 });
};

/** A class in a channel of its own: 02:00 in Berlin, a week before the clocks leap over it. */
async function opened(name: string) {
  at('2031-03-01T12:00:00Z');
  const guild = harness.platform.guild(name);
  const channel = harness.platform.channel(guild, 'class');
  const host: As = { user: harness.platform.person('ines'), guild, channel, permissions: MANAGER };
  await said('/motif define name:furrow shape:diagonal size:12 gauge:13x10', host);
  await said(
    `/along open motif:furrow name:${name} starts:2031-03-23 every:week hour:2 zone:Europe/Berlin`,
    host,
  );
  const maker = (who: string): As => ({
    user: harness.platform.person(who),
    guild,
    channel,
    permissions: MEMBER,
  });
  return { guild, channel, host, maker };
}
const plain = (text: string) => text.replace(/\\(.)/gs, '$1').replaceAll('**', '');
const press = (message: Message, label: string, as: As) => harness.platform.press(message, label, as);
const onlyHers = ({ ephemeral, text }: Outcome) => {
  expect(ephemeral, text).toBe(true);
  return plain(text);
};

describe('a part in its channel', () => {
  it('stands there once over its hour, a change of the clocks and a restart, its buttons for everybody', async () => {
    const { channel, host, maker } = await opened('Alder');
    at('2031-03-23T00:59:59Z');
    await due(host, 0);
    at('2031-03-23T01:00:00Z');
    await due(host, 1);
    const [first] = standing(channel);
    expect(titles(channel)).toEqual(['Part 1, Swatch']);
    // Nobody is mentioned by what stands there for all.
    expect(first!.allowedMentions).toEqual({ parse: [] });

    // Whoever has not joined is told so, for herself alone; so is what she asks once she has.
    const [rowan, ash] = [maker('rowan'), maker('ash')];
    expect(onlyHers(await press(first!, 'Mine', rowan))).toContain('You do not take part');
    expect(onlyHers(await press(first!, 'Done', rowan))).toContain('You do not take part');
    await said('/along join gauge:15x12', rowan);
    await said('/along join', ash);
    expect(onlyHers(await press(first!, 'Mine', rowan))).toContain('Part 1, Swatch');
    expect(onlyHers(await press(first!, 'Done', rowan))).toContain('Part 1, Swatch is done');
    expect(onlyHers(await press(first!, 'Done', rowan))).toContain(
      'You were done with part 1, Swatch already',
    );

    await harness.restart();
    // 30 March: there is no 02:00 in Berlin.
    at('2031-03-30T00:59:59Z');
    await due(host, 1);
    at('2031-03-30T01:00:00Z');
    await due(host, 2);
    await harness.restart();
    await due(host, 2);
    expect(titles(channel)).toEqual(['Part 1, Swatch', 'Part 2, The first furrow, first half']);
    // What stood there before the restarts answers as before.
    expect(onlyHers(await press(first!, 'Done', ash))).toContain('Part 1, Swatch is done');
    expect(plain((await said('/along show', host)).text)).toContain('2 done');
    expect(harness.faults).toEqual([]);
  });

  it('keeps its buttons for itself when its number is another’s; those that carry a number go on as well', async () => {
    const { channel, host, maker } = await opened('Birch');
    at('2031-03-23T01:00:00Z');
    await due(host, 1);
    at('2031-03-30T01:00:00Z');
    await due(host, 2);
    const second = standing(channel)[1]!;
    const rowan = maker('rowan');
    await said('/along join', rowan);
    await said('/along part part:1 do:remove', host);
    await vi.waitFor(() => expect(standing(channel)).toEqual([second]), { timeout: 10_000 });
    // It was the second when it was posted, and is the first now.
    expect(onlyHers(await press(second, 'Done', rowan))).toContain(
      'Part 1, The first furrow, first half is done',
    );
    expect(onlyHers(await press(second, 'Mine', rowan))).toContain('Part 1, The first furrow, first half');
    // A button of an earlier day, which carries a number, means whatever has that number now.
    const carrying = (payload: string): Message => ({
      ...second,
      components: second.components.map((row) => ({
        ...row,
        components: (row.components ?? []).map((button) =>
          button.label === 'Done'
            ? { ...button, custom_id: writeButton({ does: 'ask', owner: '', serial: '1', payload })! }
            : button,
        ),
      })),
    });
    expect(onlyHers(await press(carrying('along done;part 2;name Birch'), 'Done', rowan))).toContain(
      'Part 2, The first furrow, second half is done',
    );
    // One that is gone altogether is said to be gone.
    expect(onlyHers(await press(carrying('along done;part id1;name Birch'), 'Done', rowan))).toContain(
      'not in the make-along any more',
    );
    expect(harness.faults).toEqual([]);
  });

  it('goes when it is taken back, and stands there once when it is posted anew', async () => {
    const { channel, host, maker } = await opened('Cedar');
    at('2031-03-23T01:00:00Z');
    await due(host, 1);
    const [first] = standing(channel);
    await said('/along part part:1 post:back', host);
    await vi.waitFor(() => expect(standing(channel)).toEqual([]), { timeout: 10_000 });
    await harness.restart();
    await due(host, 0);
    at('2031-03-23T02:00:00Z');
    await said('/along part part:1 post:anew', host);
    await vi.waitFor(() => expect(titles(channel)).toEqual(['Part 1, Swatch']), { timeout: 10_000 });
    const [anew] = standing(channel);
    expect(anew!.id).not.toBe(first!.id);
    const rowan = maker('rowan');
    await said('/along join', rowan);
    expect(onlyHers(await press(anew!, 'Done', rowan))).toContain('Part 1, Swatch is done');
    await harness.restart();
    await due(host, 1);
    expect(harness.faults).toEqual([]);
  });
});

describe('words are asked for in a form', () => {
  it('where somebody is stuck, by the part that the button stands under, counted once however often it is sent', async () => {
    const { channel, host, maker } = await opened('Damson');
    at('2031-03-30T01:00:00Z');
    await due(host, 1);
    at('2031-03-30T01:02:00Z');
    await due(host, 2);
    const second = standing(channel)[1]!;
    const rowan = maker('rowan');
    // Somebody who has not joined may open it, and is told when she sends it.
    const early = await press(second, 'Stuck', rowan);
    expect(early.kind).toBe('modal');
    expect(fieldsOf(early)).toEqual(['row', 'counts', 'words', 'help']);
    expect(onlyHers(await harness.platform.submitModal(early, { row: '7' }, rowan))).toContain(
      'You do not take part',
    );
    await said('/along join', rowan);
    await harness.restart();
    const form = await press(second, 'Stuck', rowan);
    const sent = await harness.platform.submitModal(form, { row: '7', counts: '11 13 14' }, rowan);
    expect(onlyHers(sent)).toContain('Row 7 of your furrow should have 15');
    await harness.platform.submitModal(form, { row: '7', counts: '11 13 14' }, rowan);
    const stuck = async () =>
      (await harness.projects.alongs.of(host.guild!.id))[0]!.state.stuck.map(({ part, row }) => [part, row]);
    expect(await stuck()).toEqual([[2, 7]]);
    // What is no number is refused, what was typed is there again, and nothing is counted.
    const worded = await harness.platform.submitModal(
      await press(second, 'Stuck', rowan),
      { row: 'the middle one', words: 'it leans' },
      rowan,
    );
    expect(onlyHers(worded)).toContain('is not a whole number');
    const again = await press(worded.message!, 'Change what I typed', rowan);
    expect(again.kind).toBe('modal');
    expect(await stuck()).toHaveLength(1);
    const mended = await harness.platform.submitModal(again, { row: '', words: 'it leans' }, rowan);
    expect(onlyHers(mended)).toContain('noted in your words');
    expect(await stuck()).toEqual([
      [2, 7],
      [2, undefined],
    ]);
    expect(harness.faults).toEqual([]);
  });

  it('where somebody takes part, by the button under the parts', async () => {
    const { host, maker } = await opened('Elder');
    const plan = await said('/along plan', host);
    const [rowan, ash] = [maker('rowan'), maker('ash')];
    const form = await press(plan.message!, 'Take part', rowan);
    expect(fieldsOf(form)).toEqual(['gauge', 'ball', 'hook', 'colours', 'for']);
    const joined = await harness.platform.submitModal(form, { gauge: '15x12' }, rowan);
    expect(onlyHers(joined)).toContain('You take part in Elder');
    // Sent as it opens: just as the teacher makes hers.
    expect(onlyHers(await harness.pressed(plan.message!, 'Take part', ash))).toContain('2 makers so far');
    expect(harness.faults).toEqual([]);
  });
});

describe('what stands in the channel for all', () => {
  it('is changed there alone, by a teacher who may write there, or by a manager', async () => {
    const { guild, channel, host } = await opened('Fir');
    const elsewhere = harness.platform.channel(guild, 'elsewhere');
    const teacher = { ...host, permissions: MEMBER };
    const silent = { ...host, permissions: MEMBER & ~PermissionFlagsBits.SendMessages };
    const refused = async (line: string, as: As) => {
      const seen = await harness.line(line, as);
      expect(harness.answered(seen), `${line}: ${seen.text}`).toBe(false);
      return plain(seen.text);
    };
    const lines = [
      '/along part part:2 title:"Buy my yarn" name:Fir',
      '/along part part:2 asks:"Buy my yarn" name:Fir',
      '/along part do:add title:"Buy my yarn" from:2031-06-01 name:Fir',
    ];
    for (const line of lines) {
      expect(await refused(line, { ...silent, channel: elsewhere })).toContain('is said there');
      expect(await refused(line, { ...teacher, channel: elsewhere })).toContain('is said there');
      expect(await refused(line, silent)).toContain('where you may not write');
    }
    // What says nothing new is hers to do from anywhere.
    await said('/along part part:2 from:2031-03-31 name:Fir', { ...silent, channel: elsewhere });
    at('2031-03-23T01:00:00Z');
    await due(host, 1);
    await said('/along part part:1 post:back name:Fir', { ...silent, channel: elsewhere });
    await vi.waitFor(() => expect(standing(channel)).toEqual([]), { timeout: 10_000 });
    expect(
      await refused('/along part part:1 post:anew name:Fir', { ...silent, channel: elsewhere }),
    ).toContain('is said there');
    for (const [as, title] of [
      [teacher, 'First of all'],
      [{ ...host, channel: elsewhere }, 'Second of all'],
    ] as const) {
      await said(`/along part part:2 title:"${title}" name:Fir`, as);
      expect(plain((await said('/along plan name:Fir', host)).text)).toContain(title);
    }
    expect(harness.faults).toEqual([]);
  });
});

describe('somebody who is asked to lead', () => {
  it('is told in the make-along’s channel, or directly, wherever she was asked, and by the list', async () => {
    const { guild, channel, host, maker } = await opened('Gorse');
    const elsewhere = harness.platform.channel(guild, 'elsewhere');
    const [rowan, ash] = [maker('rowan'), maker('ash')];
    await said('/along join', rowan);
    await said('/along join', ash);
    await said('/settings change tell:privately', ash);
    await said('/along handover maker:rowan name:Gorse', { ...host, channel: elsewhere });
    await harness.room.room.told();
    expect(standing(channel).map(({ content, allowedMentions }) => [content, allowedMentions])).toEqual([
      [`<@${rowan.user.id}> ${NEWS.along}`, { users: [rowan.user.id] }],
    ]);
    expect(standing(elsewhere)).toEqual([]);
    expect(plain((await said('/along show', rowan)).text)).toContain('You are asked to lead Gorse');
    expect(plain((await said('/along show', ash)).text)).not.toContain('You are asked');
    await said('/along handover maker:ash name:Gorse', { ...host, channel: elsewhere });
    await harness.room.room.told();
    expect(standing(harness.platform.directChannel(ash.user)).map(({ content }) => plain(content))).toEqual([
      'ines asks you to lead Gorse. Say yes with /along handover.',
    ]);
    expect(standing(channel)).toHaveLength(1);
    expect(harness.faults).toEqual([]);
  });
});
