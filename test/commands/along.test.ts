/** A make-along as a class meets it: presses that arrive twice, who sees what, leaving and erasing, a storm on one button. */
import { describe, expect, it, vi } from 'vitest';
import { askLine } from '../along.ts';
import { asking, NOON, type Asking } from '../asking.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { Projects } from '../../src/projects/projects.ts';
import { MOST_MEMBERS } from '../../src/projects/quotas.ts';

async function all(room: Asking, ...lines: readonly string[]): Promise<void> {
  for (const line of lines) expect(await room.ask(line), line).toMatchObject({ ok: true });
}

async function opened(): Promise<Asking> {
  const room = asking();
  await all(
    room,
    'ines: /motif define name:furrow shape:diagonal size:12 gauge:13x10',
    'ines: /along open motif:furrow name:class starts:2026-03-02 every:week hour:9',
  );
  return room;
}

const PLACE = { server: '7', channel: '900000000000000001', manager: false };

describe('a make-along', () => {
  it('counts a press that arrives twice once, and one after it was taken back again', async () => {
    const projects = new Projects(new MemoryStore());
    const say = (line: string, maker: string, once?: string) =>
      askLine(projects, line, { now: NOON, place: PLACE, maker, ...(once === undefined ? {} : { once }) });
    await say('/motif define name:furrow shape:diagonal size:12 gauge:13x10', 'ines');
    await say('/along open motif:furrow name:class starts:2026-03-02', 'ines');
    await say('/along join', 'rowan');
    const done = async (once: string) =>
      (await say('/along done part:1', 'rowan', once)).figures.find(({ key }) => key === 'done')?.value;
    expect(await done('button')).toBe(1);
    expect(await done('button')).toBe(1);
    await say('/along undo', 'rowan');
    // The same button of the same message.
    expect(await done('button')).toBe(1);
    const state = (await projects.alongs.of('7'))[0]!.state;
    expect(state.done.get(1)?.size).toBe(1);
  });

  it('is hers where several are open and she takes part in one of them', async () => {
    const room = await opened();
    await all(
      room,
      'ines: /along open motif:furrow name:other starts:2026-03-02',
      'rowan: /along join name:other',
    );
    expect(await room.ask('rowan: /along mine')).toMatchObject({ ok: true });
    expect((await room.ask('rowan: /along show')).headline).toContain('other');
    for (const who of ['ines', 'fern'])
      expect(await room.ask(`${who}: /along show`)).toMatchObject({ code: 'which-along' });
  });

  it('tells of no option that it has not, where her counts are those of another row', async () => {
    const room = await opened();
    await all(room, 'rowan: /along join');
    const said = await room.ask('rowan: /along stuck part:2 row:7 counts:19');
    expect(said).toMatchObject({ ok: true });
    expect(said.lines?.join(' ')).toContain('start the list from row 9.');
  });

  it('takes her in again who left, by the same button, pressed once or twice', async () => {
    const projects = new Projects(new MemoryStore());
    const say = (line: string, maker: string, once?: string) =>
      askLine(projects, line, { now: NOON, place: PLACE, maker, ...(once === undefined ? {} : { once }) });
    await say('/motif define name:furrow shape:diagonal size:12 gauge:13x10', 'ines');
    await say('/along open motif:furrow name:class starts:2026-03-02', 'ines');
    const isIn = async () => (await projects.alongs.of('7'))[0]?.state.members.has('rowan');
    for (let time = 0; time < 2; time++) {
      await say('/along join', 'rowan', 'button');
      await say('/along join', 'rowan', 'button');
      expect(await isIn()).toBe(true);
      await say('/along leave', 'rowan');
      expect(await isIn()).toBe(false);
    }
    const [found] = await projects.alongs.of('7');
    expect(found?.doc.events.filter(({ did }) => did === 'joined')).toHaveLength(2);
  });

  it('names nobody who did not wish it to whoever asks for a maker by a wrong name', async () => {
    const room = await opened();
    await all(room, 'rowan: /along join', 'ash: /along join named:yes');
    expect((await room.ask('fern: /along handover maker:zzz')).code).toBe('teachers-only');
    const refused = await room.ask('ines: /along handover maker:zzz');
    expect(refused.code).toBe('no-such-maker');
    expect(JSON.stringify(refused)).toContain('ash');
    expect(JSON.stringify(refused)).not.toContain('rowan');
    await all(room, 'ines: /along handover maker:rowan');
  });

  it('reads the clocks of its zone no more often for many makers than for one', async () => {
    const room = await opened();
    const looks = async () => {
      const clocks = vi.spyOn(Intl.DateTimeFormat.prototype, 'formatToParts');
      const shown = await room.ask('/along show');
      const { length } = clocks.mock.calls;
      clocks.mockRestore();
      return { length, named: (shown.data.named as unknown[]).length };
    };
    await all(room, 'rowan: /along join named:yes');
    const one = await looks();
    for (let n = 0; n < 5; n++) await all(room, `m${n}: /along join named:yes`);
    const six = await looks();
    expect([one.named, six.named]).toEqual([1, 6]);
    expect(one.length).toBeGreaterThan(0);
    expect(six.length).toBe(one.length);
  });

  it('takes a storm on Done, of as many makers as can take part, and no more of them', async () => {
    const projects = new Projects(new MemoryStore());
    const say = (line: string, maker: string) => askLine(projects, line, { now: NOON, place: PLACE, maker });
    await say('/motif define name:furrow shape:diagonal size:12 gauge:13x10', 'ines');
    await say('/along open motif:furrow name:class starts:2026-03-02', 'ines');
    const makers = Array.from({ length: MOST_MEMBERS }, (_, n) => `m${n}`);
    for (const maker of makers) await say('/along join', maker);
    await expect(say('/along join', 'late')).rejects.toMatchObject({ code: 'too-many-members' });
    await Promise.all(
      makers.slice(0, 100).flatMap((maker) => [1, 2].map(() => say('/along done part:1', maker))),
    );
    const [found] = await projects.alongs.of('7');
    expect(found?.state.done.get(1)?.size).toBe(100);
    expect(found?.doc.events.filter(({ did }) => did === 'done')).toHaveLength(100);
  }, 60_000);

  it('tells by name only who wishes it, and troubles in numbers alone', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /along join',
      'ash: /along join named:yes',
      'rowan: /along stuck part:2 row:7 counts:"11 13 14" words:"my secret words"',
    );
    const shown = JSON.stringify(await room.ask('fern: /along show'));
    expect(shown).toContain('ash');
    expect(shown).not.toContain('rowan');
    const troubles = await room.ask('ines: /along troubles');
    expect(troubles.data.troubles).toEqual([{ part: 2, row: 7, slip: 'increase-missed', makers: 1 }]);
    expect(JSON.stringify(troubles)).not.toMatch(/rowan|secret/);
    expect((await room.ask('ash: /along troubles')).code).toBe('teachers-only');
    expect(JSON.stringify(await room.ask('ash: /along history'))).not.toContain('rowan');
    await all(room, 'rowan: /along stuck part:2 help:yes words:"it leans"');
    expect(JSON.stringify(await room.ask('ines: /along troubles'))).toContain('rowan asks to be helped');
  });

  it('takes a maker out whole who erases herself, exports what is kept of her before, and goes on without its teacher', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /along join gauge:15x12 colours:teal',
      'rowan: /along done part:1',
      'rowan: /along stuck part:2 row:3 words:"my secret words"',
      'ash: /along join',
    );
    await all(room, 'rowan: /settings export');
    expect(room.files.some(({ content }) => content.includes('my secret words'))).toBe(true);
    expect(JSON.stringify(await room.ask('rowan: /settings show'))).toContain(
      'a part in the make-along class',
    );
    await all(room, 'rowan: /settings erase confirm:yes');
    const [found] = await room.projects.alongs.of(undefined);
    expect(JSON.stringify(found?.doc)).not.toMatch(/rowan|secret|teal/);
    expect(found?.state.members.size).toBe(1);
    expect(found?.state.done.get(1)?.size ?? 0).toBe(0);
    expect(found?.state.stuck.length).toBe(0);
    await all(room, 'ines: /settings erase confirm:yes');
    expect((await room.ask('ash: /along troubles')).ok).toBe(true);
    await all(room, 'ash: /along handover maker:ash', 'ash: /along part part:3 title:"Second half, slowly"');
    expect((await room.ask('ash: /along plan')).data.parts[2].title).toBe('Second half, slowly');
  });

  it('gives out what is due in the terminal, each part once', async () => {
    const room = await opened();
    expect((await room.ask('/along due')).data.parts).toMatchObject([{ number: 1 }]);
    expect((await room.ask('/along due')).figures['given_out']?.value).toBe(0);
    room.at(new Date('2026-03-16T09:00:00Z'));
    expect((await room.ask('/along due')).figures['given_out']?.value).toBe(2);
    expect((await room.ask('ines: /along part part:2 from:2026-03-17')).code).toBe('given-out-already');
  });

  it('writes its days as RFC 5545 has them', async () => {
    const room = await opened();
    await all(room, '/along calendar');
    const { content } = room.files.at(-1)!;
    // 3.1: lines end in CRLF and have 75 octets at most; 3.6: what begins ends; 3.3.4: a date is eight digits; 3.8.4.7: every event has an id.
    const lines = content.split('\r\n');
    expect(content).not.toMatch(/[^\r]\n/);
    for (const line of lines) expect(Buffer.byteLength(line), line).toBeLessThanOrEqual(75);
    expect([lines[0], lines.at(-1)]).toEqual(['BEGIN:VCALENDAR', 'END:VCALENDAR']);
    const of = (start: string) => lines.filter((line) => line.startsWith(start));
    expect(of('BEGIN:VEVENT')).toHaveLength(4);
    expect(of('END:VEVENT')).toHaveLength(4);
    expect(of('DTSTART;VALUE=DATE:')).toEqual(
      ['20260302', '20260309', '20260316', '20260323'].map((day) => `DTSTART;VALUE=DATE:${day}`),
    );
    expect(new Set(of('UID:')).size).toBe(4);
    expect(of('VERSION:')).toEqual(['VERSION:2.0']);
    await all(room, '/along calendar');
    expect(room.files.at(-1)!.content).toBe(content);
  });
});
