/** The first answer of a fresh process against a process that does nothing. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sideBySide, timed } from './measure.ts';
import { time, times, type BenchRow } from './table.ts';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const QUESTION = '/stitches row shape:diagonal size:12 row:9';

/** Runs a command to its end, in milliseconds. Throws where it fails. */
export const ran = (command: string, args: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<number> =>
  timed(async () => {
    const child = spawn(command, args, {
      cwd: ROOT,
      env: { ...process.env, ...env },
      stdio: ['ignore', 'ignore', 'inherit'],
    });
    const [status] = (await once(child, 'exit')) as [number | null];
    if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status ?? 'a signal'}`);
  });

export async function bench(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-start-'));
  const env = { DATA_DIR: join(folder, 'data'), FILES_DIR: join(folder, 'files') };
  try {
    // Makes the bundle anew where a source is younger.
    await ran('node', ['tools/run.mjs', 'ask', QUESTION], env);
    const nothing = () => ran('node', ['-e', '0']);
    const bare = await sideBySide(15, () => ran('node', ['dist/main.js', 'ask', QUESTION], env), nothing);
    const whole = await sideBySide(7, () => ran('npm', ['run', '-s', 'ask', '--', QUESTION], env), nothing);
    const row = (what: string, { ours, reference, ratio }: typeof bare): BenchRow => ({
      what,
      ours: time(ours),
      reference: `${time(reference)}: node -e 0`,
      ratio: times(ratio),
    });
    return [
      { ...row('First answer of a fresh process', bare), aim: 'under 0.6 s' },
      row('The same through npm run ask', whole),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
