/** What breaks: lines, the platform, clocks, disks. Nothing acknowledged is lost, nothing answered twice, and it goes on by itself. */
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { Registry } from '../../../src/chat/registry.ts';
import { realDisk, type Disk } from '../../../src/projects/disk.ts';
import { FileStore } from '../../../src/projects/file-store.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { openHarness, type Harness } from './harness.ts';
import { counted, gates, probe } from './probe.ts';
import type { Outcome } from './stand-in/index.ts';

const ROW = '/stitches row shape:diagonal size:12 row:9';
const tests = new Registry([...registry.commands, probe]);
const steady = () => performance.timeOrigin + performance.now();
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
const newFolder = () => mkdtempSync(join(tmpdir(), 'room-'));

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
  vi.useRealTimers();
});

async function opened(parts: Parameters<typeof openHarness>[0] = {}): Promise<Harness> {
  const harness = await openHarness({ registry: tests, platform: { now: steady }, ...parts });
  open.push(() => harness.close());
  return harness;
}

/** A store of files whose disk can be broken. */
async function brokenStore(folder = newFolder()) {
  const state: { code: string | undefined } = { code: undefined };
  const notes: { what: string; facts: Readonly<Record<string, unknown>> }[] = [];
  const refuse = () => {
    if (state.code !== undefined) throw Object.assign(new Error(state.code), { code: state.code });
  };
  const disk: Disk = {
    ...realDisk,
    open: ((path: string, flags: string, mode?: number) => {
      if (flags !== 'r') refuse();
      return realDisk.open(path, flags, mode);
    }) as Disk['open'],
    rename: (from, to) => {
      refuse();
      return realDisk.rename(from, to);
    },
    link: (from, to) => {
      if (!/lock/.test(String(to))) refuse();
      return realDisk.link(from, to);
    },
  };
  const store = await FileStore.open({
    folder,
    stays: true,
    disk,
    note: (what, facts) => void notes.push({ what, facts }),
  });
  open.push(() => store.close());
  return { store, folder, state, notes, projects: new Projects(store) };
}

function once({ interaction }: Outcome): void {
  expect(interaction.followUps.length).toBe(0);
  expect(interaction.failures).toEqual([]);
  expect(interaction.callbacks).toBe(1);
}

describe('the gateway', () => {
  it('that drops in the middle of an answer loses nothing, and what was missed is answered once', async () => {
    const { platform, line, log } = await opened();
    const as = { user: platform.person('rowan'), guild: platform.guild('Allotment') };
    let release: () => void = () => undefined;
    gates.set('drop', new Promise<void>((resolve) => (release = resolve)));
    const slow = line('/probe slow gate:drop', as);
    await wait(50);
    platform.gateway.drop();
    const missed = line(ROW, as);
    await wait(50);
    release();
    once(await slow);
    once(await missed);
    expect(platform.gateway.counts).toMatchObject({ identifies: 1, resumes: 1 });
    for (let i = 0; i < 5; i++) {
      platform.gateway.drop();
      once(await line(ROW, as));
    }
    expect(platform.gateway.counts.identifies).toBe(1);
    expect(log.filter(({ level }) => level === 'error')).toEqual([]);
  });

  it('that sends an interaction twice gets one answer, and it counts once', async () => {
    const { platform, line, projects } = await opened();
    const as = { user: platform.person('rowan') };
    const asking = line('/probe count', as);
    platform.driver.repeat();
    const seen = await asking;
    platform.driver.repeat();
    await wait(50);
    once(seen);
    expect(await counted(projects, as.user.id)).toBe(1);
  });

  it('that declares the session invalid is met again', async () => {
    const { platform, line } = await opened();
    const as = { user: platform.person('rowan') };
    platform.gateway.invalidate();
    await vi.waitFor(() => expect(platform.gateway.counts.identifies).toBe(2), {
      timeout: 12_000,
      interval: 20,
    });
    once(await line(ROW, as));
  });
});

describe('the platform', () => {
  it.each([500, 502, 429, 'hang-up'] as const)('answering %s once is asked again', async (how) => {
    const { platform, line, log } = await opened();
    const as = { user: platform.person('rowan') };
    platform.befall({ path: /callback/, how, retryAfter: 0.2 });
    const seen = await line('/probe count', as);
    once(seen);
    expect(seen.text).toContain('1');
    expect(log.filter(({ level }) => level === 'error')).toEqual([]);
  });

  it('answering 500 for good is one line of the log; what was saved stays, and everybody else is answered', async () => {
    const { platform, line, log, projects } = await opened();
    const [as, other] = [{ user: platform.person('rowan') }, { user: platform.person('fern') }];
    platform.driver.patience = { first: 1_500, settled: 1_500 };
    const mishap = platform.befall({ path: /callback/, how: 500, times: 100 });
    expect((await line('/probe count', as)).kind).toBe('silence');
    await vi.waitFor(() => expect(log.filter(({ level }) => level === 'warn').length).toBeGreaterThan(0), {
      timeout: 20_000,
      interval: 50,
    });
    mishap.times = 0;
    expect(log.filter(({ level, says }) => level !== 'info' && /answer/.test(says))).toHaveLength(1);
    once(await line(ROW, other));
    expect(await counted(projects, as.user.id)).toBe(1);
    expect((await line('/probe count', as)).text).toContain('2');
  });

  it('that says nothing at all to one answer does not hold up the others', async () => {
    const { platform, line } = await opened();
    const [as, other] = [{ user: platform.person('rowan') }, { user: platform.person('fern') }];
    platform.befall({ path: /callback/, how: 'silence' });
    const stuck = line(ROW, as);
    await wait(20);
    for (let i = 0; i < 5; i++) {
      const seen = await line(ROW, other);
      once(seen);
      expect(seen.firstMs).toBeLessThan(1_000);
    }
    expect((await stuck).kind).toBe('silence');
  });

  it('out of reach at the start is tried again until it is there', async () => {
    const before = await opened();
    const { platform, line } = before;
    platform.befall({ path: /gateway\/bot/, how: 'hang-up' });
    await before.restart();
    once(await line(ROW, { user: platform.person('rowan') }));
    expect(before.log.map(({ says }) => says)).toContain('the platform is out of reach');
  });
});

describe('the clock', () => {
  it.each([86_400_000, -86_400_000])('that jumps by %i ms changes nothing for people', async (jump) => {
    const { platform, line, projects } = await opened({ pace: { burst: 20, perSecond: 1 } });
    const as = { user: platform.person('rowan') };
    const seen = await line('/probe count', as);
    const row = await line(ROW, as);
    vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + jump });
    once(await platform.press(seen.message!, 'One more', as));
    once(await platform.press(row.message!, 'Show the working', as));
    vi.setSystemTime(Date.now() - jump);
    once(await platform.press(seen.message!, 'One more', as));
    once(await line(ROW, as));
    expect(await counted(projects, as.user.id)).toBe(3);
  });
});

describe('the disk', () => {
  it.each([
    ['ENOSPC', /the disk is full/],
    ['EROFS', /cannot be written/],
    ['EIO', /the disk refused/],
  ])(
    'failing with %s while saving: said in words, nothing counted; questions go on; mended, the same button counts',
    async (code, words) => {
      const { projects, state, notes } = await brokenStore();
      const { platform, line, faults } = await opened({ projects });
      const as = { user: platform.person('rowan') };
      const seen = await line('/probe count', as);
      state.code = code;
      const refused = await platform.press(seen.message!, 'One more', as);
      once(refused);
      expect(refused.text).toMatch(words);
      expect(refused.text).toContain('Nothing was changed');
      expect(refused.ephemeral).toBe(true);
      once(await line(ROW, as));
      expect(await counted(projects, as.user.id)).toBe(1);
      state.code = undefined;
      const again = await platform.press(seen.message!, 'One more', as);
      once(again);
      expect(again.text).toContain('Counted 2');
      expect(await counted(projects, as.user.id)).toBe(2);
      expect(faults).toEqual([]);
      expect(notes.length).toBeGreaterThan(0);
    },
  );

  it('with a corrupted document: it is moved aside, the copy before it serves, and everybody else goes on', async () => {
    const first = await brokenStore();
    const { platform, line, restart, log } = await opened({ projects: first.projects });
    const [hers, others] = [{ user: platform.person('rowan') }, { user: platform.person('fern') }];
    for (const as of [hers, hers, hers, others]) once(await line('/probe count', as));
    await first.store.close();

    const makers = join(first.folder, 'makers');
    writeFileSync(join(makers, `${hers.user.id}.json`), '{"version":1,"id":');
    const second = await brokenStore(first.folder);
    await restart({ projects: second.projects });
    const seen = await line('/probe count', hers);
    once(seen);
    // The copy before the last change: two were counted in it.
    expect(seen.text).toContain('Counted 3');
    once(await line('/probe count', others));
    expect(await counted(second.projects, others.user.id)).toBe(2);
    expect(second.notes.map(({ what }) => what).join()).toContain('moved aside');
    const aside = readdirSync(join(makers, 'aside')).map((name) =>
      readFileSync(join(makers, 'aside', name), 'utf8'),
    );
    expect(aside).toEqual(['{"version":1,"id":']);
    expect(log.filter(({ level }) => level === 'error')).toEqual([]);
  });
});
