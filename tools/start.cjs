// Starts the program; the bundle has this as its main.js. What V8 made of the program when it was bundled lies beside it, so that
// a single question does not wait for compiling. Where that is missing, was made by another Node or cannot be read, the program is
// compiled as it stands, which takes longer and is the same program. It is CommonJS, as Node is slower to begin with a module.
'use strict';
const { readFileSync } = require('node:fs');
const { join } = require('node:path');
const { pathToFileURL } = require('node:url');
const { Script } = require('node:vm');

const here = pathToFileURL(__filename).href;

/** Where what this Node has compiled of a file is kept. */
const codeOf = (file) =>
  join(__dirname, file.replace(/\.cjs$/, `.${process.versions.v8}-${process.arch}.code`));

function compiled(file) {
  try {
    return readFileSync(codeOf(file));
  } catch {
    return undefined;
  }
}

const files = new Map();

/** A file of parts: an object with a function for each module, by its name. */
function open(file) {
  const filename = join(__dirname, file);
  const script = new Script(readFileSync(filename, 'latin1'), { filename, cachedData: compiled(file) });
  files.set(file, script);
  return script.runInThisContext();
}

/**
 * What takes long to load, and most questions do without: loaded when something of it is first used. Whether it was an ES module once is
 * asked by whatever imports it, and of none of these true.
 */
const LATER = new Set(['node:crypto', 'node:readline', 'jstat']);
function later(name) {
  let it;
  return new Proxy({}, { get: (_, key) => (key === '__esModule' ? undefined : (it ??= require(name))[key]) });
}

const parts = open('program.cjs');
const loaded = new Map();

function load(name) {
  const known = loaded.get(name);
  if (known) return known.exports;
  if (!name.startsWith('./')) return LATER.has(name) ? later(name) : require(name);
  // What not every start needs lies in files of its own.
  if (!(name in parts)) Object.assign(parts, open(name.replace(/\.js$/, '.cjs')));
  const module = { exports: {} };
  loaded.set(name, module);
  try {
    parts[name](module.exports, load, module, here);
  } catch (error) {
    // Half of it is none: whoever asks for it next has it loaded anew.
    loaded.delete(name);
    throw error;
  }
  return module.exports;
}

module.exports = { files, codeOf };
load('./main.js');
