/** A disk on which anything fails now and then: nothing acknowledged is lost, nothing refused is kept. */
import { expect, it } from 'vitest';
import { diskLoop } from './disk.ts';
import { spread } from './spread.ts';

it('a failing disk loses nothing that was acknowledged, keeps nothing that was refused, and everything is said in words', async () => {
  const report = await diskLoop(240, spread());
  expect(report).toMatchObject({ lost: 0, doubled: 0, broken: [] });
  expect(report.acknowledged).toBeGreaterThan(40);
  expect(report.refused).toBeGreaterThan(20);
}, 60_000);
