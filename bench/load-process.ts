/** Processes of the load bench, and what is said to them and by them. */
import { fork } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Load, Loaded } from './load-platform.ts';

export type ToBot =
  | {
      readonly ask: 'open';
      readonly bot: 'ours' | 'fixed';
      readonly api: string;
      readonly token: string;
      /** Where it keeps what is saved. */
      readonly folder: string;
    }
  | { readonly ask: 'cpu' }
  | { readonly ask: 'heap' };
export type FromBot =
  | { readonly told: 'open' }
  /** ms of the processor since it began. */
  | { readonly told: 'cpu'; readonly cpu: number }
  | { readonly told: 'heap'; readonly heap: number }
  | { readonly error: string };

const here = (file: string) => fileURLToPath(new URL(file, import.meta.url));

/**
 * Bundles the bots, as the program runs bundled: what reads TypeScript at run time gives each function its name anew whenever one
 * is made, which takes part of the time that is measured.
 */
async function bundledBots(): Promise<{ readonly bot: string; readonly remove: () => void }> {
  const cache = here('../node_modules/.cache/');
  mkdirSync(cache, { recursive: true });
  // Beside the packages, which stay where they are.
  const outdir = mkdtempSync(`${cache}bots-`);
  await build({
    entryPoints: {
      bot: here('load-bot.ts'),
      'disk-worker': here('../src/projects/disk-worker.ts'),
    },
    outdir,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    packages: 'external',
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
  });
  return { bot: `${outdir}/bot.mjs`, remove: () => rmSync(outdir, { recursive: true, force: true }) };
}

/** A process that answers each thing that it is asked, one after the other. */
function open<From extends object>(program: string) {
  // Loads without an end are infinite, which JSON cannot say.
  const child = fork(program, { serialization: 'advanced' });
  const next = () =>
    new Promise<From>((resolve, reject) => {
      const ended = (code: number | null) => reject(new Error(`${program} ended with ${code ?? 'a signal'}`));
      child.once('exit', ended);
      child.once('message', (told: From | { readonly error: string }) => {
        child.off('exit', ended);
        if ('error' in told) reject(new Error(told.error));
        else resolve(told);
      });
    });
  return {
    next,
    ask: (asked: ToBot | Load | 'cpu') => {
      const told = next();
      child.send(asked);
      return told;
    },
    /** Resolves when it has put away what it had in hand. */
    close: () =>
      new Promise<void>((done) => {
        child.once('exit', () => done());
        child.disconnect();
      }),
  };
}

/** A load, with what it took of the processor: ms in all of the bot, and of the platform with its people. */
export interface Measured extends Loaded {
  readonly bot: number;
  readonly platform: number;
}

/** A bot, and a platform of its own: each in its process. */
export interface Side {
  load(load: Load): Promise<Measured>;
  /** MiB that the bot holds. */
  heap(): Promise<number>;
  close(): Promise<void>;
}

/** A platform with its people, for bots that are started elsewhere. */
export interface Platform {
  readonly api: string;
  readonly token: string;
  load(load: Load): Promise<Loaded>;
  close(): Promise<void>;
}

function loadedIn(told: { loaded: Loaded } | object, load: Load): Loaded {
  if (!('loaded' in told)) throw new Error('the platform told of no load');
  const { loaded } = told;
  if (loaded.amiss > 0 || (loaded.answers === 0 && load.ms > 0))
    throw new Error(`${loaded.amiss} of ${loaded.answers} answers were amiss`);
  return loaded;
}

type FromPlatform = { loaded: Loaded } | { cpu: number } | { api: string; token: string };
const PLATFORM = here('load-platform.ts');

export async function openPlatform(): Promise<Platform> {
  const platform = open<FromPlatform>(PLATFORM);
  const at = await platform.next();
  if (!('api' in at)) throw new Error('the platform did not open');
  return {
    ...at,
    load: async (load) => loadedIn(await platform.ask(load), load),
    close: platform.close,
  };
}

export async function openSide(bot: 'ours' | 'fixed', folder: string): Promise<Side> {
  const platform = open<FromPlatform>(PLATFORM);
  const at = await platform.next();
  if (!('api' in at)) throw new Error('the platform did not open');
  const bots = await bundledBots();
  const process = open<FromBot>(bots.bot);
  await process.ask({ ask: 'open', bot, ...at, folder });
  const taken = async () => {
    const [ours, theirs] = [await process.ask({ ask: 'cpu' }), await platform.ask('cpu')];
    return { bot: 'cpu' in ours ? ours.cpu : NaN, platform: 'cpu' in theirs ? theirs.cpu : NaN };
  };
  return {
    load: async (load) => {
      const before = await taken();
      const told = await platform.ask(load);
      const after = await taken();
      return {
        ...loadedIn(told, load),
        bot: after.bot - before.bot,
        platform: after.platform - before.platform,
      };
    },
    heap: async () => {
      const told = await process.ask({ ask: 'heap' });
      return 'heap' in told ? told.heap : NaN;
    },
    close: async () => {
      await process.close();
      await platform.close();
      bots.remove();
    },
  };
}
