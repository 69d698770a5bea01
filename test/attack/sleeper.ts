/** A process that counts without end on a machine of its own name, and says what it was told; stopped and woken by the tests. */
import { createInterface } from 'node:readline';
import { FileStore } from '../../src/projects/file-store.ts';
import { NotSaved } from '../../src/projects/not-saved.ts';
import { thisMachine } from '../../src/projects/lock.ts';
import { DiskThread } from '../../src/projects/disk-thread.ts';
import { countUp } from '../projects/kinds.ts';

const [folder = '', host = '', times = '0'] = process.argv.slice(2);
const say = (line: string) => process.stdout.write(`${line}\n`);
const store = await FileStore.open({
  folder,
  stays: true,
  machine: { ...thisMachine(), host },
  times: { touch: 40, silent: 200 },
  thread: new DiskThread(),
});
const stop = { asked: false };
createInterface({ input: process.stdin }).on('line', () => (stop.asked = true));
say('open');
await Promise.all(
  ['a', 'b', 'c'].map(async (id) => {
    for (let done = 0; !stop.asked && done < Number(times);) {
      try {
        say(`${id} ${await countUp(store, id)}`);
        done++;
      } catch (error) {
        if (!(error instanceof NotSaved)) throw error;
        say(`refused ${error.code}`);
        await new Promise((wait) => setTimeout(wait, 5));
      }
    }
  }),
);
say('done');
if (!stop.asked) await new Promise<void>((end) => process.stdin.once('data', () => end()));
await store.close();
process.exit(0);
