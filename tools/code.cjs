// Asks a bundle what is asked of it mostly, and keeps beside it what V8 has compiled for that: `node tools/code.cjs FOLDER`. Each question
// is asked in a process of its own, and what is compiled of a file is what the first needed that loaded it: more would be read at each start.
'use strict';
const { spawnSync } = require('node:child_process');
const { existsSync, mkdtempSync, rmSync, writeFileSync } = require('node:fs');
const { tmpdir } = require('node:os');
const { join, resolve } = require('node:path');

const QUESTIONS = [
  '/stitches row shape:diagonal size:12 row:9',
  'how many 15 cm squares for a 120 by 160 cm blanket with a 4 cm border',
];

const [node, , folder, question] = process.argv;
const main = resolve(folder, 'main.js');

/** Asks in this process, and keeps what was compiled. */
function keepCompiled() {
  process.argv = [node, main, 'ask', question];
  const { files, codeOf } = require(main);
  process.on('exit', () => {
    if (process.exitCode !== 0) return;
    for (const [file, script] of files)
      if (!existsSync(codeOf(file))) writeFileSync(codeOf(file), script.createCachedData());
  });
}

/** Has each question asked by somebody who has saved something, as most have who ask. */
function askAll() {
  const data = mkdtempSync(join(tmpdir(), 'code-'));
  const options = { stdio: 'ignore', env: { ...process.env, DATA_DIR: data, FILES_DIR: data } };
  spawnSync(node, [main, 'ask', '/motif define name:moss shape:diagonal size:12'], options);
  for (const one of QUESTIONS) spawnSync(node, [__filename, folder, one], options);
  rmSync(data, { recursive: true, force: true });
}

if (question === undefined) askAll();
else keepCompiled();
