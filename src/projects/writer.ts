/**
 * Who puts documents in their places. A process that stays has a thread for it: each document costs the thread that listens to
 * people one message, and no step of the disk holds it up.
 */
import type { Worker } from 'node:worker_threads';
import { startThread } from '../thread.ts';
import type { Placed, Placing } from './placing.ts';

export interface Writer {
  /** Never rejects. */
  place(placing: Placing): Promise<Placed | Lost>;
  /** Ends what it has, after what it was asked for. */
  close(): Promise<void>;
}

/** The thread ended in the middle of it: whether the new file is in its place, or the old one, is not known. */
export interface Lost {
  readonly is: 'lost';
  readonly error: unknown;
}

/** What the thread is told: places to put texts in, each with a number that what came of it has as well. */
export type ToWriter = readonly (readonly [number, Placing])[];
/** An error as it passes from thread to thread: its code would be lost. */
export interface PassedError {
  readonly message: string;
  readonly code: string | undefined;
}
export type FromWriter = readonly (readonly [number, Placed])[];

/** An error with its code, as it came from the other thread. */
function errorOf(passed: unknown): Error {
  const { message, code } = passed as PassedError;
  return Object.assign(new Error(message), code === undefined ? {} : { code });
}

const startWriter = () =>
  startThread({
    source: new URL('./writer-thread.ts', import.meta.url),
    bundled: 'writer-thread.mjs',
    here: import.meta.url,
  });

/** Starts its thread when something is to be written, and again when that has died. */
export class WriterThread implements Writer {
  private thread: Worker | undefined;
  private readonly waiting = new Map<number, (placed: Placed | Lost) => void>();
  private next = 0;
  private toTell: (readonly [number, Placing])[] = [];

  constructor(private readonly startThread: () => Worker = startWriter) {}

  place(placing: Placing): Promise<Placed | Lost> {
    return new Promise((resolve) => {
      const number = this.next++;
      this.waiting.set(number, resolve);
      // What is asked for at the same time is told together.
      if (this.toTell.push([number, placing]) === 1) queueMicrotask(() => this.tell());
    });
  }

  private tell(): void {
    const told: ToWriter = this.toTell;
    this.toTell = [];
    this.thread ??= this.start();
    this.thread.ref();
    this.thread.postMessage(told);
  }

  private start(): Worker {
    const started = this.startThread();
    started.on('message', (heard: FromWriter) => {
      for (const [number, placed] of heard)
        this.settle(number, placed.is === 'placed' ? placed : { ...placed, error: errorOf(placed.error) });
      if (this.waiting.size === 0) started.unref();
    });
    let why: unknown = new Error('the thread that writes has ended');
    started.on('error', (error) => (why = error));
    started.once('exit', () => {
      this.thread = undefined;
      for (const number of [...this.waiting.keys()]) this.settle(number, { is: 'lost', error: why });
    });
    return started;
  }

  private settle(number: number, placed: Placed | Lost): void {
    const resolve = this.waiting.get(number);
    this.waiting.delete(number);
    resolve?.(placed);
  }

  async close(): Promise<void> {
    await this.thread?.terminate();
  }
}
