// Runs the bundle, making it anew when a source is younger: nobody ever runs yesterday's code by accident.
import { readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

function newest(folder) {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}

function builtAt() {
  try {
    return statSync(join(root, 'dist', 'built')).mtimeMs;
  } catch {
    return 0;
  }
}

const sources = Math.max(
  newest(join(root, 'src')),
  newest(join(root, 'commands')),
  ...['package-lock.json', 'tools/build.mjs', 'tools/code.cjs', 'tools/start.cjs'].map(
    (file) => statSync(join(root, file)).mtimeMs,
  ),
);
if (builtAt() < sources) await (await import('./build.mjs')).bundle();
await import(pathToFileURL(join(root, 'dist', 'main.js')).href);
