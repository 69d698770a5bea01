/** Two processes of one shard, of which one cannot reach what is saved: people are answered by the other. */
import { afterEach, describe, expect, it } from 'vitest';
import { Problem } from '../../../src/core/base/problem.ts';
import { NotSaved } from '../../../src/projects/not-saved.ts';
import { Companion, isOwnTrouble, YIELDS_MS } from '../../../src/rooms/discord/companion.ts';
import { TIMES } from '../../../src/projects/postgres/connections.ts';
import { openRooms } from '../../attack/many.ts';
import { newPlace } from '../../postgres/place.ts';
import { Way } from '../../postgres/way.ts';
import { openStandIn } from './stand-in/index.ts';

const open: { close(): unknown }[] = [];
afterEach(async () => {
  for (const one of open.splice(0).reverse()) await one.close();
});

describe('what a process knows of another', () => {
  it('is that it was first, within an hour, and it yields only then, and for what is its own trouble', () => {
    const clock = { now: 0, away: true };
    const companion = new Companion(
      () => clock.away,
      () => clock.now,
    );
    expect(companion.hasLeft(0)).toBe(0);
    companion.notice();
    clock.now = 200;
    expect(companion.hasLeft(0)).toBe(YIELDS_MS - 200);
    expect(companion.hasLeft(-YIELDS_MS)).toBe(0);
    clock.away = false;
    expect(companion.hasLeft(0)).toBe(0);
    clock.now = 61 * 60_000;
    expect(companion.isThere()).toBe(false);
    expect(isOwnTrouble(new NotSaved('not-read', 'No.', 'Later.'))).toBe(true);
    expect(isOwnTrouble(new Problem('restarting', 'Now.', { hint: 'Later.' }))).toBe(true);
    expect(isOwnTrouble(new Problem('no-such-row', 'No.', { hint: 'Another.' }))).toBe(false);
    expect(isOwnTrouble(undefined)).toBe(false);
  });
});

describe('a press', () => {
  it('is answered by the process that can, though the other knows at once that it cannot', async () => {
    const url = await newPlace();
    const { port } = new URL(url);
    const [way, slowly] = [await Way.to(Number(port)), await Way.to(Number(port))];
    open.push(way, slowly);
    const platform = await openStandIn();
    open.push(platform);
    const urls = [way, slowly].map((by) => url.replace(`:${port}/`, `:${by.port}/`));
    const rooms = await openRooms(platform, {
      rooms: 2,
      url,
      urls,
      times: { ...TIMES, patience: 300 },
    });
    open.push(rooms);
    const as = { user: platform.person('mara'), guild: platform.guild('Allotment') };
    const told = async (line: string, options: Record<string, string | number>) =>
      (await platform.slash(line, options, as)).text;
    // Both answer the first ones, and whoever is second notices it.
    for (const size of [11, 12, 13])
      expect(await told('motif define', { name: `moss ${size}`, shape: 'diagonal', size })).not.toMatch(
        /could not/,
      );
    // The other one’s way there is a long one.
    slowly.slow = 60;
    way.mood = 'closed';
    way.cutAll();
    const said = [await told('progress next', { motif: 'moss 12' })];
    // By then it waits for nothing any more, and would be first to say that it cannot.
    await new Promise((done) => setTimeout(done, 600));
    for (let n = 1; n < 4; n++) said.push(await told('progress next', { motif: 'moss 12' }));
    expect(said.filter((text) => /could not be/.test(text))).toEqual([]);
    expect(said.at(-1)).toMatch(/[Rr]ow 4/);
    const offers = await platform.autocomplete('progress next', { motif: 'mos' }, 'motif', as);
    expect(offers.choices.map(({ value }) => value)).toContain('moss 12');
    way.mood = 'open';
  }, 60_000);
});
