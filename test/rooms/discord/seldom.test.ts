import { expect, it } from 'vitest';
import { seldom } from '../../../src/rooms/discord/run.ts';

it('says the same thing once a minute, however often it happens', () => {
  let now = 5;
  const may = seldom(() => now);
  const said: number[] = [];
  for (; now < 180_000; now += 500) if (may('connecting 0')) said.push(now);
  expect(said).toEqual([5, 60_005, 120_005]);
  expect(may('connecting 1')).toBe(true);
  expect(may('connecting 1')).toBe(false);
});
