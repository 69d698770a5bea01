/** Reads the environment, opens the store, opens a room. */
import { randomUUID } from 'node:crypto';
import { registry } from '../commands/index.ts';
import { MemoryStore } from './projects/memory.ts';
import { Projects } from './projects/projects.ts';
import { askOnce, talk } from './rooms/terminal/run.ts';

const [mode, ...args] = process.argv.slice(2);

const running = {
  registry,
  projects: new Projects(new MemoryStore()),
  files: 'pictures',
  fault: (error: unknown) => {
    const id = randomUUID().slice(0, 8);
    process.stderr.write(`${id} ${String(error)}\n`);
    return id;
  },
};

process.exitCode =
  mode === 'ask'
    ? await askOnce(args, running)
    : await talk(running, [
        'Loopwright, in the terminal room.',
        'Try: /stitches row shape:diagonal size:12 row:9',
      ]);
