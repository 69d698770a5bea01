/** Group blankets through the store: who was first, what is kept, what is forgotten. */
import { describe, expect, it } from 'vitest';
import { handIn, pledge } from '../../src/core/group/rules.ts';
import { Problem } from '../../src/core/base/problem.ts';
import type { GroupEvent, Happening } from '../../src/core/group/events.ts';
import { GROUPS } from '../../src/projects/group-schema.ts';
import { Groups } from '../../src/projects/groups.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import {
  KEPT_FOR_ORGANISER,
  mayOpen,
  MOST_EVENTS,
  MOST_EVENTS_OF_MAKER,
  MOST_MEMBERS,
  MOST_OF_SERVER,
  MOST_OPENED,
  OF_GROUPS,
  OPENED_WITHIN_DAYS,
} from '../../src/projects/quotas.ts';
import type { Store } from '../../src/projects/store.ts';
import { groupPlan } from '../core/group/plan.ts';
import { refused } from '../refused.ts';

const at = new Date('2026-03-02T12:00:00Z');
const asker = (id: string) => ({ id, name: `Maker ${id}`, manager: false, managed: true });

async function opened(quotas: number[]) {
  const groups = new Groups(new MemoryStore());
  await groups.open({ server: '7' }, groupPlan({ quotas, columns: 1 }), {
    by: 'ines',
    name: 'Ines',
    at,
    once: 'open',
  });
  return { groups, id: Groups.idOf('7', 'Bean row throw') };
}

/** A blanket of which so much is saved already, by whoever the events say. */
async function withEvents(events: number, by: (n: number) => string, did: 'joined' | 'reminded') {
  const store = new MemoryStore();
  const groups = new Groups(store);
  const plan = groupPlan({ quotas: [100], columns: 1 });
  await groups.open({ server: '7' }, plan, { by: 'ines', name: 'Ines', at, once: 'open' });
  const id = Groups.idOf('7', 'Bean row throw');
  await store.change(GROUPS, id, (doc) => {
    const stamp = (n: number) => ({ by: by(n), at: at.toISOString(), once: `once ${n}` });
    const more = Array.from({ length: events - 1 }, (_, n): GroupEvent =>
      did === 'joined'
        ? { did, maker: by(n), name: by(n), perWeek: 1, colours: [], ...stamp(n) }
        : { did: n === 0 ? 'joined' : did, maker: 'm', name: 'm', perWeek: 1, colours: [], ...stamp(n) },
    );
    return { keep: doc && { ...doc, events: [...doc.events, ...more] }, tell: undefined };
  });
  const happen = (maker: string, happened: readonly Happening[]) =>
    groups.happen(id, { by: maker, at, once: `new by ${maker}` }, () => happened);
  return { groups, id, happen };
}
const joined = (maker: string): Happening => ({ did: 'joined', maker, name: maker, perWeek: 1, colours: [] });
const code = (code: string) => expect.objectContaining({ code }) as unknown;

describe('the quotas of group blankets', () => {
  it('leave the last events to whoever runs it, and end there', async () => {
    const { happen } = await withEvents(MOST_EVENTS - KEPT_FOR_ORGANISER, (n) => `m${n % 300}`, 'reminded');
    await expect(happen('late', [joined('late')])).rejects.toEqual(code('too-many-events'));
    await happen('ines', [{ did: 'closed' }]);
    const full = await withEvents(MOST_EVENTS, (n) => `m${n % 300}`, 'reminded');
    await expect(full.happen('ines', [{ did: 'closed' }])).rejects.toEqual(code('too-many-events'));
  });

  it('let so much be written, however few events it is in, and leave the last of it to whoever runs it', async () => {
    const limits = { ...OF_GROUPS, characters: 16_000, keptCharacters: 10_000 };
    const groups = new Groups(new MemoryStore(), limits);
    const { id } = await groups.open({ server: '7' }, groupPlan(), {
      by: 'ines',
      name: 'Ines',
      at,
      once: 'open',
    });
    const says = (by: string, once: string) =>
      groups.happen(id, { by, at, once }, () => [
        { ...joined(by), colours: Array.from({ length: 60 }, () => 'x'.repeat(30)) } as Happening,
      ]);
    /** How often she may say it until there is no more room. */
    const untilFull = async (by: string) => {
      for (let times = 0; ; times++) {
        try {
          await says(by, `${by} ${times}`);
        } catch (error) {
          expect(error).toEqual(code('too-many-events'));
          return times;
        }
      }
    };
    const written = async () => JSON.stringify((await groups.read(id))?.events).length;
    expect(await untilFull('m')).toBeGreaterThan(1);
    expect(await written()).toBeLessThan(6_000);
    expect(await untilFull('ines')).toBeGreaterThan(3);
    expect(await written()).toBeLessThan(16_000);
  });

  it('let one maker change it so often, and the others go on', async () => {
    const { happen } = await withEvents(MOST_EVENTS_OF_MAKER + 1, () => 'm', 'reminded');
    await expect(happen('m', [{ did: 'left', maker: 'm' }])).rejects.toEqual(
      code('too-many-events-of-maker'),
    );
    await happen('other', [joined('other')]);
  });

  it('let so many take part, and those who do go on', async () => {
    const { happen } = await withEvents(MOST_MEMBERS + 1, (n) => `m${n}`, 'joined');
    await expect(happen('late', [joined('late')])).rejects.toEqual(code('too-many-members'));
    await happen('m3', [joined('m3')]);
    await happen('m4', [{ did: 'left', maker: 'm4' }]);
    await happen('late', [joined('late')]);
  });

  it('have no two names in a server that look the same', () => {
    const there = [
      { version: 1 as const, id: '7.x', name: 'Bean row throw', opened: at.toISOString(), makers: [] },
    ];
    const open = (called: string) => () => mayOpen(there, { by: 'mal', at, called }, OF_GROUPS);
    for (const called of [
      'Bеan row throw',
      'Bean\u200b row throw',
      'Вean-row throw',
      'Ｂean row throw',
      'bean  row throw\u2060',
    ])
      expect(open(called), called).toThrow(code('group-name-looks-taken'));
    for (const called of ['Bean row throw 2', 'Bean row', 'Бobbin row throw', '豆の列'])
      expect(open(called), called).not.toThrow();
  });

  it('let one maker open so many within a month, and a server have so many', () => {
    const entry = (n: number, opener: string, opened = at) => ({
      version: 1 as const,
      id: `7.${n}`,
      name: `group ${n}`,
      opener,
      opened: opened.toISOString(),
      makers: [opener],
    });
    const hers = Array.from({ length: MOST_OPENED }, (_, n) => entry(n, 'ines'));
    expect(() => mayOpen(hers.slice(1), { by: 'ines', at, called: 'new' }, OF_GROUPS)).not.toThrow();
    expect(() => mayOpen(hers, { by: 'other', at, called: 'new' }, OF_GROUPS)).not.toThrow();
    expect(() => mayOpen(hers, { by: 'ines', at, called: 'new' }, OF_GROUPS)).toThrow(
      code('opened-too-many-groups'),
    );
    const later = new Date(at.getTime() + (OPENED_WITHIN_DAYS + 1) * 86_400_000);
    expect(() => mayOpen(hers, { by: 'ines', at: later, called: 'new' }, OF_GROUPS)).not.toThrow();
    const many = Array.from({ length: MOST_OF_SERVER }, (_, n) => entry(n, `m${n}`));
    expect(() => mayOpen(many, { by: 'other', at, called: 'new' }, OF_GROUPS)).toThrow(
      code('too-many-groups'),
    );
  });
});

describe('group blankets', () => {
  it('give the last motif to exactly one of many who press at once', async () => {
    const { groups, id } = await opened([100]);
    const presses = await Promise.allSettled(
      Array.from({ length: 200 }, (_, n) =>
        groups.happen(id, { by: `m${n}`, at, once: `press-${n}` }, (state) =>
          pledge(state, asker(`m${n}`), 0, 1),
        ),
      ),
    );
    expect(presses.filter(({ status }) => status === 'fulfilled')).toHaveLength(100);
    const refused = presses.flatMap((press) =>
      press.status === 'rejected' ? [press.reason as unknown] : [],
    );
    expect(refused).toHaveLength(100);
    for (const problem of refused) expect(problem).toBeInstanceOf(Problem);
    const [{ state } = { state: undefined }] = await groups.of('7');
    expect(state?.tally[0]).toEqual({ pledged: 100, handedIn: 0, accepted: 0 });
  });

  it('do a press once, however often it arrives', async () => {
    const { groups, id } = await opened([5]);
    const press = () =>
      groups.happen(id, { by: 'm1', at, once: 'the same' }, (state) => pledge(state, asker('m1'), 0, 1));
    expect((await press()).again).toBe(false);
    expect((await press()).again).toBe(true);
    expect((await groups.of('7'))[0]?.state.tally[0]?.pledged).toBe(1);
  });

  it('are found by server, and never mixed up by their names', async () => {
    const { groups } = await opened([5]);
    await expect(
      groups.open({ server: '7' }, groupPlan({ quotas: [5], columns: 1 }), {
        by: 'x',
        name: 'X',
        at,
        once: 'two',
      }),
    ).rejects.toThrow(refused('group-name-taken'));
    expect(await groups.of('8')).toEqual([]);
    expect(Groups.idOf('7', 'Bean  Row Throw')).toBe(Groups.idOf('7', 'bean row throw'));
    expect(Groups.idOf('7', 'Bohnenbeet ü')).not.toBe(Groups.idOf('7', 'Bohnenbeet ö'));
  });

  it('keep where a photo stands while the motifs are hers, and forget it with her', async () => {
    const { groups, id } = await opened([5]);
    for (const maker of ['m1', 'm2'])
      await groups.happen(id, { by: maker, at, once: maker }, (state) => handIn(state, asker(maker), 0, 1));
    const photo = (piece: number) => ({ pieces: [piece], channel: '3', message: `9${piece}` });
    await groups.notePhoto(id, 'm1', photo(1));
    await groups.notePhoto(id, 'm2', photo(2));
    // Not of hers: she was forgotten while it was being posted.
    await groups.notePhoto(id, 'm1', photo(2));
    expect((await groups.read(id))?.photos).toEqual([photo(1), photo(2)]);
    await groups.forget('m1');
    expect((await groups.read(id))?.photos).toEqual([photo(2)]);
  });

  it('forget a maker and keep every count', async () => {
    const { groups, id } = await opened([5]);
    await groups.happen(id, { by: 'm1', at, once: 'm1-a' }, (state) => pledge(state, asker('m1'), 0, 2));
    await groups.happen(id, { by: 'm1', at, once: 'm1-b' }, (state) =>
      handIn(state, asker('m1'), 0, 1, { side: 15.2 }),
    );
    expect(await groups.says('m1')).toEqual(['a part in the group blanket Bean row throw']);
    const before = (await groups.of('7'))[0]?.state.tally;
    await groups.forget('m1');
    const after = (await groups.of('7'))[0];
    expect(after?.state.tally).toEqual(before);
    expect(JSON.stringify(after?.doc)).not.toMatch(/"m1|Maker m1/);
    expect(await groups.says('m1')).toEqual([]);
    expect([...(after?.state.names.values() ?? [])]).toContain('a maker');
  });
});

describe('somebody who is forgotten while another process lets her press', () => {
  const ID = '7.bean-row-throw';
  const joins = (groups: Groups, once: string) =>
    groups.happen(ID, { by: 'mara', at, once }, () => [
      { did: 'joined', maker: 'mara', name: 'Mara', perWeek: 2, colours: [] },
    ]);
  /** Two processes that share a store; whatever the first changes waits for what comes before it. */
  async function two(before: (folder: string, second: Groups) => Promise<unknown>) {
    const store = new MemoryStore();
    const shared = (waits: (folder: string) => Promise<unknown>): Store => ({
      waiting: 0,
      unreadable: 0,
      inCommon: true,
      read: (kind, id) => store.read(kind, id),
      ids: (kind, prefix) => store.ids(kind, prefix),
      erase: (kind, id) => store.erase(kind, id),
      close: () => store.close(),
      change: async (kind, id, change) => {
        await waits(kind.folder);
        return store.change(kind, id, change);
      },
    });
    const second = new Groups(shared(() => Promise.resolve()));
    await second.open({ server: '7' }, groupPlan(), { by: 'ines', name: 'Ines', at, once: 'open' });
    await joins(second, 'first');
    return { first: new Groups(shared((folder) => before(folder, second))), second };
  }
  const isNamed = async (groups: Groups) =>
    JSON.stringify((await groups.read(ID))?.events).includes('"mara"');

  it('is found again where the press comes after all of it', async () => {
    let erased = false;
    const { first, second } = await two(async (folder, other) => {
      if (folder !== 'groups' || erased) return;
      erased = true;
      await other.forget('mara');
    });
    await joins(first, 'second');
    expect(await isNamed(second)).toBe(true);
    expect(await second.names('mara')).toBe(true);
    await second.forget('mara');
    expect(await isNamed(second)).toBe(false);
  });

  it('is taken out again where the press comes in the middle of it', async () => {
    let pressed = false;
    const { first, second } = await two(async (folder, other) => {
      if (folder !== 'catalogue' || pressed) return;
      pressed = true;
      await joins(other, 'second');
    });
    expect((await first.forget('mara')).removed).toHaveLength(1);
    expect(pressed).toBe(true);
    expect(await isNamed(second)).toBe(false);
    expect(await second.names('mara')).toBe(false);
  });
});
