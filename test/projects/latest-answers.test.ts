/** Answers that are kept for their working: few of each maker, for two days, and nothing of whoever erased everything. */
import { expect, it } from 'vitest';
import { MemoryStore } from '../../src/projects/memory.ts';
import { LatestAnswers } from '../../src/projects/latest-answers.ts';

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
