// Looks at what the project rests on: `npm run audit:lock` at the lock file, `npm run audit` also at what the registry knows of faults.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { faultsOf, partsOf, type Lock, type Package } from './lock-faults.ts';

const read = (name: string) =>
  JSON.parse(readFileSync(new URL(`../${name}`, import.meta.url), 'utf8')) as unknown;
const lock = read('package-lock.json') as Lock;
const faults = faultsOf(lock, read('package.json') as Package);
for (const fault of faults) process.stdout.write(`${fault}\n`);
process.stdout.write(
  `Lock file: ${partsOf(lock).length} parts, ${partsOf(lock, { production: true }).length} of them in production, ${faults.length} faults.\n`,
);
let good = faults.length === 0;

if (process.argv.includes('--registry')) {
  const { stdout } = spawnSync('npm', ['audit', '--json'], { encoding: 'utf8' });
  let report: { metadata?: { vulnerabilities: Record<string, number> }; message?: string } = {};
  try {
    report = JSON.parse(stdout) as typeof report;
  } catch {
    // said below
  }
  const found = report.metadata?.vulnerabilities;
  if (found === undefined) {
    process.stdout.write(
      `npm audit: skipped, the registry does not answer it${report.message === undefined ? '' : ` (${report.message.split('\n')[0] ?? ''})`}.\n`,
    );
  } else {
    const { total = 0, ...by } = found;
    const said = Object.entries(by).flatMap(([level, count]) => (count > 0 ? [`${count} ${level}`] : []));
    process.stdout.write(
      `npm audit: ${total} known vulnerabilities${said.length > 0 ? ` (${said.join(', ')}); npm audit names them` : ''}.\n`,
    );
    good &&= total === 0;
  }
}
process.exitCode = good ? 0 : 1;
