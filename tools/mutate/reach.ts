/** Which sources a test file imports, itself or through others. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

const IMPORT = /(?:\bfrom|\bimport)\s*\(?\s*'(\.[^']+\.ts)'/g;
/** A folder that a file names by its URL: it may import all that is in it. */
const FOLDER = /new URL\('(\.[^']+\/)', import\.meta\.url\)/g;
const imports = new Map<string, string[]>();

function importsOf(file: string): string[] {
  let known = imports.get(file);
  if (!known) {
    const text = readFileSync(file, 'utf8');
    const from = (path = '') => resolve(dirname(file), path);
    const folders = [...text.matchAll(FOLDER)]
      .map(([, path]) => from(path))
      .filter((path) => existsSync(path));
    known = [
      ...[...text.matchAll(IMPORT)].map(([, path]) => from(path)).filter((path) => existsSync(path)),
      ...folders.flatMap((folder) =>
        readdirSync(folder, { recursive: true, encoding: 'utf8' })
          .filter((path) => path.endsWith('.ts'))
          .map((path) => join(folder, path)),
      ),
    ];
    imports.set(file, known);
  }
  return known;
}

/** How many imports lie between the file and each source that it reaches; full paths. */
export function reachOf(file: string): ReadonlyMap<string, number> {
  const steps = new Map([[resolve(file), 0]]);
  for (const [at, step] of steps)
    for (const next of importsOf(at)) if (!steps.has(next)) steps.set(next, step + 1);
  return steps;
}
