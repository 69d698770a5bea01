// Runs the bundle, making it anew when a source is younger: nobody ever runs yesterday's code by accident.
'use strict';
const { readdirSync, statSync } = require('node:fs');
const { dirname, join } = require('node:path');

const root = dirname(__dirname);
const main = join(root, 'dist', 'main.js');

// Every start waits for this: names alone are read, as entries with their types and paths that are joined take twice as long.
function newest(folder) {
  let latest = 0;
  for (const name of readdirSync(folder)) {
    const path = `${folder}/${name}`;
    const found = statSync(path);
    latest = Math.max(latest, found.isDirectory() ? newest(path) : found.mtimeMs);
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

const changedAt = (file) => statSync(join(root, file)).mtimeMs;

/** Where only building's own packages were taken away afterwards, the list of packages is younger than the bundle and has nothing to say to it. */
function canBuild() {
  try {
    require.resolve('esbuild', { paths: [root] });
    return true;
  } catch {
    return false;
  }
}

const sources = Math.max(
  newest(join(root, 'src')),
  newest(join(root, 'commands')),
  ...['tools/build.mjs', 'tools/code.cjs', 'tools/start.cjs'].map(changedAt),
);
const built = builtAt();
if (built >= sources && (built >= changedAt('package-lock.json') || !canBuild())) require(main);
else void import('./build.mjs').then(({ bundle }) => bundle()).then(() => require(main));
