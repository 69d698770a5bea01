/** One member presses, types and opens as fast as a script can: she is slowed down, whatever she uses, and the others are served. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PACE, typingPace } from '../../src/rooms/discord/rate.ts';
import { openHarness, type Harness } from '../rooms/discord/harness.ts';
import type { As, Outcome } from '../rooms/discord/stand-in/index.ts';
import { walk } from '../rooms/discord/stand-in/messages.ts';

const STORM = 60;
let harness: Harness;
let guild: ReturnType<Harness['platform']['guild']>;
const member = (name: string): As => ({ user: harness.platform.person(name), guild });

beforeAll(async () => {
  harness = await openHarness({ pace: { ...PACE, perSecond: 0.01 } });
  guild = harness.platform.guild('Allotment');
});
afterAll(() => harness.close());

const slowed = (seen: Outcome) => seen.text.includes('a lot at once');

/** Another member’s question in the middle of it is answered. */
async function othersAreServed(name: string): Promise<void> {
  const seen = await harness.line('/stitches row shape:diagonal size:12 row:9', member(name));
  expect(seen.text).toContain('19 stitches');
}

describe('a storm', () => {
  it('of presses counts as many as one maker may make, and no others wait', async () => {
    const rowan = member('rowan');
    const { message } = await harness.line('/resize width:120cm height:160cm side:15cm', rowan);
    const [label = ''] = [...walk(message?.components)].flatMap(({ component }) =>
      component.type === 2 && component.label !== undefined ? [component.label] : [],
    );
    const storm = Promise.all(
      Array.from({ length: STORM }, () => harness.platform.press(message!, label, rowan)),
    );
    await othersAreServed('fern');
    const seen = await storm;
    expect(seen.filter((one) => !slowed(one)).length).toBeLessThan(PACE.burst);
    expect(seen.filter(slowed).length).toBeGreaterThanOrEqual(STORM - PACE.burst);
    // Whatever she turns to then, she waits.
    expect(slowed(await harness.line('/help', rowan))).toBe(true);
  });

  it('of keys gets offers for as many as a quick typist types, and takes nothing from her questions', async () => {
    const moss = member('moss');
    await harness.line('/motif define name:furrow shape:diagonal size:12', moss);
    const most = typingPace(PACE).burst;
    const keys = await Promise.all(
      Array.from({ length: most + STORM }, () =>
        harness.platform.autocomplete('motif show', { name: 'fu' }, 'name', moss),
      ),
    );
    await othersAreServed('sand');
    const offered = keys.filter(({ choices }) => choices.length > 0).length;
    expect(offered).toBeGreaterThan(0);
    expect(offered).toBeLessThanOrEqual(most + 1);
    expect((await harness.line('/motif show name:furrow', moss)).text).toContain('furrow');
  });

  it('of forms opens as many as of anything else', async () => {
    const hazel = member('hazel');
    const asked = await harness.line(
      '/ask words:"how many 6 inch squares for a blanket 48 inches wide"',
      hazel,
    );
    const id =
      [...walk(asked.message?.components)].find(({ component }) => component.type !== 1)?.component
        .custom_id ?? '';
    const seen: Outcome[] = [];
    for (let n = 0; n < PACE.burst + 5; n += 1)
      seen.push(await harness.platform.press(asked.message!, id, hazel));
    expect(seen.filter(({ kind }) => kind === 'modal').length).toBe(PACE.burst - 1);
    expect(seen.slice(-5).every(slowed)).toBe(true);
    await othersAreServed('willow');
    expect(harness.faults).toEqual([]);
  });
});
