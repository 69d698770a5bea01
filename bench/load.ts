/**
 * The room under load through the real client, against a bot that answers a fixed string through the same client and an
 * equal platform. The platforms and their people run in processes of their own.
 */
import { fork, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Client, Events } from 'discord.js';
import { registry } from '../commands/index.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { Projects } from '../src/projects/projects.ts';
import { declaration } from '../src/rooms/discord/declare.ts';
import { openDiscordRoom } from '../src/rooms/discord/run.ts';
import { asking } from '../test/asking.ts';
import { asGiven } from '../test/rooms/discord/harness.ts';
import type { Asked, Load, Loaded } from './load-platform.ts';
import { median, sideBySide } from './measure.ts';
import { digits, time, type BenchRow } from './table.ts';

const ROUNDS = 5;
const ROUND_MS = 2_000;
const IN_FLIGHT = [1, 16, 64];
const WARM = 5_000;
/** Answers of the long run, and how often the memory is looked at. */
const LONG_RUN = 50_000;
const LOOKS = 10;

export interface Platform {
  readonly api: string;
  readonly token: string;
  load(load: Load): Promise<Loaded>;
  close(): void;
}

export async function openPlatform(): Promise<Platform> {
  const program = fileURLToPath(new URL('load-platform.ts', import.meta.url));
  // Loads without an end are infinite, which JSON cannot say.
  const child: ChildProcess = fork(program, { serialization: 'advanced' });
  const next = <T>() =>
    new Promise<T>((resolve, reject) => {
      child.once('message', (told: { error?: string }) =>
        told.error === undefined ? resolve(told as T) : reject(new Error(told.error)),
      );
    });
  const { api, token } = await next<{ api: string; token: string }>();
  return {
    api,
    token,
    load: async (load) => {
      const told = next<{ loaded: Loaded }>();
      child.send(load);
      const { loaded } = await told;
      if (loaded.amiss > 0 || (loaded.answers === 0 && load.ms > 0))
        throw new Error(`${loaded.amiss} of ${loaded.answers} answers were amiss`);
      return loaded;
    },
    close: () => {
      child.disconnect();
    },
  };
}

/** A bot that says the same to everything: what the client and the platform cost by themselves. */
async function openFixed({ api, token }: Platform): Promise<Client> {
  const client = new Client({ intents: [], rest: { api } });
  const components = [{ type: 1, components: [{ type: 2, style: 1, label: 'Again', custom_id: 'again' }] }];
  client.on(Events.InteractionCreate, (interaction) => {
    if (interaction.isChatInputCommand())
      void interaction.reply({ content: 'Fixed.', components, allowedMentions: { parse: [] } });
    else if (interaction.isButton())
      void interaction.update({ content: 'Fixed.', components, allowedMentions: { parse: [] } });
  });
  const ready = new Promise<Client<true>>((resolve) => client.once(Events.ClientReady, resolve));
  await client.login(token);
  const { application } = await ready;
  await client.rest.put(`/applications/${application.id}/commands`, {
    body: registry.commands.map(declaration),
  });
  return client;
}

const nobody = (name: string): never => {
  throw new Error(`nothing is asked here of ${name}`);
};

/** Every question that rests on nothing saved, saves nothing and draws nothing, by its example. */
export async function mixed(): Promise<Asked[]> {
  const asked: Asked[] = [];
  for (const { path, question } of registry.routes) {
    if (question.changes === true || question.before !== undefined) continue;
    const line = `/${path} ${question.example}`;
    const { ok, files } = await asking().ask(line);
    if (!ok || files.length > 0) continue;
    const { given } = asGiven(line, registry, { received: () => undefined, person: nobody });
    asked.push({ path, options: given });
  }
  return asked;
}

export const SAVED: Asked[] = [
  { path: 'motif define', options: { name: 'moss', shape: 'diagonal', size: 12 } },
];
export const PRESSED: Asked[] = [{ path: 'progress next', options: { motif: 'moss' } }];

const perAnswer = ({ seconds, answers }: Loaded) => (seconds * 1000) / answers;

export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'load-'));
  const [platform, plain] = [await openPlatform(), await openPlatform()];
  const store = await FileStore.open({ folder, stays: true });
  const silent = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const room = await openDiscordRoom({
    registry,
    projects: new Projects(store),
    token: platform.token,
    api: platform.api,
    log: silent,
    fault: (error) => {
      throw error;
    },
    pace: { burst: 1e9, perSecond: 1e9 },
  });
  const fixed = await openFixed(plain);
  const questions = await mixed();
  const rows: BenchRow[] = [];
  const p99: string[] = [];
  try {
    // Both have been answering for a while before anything counts.
    const warm = {
      kind: 'questions',
      questions,
      before: [],
      inFlight: 16,
      makers: 200,
      answers: WARM,
      ms: Infinity,
    } as const;
    await platform.load(warm);
    await plain.load(warm);
    for (const kind of ['questions', 'presses'] as const) {
      for (const inFlight of IN_FLIGHT) {
        const load: Load = {
          kind,
          questions: kind === 'questions' ? questions : PRESSED,
          before: kind === 'questions' ? [] : SAVED,
          inFlight,
          makers: 200,
          answers: Infinity,
          ms: ROUND_MS,
        };
        const slow: number[] = [];
        const compared = await sideBySide(
          ROUNDS,
          async () => {
            const loaded = await platform.load(load);
            slow.push(loaded.p99);
            return perAnswer(loaded);
          },
          async () => perAnswer(await plain.load({ ...load, before: [] })),
        );
        if (inFlight < 64) p99.push(`${kind}, ${inFlight} in flight: ${time(median(slow))}`);
        rows.push({
          what: `${kind === 'questions' ? `Mixed questions (${questions.length} kinds)` : 'Presses, saved on the disk before they are answered'}, ${inFlight} in flight`,
          ours: `${digits(1000 / compared.ours)} answers/s`,
          reference: `a fixed string: ${digits(1000 / compared.reference)} answers/s`,
          ratio: 1 / compared.ratio,
          aim: kind === 'questions' ? '≥ 0.8' : '≥ 0.5',
          note: 'Through the real client and a stand-in of the platform in another process, on the same machine; 200 makers in turn; ratios of answers per second.',
        });
      }
    }
    rows.push({
      what: 'Slowest hundredth, pictures excluded',
      ours: p99.join('; '),
      reference: '100 ms',
      ratio: '',
      aim: '< 100 ms',
    });
    rows.push(await makersRow(platform));
    rows.push(await memoryRow(platform, questions));
  } finally {
    await room.close();
    await fixed.destroy();
    await store.close();
    platform.close();
    plain.close();
    rmSync(folder, { recursive: true, force: true });
  }
  return rows;
}

/** Presses of few makers against presses of ten times as many. */
async function makersRow(platform: Platform): Promise<BenchRow> {
  const load = (makers: number): Load => ({
    kind: 'presses',
    questions: PRESSED,
    before: SAVED,
    inFlight: 16,
    makers,
    answers: Infinity,
    ms: ROUND_MS,
  });
  await platform.load({ ...load(2_000), ms: 0 });
  const few = async () => perAnswer(await platform.load(load(200)));
  const many = async () => perAnswer(await platform.load(load(2_000)));
  const compared = await sideBySide(ROUNDS, many, few);
  return {
    what: 'A saved press among 2,000 makers',
    ours: time(compared.ours),
    reference: `among 200: ${time(compared.reference)}`,
    ratio: compared.ratio,
    aim: '1 within noise',
  };
}

/** What is held after every few thousand answers. */
async function memoryRow(platform: Platform, questions: readonly Asked[]): Promise<BenchRow> {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const curve: number[] = [];
  const look = () => {
    collect();
    curve.push(process.memoryUsage().heapUsed / 1024 / 1024);
  };
  look();
  for (let turn = 0; turn < LOOKS; turn++) {
    await platform.load({
      kind: 'questions',
      questions,
      before: [],
      inFlight: 16,
      makers: 2_000,
      answers: LONG_RUN / LOOKS,
      ms: Infinity,
    });
    look();
  }
  const [first = NaN, second = NaN] = curve;
  const last = curve.at(-1) ?? NaN;
  return {
    what: `Heap in MiB over ${LONG_RUN.toLocaleString('en-US')} answers, looked at after every ${(LONG_RUN / LOOKS).toLocaleString('en-US')}`,
    ours: curve.map((mebibytes) => mebibytes.toFixed(0)).join(' '),
    reference: `${first.toFixed(0)} before`,
    ratio: last / second,
    aim: 'flat',
    note: 'After a collection; the ratio is the last look over the first one after the beginning.',
  };
}
