/** What the store promises when a process is killed, and when several share a folder. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { utimes } from 'node:fs/promises';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { realDisk, type Disk } from '../../src/projects/disk.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { FolderLock } from '../../src/projects/lock.ts';
import { bundled, run } from './children/run.ts';
import { countOnDisk, countUp, more, newFolder, TALLIES, tree } from './kinds.ts';
import { refused } from '../refused.ts';

let counting: string;
beforeAll(async () => {
  counting = await bundled('counting');
});

const KILLS = 30;

it(`nothing acknowledged is lost over ${KILLS} kills in the middle of writing`, async () => {
  const folder = newFolder();
  const acknowledged = new Map<string, number>();
  for (let kill = 0; kill < KILLS; kill++) {
    // Killed after another number of answers each time, so that it falls into every part of writing.
    let left = 1 + ((kill * 7) % 23);
    const { lines, errors } = await run(
      counting,
      [folder, kill % 2 ? 'stays' : 'with a thread', 'a,b,c', '100000'],
      (line, end) => {
        if (line !== 'open' && --left <= 0) end();
      },
    );
    expect(errors).toBe('');
    for (const line of lines) {
      const [id, n] = line.split(' ');
      if (n !== undefined) acknowledged.set(id!, Math.max(acknowledged.get(id!) ?? 0, Number(n)));
    }
    for (const [id, n] of acknowledged) expect(countOnDisk(folder, id)).toBeGreaterThanOrEqual(n);
  }
  expect([...acknowledged.keys()].sort()).toEqual(['a', 'b', 'c']);
  const store = await FileStore.open({ folder, stays: true });
  for (const [id, n] of acknowledged) {
    const kept = await countUp(store, id);
    // One that was on its way when it was killed may have arrived.
    expect(kept).toBeGreaterThan(n);
    expect(kept).toBeLessThanOrEqual(n + 2);
    expect(countOnDisk(folder, id)).toBe(kept);
  }
  await store.close();
  expect(tree(folder).filter((path) => /aside|writing|lock/.test(path))).toEqual([]);
}, 120_000);

it('several processes at once wait for each other, and every change counts', async () => {
  const folder = newFolder();
  const each = 20;
  const many = 6;
  const ran = await Promise.all(
    Array.from({ length: many }, () => run(counting, [folder, 'lazy', 'a,c', String(each)])),
  );
  for (const { errors, status, lines } of ran) {
    expect(errors).toBe('');
    expect(status).toBe(0);
    expect(lines).toHaveLength(2 * each + 1);
  }
  for (const id of ['a', 'c']) {
    expect(countOnDisk(folder, id)).toBe(each * many);
    // Nobody was told a number that somebody else was told too.
    const told = ran.flatMap(({ lines }) => lines.filter((line) => line.startsWith(`${id} `)));
    expect(new Set(told).size).toBe(each * many);
  }
  expect(tree(folder).filter((path) => /^(lock|writing)/.test(path))).toEqual([]);
}, 60_000);

describe('the lock of a folder', () => {
  const cardOf = (facts: Record<string, unknown>) =>
    JSON.stringify({
      nonce: 'n1',
      pid: 1,
      started: null,
      boot: null,
      host: hostname(),
      stays: true,
      ...facts,
    });
  const locked = (facts: Record<string, unknown> | string) => {
    const folder = newFolder();
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'lock'), typeof facts === 'string' ? facts : cardOf(facts));
    return folder;
  };
  const mine = async () => {
    const folder = newFolder();
    const lock = new FolderLock(folder, realDisk, { stays: true });
    await lock.take();
    const card = JSON.parse(readFileSync(join(folder, 'lock'), 'utf8')) as Record<string, unknown>;
    await lock.release();
    return card;
  };

  it('names its holder and refuses a second one in a sentence', async () => {
    const folder = newFolder();
    const store = await FileStore.open({ folder, stays: true });
    expect(JSON.parse(readFileSync(join(folder, 'lock'), 'utf8'))).toMatchObject({ pid: process.pid });
    const began = Date.now();
    await expect(FileStore.open({ folder, stays: true })).rejects.toThrow(
      refused('in-use', { facts: { process: process.pid, host: hostname() } }),
    );
    const lazy = await FileStore.open({ folder, stays: false });
    await expect(lazy.change(TALLIES, 'a', more)).rejects.toThrow(refused('in-use'));
    // One that stays is not waited for.
    expect(Date.now() - began).toBeLessThan(5000);
    await store.close();
    expect(await lazy.change(TALLIES, 'a', more)).toBe(1);
    await lazy.close();
  });

  it('is waited for where its holder does not stay, and given up after a while', async () => {
    // Process 1 is always there.
    const folder = locked({ ...(await mine()), pid: 1, started: null, stays: false });
    const store = await FileStore.open({ folder, stays: false, patience: 200 });
    await expect(store.change(TALLIES, 'a', more)).rejects.toThrow(refused('in-use'));
    await store.close();
  });

  it.each<[string, (own: Record<string, unknown>) => Record<string, unknown> | string]>([
    ['is gone', (own) => ({ ...own, pid: 2 ** 22 + 1 })],
    ['had the same number, but started at another time', (own) => ({ ...own, started: '1' })],
    ['lived before the machine was started anew', (own) => ({ ...own, boot: 'another' })],
    ['left a lock that was cut short', () => '{"pid":'],
    ['left an empty lock', () => ''],
  ])('is taken over where its holder %s', async (_what, facts) => {
    const own = await mine();
    const folder = locked(facts(own));
    // Only some systems tell when a process started.
    if (own['started'] === null && _what.includes('number')) return;
    const store = await FileStore.open({ folder, stays: true });
    expect(await store.change(TALLIES, 'a', more)).toBe(1);
    await store.close();
    expect(tree(folder)).toEqual(['tallies/a.json']);
  });

  it('of another machine is left to it while it moves, whatever the clocks say, and taken once it was watched in silence', async () => {
    const folder = locked({ host: 'elsewhere', pid: 2 ** 22 + 1 });
    // Standing still for two touches would count as having slept.
    const times = { touch: 1000, silent: 400 };
    const lock = join(folder, 'lock');
    // Its clock is far behind this one, and it shows that it is alive.
    let moved = 0;
    const alive = setInterval(() => void utimes(lock, 1000, 1000 + ++moved), 20);
    await expect(FileStore.open({ folder, stays: true, times })).rejects.toThrow(
      refused('in-use', { facts: { process: 2 ** 22 + 1, host: 'elsewhere' } }),
    );
    clearInterval(alive);
    await utimes(lock, Date.now() / 1000 + 90, Date.now() / 1000 + 90);
    const began = performance.now();
    const store = await FileStore.open({ folder, stays: true, times });
    expect(performance.now() - began).toBeGreaterThanOrEqual(400);
    expect(await store.change(TALLIES, 'a', more)).toBe(1);
    await store.close();
    expect(tree(folder)).toEqual(['tallies/a.json']);
  });

  it('shows that its holder is alive, and stays a whole card while it does', async () => {
    const folder = newFolder();
    // A process that stands still for two touches counts as having slept: seldom enough for a machine that is busy.
    const store = await FileStore.open({ folder, stays: true, times: { touch: 1000, silent: 10_000 } });
    const seen = new Set<string>();
    while (seen.size < 2) {
      const card = JSON.parse(readFileSync(join(folder, 'lock'), 'utf8')) as { pid: number; count: string };
      expect(card.pid).toBe(process.pid);
      seen.add(card.count);
      await new Promise((done) => setTimeout(done, 3));
    }
    await store.close();
  });

  it('that could not be removed is taken again by the process that left it', async () => {
    const folder = newFolder();
    let broken = false;
    const rm: Disk['rm'] = (path, options) =>
      broken && String(path).endsWith('lock')
        ? Promise.reject(Object.assign(new Error('no'), { code: 'EIO' }))
        : realDisk.rm(path, options);
    const store = await FileStore.open({ folder, stays: true, disk: { ...realDisk, rm } });
    broken = true;
    await store.close();
    expect(tree(folder)).toEqual(['lock']);
    broken = false;
    const again = await FileStore.open({ folder, stays: true });
    expect(await again.change(TALLIES, 'a', more)).toBe(1);
    await again.close();
  });

  it('is taken though a holder that sweeps took the half-written card for one that was left', async () => {
    const folder = newFolder();
    mkdirSync(folder, { recursive: true });
    let swept = 0;
    const link: Disk['link'] = async (from, to) => {
      if (swept++ < 2) await realDisk.rm(from);
      return realDisk.link(from, to);
    };
    const lock = new FolderLock(folder, { ...realDisk, link }, { stays: true });
    expect(await lock.take()).toBeUndefined();
    expect(swept).toBe(3);
    expect(JSON.parse(readFileSync(join(folder, 'lock'), 'utf8'))).toMatchObject({ pid: process.pid });
    await lock.release();
    expect(tree(folder)).toEqual([]);
  });

  it('leaves no cards of those who died while taking it', async () => {
    const own = await mine();
    const folder = newFolder();
    for (const name of ['lock.dead-1', 'lock.over.dead-2'])
      writeFileSync(join(folder, name), cardOf({ ...own, nonce: name, pid: 2 ** 22 + 3 }));
    const store = await FileStore.open({ folder, stays: true });
    expect(tree(folder)).toEqual(['lock']);
    await store.close();
  });

  it('of a dead holder goes to exactly one of many who find it', async () => {
    const own = await mine();
    for (let round = 0; round < 20; round++) {
      const folder = locked({ ...own, nonce: `dead-${round}`, pid: 2 ** 22 + 1 });
      // Every other round somebody died in the middle of taking it over.
      if (round % 2 === 1)
        writeFileSync(
          join(folder, `lock.over.dead-${round}`),
          cardOf({ ...own, nonce: 'also-dead', pid: 2 ** 22 + 2 }),
        );
      const locks = Array.from({ length: 12 }, () => new FolderLock(folder, realDisk, { stays: true }));
      const taken = await Promise.all(locks.map((lock) => lock.take()));
      expect(taken.filter((holder) => holder === undefined)).toHaveLength(1);
      for (const lock of locks) await lock.release();
      expect(tree(folder)).toEqual([]);
    }
  });
});
