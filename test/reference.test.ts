/** What the pages say: what is written from the program is fresh, what is written by hand agrees with it. */
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkEnvironment, VARIABLES } from '../src/environment.ts';
import { readPage, withPart, writtenPages } from '../tools/pages.ts';

const root = dirname(import.meta.dirname);
const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(root, 'docs')).map((page) => `docs/${page}`),
];

describe('the pages', () => {
  it('say of the questions what their declarations say', async () => {
    const stale = (await writtenPages()).filter(({ stands, belongs }) => stands !== belongs);
    expect(
      stale.map(({ page }) => page),
      'stale: run npm run reference',
    ).toEqual([]);
  });

  it('notice a part that is stale, and one that has lost its place', () => {
    const page = 'a\n<!-- part: written by `me` -->\n\nold\n\n<!-- end of part -->\nb\n';
    expect(withPart(page, 'part', 'me', 'new')).toBe(page.replace('old', 'new'));
    expect(() => withPart(page, 'other', 'me', 'new')).toThrow('no place');
    expect(() => withPart(page.replace('end of', 'end'), 'part', 'me', 'new')).toThrow('no place');
  });

  it('keep a place for what a whole run of the bench measures', () => {
    const page = readPage('docs/measured.md');
    expect(withPart(page, 'measured', 'npm run bench -- --write', '| a run |')).toContain(
      '\n\n| a run |\n\n',
    );
  });

  it('begin with a README of one sitting, that names every other page', () => {
    const readme = readPage('README.md');
    expect(readme.split('\n').length).toBeLessThan(150);
    expect(PAGES.filter((page) => page !== 'README.md' && !readme.includes(`](${page})`))).toEqual([]);
  });

  it.each(PAGES)('%s leads to files that are there', (page) => {
    const targets = [...readPage(page).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].map(([, target]) => target!);
    const missing = targets
      .filter((target) => !/^[a-z]+:/.test(target))
      .filter((target) => !existsSync(join(root, normalize(join(dirname(page), target)))));
    expect(missing).toEqual([]);
  });

  it('name every variable that is set from outside with the default that it has', () => {
    const rows = [...readPage('docs/running.md').matchAll(/^\| `([A-Z_]+)` \| (?:`([^`]+)`|none) \|/gm)];
    expect(rows.map(([, name]) => name).sort()).toEqual([...VARIABLES].sort());
    const told = Object.fromEntries(rows.map(([, name, value]) => [name!, value]));
    // Set to what the page says is the default, nothing changes; a page with another default would show here.
    expect(checkEnvironment(told)).toEqual(checkEnvironment({}));
    const example = [...readPage('.env.example').matchAll(/^([A-Z_]+)=(.*)$/gm)];
    expect(example.map(([, name]) => name).sort()).toEqual([...VARIABLES].sort());
    expect(checkEnvironment(Object.fromEntries(example.map(([, name, value]) => [name!, value])))).toEqual(
      checkEnvironment({}),
    );
  });
});
