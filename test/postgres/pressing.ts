/**
 * A process that presses on what a store keeps, for so many seconds or until it is killed, and says what came of it: each press, for
 * whoever counts them, or how many there were.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import { DiskThread } from '../../src/projects/disk-thread.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { NotSaved } from '../../src/projects/not-saved.ts';
import { PostgresStore } from '../../src/projects/postgres/store.ts';
import type { Store } from '../../src/projects/store.ts';
import { DIARIES, more, TALLIES } from '../projects/kinds.ts';
import { nothingCounted, pressUntil } from './counted.ts';

const [place = '', who = '', inFlight = '1', mode = '', seconds = '1', id = 'd'] = process.argv.slice(2);
/** Opens it, however long it takes: what is killed while this starts is somebody else's matter. */
async function opened(): Promise<Store> {
  for (;;) {
    try {
      const store = place.startsWith('postgres:')
        ? await PostgresStore.open({ url: place })
        : await FileStore.open({ folder: place, stays: true, thread: new DiskThread() });
      // What is remembered is not what is measured.
      await store.read(DIARIES, id);
      return store;
    } catch (error) {
      if (!(error instanceof NotSaved)) throw error;
      await sleep(100);
    }
  }
}

const store = await opened();
const all = Array.from({ length: Number(inFlight) }, (_, index) => index);
process.stdout.write('open\n');
// Whoever starts several has them begin at the same moment.
if (mode !== 'each') await new Promise((go) => process.stdin.once('data', go));
const until = performance.now() + Number(seconds) * 1000;
const enough = () => performance.now() > until;

if (mode === 'each') {
  const counted = nothingCounted();
  let said = 0;
  for (const kind of ['done', 'refused', 'unknown'] as const)
    counted[kind].add = (by) => {
      said++;
      process.stdout.write(`${kind} ${by}\n`);
      return counted[kind];
    };
  await Promise.all(all.map((maker) => pressUntil(store, `${who}-${maker}`, enough, counted)));
  process.stdout.write(`said ${said}\n`);
} else {
  let done = 0;
  await Promise.all(
    all.map(async (maker) => {
      for (let n = 0; !enough(); n++, done++)
        if (mode === 'one')
          await store.change(DIARIES, id, () => ({ keep: undefined, add: [{ by: who, n }], tell: 0 }));
        else await store.change(TALLIES, `${who}.${maker}`, more);
    }),
  );
  process.stdout.write(`presses ${done}\n`);
}
await store.close();
process.exit(0);
