/** Bundles a script of this folder, so that each of many processes starts at once, and runs it. */
import { spawn } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join, resolve } from 'node:path';
import { build } from 'esbuild';

/** `name` is a script of this folder, or a path to one. Beside it lies the thread that a store may have. */
export async function bundled(name: string): Promise<string> {
  const outdir = mkdtempSync(join(tmpdir(), 'child-'));
  const script = basename(name, '.ts');
  await build({
    entryPoints: {
      [script]: resolve(import.meta.dirname, name.endsWith('.ts') ? name : `${name}.ts`),
      'disk-worker': resolve(import.meta.dirname, '../../../src/projects/disk-worker.ts'),
    },
    outdir,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    logLevel: 'error',
    // What is written for require asks for it.
    banner: {
      js: "import { createRequire as bannerRequire } from 'node:module'; const require = bannerRequire(import.meta.url);",
    },
    external: ['pg-native'],
  });
  return join(outdir, `${script}.mjs`);
}

export interface Ran {
  readonly lines: string[];
  readonly errors: string;
  readonly status: number | null;
}

/** Runs it to its end; `heard` may kill it at any line. */
export function run(
  script: string,
  args: readonly string[],
  heard: (line: string, kill: () => void) => void = () => undefined,
): Promise<Ran> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    const lines: string[] = [];
    let open = '';
    let errors = '';
    child.stderr.on('data', (data) => (errors += String(data)));
    child.stdout.on('data', (data) => {
      const parts = (open + String(data)).split('\n');
      open = parts.pop() ?? '';
      for (const line of parts) {
        lines.push(line);
        heard(line, () => child.kill('SIGKILL'));
      }
    });
    child.on('close', (status) => done({ lines, errors, status }));
  });
}
