/** Plain words in a server: the command, and the menu of somebody’s message. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { PermissionFlagsBits } from 'discord.js';
import { registry } from '../../../commands/index.ts';
import { readButton } from '../../../src/rooms/discord/buttons.ts';
import { askingFor, TYPED, waitingIn } from '../../../src/rooms/discord/missing.ts';
import { keptIn } from '../../../src/rooms/discord/render.ts';
import { openHarness, type Harness } from './harness.ts';
import { textOf, type As, type Message, type Outcome } from './stand-in/index.ts';
import { walk } from './stand-in/messages.ts';

let harness: Harness;
let ines: As;

beforeAll(async () => {
  harness = await openHarness();
  ines = { user: harness.platform.person('ines'), guild: harness.platform.guild('Allotment') };
});
afterAll(() => harness.close());

/** Somebody’s own message in the channel. */
async function messageOf(content: string): Promise<Message> {
  const { message } = await harness.line('/lookup term term:dc', ines);
  return harness.platform.say(message!.channel, harness.platform.person('fern'), content);
}

/** The message that follows an answer; it comes a moment after it. */
const followed = ({ interaction }: Outcome): Promise<Message> =>
  vi.waitFor(() => {
    expect(interaction.followUps).toHaveLength(1);
    return interaction.followUps[0]!;
  });

describe('plain words in a server', () => {
  it('are answered as the question they mean, with its working to unfold', async () => {
    const words = 'how many 6 inch squares for a 4 by 5 foot blanket with a 2 in border';
    const seen = await harness.line(`/ask words:"${words}"`, ines);
    expect(seen.text).toContain('7 across by 9 down');
    expect(seen.text).toContain('Read as /resize width:4ft height:5ft side:6in border:2in');
    const others = await harness.platform.press(seen.message!, 'Not what I meant', ines);
    expect(others.message?.only).toBe(ines.user);
    const open = await harness.platform.press(seen.message!, 'Show the working', ines);
    expect(open.text).toContain('Finished width');
    expect(open.text).toContain('Read as /resize width:4ft height:5ft side:6in border:2in');
    expect((await harness.platform.press(open.message!, 'Not what I meant', ines)).message?.only).toBe(
      ines.user,
    );
    const folded = await harness.platform.press(open.message!, 'Fold it up', ines);
    expect(folded.text).toContain('Read as /resize');
    await harness.platform.press(folded.message!, 'Not what I meant', ines);
    expect(harness.faults).toEqual([]);
  });

  it('of somebody’s message are answered to the asker alone, and can be shown to everyone', async () => {
    const said = await messageOf('how many squares of 15 cm make a 120 x 160 cm throw?');
    const seen = await harness.platform.messageCommand('Work this out', said, ines);
    expect(seen.text).toContain('8 across by 11 down');
    expect(seen.message?.only).toBe(ines.user);
    const shown = await harness.platform.press(seen.message!, 'Show everyone', ines);
    expect(textOf(await followed(shown))).toContain('Read as /resize');
    expect(harness.faults).toEqual([]);
  });

  it('of somebody’s message never change what is saved of the one who asks', async () => {
    await harness.line('/motif define name:furrow shape:diagonal size:12', ines);
    const seen = await harness.platform.messageCommand(
      'Work this out',
      await messageOf('I finished a furrow square'),
      ines,
    );
    expect(seen.text).toContain('would change what is saved');
    expect((await harness.line('/progress show', ines)).text).toContain('0 motifs made');
  });

  it('of a message longer than any question are not read at all', async () => {
    const said = await messageOf('how many 6 inch squares '.repeat(80));
    const seen = await harness.platform.messageCommand('Work this out', said, ines);
    expect(seen.text).toContain('longer than 1000 characters');
    expect(seen.message?.only).toBe(ines.user);
    expect(harness.faults).toEqual([]);
  });

  it('that ask nothing are declined, to the asker alone', async () => {
    const seen = await harness.platform.messageCommand(
      'Work this out',
      await messageOf('good morning everyone'),
      ines,
    );
    expect(seen.message?.only).toBe(ines.user);
    expect(harness.faults).toEqual([]);
  });
});

describe('what plain words leave out', () => {
  const control = (message: Message | undefined) => {
    const found = [...walk(message?.components)].find(({ component }) => component.type !== 1)?.component;
    return { type: found?.type, id: found?.custom_id ?? '', label: found?.label };
  };
  const typed = async (message: Message | undefined, value: string, as: As) => {
    const form = await harness.platform.press(message!, control(message).id, as);
    expect(form.kind).toBe('modal');
    return harness.platform.submitModal(form, { [TYPED]: value }, { ...as, channel: message!.channel });
  };

  it('is chosen where it is one of a few, then typed, one thing at a time, and answered', async () => {
    // Nothing of hers is saved that could stand in.
    const moss = { ...ines, user: harness.platform.person('moss') };
    const first = await harness.line('/ask words:"how many stitches in row 9"', moss);
    expect(first.ephemeral).toBe(true);
    expect(control(first.message).type).toBe(3);
    const next = await harness.platform.select(first.message!, control(first.message).id, ['diagonal'], moss);
    expect(next.message).toBe(first.message);
    expect(control(next.message)).toMatchObject({ type: 2, label: 'Say the size' });
    const seen = await typed(next.message, '12', moss);
    expect(seen.message).toBe(first.message);
    expect(seen.text).toContain('Read as /stitches row shape:diagonal size:12 row:9');
    expect(seen.ephemeral).toBe(true);
    expect(JSON.stringify(seen.message!.components)).not.toContain('Say the size');
    const shown = await harness.platform.press(seen.message!, 'Show everyone', moss);
    const open = await followed(shown);
    expect(open.only).toBeUndefined();
    expect(textOf(open)).toContain('Read as /stitches row shape:diagonal size:12 row:9');
    expect(harness.faults).toEqual([]);
  });

  it('is asked for again where what was typed does not say it, and what was understood is kept', async () => {
    const first = await harness.line(
      '/ask words:"how many 6 inch squares for a blanket 48 inches wide"',
      ines,
    );
    const again = await typed(first.message, 'as high as it gets', ines);
    expect(again.text).toContain('does not say what is missing');
    const seen = await typed(again.message, '60in', ines);
    expect(seen.text).toContain('Read as /resize width:48in height:60in side:6in');
    expect(seen.text).toContain('8 across by 10 down');
    expect(harness.faults).toEqual([]);
  });

  it('is asked for under a reply as well, by the one who wrote alone', async () => {
    const hearing = await openHarness({ hears: 'mentions' });
    const { platform } = hearing;
    const guild = platform.guild('Allotment');
    const [fern, other] = [platform.person('fern'), platform.person('moss')].map((user) => ({ user, guild }));
    const words = `<@${platform.world.bot.id}> how many 6 inch squares for a blanket 48 inches wide`;
    const { reply } = await platform.write(words, fern!);
    const refused = await platform.press(reply!, control(reply).id, other!);
    expect(refused).toMatchObject({ kind: 'message', ephemeral: true });
    const form = await platform.press(reply!, control(reply).id, fern!);
    const seen = await platform.submitModal(form, { [TYPED]: '60 in' }, fern!);
    expect(seen.message).toBe(reply);
    expect(seen.text).toContain('8 across by 10 down');
    expect(hearing.faults).toEqual([]);
    await hearing.close();
  });

  it('is carried by the message where it is too long for an id, and fits every limit', () => {
    const options = { yarns: 'x'.repeat(300), shape: 'diagonal' };
    const waiting = {
      path: 'stitches row',
      options,
      option: 'size',
      assumed: ['Taken from “throw”; ~', 'b'],
    };
    const asker = { id: ines.user.id, user: ines.user };
    const drawn = askingFor(waiting, registry, asker)!;
    const [row] = drawn.components;
    const id = row!.components[0]!.custom_id;
    expect(id.length).toBeLessThanOrEqual(100);
    expect(waitingIn(readButton(id)!, keptIn(drawn.embeds as Parameters<typeof keptIn>[0]))).toEqual(waiting);
    expect(askingFor({ ...waiting, options: { yarns: 'x'.repeat(3_000) } }, registry, asker)).toBeUndefined();
  });
});

describe('messages to the bot, where it hears them', () => {
  let hearing: Harness;
  let fern: As;
  let alone: As;
  const bot = () => `<@${hearing.platform.world.bot.id}>`;
  const QUESTION = 'how many 6 inch squares for a 4 by 5 foot blanket with a 2 in border';

  beforeAll(async () => {
    hearing = await openHarness({ hears: 'mentions' });
    const user = hearing.platform.person('fern');
    fern = { user, guild: hearing.platform.guild('Allotment') };
    alone = { user };
  });
  afterAll(() => hearing.close());

  it('are answered as a reply that pings nobody, as /ask answers them', async () => {
    const { reply } = await hearing.platform.write(`${bot()} ${QUESTION}`, fern);
    expect(textOf(reply!)).toContain('7 across by 9 down');
    expect(textOf(reply!)).toContain('Read as /resize width:4ft height:5ft side:6in border:2in');
    expect(reply?.allowedMentions).toEqual({ parse: [], replied_user: false });
    const open = await hearing.platform.press(reply!, 'Show the working', fern);
    expect(open.text).toContain('Finished width');
    expect(hearing.faults).toEqual([]);
  });

  it('are answered where they are direct ones too, without a mention', async () => {
    const { reply } = await hearing.platform.write(QUESTION, alone);
    expect(textOf(reply!)).toContain('7 across by 9 down');
  });

  it('asks for the two intents that hear them, and never to read messages', async () => {
    const intents = [...hearing.platform.gateway.sessions.values()].map((session) => session.intents);
    expect(intents).toEqual([(1 << 9) | (1 << 12)]);
    const asked = BigInt(new URL(hearing.room.invite).searchParams.get('permissions')!);
    expect(asked & PermissionFlagsBits.ReadMessageHistory).not.toBe(0n);
    const off = await harness.platform.write(`<@${harness.platform.world.bot.id}> ${QUESTION}`, ines);
    expect(off).toMatchObject({ heard: false, reply: undefined });
  });

  it('of others, of bots, and that only answer one of its messages, are left alone', async () => {
    const robot = { ...hearing.platform.person('robot'), bot: true };
    const words = `${bot()} ${QUESTION}`;
    expect((await hearing.platform.write(QUESTION, fern, 300)).reply).toBeUndefined();
    expect((await hearing.platform.write(words, { ...fern, user: robot }, 300)).reply).toBeUndefined();
    expect((await hearing.platform.write(words, fern)).reply).toBeDefined();
  });

  it('get no answer before everyone that is for the asker alone', async () => {
    await hearing.line('/settings change answers:me', fern);
    const { reply } = await hearing.platform.write(`${bot()} ${QUESTION}`, fern);
    expect(textOf(reply!)).toContain('seen by you alone');
    expect(textOf(reply!)).not.toContain('7 across');
    const direct = await hearing.platform.write(QUESTION, alone);
    expect(textOf(direct.reply!)).toContain('7 across by 9 down');
    await hearing.line('/settings change answers:everyone', fern);
  });

  it('change what is saved once, as /ask does, and nothing where they are not understood', async () => {
    await hearing.line('/motif define name:furrow shape:diagonal size:12', fern);
    const done = await hearing.platform.write(`${bot()} I finished a furrow square`, fern);
    expect(done.reply).toBeDefined();
    expect((await hearing.line('/progress show', fern)).text).toContain('1 motif made');
    await hearing.platform.write(`${bot()} furrow 3 maybe 4 or so`, fern);
    expect((await hearing.line('/progress show', fern)).text).toContain('1 motif made');
  });

  it('count like commands where somebody writes too much at once', async () => {
    await hearing.restart({ pace: { burst: 2, perSecond: 0.001 } });
    await hearing.platform.connected();
    const asked = [];
    for (let count = 0; count < 3; count += 1)
      asked.push(await hearing.platform.write(`${bot()} ${QUESTION}`, fern, count < 2 ? 3_000 : 300));
    expect(asked.map(({ reply }) => reply !== undefined)).toEqual([true, true, false]);
  });

  it('without words are told how to ask', async () => {
    await hearing.restart();
    await hearing.platform.connected();
    const { reply } = await hearing.platform.write(bot(), fern);
    expect(textOf(reply!)).toContain('Ask in the same message');
    expect(hearing.faults).toEqual([]);
  });
});

describe('somebody new', () => {
  const guild = () => ines.guild!;
  const from = (name: string, locale: string): As => ({
    user: harness.platform.person(name),
    guild: guild(),
    locale,
  });
  const RESIZE = '/resize width:4ft height:5ft side:6in';

  it('from the United States is shown inches, and told so once', async () => {
    const una = from('una', 'en-US');
    const first = await harness.line(RESIZE, una);
    expect(first.text).toMatch(/42 × 60 in|48 × 60 in/);
    expect(first.text).toContain('Shown in inches and in US terms, as your language is set to en-US');
    const next = await harness.line(RESIZE, una);
    expect(next.text).toMatch(/× 60 in/);
    expect(next.text).not.toContain('as your language is set');
    // What she saves first keeps them, whatever her platform says later.
    await harness.line('/motif define name:"una square" shape:diagonal size:12', una);
    expect((await harness.line(RESIZE, { ...una, locale: 'de' })).text).toMatch(/× 60 in/);
  });

  it('from Britain is shown centimetres and UK terms', async () => {
    const bran = from('bran', 'en-GB');
    const seen = await harness.line('/stitches row shape:diagonal size:12', bran);
    expect(seen.text).toContain('Shown in centimetres and in UK terms');
    expect(seen.text).toMatch(/1 stitch of htr/);
  });

  it('from elsewhere is shown what everybody is, and nothing is said of it', async () => {
    const dora = from('dora', 'de');
    const seen = await harness.line(RESIZE, dora);
    expect(seen.text).toMatch(/× 152 cm/);
    expect(seen.text).not.toContain('as your language is set');
  });

  it('who has set her own ways keeps them', async () => {
    const kit = from('kit', 'en-US');
    await harness.line('/settings change units:metric terms:UK', kit);
    const seen = await harness.line(RESIZE, kit);
    expect(seen.text).toMatch(/× 152 cm/);
    expect(seen.text).not.toContain('as your language is set');
  });
});

describe('the help in a server', () => {
  it('leads on by a menu, for the asker alone', async () => {
    const seen = await harness.line('/help', ines);
    expect(seen.message?.only).toBe(ines.user);
    const menu = (message: Message | undefined) =>
      [...walk(message?.components)].find(({ component }) => component.type === 3)?.component.custom_id ?? '';
    const about = await harness.platform.select(seen.message!, menu(seen.message), ['yarn'], ines);
    expect(about.text).toContain('About yarn there are');
    // Its questions can be clicked: the platform knows them by their ids.
    expect(about.text).toMatch(/<\/yardage weighed:\d+>: /);
    const one = await harness.platform.select(about.message!, menu(about.message), ['yardage left'], ines);
    expect(one.text).toContain('/yardage left: How far the yarn');
    expect(harness.faults).toEqual([]);
  });
});
