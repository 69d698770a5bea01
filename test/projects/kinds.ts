/** A small kind of document, and a folder of one's own, for the tests of the store. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';
import type { GrowingKind } from '../../src/projects/grown.ts';
import type { Kind, Store } from '../../src/projects/store.ts';

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

const entry = z.object({ by: z.string(), n: z.int().min(0) });
const diary = z.object({
  version: z.literal(1),
  title: z.string(),
  events: z.array(entry).min(1),
});
export type Diary = z.infer<typeof diary>;

/** A small kind of document with a list that is only added to. */
export const DIARIES: GrowingKind<Diary> = {
  folder: 'diaries',
  called: 'That diary',
  version: 1,
  schema: diary,
  migrations: {},
  builtBeside: true,
  grows: { list: 'events', item: entry, head: diary.omit({ events: true }) },
};

/** One more, in a document of either kind: `c` grows. Tells how many there are then. */
export const countUp = (store: Store, id: string): Promise<number> =>
  id !== 'c'
    ? store.change(TALLIES, id, more)
    : store.change(DIARIES, id, (doc) => {
        const n = (doc?.events.length ?? 0) + 1;
        const events = [{ by: 'x', n }];
        return doc
          ? { keep: undefined, add: events, tell: n }
          : { keep: { version: 1 as const, title: '', events }, tell: n };
      });
/** How many are kept, read as plain files. */
export function countOnDisk(folder: string, id: string): number {
  if (id !== 'c') return onDisk(folder, id).n;
  const doc = JSON.parse(readFileSync(join(folder, 'diaries/c.json'), 'utf8')) as { events?: unknown[] };
  if (doc.events) return doc.events.length;
  return readFileSync(join(folder, 'diaries/c.events.jsonl'), 'utf8').split('\n').length - 1;
}

/** Mounts a small disk of its own on a folder; false where that is not allowed. */
export function isMounted(folder: string, options: string): boolean {
  if (process.getuid?.() !== 0) return false;
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', folder], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}
