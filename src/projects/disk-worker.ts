/**
 * Reads documents and puts them in their places, for `disk-thread.ts`. Here nobody waits for a step of the disk but who asked for it:
 * all steps are taken at once, and only where the disk is to keep something, which takes long, others go on meanwhile.
 */
import {
  closeSync,
  copyFileSync,
  fsync,
  fsyncSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { promisify } from 'node:util';
import { parentPort } from 'node:worker_threads';
import type { FromDisk, PassedError, Read, ToDisk } from './disk-thread.ts';
import { codeOf, FolderSyncs, place, type Placed, type PlacingDisk } from './placing.ts';

const synced = promisify(fsync);

/** Documents that are being put in their places. */
let inHand = 0;

/** Has the disk keep a file. Where nobody else waits, nothing is gained by going on meanwhile, and another thread would have to be woken. */
const kept = (file: number): Promise<void> | void => (inHand > 1 ? synced(file) : fsyncSync(file));

/** What a step throws, it rejects with: all of them are asynchronous, and none of them waits. */
/* eslint-disable @typescript-eslint/require-await */
const atOnce: PlacingDisk = {
  open: async (path, flags, mode) => {
    const file = openSync(path, flags, mode);
    return {
      write: async (bytes, from, length, at) => ({ bytesWritten: writeSync(file, bytes, from, length, at) }),
      sync: async () => kept(file),
      close: async () => closeSync(file),
    };
  },
  link: async (from, to) => linkSync(from, to),
  copyFile: async (from, to) => copyFileSync(from, to),
  rename: async (from, to) => renameSync(from, to),
  rm: async (path, options) => rmSync(path, options),
};
/* eslint-enable @typescript-eslint/require-await */

const syncs = new FolderSyncs(atOnce);

const passed = (error: unknown): PassedError => ({
  message: error instanceof Error ? error.message : String(error),
  code: codeOf(error),
});

function read(path: string): Read {
  try {
    return { is: 'read', text: readFileSync(path, 'utf8') };
  } catch (error) {
    return { is: 'not-read', error };
  }
}

let all: (readonly [number, Placed | Read])[] = [];
/** What is done at the same time is told together. */
function tell(number: number, done: Placed | Read): void {
  const told = 'error' in done ? { ...done, error: passed(done.error) } : done;
  if (all.push([number, told]) > 1) return;
  queueMicrotask(() => {
    const telling: FromDisk = all;
    all = [];
    parentPort?.postMessage(telling);
  });
}

parentPort?.on('message', (asked: ToDisk) => {
  for (const [number, what] of asked) {
    if (typeof what === 'string') {
      tell(number, read(what));
      continue;
    }
    inHand++;
    void place(atOnce, syncs, what).then((placed) => {
      inHand--;
      tell(number, placed);
    });
  }
});
