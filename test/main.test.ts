/** How the program ends, whatever the platform does meanwhile. */
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
