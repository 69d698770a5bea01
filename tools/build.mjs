// Bundles src/main.ts into dist/, so that a single question starts in a fraction of a second:
// importing the sources and the whole of mathjs one by one costs several times as much.
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  mkdtempSync,
  renameSync,
  rmSync,
  existsSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** What bundles is needed only here: an installation that runs the program can do without. */
async function builder() {
  try {
    return await import('esbuild');
  } catch (error) {
    if (error.code !== 'ERR_MODULE_NOT_FOUND') throw error;
    process.stderr.write(
      'The program cannot be built here, as esbuild is not installed: run npm ci --include=dev, and npm prune --omit=dev after it to leave out what only building needs.\n',
    );
    process.exit(1);
  }
}

/** These read their own files or threads at run time, are loaded by others too, or are seldom needed, and stay in node_modules. */
const OUTSIDE = [
  'discord.js',
  'pino',
  '@resvg/resvg-wasm',
  'dejavu-fonts-ttf',
  'dotenv',
  'jstat',
  'pdfkit',
  'pg',
  'undici',
];

const COMMON = {
  absWorkingDir: root,
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  minifySyntax: true,
  external: OUTSIDE,
  logLevel: 'warning',
};

/** The modules that a module cannot be run without, its own name first. */
function neededBy(name, outputs, needed = new Set()) {
  if (needed.has(name)) return needed;
  needed.add(name);
  const { imports } = outputs[name];
  for (const { kind, path } of imports)
    if (kind === 'import-statement' && path in outputs) neededBy(path, outputs, needed);
  return needed;
}

/**
 * The program as `start.cjs` loads it: what every start needs in one file, whose code can be kept compiled, and what is loaded when
 * it is asked for in others. Each is an object with a function for each module.
 */
async function writeProgram({ build, transform }, fresh) {
  const { outputFiles, metafile } = await build({
    ...COMMON,
    entryPoints: { main: 'src/main.ts' },
    outdir: fresh,
    splitting: true,
    write: false,
    metafile: true,
  });
  const { outputs } = metafile;
  const named = new Map(Object.keys(outputs).map((name) => [basename(name), name]));
  const first = neededBy(named.get('main.js'), outputs);
  const files = new Map();
  for (const { path, text } of outputFiles) {
    const name = basename(path);
    const { code } = await transform(text, {
      format: 'cjs',
      platform: 'node',
      target: 'node20',
      charset: 'ascii',
      // Whatever is loaded later comes through the same door.
      supported: { 'dynamic-import': false },
      define: { 'import.meta.url': 'here' },
    });
    const file = first.has(named.get(name)) ? 'program.cjs' : name.replace(/\.js$/, '.cjs');
    const part = `${JSON.stringify(`./${name}`)}: function (exports, require, module, here) {\n${code}\n}`;
    files.set(file, [...(files.get(file) ?? []), part]);
  }
  for (const [file, parts] of files) {
    const text = `({\n${parts.join(',\n')}\n})\n`;
    // One byte a character, which is there at once: UTF-8 is decoded first. esbuild writes all others as
    // escapes but those in patterns, and in String.raw, which is there for patterns alone.
    const ascii = text.replace(
      /[^\x00-\x7f]/g,
      (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`,
    );
    writeFileSync(join(fresh, file), ascii, 'latin1');
  }
}

/** What runs in threads of its own. */
const writeThreads = ({ build }, fresh) =>
  build({
    ...COMMON,
    entryPoints: {
      'picture-worker': 'src/pictures/worker.ts',
      'paper-worker': 'src/paper/worker.ts',
      'disk-worker': 'src/projects/disk-worker.ts',
    },
    outdir: fresh,
    outExtension: { '.js': '.mjs' },
    sourcemap: true,
  });

export async function bundle() {
  const esbuild = await builder();
  // Built beside and moved in whole: two processes that both find a stale bundle cannot read half of one.
  const began = new Date();
  const fresh = mkdtempSync(join(root, 'dist-'));
  try {
    await writeProgram(esbuild, fresh);
    await writeThreads(esbuild, fresh);
    copyFileSync(join(root, 'tools', 'start.cjs'), join(fresh, 'main.js'));
    writeFileSync(join(fresh, 'package.json'), '{"type":"commonjs"}\n');
    // Without it every start compiles for itself: a machine on which this fails has a program all the same.
    spawnSync(process.execPath, [join(root, 'tools', 'code.cjs'), fresh], {
      stdio: 'ignore',
      timeout: 60_000,
    });
    // Made for its owner alone; whoever runs the program need not be the one who built it.
    chmodSync(fresh, 0o777 & ~process.umask());
    const stamp = join(fresh, 'built');
    writeFileSync(stamp, '');
    // A source that was saved while it was read may not be in the bundle: the bundle is as old as its beginning.
    utimesSync(stamp, began, began);
    const dist = join(root, 'dist');
    const old = join(root, `dist-old-${process.pid}`);
    if (existsSync(dist)) renameSync(dist, old);
    try {
      renameSync(fresh, dist);
    } catch (error) {
      if (!existsSync(join(dist, 'built'))) throw error; // another process was first; its bundle is as good
    }
    rmSync(old, { recursive: true, force: true });
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await bundle();
