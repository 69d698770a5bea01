/** The program itself, started as people start it, against a stand-in of the platform. */
import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import type { StandIn } from './stand-in/index.ts';

export interface Bot {
  readonly child: ChildProcess;
  /** What it wrote, both streams. */
  readonly output: () => string;
  /** Sends a signal and resolves with how it ended. */
  end(signal: NodeJS.Signals): Promise<{ code: number | null; signal: NodeJS.Signals | null }>;
  readonly ended: Promise<{ code: number | null; signal: NodeJS.Signals | null }>;
}

const ROOT = new URL('../../../', import.meta.url);

/** Starts the program, its standard output read here or going to a file that is open; connected or not. */
export function launch(set: Readonly<Record<string, string>>, stdout: number | 'pipe' = 'pipe'): Bot {
  const child = spawn(process.execPath, ['tools/run.cjs', 'main'], {
    cwd: ROOT,
    env: { PATH: process.env['PATH'], ...set },
    stdio: ['ignore', stdout, 'pipe'],
  });
  const pieces: Buffer[] = [];
  child.stdout?.on('data', (piece: Buffer) => pieces.push(piece));
  child.stderr!.on('data', (piece: Buffer) => pieces.push(piece));
  const ended = once(child, 'exit').then(([code, signal]) => ({
    code: code as number | null,
    signal: signal as NodeJS.Signals | null,
  }));
  return {
    child,
    ended,
    output: () => Buffer.concat(pieces).toString(),
    end(signal) {
      child.kill(signal);
      return ended;
    },
  };
}

/** Starts the program on a data folder and waits until its room is open. */
export async function startBot(
  platform: StandIn,
  folder: string,
  set: Readonly<Record<string, string>> = {},
): Promise<Bot> {
  const { identifies } = platform.gateway.counts;
  const bot = launch({
    DISCORD_TOKEN: platform.token,
    DISCORD_API: platform.api,
    DATA_DIR: folder,
    ...set,
  });
  while (platform.gateway.counts.identifies === identifies || !bot.output().includes('the room is open')) {
    if (bot.child.exitCode !== null) throw new Error(`it did not start: ${bot.output()}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
  return bot;
}
