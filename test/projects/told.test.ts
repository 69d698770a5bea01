/** Who was told something of late: nobody twice within a day, also after a restart, and nothing of whoever erased it all. */
import { expect, it } from 'vitest';
import { MemoryStore } from '../../src/projects/memory.ts';
import { Projects } from '../../src/projects/projects.ts';
import { groupPlan } from '../core/group/plan.ts';

const NOON = new Date('2026-03-02T12:00:00Z');
const later = (hours: number) => new Date(NOON.getTime() + hours * 3_600_000);

async function withGroup() {
  const store = new MemoryStore();
  const projects = new Projects(store);
  // She opened it, and nothing else is saved of her.
  await projects.groups.open({ server: '1' }, groupPlan(), {
    by: 'rowan',
    name: 'Rowan',
    at: NOON,
    once: 'a',
  });
  return { store, projects };
}

it('somebody of whom nothing else is saved is told once a day, whichever process tells her', async () => {
  const { store, projects } = await withGroup();
  expect(await projects.mayTell('rowan', NOON)).toBe('here');
  await projects.noteTold('rowan', NOON);
  expect(await projects.knows('rowan')).toBe(false);
  const again = new Projects(store);
  expect(await again.mayTell('rowan', later(23))).toBe('not');
  expect(await again.mayTell('rowan', later(24))).toBe('here');
  expect(await again.mayTell('hazel', later(1))).toBe('here');
  expect(await again.saysElsewhere('rowan')).toContain('when you were last told something');
  expect(await again.collectElsewhere('rowan')).toMatchObject({ told: NOON.toISOString() });
});

it('who was told longer ago than a day is forgotten with the next telling', async () => {
  const { projects } = await withGroup();
  await projects.noteTold('rowan', NOON);
  await projects.groups.open({ server: '2' }, groupPlan(), {
    by: 'hazel',
    name: 'Hazel',
    at: NOON,
    once: 'b',
  });
  await projects.noteTold('hazel', later(25));
  expect(await projects.saysElsewhere('rowan')).not.toContain('when you were last told something');
});

it('nothing is kept of whoever erased everything, before or while she was told', async () => {
  const { projects } = await withGroup();
  await projects.noteTold('rowan', NOON);
  const { removed } = await projects.eraseMaker('rowan');
  expect(removed).toContain('when you were last told something');
  expect(await projects.saysElsewhere('rowan')).toEqual([]);
  await projects.noteTold('rowan', NOON);
  expect(await projects.saysElsewhere('rowan')).toEqual([]);
});
