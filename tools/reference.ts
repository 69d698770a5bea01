// Writes the questions into the README from their declarations. With --check it only says whether they are up to date.
import { readFileSync, writeFileSync } from 'node:fs';
import { registry } from '../commands/index.ts';
import { referenceMarkdown } from '../src/chat/reference.ts';

const START = '<!-- questions: written by `npm run reference` -->';
const END = '<!-- end of questions -->';
const file = new URL('../README.md', import.meta.url);
const readme = readFileSync(file, 'utf8');
const from = readme.indexOf(START);
const to = readme.indexOf(END);
if (from < 0 || to < from) throw new Error('the README has lost its place for the questions');
const fresh = `${readme.slice(0, from)}${START}\n\n${referenceMarkdown(registry)}\n\n${readme.slice(to)}`;
if (!process.argv.includes('--check')) writeFileSync(file, fresh);
else if (fresh !== readme) {
  process.stderr.write('The questions in the README are stale: run npm run reference.\n');
  process.exitCode = 1;
}
