/** The first answer of a fresh process against a process that does nothing. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sideBySide, timed, type Took } from './measure.ts';
import { figuresOf, type BenchRow } from './table.ts';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));
const QUESTION = '/stitches row shape:diagonal size:12 row:9';
const WORDS = 'how many stitches in row 9 of a 12 row diagonal square';
const SAVES = '/motif define name:moss shape:diagonal size:12';

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

/** ms of the processor that processes took which this one started and which have ended, in steps of ten. */
function childrensTime(): number {
  const stat = readFileSync('/proc/self/stat', 'utf8');
  const [user = NaN, system = NaN] = stat.slice(stat.lastIndexOf(')')).split(' ').slice(14, 16).map(Number);
  return 10 * (user + system);
}

/** The same with what it took of the processor. */
async function took(...command: Parameters<typeof ran>): Promise<Took> {
  const before = childrensTime();
  const ms = await ran(...command);
  const cpu = childrensTime() - before;
  return { ms, cpu, elsewhere: cpu };
}

export async function bench(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-start-'));
  const env = { DATA_DIR: join(folder, 'data'), FILES_DIR: join(folder, 'files') };
  const saved = { ...env, DATA_DIR: join(folder, 'saved') };
  try {
    // Makes the bundle anew where a source is younger.
    await ran('node', ['tools/run.cjs', 'ask', SAVES], saved);
    const nothing = () => took('node', ['-e', '0']);
    const asked = (question: string, where: NodeJS.ProcessEnv) => () =>
      took('node', ['dist/main.js', 'ask', question], where);
    const bare = await sideBySide(25, asked(QUESTION, env), nothing);
    const known = await sideBySide(15, asked(QUESTION, saved), nothing);
    const words = await sideBySide(15, asked(WORDS, env), nothing);
    const whole = await sideBySide(7, () => took('npm', ['run', '-s', 'ask', '--', QUESTION], env), nothing);
    return [
      {
        what: 'First answer of a fresh process',
        ...figuresOf(bare, 'node -e 0'),
        aim: '≤ 1.8 ×',
        note: 'The processor’s time in steps of 10 ms, as the system tells it of processes that have ended.',
      },
      { what: 'The same by somebody who has saved a motif', ...figuresOf(known, 'node -e 0') },
      { what: 'The same in plain words', ...figuresOf(words, 'node -e 0') },
      { what: 'The same through npm run ask', ...figuresOf(whole, 'node -e 0') },
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
