/** A process that counts, and says each number once it is acknowledged; run by the tests, killed by some. */
import { FileStore } from '../../../src/projects/file-store.ts';
import { DiskThread } from '../../../src/projects/disk-thread.ts';
import { countUp } from '../kinds.ts';

const [folder = '', stays, ids = '', times = '0'] = process.argv.slice(2);
// Whoever waits here waits as long as the test does: how soon a turn comes is the machine's to say.
const store = await FileStore.open({
  folder,
  stays: stays !== 'lazy',
  patience: 60_000,
  ...(stays === 'with a thread' ? { thread: new DiskThread() } : {}),
});
process.stdout.write('open\n');
await Promise.all(
  ids.split(',').map(async (id) => {
    for (let i = 0; i < Number(times); i++) {
      const n = await countUp(store, id);
      process.stdout.write(`${id} ${n}\n`);
    }
  }),
);
await store.close();
