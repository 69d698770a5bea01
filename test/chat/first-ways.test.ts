/** Units and terms of somebody new, by the language that her platform is set to. */
import { expect, it } from 'vitest';
import { waysOf } from '../../src/chat/first-ways.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { Projects } from '../../src/projects/projects.ts';

it.each([
  ['en-US', { units: 'imperial', terms: 'US' }],
  ['en_US.UTF-8', { units: 'imperial', terms: 'US' }],
  ['en-GB', { units: 'metric', terms: 'UK' }],
  ['en_AU', { units: 'metric', terms: 'UK' }],
])('%s has ways of its own', (locale, ways) => {
  expect(waysOf(locale)).toMatchObject(ways);
});

it.each(['de', 'fr', 'es-ES', 'pt-BR', 'en-CA', 'C', 'C.UTF-8', 'POSIX', '', 'en', 'xx-USA', 'constructor'])(
  '“%s” has those that everybody begins with',
  (locale) => {
    expect(waysOf(locale)).toBeUndefined();
  },
);

it('hold until something is saved, and are told once', async () => {
  const projects = new Projects(new MemoryStore());
  const ways = { units: 'imperial', terms: 'US' } as const;
  const untold = await projects.beginWith('una', ways);
  expect([untold(), untold()]).toEqual([true, false]);
  expect((await projects.beginWith('una', ways))()).toBe(false);
  expect(await projects.settings('una')).toMatchObject(ways);
  expect(await projects.knows('una')).toBe(false);
  await projects.changeMaker('una', 'una', (doc) => {
    doc.name = 'Una';
  });
  expect((await projects.maker('una', 'una')).settings).toMatchObject(ways);
  expect((await projects.beginWith('una', { units: 'metric', terms: 'UK' }))()).toBe(false);
  expect(await projects.settings('una')).toMatchObject(ways);
  expect(await projects.settings('somebody-else')).toMatchObject({ units: 'metric', terms: 'US' });
});
