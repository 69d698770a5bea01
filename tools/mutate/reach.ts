/** Which sources a test file imports, itself or through others. */
import { existsSync, readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';

const IMPORT = /(?:\bfrom|\bimport)\s*\(?\s*'(\.[^']+\.ts)'/g;
const imports = new Map<string, string[]>();

function importsOf(file: string): string[] {
  let known = imports.get(file);
  if (!known) {
    const text = readFileSync(file, 'utf8');
    known = [...text.matchAll(IMPORT)]
      .map(([, path]) => resolve(dirname(file), path ?? ''))
      .filter((path) => existsSync(path));
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
