/** Runs the tests against the mutants in a process of its own; a mutant that hangs is ended with it, and the rest goes on in a new one. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Note, Plan } from './judge.ts';
import type { Instrumented } from './mutants.ts';
import { reachOf } from './reach.ts';
import type { Session } from './session.ts';

export interface Verdicts {
  /** The test that each killed mutant fails. */
  readonly killed: ReadonlyMap<string, string>;
  /** The mutants that some test reaches. */
  readonly reached: ReadonlySet<string>;
  /** Tests that could not be run twice. */
  readonly unfit: ReadonlySet<string>;
}

/** How often the log is looked at, and how much longer than a test may take a process may be silent, both in ms. */
const EVERY_MS = 100;
const GRACE_MS = 15_000;

/** Runs those of the test files that reach the sources, the nearest first. `say` is told how far it has come. */
export async function judge(
  sources: readonly Instrumented[],
  tests: readonly string[],
  say: (line: string) => void,
): Promise<Verdicts> {
  const folder = mkdtempSync(join(tmpdir(), 'mutate-'));
  try {
    const instrumented: Record<string, string> = {};
    for (const [index, { file, text }] of sources.entries()) {
      const copy = join(folder, `${index}.ts`);
      writeFileSync(copy, text);
      instrumented[resolve(file)] = copy;
    }
    const reach = new Map(tests.map((test) => [test, reachOf(test)]));
    const nearest = (test: string) =>
      Math.min(...Object.keys(instrumented).map((path) => reach.get(test)?.get(path) ?? Infinity));
    const own = tests.filter((test) => nearest(test) < Infinity);
    // The chapter's own tests first, then those of every formula, then what is near: what is noticed early is not tried again.
    const chapters = new Set(sources.map(({ file }) => dirname(file).replace('src/', 'test/')));
    const room = (test: string) =>
      chapters.has(dirname(test))
        ? 0
        : dirname(test) === 'test/core'
          ? 1
          : test.startsWith('test/core/')
            ? 2
            : 3;
    own.sort((a, b) => room(a) - room(b) || nearest(a) - nearest(b));
    return await judgeIn(folder, sources, { instrumented, tests: own }, reach, say);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function judgeIn(
  folder: string,
  sources: readonly Instrumented[],
  { instrumented, tests }: Session,
  reach: ReadonlyMap<string, ReadonlyMap<string, number>>,
  say: (line: string) => void,
): Promise<Verdicts> {
  const killed = new Map<string, string>();
  const reached = new Set<string>();
  const unfit = new Set<string>();
  const mutants = sources.flatMap((source) => source.mutants);
  let left = [...tests];
  for (let run = 0; left.length > 0; run++) {
    const log = join(folder, `log-${run}`);
    const plan: Plan = {
      mutants: mutants
        .filter(({ id }) => !killed.has(id))
        .map(({ id, file, place, formula }) => ({ id, file: resolve(file), place, formula })),
      reach: Object.fromEntries(
        left.map((test) => [
          resolve(test),
          [...(reach.get(test)?.keys() ?? [])].filter((path) => path in instrumented),
        ]),
      ),
      log,
    };
    writeFileSync(join(folder, 'plan'), JSON.stringify(plan));
    writeFileSync(join(folder, 'session'), JSON.stringify({ instrumented, tests: left } satisfies Session));
    writeFileSync(log, '');
    const judged = new Set<string>();
    const hung = await watched(folder, log, (note) => {
      if (note.kind === 'killed') killed.set(note.id, note.test);
      else if (note.kind === 'unfit') unfit.add(note.test);
      else if (note.kind === 'judged') {
        judged.add(note.file);
        for (const id of note.reached) reached.add(id);
        say(`${note.file}: ${killed.size} of ${mutants.length} noticed`);
      }
    });
    left = left.filter((test) => !judged.has(test));
    if (hung) {
      killed.set(hung.id, `${hung.test} never ends`);
      reached.add(hung.id);
    } else if (left.length > 0) throw new Error(`not judged: ${left.join(', ')}`);
  }
  return { killed, reached, unfit };
}

/** Starts a session and follows its log. Resolves when it is over, or with the trial that hangs once its process is ended. */
async function watched(
  folder: string,
  log: string,
  heard: (note: Note) => void,
): Promise<(Note & { kind: 'trying' }) | undefined> {
  const child = spawn(process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'session.ts')], {
    env: { ...process.env, MUTATE_PLAN: join(folder, 'plan'), MUTATE_SESSION: join(folder, 'session') },
    // Its worker is a process too: both are ended as one group.
    detached: true,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const end = new Promise<'over'>((done) => child.on('close', () => done('over')));
  let read = 0;
  let trying: (Note & { kind: 'trying' }) | undefined;
  let since = performance.now();
  const look = () => {
    const text = existsSync(log) ? readFileSync(log).subarray(read).toString() : '';
    const whole = text.slice(0, text.lastIndexOf('\n') + 1);
    read += Buffer.byteLength(whole);
    for (const line of whole.split('\n').filter((one) => one !== '')) {
      const note = JSON.parse(line) as Note;
      trying = note.kind === 'trying' ? note : undefined;
      since = performance.now();
      heard(note);
    }
  };
  for (;;) {
    const came = await Promise.race([end, pause(EVERY_MS)]);
    look();
    if (came === 'over') return undefined;
    if (trying && performance.now() - since > trying.within + GRACE_MS && child.pid !== undefined) {
      process.kill(-child.pid, 'SIGKILL');
      await end;
      return trying;
    }
  }
}
