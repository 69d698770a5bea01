/**
 * Work that takes longer than the thread that listens to people has, done in a thread of its own, one thing after the other. The
 * thread starts with the first thing that is asked of it and is started again when it dies.
 */
import type { Worker } from 'node:worker_threads';
import { startThread, type ThreadFile } from '../thread.ts';

/** What comes back: what was made, or what went wrong. */
export type Reply = { readonly made: Uint8Array } | { readonly fault: string };

export class Beside<Ask> {
  private worker: Worker | undefined;
  /** The thing in hand and those that wait: the next starts when the one before has settled. */
  private last: Promise<unknown> = Promise.resolve();

  constructor(
    /** What is made, in words: `the picture`. */
    private readonly what: string,
    private readonly from: ThreadFile,
    /** The longest that one thing may take. */
    private readonly timeOutMs: number,
  ) {}

  private start(): Worker {
    const started = startThread(this.from);
    started.on('error', () => undefined); // told to the thing in hand; without a listener it would end the process
    started.once('exit', () => {
      if (this.worker === started) this.worker = undefined;
    });
    return started;
  }

  private ask(asked: Ask): Promise<Uint8Array> {
    const at = (this.worker ??= this.start());
    return new Promise<Uint8Array>((done, failed) => {
      const settle = () => {
        clearTimeout(timer);
        at.off('message', heard).off('error', broke).off('exit', ended);
        at.unref();
      };
      const give = (error: Error) => {
        settle();
        if (this.worker === at) this.worker = undefined;
        void at.terminate();
        failed(error);
      };
      const heard = (reply: Reply) => {
        // What stumbled may have lost hold of its memory: the next gets a fresh thread.
        if ('fault' in reply) {
          give(new Error(`${this.what} was not made: ${reply.fault}`));
        } else {
          settle();
          done(reply.made);
        }
      };
      const broke = (error: Error) => give(new Error(`the thread of ${this.what} broke`, { cause: error }));
      const ended = (code: number) => give(new Error(`the thread of ${this.what} ended with ${code}`));
      const timer = setTimeout(
        () => give(new Error(`${this.what} took longer than ${this.timeOutMs} ms`)),
        this.timeOutMs,
      );
      at.on('message', heard).once('error', broke).once('exit', ended);
      at.ref();
      at.postMessage(asked);
    });
  }

  /** Things are made one after the other, in the order asked. Rejects with a plain Error where it fails; the next then gets a fresh thread. */
  make(asked: Ask): Promise<Uint8Array> {
    const made = this.last.then(() => this.ask(asked));
    this.last = made.catch(() => undefined);
    return made;
  }

  /** Ends the thread, after what was already asked for. What is asked for later starts it again. */
  async close(): Promise<void> {
    await this.last;
    const ending = this.worker;
    this.worker = undefined;
    await ending?.terminate();
  }
}
