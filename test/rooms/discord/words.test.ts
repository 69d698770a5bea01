/** Plain words in a server: the command, and the menu of somebody’s message. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PermissionFlagsBits } from 'discord.js';
import { openHarness, type Harness } from './harness.ts';
import { textOf, type As, type Message } from './stand-in/index.ts';

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
    const folded = await harness.platform.press(open.message!, 'Fold the working', ines);
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
    expect(shown.text).toContain('Read as /resize');
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
