/** The state of a busy blanket is moved on by each press, and is what replaying everything gives; nobody sees one change. */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { Problem } from '../../src/core/base/problem.ts';
import type { Happening } from '../../src/core/group/events.ts';
import { accept, handIn, leave, pledge, undo } from '../../src/core/group/rules.ts';
import { replay, type GroupState } from '../../src/core/group/state.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { Groups, type GroupDoc } from '../../src/projects/groups.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { NotSaved } from '../../src/projects/not-saved.ts';
import type { Changed, Kind } from '../../src/projects/store.ts';
import { groupPlan } from '../core/group/plan.ts';
import { newFolder } from './kinds.ts';

const at = new Date('2026-03-02T12:00:00Z');
const asker = (id: string) => ({ id, name: `Maker ${id}`, manager: id === 'ines', managed: true });

/** A store whose disk refuses what was changed, when it is told to. */
class Failing extends MemoryStore {
  fails = false;
  override async change<T, R>(
    kind: Kind<T>,
    id: string,
    change: (doc: T | undefined) => Changed<T, R>,
  ): Promise<R> {
    if (!this.fails || kind.folder !== 'groups') return super.change(kind, id, change);
    this.fails = false;
    change(await this.read(kind, id));
    throw new NotSaved('not-saved', 'That could not be saved.', 'Ask again.');
  }
}

/** A blanket to which so much happened already: pledged and given back by some makers. */
async function season(events: number) {
  const store = new Failing();
  const groups = new Groups(store);
  const { id } = await groups.open({ server: '7' }, groupPlan({ quotas: [60, 40], spares: 5, columns: 1 }), {
    by: 'ines',
    name: 'Ines',
    at,
    once: 'open',
  });
  const makers = ['m0', 'm1', 'm2'];
  await groups.happen(id, { by: 'ines', at, once: 'joining' }, () =>
    makers.map((maker) => ({ did: 'joined', maker, name: maker, perWeek: 2, colours: [] })),
  );
  if (events > 0)
    await groups.happen(id, { by: 'ines', at, once: 'before' }, () =>
      Array.from({ length: events }, (_, n): Happening => ({
        did: n % 2 === 0 ? 'pledged' : 'released',
        maker: makers[(n >> 1) % 3] ?? '',
        kind: 0,
        motifs: 1,
      })),
    );
  return { store, groups, id };
}

const maker = fc.constantFrom('m0', 'm1', 'm2', 'm3');
const kind = fc.integer({ min: 0, max: 1 });
const step = fc.oneof(
  { weight: 3, arbitrary: fc.record({ does: fc.constant('pledge' as const), maker, kind }) },
  { weight: 3, arbitrary: fc.record({ does: fc.constant('handin' as const), maker, kind }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('accept' as const), motif: fc.nat(12) }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('leave' as const), maker }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('undo' as const), maker }) },
  // Any press at all that is taken back, long ago or of late; what later stands on it refuses.
  { weight: 1, arbitrary: fc.record({ does: fc.constant('back' as const), event: fc.nat() }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('fail' as const) }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('board' as const), n: fc.nat(99) }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('forget' as const), maker }) },
  { weight: 2, arbitrary: fc.record({ does: fc.constant('look' as const) }) },
  { weight: 1, arbitrary: fc.record({ does: fc.constant('wait' as const) }) },
);

describe('the state of a busy blanket', () => {
  it.each([
    ['a new one', 0, 30],
    ['one with a long history', 1_300, 8],
  ])(
    'is what replaying everything gives, whatever happens and whoever looks: %s',
    async (_, before, runs) => {
      const came = new Map<string, number>();
      await fc.assert(
        fc.asyncProperty(fc.array(step, { minLength: 5, maxLength: 40 }), async (steps) => {
          const { store, groups, id } = await season(before);
          const held: { doc: GroupDoc; state: GroupState }[] = [];
          let asked: Promise<unknown>[] = [];
          const ask = (press: Promise<unknown>) => {
            // What is refused while somebody looks is told when all is settled.
            press.catch(() => undefined);
            asked.push(press);
          };
          const settled = async () => {
            for (const one of await Promise.allSettled(asked)) {
              if (one.status === 'rejected') expect(one.reason).toBeInstanceOf(Problem);
              const said = one.status === 'rejected' ? (one.reason as Problem).code : 'done';
              came.set(said, (came.get(said) ?? 0) + 1);
            }
            asked = [];
          };
          for (const [number, one] of steps.entries()) {
            const press = (by: string, rule: (state: GroupState, doc: GroupDoc) => readonly Happening[]) =>
              ask(
                groups
                  .happen(id, { by, at, once: `press ${number}` }, (state, doc) => {
                    held.push({ doc, state });
                    return rule(state, doc);
                  })
                  .then((happened) => held.push(happened)),
              );
            switch (one.does) {
              case 'pledge':
                press(one.maker, (state) => pledge(state, asker(one.maker), one.kind, 1));
                break;
              case 'handin':
                press(one.maker, (state) => handIn(state, asker(one.maker), one.kind, 2, { weight: 12 }));
                break;
              case 'accept':
                press('ines', (state) => accept(state, asker('ines'), [one.motif]));
                break;
              case 'leave':
                press(one.maker, (state) => leave(state, asker(one.maker)));
                break;
              case 'undo':
                press(one.maker, (state) => undo(state, asker(one.maker)));
                break;
              case 'back':
                press('ines', (_state, { events }) => [
                  { did: 'undone', event: 1 + (one.event % events.length) },
                ]);
                break;
              case 'fail':
                await settled();
                store.fails = true;
                break;
              case 'board':
                ask(groups.moveBoard(id, `${one.n}`));
                break;
              case 'forget':
                ask(groups.forget(one.maker));
                break;
              case 'look':
                held.push(...(await groups.of('7')));
                break;
              case 'wait':
                await settled();
            }
          }
          await settled();
          held.push(...(await groups.of('7')));
          for (const { doc, state } of held) expect(state).toEqual(replay(structuredClone([...doc.events])));
          // Read by somebody who knows nothing of what was before.
          const [anew] = await new Groups(store).of('7');
          expect(anew?.state).toEqual(held.at(-1)?.state);
        }),
        { numRuns: runs, seed: 7 },
      );
      // Worth something only where everything came about.
      for (const what of ['done', 'not-saved', 'later-stands-on-it', 'no-such-motif'])
        expect(came.get(what), what).toBeGreaterThan(0);
    },
  );

  it('does a press once, whatever was refused or never written before it', async () => {
    const { store, groups, id } = await season(600);
    const press = (once: string) =>
      groups.happen(id, { by: 'm1', at, once }, (state) => pledge(state, asker('m1'), 1, 1));
    store.fails = true;
    await expect(press('a')).rejects.toMatchObject({ code: 'not-saved' });
    expect((await press('b')).again).toBe(false);
    expect((await press('a')).again).toBe(false);
    expect((await press('a')).again).toBe(true);
    expect((await press('b')).again).toBe(true);
    expect((await groups.of('7'))[0]?.state.pledges.get('m1')?.[1]).toBe(2);
  });
});

it('a storm of presses on a long blanket counts what happened before it once', async () => {
  const store = await FileStore.open({ folder: newFolder(), stays: true });
  const groups = new Groups(store);
  const before = 2_000;
  const { id } = await groups.open({ server: '7' }, groupPlan({ quotas: [60, 40], spares: 5, columns: 1 }), {
    by: 'ines',
    name: 'Ines',
    at,
    once: 'open',
  });
  await groups.happen(id, { by: 'ines', at, once: 'joining' }, () => [
    { did: 'joined', maker: 'm0', name: 'm0', perWeek: 2, colours: [] },
  ]);
  await groups.happen(id, { by: 'ines', at, once: 'before' }, () =>
    Array.from({ length: before }, (): Happening => ({ did: 'kept', maker: 'm0' })),
  );
  const written = vi.spyOn(JSON, 'stringify');
  let next = 0;
  const lane = async () => {
    for (let press = next++; press < 200; press = next++)
      await groups.happen(id, { by: 'm0', at, once: `press ${press}` }, () => [{ did: 'kept', maker: 'm0' }]);
  };
  await Promise.all(Array.from({ length: 16 }, lane));
  const texts = written.mock.calls.length;
  written.mockRestore();
  // A few for each press, and one for each thing that was there before.
  expect(texts).toBeLessThan(2 * before);
  await store.close();
});
