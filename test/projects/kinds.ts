/** A small kind of document, and a folder of one's own, for the tests of the store. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import type { Kind } from '../../src/projects/store.ts';

const tally = z.object({ version: z.literal(2), n: z.int().min(0), said: z.string().optional() });
export type Tally = z.infer<typeof tally>;

/** Version 1 called the number `count`. */
export const TALLIES: Kind<Tally> = {
  folder: 'tallies',
  called: 'That document',
  version: 2,
  schema: tally,
  migrations: { 1: ({ count, ...rest }) => ({ ...rest, n: count }) },
};

export const newFolder = () => mkdtempSync(join(tmpdir(), 'store-'));
export const fileOf = (folder: string, id: string) => join(folder, 'tallies', `${id}.json`);
export const onDisk = (folder: string, id: string) =>
  JSON.parse(readFileSync(fileOf(folder, id), 'utf8')) as Tally;

/** Everything under a folder, by path, sorted. */
export const tree = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

/** One more. */
export const more = (doc: Tally | undefined) => {
  const n = (doc?.n ?? 0) + 1;
  return { keep: { version: 2 as const, n }, tell: n };
};
