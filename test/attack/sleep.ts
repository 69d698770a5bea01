/** Puts the holder of a folder to sleep, lets another machine take over, and wakes the first: who overwrote what? */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { bundled } from '../projects/children/run.ts';
import { countOnDisk, newFolder, tree } from '../projects/kinds.ts';

export interface SleepReport {
  readonly rounds: number;
  readonly acknowledged: number;
  /** Changes that were refused in words, because the folder was another's meanwhile. */
  readonly refused: number;
  /** Numbers that were acknowledged and are not in what is saved. */
  readonly lost: number;
  /** Numbers that two were told: one of them wrote over the other. */
  readonly doubled: number;
  /** Faults of the processes, and files left behind. */
  readonly broken: readonly string[];
}

const IDS = ['a', 'b', 'c'];
/** What whoever takes over changes meanwhile, each. */
const MEANWHILE = 4;

class Process {
  readonly lines: string[] = [];
  private errors = '';
  private readonly child;
  readonly ended;

  constructor(script: string, args: readonly string[]) {
    this.child = spawn(process.execPath, [script, ...args], { stdio: ['pipe', 'pipe', 'pipe'] });
    this.ended = once(this.child, 'close');
    this.child.stderr.on('data', (data) => (this.errors += String(data)));
    createInterface({ input: this.child.stdout }).on('line', (line) => {
      this.lines.push(line);
      this.child.emit('said');
    });
  }

  signal = (signal: NodeJS.Signals) => this.child.kill(signal);
  finish = () => this.child.stdin.write('over\n');

  /** Waits until it has said so many lines of a kind. */
  async said(is: (line: string) => boolean, times = 1): Promise<void> {
    while (this.lines.filter(is).length < times) {
      if (this.child.exitCode !== null) throw new Error(`it ended: ${this.errors}`);
      await once(this.child, 'said');
    }
  }

  get fault(): string[] {
    return this.errors === '' ? [] : [this.errors];
  }
}

const isNumber = (line: string) => /^[abc] \d+$/.test(line);

/** `spread` hands out numbers in [0, 1): when each falls asleep. */
export async function sleepLoop(rounds: number, spread: () => number): Promise<SleepReport> {
  const script = await bundled(new URL('sleeper.ts', import.meta.url).pathname);
  const folder = newFolder();
  const told = new Map<string, number>();
  const count = { acknowledged: 0, refused: 0, lost: 0, doubled: 0 };
  const broken: string[] = [];
  for (let round = 0; round < rounds; round++) {
    const sleeper = new Process(script, [folder, 'one', '1000000']);
    await sleeper.said(isNumber, 5);
    await new Promise((wait) => setTimeout(wait, 60 * spread()));
    sleeper.signal('SIGSTOP');
    const other = new Process(script, [folder, 'two', String(MEANWHILE)]);
    await other.said((line) => line === 'done');
    // In every other round it is gone again when the sleeper wakes.
    const stays = round % 2 === 1;
    if (!stays) {
      other.finish();
      await other.ended;
    }
    const before = sleeper.lines.length;
    sleeper.signal('SIGCONT');
    const woken = (is: (line: string) => boolean) =>
      sleeper.said(is, sleeper.lines.slice(0, before).filter(is).length + 6);
    await woken(stays ? (line) => line.startsWith('refused') : isNumber);
    sleeper.finish();
    await sleeper.ended;
    other.finish();
    await other.ended;
    broken.push(...sleeper.fault, ...other.fault);
    for (const line of [...sleeper.lines, ...other.lines]) {
      if (line.startsWith('refused')) count.refused++;
      if (!isNumber(line)) continue;
      count.acknowledged++;
      if (told.has(line)) count.doubled++;
      told.set(line, round);
    }
    for (const id of IDS) {
      const kept = countOnDisk(folder, id);
      count.lost += [...told.keys()].filter(
        (line) => line.startsWith(id) && Number(line.slice(2)) > kept,
      ).length;
    }
  }
  broken.push(...tree(folder).filter((path) => /^(lock|writing)|aside/.test(path)));
  return { rounds, ...count, broken };
}
