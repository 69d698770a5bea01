/**
 * The room under load through the real client, against a bot that answers a fixed string through the same client and an
 * equal platform. The bots and the platforms with their people run in processes of their own.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { registry } from '../commands/index.ts';
import { asking } from '../test/asking.ts';
import { asGiven } from '../test/rooms/discord/harness.ts';
import type { Asked, Load } from './load-platform.ts';
import { openSide, type Measured, type Side } from './load-process.ts';
import { median, sideBySide, type Took } from './measure.ts';
import { digits, seen, time, type BenchRow } from './table.ts';

const ROUNDS = 7;
const ROUND_MS = 1_500;
const IN_FLIGHT = [1, 16, 64];
const WARM = 5_000;
const MAKERS = 200;
/** The bot has one processor and the platform with its people another. */
const NEEDS = { needs: 2 };
/** Answers of the long run, and how often the memory is looked at. */
const LONG_RUN = 50_000;
const LOOKS = 10;

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

/** What one kind of load is called, asks, and is to reach. */
interface Kind {
  readonly kind: Load['kind'];
  readonly what: string;
  readonly questions: readonly Asked[];
  readonly before: readonly Asked[];
  readonly aim: string;
}

/** ms for one answer, by the clock and of the bot's own processor time. */
const ofOne = ({ seconds, answers, bot, platform }: Measured): Took => ({
  ms: (seconds * 1000) / answers,
  cpu: bot / answers,
  elsewhere: bot + platform,
});

const perSecond = (ms: number) => `${digits(1000 / ms)} answers/s`;

async function loadRow(
  { kind, what, questions, before, aim }: Kind,
  inFlight: number,
  sides: { readonly ours: Side; readonly fixed: Side },
): Promise<{ readonly row: BenchRow; readonly slow: number }> {
  const load = { kind, questions, inFlight, makers: MAKERS, answers: Infinity, ms: ROUND_MS };
  const slow: number[] = [];
  const standIn: number[] = [];
  const compared = await sideBySide(
    ROUNDS,
    async () => {
      const loaded = await sides.ours.load({ ...load, before });
      slow.push(loaded.p99);
      standIn.push(loaded.platform / loaded.answers);
      return ofOne(loaded);
    },
    async () => ofOne(await sides.fixed.load({ ...load, before: [] })),
    NEEDS,
  );
  const { ours, reference, ratio, cpuRatio, disturbed } = compared;
  const row = {
    what: `${what}, ${inFlight} in flight`,
    ours: `${perSecond(ours.median)}: ${seen(ours)}`,
    reference: `a fixed string: ${perSecond(reference.median)}: ${seen(reference)}`,
    ratio: `${digits(1 / ratio)}; by the bot’s processor ${digits(1 / cpuRatio)}`,
    aim,
    note: `Through the real client and a stand-in of the platform in another process, on the same machine; ${MAKERS} makers in turn. Ratios of answers per second, and of answers for the same time of the processor, the bot’s process alone: the stand-in’s, some ${time(median(standIn))} an answer, is not in it.`,
    disturbed,
  };
  return { row, slow: median(slow) };
}

async function loadRows(kinds: readonly Kind[], sides: Parameters<typeof loadRow>[2]): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const p99: string[] = [];
  for (const kind of kinds)
    for (const inFlight of IN_FLIGHT) {
      const { row, slow } = await loadRow(kind, inFlight, sides);
      rows.push(row);
      if (inFlight < 64 && row.disturbed === undefined)
        p99.push(`${kind.kind}, ${inFlight} in flight: ${time(slow)}`);
    }
  const slowest = {
    what: 'Slowest hundredth, pictures excluded',
    reference: '100 ms',
    ratio: '',
    aim: '< 100 ms',
  };
  const disturbed = p99.length === 0 ? 'none of the loads above was measured' : undefined;
  return [...rows, { ...slowest, ours: p99.join('; '), disturbed }];
}

export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'load-'));
  const [ours, fixed] = [await openSide('ours', folder), await openSide('fixed', folder)];
  try {
    const questions = await mixed();
    // Both have been answering for a while before anything counts.
    const warm = {
      kind: 'questions',
      questions,
      before: [],
      inFlight: 16,
      makers: MAKERS,
      answers: WARM,
    } as const;
    await ours.load({ ...warm, ms: Infinity });
    await fixed.load({ ...warm, ms: Infinity });
    const kinds: readonly Kind[] = [
      {
        kind: 'questions',
        what: `Mixed questions (${questions.length} kinds)`,
        questions,
        before: [],
        aim: '≥ 0.8',
      },
      {
        kind: 'presses',
        what: 'Presses, saved on the disk before they are answered',
        questions: PRESSED,
        before: SAVED,
        aim: '≥ 0.25',
      },
    ];
    return [
      ...(await loadRows(kinds, { ours, fixed })),
      await makersRow(ours),
      await memoryRow(ours, questions),
    ];
  } finally {
    await ours.close();
    await fixed.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Presses of few makers against presses of ten times as many. */
async function makersRow(side: Side): Promise<BenchRow> {
  const load = (makers: number): Load => ({
    kind: 'presses',
    questions: PRESSED,
    before: SAVED,
    inFlight: 16,
    makers,
    answers: Infinity,
    ms: ROUND_MS,
  });
  await side.load({ ...load(2_000), ms: 0 });
  const few = async () => ofOne(await side.load(load(MAKERS)));
  const many = async () => ofOne(await side.load(load(2_000)));
  const compared = await sideBySide(ROUNDS, many, few, NEEDS);
  return {
    what: 'A saved press among 2,000 makers',
    ours: seen(compared.ours),
    reference: `among ${MAKERS}: ${seen(compared.reference)}`,
    ratio: compared.ratio,
    aim: '1 within noise',
    disturbed: compared.disturbed,
  };
}

/** What is held after every few thousand answers. */
async function memoryRow(side: Side, questions: readonly Asked[]): Promise<BenchRow> {
  const curve = [await side.heap()];
  for (let turn = 0; turn < LOOKS; turn++) {
    await side.load({
      kind: 'questions',
      questions,
      before: [],
      inFlight: 16,
      makers: 2_000,
      answers: LONG_RUN / LOOKS,
      ms: Infinity,
    });
    curve.push(await side.heap());
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
