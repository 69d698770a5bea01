/** No member can stop it: what one may save at most is asked about, question by question, and the thread is not kept for long. */
import { describe, expect, it } from 'vitest';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { registry } from '../../commands/index.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { Projects } from '../../src/projects/projects.ts';
import { MOST_COLOURS_OF_BLANKET, MOST_COLOURS_OF_MOTIF } from '../../src/projects/quotas.ts';
import { asking } from '../asking.ts';
import {
  BLANKET,
  holds,
  LARGEST,
  lines,
  longestHold,
  MAKERS_OF_MUCH,
  saveLargest,
  SERVER,
  slowness,
  type Asked,
} from './largest.ts';

/** The listening thread is kept no longer than this by one thing, on the machine on which it was set. */
const MOST_MS = 50;

describe('the largest that may be saved', () => {
  // What else runs on the machine is no fault of ours: a bound that holds once holds.
  it(
    'keeps nobody waiting, whatever is asked about it or changed of it',
    { timeout: 120_000, retry: 2 },
    async () => {
      const folder = await mkdtemp(join(tmpdir(), 'largest-'));
      const store = await FileStore.open({ folder, stays: true });
      try {
        const projects = await saveLargest(store, LARGEST);
        const once = new Map<string, Asked>();
        for (const asked of lines()) {
          const key = `${asked.route.path} ${asked.by}`;
          if (!once.has(key)) once.set(key, asked);
        }
        const over = MOST_MS * slowness();
        const held = await holds(projects, [...once.values()], over);
        expect(held.filter(({ ms }) => ms > over)).toEqual([]);
        // Two makers each ask every question.
        expect(once.size).toBe(2 * registry.routes.length);
      } finally {
        await store.close();
      }
    },
  );

  it('is read from the disk without keeping anybody waiting', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'largest-'));
    const first = await FileStore.open({ folder, stays: true });
    await saveLargest(first, LARGEST);
    await first.close();
    const times: number[] = [];
    for (let round = 0; round < 3; round += 1) {
      const store = await FileStore.open({ folder, stays: true });
      const projects = new Projects(store);
      times.push(
        await longestHold(async () => {
          await projects.maker(MAKERS_OF_MUCH.deep, 'rowan');
          await projects.groups.named(SERVER, BLANKET);
        }),
      );
      await store.close();
    }
    expect(times.sort((a, b) => a - b)[1]).toBeLessThan(MOST_MS * slowness());
  }, 60_000);
});

describe('colours', () => {
  const stripes = (many: number, from = 0) =>
    Array.from({ length: many }, (_, index) => `1 row shade ${from + index}`).join(', ');

  it('are limited in one motif, at the change that would pass the limit', async () => {
    const { ask } = asking();
    const define = (many: number) =>
      ask(
        `/motif define name:scraps shape:flat size:20 other_size:${many} colours:"${stripes(many)}" replace:yes`,
      );
    expect(await define(MOST_COLOURS_OF_MOTIF)).toMatchObject({ ok: true });
    expect(await define(MOST_COLOURS_OF_MOTIF + 1)).toMatchObject({
      ok: false,
      code: 'too-many-colours',
      option: 'colours',
    });
    expect((await ask('/motif show name:scraps')).ok).toBe(true);
  });

  it('are limited in one blanket, its motifs’ among them', async () => {
    const { ask } = asking();
    const names: string[] = [];
    for (let at = 0; at * MOST_COLOURS_OF_MOTIF <= MOST_COLOURS_OF_BLANKET; at++) {
      names.push(`scraps ${at}`);
      const colours = stripes(MOST_COLOURS_OF_MOTIF, at * MOST_COLOURS_OF_MOTIF);
      const made = await ask(
        `/motif define name:"scraps ${at}" shape:diagonal size:${MOST_COLOURS_OF_MOTIF / 2} gauge:13x10 colours:"${colours}"`,
      );
      expect(made).toMatchObject({ ok: true });
    }
    const start = (kinds: readonly string[]) =>
      ask(`/blanket start name:b${kinds.length} kinds:"${kinds.join(', ')}" columns:4 rows:4`);
    expect(await start(names.slice(0, -1))).toMatchObject({ ok: true });
    expect(await start(names)).toMatchObject({ ok: false, code: 'too-many-colours', option: 'kinds' });
  });
});
