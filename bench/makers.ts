/** Whether makers who are saved and not asking cost anything: the same with ten and with a hundred thousand of them. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { registry } from '../commands/index.ts';
import { DiskThread } from '../src/projects/disk-thread.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { MAKERS, Projects } from '../src/projects/projects.ts';
import { newMaker, type MakerDoc } from '../src/projects/schema.ts';
import { TerminalRoom } from '../src/rooms/terminal/room.ts';
import { each, sideBySide, timed, type Compared } from './measure.ts';
import { ran } from './start.ts';
import { figuresOf, time, type BenchRow } from './table.ts';

const FEW = 10;
const MANY = 100_000;
/** Files written at the same time. */
const TOGETHER = 200;

const named = (number: number) => `maker${number}`;

/** A maker with one motif, half way through a row. */
function maker(number: number): MakerDoc {
  const motif = {
    name: 'moss square',
    shape: 'diagonal',
    size: 12,
    stitch: 'hdc',
    hook: 5,
    gauge: { stitches: 13, rows: 10, over: 10 },
    runs: [
      { colour: 'moss', rows: 12 },
      { colour: 'sand', rows: 12 },
    ],
  } as const;
  return {
    ...newMaker(named(number), named(number)),
    motifs: [{ ...motif, runs: [...motif.runs] }],
    current: { motif: motif.name },
    progress: [{ motif: motif.name, row: number % 24, made: number % 7, history: [] }],
  };
}

/** Saves so many makers as the store does, each in a file of its own, without waiting for the disk to confirm each. */
async function saved(folder: string, makers: number): Promise<void> {
  const at = join(folder, MAKERS.folder);
  await mkdir(at, { recursive: true, mode: 0o700 });
  MAKERS.schema.parse(maker(0));
  for (let from = 0; from < makers; from += TOGETHER) {
    const some = Array.from({ length: Math.min(TOGETHER, makers - from) }, (_, index) => maker(from + index));
    await Promise.all(some.map((doc) => writeFile(join(at, `${doc.id}.json`), `${JSON.stringify(doc)}\n`)));
  }
}

/** A room over the store in a folder, as a server has it: it holds the folder and stays. */
async function open(folder: string) {
  const store = await FileStore.open({ folder, stays: true, thread: new DiskThread() });
  const room = new TerminalRoom({
    registry,
    projects: new Projects(store),
    now: () => new Date(),
    keep: () => Promise.resolve([]),
    read: () => Promise.reject(new Error('no files here')),
    fault: (error) => {
      throw error;
    },
  });
  const ask = async (line: string) => {
    const { status, text } = await room.answer(line, true);
    if (status !== 0) throw new Error(`${line}: ${text}`);
  };
  return { ask, close: () => store.close() };
}

export async function bench(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'bench-makers-'));
  const few = join(folder, 'few');
  const many = join(folder, 'many');
  try {
    await saved(few, FEW);
    const filling = await timed(() => saved(many, MANY));
    const line = (number: number, question: string) => `${named(number)}: ${question}`;
    const SHOW = '/motif show';
    await ran('node', ['tools/run.cjs', 'ask', line(1, SHOW)], { DATA_DIR: few });
    const fresh = (data: string) => () =>
      ran('node', ['dist/main.js', 'ask', line(7, SHOW)], { DATA_DIR: data });
    const process = await sideBySide(9, fresh(many), fresh(few));

    const opening = (data: string) => () =>
      timed(async () => {
        const opened = await open(data);
        await opened.ask(line(7, SHOW));
        await opened.close();
      });
    const start = await sideBySide(15, opening(many), opening(few));

    const inMany = await open(many);
    const inFew = await open(few);
    let compared: { shown: Compared; changed: Compared };
    try {
      // Another maker each time, by a step that meets all of them: hardly anybody is asked for twice.
      let turn = 0;
      const who = (of: number) => (turn++ * 7919) % of;
      const showing = (room: typeof inMany, of: number) => () =>
        each(() => room.ask(line(who(of), SHOW)), 300);
      // To inches at the first visit, back to centimetres at the next: every change changes something.
      const units = new Map<string, boolean>();
      const changing = (room: typeof inMany, of: number) => () =>
        each(() => {
          const number = who(of);
          const key = `${of} ${number}`;
          const imperial = units.get(key) !== true;
          units.set(key, imperial);
          return room.ask(line(number, `/settings change units:${imperial ? 'imperial' : 'metric'}`));
        }, 300);
      compared = {
        shown: await sideBySide(9, showing(inMany, MANY), showing(inFew, FEW)),
        changed: await sideBySide(9, changing(inMany, MANY), changing(inFew, FEW)),
      };
    } finally {
      await inMany.close();
      await inFew.close();
    }
    const count = MANY.toLocaleString('en-US');
    const row = (what: string, compared: Compared, note?: string, aim = 'about 1'): BenchRow => ({
      what: `${what}, ${count} makers saved`,
      ...figuresOf(compared, `the same with ${FEW}`),
      aim,
      ...(note === undefined ? {} : { note }),
    });
    return [
      row('Start and first answer of a fresh process', process),
      row('Opening the store, one answer from it, closing it', start),
      row(
        'An answer from what a maker has saved, another maker each time',
        compared.shown,
        `With ${FEW} makers all are in memory; of ${count} nearly every one is read from a file. They were saved in ${time(filling)}.`,
        'at most 1.5',
      ),
      row('A change that is on the disk before it is answered, another maker each time', compared.changed),
    ];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
