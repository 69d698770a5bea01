/** The program itself: started, stopped, killed, and kept from its folder or its platform. */
import { closeSync, mkdtempSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import { killLoop } from './kill-loop.ts';
import { launch, startBot } from './process.ts';
import { openStandIn, type StandIn } from './stand-in/index.ts';

const open: StandIn[] = [];
afterEach(async () => {
  for (const platform of open.splice(0)) await platform.close();
});
async function opened(): Promise<StandIn> {
  const platform = await openStandIn();
  open.push(platform);
  return platform;
}
const newFolder = () => mkdtempSync(join(tmpdir(), 'program-'));
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

const KILLS = 8;

it(`killed ${KILLS} times in the middle of presses: nothing told is lost, nothing counts twice, and it comes back by itself`, async () => {
  let n = 0;
  const report = await killLoop(KILLS, 8, () => (++n * 0.618) % 1);
  expect(report).toMatchObject({ kills: KILLS, lost: 0, twice: 0, leaks: 0 });
  expect(report.acknowledged).toBeGreaterThan(KILLS);
  expect(report.back).toHaveLength(KILLS);
}, 180_000);

it('stopped by SIGTERM under load it lets running answers out, saves what it told, and leaves with 0', async () => {
  const platform = await opened();
  const folder = newFolder();
  const bot = await startBot(platform, folder);
  const makers = Array.from({ length: 6 }, (_, index) => ({ user: platform.person(`maker-${index}`) }));
  for (const as of makers)
    await platform.slash('motif define', { name: 'moss', shape: 'diagonal', size: 200 }, as);
  platform.driver.patience = { first: 1_500, settled: 1_500 };
  const told = new Map<string, number>();
  let stopping = false;
  const pressing = makers.map(async (as) => {
    while (!stopping) {
      const seen = await platform.slash('progress next', { motif: 'moss' }, as);
      const row = / (\d+) of moss is done/.exec(seen.text)?.[1];
      if (row !== undefined) told.set(as.user.id, Number(row));
      await platform.slash('stitches row', { shape: 'diagonal', size: 12 }, as);
    }
  });
  await wait(400);
  const began = performance.now();
  const ending = bot.end('SIGTERM');
  expect(await ending).toEqual({ code: 0, signal: null });
  expect(performance.now() - began).toBeLessThan(8_000);
  stopping = true;
  await Promise.all(pressing);
  expect(told.size).toBe(makers.length);
  for (const [id, row] of told) {
    const doc = JSON.parse(readFileSync(join(folder, 'makers', `${id}.json`), 'utf8')) as {
      progress: { row: number }[];
    };
    expect(doc.progress[0]!.row).toBe(row);
  }
  for (const { callbacks, failures } of platform.world.interactions.values()) {
    expect(callbacks).toBeLessThanOrEqual(1);
    expect(failures).toEqual([]);
  }
  expect(bot.output()).toContain('the room is closed');
  for (const secret of [platform.token, ...platform.world.tokens.keys()])
    expect(bot.output().includes(secret)).toBe(false);

  const again = await startBot(platform, folder);
  platform.driver.patience = { first: 3_000, settled: 3_000 };
  const seen = await platform.slash('progress next', { motif: 'moss' }, makers[0]!);
  expect(seen.text).toContain(` ${told.get(makers[0]!.user.id)! + 1} of moss is done`);
  // What is registered already is not registered again.
  expect(platform.world.registrations).toBeGreaterThan(0);
  expect(again.output()).toContain('registered as they are');
  expect((await again.end('SIGINT')).code).toBe(0);
}, 120_000);

it('with a token that the platform does not take it says so in a sentence, without it, and leaves with 1', async () => {
  const platform = await opened();
  const token = 'MTIz.wrong.token-of-nobody';
  const bot = launch({ DISCORD_TOKEN: token, DISCORD_API: platform.api, DATA_DIR: newFolder() });
  expect((await bot.ended).code).toBe(1);
  expect(bot.output()).toMatch(/does not take this DISCORD_TOKEN/);
  expect(bot.output()).not.toContain(token);
  expect(bot.output()).not.toMatch(/^\s+at /m);
});

it('with a folder that it may not write to it says so in a sentence and leaves with 1', async () => {
  const platform = await opened();
  // Nobody makes folders below a file, whoever they are.
  const file = join(newFolder(), 'file');
  writeFileSync(file, '');
  const bot = launch({
    DISCORD_TOKEN: platform.token,
    DISCORD_API: platform.api,
    DATA_DIR: join(file, 'below'),
  });
  expect((await bot.ended).code).toBe(1);
  expect(bot.output()).toMatch(/could not be saved|cannot be written|disk refused/i);
  expect(bot.output()).not.toMatch(/^\s+at /m);
});

it('with a folder that another process holds it says so in a sentence and leaves with 1', async () => {
  const platform = await opened();
  const folder = newFolder();
  const first = await startBot(platform, folder);
  const second = launch({ DISCORD_TOKEN: platform.token, DISCORD_API: platform.api, DATA_DIR: folder });
  expect((await second.ended).code).toBe(1);
  expect(second.output()).toMatch(/is in use by process \d+/);
  const seen = await platform.slash('settings show', {}, { user: platform.person('rowan') });
  expect(seen.kind).toBe('message');
  expect((await first.end('SIGTERM')).code).toBe(0);
});

it('whose log goes to a full disk says so in one sentence, and answers', async () => {
  const platform = await opened();
  const full = openSync('/dev/full', 'w');
  const bot = launch(
    { DISCORD_TOKEN: platform.token, DISCORD_API: platform.api, DATA_DIR: newFolder() },
    full,
  );
  closeSync(full);
  await expect.poll(() => platform.world.registrations, { timeout: 20_000 }).toBeGreaterThan(0);
  const as = { user: platform.person('rowan') };
  for (const units of ['imperial', 'metric'])
    expect((await platform.slash('settings change', { units }, as)).text).toContain(units);
  expect(await bot.end('SIGTERM')).toEqual({ code: 0, signal: null });
  expect(bot.output()).toBe(
    'The log on standard output cannot be written (ENOSPC). Answers go on without it.\n',
  );
});

it('notes what nobody waits for, and goes on; what nobody catches ends it with 1, in its log', async () => {
  const platform = await opened();
  const as = { user: platform.person('rowan') };
  const start = (stray: string) =>
    startBot(platform, newFolder(), {
      NODE_OPTIONS: `--import=${new URL('../preloads/stray.mjs', import.meta.url).href}`,
      STRAY_AT: 'signal',
      STRAY: stray,
    });
  const rejected = await start('rejected');
  rejected.child.kill('SIGUSR2');
  await expect
    .poll(rejected.output, { timeout: 5_000 })
    .toMatch(/"fault":"[0-9a-f]{8}".*nobody waits for this/);
  expect((await platform.slash('settings show', {}, as)).text).toContain('metric');
  expect(await rejected.end('SIGTERM')).toEqual({ code: 0, signal: null });
  const thrown = await start('thrown');
  expect(await thrown.end('SIGUSR2')).toEqual({ code: 1, signal: null });
  expect(thrown.output()).toMatch(/"ends":true,"fault":"[0-9a-f]{8}".*nobody catches this/);
});
