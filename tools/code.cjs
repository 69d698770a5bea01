// Asks a bundle one question, in a process of its own, and keeps beside it what V8 has compiled for that: `node tools/code.cjs FOLDER`.
'use strict';
const { spawnSync } = require('node:child_process');
const { mkdtempSync, rmSync, writeFileSync } = require('node:fs');
const { tmpdir } = require('node:os');
const { join, resolve } = require('node:path');

const [node, , folder] = process.argv;
const main = resolve(folder, 'main.js');
const data = mkdtempSync(join(tmpdir(), 'code-'));
Object.assign(process.env, { DATA_DIR: data, FILES_DIR: data });
// Of somebody who has saved something, as most have who ask.
spawnSync(node, [main, 'ask', '/motif define name:moss shape:diagonal size:12'], { stdio: 'ignore' });
process.argv = [node, main, 'ask', '/stitches row shape:diagonal size:12 row:9'];
const program = require(main);
process.on('exit', () => {
  rmSync(data, { recursive: true, force: true });
  const code = join(folder, `program.${process.versions.v8}-${process.arch}.code`);
  if (process.exitCode === 0) writeFileSync(code, program.createCachedData());
});
