/**
 * Puts faults into sources one at a time and says which of them no test notices.
 *
 *   npm run mutate -- src/core/edges/border.ts …   these files or folders
 *   npm run mutate -- --table src/core/rows        these, and their rows in the table of DEVELOPERS.md
 *   npm run mutate -- --all                        every file of src/core, and the whole table
 *   npm run mutate -- --own src/core/rows          judged by the tests of their own chapters and the outside checks alone: quick, while tests are written
 *   npm run mutate -- --by=test/core/rows src/…    judged by these tests alone; with --table its row says “at least”
 *   npm run mutate -- --brief …                    without the list of what is left
 */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { judge } from './mutate/judging.ts';
import { instrument } from './mutate/mutants.ts';
import { scoreOf, summary, survivors, withTable } from './mutate/score.ts';
import { TypeCheck } from './mutate/types.ts';

/** The tests that judge: those of the core and of the questions that are asked of it, not those of the rooms. */
const JUDGES = ['test/core', 'test/outside', 'test/commands', 'test/figures.test.ts', 'test/sweep.test.ts'];

/** One test that plays a whole season in a room of Discord's: it takes as long as all the others. */
const SEASON = 'test/commands/together-season.test.ts';

const listed = (path: string) =>
  execFileSync('git', ['ls-files', '-co', '--exclude-standard', path], { encoding: 'utf8' })
    .split('\n')
    .filter((file) => file.endsWith('.ts'));

const args = process.argv.slice(2);
const all = args.includes('--all');
const files = all ? listed('src/core') : args.filter((one) => !one.startsWith('-')).flatMap(listed);
if (files.length === 0) {
  process.stderr.write('Name source files, or say --all.\n');
  process.exit(2);
}
const say = (line: string) =>
  process.stderr.write(`${Math.round((performance.now() - began) / 1000)} s  ${line}\n`);
const began = performance.now();
const sources = await Promise.all(files.map((file, index) => instrument(file, `f${index}-`)));
const by = args.flatMap((one) => (one.startsWith('--by=') ? [one.slice('--by='.length)] : []));
const own = args.includes('--own') || by.length > 0;
const judges =
  by.length > 0
    ? by
    : own
      ? [
          ...new Set(files.map((file) => dirname(file).replace('src/', 'test/'))),
          'test/core/formulas.test.ts',
          'test/outside',
        ]
      : JUDGES;
const tests = judges.flatMap(listed).filter((file) => file.endsWith('.test.ts') && file !== SEASON);
const verdicts = await judge(sources, tests, say);
const types = new TypeCheck();
const scores = sources.map((source) => scoreOf(source, verdicts, types));
for (const score of scores) {
  console.log(summary(score));
  if (!args.includes('--brief')) for (const line of survivors(score)) console.log(`  ${line}`);
}
if (all || args.includes('--table')) {
  const page = readFileSync('DEVELOPERS.md', 'utf8');
  writeFileSync('DEVELOPERS.md', withTable(page, scores, listed('src/core'), own));
}
for (const test of verdicts.unfit) say(`cannot be run twice, so it judged nothing: ${test}`);
say(`${Math.round((performance.now() - began) / 1000)} s`);
