/** Boards through the real client's REST, against the stand-in. */
import { REST } from 'discord.js';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { RenderedAnswer } from '../../../src/chat/answer.ts';
import { Claims } from '../../../src/projects/claims.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Boards, type Board, type BoardKeeper } from '../../../src/rooms/discord/boards.ts';
import { readButton } from '../../../src/rooms/discord/buttons.ts';
import { openStandIn, type Channel, type Guild, type StandIn } from './stand-in/index.ts';

const shown = (headline: string): RenderedAnswer => ({
  headline,
  figures: [],
  lines: [],
  working: [],
  assumptions: [],
  cautions: [],
  files: [{ name: 'board.svg', says: 'The blanket so far', content: '<svg/>' }],
  actions: [{ label: 'Take one', question: 'together pledge', options: {}, forAnyone: true }],
  private: false,
});

/** A board in memory: how many motifs are made. */
class Kept implements BoardKeeper {
  made = 0;
  message: string | undefined;
  closed = false;
  /** Dies between posting and keeping. */
  forgets = false;
  before: Board['before'];
  constructor(public channel: string) {}
  read(): Promise<Board | undefined> {
    if (this.closed) return Promise.resolve(undefined);
    const { channel, message, made, before } = this;
    return Promise.resolve({ channel, message, before, shown: shown(`${made} made`), version: made });
  }
  posted(_: string, message: string): Promise<void> {
    if (this.forgets) return Promise.reject(new Error('killed'));
    this.message = message;
    this.before = undefined;
    return Promise.resolve();
  }
  lost(): Promise<void> {
    this.closed = true;
    return Promise.resolve();
  }
  drawn(): Promise<void> {
    return Promise.resolve();
  }
}

let platform: StandIn;
let guild: Guild;
let channel: Channel;
let kept: Kept;
let boards: Boards;
const faults: unknown[] = [];
const lines: object[] = [];
const noting = (facts: object) => void lines.push(facts);
const openBoards = (gap = 20, claims?: Claims) =>
  new Boards({
    claims,
    rest: new REST({ api: platform.api, retries: 0 }).setToken(platform.token),
    keeper: kept,
    log: { info: noting, warn: noting, error: noting },
    fault: (error) => `f${faults.push(error)}`,
    makers: {
      toPng: () => Promise.resolve(new Uint8Array([1])),
      toPdf: () => Promise.reject(new Error('nothing is printed here')),
    },
    gap,
  });
const there = () =>
  [...platform.world.messages.values()].filter((message) => message.channel === channel && !message.deleted);

beforeAll(async () => {
  platform = await openStandIn();
  guild = platform.guild('Allotment');
});
afterAll(() => platform.close());
beforeEach(() => {
  channel = platform.channel(guild, 'board');
  kept = new Kept(channel.id);
  boards = openBoards();
  faults.length = 0;
  lines.length = 0;
});
afterEach(() => boards.close());

const show = async () => {
  boards.changed('throw');
  await boards.settled();
};

describe('a board of several processes', () => {
  it('is posted once and shown by one of them at a time, the newest in the end', async () => {
    const store = new MemoryStore();
    let showing = 0;
    let most = 0;
    const read = kept.read.bind(kept);
    kept.read = async () => {
      most = Math.max(most, ++showing);
      await new Promise((done) => setTimeout(done, 5));
      return read();
    };
    const posted = kept.posted.bind(kept);
    kept.posted = (id, message) => posted(id, message).finally(() => showing--);
    kept.drawn = () => {
      showing--;
      return Promise.resolve();
    };
    const processes = Array.from({ length: 4 }, () => openBoards(10, new Claims(store)));
    for (let press = 1; press <= 40; press++) {
      kept.made = press;
      processes[press % 4]?.changed('throw');
      await new Promise((done) => setTimeout(done, 3));
    }
    await Promise.all(processes.map((each) => each.settled()));
    expect(most).toBe(1);
    expect(there()).toHaveLength(1);
    expect(there()[0]?.content).toContain('40 made');
    await Promise.all(processes.map((each) => each.close()));
  });
});

describe('a board', () => {
  it('is posted once and edited from then on, its picture replaced', async () => {
    await show();
    expect(there()).toHaveLength(1);
    kept.made = 3;
    await show();
    const [message] = there();
    expect(there()).toHaveLength(1);
    expect(message?.content).toContain('3 made');
    expect(message?.attachments.map(({ filename, description }) => [filename, description])).toEqual([
      ['board.png', 'The blanket so far'],
    ]);
    expect(message?.allowedMentions).toEqual({ parse: [] });
  });

  it('has buttons for everybody, another id whenever it changed', async () => {
    await show();
    const id = () => there()[0]?.components[0]?.components?.[0]?.custom_id ?? '';
    const before = id();
    expect(readButton(before)).toMatchObject({ does: 'ask', owner: '', payload: 'together pledge' });
    kept.made += 1;
    await show();
    expect(id()).not.toBe(before);
  });

  it('takes a storm of changes as few edits, the last of which is shown', async () => {
    boards = openBoards(100);
    await show();
    const before = boards.sent;
    for (let press = 1; press <= 500; press += 1) {
      kept.made = press;
      boards.changed('throw');
      if (press % 100 === 0) await new Promise((done) => setTimeout(done, 30));
    }
    await boards.settled();
    expect(boards.sent - before).toBeLessThanOrEqual(5);
    expect(there()[0]?.content).toContain('500 made');
  });

  it('may change with many others at once, and nobody is warned of a leak', async () => {
    const warned: string[] = [];
    const hear = (warning: Error) => void warned.push(warning.name);
    process.on('warning', hear);
    kept.closed = true;
    for (let board = 0; board < 30; board++) boards.changed(`throw ${board}`);
    await boards.settled();
    await new Promise((done) => setImmediate(done));
    process.off('warning', hear);
    expect(warned).toEqual([]);
  });

  it('that was deleted is posted again', async () => {
    await show();
    there()[0]!.deleted = true;
    kept.made = 1;
    await show();
    expect(there()).toHaveLength(1);
    expect(kept.message).toBe(there()[0]?.id);
  });

  it('carries a nonce, so that a crash between posting and keeping leaves one', async () => {
    const bodies: { nonce?: string; enforce_nonce?: boolean }[] = [];
    const rest = {
      post: (_: string, { body }: { body?: object }) => {
        bodies.push(body ?? {});
        return Promise.resolve({ id: '1' });
      },
      patch: () => Promise.resolve({}),
      put: () => Promise.resolve(),
      delete: () => Promise.resolve({}),
    };
    const log = { info: noting, warn: noting, error: noting };
    const fault = (error: unknown) => `f${faults.push(error)}`;
    const parts = {
      rest,
      keeper: kept,
      log,
      fault,
      makers: {
        toPng: () => Promise.resolve(new Uint8Array([1])),
        toPdf: () => Promise.reject(new Error('nothing is printed here')),
      },
      gap: 1,
    };
    kept.forgets = true;
    for (let starts = 0; starts < 2; starts += 1) {
      const one = new Boards(parts);
      one.changed('throw');
      await one.settled();
    }
    expect(bodies).toHaveLength(2);
    expect(bodies[0]).toMatchObject({ enforce_nonce: true });
    expect(bodies[0]?.nonce?.length).toBeLessThanOrEqual(25);
    expect(bodies[1]?.nonce).toBe(bodies[0]?.nonce);
    faults.length = 0;
  });

  it('in a thread that sleeps wakes it with a message of its own, and the one before goes', async () => {
    await show();
    const [first] = there();
    channel.archived = true;
    kept.made = 2;
    await show();
    expect(there().map(({ content }) => content)).toEqual([expect.stringContaining('2 made')]);
    expect(first?.deleted).toBe(true);
    expect(channel.archived).toBe(false);
    expect(kept.message).toBe(there()[0]?.id);
  });

  it('that moved stands in the new channel, and in the old one no more', async () => {
    await show();
    const [first] = there();
    const other = platform.channel(guild, 'elsewhere');
    kept.before = { channel: channel.id, message: first!.id };
    kept.message = undefined;
    kept.channel = other.id;
    await show();
    expect(there()).toEqual([]);
    expect(platform.world.messages.get(kept.message!)?.channel).toBe(other);
  });

  it('whose channel was deleted is given up, with a line of the log', async () => {
    await show();
    platform.world.channels.delete(channel.id);
    kept.made = 1;
    await show();
    expect(lines).toMatchObject([{ code: 10003 }]);
    expect(kept.closed).toBe(true);
    expect(faults).toEqual([]);
  });

  it('in a channel that is closed to it is one line of the log', async () => {
    channel = platform.channel(platform.guild('Closed', { botPermissions: 0n }), 'board');
    kept = new Kept(channel.id);
    boards = openBoards();
    await show();
    expect(lines).toMatchObject([{ code: 50013 }]);
    expect(faults).toEqual([]);
  });

  it('that is no more is left as it is', async () => {
    await show();
    kept.closed = true;
    await show();
    expect(boards.sent).toBe(1);
  });

  it('shows what is still to be shown before leaving', async () => {
    boards = openBoards(5_000);
    boards.changed('throw');
    await new Promise((done) => setTimeout(done, 100));
    kept.made = 9;
    boards.changed('throw');
    await boards.close();
    expect(there()[0]?.content).toContain('9 made');
  });
});
