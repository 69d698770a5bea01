/** Several processes of one bot on one database: what people press counts once, whatever breaks. In large numbers: `npm run bench -- attack many`. */
import { afterEach, describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { PostgresStore } from '../../src/projects/postgres/store.ts';
import { Projects } from '../../src/projects/projects.ts';
import { PartPosts } from '../../src/rooms/discord/part-posts.ts';
import { askLine } from '../along.ts';
import { newPlace } from '../postgres/place.ts';
import { openStandIn, type StandIn } from '../rooms/discord/stand-in/index.ts';
import { crowd, openRooms, strike } from './many.ts';
import { spread } from './spread.ts';

const open: { close(): Promise<unknown> }[] = [];
afterEach(async () => {
  for (const one of open.splice(0).reverse()) await one.close();
});

async function rooms(count: number) {
  const url = await newPlace();
  // Its clock goes slowly, so that nobody is late on a machine with much other work: what counts here is what is counted.
  const began = Date.now();
  const platform: StandIn = await openStandIn({ now: () => began + (Date.now() - began) / 20 });
  platform.driver.patience = { first: 50_000, settled: 50_000 };
  open.push(platform);
  const opened = await openRooms(platform, { rooms: count, url });
  open.push(opened);
  return { platform, url, faults: opened.faults };
}

describe('rooms of several processes', () => {
  it('that a crowd’s presses are dealt to give a hundred motifs to a hundred of two hundred, and show one board', async () => {
    const { platform, url, faults } = await rooms(4);
    platform.gateway.deals = true;
    const report = await crowd(platform, { motifs: 100, people: 200, url, side: 10, atOnce: 20 });
    expect(report).toMatchObject({
      got: 100,
      lost: 0,
      twice: 0,
      kindly: 100,
      late: 0,
      other: [],
      pledged: 100,
      boards: 1,
      second: 0,
      refusals: 0,
    });
    expect(report.shows).toContain('100 pledged, 0 open');
    expect(report.edits).toBeLessThan(100);
    expect(faults).toEqual([]);
  }, 60_000);

  it('of which each is told of every press count each once, and the first answer is seen', async () => {
    const { platform, url, faults } = await rooms(3);
    const report = await crowd(platform, { motifs: 8, people: 16, url, side: 4 });
    expect(report).toMatchObject({
      got: 8,
      lost: 0,
      twice: 0,
      kindly: 8,
      other: [],
      pledged: 8,
      boards: 1,
      refusals: 0,
    });
    // Two of three come second; the platform took no second answer.
    expect(report.second).toBeGreaterThan(16);
    expect(faults).toEqual([]);
  }, 60_000);
});

describe('a part of a make-along', () => {
  const NOON = new Date('2031-03-01T12:00:00Z');
  const DUE = new Date('2031-03-23T12:00:00Z');
  /** Processes that post the parts of one make-along; `post` sends for each. */
  async function posting(post: (process: number) => Promise<{ id: string }>) {
    const url = await newPlace();
    const stores = await Promise.all(
      Array.from({ length: 4 }, () => PostgresStore.open({ url, connections: 2 })),
    );
    open.push(...stores);
    const [first] = stores;
    const place = { server: '7', channel: '900000000000000001', manager: true };
    for (const line of [
      '/motif define name:furrow shape:diagonal size:12 gauge:13x10',
      '/along open motif:furrow name:class starts:2031-03-23 every:week hour:2 zone:Europe/Berlin',
    ])
      await askLine(new Projects(first!), line, { now: NOON, place });
    const nothing = () => undefined;
    return Promise.all(
      stores.map(async (store, process) => {
        const posts = new PartPosts({
          rest: { post: () => post(process), delete: () => Promise.resolve() },
          registry,
          projects: new Projects(store),
          log: { info: nothing, warn: nothing, error: nothing },
          fault: (error) => {
            throw error;
          },
          now: () => DUE,
          wait: () => Promise.resolve(),
        });
        await posts.learn();
        return posts;
      }),
    );
  }

  it('that is due in four processes at the same moment goes out once', async () => {
    const sent: number[] = [];
    const four = await posting((process) => Promise.resolve({ id: String(sent.push(process)) }));
    await Promise.all(four.map((posts) => posts.look()));
    await Promise.all(four.map((posts) => posts.look()));
    expect(sent).toHaveLength(1);
  });

  it('whose process dies between its claim and its post is sent by no other: nobody knows whether it is out', async () => {
    const begun: number[] = [];
    const four = await posting((process) => {
      begun.push(process);
      return new Promise(() => undefined);
    });
    const [dies, ...others] = four;
    void dies?.look();
    await expect.poll(() => begun).toEqual([0]);
    await Promise.all(others.map((posts) => posts.look()));
    expect(begun).toEqual([0]);
  });
});

describe('two processes of the program', () => {
  it('of which one is killed, and whose lines to the database are cut, lose nothing and count nothing twice', async () => {
    const report = await strike(
      { processes: 2, people: 4, blows: ['a process killed', 'its connections cut'], url: await newPlace() },
      spread(),
    );
    expect(report).toMatchObject({ lost: 0, twice: 0, broken: [] });
    expect(report.acknowledged).toBeGreaterThan(8);
  }, 120_000);
});
