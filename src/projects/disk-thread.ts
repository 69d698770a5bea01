/**
 * What a process that stays asks of the disk for its documents. What takes the disk its time is done by a thread of its own: it costs
 * the thread that listens to people one message, and does not hold it up. A short file that the system has at hand is read at once.
 */
import { closeSync, openSync, readSync } from 'node:fs';
import type { Worker } from 'node:worker_threads';
import { startThread } from '../thread.ts';
import type { Placed, Placing } from './placing.ts';

/** The thread ended in the middle of it: whether it was done is not known. */
export interface Lost {
  readonly is: 'lost';
  readonly error: unknown;
}

/** What a document asks of the disk, whoever does it. */
export interface DocumentDisk {
  /** Never rejects. */
  place(placing: Placing): Promise<Placed | Lost>;
  /** All that a file says. Rejects with what the system says. */
  read(path: string): Promise<string>;
  /** Ends what it has; nobody waits for anything any more. */
  close(): Promise<void>;
}

/** What the thread is told: files to read, and placings, each with a number that what came of it has as well. */
export type ToDisk = readonly (readonly [number, string | Placing])[];
/** An error as it passes from thread to thread: its code would be lost. */
export interface PassedError {
  readonly message: string;
  readonly code: string | undefined;
}
export type Read =
  { readonly is: 'read'; readonly text: string } | { readonly is: 'not-read'; readonly error: unknown };
export type FromDisk = readonly (readonly [number, Placed | Read])[];

/** An error with its code, as it came from the other thread. */
function errorOf(passed: unknown): Error {
  const { message, code } = passed as PassedError;
  return Object.assign(new Error(message), code === undefined ? {} : { code });
}

/** Nearly every document has room in this, in bytes. */
const SHORT = 32_768;
/**
 * A disk that takes so long over a short file does not have it at hand, ms; and how long it is asked for nothing then: long enough that
 * what it takes is little of all time, however slow it is.
 */
const SLOW_MS = 5;
const slowFor = (took: number) => 50 * took;

const room = Buffer.allocUnsafe(SHORT);
const NEWLINE = 10;

/** What a file says; undefined where it is long. Throws what the system says. */
function readShort(path: string): string | undefined {
  const file = openSync(path, 'r');
  try {
    for (let length = 0; ;) {
      const got = readSync(file, room, length, SHORT - length, length);
      length += got;
      if (length === SHORT) return undefined;
      // Some disks give less than there is. A document is one line: where that has been read to its end nobody need ask for more.
      const isDone = path.endsWith('.json') && room.indexOf(NEWLINE) === length - 1;
      if (got === 0 || isDone) return room.toString('utf8', 0, length);
    }
  } finally {
    closeSync(file);
  }
}

const startDisk = () =>
  startThread({
    source: new URL('./disk-worker.ts', import.meta.url),
    bundled: 'disk-worker.mjs',
    here: import.meta.url,
  });

/** Starts its thread when something is asked of it, and again when that has died. */
export class DiskThread implements DocumentDisk {
  private thread: Worker | undefined;
  private readonly waiting = new Map<number, (done: Placed | Read | Lost) => void>();
  private next = 0;
  private toTell: (readonly [number, string | Placing])[] = [];
  /** Until when the disk is taken to be slow. */
  private slowUntil = -Infinity;

  constructor(private readonly start: () => Worker = startDisk) {}

  async place(placing: Placing): Promise<Placed | Lost> {
    return (await this.ask(placing)) as Placed | Lost;
  }

  async read(path: string): Promise<string> {
    // Waking another thread costs several times as much as reading what the system has at hand.
    const text = performance.now() < this.slowUntil ? undefined : this.readAtOnce(path);
    return text ?? this.readThere(path);
  }

  /** Reads a short file here; undefined where it is longer. A disk that takes its time over it is left to the thread for a while. */
  private readAtOnce(path: string): string | undefined {
    const from = performance.now();
    try {
      return readShort(path);
    } finally {
      const to = performance.now();
      if (to - from > SLOW_MS) this.slowUntil = to + slowFor(to - from);
    }
  }

  private async readThere(path: string): Promise<string> {
    // Reading changes nothing: where the thread died over something else, another one reads.
    for (let tries = 1; ; tries++) {
      const read = (await this.ask(path)) as Read | Lost;
      if (read.is === 'read') return read.text;
      if (read.is === 'not-read' || tries === 2) throw read.error as Error;
    }
  }

  private ask(asked: string | Placing): Promise<Placed | Read | Lost> {
    return new Promise((resolve) => {
      const number = this.next++;
      this.waiting.set(number, resolve);
      // What is asked for at the same time is told together.
      if (this.toTell.push([number, asked]) === 1) queueMicrotask(() => this.tell());
    });
  }

  private tell(): void {
    const told: ToDisk = this.toTell;
    this.toTell = [];
    try {
      this.thread ??= this.started();
      this.thread.ref();
      this.thread.postMessage(told);
    } catch (error) {
      // The machine has no room for a thread just now.
      for (const [number] of told) this.settle(number, { is: 'lost', error });
    }
  }

  private started(): Worker {
    const started = this.start();
    started.on('message', (heard: FromDisk) => {
      for (const [number, done] of heard)
        this.settle(number, 'error' in done ? { ...done, error: errorOf(done.error) } : done);
      if (this.waiting.size === 0) started.unref();
    });
    let why: unknown = new Error('the thread at the disk has ended');
    started.on('error', (error) => (why = error));
    started.once('exit', () => {
      this.thread = undefined;
      for (const number of [...this.waiting.keys()]) this.settle(number, { is: 'lost', error: why });
    });
    return started;
  }

  private settle(number: number, done: Placed | Read | Lost): void {
    const resolve = this.waiting.get(number);
    this.waiting.delete(number);
    resolve?.(done);
  }

  async close(): Promise<void> {
    await this.thread?.terminate();
  }
}
