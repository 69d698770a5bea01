// Starts the program; the bundle has this as its main.js. What V8 made of the program when it was bundled lies beside it, so that
// a single question does not wait for compiling. Where that is missing, was made by another Node or cannot be read, the program is
// compiled as it stands, which takes longer and is the same program.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { Script } from 'node:vm';

const here = import.meta.url;
const outside = createRequire(here);

function compiled() {
  try {
    return readFileSync(new URL(`./program.${process.versions.v8}-${process.arch}.code`, here));
  } catch {
    return undefined;
  }
}

/** A file of parts: an object with a function for each module, by its name. */
function open(file, cachedData) {
  const url = new URL(file, here);
  return new Script(readFileSync(url, 'utf16le'), { filename: fileURLToPath(url), cachedData });
}

export const program = open('./program.cjs', compiled());
const parts = program.runInThisContext();
const loaded = new Map();

function load(name) {
  const known = loaded.get(name);
  if (known) return known.exports;
  if (!name.startsWith('./')) return outside(name);
  // What not every start needs lies in files of its own.
  if (!(name in parts)) Object.assign(parts, open(name.replace(/\.js$/, '.cjs')).runInThisContext());
  const module = { exports: {} };
  loaded.set(name, module);
  parts[name](module.exports, load, module, here);
  return module.exports;
}

load('./main.js');
