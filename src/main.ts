/** Reads the environment, opens the store, opens a room. */
import { defined } from './core/base/defined.ts';
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { registry } from '../commands/index.ts';
import { exampleLine } from './chat/reference.ts';
import type { Log } from './log.ts';
import { BadEnvironment, readEnvironment, secretsOf, type Environment } from './environment.ts';
import { FileStore, type FileStoreOptions } from './projects/file-store.ts';
import type { Paper } from './paper/paper.ts';
import { NotSaved } from './projects/not-saved.ts';
import { Projects } from './projects/projects.ts';
import type { Store } from './projects/store.ts';
import { mayBeUnfinished, mustBeWhole } from './projects/unfinished.ts';
import { KeptFiles } from './rooms/terminal/kept-files.ts';
import { askOnce, talk } from './rooms/terminal/run.ts';

/** How many questions the terminal room shows to somebody new. */
const SHOWN = 3;

/** How long what runs may take to end once it is asked to: a disk that answers nothing keeps nobody for ever. */
const GRACE_MS = 15_000;

/** Aborted at Ctrl-C and SIGTERM; a second one does not wait, and the first not for ever. */
function stopSignal(): AbortSignal {
  const stopping = new AbortController();
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.on(signal, () => {
      if (stopping.signal.aborted) process.exit(1);
      stopping.abort();
      setTimeout(() => process.exit(1), GRACE_MS).unref();
    });
  }
  return stopping.signal;
}

/** Says a sentence to whoever runs this, beside what the room says. */
const tellRunner = (sentence: string) => void process.stderr.write(`${sentence}\n`);

/** Opens the store that is set: a database, which is loaded then alone, or the data folder. */
async function openStore(
  { database, dataFolder }: Environment,
  options: Pick<FileStoreOptions, 'stays' | 'note' | 'stop'>,
): Promise<Store & { releaseNow?: () => void }> {
  if (database === undefined) {
    // A thread is worth starting for whoever goes on.
    const thread = options.stays ? new (await import('./projects/disk-thread.ts')).DiskThread() : undefined;
    const store = await FileStore.open({ folder: dataFolder, ...options, ...(thread ? { thread } : {}) });
    // A single question waits for no file that is not there.
    if (options.stays || mayBeUnfinished(dataFolder))
      await orClosed(store, mustBeWhole(store, { said: `the data folder ${dataFolder}`, named: dataFolder }));
    return store;
  }
  const store = await openDatabase(database, options);
  await orClosed(store, mustBeWhole(store, { said: 'the database', named: 'database' }));
  return store;
}

/** The longest from one try to the next, ms. */
const LONGEST_WAIT_MS = 30_000;

/** Opens the database. Where it is out of reach, or being moved, whoever stays waits for it; whoever asks one question is told. */
async function openDatabase(
  url: string,
  { stays, note, stop }: Pick<FileStoreOptions, 'stays' | 'note' | 'stop'>,
): Promise<Store> {
  const { mayPass, PostgresStore } = await import('./projects/postgres/store.ts');
  const isStopped = () => stop?.aborted === true;
  for (let tries = 0; ; tries++) {
    try {
      return await PostgresStore.open({ url, ...(note ? { note } : {}) });
    } catch (error) {
      if (!stays || !mayPass(error) || isStopped()) throw error;
      const pause = Math.min(1_000 * 2 ** tries, LONGEST_WAIT_MS);
      note?.(`${error.message} It is tried again.`, { code: error.code, pause });
      await wait(pause, undefined, stop ? { signal: stop } : {}).catch(() => undefined);
      if (isStopped()) throw error;
    }
  }
}

/** Waits for something, and lets go of the store where it is refused. */
async function orClosed(store: Store, looked: Promise<void>): Promise<void> {
  try {
    await looked;
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function terminal(mode: string | undefined, args: readonly string[], environment: Environment) {
  const stop = stopSignal();
  // A reader that goes away is no fault: `ask … | head -1`.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE')
      tellRunner(`The answers could not be written (${error.code ?? error.message}).`);
    store.releaseNow?.();
    process.exit(error.code === 'EPIPE' ? 0 : 1);
  });
  const file = join(environment.dataFolder, 'log', 'terminal.log');
  // The log is loaded when there is something to log: a single question should not wait for it.
  let log: Promise<Log> | undefined;
  let noted = Promise.resolve();
  const note = (what: string, { error, ...facts }: Readonly<Record<string, unknown>>) => {
    log ??= import('./log.ts').then(({ openLog }) =>
      openLog({ level: environment.logLevel, secrets: secretsOf(environment), file, failed: tellRunner }),
    );
    const opened = log;
    noted = noted
      .then(async () => (await opened).error({ ...facts, ...defined({ err: error }) }, what))
      // Not even loaded: what is noted is gone, the answer is not.
      .catch((why: unknown) => tellRunner(`The log ${file} cannot be written (${String(why)}).`));
  };
  const fault = (error: unknown, question?: string) => {
    const id = randomUUID().slice(0, 8);
    note('a fault of ours', { fault: id, question, error });
    return id;
  };
  const store = await openStore(environment, { stays: false, note, stop });
  const projects = new Projects(store);
  projects.keepElsewhere(new KeptFiles(environment.filesFolder));
  const running = {
    registry,
    projects,
    files: environment.filesFolder,
    makers: {
      toPng: async (svg: string) => (await import('./pictures/png.ts')).toPng(svg),
      toPdf: async (paper: Paper) => (await import('./paper/to-pdf.ts')).toPdf(paper),
    },
    fault,
    stop,
  };
  // What nobody waited for went wrong: it is noted, said, and stops no answer.
  let stray = false;
  process.on('unhandledRejection', (error) => {
    stray = true;
    tellRunner(`Something went wrong here; it is noted as ${fault(error)}.`);
  });
  // Nothing is known of the state after this; what was answered is on the disk.
  process.on('uncaughtException', (error) => {
    tellRunner(`Something went wrong here; it is noted as ${fault(error)}. That ends it.`);
    void noted.finally(() => {
      store.releaseNow?.();
      process.exit(1);
    });
  });
  const status = (said: number) => (stray ? 1 : said);
  try {
    if (mode === 'ask') return status(await askOnce(args, running));
    // One of each of the first commands: what can be asked is wider than any one of them.
    const examples = registry.commands.slice(0, SHOWN).flatMap(({ name }) => {
      const found = registry.routes.find(
        ({ command, question }) => command.name === name && !question.before,
      );
      return found === undefined ? [] : [found];
    });
    const greeting = [
      environment.token === undefined
        ? 'Loopwright, in the terminal room, as no DISCORD_TOKEN is set. Three questions worth typing:'
        : 'Loopwright, in the terminal room. Three questions worth typing:',
      ...examples.map((found) => `  ${exampleLine(found)}`),
      '/help lists them all; bye ends the talk.',
    ];
    return status(await talk(running, greeting));
  } finally {
    await store.close();
    await noted;
  }
}

async function discord(token: string, environment: Environment): Promise<number> {
  const { api, hears, logLevel, shards } = environment;
  const stop = stopSignal();
  const [{ openLog, noteFault }, { openDiscordRoom }, { closePictures }] = await Promise.all([
    import('./log.ts'),
    import('./rooms/discord/run.ts'),
    import('./pictures/png.ts'),
  ]);
  const log = openLog({ level: logLevel, secrets: secretsOf(environment), failed: tellRunner });
  const store = await openStore(environment, {
    stays: true,
    stop,
    note: (what, { error, ...facts }) =>
      log.error(error === undefined ? facts : { ...facts, err: error }, what),
  }).catch((error: unknown) => {
    if (!(stop.aborted && error instanceof NotSaved)) throw error;
    // Asked to stop while it waited, it says for what, and has done what it was asked.
    tellRunner(error.message);
    return undefined;
  });
  if (store === undefined) return 0;
  // What nobody waited for went wrong: noted, like any other fault, and nobody's answer ends with it.
  process.on('unhandledRejection', (error) => noteFault(log, error));
  process.on('uncaughtException', (error) => {
    // Nothing is known of the state after this; what was answered is on the disk, and a fresh process goes on from it.
    noteFault(log, error, { ends: true });
    store.releaseNow?.();
    process.exit(1);
  });
  try {
    const room = await openDiscordRoom({
      registry,
      projects: new Projects(store),
      token,
      log,
      fault: (error) => noteFault(log, error),
      queue: () => store.waiting,
      stop,
      hears,
      shards,
      ...(api === undefined ? {} : { api, attachmentHosts: [new URL(api).hostname] }),
    });
    const stopped = new Promise<undefined>((resolve) => {
      if (stop.aborted) resolve(undefined);
      stop.addEventListener('abort', () => resolve(undefined), { once: true });
    });
    const reason = await Promise.race([room.ended, stopped]);
    if (reason !== undefined) log.error({ reason }, 'the room has ended');
    await room.close();
    return reason === undefined ? 0 : 1;
  } catch (error) {
    if (stop.aborted) return 0;
    throw error;
  } finally {
    await store.close();
    await closePictures();
  }
}

async function main(mode: string | undefined, args: readonly string[]): Promise<number> {
  const environment = await readEnvironment();
  if (mode === 'move') return (await import('./move.ts')).move(args, environment, stopSignal());
  if (mode === 'database') return (await import('./database.ts')).database(args, environment);
  if (mode === 'ask' || args.includes('--terminal') || environment.token === undefined)
    return terminal(mode, args, environment);
  const code = await discord(environment.token, environment);
  // All is saved and said. The client goes on calling for a platform that is out of reach, and would keep this alive.
  process.exit(code);
}

/** Runs to the end, and sets how it ended. Never rejects. */
async function run(): Promise<void> {
  const [mode, ...args] = process.argv.slice(2);
  // Where nobody hears a sentence to whoever runs this, the answers go on.
  process.stderr.on('error', () => undefined);
  // Until something else is said: what ends of itself, with nothing left to wait for, has answered nothing.
  process.exitCode = 1;
  try {
    process.exitCode = await main(mode, args);
  } catch (error) {
    // What stands in the way of starting is said in a sentence, not in a stack.
    const known = error instanceof BadEnvironment || error instanceof NotSaved;
    const said = error instanceof Error ? error.message : String(error);
    const hint = error instanceof NotSaved ? `\n  ${error.hint}` : '';
    process.stderr.write(`${known ? said : `This could not be started: ${said}`}${hint}\n`);
  }
}

// Not awaited here: a file that is joined with others, and compiled before, has nowhere to wait.
void run();
