// Writes what the pages say of the questions from their declarations; test/reference.test.ts refuses a stale page.
import { writeFileSync } from 'node:fs';
import { writtenPages } from './pages.ts';

for (const { page, stands, belongs } of await writtenPages())
  if (stands !== belongs) writeFileSync(new URL(`../${page}`, import.meta.url), belongs);
