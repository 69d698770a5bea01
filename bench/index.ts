/**
 * Measures everything, or what is named, and prints one table: `npm run bench`, `npm run bench -- answers start`.
 * `npm run bench -- attack` runs the attacks instead, `npm run bench -- processes` the program in several processes. `--write` puts the
 * table of a whole run, or of the processes, into its page as well.
 */
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { readPage, withPart } from '../tools/pages.ts';
import { table, type BenchRow } from './table.ts';

const BENCHES: Readonly<Record<string, () => Promise<{ bench(): Promise<BenchRow[]> }>>> = {
  answers: () => import('./answers.ts'),
  asked: () => import('./asked.ts'),
  resize: () => import('./resize.ts'),
  start: () => import('./start.ts'),
  blanket: () => import('./blanket.ts'),
  figures: () => import('./figures.ts'),
  picture: () => import('./picture.ts'),
  handout: () => import('./handout.ts'),
  makers: () => import('./makers.ts'),
  together: () => import('./together.ts'),
  presses: () => import('./presses.ts'),
  along: () => import('./along.ts'),
  database: () => import('./database.ts'),
  load: () => import('./load.ts'),
  largest: () => import('./largest.ts'),
  lengths: () => import('./lengths.ts'),
};

/** Where a whole run is shown. */
const PAGE = 'docs/measured.md';

const args = process.argv.slice(2);
const write = args.includes('--write');
const asked = args.filter((arg) => arg !== '--write');
if (asked[0] === 'attack') {
  // By itself: it takes minutes, and says what was lost, not how fast it was.
  const { attack } = await import('./attack.ts');
  process.exit((await attack(asked.slice(1))) ? 0 : 1);
}
/** On what it was measured. */
const machine = () => {
  const [{ model } = { model: 'unknown' }] = cpus();
  return `Node ${process.versions.node}, ${cpus().length} × ${model.trim()}, load ${loadavg()[0]?.toFixed(1) ?? '?'} at the end`;
};
if (asked.length === 1 && asked[0] === 'processes') {
  const { measured } = await import('./processes.ts');
  const text = `${await measured()}\n\nOne run, ${machine()}; medians.`;
  process.stdout.write(`${text}\n`);
  if (write) {
    const page = withPart(readPage(PAGE), 'processes', 'npm run bench -- processes --write', text);
    writeFileSync(new URL(`../${PAGE}`, import.meta.url), page);
  }
  process.exit(0);
}
const unknown = asked.filter((name) => !(name in BENCHES));
if (unknown.length > 0) {
  process.stderr.write(
    `There is no bench ${unknown.join(', ')}. There are ${Object.keys(BENCHES).join(', ')}, and attack and processes, each by itself.\n`,
  );
  process.exit(2);
}

if (write && asked.length > 0) {
  process.stderr.write(`Only a whole run is written to ${PAGE}: leave out ${asked.join(' ')}, or --write.\n`);
  process.exit(2);
}

const loadBefore = loadavg()[0]?.toFixed(1) ?? '?';
const rows: BenchRow[] = [];
for (const [name, load] of Object.entries(BENCHES)) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  process.stderr.write(`${name} …\n`);
  rows.push(...(await (await load()).bench()));
}
const text = `${table(rows)}\n\nOne run, ${machine()}, ${loadBefore} at the beginning. Several rounds, both sides of a ratio in turn, those left out in which others had the processors that were needed; medians, beside them the tenth percentile (p10) and the time of the processor.`;
process.stdout.write(`${text}\n`);
if (write) {
  const page = withPart(readPage(PAGE), 'measured', 'npm run bench -- --write', text);
  writeFileSync(new URL(`../${PAGE}`, import.meta.url), page);
}
// Workers and stores of the benches have been closed; whatever is left must not keep the table waiting.
process.exit(0);
