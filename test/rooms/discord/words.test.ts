/** Plain words in a server: the command, and the menu of somebody’s message. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openHarness, type Harness } from './harness.ts';
import type { As, Message } from './stand-in/index.ts';

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
    expect(harness.faults).toEqual([]);
  });

  it('of somebody’s message are answered to the asker alone, and can be shown to everyone', async () => {
    const said = await messageOf('how many squares of 15 cm make a 120 x 160 cm throw?');
    const seen = await harness.platform.messageCommand('Work this out', said, ines);
    expect(seen.text).toContain('8 across by 11 down');
    expect(seen.message?.only).toBe(ines.user);
    const shown = await harness.platform.press(seen.message!, 'Show everyone', ines);
    expect(shown.message).toBeDefined();
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
