/** Parts of make-alongs in their channel, each once: over restarts, what breaks between, days on which the clocks change. */
import { DiscordAPIError } from 'discord.js';
import { describe, expect, it, vi } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { askLine } from '../../along.ts';
import { POSTER } from '../../../src/core/along/events.ts';
import { claimPart } from '../../../src/core/along/rules.ts';
import { MOST_EVENTS_OF_POSTS } from '../../../src/projects/quotas.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { PartPosts } from '../../../src/rooms/discord/part-posts.ts';

const CHANNEL = '900000000000000001';
const log = { info: () => undefined, warn: () => undefined, error: () => undefined };

/** A platform that keeps what is posted, and fails as it is told. */
function platform() {
  const posted: {
    id: string;
    body: { content: string; nonce: string; components: unknown; attachments: unknown };
    files: readonly { name: string; data: unknown }[];
  }[] = [];
  const deleted: string[] = [];
  let failure: (() => Error) | undefined;
  let undeletable: (() => Error) | undefined;
  let meanwhile: (() => Promise<unknown>) | undefined;
  return {
    posted,
    deleted,
    failDeleting: (how: (() => Error) | undefined) => {
      undeletable = how;
    },
    /** What happens while a message is on its way. */
    during: (what: (() => Promise<unknown>) | undefined) => {
      meanwhile = what;
    },
    fail: (how: (() => Error) | undefined) => {
      failure = how;
    },
    rest: {
      post: (_route: string, options: object) => {
        if (failure) {
          const error = failure();
          return (meanwhile?.() ?? Promise.resolve()).then(() => Promise.reject(error));
        }
        const { body, files } = options as Pick<(typeof posted)[number], 'body' | 'files'>;
        posted.push({ id: String(posted.length + 1), body, files });
        const made = { id: String(posted.length) };
        return (meanwhile?.() ?? Promise.resolve()).then(() => made);
      },
      delete: (route: string) => {
        if (undeletable) return Promise.reject(undeletable());
        deleted.push(route);
        return Promise.resolve(undefined);
      },
    },
  };
}

async function opened({ starts = '2031-03-23', zone = 'Europe/Berlin', hour = 2 } = {}) {
  const projects = new Projects(new MemoryStore());
  const server = platform();
  const faults: unknown[] = [];
  let now = new Date('2031-03-01T12:00:00Z');
  const say = (line: string) =>
    askLine(projects, line, { now, place: { server: '7', channel: CHANNEL, manager: true } });
  await say('/motif define name:furrow shape:diagonal size:12 gauge:13x10');
  await say(`/along open motif:furrow name:class starts:${starts} every:week hour:${hour} zone:${zone}`);
  const room = () =>
    new PartPosts({
      rest: server.rest,
      registry,
      projects,
      log,
      fault: (error) => {
        faults.push(error);
        return 'fault';
      },
      now: () => now,
      wait: () => Promise.resolve(),
    });
  const posts = room();
  await posts.learn();
  return {
    projects,
    server,
    faults,
    say,
    posts,
    /** The process is started anew. */
    restart: async () => {
      const next = room();
      await next.learn();
      return next;
    },
    at: (moment: string) => {
      now = new Date(moment);
    },
  };
}

const titles = ({ posted }: ReturnType<typeof platform>) =>
  posted.map(({ body }) => /Part \d/.exec(JSON.stringify(body))?.[0]);
const broken = () => Object.assign(new Error('broken'), { code: 'ECONNRESET' });
const refused = () =>
  new DiscordAPIError({ code: 50013, message: 'Missing Permissions' }, 50013, 403, 'POST', 'x', {
    files: undefined,
    body: undefined,
  });

describe('a part is posted on its day', () => {
  it('once, at its hour in the zone, though the clocks leap over it, and again a week later', async () => {
    const room = await opened();
    // 02:00 in Berlin is 01:00 UTC before the change.
    room.at('2031-03-23T00:59:59Z');
    await room.posts.look();
    expect(room.server.posted).toEqual([]);
    room.at('2031-03-23T01:00:00Z');
    await room.posts.look();
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1']);
    // On 30 March 2031 the clocks go from 02:00 to 03:00: there is no 02:00, and 03:00 is 01:00 UTC.
    room.at('2031-03-30T00:59:59Z');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1']);
    room.at('2031-03-30T01:00:00Z');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1', 'Part 2']);
    expect(room.faults).toEqual([]);
  });

  it('once where the clocks show its hour twice', async () => {
    const room = await opened({ starts: '2031-10-26' });
    room.at('2031-10-26T00:00:00Z');
    await room.posts.look();
    room.at('2031-10-26T01:00:00Z');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1']);
  });

  it('not again after a restart, and late where nobody was there in time', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    await room.posts.look();
    room.at('2031-04-07T12:00:00Z');
    const next = await room.restart();
    // One at a time, a minute from one to the next, however often it is looked.
    expect(await next.look()).toBe(60_000);
    next.changed('7.class');
    await next.look();
    expect(titles(room.server)).toEqual(['Part 1', 'Part 2']);
    room.at('2031-04-07T12:01:00Z');
    await next.look();
    await (await room.restart()).look();
    expect(titles(room.server)).toEqual(['Part 1', 'Part 2', 'Part 3']);
  });

  it('and is not tried sooner where the platform refused it, whatever is changed or asked meanwhile', async () => {
    const room = await opened();
    room.server.fail(refused);
    const tries = async () =>
      (await room.projects.alongs.of('7'))[0]?.doc.events.filter(({ did }) => did === 'claimed').length;
    const lookAt = async (moment: string) => {
      room.at(moment);
      room.posts.changed('7.class');
      await room.posts.look();
      return tries();
    };
    expect(await lookAt('2031-03-23T01:00:00Z')).toBe(1);
    expect(await lookAt('2031-03-23T01:59:00Z')).toBe(1);
    expect(await lookAt('2031-03-23T02:00:00Z')).toBe(2);
    // Ever more seldom, but never less than every six hours.
    expect(await lookAt('2031-03-23T03:59:00Z')).toBe(2);
    expect(await lookAt('2031-03-23T04:00:00Z')).toBe(3);
    expect(await lookAt('2031-03-23T08:00:00Z')).toBe(4);
    expect(await lookAt('2031-03-23T13:59:00Z')).toBe(4);
    expect(await lookAt('2031-03-23T14:00:00Z')).toBe(5);
    room.server.fail(undefined);
    expect(await lookAt('2031-03-23T20:00:00Z')).toBe(6);
    expect(titles(room.server)).toEqual(['Part 1']);
  });

  it('not again where the process died after it was claimed; that is said, and it can be posted anew', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    await room.projects.alongs.happen(
      '7.class',
      { by: POSTER, at: new Date('2031-03-23T01:00:00Z'), once: 'claim' },
      (state) => claimPart(state, 1, new Date('2031-03-23T01:00:00Z')),
    );
    await (await room.restart()).look();
    expect(room.server.posted).toEqual([]);
    const shown = await room.say('/along show');
    expect(shown.lines.join(' ')).toContain('Whether part 1 was posted is not known');
    await room.say('/along part part:1 post:anew');
    room.posts.changed('7.class');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1']);
  });

  it('not again where the line broke under it, but later where the platform refused it', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    room.server.fail(refused);
    await room.posts.look();
    room.server.fail(undefined);
    room.at('2031-03-23T01:30:00Z');
    await room.posts.look();
    expect(room.server.posted).toEqual([]);
    room.at('2031-03-23T02:01:00Z');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1']);
    room.server.fail(broken);
    room.at('2031-03-30T01:00:00Z');
    await room.posts.look();
    room.server.fail(undefined);
    room.at('2031-03-30T09:00:00Z');
    await room.posts.look();
    await (await room.restart()).look();
    expect(titles(room.server)).toEqual(['Part 1']);
    expect(room.faults).toEqual([]);
  });

  it('and its message goes when it is taken back', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    await room.posts.look();
    await room.say('/along part part:1 post:back');
    room.posts.changed('7.class');
    await room.posts.look();
    await room.posts.look();
    expect(room.server.deleted).toEqual([`/channels/${CHANNEL}/messages/1`]);
    expect(titles(room.server)).toEqual(['Part 1']);
    room.at('2031-03-23T01:01:00Z');
    await room.say('/along part part:1 post:anew');
    room.posts.changed('7.class');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1', 'Part 1']);
    // The platform gives the same message back for the same nonce: anew is another.
    expect(new Set(room.server.posted.map(({ body }) => body.nonce)).size).toBe(2);
  });

  it('and goes on with the next where a part that was given out is removed, whose message goes', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    await room.posts.look();
    await room.say('/along part part:1 do:remove');
    room.posts.changed('7.class');
    await room.posts.look();
    expect(room.server.deleted).toEqual([`/channels/${CHANNEL}/messages/1`]);
    room.at('2031-03-30T01:00:00Z');
    await room.posts.look();
    expect(room.server.posted).toHaveLength(2);
    expect(room.faults).toEqual([]);
    // The message is gone, so bringing the part back does not bring it into the channel.
    const undone = await room.say('/along undo');
    expect(undone.lines.join(' ')).toContain('not in the channel');
    const [found] = await room.projects.alongs.of('7');
    expect(found?.state.parts[0]?.id).toBe(1);
    expect(found?.state.postings.get(1)).toMatchObject({ is: 'taken-back' });
    room.at('2031-03-30T01:01:00Z');
    await room.say('/along part part:1 post:anew');
    room.posts.changed('7.class');
    await room.posts.look();
    expect(room.server.posted).toHaveLength(3);
  });

  it('and its message goes where it is taken back or removed while it is on its way', async () => {
    for (const line of ['/along part part:1 post:back', '/along part part:1 do:remove']) {
      const room = await opened();
      room.at('2031-03-23T01:00:00Z');
      room.server.during(() => room.say(line));
      await room.posts.look();
      room.server.during(undefined);
      await room.posts.look();
      expect(room.server.deleted, line).toEqual([`/channels/${CHANNEL}/messages/1`]);
      expect(room.server.posted, line).toHaveLength(1);
      expect(room.faults, line).toEqual([]);
    }
  });

  it('not later where it is taken back while the platform refuses it', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    room.server.fail(refused);
    room.server.during(() => room.say('/along part part:1 post:back'));
    await room.posts.look();
    room.server.fail(undefined);
    room.server.during(undefined);
    room.at('2031-03-23T09:00:00Z');
    await (await room.restart()).look();
    expect(room.server.posted).toEqual([]);
  });

  it('though the message of another cannot be taken away, which is tried again', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    await room.posts.look();
    await room.say('/along part part:1 post:anew');
    room.server.failDeleting(broken);
    room.at('2031-03-30T01:00:00Z');
    room.posts.changed('7.class');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1', 'Part 2']);
    room.server.failDeleting(undefined);
    room.at('2031-03-30T02:01:00Z');
    await room.posts.look();
    expect(room.server.deleted).toEqual([`/channels/${CHANNEL}/messages/1`]);
  });

  it('and is not claimed before it is drawn', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    const drawing = vi.spyOn(room.projects, 'savedSettings').mockRejectedValue(new Error('cannot be drawn'));
    await room.posts.look();
    expect(room.faults).toHaveLength(1);
    drawing.mockRestore();
    room.at('2031-03-23T02:01:00Z');
    await room.posts.look();
    expect(titles(room.server)).toEqual(['Part 1']);
  });

  it('whole in a file where it is too long for a message', async () => {
    const room = await opened();
    const names = Array.from(
      { length: 20 },
      (_, n) => `${String.fromCharCode(97 + n).repeat(20)} square ${n} with a long name`,
    );
    for (const name of names)
      await room.say(`/motif define name:"${name}" shape:diagonal size:12 gauge:13x10`);
    await room.say(`/blanket start name:long kinds:"${names.join(', ')}" columns:10 rows:10`);
    await room.say(
      '/along open blanket:long name:"long one" starts:2031-03-23 shares:1 hour:2 zone:Europe/Berlin',
    );
    await room.say(`/along part part:4 asks:"${'Bring it along. '.repeat(30)}" name:"long one"`);
    room.at('2031-05-23T01:00:00Z');
    const posts = await room.restart();
    for (let minute = 0; minute < 8; minute++) {
      room.at(`2031-05-23T01:1${minute}:30Z`);
      await posts.look();
    }
    const long = room.server.posted.find(({ body }) => body.content.includes('answer.txt'));
    expect(long?.body.content.length).toBeLessThanOrEqual(2000);
    expect(long?.files.map(({ name }) => name)).toEqual(['answer.txt', 'working.txt']);
    const whole = String(long?.files[0]?.data);
    for (const name of names) expect(whole).toContain(name);
    expect(whole).toContain('Bring it along.');
    expect(long?.body.attachments).toMatchObject([{ id: 0, filename: 'answer.txt' }, { id: 1 }]);
    expect(room.faults).toEqual([]);
  });

  it('and no more where so much was noted of posting that it would fill the make-along', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    const noted = async () =>
      (await room.projects.alongs.of('7'))[0]?.doc.events.filter(({ by }) => by === POSTER).length;
    await room.projects.alongs.happen(
      '7.class',
      { by: POSTER, at: new Date('2031-03-01T13:00:00Z'), once: 'much' },
      () => Array.from({ length: MOST_EVENTS_OF_POSTS }, () => ({ did: 'not-posted' as const, part: 1 })),
    );
    expect(await noted()).toBe(MOST_EVENTS_OF_POSTS);
    await room.posts.look();
    room.at('2031-05-23T01:00:00Z');
    await (await room.restart()).look();
    expect(room.server.posted).toEqual([]);
    expect(await noted()).toBe(MOST_EVENTS_OF_POSTS);
    expect(room.faults).toEqual([]);
    // Everything else goes on.
    await room.say('/along join');
    await room.say('/along done part:1');
  });

  it('with buttons that everybody may press, and none once it is closed', async () => {
    const room = await opened();
    room.at('2031-03-23T01:00:00Z');
    await room.posts.look();
    const [first] = room.server.posted;
    const buttons = JSON.stringify(first?.body.components);
    for (const label of ['Mine', 'Done', 'Stuck']) expect(buttons).toContain(`"label":"${label}"`);
    await room.say('/along close');
    room.at('2031-04-30T01:00:00Z');
    await (await room.restart()).look();
    expect(titles(room.server)).toEqual(['Part 1']);
  });
});
