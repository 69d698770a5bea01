/** One run of vitest over the instrumented sources, in a process of its own that can be ended when a mutant hangs. */
import { readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { startVitest, type TestSpecification } from 'vitest/node';

/** What this process is handed, as JSON in the file that MUTATE_SESSION names. */
export interface Session {
  /** Sources by their full path, and where the instrumented text of each lies. */
  readonly instrumented: Readonly<Record<string, string>>;
  /** The test files, in the order in which they are to judge. */
  readonly tests: readonly string[];
}

const { instrumented, tests } = JSON.parse(readFileSync(process.env['MUTATE_SESSION']!, 'utf8')) as Session;
const root = process.cwd();
const inOrder = (one: TestSpecification) => tests.indexOf(relative(root, one.moduleId));

const vitest = await startVitest(
  'test',
  [...tests],
  {
    // The projects of the settings' file would run with a runner and an isolation of their own.
    config: false,
    watch: false,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    isolate: false,
    fileParallelism: false,
    maxWorkers: 1,
    pool: 'forks',
    runner: join(import.meta.dirname, 'judge.ts'),
    setupFiles: [join(import.meta.dirname, 'setup.ts')],
    reporters: [
      {
        onTestModuleEnd: (module) => {
          if (!module.ok()) process.stderr.write(`${module.relativeModuleId} fails as it is\n`);
        },
      },
    ],
    sequence: {
      sequencer: class {
        shard = (files: TestSpecification[]) => files;
        sort = (files: TestSpecification[]) => files.toSorted((a, b) => inOrder(a) - inOrder(b));
      },
    },
  },
  {
    plugins: [
      {
        name: 'instrumented',
        enforce: 'pre',
        load: (id) => {
          const text = instrumented[id];
          return text === undefined ? null : readFileSync(text, 'utf8');
        },
      },
    ],
  },
);
await vitest.close();
