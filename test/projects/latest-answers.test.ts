/** Answers that are kept for their working: few of each maker, for two days, and nothing of whoever erased everything. */
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { FileStore } from '../../src/projects/file-store.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { LatestAnswers } from '../../src/projects/latest-answers.ts';
import { PostgresStore } from '../../src/projects/postgres/store.ts';
import { Projects } from '../../src/projects/projects.ts';
import type { Store } from '../../src/projects/store.ts';
import { groupPlan } from '../core/group/plan.ts';
import { asOwner, newPlace } from '../postgres/place.ts';

const NOON = new Date('2026-03-02T12:00:00Z');
const later = (hours: number) => new Date(NOON.getTime() + hours * 3_600_000);
const one = (key: string) => [{ key, answer: { said: key } }];

it('four of each maker are kept, the latest, and found by whatever shares the store', async () => {
  const store = new MemoryStore();
  const kept = new LatestAnswers(store);
  for (const key of ['a', 'b', 'c', 'd', 'e']) await kept.keep('1', one(key), NOON);
  const other = new LatestAnswers(store);
  expect(await other.find('1', 'a')).toBeUndefined();
  expect(await other.find('1', 'b')).toEqual({ said: 'b' });
  expect(await other.find('1', 'e')).toEqual({ said: 'e' });
  expect(await other.find('2', 'e')).toBeUndefined();
});

it('they go after two days, with the next, and at once with all else of a maker', async () => {
  const kept = new LatestAnswers(new MemoryStore());
  await kept.keep('1', one('a'), NOON);
  await kept.keep('1', one('b'), later(47));
  expect(await kept.find('1', 'a')).toBeDefined();
  await kept.keep('1', one('c'), later(49));
  expect(await kept.find('1', 'a')).toBeUndefined();
  expect((await kept.forget('1')).removed).toHaveLength(1);
  expect(await kept.find('1', 'c')).toBeUndefined();
  expect(await kept.says('1')).toEqual([]);
  expect(await kept.collect('1')).toBeUndefined();
});

it('a crowd takes no more room than there is, and one that is far too long is not kept', async () => {
  const store = new MemoryStore();
  const kept = new LatestAnswers(store);
  for (let maker = 0; maker < 7_000; maker++) await kept.keep(String(maker), one('a'), NOON);
  const docs = [...(store as unknown as { docs: Map<string, { answers: unknown[] }> }).docs.values()];
  expect(docs.length).toBeLessThanOrEqual(256);
  expect(Math.max(...docs.map(({ answers }) => answers.length))).toBe(24);
  await kept.keep('1', [{ key: 'long', answer: 'x'.repeat(20_001) }], NOON);
  expect(await kept.find('1', 'long')).toBeUndefined();
});

const folder = mkdtempSync(join(tmpdir(), 'answers-'));
const place = { url: '' };
const inFiles = () =>
  (
    readdirSync(folder, { recursive: true, withFileTypes: true }) as {
      name: string;
      parentPath: string;
      isFile(): boolean;
    }[]
  )
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => readFileSync(join(parentPath, name), 'utf8'))
    .join('\n');
const inTables = async () => {
  const texts = await Promise.all(
    ['documents', 'events', 'aside'].map((table) =>
      asOwner(place.url, `select t::text as said from ${table} t`),
    ),
  );
  return texts
    .flat()
    .map(({ said }) => String(said))
    .join('\n');
};

it.each<[string, () => Promise<Store>, () => Promise<string> | string]>([
  ['memory', () => Promise.resolve(new MemoryStore()), () => ''],
  ['files', () => FileStore.open({ folder, stays: true }), inFiles],
  ['PostgreSQL', async () => PostgresStore.open({ url: (place.url = await newPlace()) }), inTables],
])(
  'whoever erases everything is named in nobody’s answers any more, in %s',
  async (_what, open, everything) => {
    const store = await open();
    const projects = new Projects(store);
    const said = { by: 'organiser-1', at: NOON };
    const { id } = await projects.groups.open({}, groupPlan(), { ...said, name: 'Bea', once: 'open' });
    const names = ['Ines (she/her)', 'Ines of the allotment'];
    for (const [index, name] of names.entries())
      await projects.groups.happen(id, { ...said, by: 'maker-77', once: `join-${index}` }, () => [
        { did: 'joined', maker: 'maker-77', name, perWeek: 2, colours: [] },
      ]);
    const { answers } = projects;
    const tells = (headline: string) => ({
      path: 'group give',
      shown: { headline, working: [{ label: 'Motifs' }] },
    });
    const kept: [string, string, boolean][] = [
      ['organiser-1', 'Two motifs given to Ines of the allotment.', false],
      ['organiser-1', 'Ines (she/her) has them now.', false],
      ['organiser-2', 'Handed in by maker-77.', false],
      ['organiser-2', 'Given to maker-771, and to Ines of the allotments.', true],
    ];
    for (const [index, [maker, headline]] of kept.entries())
      await answers.keep(maker, [{ key: `@${index}`, answer: tells(headline) }], NOON);
    const gone: unknown[] = [];
    answers.whenUnnamed((isHer) => {
      gone.push(...kept.filter(([, headline]) => isHer({ headline })));
      return Promise.resolve();
    });

    await projects.eraseMaker('maker-77');
    for (const [index, [maker, , stays]] of kept.entries())
      expect((await answers.find(maker, `@${index}`)) !== undefined).toBe(stays);
    expect(gone).toHaveLength(3);
    const text = await everything();
    expect(text).not.toMatch(/she\/her|Ines of the allotment\b|maker-77\b/);
    if (text !== '') expect(text).toContain('maker-771');
    await store.close();
  },
);
