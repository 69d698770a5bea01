/**
 * Puts documents in their places, for `writer.ts`. Here nobody waits for a step of the disk but what is to be written: all steps are
 * taken at once, and only where the disk is to keep something, which takes long, others go on meanwhile.
 */
import { closeSync, copyFileSync, fsync, linkSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { promisify } from 'node:util';
import { parentPort } from 'node:worker_threads';
import { codeOf, FolderSyncs, place, type Placed, type PlacingDisk } from './placing.ts';
import type { FromWriter, PassedError, ToWriter } from './writer.ts';

const synced = promisify(fsync);

/** What a step throws, it rejects with: all of them are asynchronous, and none of them waits. */
/* eslint-disable @typescript-eslint/require-await */
const atOnce: PlacingDisk = {
  open: async (path, flags, mode) => {
    const file = openSync(path, flags, mode);
    return {
      write: async (bytes, from, length, at) => ({ bytesWritten: writeSync(file, bytes, from, length, at) }),
      sync: () => synced(file),
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

let done: (readonly [number, Placed])[] = [];
function tell(number: number, placed: Placed): void {
  const told: Placed = placed.is === 'placed' ? placed : { ...placed, error: passed(placed.error) };
  if (done.push([number, told]) > 1) return;
  queueMicrotask(() => {
    const all: FromWriter = done;
    done = [];
    parentPort?.postMessage(all);
  });
}

parentPort?.on('message', (asked: ToWriter) => {
  for (const [number, placing] of asked)
    void place(atOnce, syncs, placing).then((placed) => tell(number, placed));
});
