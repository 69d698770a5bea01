// Bundles src/main.ts into dist/, so that a single question starts in a fraction of a second:
// importing the sources and the whole of mathjs one by one costs several times as much.
import { mkdtempSync, renameSync, rmSync, existsSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
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

export async function bundle() {
  const { build } = await builder();
  // Built beside and moved in whole: two processes that both find a stale bundle cannot read half of one.
  const began = new Date();
  const fresh = mkdtempSync(join(root, 'dist-'));
  try {
    await build({
      absWorkingDir: root,
      entryPoints: {
        main: 'src/main.ts',
        'picture-worker': 'src/pictures/worker.ts',
        'paper-worker': 'src/paper/worker.ts',
      },
      outdir: fresh,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'esm',
      splitting: true,
      minifySyntax: true,
      sourcemap: true,
      // These read their own files or threads at run time and stay in node_modules.
      external: [
        'discord.js',
        'pino',
        '@resvg/resvg-wasm',
        'dejavu-fonts-ttf',
        'dotenv',
        'pdfkit',
        'pg',
        'undici',
      ],
      logLevel: 'warning',
    });
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
