/** What every store must do, wherever it keeps things. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Problem } from '../../src/core/base/problem.ts';
import type { Store } from '../../src/projects/store.ts';
import { refused } from '../refused.ts';
import { DIARIES, more, TALLIES, type Diary, type Tally } from './kinds.ts';

const beginDiary = (title = 'first') => ({
  keep: { version: 1 as const, title, events: [{ by: 'a', n: 0 }] },
  tell: undefined,
});
/** One entry more, numbered on; tells how many there were. */
const write = (by: string) => (doc: Diary | undefined) => {
  const n = doc?.events.length ?? 0;
  return { keep: undefined, add: [{ by, n }], tell: n };
};
const retitle = (title: string) => (doc: Diary | undefined) => ({
  keep: doc && { ...doc, title },
  tell: undefined,
});

export { DIARIES, type Diary } from './kinds.ts';

/**
 * Holds a store to it. `open` opens one with nothing in it; `again` lets it go and opens what it kept anew, where it keeps
 * anything beyond its own life.
 */
export const keepsContract = (
  name: string,
  make: () => Promise<Store>,
  again: (store: Store) => Promise<Store> = (store) => Promise.resolve(store),
): void => {
  describe(`a store in ${name}`, () => {
    it('gives back what was kept, and removes what is not kept', async () => {
      const store = await make();
      expect(await store.read(TALLIES, 'a')).toBeUndefined();
      expect(await store.change(TALLIES, 'a', more)).toBe(1);
      expect(await store.change(TALLIES, 'a', more)).toBe(2);
      expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 2 });
      expect(await store.ids(TALLIES)).toEqual(['a']);
      await store.change(TALLIES, 'a', () => ({ keep: undefined, tell: undefined }));
      expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 2 });
      await store.erase(TALLIES, 'a');
      await store.erase(TALLIES, 'never-there');
      expect(await store.read(TALLIES, 'a')).toBeUndefined();
      expect(await store.ids(TALLIES)).toEqual([]);
    });

    it('lets nobody alter what is saved but by a change', async () => {
      const store = await make();
      const kept: Tally = { version: 2, n: 1 };
      await store.change(TALLIES, 'a', () => ({ keep: kept, tell: undefined }));
      kept.n = 7;
      const read = await store.read(TALLIES, 'a');
      expect(() => (read!.n = 8)).toThrow(TypeError);
      expect(await store.read(TALLIES, 'a')).toBe(read);
      let handed: Tally | undefined;
      await store.change(TALLIES, 'a', (doc) => {
        handed = doc;
        return { keep: doc, tell: undefined };
      });
      handed!.n = 9;
      expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 1 });
    });

    it('keeps nothing of a change that throws, nor of one that does not fit the schema', async () => {
      const store = await make();
      await store.change(TALLIES, 'a', more);
      const thrown = store.change(TALLIES, 'a', (doc) => {
        doc!.n = 99;
        throw new Problem('unsorted', 'no', { hint: 'yes' });
      });
      await expect(thrown).rejects.toThrow(refused('unsorted'));
      const unfit = store.change(TALLIES, 'a', () => ({ keep: { version: 2, n: -1 }, tell: 0 }));
      await expect(unfit).rejects.toThrow();
      expect(await store.read(TALLIES, 'a')).toEqual({ version: 2, n: 1 });
    });

    it('lists ids by how they begin', async () => {
      const store = await make();
      for (const id of ['one.a', 'one.b', 'two.a']) await store.change(TALLIES, id, more);
      expect((await store.ids(TALLIES, 'one.')).sort()).toEqual(['one.a', 'one.b']);
    });

    it.each(['../a', 'a/b', 'a\\b', '', '.a', 'A', 'a\0', 'é', 'a'.repeat(101), '..', 'a\n'])(
      'refuses the unsafe id %j before it touches a path',
      async (id) => {
        const store = await make();
        await expect((async () => store.read(TALLIES, id))()).rejects.toThrow('unsafe id');
        await expect((async () => store.change(TALLIES, id, more))()).rejects.toThrow('unsafe id');
      },
    );

    describe('with documents that grow', () => {
      it('adds to the list, and hands what is there to everybody, frozen', async () => {
        let store = await make();
        await store.change(DIARIES, 'a', () => beginDiary());
        for (const by of ['b', 'c', 'd']) await store.change(DIARIES, 'a', write(by));
        const whole = {
          version: 1,
          title: 'first',
          events: ['a', 'b', 'c', 'd'].map((by, n) => ({ by, n })),
        };
        const read = await store.read(DIARIES, 'a');
        expect(read).toEqual(whole);
        expect(await store.read(DIARIES, 'a')).toBe(read);
        expect(read!.events).toBe(read!.events);
        expect(JSON.parse(JSON.stringify(read))).toEqual(whole);
        expect(() => (read!.events as unknown[]).push(1)).toThrow(TypeError);
        expect(() => (read!.events[0]!.n = 7)).toThrow(TypeError);
        store = await again(store);
        expect(await store.read(DIARIES, 'a')).toEqual(whole);
        expect(await store.change(DIARIES, 'a', write('e'))).toBe(4);
        store = await again(store);
        expect((await store.read(DIARIES, 'a'))?.events).toHaveLength(5);
      });

      it('shows nobody who has read it what is added later', async () => {
        const store = await make();
        await store.change(DIARIES, 'a', () => beginDiary());
        const looked = await store.read(DIARIES, 'a');
        const unlooked = await store.change(DIARIES, 'a', (doc) => ({ ...write('b')(doc), tell: doc }));
        await store.change(DIARIES, 'a', write('c'));
        expect(looked?.events).toHaveLength(1);
        expect(unlooked?.events).toHaveLength(1);
        expect((await store.read(DIARIES, 'a'))?.events.map(({ by }) => by)).toEqual(['a', 'b', 'c']);
      });

      it('keeps what it says beside its list, with the list as it is, and all of it where the list is another', async () => {
        let store = await make();
        await store.change(DIARIES, 'a', () => beginDiary());
        await store.change(DIARIES, 'a', write('b'));
        await store.change(DIARIES, 'a', retitle('second'));
        await store.change(DIARIES, 'a', write('c'));
        store = await again(store);
        expect(await store.read(DIARIES, 'a')).toEqual({
          version: 1,
          title: 'second',
          events: ['a', 'b', 'c'].map((by, n) => ({ by, n })),
        });
        await store.change(DIARIES, 'a', (doc) => ({
          keep: doc && { ...doc, title: 'third', events: doc.events.map(({ n }) => ({ by: 'nobody', n })) },
          tell: undefined,
          forgets: true,
        }));
        await store.change(DIARIES, 'a', write('d'));
        store = await again(store);
        expect(await store.read(DIARIES, 'a')).toEqual({
          version: 1,
          title: 'third',
          events: ['nobody', 'nobody', 'nobody', 'd'].map((by, n) => ({ by, n })),
        });
        await store.erase(DIARIES, 'a');
        expect(await store.read(DIARIES, 'a')).toBeUndefined();
        expect(await store.ids(DIARIES)).toEqual([]);
        await store.change(DIARIES, 'a', () => beginDiary('anew'));
        store = await again(store);
        expect((await store.read(DIARIES, 'a'))?.events).toHaveLength(1);
      });

      it('keeps nothing of what throws or does not fit, whatever waits beside it', async () => {
        let store = await make();
        await store.change(DIARIES, 'a', () => beginDiary());
        const told = await Promise.allSettled([
          store.change(DIARIES, 'a', write('b')),
          store.change(DIARIES, 'a', () => ({ keep: undefined, add: [{ by: 'x', n: -1 }], tell: 0 })),
          store.change(DIARIES, 'a', () => ({
            keep: undefined,
            add: [{ by: 'x', n: 1 }, { n: 2 }],
            tell: 0,
          })),
          store.change(DIARIES, 'a', () => {
            throw new Problem('unsorted', 'no', { hint: 'yes' });
          }),
          store.change(DIARIES, 'a', (doc) => ({ keep: doc && { ...doc, title: 7 as never }, tell: 0 })),
          store.change(DIARIES, 'never-begun', write('b')),
          store.change(DIARIES, 'a', write('c')),
        ]);
        expect(told.map(({ status }) => status[0])).toEqual(['f', 'r', 'r', 'r', 'r', 'r', 'f']);
        store = await again(store);
        expect((await store.read(DIARIES, 'a'))?.events.map(({ by }) => by)).toEqual(['a', 'b', 'c']);
        expect(await store.ids(DIARIES)).toEqual(['a']);
      });

      it('any mixture ends as one after the other would, and again when it is opened anew', async () => {
        const step = fc.record({
          id: fc.constantFrom('a', 'b'),
          does: fc.constantFrom(
            'begin',
            'add',
            'add',
            'addTwo',
            'title',
            'forget',
            'throw',
            'erase',
            'again',
          ),
        });
        await fc.assert(
          fc.asyncProperty(fc.array(step, { maxLength: 30 }), async (steps) => {
            let store = await make();
            const model = new Map<string, Diary>();
            let asked: Promise<unknown>[] = [];
            for (const [at, { id, does }] of steps.entries()) {
              const is = model.get(id);
              if (does === 'again') {
                await Promise.allSettled(asked);
                asked = [];
                store = await again(store);
              } else if (does === 'erase') {
                model.delete(id);
                asked.push(store.erase(DIARIES, id));
              } else if (does === 'begin') {
                if (!is) model.set(id, { version: 1, title: 'first', events: [{ by: 'a', n: 0 }] });
                asked.push(
                  store.change(DIARIES, id, (doc) => (doc ? { keep: doc, tell: undefined } : beginDiary())),
                );
              } else if (does === 'title') {
                if (is) model.set(id, { ...is, title: `t${at}` });
                asked.push(store.change(DIARIES, id, retitle(`t${at}`)));
              } else if (does === 'forget') {
                const without = (doc: Diary) => ({ ...doc, events: doc.events.slice(0, 1) });
                if (is) model.set(id, without(is));
                asked.push(
                  store.change(DIARIES, id, (doc) => ({ keep: doc && without(doc), tell: 0, forgets: true })),
                );
              } else {
                const add = (does === 'addTwo' ? [at, at + 1] : [at]).map((n) => ({ by: 'b', n }));
                if (is && does !== 'throw') model.set(id, { ...is, events: [...is.events, ...add] });
                asked.push(
                  store.change(DIARIES, id, () => {
                    if (does === 'throw') throw new Error('no');
                    return { keep: undefined, add, tell: 0 };
                  }),
                );
              }
            }
            await Promise.allSettled(asked);
            for (const anew of [false, true]) {
              if (anew) store = await again(store);
              for (const id of ['a', 'b']) expect(await store.read(DIARIES, id)).toEqual(model.get(id));
              expect((await store.ids(DIARIES)).sort()).toEqual([...model.keys()].sort());
            }
            await store.close();
          }),
          { numRuns: 25 },
        );
      });
    });
  });
};
