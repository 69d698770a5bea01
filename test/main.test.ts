/** How the program begins and ends. */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { startBot } from './rooms/discord/process.ts';
import { openStandIn } from './rooms/discord/stand-in/index.ts';

it('ends when it is told to, though the platform is gone', async () => {
  const platform = await openStandIn();
  const folder = mkdtempSync(join(tmpdir(), 'ends-'));
  const bot = await startBot(platform, folder);
  await platform.close();
  await expect.poll(bot.output, { timeout: 10_000 }).toContain('connecting again');
  expect(await bot.end('SIGTERM')).toEqual({ code: 0, signal: null });
  expect(existsSync(join(folder, 'lock'))).toBe(false);
}, 60_000);

it('opens the terminal room where that is asked for, token or not', () => {
  const folder = mkdtempSync(join(tmpdir(), 'begins-'));
  const said = execFileSync('npm', ['run', '-s', 'room'], {
    input: '/stitches row shape:diagonal size:12 row:9\n',
    env: {
      ...process.env,
      DISCORD_TOKEN: 'aaa.bbb.ccc',
      DISCORD_API: 'http://127.0.0.1:1/api',
      DATA_DIR: join(folder, 'data'),
      FILES_DIR: join(folder, 'files'),
    },
    timeout: 20_000,
  }).toString();
  expect(said).toMatch(/^Loopwright, in the terminal room\./);
  expect(said).toContain('Row 9 has 19 stitches');
});
