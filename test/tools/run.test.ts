/** Which bundle is run: never one that is older than what it is made of. */
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { expect, it } from 'vitest';

const BUILT = 1_800_000_000;

/** What is run in a project of which these files are so many seconds younger than its bundle. */
function ran(younger: Readonly<Record<string, number>>, tools: 'all' | 'none' = 'all'): string {
  const root = mkdtempSync(join(tmpdir(), 'run-'));
  const files = {
    'dist/main.js': "process.stdout.write('run');",
    'dist/built': '',
    'src/one/main.ts': '',
    'commands/index.ts': '',
    'package-lock.json': '{}',
    'tools/code.cjs': '',
    'tools/start.cjs': '',
    'tools/build.mjs': "export const bundle = () => Promise.resolve(process.stdout.write('built, '));",
    ...(tools === 'all' ? { 'node_modules/esbuild/index.js': '' } : {}),
  };
  for (const [path, text] of Object.entries(files)) {
    const to = join(root, path);
    mkdirSync(dirname(to), { recursive: true });
    writeFileSync(to, text);
    const at = BUILT + (path === 'dist/built' ? 0 : (younger[path] ?? -60));
    utimesSync(to, at, at);
  }
  copyFileSync('tools/run.cjs', join(root, 'tools/run.cjs'));
  return execFileSync(process.execPath, [join(root, 'tools/run.cjs')], { cwd: root }).toString();
}

it('one that is younger than its sources is run, an older one is made anew first', () => {
  expect(ran({})).toBe('run');
  expect(ran({ 'src/one/main.ts': 1 })).toBe('built, run');
  expect(ran({ 'package-lock.json': 1 })).toBe('built, run');
});

it('one is run as it stands where what builds was taken away after it was built, which writes the list of packages anew', () => {
  expect(ran({ 'package-lock.json': 1 }, 'none')).toBe('run');
  // A source that is younger is another matter.
  expect(ran({ 'commands/index.ts': 1, 'package-lock.json': 1 }, 'none')).toBe('built, run');
});
