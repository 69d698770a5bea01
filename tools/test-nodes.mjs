// Runs the tests on each Node that people have, a line each: `npm run test:nodes`, `npm run test:nodes -- 24 26 test/rooms/terminal`.
// A number is a version of Node, anything else a test file or folder. Node itself comes from the registry's package `node`.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const args = process.argv.slice(2);
const isVersion = (arg) => /^\d+(\.\d+){0,2}$/.test(arg);
const asked = args.filter(isVersion);
const versions = asked.length > 0 ? asked : ['20', '22', '24', '26'];
const files = args.filter((arg) => !isVersion(arg));

/** Runs a program to its end; resolves with its status and all it said. */
function run(program, given, env = process.env) {
  return new Promise((resolve) => {
    const child = spawn(program, given, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (said += text));
    child.on('error', (error) => resolve({ status: 1, said: error.message }));
    child.on('close', (status) => resolve({ status, said }));
  });
}

/** The names of the tests that failed, with their files. */
const failed = (report) =>
  report.testResults.flatMap(({ name, message, assertionResults }) => {
    const here = assertionResults.filter(({ status }) => status === 'failed').map(({ fullName }) => fullName);
    // A file that cannot be loaded has no tests that failed.
    return (here.length === 0 && message !== '' ? [message.split('\n')[0]] : here).map(
      (test) => `  ${relative(root, name)}: ${test}`,
    );
  });

async function tested(version, folder) {
  const installed = await run('npm', [
    ...['install', '--no-audit', '--no-fund', '--no-save', '--prefix', folder],
    `node@${version}`,
  ]);
  // First in the path: what the tests start as `node` or through npm is this one too.
  const bin = join(folder, 'node_modules', '.bin');
  const env = { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}` };
  const { said } = installed.status === 0 ? await run(join(bin, 'node'), ['--version']) : installed;
  if (installed.status !== 0 || !new RegExp(`^v${version}\\.`).test(`${said.trim()}.`))
    return { line: `Node ${version}: could not be installed. ${said.trim()}`, good: false };
  const report = join(folder, 'report.json');
  const began = Date.now();
  const vitest = join(root, 'node_modules', 'vitest', 'vitest.mjs');
  const ran = await run(
    join(bin, 'node'),
    [vitest, 'run', '--reporter=json', `--outputFile=${report}`, ...files],
    env,
  );
  const took = `${((Date.now() - began) / 1000).toFixed(0)} s`;
  let results;
  try {
    results = JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    return { line: `Node ${said.trim().slice(1)}: the tests did not run. ${ran.said.trim()}`, good: false };
  }
  const { numPassedTests: passed, numFailedTests: wrong, numPendingTests: skipped } = results;
  const good = ran.status === 0 && results.success;
  const counts = `${passed} passed, ${wrong} failed${skipped > 0 ? `, ${skipped} skipped` : ''}, ${took}`;
  return { line: [`Node ${said.trim().slice(1)}: ${counts}`, ...failed(results)].join('\n'), good };
}

for (const version of versions) {
  const folder = mkdtempSync(join(tmpdir(), `node-${version}-`));
  try {
    const { line, good } = await tested(version, folder);
    process.stdout.write(`${line}\n`);
    if (!good) process.exitCode = 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
