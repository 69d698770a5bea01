/** The code blocks of DEVELOPERS.md that say which file they are: as modules, without such files lying about. */
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const root = dirname(import.meta.dirname);

/** A block of the page: it begins with the file that it would be, `// commands/yardage/weave.ts`. */
const BLOCK = /```ts\n\/\/ (\S+\.ts)\n([^]*?)```/g;

/** The text of each such file by its path in this project. */
export const pageFiles = (): ReadonlyMap<string, string> =>
  new Map(
    [...readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').matchAll(BLOCK)].map(([, path = '', text = '']) => [
      join(root, path),
      text,
    ]),
  );

/** For the test runner: an import of one of these files finds the text on the page. */
export const pageModules = () => {
  const files = pageFiles();
  return {
    name: 'modules of DEVELOPERS.md',
    enforce: 'pre' as const,
    resolveId(id: string, from?: string) {
      const path = id.startsWith('.') && from !== undefined ? join(dirname(from), id) : id;
      return files.has(path) ? path : undefined;
    },
    load: (id: string) => files.get(id),
  };
};
